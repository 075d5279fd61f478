// Shown by tests/section/scaled_test.cpp and tests/cli/trace_points.golden.
#include "section/nearest_plane.h"

#include <cmath>

namespace arrisline {

const Plane* nearest_plane(const Kit& kit, PlaneKind kind, double radius) {
  const Plane* best = nullptr;
  for (const Plane& plane : kit.planes) {
    if (plane.kind != kind) continue;
    if (!best || std::abs(plane.radius - radius) < std::abs(best->radius - radius)) best = &plane;
  }
  return best;
}

}  // namespace arrisline
