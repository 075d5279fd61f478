// The sole comes in along the plane over the wood's own silhouette. The silhouette is looked up line by line:
// on a grid, and on both sides of every arris and corner, between which it is smooth. Shown by tests/replay.
#include "replay/seating.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace arrisline::replaying {

// Wood this near to the sole along the plane is touching it: less than the thinnest shaving.
static constexpr double kTouch = 0.02;
// A contact nearer to the middle than this share of the width is one on which the plane rocks.
static constexpr double kOffMiddle = 0.02;
// One unbroken patch steadies the plane as two contacts do from here on, in degrees of its sole.
static constexpr double kSteadyPatch = 20;
// Lines across the sole. Between two of them a smooth silhouette hides less than its curvature times an
// eighth of their distance squared: 0.0001 mm for a sole of 10 mm over an arc of 1 mm.
static constexpr int kLines = 360;
// How far beside an arris it is looked at: far above rounding, far below kTouch.
static constexpr double kBeside = 1e-7;
// And again where an arris that is undercut is thick enough to count as wood (1e-6 mm along the line).
static constexpr double kBehindTip = 1e-5;
// The sole's edge is against a wall when the wood just beyond stands higher by this: a slope would have to
// lean less than 6° from the plane to rise as much within kTouch on each side.
static constexpr double kWallRise = 0.4;
// Heights this close to the highest of a patch share its peak.
static constexpr double kPeak = 1e-6;

namespace {

struct Line {
  double u;
  std::optional<double> over;  // height of the wood over the sole in its pose; nothing where there is no wood
};

}  // namespace

static std::optional<double> height_over(const Standing& wood, const Plane& plane, const Pose& pose,
                                         double u) {
  const std::optional<double> top = wood.top(pose, u);
  if (!top) return std::nullopt;
  return *top - sole_height(plane, u);
}

static std::vector<Line> look(const Standing& wood, const Plane& plane, const Pose& pose) {
  // Sides of the sole may run along a wall, which is beside it, not under it.
  const double half = plane.width / 2 - kBeside;
  std::vector<double> us;
  for (int i = 0; i <= kLines; ++i) us.push_back(half * (2.0 * i / kLines - 1));
  for (const Point p : wood.corners()) {
    const double u = to_sole_frame(pose, p).x;
    for (const double beside : {u - kBehindTip, u - kBeside, u + kBeside, u + kBehindTip})
      if (std::abs(beside) <= half) us.push_back(beside);
  }
  std::sort(us.begin(), us.end());
  us.erase(std::unique(us.begin(), us.end()), us.end());
  std::vector<Line> lines;
  for (const double u : us) lines.push_back({u, height_over(wood, plane, pose, u)});
  return lines;
}

// Where contact ends between a line that touches and the next, which does not.
static double last_touch(const Standing& wood, const Plane& plane, const Pose& pose, double touching,
                         double clear, double least) {
  while (std::abs(clear - touching) > kBeside) {
    const double u = (clear + touching) / 2;
    const std::optional<double> over = height_over(wood, plane, pose, u);
    (over && *over >= least ? touching : clear) = u;
  }
  return touching;
}

// Whether a contact at the sole's edge is at an arris, in a corner or against a wall, not on plain wood.
static bool edge_guides(const Standing& wood, const Plane& plane, const Pose& pose, double u,
                        double stands_off) {
  const Point contact = from_sole_frame(pose, {u, sole_height(plane, u) + stands_off});
  for (const Point p : wood.corners())
    if (distance(p, contact) <= kTouch && wood.is_corner(p)) return true;
  const double side = u > 0 ? 1 : -1;
  const std::optional<double> beyond = wood.top(pose, side * (plane.width / 2 + kTouch));
  const std::optional<double> within = wood.top(pose, side * (plane.width / 2 - kTouch));
  return beyond && within && *beyond - *within >= kWallRise;
}

// Patches end kBeside within the sole, so within its circle.
static double span(const Plane& plane, const Patch& patch) {
  const auto angle = [&](double u) { return to_degrees(std::asin(u / plane.radius)); };
  return angle(patch.u1) - angle(patch.u0);
}

static void find_patches(const Standing& wood, const Plane& plane, const Pose& pose,
                         const std::vector<Line>& lines, Seating& out) {
  const double least = out.stands_off - kTouch;
  const auto touches = [&](std::size_t i) { return lines[i].over && *lines[i].over >= least; };
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!touches(i)) continue;
    std::size_t end = i;  // of the patch: the first line that does not touch
    while (end < lines.size() && touches(end)) ++end;
    Patch patch;
    patch.u0 = i == 0 ? lines[i].u : last_touch(wood, plane, pose, lines[i].u, lines[i - 1].u, least);
    patch.u1 = lines[end - 1].u;
    if (end < lines.size()) patch.u1 = last_touch(wood, plane, pose, patch.u1, lines[end].u, least);
    const std::span<const Line> touched = std::span(lines).subspan(i, end - i);
    double highest = least;
    for (const Line& line : touched) highest = std::max(highest, *line.over);
    const auto at_peak = [&](const Line& line) { return *line.over >= highest - kPeak; };
    patch.peak = (std::find_if(touched.begin(), touched.end(), at_peak)->u +
                  std::find_if(touched.rbegin(), touched.rend(), at_peak)->u) /
                 2;
    patch.span_degrees = span(plane, patch);
    const bool at_edge = std::abs(patch.peak) >= plane.width / 2 - kTouch;
    patch.guides = patch.span_degrees >= kSteadyPatch || !at_edge ||
                   edge_guides(wood, plane, pose, patch.peak, out.stands_off);
    out.patches.push_back(patch);
    i = end;
  }
}

Seating seat(const Standing& wood, const Plane& plane, const Pose& pose) {
  Seating out;
  const std::vector<Line> lines = look(wood, plane, pose);
  for (const Line& line : lines) {
    if (!line.over) continue;
    out.stands_off = out.touches ? std::max(out.stands_off, *line.over) : *line.over;
    out.touches = true;
  }
  if (!out.touches) return out;
  find_patches(wood, plane, pose, lines, out);
  for (const Patch& patch : out.patches) {
    if (patch.span_degrees >= kSteadyPatch) {
      out.contacts.push_back(patch.u0);
      out.contacts.push_back(patch.u1);
    } else if (patch.guides) {
      out.contacts.push_back(patch.peak);
    }
  }
  const double off = kOffMiddle * plane.width;
  std::optional<double> left, right;
  for (const double u : out.contacts) {
    if (u <= -off && !left) left = u;
    if (u >= off) right = u;
  }
  out.two_arrises = left && right;
  if (out.two_arrises) out.imbalance = std::abs(*left + *right) / plane.width;
  return out;
}

}  // namespace arrisline::replaying
