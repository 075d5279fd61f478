// Shortest path over which cuts are done and which came last, the cost still to come estimated by what any
// order must cost. Shown by tests/plan/sequence_test.cpp and tests/plan/oracle_test.cpp.
#include "plan/orders.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <queue>
#include <tuple>

namespace arrisline {

namespace {

constexpr std::size_t kMostDrafts = 60;  // the cuts done are kept as bits of one word
constexpr std::size_t kLikeliest = 12;   // followed by good_order()
constexpr std::size_t kBitsOfStart = 6;  // that tell the starts of a curved draft apart
constexpr int kMostStarted = 10;         // curved drafts that have their own such bits
constexpr double kSameCost = 1e-6;  // costs are compared after rounding to this, as by kTie in search.cpp

double rounded(double cost) {
  return std::round(cost / kSameCost) * kSameCost;
}

using Done = unsigned long long;

/// Where the search stands: the cuts done, the starts that put a pose in beside the draft's own (some bits
/// for each curved draft), which cut came last, whether with its other poses, and how the blank lies. The
/// wood depends on the first two.
struct Key {
  Done done = 0;
  Done starts = 0;
  int last = -1;
  bool otherwise = false;
  Lies lies = Lies::face_up;

  friend bool operator<(const Key& a, const Key& b) {
    return std::tie(a.done, a.starts, a.last, a.otherwise, a.lies) <
           std::tie(b.done, b.starts, b.last, b.otherwise, b.lies);
  }
};

class Orders {
 public:
  Orders(const Problem& problem, const LeastCost& least, double cutoff, const std::function<bool()>& stop)
      : problem_(problem), drafts_(least.drafts()), least_(least), cutoff_(cutoff), stop_(stop) {
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if (least.comes_first(i)) first_ |= Done{1} << i;
      if (!problem.plane(drafts_[i].plane).is_flat()) waiting_ |= Done{1} << i;
    }
    int curved = 0;
    for (const Draft& draft : drafts_) curved_.push_back(draft.arc < 0 ? -1 : curved++);
  }

  std::optional<Sequence> best() {
    const Done full = (Done{1} << drafts_.size()) - 1;
    if (least_.total() >= cutoff_) return std::nullopt;
    start();
    while (!open_.empty()) {
      const Node node = open_.top();
      open_.pop();
      const Reached& here = reached_.at(node.key);
      if (std::tie(here.cost, here.turns) < std::tie(node.cost, node.turns))
        continue;  // reached better since
      if (node.key.done == full) return unwind(node.key);
      if (stop_ && stop_()) return std::nullopt;
      expand(node);
    }
    return std::nullopt;
  }

  /// Only the `width` likeliest of as many cuts are followed.
  std::optional<Sequence> good(std::size_t width) {
    if (least_.total() >= cutoff_) return std::nullopt;
    start();
    for (std::size_t cuts = 0; cuts < drafts_.size(); ++cuts) {
      std::vector<Node> likely;
      for (; !open_.empty() && likely.size() < width; open_.pop()) {
        const Node& node = open_.top();
        if (reached_.at(node.key).cost >= node.cost) likely.push_back(node);
      }
      open_ = {};
      for (const Node& node : likely) {
        if (stop_ && stop_()) return std::nullopt;
        expand(node);
      }
    }
    if (open_.empty()) return std::nullopt;
    return unwind(open_.top().key);
  }

 private:
  struct Reached {
    double cost = 0;
    int turns = 0;  // of the blank
    Key from;
    Step step;
  };
  struct Node {
    double whole;  // cost so far and least cost to come
    int turns;     // of the blank so far: of equals the one with fewest goes first
    int left;      // cuts still to do: and then the one nearest the end
    Key key;
    double cost;

    friend bool operator<(const Node& a, const Node& b) {
      // For a queue whose top is the greatest.
      if (a.whole != b.whole) return a.whole > b.whole;
      if (a.turns != b.turns) return a.turns > b.turns;
      if (a.left != b.left) return a.left > b.left;
      return b.key < a.key;
    }
  };

  void start() {
    woods_.emplace(std::make_pair(Done{0}, Done{0}), Wood(problem_.blank));
    reached_[{}] = {};
    open_.push({rounded(least_.total()), 0, 0, {}, 0});
  }

  void expand(const Node& node) {
    const Key key = node.key;
    const Step* previous = key.last < 0 ? nullptr : &reached_.at(key).step;
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if ((key.done >> i & 1) != 0) continue;
      if ((waiting_ >> i & 1) != 0 && (key.done & first_) != first_) continue;
      for (const Step& step : standing(key, i)) {
        const LieSet ways = ways_to_lay(step, previous);
        for (const Lies lies : kWaysToLie) {
          if (ways.has(lies)) reach(node, previous, i, step, lies);
        }
      }
    }
  }

  /// The step is the next after the node, the blank lying so.
  void reach(const Node& node, const Step* previous, std::size_t i, Step step, Lies lies) {
    settle(problem_, step, previous, lies);
    const double cost = node.cost + step.effort;
    const Draft& draft = drafts_[i];
    const bool otherwise =
        !draft.otherwise.empty() && !same_pose(step.draft.poses.front(), draft.poses.front());
    const Key next{node.key.done | Done{1} << i, node.key.starts | start_mark(i, step), static_cast<int>(i),
                   otherwise, lies};
    const double whole = rounded(least_.planes() + cost + least_.remaining(next.done, &step));
    if (whole >= cutoff_) return;
    auto [slot, fresh] = reached_.try_emplace(next);
    const int turns = node.turns + (lies != lies_after(previous) ? 1 : 0);
    if (!fresh && std::make_tuple(rounded(slot->second.cost), slot->second.turns) <=
                      std::make_tuple(rounded(cost), turns))
      return;
    slot->second = {cost, turns, node.key, std::move(step)};
    const int left = static_cast<int>(drafts_.size()) - count(next.done);
    open_.push({whole, turns, left, next, cost});
  }

  static int count(Done done) {
    int out = 0;
    for (; done != 0; done &= done - 1) ++out;
    return out;
  }

  /// The draft on the wood that the cuts done leave, looked at once for all that may have come last.
  const std::vector<Step>& standing(const Key& key, std::size_t i) {
    const auto slot_key = std::make_tuple(key.done, key.starts, i);
    const auto known = standing_.find(slot_key);
    if (known != standing_.end()) return known->second;
    std::vector<const Draft*> done;
    for (std::size_t j = 0; j < drafts_.size(); ++j) {
      if ((key.done >> j & 1) != 0) done.push_back(&drafts_[j]);
    }
    std::vector<Step> steps = stand(problem_, drafts_[i], done, wood_after(key));
    for (Step& step : steps) {
      const auto next = std::make_pair(key.done | Done{1} << i, key.starts | start_mark(i, step));
      made_by_.try_emplace(next, std::make_pair(key.done, key.starts), step.draft);
    }
    return standing_.emplace(slot_key, std::move(steps)).first->second;
  }

  /// The wood is cut only when something is to be looked at on it.
  const Wood& wood_after(const Key& key) {
    const auto at = std::make_pair(key.done, key.starts);
    const auto known = woods_.find(at);
    if (known != woods_.end()) return known->second;
    const auto& [before, draft] = made_by_.at(at);
    Wood wood = wood_after({before.first, before.second, -1});
    cut_all(problem_, {draft}, wood);
    return woods_.emplace(at, std::move(wood)).first->second;
  }

  /// Which of its starts put a pose into the step, as bits of Key::starts.
  Done start_mark(std::size_t i, const Step& step) const {
    const Draft& draft = drafts_[i];
    if (curved_[i] < 0 || step.draft.poses.size() == draft.poses.size()) return 0;
    std::vector<double> tilts = draft.starts;
    for (const Pose& pose : draft.poses) tilts.push_back(pose.tilt);
    const auto at = std::find(tilts.begin(), tilts.end(), step.draft.poses.front().tilt);
    return static_cast<Done>(at - tilts.begin() + 1)
           << kBitsOfStart * static_cast<std::size_t>(curved_[i] % kMostStarted);
  }

  Sequence unwind(Key key) {
    Sequence out;
    const Wood& wood = wood_after(key);
    while (key.last >= 0) {
      const Reached& here = reached_.at(key);
      out.steps.push_back(here.step);
      key = here.from;
    }
    std::reverse(out.steps.begin(), out.steps.end());
    out.effort = least_.planes();
    for (const Step& step : out.steps) {
      out.effort += step.effort;
      out.imbalance += step.guidance.imbalance;
    }
    out.left = thickest_left(wood, problem_.section.target);
    return out;
  }

  const Problem& problem_;
  const std::vector<Draft>& drafts_;
  std::vector<int> curved_;  // of a draft of an arc: which among those
  const LeastCost& least_;
  Done first_ = 0;    // flats that the curves wait for
  Done waiting_ = 0;  // those that wait
  double cutoff_;
  const std::function<bool()>& stop_;
  std::map<std::pair<Done, Done>, Wood> woods_;
  std::map<std::pair<Done, Done>, std::pair<std::pair<Done, Done>, Draft>> made_by_;
  std::map<std::tuple<Done, Done, std::size_t>, std::vector<Step>> standing_;
  std::map<Key, Reached> reached_;
  std::priority_queue<Node> open_;
};

}  // namespace

std::vector<Draft> in_order(std::vector<Draft> drafts) {
  std::stable_sort(drafts.begin(), drafts.end(), [&](const Draft& a, const Draft& b) {
    if ((a.arc < 0) != (b.arc < 0)) return a.arc < 0;
    if (a.plane != b.plane) return a.plane < b.plane;
    const bool a_square = is_square(a.poses.front().tilt);
    const bool b_square = is_square(b.poses.front().tilt);
    if (a_square != b_square) return a_square;
    // To a hundredth of a micron, so that rounding settles no order.
    const long long a_x = std::llround(a.poses.front().at.x * 1e5);
    const long long b_x = std::llround(b.poses.front().at.x * 1e5);
    if (a_x != b_x) return a_x > b_x;
    return std::abs(a.poses.front().tilt) < std::abs(b.poses.front().tilt) - 1e-6;
  });
  return drafts;
}

std::optional<Sequence> best_order(const Problem& problem, const LeastCost& least, double cutoff,
                                   const std::function<bool()>& stop) {
  if (least.drafts().size() > kMostDrafts) return std::nullopt;
  return Orders(problem, least, cutoff, stop).best();
}

std::optional<Sequence> good_order(const Problem& problem, const LeastCost& least, double cutoff,
                                   const std::function<bool()>& stop) {
  if (least.drafts().size() > kMostDrafts) return std::nullopt;
  return Orders(problem, least, cutoff, stop).good(kLikeliest);
}

}  // namespace arrisline
