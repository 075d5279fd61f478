// The cuts of one side of a section that is its own mirror image, as cuts of the other.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// The cuts as they are made on the other side of the section's middle, in the same order. Empty where what
/// has to be cut is not its own mirror image, or where a cut would gouge there; so it is with shaped planes,
/// which are not their own mirror images either.
std::vector<Draft> mirrored(const Problem& problem, const std::vector<Draft>& drafts);

}  // namespace arrisline
