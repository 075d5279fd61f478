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

/// Something to be packed, as often as `most`, each taking `takes` of the room and worth `worth`.
struct Packed {
  std::size_t what = 0;
  double takes = 0;
  double worth = 0;
  int most = 0;
};

/// Calls `found` with each set that fits and is worth at least `least` (asked anew as it goes on, so that it
/// may rise), and into which nothing more of positive worth or of none fits. False where it gave up.
bool for_each_packing(std::vector<Packed> things, double room, const std::function<double()>& least,
                      const std::function<void(const Counts&, double worth)>& found);

/// The strip patterns of a class worth at least `least` by the worth of each item.
bool for_each_strip(const Model& model, std::size_t strip_class, const std::vector<double>& worth_of_item,
                    const std::function<double()>& least,
                    const std::function<void(const Counts&, double worth)>& found);

/// The board patterns of a size worth at least `least` by the worth of each class; `most` strips of each
/// class.
bool for_each_board(const Model& model, std::size_t size, const std::vector<double>& worth_of_class,
                    const std::vector<int>& most, const std::function<double()>& least,
                    const std::function<void(const Counts&, double worth)>& found);

}  // namespace arrisline::cutting
