// Shown by tests/trace/exact_test.cpp and tests/trace/round_trip_test.cpp.
#include "trace/exact.h"

#include <algorithm>
#include <cmath>

#include "section/walk.h"

namespace arrisline {

namespace {

constexpr double kMostMoved = 0.3;  // radians of an arc that goes or comes where it is put to a side
constexpr double kRounding = 1e-9;  // mm
constexpr double kHair = 0.005;     // mm, which nobody sees and the gauge does not know
// mm: so little what is written of a height, six decimals, and of a radius moves a crown. One that touches a
// side lies as much under it, so as not to be read over it.
constexpr double kWritten = 1.5e-6;

/// To the last decimal of what is written, or the one before where that is as much as a fit leaves open.
double as_written(double value) {
  constexpr double kOfOne = 1e6;  // of a mm
  const double fewer = std::round(value * kOfOne / 10) / (kOfOne / 10);
  return std::abs(fewer - value) * kOfOne < 1 ? fewer : std::round(value * kOfOne) / kOfOne;
}

double radius_of(const FlatsAndArcs& line, const Held& held, std::size_t i) {
  return held.radius[i] ? *held.radius[i] : radius(edge_of(line, i));
}

/// Puts an arc that runs all but smoothly into the face, or the working edge, where it touches that instead.
/// False where it does not.
bool put_to_side(FlatsAndArcs& line, const Held& held, const Allowed& allowed, std::size_t i, bool face) {
  // As at the face: the working edge is the face with x for y, and left for right.
  const auto as_at_face = [face](Point p) { return face ? p : Point{p.y, p.x}; };
  Edge edge = exact_edge(line, held, i);
  edge.from = as_at_face(edge.from);
  edge.to = as_at_face(edge.to);
  edge.centre = as_at_face(edge.centre);
  if (!face) edge.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
  for (const bool at_start : {true, false}) {
    const std::size_t joint = at_start ? i : i + 1;
    const std::optional<double>& level = face ? held.y[joint] : held.x[joint];
    if (!level || *level != 0) continue;
    const double r = radius_of(line, held, i);
    const Point other = at_start ? edge.to : edge.from;
    // A half-round deeper than twice its radius stands upright on its ends.
    const double low = std::max(r, other.y / 2);
    if (low - r > allowed.tolerance) continue;
    const double aside = std::sqrt(std::max(0.0, low * low - (other.y - low) * (other.y - low)));
    const Point centre = {other.x + std::copysign(aside, edge.centre.x - other.x), low};
    // From the top of the circle to the other end, the way that the arc runs.
    const Point spoke = other - centre;
    double swept = std::atan2(spoke.x, -spoke.y);
    const bool onward = (edge.turn == Turn::left) == at_start;
    if (onward != (swept > 0)) swept += swept > 0 ? -2 * kPi : 2 * kPi;
    if (std::abs(std::abs(swept) - std::abs(sweep(edge))) > kMostMoved) continue;
    line.joints[joint] = as_at_face({centre.x, 0});
    line.bulges[i] = std::copysign(std::tan(std::abs(swept) / 4), line.bulges[i]);
    return true;
  }
  return false;
}

/// Whether a link is a half-round with flats that run so on both sides of it.
bool half_round_between(const FlatsAndArcs& line, const Held& held, std::size_t i, Held::Axis flats) {
  return std::abs(line.bulges[i]) == 1 && i > 0 && i + 1 < line.size() && held.axis[i - 1] == flats &&
         held.axis[i + 1] == flats;
}

/// Moves an end of a half-round along the level flat that meets it there, or the upright one, until it stands
/// square to that. Leaning by a hair it would rise over the side that the flat is.
void stand_square(FlatsAndArcs& line, const Held& held, std::size_t i) {
  for (const bool level : {true, false}) {
    const auto along = level ? &Point::x : &Point::y;
    const auto& held_along = level ? held.x : held.y;
    const Held::Axis axis = level ? Held::Axis::level : Held::Axis::upright;
    double& from = line.joints[i].*along;
    double& to = line.joints[i + 1].*along;
    if (std::abs(to - from) > 2 * kHair) continue;
    if (i > 0 && held.axis[i - 1] == axis && !held_along[i]) {
      from = to;
    } else if (i + 1 < line.size() && held.axis[i + 1] == axis && !held_along[i + 1]) {
      to = from;
    }
  }
}

/// Makes a half-round that stands a hair too high between flats at its feet narrower by as much. False where
/// it is not one, or where its feet are held.
bool narrow(FlatsAndArcs& line, Held& held, std::size_t i, bool face) {
  const auto along = face ? &Point::x : &Point::y;
  const auto off_side = face ? &Point::y : &Point::x;
  const auto& held_along = face ? held.x : held.y;
  Point& from = line.joints[i];
  Point& to = line.joints[i + 1];
  const double half = (from.*off_side + to.*off_side) / 2 - kWritten;
  const double rise = (to.*off_side - from.*off_side) / 2;
  if (!half_round_between(line, held, i, face ? Held::Axis::level : Held::Axis::upright) || held_along[i] ||
      held_along[i + 1] || half <= std::abs(rise) || std::abs(half - distance(from, to) / 2) > kHair)
    return false;
  const double middle = (from.*along + to.*along) / 2;
  const double aside = std::copysign(std::sqrt(half * half - rise * rise), to.*along - from.*along);
  from.*along = middle - aside;
  to.*along = middle + aside;
  held.radius[i] = half;
  return true;
}

/// Moves a half-round that ends two flats, as a nosing does, along them to where it touches the side.
/// Flattened by a hair it would still be written as a half-round. False where it is not one.
bool move_in(FlatsAndArcs& line, const Held& held, std::size_t i, bool face, double by) {
  if (!half_round_between(line, held, i, face ? Held::Axis::upright : Held::Axis::level)) return false;
  const auto off_side = face ? &Point::y : &Point::x;
  line.joints[i].*off_side += by;
  line.joints[i + 1].*off_side += by;
  return true;
}

/// Flattens the arc between its ends until it keeps clear of the side by a hair, since what is written of its
/// radius moves it by less; one that ends at the side, until it runs up to it.
void flatten(FlatsAndArcs& line, Held& held, std::size_t i, bool over_face) {
  held.radius[i].reset();
  const double round = line.bulges[i];
  const auto off_side = [&](Point p) { return over_face ? p.y : p.x; };
  const double enough =
      std::clamp(std::min(off_side(line.joints[i]), off_side(line.joints[i + 1])), 0.0, kHair);
  const auto clear = [&](double share) {
    line.bulges[i] = share * round;
    return off_side(reach_of(edge_of(line, i)).low) >= enough;
  };
  double in = 0, out = 1;
  if (!clear(in)) {
    line.bulges[i] = round;  // an end of it lies over the side
    return;
  }
  while (out - in > 1e-12) {
    const double share = (in + out) / 2;
    (clear(share) ? in : out) = share;
  }
  line.bulges[i] = in * round;
  held.radius[i] = radius(edge_of(line, i));
}

}  // namespace

Edge exact_edge(const FlatsAndArcs& line, const Held& held, std::size_t i) {
  const Edge edge = edge_of(line, i);
  if (!edge.is_arc()) return edge;
  return edge_between(edge.from, edge.to, edge.turn, radius_of(line, held, i), std::abs(sweep(edge)) > kPi);
}

void make_exact(FlatsAndArcs& line, const Held& held) {
  for (std::size_t i = 0; i < line.size(); ++i) {
    // A level or upright flat without a held level: both ends at their mean.
    if (held.axis[i] == Held::Axis::level) {
      const double y = held.y[i] ? *held.y[i] : held.y[i + 1] ? *held.y[i + 1] : line.joints[i].y;
      line.joints[i].y = line.joints[i + 1].y = y;
    } else if (held.axis[i] == Held::Axis::upright) {
      const double x = held.x[i] ? *held.x[i] : held.x[i + 1] ? *held.x[i + 1] : line.joints[i].x;
      line.joints[i].x = line.joints[i + 1].x = x;
    }
  }
  for (std::size_t j = 0; j < line.joints.size(); ++j) {
    if (held.x[j]) line.joints[j].x = *held.x[j];
    if (held.y[j]) line.joints[j].y = *held.y[j];
  }
}

void make_as_written(FlatsAndArcs& line, const Held& held) {
  for (std::size_t j = 0; j < line.joints.size(); ++j) {
    if (!held.x[j]) line.joints[j].x = as_written(line.joints[j].x);
    if (!held.y[j]) line.joints[j].y = as_written(line.joints[j].y);
  }
  make_exact(line, held);  // what runs on from one that is held is as that is
}

void make_half_round(FlatsAndArcs& line, Held& held) {
  for (std::size_t i = 0; i < line.size(); ++i) {
    const double bulge = std::abs(line.bulges[i]);
    const double half = distance(line.joints[i], line.joints[i + 1]) / 2;
    // Of its centre from the middle of the chord; the radius is less of a measure, by the square.
    const double off = half * std::abs(1 - bulge * bulge) / 2;
    if (bulge == 1 || off > kHair * bulge) continue;
    line.bulges[i] = std::copysign(1.0, line.bulges[i]);
    stand_square(line, held, i);
    held.radius[i] = distance(line.joints[i], line.joints[i + 1]) / 2;
  }
}

void keep_in_blank(FlatsAndArcs& line, Held& held, const Allowed& allowed) {
  const double most = allowed.tolerance + 3 * allowed.scatter;
  for (std::size_t i = 0; i < line.size(); ++i) {
    for (const bool face : {true, false}) {
      const Edge edge = exact_edge(line, held, i);
      if (!edge.is_arc()) continue;
      const Point low = reach_of(edge).low;
      const double over = -(face ? low.y : low.x);
      const double ends = face ? std::min(edge.from.y, edge.to.y) : std::min(edge.from.x, edge.to.x);
      // What touches it by figures that are whole is written as it is.
      const bool crown = ends > kHair && over < -kRounding;
      if (over <= (crown ? -kWritten : kRounding) || over > most) continue;
      const bool little = over <= allowed.tolerance + allowed.scatter;
      if (little &&
          (put_to_side(line, held, allowed, i, face) || move_in(line, held, i, face, over + kWritten)))
        continue;
      if (!narrow(line, held, i, face)) flatten(line, held, i, face);
    }
  }
}

}  // namespace arrisline
