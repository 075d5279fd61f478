// Flats tell how far a tracing lies askew; its two ends tell face from working edge. Shown by
// tests/trace/round_trip_test.cpp and tests/trace/frame_test.cpp.
#include "trace/frame.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "section/walk.h"

namespace arrisline {
namespace {

constexpr double kMostAskew = 10;  // degrees

/// A direction that ought to be level or upright.
struct Witness {
  double angle = 0;   // degrees from level or upright, −45 to 45
  double room = 0;    // degrees by which it may be wrong
  double weight = 0;  // mm of it
  double chance = 0;  // degrees, standard deviation by the scatter of its samples alone
};

double off_square(Point along) {
  const double degrees = to_degrees(std::atan2(along.y, along.x));
  return degrees - 90 * std::round(degrees / 90);
}

std::vector<Witness> witnesses(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  std::vector<Witness> flats, arcs;
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    const Edge edge = edge_of(fitted.line, i);
    if (!edge.is_arc()) {
      const double long_ = distance(edge.from, edge.to);
      const std::size_t count = distances_of(samples, fitted, i).size();
      // A wall that no pin of a profile gauge touched but at its ends leans by as much as they are apart.
      if (count < 3) continue;
      const double play = allowed.tolerance / 2 + 4 * allowed.scatter / std::sqrt(static_cast<double>(count));
      const double chance =
          allowed.scatter * std::sqrt(12 / static_cast<double>(count)) / std::max(long_, play);
      const Witness flat = {off_square(edge.to - edge.from),
                            to_degrees(std::atan(play / std::max(long_, play))), long_, to_degrees(chance)};
      // A flat so short that it might lie any way, or that leans more than a tracing does, is no witness.
      if (flat.room < kMostAskew && std::abs(flat.angle) < kMostAskew + flat.room) flats.push_back(flat);
      continue;
    }
    // A quadrant or a half-round most often begins and ends square.
    constexpr double kNear = 3;
    const double swept = std::abs(to_degrees(sweep(edge)));
    if (std::abs(swept - 90) < kNear || std::abs(swept - 180) < kNear) {
      const double angle = (off_square(direction_at(edge, 0)) + off_square(direction_at(edge, 1))) / 2;
      if (std::abs(angle) < kMostAskew + kNear) arcs.push_back({angle, kNear, radius(edge), kNear});
    }
  }
  return flats.empty() ? arcs : flats;
}

void turn(Point& p, double cosine, double sine) {
  p = {cosine * p.x + sine * p.y, -sine * p.x + cosine * p.y};
}

template <class Change>
void change_points(Samples& samples, Fitted& fitted, const Change& change) {
  for (Point& p : samples.points) change(p);
  for (Point& p : fitted.line.joints) change(p);
}

void mirror(Samples& samples, Fitted& fitted, bool x, bool y) {
  change_points(samples, fitted, [&](Point& p) { p = {x ? -p.x : p.x, y ? -p.y : p.y}; });
  if (x != y)
    for (double& bulge : fitted.line.bulges) bulge = -bulge;
}

void reverse(Samples& samples, Fitted& fitted) {
  std::reverse(samples.points.begin(), samples.points.end());
  std::reverse(samples.filled.begin(), samples.filled.end());
  std::reverse(fitted.line.joints.begin(), fitted.line.joints.end());
  std::reverse(fitted.line.bulges.begin(), fitted.line.bulges.end());
  for (double& bulge : fitted.line.bulges) bulge = -bulge;
  std::reverse(fitted.from.begin(), fitted.from.end());
  for (std::size_t& at : fitted.from) at = samples.points.size() - at;
}

double area_within(const FlatsAndArcs& line) {
  double out = 0;
  for (std::size_t i = 0; i < line.size(); ++i) out += area_term(edge_of(line, i));
  return out;
}

/// The share of the waste that lies in each quarter of the rectangle about a closed line.
struct Quarters {
  double share[2][2] = {};  // [right][lower]
};

/// REQUIRES: the line runs with what it encloses to its left.
Quarters waste_by_quarter(const FlatsAndArcs& line) {
  Loop loop;
  for (std::size_t i = 0; i < line.size(); ++i) loop.push_back(edge_of(line, i));
  const auto [low, high] = extent_of(line);
  constexpr int kSteps = 40;  // each way: enough to tell which quarter has the most
  Quarters out;
  for (int i = 0; i < kSteps; ++i) {
    for (int j = 0; j < kSteps; ++j) {
      const Point p = {low.x + (i + 0.5) / kSteps * (high.x - low.x),
                       low.y + (j + 0.5) / kSteps * (high.y - low.y)};
      if (!contains(loop, p)) out.share[i >= kSteps / 2][j >= kSteps / 2] += 1;
    }
  }
  return out;
}

/// Whether witnesses that each may be wrong lie off by so nearly the same angle, whatever the tolerance, that
/// chance would do it to one tracing in fifty or fewer (Student's t).
bool agree_by_themselves(const std::vector<Witness>& witnesses, double angle) {
  constexpr double kLeast = 0.05;  // degrees, which no profile shows
  // By degrees of freedom, from 1 on, for 2 in a hundred both ways.
  constexpr std::array<double, 8> kStudent = {31.82, 6.97, 4.54, 3.75, 3.37, 3.14, 3.00, 2.90};
  constexpr double kChance = 3;  // standard deviations
  if (witnesses.size() < 2 || std::abs(angle) < kLeast) return false;
  double weights = 0, spread = 0, by_scatter = 0;
  for (const Witness& w : witnesses) {
    const double weight = 1 / (w.room * w.room);
    weights += weight;
    spread += weight * (w.angle - angle) * (w.angle - angle);
    by_scatter += weight * weight * w.chance * w.chance;
  }
  const std::size_t freedom = witnesses.size() - 1;
  const double off = std::sqrt(spread / static_cast<double>(freedom) / weights);
  return std::abs(angle) > kStudent[std::min(freedom, kStudent.size()) - 1] * off &&
         std::abs(angle) > kChance * std::sqrt(by_scatter) / weights;
}

/// Whether a line that lies face up, y its depth, has the working edge at its right. It begins on the face,
/// its higher end, and where a flat leaves that more level than upright it goes toward the edge: under a face
/// there is wood. Where it goes straight down, or begins with an arc that may run back under the face, its
/// lower end tells.
bool edge_at_right(const FlatsAndArcs& line) {
  const Point front = line.joints.front();
  const Point back = line.joints.back();
  const bool from_front = front.y <= back.y;
  const Edge first = from_front ? edge_of(line, 0) : edge_of(line, line.size() - 1);
  const Point along = from_front ? direction_at(first, 0) : -1 * direction_at(first, 1);
  const bool level = std::abs(along.x) > std::abs(along.y);
  const double away = from_front ? back.x - front.x : front.x - back.x;
  if (level && (!first.is_arc() || away == 0)) return along.x > 0;
  return away > 0;
}

/// Whether a line from the face to a working edge at the left goes straight down first, and ends level. With
/// the edge at the right and the other way up, those would be the edge and the face themselves.
bool looks_as_well_mirrored(const FlatsAndArcs& line) {
  const Point first = direction_at(edge_of(line, 0), 0);
  const Point last = direction_at(edge_of(line, line.size() - 1), 1);
  constexpr double kSquare = 0.02;  // sine of the angle
  return std::abs(first.x) < kSquare && std::abs(last.y) < kSquare;
}

}  // namespace

double askew(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  const std::vector<Witness> all = witnesses(samples, fitted, allowed);
  std::vector<Witness> best;
  double most = 0;
  for (const Witness& candidate : all) {
    std::vector<Witness> agreeing;
    double weight = 0;
    for (const Witness& other : all) {
      if (std::abs(other.angle - candidate.angle) > other.room + candidate.room) continue;
      agreeing.push_back(other);
      weight += other.weight;
    }
    // Of angles that as much speaks for, the one that lies straighter.
    if (weight > most * (1 + 1e-9)) most = weight, best = agreeing;
  }
  double sum = 0;
  double weights = 0;
  for (const Witness& witness : best) {
    const double weight = 1 / (witness.room * witness.room);
    sum += weight * witness.angle;
    weights += weight;
  }
  // By so many times what all of them may be wrong by together, chance turns one tracing in fifty or so.
  constexpr double kSure = 2.1;
  const double angle = sum / weights;
  const bool some_plain =
      std::any_of(best.begin(), best.end(), [](const Witness& w) { return std::abs(w.angle) > w.room; });
  const bool sure = some_plain && std::abs(angle) > kSure / std::sqrt(weights);
  return sure || agree_by_themselves(best, angle) ? angle : 0;
}

Laid lay(Samples& samples, Fitted& fitted, bool closed, Upward upward, std::optional<EdgeAt> edge,
         const Allowed& allowed) {
  const bool at_right = edge == EdgeAt::right;
  Laid out;
  out.turned = askew(samples, fitted, allowed);
  const double cosine = std::cos(to_radians(out.turned));
  const double sine = std::sin(to_radians(out.turned));
  change_points(samples, fitted, [&](Point& p) { turn(p, cosine, sine); });

  if (closed) {
    if (upward == Upward::y_up) mirror(samples, fitted, false, true);
    if (area_within(fitted.line) < 0) reverse(samples, fitted);  // however it was drawn
    const Quarters waste = waste_by_quarter(fitted.line);
    // The upper corners first: a moulding is drawn face up.
    const double upper = std::max(waste.share[0][0], waste.share[1][0]);
    const double lower = std::max(waste.share[0][1], waste.share[1][1]);
    const bool over = lower > 1.2 * upper;
    const bool right = edge ? at_right : waste.share[1][over] > waste.share[0][over];
    mirror(samples, fitted, right, over);
    out.mirrored = right;
    if (area_within(fitted.line) > 0) reverse(samples, fitted);
    return out;
  }

  const Point a = fitted.line.joints.front();
  const Point b = fitted.line.joints.back();
  // What is sunk in a face leaves it and comes back, on one side of it.
  double above = 0, below = 0;
  for (const Point& p : samples.points) {
    above = std::max(above, a.y - p.y);
    below = std::max(below, p.y - a.y);
  }
  const double slack = 4 * allowed.tolerance + 4 * allowed.scatter;
  out.flute = std::abs(a.y - b.y) < slack && std::abs(a.x - b.x) > 4 * slack &&
              std::max(above, below) > slack && std::min(above, below) < slack;
  if (out.flute) {
    out.mirrored = at_right;
    mirror(samples, fitted, out.mirrored, above > below);
    if (fitted.line.joints.front().x < fitted.line.joints.back().x) reverse(samples, fitted);
    return out;
  }
  // With the working edge at the left a line goes deeper as it goes left, if y is depth.
  const bool falling = (b.y - a.y) * (b.x - a.x) < 0;
  const bool y_up = upward == Upward::y_up || (upward == Upward::unknown && falling == at_right);
  if (y_up) mirror(samples, fitted, false, true);
  out.mirrored = edge ? at_right : upward != Upward::unknown && edge_at_right(fitted.line);
  if (out.mirrored) mirror(samples, fitted, true, false);
  const Point first = fitted.line.joints.front();
  const Point last = fitted.line.joints.back();
  if (first.y > last.y || (first.y == last.y && first.x < last.x)) reverse(samples, fitted);
  out.may_be_mirrored = !edge && upward == Upward::unknown && looks_as_well_mirrored(fitted.line);
  return out;
}

void shift(Samples& samples, Fitted& fitted, Point by) {
  change_points(samples, fitted, [&](Point& p) { p = p + by; });
}

}  // namespace arrisline
