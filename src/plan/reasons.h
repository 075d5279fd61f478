// Why a kit cannot cut a profile, in trade words, and the nearest size that would do.
#pragma once

#include <vector>

#include "plan/compose.h"

namespace arrisline {

/// At least one reason, for a composition without a plan.
std::vector<Reason> explain(const Problem& problem, const Composition& composition);

}  // namespace arrisline
