// Which plane of a kit an arc is nearest to.
#pragma once

#include "arrisline/kit.h"

namespace arrisline {

/// The kit's plane of this kind whose radius is nearest to `radius`, the first of equals; null where it has
/// none.
const Plane* nearest_plane(const Kit& kit, PlaneKind kind, double radius);

}  // namespace arrisline
