// Lists of corners, as callipers give them.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Whether points in mm are the corners of flats, in order, with a few points at most between one corner and
/// the next: to be joined straight from one to the next, since so few tell no scatter. At every point the
/// line turns by a plain corner or runs straight on, within `tolerance`. A row of corners that an arc would
/// make, one that may only have been cut off, and a line that crosses itself are none.
bool are_corners(const std::vector<Point>& points, double tolerance);

}  // namespace arrisline
