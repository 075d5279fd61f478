// How much wood a pose takes along the plane.
#pragma once

#include <span>

#include "plan/sweep.h"

namespace arrisline {

/// Greatest thickness of wood above the sole, mm along the plane, of all places across it: what lies one over
/// another with air between counts without the air. 0 where there is none.
double thickest_taken(std::span<const Edge> edges, const Sweep& sweep);

}  // namespace arrisline
