// Planes by their figures.
#pragma once

#include "arrisline/plane.h"

namespace arrisline::testing {

inline Plane plane_of(PlaneKind kind, double width, double radius = 0) {
  Plane plane;
  plane.kind = kind;
  plane.width = width;
  plane.radius = radius;
  return plane;
}

}  // namespace arrisline::testing
