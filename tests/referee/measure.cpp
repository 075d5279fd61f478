// Depths, thicknesses and seats, measured along the exact boundaries.
#include <algorithm>
#include <cmath>
#include <limits>

#include "referee/judge.h"

namespace arrisline::referee {

// Depths and thicknesses are found to this, a tenth of what a stated height may be off.
static constexpr double kError = 5e-4;
// Inside of what is left, where no boundary is the thickest place.
static constexpr double kInside = 4e-3;
// Of two edges that are meant to be one; wood thinner than this is none.
static constexpr double kBeside = 1e-6;

Point across_of(const StatedPose& pose) {
  const double t = pose.tilt * kPi / 180;
  return {std::cos(t), -std::sin(t)};
}

Point outward_of(const StatedPose& pose) {
  const double t = pose.tilt * kPi / 180;
  return {-std::sin(t), -std::cos(t)};
}

Point in_frame(const StatedPose& pose, Point p) {
  return {dot(p - pose.at, across_of(pose)), dot(p - pose.at, outward_of(pose))};
}

Point from_frame(const StatedPose& pose, double u, double v) {
  return pose.at + u * across_of(pose) + v * outward_of(pose);
}

double height_of(const StatedPlane& plane, double u) {
  const double sagitta =
      plane.curved() ? plane.radius - std::sqrt(std::max(0.0, plane.radius * plane.radius - u * u)) : 0;
  return plane.kind == "hollow" ? -sagitta : sagitta;
}

std::vector<Edge> sole_of(const StatedPlane& plane, const StatedPose& pose) {
  const double half = plane.width / 2;
  // The frame (u, v) is a left-handed one: turns change sides in the section.
  if (plane.kind == "shaped") {
    std::vector<Edge> out;
    for (const Edge& edge : plane.sole) {
      const auto put = [&](Point p) { return from_frame(pose, p.x, p.y); };
      const Turn turn = !edge.is_arc() ? Turn::straight : edge.turn == Turn::left ? Turn::right : Turn::left;
      out.push_back({put(edge.from), put(edge.to), edge.is_arc() ? put(edge.centre) : Point{}, turn});
    }
    for (std::size_t i = 1; i < out.size(); ++i) out[i].from = out[i - 1].to;
    return out;
  }
  const double edge_height = height_of(plane, half);
  Edge sole{from_frame(pose, -half, edge_height), from_frame(pose, half, edge_height), {}, Turn::straight};
  if (plane.curved()) {
    const bool round = plane.kind == "round";
    sole.centre = from_frame(pose, 0, round ? plane.radius : -plane.radius);
    sole.turn = round ? Turn::right : Turn::left;
  }
  return {sole};
}

double depth_in(const Region& common, const std::vector<Edge>& target, const std::vector<Edge>& swept) {
  // On the boundary of the one the distance to it is nothing, so the other's is the greater.
  const auto of = [&](Point p) { return std::max(off_outline(p, target), off_outline(p, swept)); };
  double best = 0;
  for (const auto& loop : common.loops())
    for (const Edge& edge : loop) {
      const double from = of(edge.from), to = of(edge.to);
      best = std::max(best, from);
      best = greatest_along(
          edge, from, to, length_of(edge), of, [](Point) { return true; }, best, kError);
    }
  return best;
}

namespace {

struct Box {
  Point low, high;
};

struct Inside {
  const Region& left;
  const std::vector<Edge>& target;
  double best;
};

}  // namespace

static void look_inside(Inside& search, Point centre, double half) {
  const double reach = half * std::sqrt(2.0), off = off_outline(centre, search.target);
  if (off + reach <= search.best + kInside) return;
  double edge = std::numeric_limits<double>::infinity();
  for (const auto& loop : search.left.loops()) edge = std::min(edge, off_outline(centre, loop));
  const bool within = search.left.holds(centre);
  if (!within && edge > reach) return;
  if (within) search.best = std::max(search.best, off);
  if (reach < kInside / 2) return;
  for (const double x : {-half / 2, half / 2})
    for (const double y : {-half / 2, half / 2}) look_inside(search, centre + Point{x, y}, half / 2);
}

double thickest_in(const Region& left, const std::vector<Edge>& target) {
  const auto of = [&](Point p) { return off_outline(p, target); };
  // Where two sides that are meant to be one do not quite meet, a fin stands between them: no wood. Midway
  // along an edge no other is near, unless it is the other face of a fin.
  const auto is_wood = [&](Point p) {
    int near = 0;
    for (const auto& loop : left.loops())
      for (const Edge& edge : loop) near += off_edge(p, edge) < kBeside ? 1 : 0;
    return near < 2;
  };
  double best = 0;
  Box box{{1e300, 1e300}, {-1e300, -1e300}};
  for (const auto& loop : left.loops())
    for (const Edge& edge : loop) {
      best = greatest_along(edge, of(edge.from), of(edge.to), length_of(edge), of, is_wood, best, kError);
      const Point middle = middle_of(edge);
      const double reach = length_of(edge) / 2;
      box.low = {std::min(box.low.x, middle.x - reach), std::min(box.low.y, middle.y - reach)};
      box.high = {std::max(box.high.x, middle.x + reach), std::max(box.high.y, middle.y + reach)};
    }
  if (box.low.x > box.high.x) return 0;
  Inside search{left, target, best};
  const double size = std::max(box.high.x - box.low.x, box.high.y - box.low.y);
  look_inside(search, 0.5 * (box.low + box.high), size / 2 + kInside);
  return search.best;
}

// The seat.

// The boundary a way along from the start of the i-th edge of a loop, ahead or back.
static Point along_loop(const std::vector<Edge>& loop, std::size_t i, double way, bool ahead) {
  for (std::size_t steps = 0; steps < loop.size(); ++steps) {
    if (!ahead) i = (i + loop.size() - 1) % loop.size();
    const Edge& edge = loop[i];
    const double whole = length_of(edge);
    if (whole >= way) {
      Edge part = edge;
      double t = ahead ? way / whole : 1 - way / whole, share = 1;
      // By halves, to a thousandth of the way.
      for (int k = 0; k < 30; ++k) {
        share /= 2;
        const bool second = t > share;
        part = second ? second_half(part) : first_half(part);
        if (second) t -= share;
      }
      return part.from;
    }
    way -= whole;
    if (ahead) i = (i + 1) % loop.size();
  }
  return loop[i].from;
}

static void push_monotone(std::vector<Edge>& out, const Edge& edge) {
  if (!edge.is_arc()) {
    out.push_back(edge);
    return;
  }
  const double r = distance(edge.from, edge.centre);
  Edge rest = edge;
  for (int k = 0; k < 2; ++k) {
    for (const double way : {-1.0, 1.0}) {
      const Point p = edge.centre + Point{way * r, 0};
      const double side = cross(rest.to - rest.from, p - rest.from);
      const bool on = edge.turn == Turn::left ? side < 0 : side > 0;
      if (!on || distance(p, rest.from) < kBeside || distance(p, rest.to) < kBeside) continue;
      // The nearer of the two from the start comes first: x-monotone pieces of less than half a turn have
      // one.
      Edge first = rest;
      first.to = p;
      out.push_back(first);
      rest.from = p;
    }
  }
  out.push_back(rest);
}

Seater::Seater(const Region& wood, const StatedPlane& plane, const StatedPose& pose)
    : plane_(plane), pose_(pose) {
  constexpr double kLook = 0.005;  // a quarter of what counts as touching
  const double half = plane.width / 2 - kBeside;
  std::vector<double> us;
  constexpr int kLooks = 720;
  for (int i = 0; i <= kLooks; ++i) us.push_back(half * (2.0 * i / kLooks - 1));
  for (const auto& loop : wood.loops()) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Edge& edge = loop[i];
      Edge local{in_frame(pose, edge.from), in_frame(pose, edge.to), {}, Turn::straight};
      if (edge.is_arc()) {
        local.centre = in_frame(pose, edge.centre);
        local.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
      }
      push_monotone(pieces_, local);
      for (const double beside : {local.from.x - kBeside, local.from.x + kBeside})
        if (std::abs(beside) <= half) us.push_back(beside);
      const Point back = edge.from - along_loop(loop, i, kLook, false);
      const Point ahead = along_loop(loop, i, kLook, true) - edge.from;
      const double turn = std::abs(std::atan2(cross(back, ahead), dot(back, ahead))) * 180 / kPi;
      corners_.push_back({local.from, turn});
    }
  }
  std::sort(us.begin(), us.end());
  for (const double u : us) looks_.push_back({u, over(u)});
}

std::optional<double> Seater::top(double u) const {
  std::vector<double> at;
  for (const Edge& piece : pieces_) {
    const double a = piece.from.x, b = piece.to.x;
    if ((a <= u) == (b <= u)) continue;
    if (!piece.is_arc()) {
      at.push_back(piece.from.y + (u - a) / (b - a) * (piece.to.y - piece.from.y));
      continue;
    }
    const double r = distance(piece.from, piece.centre), off = u - piece.centre.x;
    const double rise = std::sqrt(std::max(0.0, r * r - off * off));
    // Running toward greater u, a turn to the left keeps below the centre.
    const bool below = (piece.turn == Turn::left) == (b > a);
    at.push_back(piece.centre.y + (below ? -rise : rise));
  }
  std::sort(at.rbegin(), at.rend());
  for (std::size_t i = 0; i + 1 < at.size(); i += 2)
    if (at[i] - at[i + 1] > kBeside) return at[i];
  return std::nullopt;
}

std::optional<double> Seater::over(double u) const {
  const std::optional<double> highest = top(u);
  if (!highest) return std::nullopt;
  return *highest - height_of(plane_, u);
}

double Seater::highest() const {
  double highest = 0;
  for (const Look& look : looks_)
    if (look.over) highest = std::max(highest, *look.over + height_of(plane_, look.u));
  return highest;
}

bool Seater::guides(double u, double stands, const SeatLimits& limits) const {
  const double half = plane_.width / 2;
  if (std::abs(u) < half - limits.touch) return true;
  const Point contact{u, height_of(plane_, u) + stands};
  for (const Corner& corner : corners_)
    if (corner.turn >= limits.corner && distance(corner.at, contact) <= limits.near_corner) return true;
  const double side = u > 0 ? 1 : -1;
  const std::optional<double> beyond = top(side * (half + limits.touch)),
                              within = top(side * (half - limits.touch));
  return beyond && within && *beyond - *within >= limits.rise;
}

Seat Seater::sit(const SeatLimits& limits) const {
  Seat out;
  double stands = -std::numeric_limits<double>::infinity();
  for (const Look& look : looks_)
    if (look.over) stands = std::max(stands, *look.over);
  out.touches = std::isfinite(stands);
  if (!out.touches) return out;
  const double least = stands - limits.touch;
  const auto touching = [&](const Look& look) { return look.over && *look.over >= least; };
  const auto end_of = [&](double on, double off) {
    for (int k = 0; k < 40; ++k) {
      const double u = (on + off) / 2;
      const std::optional<double> here = over(u);
      (here && *here >= least ? on : off) = u;
    }
    return on;
  };
  std::vector<double> contacts;
  for (std::size_t i = 0; i < looks_.size(); ++i) {
    if (!touching(looks_[i])) continue;
    std::size_t last = i;
    while (last + 1 < looks_.size() && touching(looks_[last + 1])) ++last;
    const double low = i == 0 ? looks_[i].u : end_of(looks_[i].u, looks_[i - 1].u);
    const double high =
        last + 1 == looks_.size() ? looks_[last].u : end_of(looks_[last].u, looks_[last + 1].u);
    const auto angle = [&](double u) {
      return std::asin(std::clamp(u / plane_.radius, -1.0, 1.0)) * 180 / kPi;
    };
    if (angle(high) - angle(low) >= limits.steady) {
      contacts.insert(contacts.end(), {low, high});
    } else {
      double highest = least;
      for (std::size_t k = i; k <= last; ++k) highest = std::max(highest, *looks_[k].over);
      double first_at = high, last_at = low;
      for (std::size_t k = i; k <= last; ++k)
        if (*looks_[k].over >= highest - kBeside) {
          first_at = std::min(first_at, looks_[k].u);
          last_at = std::max(last_at, looks_[k].u);
        }
      const double peak = (first_at + last_at) / 2;
      if (guides(peak, stands, limits)) contacts.push_back(peak);
    }
    i = last;
  }
  std::optional<double> left, right;
  for (const double u : contacts) {
    if (u <= -limits.off_middle * plane_.width && (!left || u < *left)) left = u;
    if (u >= limits.off_middle * plane_.width && (!right || u > *right)) right = u;
  }
  out.two = left && right;
  if (out.two) out.imbalance = std::abs(*left + *right) / plane_.width;
  return out;
}

}  // namespace arrisline::referee
