// Shown by tests/plan/apart_test.cpp.
#include "plan/apart_mirrored.h"

#include <algorithm>
#include <cmath>

#include "plan/gouge.h"

namespace arrisline {

namespace {

/// An upright line, by its distance from the working edge, and what lies on either side of it.
struct Mirror {
  double x;
  int surfaces;

  Point of(Point p) const { return {2 * x - p.x, p.y}; }
  Pose of(const Pose& pose) const { return {of(pose.at), wrap_degrees(-pose.tilt)}; }
  int of(int surface) const { return surfaces - 1 - surface; }
  Stretch of(const Stretch& s) const { return {of(s.surface), 1 - s.to, 1 - s.from, s.nearly}; }
  bool swaps(const Edge& a, const Edge& b) const {
    return a.turn == b.turn && distance(of(a.from), b.to) < kExact && distance(of(a.to), b.from) < kExact &&
           (!a.is_arc() || distance(of(a.centre), b.centre) < kExact);
  }
};

Draft image(const Mirror& mirror, Draft draft) {
  for (std::vector<Pose>* poses : {&draft.poses, &draft.otherwise})
    for (Pose& pose : *poses) pose = mirror.of(pose);
  for (Stretch& stretch : draft.finishes) stretch = mirror.of(stretch);
  for (double& start : draft.starts) start = wrap_degrees(-start);
  if (draft.arc >= 0) draft.arc = mirror.of(draft.arc);
  return draft;
}

/// As the planner's own drafts are: clear of what stays, which here need not be its own mirror image.
bool is_clear(const Problem& problem, const Draft& draft) {
  const Plane& plane = problem.plane(draft.plane);
  const Loop& target = problem.section.target;
  std::vector<Pose> poses = draft.poses;
  poses.insert(poses.end(), draft.otherwise.begin(), draft.otherwise.end());
  for (const double start : draft.starts) poses.push_back(start_pose(problem, draft, start));
  return std::all_of(poses.begin(), poses.end(), [&](const Pose& pose) {
    return body_clears(target, plane, pose) && !gouges(target, Sweep(plane, pose), kExact);
  });
}

}  // namespace

std::vector<Draft> mirrored(const Problem& problem, const std::vector<Draft>& drafts) {
  const std::vector<Surface>& surfaces = problem.surfaces;
  if (surfaces.empty()) return {};
  const Mirror mirror{(surfaces.front().line.from.x + surfaces.back().line.to.x) / 2,
                      static_cast<int>(surfaces.size())};
  for (int s = 0; s < mirror.surfaces; ++s) {
    if (!mirror.swaps(surface_of(problem, s).line, surface_of(problem, mirror.of(s)).line)) return {};
  }
  std::vector<Draft> out;
  for (const Draft& draft : drafts) {
    if (problem.plane(draft.plane).kind == PlaneKind::shaped) return {};
    out.push_back(image(mirror, draft));
    if (!is_clear(problem, out.back())) return {};
  }
  return out;
}

}  // namespace arrisline
