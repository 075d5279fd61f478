// A plane of another radius leaned on to the ends of its arc.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// Puts to the poses of the draft, upright on the arc at these tilts in order, those at which the plane,
/// where something stops it short of an end of the arc, leans back about its own centre and goes on; and
/// leaves out what these make up for. For a sole that bears at one place.
void lean_on(const Problem& problem, const Surface& arc, const Plane& plane, const std::vector<double>& tilts,
             Draft& draft);

}  // namespace arrisline
