// Shaped planes: laid on the target by one edge of their sole, and kept where the rest lies along it too.
// Shown by tests/plan/shaped_test.cpp.
#include <algorithm>
#include <cmath>

#include "plan/gouge.h"
#include "plan/problem.h"

namespace arrisline {

namespace {

constexpr double kAlong =
    0.02;  // mm within which a sole lies along the target: what a maker of planes holds to

/// The surface lies on the sole from end to end.
bool lies_along(const Edge& surface, const std::vector<Edge>& sole) {
  for (int i = 0; i <= 8; ++i) {
    if (distance(point_at(surface, i / 8.0), sole) > kAlong) return false;
  }
  return true;
}

}  // namespace

std::vector<Draft> shaped_drafts(const Problem& problem) {
  std::vector<Draft> out;
  const std::size_t planes = problem.kit.planes.size() + problem.turned.size();
  for (int p = 0; p < static_cast<int>(planes); ++p) {
    const Plane& plane = problem.plane(p);
    if (plane.kind != PlaneKind::shaped) continue;
    for (const double tilt : {0.0, 90.0, -90.0, 180.0}) {
      const std::vector<Edge> sole = sole_edges(plane, {{0, 0}, tilt});
      for (const Surface& s : problem.surfaces) {
        const Edge& edge = problem.edge(s);
        for (const Edge& part : sole) {
          if (part.is_arc() != edge.is_arc()) continue;
          // The sole runs with the wood on its left as the target does.
          if (part.is_arc() && (part.turn != edge.turn || std::abs(radius(part) - radius(edge)) > kAlong))
            continue;
          const Point move = part.is_arc() ? edge.centre - part.centre : edge.from - part.from;
          const Pose pose{move, tilt};
          if (gouges(problem.section.target, Sweep(plane, pose), kAlong / 4)) continue;
          const std::vector<Edge> placed = sole_edges(plane, pose);
          Draft draft;
          draft.plane = p;
          draft.poses = {pose};
          bool curved = false;
          for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
            if (!lies_along(problem.edge(problem.surfaces[i]), placed)) continue;
            draft.finishes.push_back({static_cast<int>(i), 0, 1});
            curved = curved || problem.surfaces[i].arc;
          }
          const bool known = std::any_of(out.begin(), out.end(), [&](const Draft& other) {
            return other.plane == p && distance(other.poses[0].at, pose.at) < 1e-6 &&
                   other.poses[0].tilt == tilt;
          });
          if (curved && !known) out.push_back(std::move(draft));
        }
      }
    }
  }
  return out;
}

}  // namespace arrisline
