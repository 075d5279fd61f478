// What has to be cut, and at which tilts.
#include "plan/problem.h"

#include <algorithm>
#include <cmath>

#include "plan/touch.h"
#include "plan/wood.h"

namespace arrisline {

namespace {

/// Outward normal of the target at fraction t: the target lies to the left.
Point normal_at(const Edge& edge, double t) {
  const Point d = direction_at(edge, t);
  return {d.y, -d.x};
}

}  // namespace

Problem make_problem(const Section& section, const Kit& kit, const PlanOptions& options) {
  Problem problem{section, kit, options, blank_outline(section.width, section.thickness), {}};
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (section.source[i] < 0) continue;
    const Edge& edge = section.target[i];
    Surface s;
    s.edge = static_cast<int>(i);
    s.arc = edge.is_arc();
    s.bead = edge.turn == Turn::left;
    s.tilt = tilt_of(normal_at(edge, 0.5));
    if (s.arc) {
      const double half = to_degrees(std::abs(sweep(edge))) / 2;
      s.lo = s.tilt - half;
      s.hi = s.tilt + half;
    }
    problem.surfaces.push_back(s);
  }
  return problem;
}

Lies lies_for(double tilt) {
  // Half a degree of slack keeps a plane on its side counted as on its side.
  const double t = wrap_degrees(tilt);
  if (std::abs(t) > 90.5) return Lies::underside_up;
  if (t < -50) return Lies::end_for_end;
  return Lies::face_up;
}

Pose pose_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double tilt) {
  const Edge& edge = problem.edge(arc);
  const double r = radius(edge);
  Pose pose{edge.centre + (arc.bead ? r : -r) * outward(tilt), tilt};
  const bool too_flat = plane.kind == PlaneKind::round && plane.radius > r;
  const bool too_tight = plane.kind == PlaneKind::hollow && plane.radius < r;
  if (too_flat || too_tight) {
    // Such a sole bears at its edges and cannot come down to the arc in its middle.
    const double lift = rest_height(problem.section.target, Sweep(plane, pose));
    if (lift > 0 && lift < r) pose.at = pose.at + lift * outward(tilt);
  }
  return pose;
}

}  // namespace arrisline
