// Where a plane at a pose would cut or meet what is to stay.
#pragma once

#include <vector>

#include "plan/sweep.h"

namespace arrisline {

/// True where some point of the outline lies more than `allowed` mm inside the sweep.
bool gouges(const Loop& outline, const Sweep& sweep, double allowed);

/// The body of a plane as a flat sole standing where the body begins. REQUIRES: the plane has one.
struct PlacedBody {
  Plane sole;
  Pose pose;
};
PlacedBody body_at(const Plane& plane, const Pose& pose);

/// The body of the plane, where it is wider than the sole, meets none of these edges.
bool body_clears(const std::vector<Edge>& edges, const Plane& plane, const Pose& pose);

/// How deep the outline lies inside the sweep at the worst, mm; 0 where it stays out. Found to 1e-4 mm.
double gouge_depth(const Loop& outline, const Sweep& sweep);

}  // namespace arrisline
