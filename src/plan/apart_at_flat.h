// Work on both sides of a long level flat, as in a sunk field or about a raised one: one side is planned as
// if there were no other.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// The two sides of the longest level flat with room for a rebate plane, each with the flat and carried on
/// level with it to the end of the blank, or to a wall where the section rises again. Wood that stays in the
/// whole stays in each side, so no cut of a side gouges the whole. Empty where no flat has an arc on either
/// side of it and so many arcs and slanted flats on both together, and where the work is not of one piece.
std::vector<Section> sides_of_flat(const Problem& problem, int least_shaped);

/// The cuts of plans for several sides, one plan after another: where cuts of two sides are one floor made
/// with one plane they are one cut, and what a cut before has taken is not cut again.
std::vector<Draft> with_floors_joined(const Problem& problem, const std::vector<std::vector<Draft>>& sides);

}  // namespace arrisline
