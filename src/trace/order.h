// Points of one line, measured in any order, put into the order of the line.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// The points as a path through near neighbours passes them. Points that follow the line as they stand keep
/// their order. At most a few thousand points; time grows with their square.
std::vector<Point> in_line(std::vector<Point> points);

}  // namespace arrisline
