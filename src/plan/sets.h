// Sets of drafts, as the search puts them together and tells them apart.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

inline constexpr double kTie = 1e-6;     // efforts that differ by less are equal, and imbalance decides
inline constexpr double kNoMore = 1e-4;  // mm beyond the tolerance that count as nothing

std::vector<Draft> together(const std::vector<Draft>& a, const std::vector<Draft>& b);

/// What tells a draft from another, to a hundredth of a micron and of a thousandth of a degree.
std::vector<long long> key_of(const Draft& draft);
/// Of a set of drafts, whatever their order.
std::vector<long long> key_of(const std::vector<Draft>& drafts);
/// The same of drafts whose keys are known, and of one more.
using Keys = std::vector<std::vector<long long>>;
Keys keys_of(const std::vector<Draft>& drafts);
std::vector<long long> key_of(const Keys& keys, const std::vector<long long>& more);

bool has(const std::vector<Draft>& drafts, const Draft& draft);

}  // namespace arrisline
