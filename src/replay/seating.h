// How a curved sole sits on the wood when it is set down.
#pragma once

#include <vector>

#include "replay/standing.h"

namespace arrisline::replaying {

/// One stretch of the sole that touches, u0 ≤ peak ≤ u1, mm across the sole from its middle.
struct Patch {
  double u0 = 0, u1 = 0, peak = 0;
  double span_degrees = 0;  // of the sole's own arc
  bool guides = false;      // false for an edge of the sole bearing on plain wood
};

struct Seating {
  bool touches = false;
  double stands_off = 0;  // mm along the plane from the pose to where it first touches, positive outward
  std::vector<Patch> patches;
  std::vector<double> contacts;  // places that guide, u rising; a patch of 20° or more gives both its ends

  /// Contacts at least 2 % of the width off the middle on both sides.
  bool two_arrises = false;
  double imbalance = 0;  // |u₁ + u₂| / width of the outermost of them; 0 without two
};

/// Slides the sole in along the plane until it touches. REQUIRES: a hollow or a round.
Seating seat(const Standing& wood, const Plane& plane, const Pose& pose);

}  // namespace arrisline::replaying
