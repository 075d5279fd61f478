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

bool joints_stay(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  constexpr double kCorner = 12;  // standard deviations that a corner lies from the samples beside it
  for (std::size_t j = 1; j < fitted.line.size(); ++j) {
    const std::size_t s = fitted.from[j];
    const Point joint = fitted.line.joints[j];
    const double off = std::min(distance(joint, samples.points[s - 1]), distance(joint, samples.points[s]));
    if (off > kCorner * allowed.scatter + 4 * samples.spacing) return false;
  }
  return true;
}

}  // namespace arrisline
