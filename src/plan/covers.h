// Covers: choices of flat cuts that between them finish every flat surface.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

struct CoverSet {
  std::vector<std::vector<int>> covers;  // indices into the drafts, cheapest first
  std::vector<int> uncoverable;          // flat surfaces that all drafts together leave partly bare
};

/// The few cheapest covers. What `given` finishes counts as done; surfaces that nothing covers are left to
/// the final judgement of what is left. No covers are returned only where there are no drafts for what is
/// open.
CoverSet cheapest_covers(const Problem& problem, const std::vector<Draft>& drafts,
                         const std::vector<Draft>& given);

}  // namespace arrisline
