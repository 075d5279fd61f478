// Planes with nothing but their soles.
#pragma once

#include "arrisline/plane.h"

namespace arrisline::test {

inline Plane flat(double width) {
  Plane plane;
  plane.kind = PlaneKind::rebate;
  plane.width = width;
  return plane;
}

/// A hollow or a round with a sole of 60 degrees.
inline Plane curved(PlaneKind kind, double radius) {
  Plane plane;
  plane.kind = kind;
  plane.radius = radius;
  plane.width = radius;
  return plane;
}

}  // namespace arrisline::test
