// The figures on the gauge that some cuts need in any order. Shown by tests/plan/figures_test.cpp and
// tests/plan/oracle_test.cpp.
#include <algorithm>

#include "plan/orders.h"

namespace arrisline {

/// The figures each flat needs: the floor and the walls of a square one; of a slanted one only how many.
/// Of one that need not come first, or where cuts are still to come, no wall is certain.
void LeastCost::share_figures() {
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    const Plane& plane = problem_.plane(drafts_[i].plane);
    if (!plane.is_flat()) continue;
    Share& share = shares_[i];
    const bool on_flats = comes_first(i) || is_clear_of_curves(i);
    const Wood* walls_of = on_flats ? flats_left_.get() : nullptr;
    share.fixed = problem_.weights.cut;
    share.figures.clear();
    if (is_slanted(i)) {
      // More cuts are more to share with.
      share.shares = share.shares || walls_of == nullptr || may_find_one_set(i);
      share.fixed += problem_.weights.setting * (share.shares ? 1 : 2);
      continue;
    }
    const Draft& draft = drafts_[i];
    std::vector<GaugeLine> certain = certain_lines(problem_, plane, draft.poses, walls_of);
    if (!draft.otherwise.empty()) {
      const std::vector<GaugeLine> others = certain_lines(problem_, plane, draft.otherwise, walls_of);
      std::erase_if(certain, [&](const GaugeLine& line) {
        return std::none_of(others.begin(), others.end(),
                            [&](const GaugeLine& other) { return same_figure(line, other); });
      });
    }
    for (const GaugeLine& line : certain) {
      // A wall that another draft also stands at may be there before.
      bool shared = false;
      for (std::size_t j = 0; j < drafts_.size() && !share.figures.empty() && !shared; ++j) {
        if (j == i || (on_flats && !is_flat(drafts_[j]))) continue;
        shared = stands_at(problem_.section, shares_[j].turns->flanks, {line.from, line.at, -1});
      }
      if (!shared) share.figures.push_back(line);
    }
  }
}

/// Whether the cut before a slanted flat may have used one of its figures.
bool LeastCost::may_find_one_set(std::size_t i) const {
  const Share& mine = shares_[i];
  for (std::size_t j = 0; j < drafts_.size(); ++j) {
    if (j == i || !is_flat(drafts_[j])) continue;
    const Share& its = shares_[j];
    const bool shared =
        is_slanted(j) ? share_a_figure(mine.maybe, static_cast<int>(i), its.maybe, static_cast<int>(j))
                      : std::any_of(mine.maybe.begin(), mine.maybe.end(), [&](const MaybeFigure& figure) {
                          return stands_at(problem_.section, its.turns->flanks, figure);
                        });
    if (shared) return true;
  }
  return false;
}

/// The figures that the draft, the last of all so far, may come to need if it is slanted, and those that
/// other slanted ones may come to need by it.
void LeastCost::add_maybe_figures(std::size_t i) {
  if (orders_ != OrderOf::flats_first) return;
  const Section& section = problem_.section;
  const std::vector<Sweep>& own = shares_[i].turns->own;
  const bool slanted = is_slanted(i);
  std::vector<MaybeFigure>& maybe = shares_[i].maybe;
  maybe = shares_[i].turns->figures;
  for (std::size_t j = 0; j < i; ++j) {
    if (slanted) add_figures(section, own, shares_[j].turns->flanks, static_cast<int>(j), maybe);
    if (is_slanted(j))
      add_figures(section, shares_[j].turns->own, shares_[i].turns->flanks, static_cast<int>(i),
                  shares_[j].maybe);
  }
}

}  // namespace arrisline
