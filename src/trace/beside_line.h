// Single points of a list in order that lie off the line which those before and after them follow.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Which points, in mm, are slips: the points before and behind one follow, without it, one smooth line or
/// two that meet in a corner, within their scatter, and it lies beside that, by more than scatter and
/// `tolerance` explain, that of rounding to `step` among it. What stands in its place as the pins of a
/// profile gauge do is none, however deep. So many that they are no slips are none, and neither are any of
/// points in no order, or of a few: then none is true.
std::vector<bool> beside_line(const std::vector<Point>& points, double tolerance, double step);

}  // namespace arrisline
