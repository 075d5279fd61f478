// Flat cuts that take waste from an arc. Shown by tests/plan/rails_test.cpp and reach_test.cpp.
#include <algorithm>
#include <cmath>

#include "geometry/crossing.h"
#include "plan/gouge.h"
#include "plan/problem.h"
#include "plan/touch.h"

namespace arrisline {

namespace {

/// Face or underside, into which a square cut with its corner on a cove is made at this lean of its normal.
double face_for(double lean) {
  return std::abs(wrap_degrees(lean)) <= 90 ? 0 : 180;
}

/// Where the corner of a square cut meets a cove, in the frame of the tilt, and to which side the cut lies.
struct Corner {
  double u = 0;
  double v = 0;
  int open = 1;
};

Corner corner_at(const Problem& problem, const Surface& cove, double lean, double frame) {
  const Edge& edge = problem.edge(cove);
  const Point at = edge.centre - radius(edge) * outward(lean);
  const Point e = across(frame);
  return {dot(at, e), dot(at, outward_of(e)), wrap_degrees(lean - frame) > 0 ? -1 : 1};
}

}  // namespace

std::vector<Pose> waste_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double lean) {
  if (arc.bead) return chamfer_on_arc(problem, arc, plane, lean, 0);
  const double frame = face_for(lean);
  const Corner corner = corner_at(problem, arc, lean, frame);
  return flat_cut(problem, plane, frame, corner.u, corner.open, corner.v);
}

bool is_sunk_in_edge(const Surface& arc) {
  const double middle = std::abs(wrap_degrees((arc.lo + arc.hi) / 2));
  return middle > 45 + 1e-6 && middle < 135 - 1e-6;
}

std::vector<Pose> grooves_in_cove(const Problem& problem, const Surface& arc, const Plane& plough,
                                  double lean) {
  const double frame =
      is_sunk_in_edge(arc) ? std::copysign(90, wrap_degrees((arc.lo + arc.hi) / 2)) : face_for(lean);
  const Corner corner = corner_at(problem, arc, lean, frame);
  return grooves(problem, plough, frame, corner.u, corner.open, corner.v);
}

std::vector<Pose> chamfer_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double lean,
                                 double off) {
  const Edge& edge = problem.edge(arc);
  const Point along = across(lean);
  const Point touch = edge.centre + (radius(edge) + off) * outward_of(along);
  const double half = plane.width / 2;
  auto stands = [&](double u) {
    return !gouges(problem.section.target, Sweep(plane, {touch + u * along, lean}), kExact);
  };
  if (stands(0)) return {{touch, lean}};
  // The nearest places on either side at which the sole's line runs into the target; the touch itself is
  // none.
  double left = -1e9, right = 1e9;
  std::vector<double> ts;
  for (const Edge& other : problem.section.target) {
    const Measured measured(other);
    ts.clear();
    cross_line(measured, touch, along, ts);
    ts.push_back(0);
    for (const double t : ts) {
      const Point p = measured.at(t);
      const double u = dot(p - touch, along);
      if (std::abs(cross(along, p - touch)) > 1e-6 || std::abs(u) < 1e-3) continue;
      if (u < 0) left = std::max(left, u);
      if (u > 0) right = std::min(right, u);
    }
  }
  // An end of the sole against the one or the other, or at the touch, where the arc ends in a corner.
  for (const double u : {left + half, right - half, half, -half}) {
    if (std::abs(u) <= half + 1e-6 && stands(u)) return {{touch + u * along, lean}};
  }
  return {};
}

}  // namespace arrisline
