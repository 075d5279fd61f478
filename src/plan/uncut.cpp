// Shown by tests/plan/remedies_test.cpp.
#include "plan/uncut.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {
namespace {

/// mm of wood under which a surface counts as bare. A sole on an arc bears along a line, which lies within
/// half the distance of two points looked at: on any arc worth a plane that is far less than this above it.
constexpr double kBare = 0.01;

double size_of(const Edge& edge) {
  const double chord = distance(edge.from, edge.to);
  if (edge.is_arc()) {
    const Point middle = 0.5 * (edge.from + edge.to);
    return distance(point_at(edge, 0.5), middle);
  }
  const double across = std::abs(edge.to.x - edge.from.x);
  const double down = std::abs(edge.to.y - edge.from.y);
  return std::min(across, down) > kSameCircle ? std::min(across, down) : chord;
}

bool is_bare(const Wood& wood, const Edge& edge) {
  constexpr int kPoints = 200;
  constexpr int kEnd = 10;  // of them, where what is beside it is laid bare
  for (int i = kEnd; i <= kPoints - kEnd; ++i) {
    if (distance(point_at(edge, static_cast<double>(i) / kPoints), wood.edges()) < kBare) return true;
  }
  return false;
}

}  // namespace

double least_size(const Problem& problem) {
  double least = std::numeric_limits<double>::infinity();
  for (const Surface& s : problem.surfaces) least = std::min(least, size_of(problem.edge(s)));
  return least;
}

bool leaves_uncut(const Problem& problem, const Plan& plan) {
  Wood wood(problem.blank);
  for (const Cut& cut : plan.cuts) {
    if (cut.plane.kind == PlaneKind::scraper) continue;
    for (const Pose& pose : cut.poses) wood.cut(Sweep(cut.plane, pose));
  }
  return std::any_of(problem.surfaces.begin(), problem.surfaces.end(),
                     [&](const Surface& s) { return !is_bare(wood, problem.edge(s)); });
}

}  // namespace arrisline
