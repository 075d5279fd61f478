// Shown by tests/plan/changes_test.cpp.
#include "plan/changes.h"

#include <algorithm>

namespace arrisline {

namespace {

constexpr std::size_t kFew = 6;  // needs of which every order is gone through

using Bits = unsigned;

/// Planes and turns counted each by itself, as if no cut waited for another.
std::size_t counted_apart(std::span<const Need> needs, int held, Lies lies) {
  std::size_t planes = 0;
  for (std::size_t i = 0; i < needs.size(); ++i) {
    const auto same = [&](const Need& other) { return other.plane == needs[i].plane; };
    if (needs[i].plane != held &&
        std::none_of(needs.begin(), needs.begin() + static_cast<std::ptrdiff_t>(i), same))
      ++planes;
  }
  const auto lies_well = [&](const Need& need) { return need.may_lie.has(lies); };
  if (std::all_of(needs.begin(), needs.end(), lies_well)) return planes;
  std::size_t turns = kWaysToLie.size();
  for (Bits some = 1; some < Bits{1} << kWaysToLie.size(); ++some) {
    LieSet laid;
    for (std::size_t i = 0; i < kWaysToLie.size(); ++i) {
      if ((some >> i & 1) != 0) laid.add(kWaysToLie[i]);
    }
    if (std::all_of(needs.begin(), needs.end(),
                    [&](const Need& need) { return lies_well(need) || need.may_lie.meets(laid); }))
      turns = std::min(turns, laid.size());
  }
  return planes + turns;
}

/// Every order of the needs gone through.
class InOrder {
 public:
  explicit InOrder(std::span<const Need> needs) : needs_(needs) {
    for (std::size_t i = 0; i < needs.size(); ++i) {
      if (needs[i].first) first_ |= Bits{1} << i;
    }
  }

  std::size_t fewest(Bits open, int held, Lies lies, std::size_t enough) const {
    open = without_served(open, held, lies);
    if (open == 0) return 0;
    std::size_t best = enough;
    for (std::size_t i = 0; i < needs_.size() && best > 1; ++i) {
      if (!may_be_next(open, i)) continue;
      const Need& need = needs_[i];
      for (const Lies next : kWaysToLie) {
        // What is not turned now can be turned later.
        if (!need.may_lie.has(next) || (next != lies && need.may_lie.has(lies))) continue;
        const std::size_t here = (need.plane != held ? 1U : 0U) + (next != lies ? 1U : 0U);
        if (here < best) best = std::min(best, here + fewest(open, need.plane, next, best - here));
      }
    }
    return best;
  }

 private:
  bool may_be_next(Bits open, std::size_t i) const {
    return (open >> i & 1) != 0 && !(needs_[i].waits && (open & first_) != 0);
  }

  Bits without_served(Bits open, int held, Lies lies) const {
    for (Bits before = ~open; before != open;) {
      before = open;
      for (std::size_t i = 0; i < needs_.size(); ++i) {
        if (may_be_next(open, i) && needs_[i].plane == held && needs_[i].may_lie.has(lies))
          open &= ~(Bits{1} << i);
      }
    }
    return open;
  }

  std::span<const Need> needs_;
  Bits first_ = 0;
};

}  // namespace

std::size_t fewest_changes(std::span<const Need> needs, int held, Lies lies) {
  const auto any = [&](const auto& is_so) { return std::any_of(needs.begin(), needs.end(), is_so); };
  const bool turned = any([&](const Need& need) { return !need.may_lie.has(lies); });
  // A plane put down for what comes first, and taken up again.
  const bool again = any([&](const Need& first) {
    return first.first && any([&](const Need& need) {
             return need.waits && (need.plane == held || need.plane == first.plane);
           });
  });
  if ((!turned && !again) || needs.size() > kFew) return counted_apart(needs, held, lies);
  return InOrder(needs).fewest((Bits{1} << needs.size()) - 1, held, lies, 2 * needs.size());
}

}  // namespace arrisline
