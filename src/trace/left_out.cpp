// Shown by tests/trace/corners_test.cpp.
#include "trace/left_out.h"

#include <algorithm>
#include <limits>
#include <vector>

namespace arrisline {

double farthest_off(const Samples& samples, const FlatsAndArcs& line) {
  constexpr double kOn = 1000;  // mm: past all that may be traced of a side
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < line.size(); ++i) edges.push_back(edge_of(line, i));
  const auto run_on = [](Point& end, Point from) {
    const double length = distance(end, from);
    if (length > 0) end = end + (kOn / length) * (end - from);
  };
  if (!edges.front().is_arc()) run_on(edges.front().from, edges.front().to);
  if (!edges.back().is_arc()) run_on(edges.back().to, edges.back().from);
  double most = 0;
  for (std::size_t s = 0; s < samples.points.size(); ++s) {
    if (samples.filled[s]) continue;
    double least = std::numeric_limits<double>::infinity();
    for (const Edge& edge : edges) least = std::min(least, distance(samples.points[s], edge));
    most = std::max(most, least);
  }
  return most;
}

bool joint_stays(const Samples& samples, const Fitted& fitted, std::size_t joint, const Allowed& allowed) {
  constexpr double kCorner = 12;  // standard deviations that a corner lies from the samples beside it
  // The measured points on either side; in a gap a corner may lie as far from them as they are apart.
  std::size_t before = fitted.from[joint] - 1;
  std::size_t after = fitted.from[joint];
  while (before > 0 && samples.filled[before]) --before;
  while (after + 1 < samples.points.size() && samples.filled[after]) ++after;
  const Point a = samples.points[before];
  const Point b = samples.points[after];
  const Point at = fitted.line.joints[joint];
  const double gap = after - before > 1 ? distance(a, b) : 0;
  return std::min(distance(at, a), distance(at, b)) <=
         kCorner * allowed.scatter + std::max(4 * samples.spacing, gap);
}

bool joints_stay(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  for (std::size_t j = 1; j < fitted.line.size(); ++j)
    if (!joint_stays(samples, fitted, j, allowed)) return false;
  return true;
}

double distance_from(const Samples& samples, Point place) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < samples.points.size(); ++i)
    least =
        std::min(least, distance(place, Edge{samples.points[i - 1], samples.points[i], {}, Turn::straight}));
  return least;
}

double farthest_joint(const Samples& samples, const Fitted& fitted) {
  double out = 0;
  for (std::size_t j = 1; j < fitted.line.size(); ++j)
    out = std::max(out, distance_from(samples, fitted.line.joints[j]));
  return out;
}

}  // namespace arrisline
