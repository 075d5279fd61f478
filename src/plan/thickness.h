// How thick the wood that is left stands above the finished line.
#pragma once

#include "arrisline/geometry.h"
#include "plan/wood.h"

namespace arrisline {

struct Thickest {
  double height = 0;  // mm, distance to the nearest point of the target
  Point at;           // where
};

/// The thickest of what is left of the wood above the target, found to 1e-4 mm. Points of the wood inside the
/// target do not count.
Thickest thickest_left(const Wood& wood, const Loop& target);

}  // namespace arrisline
