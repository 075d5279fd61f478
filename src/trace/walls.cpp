// Shown by tests/trace/walls_test.cpp.
#include "trace/walls.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "section/walk.h"

namespace arrisline {
namespace {

/// Samples filled in between two measured ones: from `first` up to, but without, `end`.
struct Gap {
  std::size_t first = 0;
  std::size_t end = 0;
};

/// The gap that the joint lies in, or that begins or ends with it.
std::optional<Gap> gap_at(const Samples& samples, std::size_t at) {
  Gap out{at, at};
  while (out.first > 0 && samples.filled[out.first - 1]) --out.first;
  while (out.end < samples.points.size() && samples.filled[out.end]) ++out.end;
  if (out.first == 0 || out.first == out.end || out.end == samples.points.size()) return std::nullopt;
  return out;
}

/// The bulge of what an arc is between two places on it, or all but on it.
double bulge_between(const Edge& arc, Point from, Point to) {
  if (!arc.is_arc()) return 0;
  const Point a = from - arc.centre;
  const Point b = to - arc.centre;
  double swept = std::atan2(cross(a, b), dot(a, b));
  if ((swept > 0) != (arc.turn == Turn::left)) swept += swept > 0 ? -2 * kPi : 2 * kPi;
  return std::tan(swept / 4);
}

/// The line with a flat across the gap in the place of a joint.
Fitted with_wall(const Samples& samples, const Fitted& fitted, std::size_t joint, Gap gap) {
  const Point from = samples.points[gap.first - 1];
  const Point to = samples.points[gap.end];
  const Edge before = edge_of(fitted.line, joint - 1);
  const Edge after = edge_of(fitted.line, joint);
  Fitted out = fitted;
  const auto at = static_cast<std::ptrdiff_t>(joint);
  out.line.bulges[joint - 1] = bulge_between(before, before.from, from);
  out.line.bulges[joint] = bulge_between(after, to, after.to);
  out.line.joints[joint] = from;
  out.line.joints.insert(out.line.joints.begin() + at + 1, to);
  out.line.bulges.insert(out.line.bulges.begin() + at, 0);
  out.from[joint] = gap.first;
  out.from.insert(out.from.begin() + at + 1, gap.end);
  return out;
}

/// Whether the measured samples, one after the other, all lie nearer to the working edge: so those of a
/// profile gauge do, whose pins know nothing of an undercut.
bool as_pins(const Samples& samples) {
  const Point* before = nullptr;
  for (std::size_t i = 0; i < samples.points.size(); ++i) {
    if (samples.filled[i]) continue;
    if (before && samples.points[i].x >= before->x) return false;
    before = &samples.points[i];
  }
  return true;
}

/// By how much an arc reaches farther along the face, either way, than its ends.
double undercuts(const Edge& link) {
  if (!link.is_arc()) return 0;
  const Reach reach = reach_of(link);
  const auto [low, high] = std::minmax(link.from.x, link.to.x);
  return std::max(low - reach.low.x, reach.high.x - high);
}

bool is_wall(const Edge& link) {
  const Point along = link.to - link.from;
  return !link.is_arc() && std::abs(along.y) > std::abs(along.x);
}

/// Puts a flat across the gap at the joint, if there is one that stands upright or level and the line strays
/// in it.
void put_in_wall(const Samples& samples, Fitted& fitted, const Allowed& allowed, std::size_t joint,
                 double apart, bool pins) {
  const std::optional<Gap> gap = gap_at(samples, fitted.from[joint]);
  // Measured samples on both sides, one to each link at the least.
  if (!gap || gap->first <= fitted.from[joint - 1] || gap->end >= fitted.from[joint + 1]) return;
  const Edge across{samples.points[gap->first - 1], samples.points[gap->end], {}, Turn::straight};
  const Point along = across.to - across.from;
  if (std::min(std::abs(along.x), std::abs(along.y)) > apart) return;
  const Edge before = edge_of(fitted.line, joint - 1);
  const Edge after = edge_of(fitted.line, joint);
  const bool under = pins && !is_wall(before) && !is_wall(after) &&
                     std::max(undercuts(before), undercuts(after)) > allowed.tolerance;
  if (!under && distance(fitted.line.joints[joint], across) <= apart) return;
  const Fitted begun = with_wall(samples, fitted, joint, *gap);
  const Fitted next = fit(samples, begun, Held(begun.line.size()), allowed);
  if (next.worst <= std::max(1.0, fitted.worst)) fitted = next;
}

}  // namespace

void put_in_walls(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  const double apart = 1.5 * samples.spacing + 6 * samples.scatter;  // of points beside each other
  const bool pins = as_pins(samples);
  // Backward, and then onward: an arc between two gaps runs on in both, until one has its wall.
  for (std::size_t joint = fitted.line.size(); pins && joint-- > 1;)
    put_in_wall(samples, fitted, allowed, joint, apart, true);
  for (std::size_t joint = 1; joint < fitted.line.size(); ++joint)
    put_in_wall(samples, fitted, allowed, joint, apart, pins);
}

}  // namespace arrisline
