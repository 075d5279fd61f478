// A plan that takes up two rebate planes, made with the narrower alone.
#pragma once

#include <optional>

#include "plan/sequence.h"

namespace arrisline {

/// Width of the widest rebate plane that the sequence is made with, where it takes up another as well, in mm;
/// else 0.
double widest_of_two(const Problem& problem, const Sequence& sequence);

/// The same cuts in the same order, those of the widest rebate plane made side by side with the next that is
/// taken up; nothing where one of them cannot be made so. REQUIRES: widest_of_two() is not 0.
std::optional<Sequence> by_the_narrower(const Problem& problem, const Sequence& sequence);

}  // namespace arrisline
