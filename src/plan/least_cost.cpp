// What some cuts must cost in any order. Shown by tests/plan/oracle_test.cpp.
#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <memory_resource>
#include <set>

#include "plan/orders.h"

namespace arrisline {

/// The weight of what is worked. Of the wood that all soles that are not flat take between them, each takes
/// at least what no other can; the rest wears the widest least.
double LeastCost::weigh(std::span<const Worked> worked, double taken_in_all) const {
  double cost = 0;
  double taken = 0;
  double widest = 0;
  for (const Worked& one : worked) {
    cost += one.strokes;
    if (one.width <= 0) continue;
    cost += problem_.weights.wear * one.taken / (one.width * one.width);
    taken += one.taken;
    widest = std::max(widest, one.width);
  }
  if (widest > 0) cost += problem_.weights.wear * std::max(0.0, taken_in_all - taken) / (widest * widest);
  return cost;
}

/// Gives the draft, the next of all, its share and its group.
void LeastCost::group(const Draft& draft) {
  std::size_t g = 0;
  while (g < groups_.size() && (draft.arc < 0 || arcs_[g] != draft.arc)) ++g;
  if (g == groups_.size()) {
    groups_.emplace_back();
    groups_.back().flat = groups_.back().first = true;
    arcs_.push_back(draft.arc);
  }
  groups_[g].members |= 1ULL << shares_.size();
  groups_[g].flat = groups_[g].flat && is_flat(draft);
  Share share;
  share.fixed = problem_.weights.cut;
  share.group = g;
  if (known_ != nullptr) share.turns = known_->of(draft);
  share.may_lie = share.turns ? share.turns->may_lie : ways_by_poses(problem_, draft);
  shares_.push_back(std::move(share));
  const bool first = comes_first(shares_.size() - 1);
  groups_[g].first = groups_[g].first && first;
  const Need need{problem_.taken_up(draft.plane), shares_.back().may_lie, first, !is_flat(draft)};
  const auto same = std::find(needs_.begin(), needs_.end(), need);
  shares_.back().need = static_cast<std::size_t>(same - needs_.begin());
  if (same == needs_.end()) needs_.push_back(need);
}

bool LeastCost::curves_meet_late_flats() const {
  return std::any_of(shares_.begin(), shares_.end(),
                     [](const Share& share) { return share.by_curves.value_or(0) > kLeastCut; });
}

bool LeastCost::comes_first(std::size_t i) const {
  return orders_ == OrderOf::flats_first && is_flat(drafts_[i]) && !may_come_late(i);
}

/// What the rest of the drafts leave that may come before those of the group.
const Wood& LeastCost::others(std::size_t g) {
  Group& group = groups_[g];
  if (group.others) return *group.others;
  const bool curves = !group.first;
  Wood wood = group.flat ? Wood(problem_.blank) : *flats_left_;
  for (const bool flat : {true, false}) {
    if (flat ? !group.flat : !curves) continue;
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if (is_flat(drafts_[i]) == flat && shares_[i].group != g) cut_whole(*shares_[i].turns, wood);
    }
  }
  group.others = std::make_shared<const Wood>(std::move(wood));
  return *group.others;
}

std::vector<SharedTurns> LeastCost::turns_of(const Group& group) const {
  std::vector<SharedTurns> out;
  for (std::size_t i = 0; i < shares_.size(); ++i) {
    if ((group.members >> i & 1) != 0) out.push_back(shares_[i].turns);
  }
  return out;
}

/// What the group's drafts have to work together on the wood that the others leave.
void LeastCost::share_work(std::size_t g, std::optional<double> taken) {
  Group& group = groups_[g];
  const std::vector<SharedTurns> turns = turns_of(group);
  group.worked = turns.size() == 1 ? worked_alone(problem_, *turns.front(), others(g), taken)
                                   : worked_together(problem_, turns, others(g));
  group.told = true;
}

/// What each of the group's drafts has to work where the rest of the group may come before.
void LeastCost::share_apart(std::size_t g) {
  Group& group = groups_[g];
  double strokes = 0;
  for (std::size_t i = 0; i < shares_.size(); ++i) {
    if (shares_[i].group != g) continue;
    if (group.members == 1ULL << i) {
      shares_[i].worked = weigh(std::span(&group.worked, 1), 0);
      return;
    }
    Wood alone = others(g);
    for (std::size_t j = 0; j < shares_.size(); ++j) {
      if (j != i && shares_[j].group == g) cut_whole(*shares_[j].turns, alone);
    }
    const Worked apart = worked_alone(problem_, *shares_[i].turns, alone);
    shares_[i].worked = weigh(std::span(&apart, 1), 0);
    strokes += apart.strokes;
  }
  group.worked.strokes = std::max(group.worked.strokes, strokes);
}

/// What the flats must work beyond what each has to work in any case. Wood that several of them could take is
/// taken by one, and a stroke takes no more than a shaving as wide as the sole is in the blank. The cheapest
/// take as much of it as they reach.
double LeastCost::shared_work() const {
  struct Room {
    double cost;  // of a mm²
    double area;
  };
  std::vector<Room> rooms;
  double open = taken_by_flats_;
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    if (!is_flat(drafts_[i])) continue;
    open -=
        groups_[shares_[i].group].flat ? shares_[i].by_curves.value_or(0) : shares_[i].turns->area_in_blank;
  }
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    if (!groups_[g].flat) continue;
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if (shares_[i].group != g) continue;
      if (groups_[g].members != 1ULL << i) return 0;
      const Turns& turns = *shares_[i].turns;
      const double cost = turns.cost_in_blank, most = turns.area_in_blank;
      const double sure = cost > 0 ? std::min(most, groups_[g].worked.strokes / cost) : most;
      open -= sure;
      rooms.push_back({cost, most - sure});
    }
  }
  std::sort(rooms.begin(), rooms.end(), [](const Room& a, const Room& b) { return a.cost < b.cost; });
  double work = 0;
  for (const Room& room : rooms) {
    if (open <= 0) break;
    work += room.cost * std::min(open, room.area);
    open -= room.area;
  }
  return work;
}

/// How much of what each late flat reaches the curves may take before it.
void LeastCost::share_with_curves() {
  std::optional<Wood> curved;
  for (std::size_t late = 0; late < shares_.size(); ++late) {
    Share& share = shares_[late];
    if (!may_come_late(late) || share.by_curves) continue;
    if (!curved) {
      curved.emplace(problem_.blank);
      for (std::size_t i = 0; i < drafts_.size(); ++i) {
        if (!is_flat(drafts_[i])) cut_whole(*shares_[i].turns, *curved);
      }
    }
    Wood wood = *curved;
    share.by_curves = std::max(0.0, share.turns->area_in_blank - cut_whole(*share.turns, wood));
  }
}

void LeastCost::sum_up() {
  total_ = remaining(0, nullptr);
  if (known_ != nullptr && orders_ == OrderOf::flats_first) total_ += shared_work();
  std::set<int> planes;
  for (const Draft& draft : drafts_) planes.insert(problem_.taken_up(draft.plane));
  planes_ = problem_.weights.plane * static_cast<double>(planes.size());
}

LeastCost::LeastCost(const Problem& problem, const std::vector<Draft>& drafts, OrderOf orders)
    : problem_(problem), drafts_(drafts), orders_(orders) {
  for (const Draft& draft : drafts_) group(draft);
  share_figures();
  sum_up();
}

LeastCost::LeastCost(KnownTurns& known, const std::vector<Draft>& drafts, OrderOf orders)
    : problem_(known.problem()), known_(&known), drafts_(drafts), orders_(orders) {
  for (const Draft& draft : drafts_) group(draft);
  Wood left(problem_.blank);
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    if (is_flat(drafts_[i])) cut_whole(*shares_[i].turns, left);
  }
  flats_left_ = std::make_shared<const Wood>(left);
  taken_by_flats_ = area(problem_.blank) - left.area();
  // Only what is taken in any case: where a cut starts is not known.
  for (const Draft& draft : drafts_) {
    if (!is_flat(draft)) cut_all(problem_, {draft}, left);
  }
  taken_by_curves_ = flats_left_->area() - left.area();
  finished_ = std::make_shared<const Wood>(std::move(left));
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    double& width = groups_[shares_[i].group].worked.width;
    if (!is_flat(drafts_[i])) width = std::max(width, problem_.plane(drafts_[i].plane).width);
  }
  for (std::size_t i = 0; i < drafts_.size(); ++i) add_maybe_figures(i);
  if (orders_ == OrderOf::flats_first) share_with_curves();
  share_figures();
  sum_up();
}

void LeastCost::work_out_curves() {
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    if (!groups_[g].flat && !groups_[g].told) share_work(g);
  }
  sum_up();
}

void LeastCost::work_out() {
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    if (!groups_[g].told) share_work(g);
    share_apart(g);
  }
  sum_up();
}

std::optional<LeastCost> LeastCost::with(const Draft& extra, double cutoff) {
  const SharedTurns turns = known_->of(extra);
  Wood flats_left = *flats_left_;
  const double taken = cut_whole(*turns, flats_left);
  if (taken <= kLeastCut) return std::nullopt;
  LeastCost out = *this;
  const auto too_much = [&] {
    out.sum_up();
    return out.total() >= cutoff;
  };
  // From the quickest told to the nearest. At first no more is known than that the curves find less by what
  // the flat takes, and that any flat may have nothing left to work.
  for (Group& group : out.groups_) {
    group.told = false;
    group.others.reset();
    group.worked.strokes = 0;
    group.worked.taken = std::max(0.0, group.worked.taken - taken);
  }
  out.taken_by_curves_ = std::max(0.0, taken_by_curves_ - taken);
  out.put_last(extra);
  out.flats_left_ = std::make_shared<const Wood>(std::move(flats_left));
  out.taken_by_flats_ += taken;
  out.add_maybe_figures(drafts_.size());
  out.share_figures();
  if (too_much()) return std::nullopt;
  Wood finished = *finished_;
  cut_whole(*turns, finished);
  out.taken_by_curves_ = out.flats_left_->area() - finished.area();
  out.finished_ = std::make_shared<const Wood>(std::move(finished));
  for (const bool flat : {false, true}) {
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      Group& group = out.groups_[g];
      if (group.flat != flat) continue;
      Wood left = others(g);
      if (cut_whole(*turns, left) <= 0) {
        if (!groups_[g].told) share_work(g);
        group = groups_[g];
      } else {
        group.others = std::make_shared<const Wood>(std::move(left));
        if (!flat) {
          group.worked = worked_together(problem_, out.turns_of(group), *group.others);
          group.told = std::popcount(group.members) > 1;
          if (too_much()) return std::nullopt;
        }
        if (!group.told) out.share_work(g, flat ? std::nullopt : std::optional(group.worked.taken));
      }
      if (too_much()) return std::nullopt;
    }
  }
  for (std::size_t g = 0; g < out.groups_.size(); ++g) out.share_apart(g);
  if (too_much()) return std::nullopt;
  return out;
}

/// Puts the flat behind all others.
void LeastCost::put_last(const Draft& extra) {
  auto before = flats_left_;
  drafts_.push_back(extra);
  group(extra);
  if (!groups_.back().first) {
    Wood wood = *before;
    for (std::size_t i = 0; i + 1 < drafts_.size(); ++i) {
      if (!is_flat(drafts_[i])) cut_whole(*shares_[i].turns, wood);
    }
    before = std::make_shared<const Wood>(std::move(wood));
  }
  groups_.back().others = std::move(before);
  if (orders_ == OrderOf::flats_first) share_with_curves();
  share_work(groups_.size() - 1);
}

double LeastCost::remaining(unsigned long long done, const Step* previous) const {
  double cost = 0;
  // Asked of every state of every order: the room for these is on the stack as far as it goes.
  std::array<std::byte, 2048> room;
  std::pmr::monotonic_buffer_resource at_hand(room.data(), room.size());
  std::pmr::vector<const GaugeLine*> figures(&at_hand);
  std::pmr::vector<bool> needed(needs_.size(), false, &at_hand);
  std::pmr::vector<Worked> worked(&at_hand);
  bool all_curves = known_ != nullptr;
  for (const Group& group : groups_) {
    if ((group.members & done) == 0) worked.push_back(group.worked);
    if (!group.flat && (group.members & done) != 0) all_curves = false;
  }
  // What the curves take between them is known while none of them is done.
  cost += weigh(worked, all_curves ? taken_by_curves_ : 0);
  for (std::size_t i = 0; i < shares_.size(); ++i) {
    if ((done >> i & 1) != 0) continue;
    const Share& share = shares_[i];
    cost += share.fixed;
    if ((groups_[share.group].members & done) != 0) cost += share.worked;
    needed[share.need] = true;
    for (const GaugeLine& figure : share.figures) {
      const bool known = std::any_of(figures.begin(), figures.end(),
                                     [&](const GaugeLine* other) { return same_figure(*other, figure); });
      const bool set = previous != nullptr &&
                       std::any_of(previous->laid_out.lines.begin(), previous->laid_out.lines.end(),
                                   [&](const GaugeLine& other) { return same_figure(other, figure); });
      if (!known && !set) figures.push_back(&figure);
    }
  }
  std::pmr::vector<Need> needs(&at_hand);
  for (std::size_t n = 0; n < needs_.size(); ++n) {
    if (needed[n]) needs.push_back(needs_[n]);
  }
  const int held = previous == nullptr ? -1 : previous->taken_up;
  cost += problem_.weights.change * static_cast<double>(fewest_changes(needs, held, lies_after(previous)));
  return cost + problem_.weights.setting * static_cast<double>(figures.size());
}

}  // namespace arrisline
