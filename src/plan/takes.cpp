// Every lean at which the way out from the place is free, and then every place of a sole over it. Shown by
// tests/plan/large_test.cpp.
#include "plan/takes.h"

#include <algorithm>
#include <cmath>

#include "plan/gouge.h"

namespace arrisline {

namespace {

constexpr double kTurn = 0.5;   // degrees between the leans looked at
constexpr double kApart = 0.1;  // mm between the places on a sole
// mm that a sole may go into the target, or stand short of the place: more than half of either step moves it
// by
constexpr double kHair = 0.12;

/// The way straight out of the wood, a thread wide.
bool way_is_free(const Loop& target, Point p, double tilt) {
  Plane thread;
  thread.width = 0.02;
  return !gouges(target, Sweep(thread, {p, tilt}), thread.width / 4);
}

bool flat_takes(const Loop& target, const Plane& plane, Point p, double tilt) {
  const int places = std::max(2, static_cast<int>(std::ceil(plane.width / kApart)));
  for (int i = 0; i <= places; ++i) {
    const double u = plane.width * (static_cast<double>(i) / places - 0.5);
    if (!gouges(target, Sweep(plane, {p - u * across(tilt), tilt}), kHair)) return true;
  }
  return false;
}

bool curved_takes(const Problem& problem, const Surface& arc, const Plane& plane, Point p) {
  if (plane.kind != (arc.bead ? PlaneKind::hollow : PlaneKind::round)) return false;
  for (double tilt = arc.lo; tilt < arc.hi + kTurn; tilt += kTurn) {
    const Sweep sweep(plane, pose_on_arc(problem, arc, plane, std::min(tilt, arc.hi)));
    if (sweep.lifted(-kHair).depth(p) > 0 && !gouges(problem.section.target, sweep, kHair)) return true;
  }
  return false;
}

/// Where a wide flat sole stands a narrow one does: the narrowest that leans and the narrowest plough, where
/// the kit has them.
std::vector<const Plane*> narrowest_flats(const Kit& kit) {
  const Plane* leaning = nullptr;
  const Plane* square = nullptr;
  for (const Plane& plane : kit.planes) {
    if (!plane.is_flat()) continue;
    const Plane*& narrowest = plane.kind == PlaneKind::plough ? square : leaning;
    if (narrowest == nullptr || plane.width < narrowest->width) narrowest = &plane;
  }
  std::vector<const Plane*> out = {leaning, square};
  std::erase(out, nullptr);
  return out;
}

}  // namespace

bool something_takes(const Problem& problem, Point p) {
  const Loop& target = problem.section.target;
  const std::vector<const Plane*> flats = narrowest_flats(problem.kit);
  for (double tilt = -180; tilt < 180; tilt += kTurn) {
    if (!way_is_free(target, p, tilt)) continue;
    for (const Plane* plane : flats) {
      if (plane->kind == PlaneKind::plough && !is_square(tilt)) continue;
      if (flat_takes(target, *plane, p, tilt)) return true;
    }
  }
  return std::any_of(problem.surfaces.begin(), problem.surfaces.end(), [&](const Surface& surface) {
    return surface.arc &&
           std::any_of(problem.kit.planes.begin(), problem.kit.planes.end(),
                       [&](const Plane& plane) { return curved_takes(problem, surface, plane, p); });
  });
}

}  // namespace arrisline
