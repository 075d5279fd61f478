// Points of one line, measured in any order, put into the order of the line.
#pragma once

#include <cstddef>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Points in the order in which a smooth way through them passes, from one end or the other; those that
/// follow the line as they stand keep their order, and `changed` says whether they did not. Of a few thousand
/// points. The two sides of a cleft are told apart where its gap is over some six times their scatter.
std::vector<Point> in_line(const std::vector<Point>& points, bool& changed);

}  // namespace arrisline
