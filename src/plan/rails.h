// Rails: the flat cuts that leave two arrises for a hollow or a round to ride on.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "plan/problem.h"
#include "plan/touch.h"
#include "plan/wood.h"

namespace arrisline {

/// Flat cuts that, added to some wood, guide a curved draft, and the tilt at which it then starts.
struct Setup {
  std::vector<Draft> cuts;
  double start = 0;
  Guidance guidance;
  std::optional<Draft> late = std::nullopt;  // a flat of the wood that then has to wait for the curve
};

/// The start among the draft's tilts at which its plane is guided best by the wood, well laid out before
/// not; nothing where two arrises guide it at none.
struct Start {
  double tilt = 0;
  Guidance guidance;
};
/// All the tilts of the draft at which two arrises guide its plane, its own first; two that differ by less
/// than 1e-6 degrees are one.
std::vector<Start> guided_starts(const Problem& problem, const Draft& draft, const Wood& wood);
std::optional<Start> best_start(const Problem& problem, const Draft& draft, const Wood& wood);

/// Whether contacts lie where a slip of the gauge loses neither.
bool well_laid(const Guidance& guidance, const Plane& plane);

/// Ways to lay rails for the draft on this wood. The patterns are a fixed list (docs/how-it-plans.md); the
/// one free figure of each (the lean of a chamfer, the corner or wall of a step) is solved so that both rails
/// meet the sole together. With `trenches` ploughs make square cuts too, groove beside groove. `stop` is
/// asked from time to time whether to leave off; only some are then found.
std::vector<Setup> lay_rails(const Problem& problem, const Draft& draft, const Wood& wood,
                             bool trenches = false, const std::function<bool()>& stop = {});

}  // namespace arrisline
