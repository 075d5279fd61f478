// Shown by tests/plan/wood_test.cpp and tests/plan/gauge_test.cpp.
#include "plan/gouge.h"

#include <algorithm>

#include "geometry/crossing.h"

namespace arrisline {

bool gouges(const Loop& outline, const Sweep& sweep, double allowed) {
  // Asked so often that room made anew each time would count.
  static thread_local std::vector<double> ts;
  for (const Edge& edge : outline) {
    const Measured measured(edge);
    if (sweep.clear_of(measured, kSame)) continue;
    ts.clear();
    sweep.crossings(measured, allowed, ts);
    std::sort(ts.begin(), ts.end());
    ts.push_back(1);
    double from = 0;
    for (double to : ts) {
      if (to - from > 1e-12 && sweep.depth(measured.at((from + to) / 2)) > allowed + kSame) return true;
      from = to;
    }
  }
  return false;
}

PlacedBody body_at(const Plane& plane, const Pose& pose) {
  PlacedBody out;
  out.sole.width = plane.width + 2 * plane.body->overhang;
  out.pose = {pose.at + plane.body->above * outward(pose.tilt), pose.tilt};
  return out;
}

bool body_clears(const std::vector<Edge>& edges, const Plane& plane, const Pose& pose) {
  if (!plane.body) return true;
  constexpr double kMeets = 1e-5;  // mm
  const PlacedBody body = body_at(plane, pose);
  return !gouges(edges, Sweep(body.sole, body.pose), kMeets);
}

double gouge_depth(const Loop& outline, const Sweep& sweep) {
  if (!gouges(outline, sweep, 0)) return 0;
  double low = 0;
  double high = sweep.half();
  while (high - low > 1e-4) {
    const double mid = (low + high) / 2;
    (gouges(outline, sweep, mid) ? low : high) = mid;
  }
  return high;
}

}  // namespace arrisline
