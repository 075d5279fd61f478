// Patterns of most worth, and all patterns of at least some worth: a search of what fits, exact on the
// lengths as they are.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "cutting/model.h"

namespace arrisline::cutting {

/// Work that one search may take before it gives up, in patterns looked at.
inline constexpr std::int64_t kMostLooks = 3'000'000;

/// Calls `found` with each strip pattern of a class that is worth at least `least` by the worth of each item
/// (asked anew as it goes on, so that it may rise), and into which nothing more fits. False where it gave up.
bool for_each_strip(const Model& model, std::size_t strip_class, const std::vector<double>& worth_of_item,
                    const std::function<double()>& least,
                    const std::function<void(const Counts&, double worth)>& found);

/// The board patterns of a size worth at least `least` by the worth of each class; `most` strips of each
/// class.
bool for_each_board(const Model& model, std::size_t size, const std::vector<double>& worth_of_class,
                    const std::vector<int>& most, const std::function<double()>& least,
                    const std::function<void(const Counts&, double worth)>& found);

}  // namespace arrisline::cutting
