// The search: which flats finish the flat surfaces, which planes finish the arcs, which rails guide them, and
// what else takes waste before the curves.
#pragma once

#include <optional>
#include <vector>

#include "plan/sequence.h"

namespace arrisline {

/// A part of the work that has no plan by itself.
struct Unmade {
  Section part;
  std::optional<Sequence> too_thick;  // as in Composition
};

/// What the search came to.
struct Composition {
  std::optional<Sequence> best;
  double bound = 0;                   // no plan among the candidates costs less, in the problem's own weights
  bool proved = false;                // the search went to its end, so `best` costs the least
  bool stopped = false;               // at its limit, or interrupted
  std::optional<Sequence> too_thick;  // the least thick of the valid orders, where all leave too much
  std::vector<Unmade> unmade;         // parts of the work for whose sake there is none
};

/// Searches until the least effort is proved or the options' limit is reached.
Composition compose(const Problem& problem);

/// Most wood, in mm, that a plan may leave with this kit.
double most_left(const Problem& problem);

}  // namespace arrisline
