// Tilts of a curved cut that its others make needless.
#pragma once

#include "plan/problem.h"
#include "plan/sequence.h"

namespace arrisline {

/// The plan without the tilts that matter nothing: without them no thicker wood is left than with them. Where
/// a cut starts is put to the fewest tilts, and may make one of them needless.
Sequence without_needless_tilts(const Problem& problem, Sequence plan);

}  // namespace arrisline
