// Choosing the cuts: which flats finish the flat surfaces, which planes finish the arcs, and which rails
// guide them.
#pragma once

#include <optional>
#include <vector>

#include "plan/sequence.h"

namespace arrisline {

/// What the choosing came to. Without a sequence, `stuck` are the surfaces nothing was found for.
struct Composition {
  std::optional<Sequence> best;
  std::vector<int> no_plane;          // arcs that no plane of the kit can finish where they stand
  std::vector<int> no_rails;          // arcs that planes fit but nothing guides
  std::vector<int> no_flat;           // flats that no sole or side reaches
  std::optional<Sequence> too_thick;  // the least thick of the valid orders, where all leave too much
};

Composition compose(const Problem& problem);

/// Most wood, in mm, that a plan may leave with this kit.
double most_left(const Problem& problem);

}  // namespace arrisline
