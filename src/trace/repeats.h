// Points that a list holds more than once.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Each place once, in the order in which they first come: a point with the very figures of another one tells
/// nothing more, and would pass for points that do not scatter. A last one that is the first again stays
/// where it is the only such: it closes the line.
std::vector<Point> without_repeats(const std::vector<Point>& points);

}  // namespace arrisline
