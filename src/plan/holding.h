// The stops that hold the blank.
#pragma once

#include <vector>

#include "arrisline/kit.h"
#include "plan/problem.h"
#include "plan/wood.h"

namespace arrisline {

/// Height above the board of wood for a stop screw to bear on, 1/8 in.
inline constexpr double kLeastHold = 3.175;

/// Where the middle of a stop stands beneath a blank so wide that lies so, as an x of the section: the edge
/// that is not free bears on the fence.
double stop_under(double stop, double blank_width, Lies lies);

/// Half the width that a stop needs for itself: its screw and the clearance beside it.
inline double half_column(const Board& board) {
  return board.screw / 2 + board.clear;
}

/// Wood stands right across the column about x, from the board up to kLeastHold.
bool bears(const Wood& wood, double x, double half, double thickness, bool underside_up);

/// In which of these ways to lie some stop screw of the board can hold the wood during the cut (rule 6),
/// given the wood after it; in all of them where the kit has no board.
LieSet held(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses, const Wood& after,
            LieSet lies);

}  // namespace arrisline
