// Whether any cut could take the wood at some place at all.
#pragma once

#include "plan/problem.h"

namespace arrisline {

/// True where some flat sole of the kit, leaning anyhow, reaches p, or a hollow or round resting on an arc,
/// and cuts nowhere deeper into the target than a hair. Bodies wider than their soles, the fence and the
/// stops are not looked at: false means that no such cut takes the wood at p.
bool something_takes(const Problem& problem, Point p);

}  // namespace arrisline
