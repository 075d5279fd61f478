// Single points that lie off the line that the rest were measured along.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Takes out, and gives back, points that lie alone, many times as far from any other as those are from one
/// another, beside the line and not along it: slips of the hand or of whoever wrote them down. More than one
/// in a hundred are no strays, and of few points nothing tells: then none. Before these, what beside_line()
/// tells of a list in order, by the tolerance and the step of its figures.
std::vector<Point> take_out_strays(std::vector<Point>& points, double tolerance, double step);

}  // namespace arrisline
