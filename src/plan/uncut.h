// Whether the wood that may be left would be the moulding itself.
#pragma once

#include "plan/problem.h"

namespace arrisline {

/// The smallest size that anything drawn has, mm: of a flat its length, or where it slants the lesser of how
/// far it goes in and down; of an arc how far it stands from its chord. REQUIRES: there are surfaces.
double least_size(const Problem& problem);

/// Whether some flat or arc of the drawing is nowhere laid bare by the plan's planes, but for its ends, nor,
/// of a flat, does a cut run along it as near as the plan comes to the drawing. REQUIRES: the plan is
/// feasible, and of this section.
bool leaves_uncut(const Problem& problem, const Plan& plan);

}  // namespace arrisline
