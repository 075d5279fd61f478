// The order of work over several profiles: a plane taken up serves every profile that waits for it. Where the
// states of all orders are few, the fewest plane changes and of those orders the fewest gauge settings, state
// by state. Else the fewest plane changes by A* over how far each profile has got, and then few settings
// among the cuts made with one plane in hand. Shown by tests/job/order_test.cpp.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <queue>

#include "arrisline/job_plan.h"

namespace arrisline {
namespace {

/// States that a search may keep, each as large as there are profiles: some tens of megabytes.
std::size_t most_states(std::size_t profiles) {
  return std::min<std::size_t>(200000, 4000000 / std::max<std::size_t>(1, profiles));
}

/// Ways that go on from each step where not all can: each costs a look at every profile, and a copy as long.
std::size_t most_ways(std::size_t profiles) {
  return std::clamp<std::size_t>(2000000 / std::max<std::size_t>(1, profiles * profiles), 1, 5000);
}

using Position = std::vector<std::uint16_t>;  // for each profile, how many of its stretches are done

/// A profile's cuts as stretches with one plane.
struct Stretch {
  int plane = 0;
  std::size_t begin = 0;
  std::size_t end = 0;
};
using Stretches = std::vector<Stretch>;

/// Numbers the planes in order of first use.
std::vector<Stretches> stretches_of(const std::vector<const Plan*>& plans) {
  std::vector<const Plane*> planes;
  std::vector<Stretches> out;
  for (const Plan* plan : plans) {
    Stretches stretches;
    for (std::size_t i = 0; i < plan->cuts.size(); ++i) {
      const Plane& plane = plan->cuts[i].plane;
      const auto known = std::find_if(planes.begin(), planes.end(),
                                      [&](const Plane* other) { return same_plane(*other, plane); });
      const int number = static_cast<int>(known - planes.begin());
      if (known == planes.end()) planes.push_back(&plane);
      if (stretches.empty() || stretches.back().plane != number) stretches.push_back({number, i, i});
      stretches.back().end = i + 1;
    }
    out.push_back(std::move(stretches));
  }
  return out;
}

/// A plane is taken up at least as often as the profile that needs it most often still does: between two
/// stretches of one profile another plane is in hand.
class Remaining {
 public:
  explicit Remaining(const std::vector<Stretches>& all) {
    int planes = 0;
    for (const Stretches& one : all)
      for (const Stretch& stretch : one) planes = std::max(planes, stretch.plane + 1);
    for (const Stretches& one : all) {
      std::vector<std::vector<int>> after(one.size() + 1, std::vector<int>(static_cast<std::size_t>(planes)));
      for (std::size_t i = one.size(); i-- > 0;) {
        after[i] = after[i + 1];
        ++after[i][static_cast<std::size_t>(one[i].plane)];
      }
      counts_.push_back(std::move(after));
    }
    most_.resize(static_cast<std::size_t>(planes));
  }

  int operator()(const Position& position) {
    std::fill(most_.begin(), most_.end(), 0);
    for (std::size_t k = 0; k < counts_.size(); ++k) {
      const std::vector<int>& left = counts_[k][position[k]];
      for (std::size_t p = 0; p < most_.size(); ++p) most_[p] = std::max(most_[p], left[p]);
    }
    int sum = 0;
    for (const int most : most_) sum += most;
    return sum;
  }

 private:
  std::vector<std::vector<std::vector<int>>> counts_;
  std::vector<int> most_;
};

/// All profiles that wait for the plane go on by their next stretch: to hold one back never saves a change.
Position with_plane(const std::vector<Stretches>& all, Position position, int plane) {
  for (std::size_t k = 0; k < all.size(); ++k) {
    if (position[k] < all[k].size() && all[k][position[k]].plane == plane) ++position[k];
  }
  return position;
}

std::vector<int> waited_for(const std::vector<Stretches>& all, const Position& position) {
  std::vector<int> out;
  for (std::size_t k = 0; k < all.size(); ++k) {
    if (position[k] >= all[k].size()) continue;
    const int plane = all[k][position[k]].plane;
    if (std::find(out.begin(), out.end(), plane) == out.end()) out.push_back(plane);
  }
  return out;
}

struct PlaneSequence {
  std::vector<int> planes;
  bool fewest = true;
};

PlaneSequence fewest_changes(const std::vector<Stretches>& all) {
  struct Reached {
    int taken = 0;
    int plane = -1;
    const Position* from = nullptr;
  };
  // The farther of two states that promise the same comes first; then the one found first.
  struct Open {
    int promise = 0;
    int taken = 0;
    std::size_t order = 0;
    const Position* at = nullptr;
    bool operator<(const Open& other) const {
      if (promise != other.promise) return promise > other.promise;
      if (taken != other.taken) return taken < other.taken;
      return order > other.order;
    }
  };
  Remaining remaining(all);
  std::map<Position, Reached> reached;
  std::priority_queue<Open> open;
  const auto start = reached.emplace(Position(all.size()), Reached{}).first;
  open.push({remaining(start->first), 0, 0, &start->first});
  std::size_t found = 0;
  PlaneSequence out;
  const Position* last = nullptr;
  while (last == nullptr) {
    const Open next = open.top();
    open.pop();
    const std::vector<int> planes = waited_for(all, *next.at);
    if (planes.empty()) {
      last = next.at;
      break;
    }
    if (next.taken > reached.at(*next.at).taken) continue;
    if (reached.size() > most_states(all.size())) {
      // On from here by the plane that most profiles wait for.
      out.fewest = false;
      Position position = *next.at;
      for (last = next.at; !waited_for(all, position).empty();) {
        int best = -1;
        int most = -1;
        for (const int plane : waited_for(all, position)) {
          int waiting = 0;
          for (std::size_t k = 0; k < all.size(); ++k)
            waiting += position[k] < all[k].size() && all[k][position[k]].plane == plane ? 1 : 0;
          if (waiting > most) {
            most = waiting;
            best = plane;
          }
        }
        out.planes.push_back(best);
        position = with_plane(all, position, best);
      }
      break;
    }
    for (const int plane : planes) {
      const Position on = with_plane(all, *next.at, plane);
      const int taken = next.taken + 1;
      const auto [place, fresh] = reached.try_emplace(on, Reached{taken, plane, next.at});
      if (!fresh && place->second.taken <= taken) continue;
      place->second = {taken, plane, next.at};
      open.push({taken + remaining(on), taken, ++found, &place->first});
    }
  }
  std::vector<int> before;
  for (const Position* at = last; at != nullptr; at = reached.at(*at).from) {
    if (reached.at(*at).plane >= 0) before.push_back(reached.at(*at).plane);
  }
  out.planes.insert(out.planes.begin(), before.rbegin(), before.rend());
  return out;
}

const Cut& cut_of(const std::vector<const Plan*>& plans, WorkStep step) {
  return plans[step.run]->cuts[step.cut];
}

/// Figures to be set that the step before did not have.
int settings_after(const Cut& cut, const Cut* before) {
  int out = 0;
  for (const GaugeLine& line : cut.lines) {
    const bool there = before != nullptr &&
                       std::any_of(before->lines.begin(), before->lines.end(), [&](const GaugeLine& other) {
                         return other.from == line.from && std::abs(other.set - line.set) < 1e-6;
                       });
    out += there ? 0 : 1;
  }
  return out;
}

/// Cuts of one profile, one after the other.
struct Range {
  std::size_t run = 0;
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// One way to have done some of the cuts: plane changes, then settings.
struct Way {
  std::pair<int, int> cost;
  WorkStep step;
  std::size_t from = 0;  // index into all ways; its own where it is the first
};

/// The cuts of some ranges in an order of least cost, then those of others: every state of each range by
/// itself, with the step last made. Of more than `most` ways to have made so many cuts the cheapest go on.
class Interleaved {
 public:
  Interleaved(const std::vector<const Plan*>& plans, std::size_t most) : plans_(plans), most_(most) {}

  void take(const std::vector<Range>& ranges) {
    // Layer by layer, one cut more in each.
    Layer layer;
    std::size_t steps = 0;
    for (const Range& range : ranges) steps += range.end - range.begin;
    for (std::size_t done = 0; done < steps; ++done) {
      Layer next;
      if (done == 0) {
        const Position none(ranges.size());
        if (last_.empty()) extend(ranges, none, std::nullopt, next);
        for (const std::size_t way : last_) extend(ranges, none, way, next);
      } else {
        for (const auto& [key, way] : layer) extend(ranges, key.first, way, next);
      }
      layer = narrowed(std::move(next));
    }
    if (steps == 0) return;
    last_.clear();
    for (const auto& [key, way] : layer) last_.push_back(way);
  }

  std::vector<WorkStep> steps() const {
    std::vector<WorkStep> out;
    if (last_.empty()) return out;
    std::size_t at = *std::min_element(last_.begin(), last_.end(), [&](std::size_t a, std::size_t b) {
      return ways_[a].cost < ways_[b].cost;
    });
    for (;; at = ways_[at].from) {
      out.push_back(ways_[at].step);
      if (ways_[at].from == at) break;
    }
    std::reverse(out.begin(), out.end());
    return out;
  }

 private:
  // Cuts done of each range, and the range of the last.
  using Layer = std::map<std::pair<Position, std::size_t>, std::size_t>;

  void extend(const std::vector<Range>& ranges, const Position& at, std::optional<std::size_t> from,
              Layer& next) {
    for (std::size_t k = 0; k < ranges.size(); ++k) {
      if (ranges[k].begin + at[k] == ranges[k].end) continue;
      const WorkStep step{ranges[k].run, ranges[k].begin + at[k]};
      const Cut& cut = cut_of(plans_, step);
      const Cut* before = from ? &cut_of(plans_, ways_[*from].step) : nullptr;
      std::pair<int, int> cost = from ? ways_[*from].cost : std::pair{0, 0};
      if (before != nullptr && !same_plane(cut.plane, before->plane)) ++cost.first;
      cost.second += settings_after(cut, before);
      Position on = at;
      ++on[k];
      const auto [place, fresh] = next.try_emplace({std::move(on), k}, ways_.size());
      if (!fresh && ways_[place->second].cost <= cost) continue;
      place->second = ways_.size();
      ways_.push_back({cost, step, from ? *from : ways_.size()});
    }
  }

  Layer narrowed(Layer layer) const {
    if (layer.size() <= most_) return layer;
    std::vector<std::pair<int, int>> costs;
    for (const auto& [key, way] : layer) costs.push_back(ways_[way].cost);
    std::nth_element(costs.begin(), costs.begin() + static_cast<std::ptrdiff_t>(most_), costs.end());
    const std::pair<int, int> most = costs[most_];
    Layer out;
    for (const auto& [key, way] : layer)
      if (ways_[way].cost <= most && out.size() < most_) out.emplace(key, way);
    return out;
  }

  const std::vector<const Plan*>& plans_;
  std::size_t most_;
  std::vector<Way> ways_;
  std::vector<std::size_t> last_;  // the ways that end where the last ranges do
};

/// All orders, where their states are few: fewest changes, and of those orders the fewest settings.
std::vector<WorkStep> of_all_orders(const std::vector<const Plan*>& plans) {
  std::vector<Range> whole;
  for (std::size_t k = 0; k < plans.size(); ++k) whole.push_back({k, 0, plans[k]->cuts.size()});
  Interleaved interleaved(plans, most_states(plans.size()));
  interleaved.take(whole);
  return interleaved.steps();
}

/// Plane by plane, in the order of the planes found.
std::vector<WorkStep> plane_by_plane(const std::vector<const Plan*>& plans, const std::vector<Stretches>& all,
                                     const std::vector<int>& planes) {
  Interleaved interleaved(plans, most_ways(plans.size()));
  Position position(all.size());
  for (const int plane : planes) {
    std::vector<Range> ranges;
    for (std::size_t k = 0; k < all.size(); ++k) {
      if (position[k] >= all[k].size() || all[k][position[k]].plane != plane) continue;
      ranges.push_back({k, all[k][position[k]].begin, all[k][position[k]].end});
      ++position[k];
    }
    interleaved.take(ranges);
  }
  return interleaved.steps();
}

bool states_are_few(const std::vector<const Plan*>& plans) {
  std::size_t states = plans.size();
  for (const Plan* plan : plans) {
    states *= plan->cuts.size() + 1;
    if (states > most_states(plans.size())) return false;
  }
  return true;
}

void count(const std::vector<const Plan*>& plans, const std::vector<WorkStep>& steps, int& changes,
           int& settings) {
  const Cut* before = nullptr;
  for (const WorkStep step : steps) {
    const Cut& cut = cut_of(plans, step);
    if (before != nullptr && !same_plane(cut.plane, before->plane)) ++changes;
    settings += settings_after(cut, before);
    before = &cut;
  }
}

}  // namespace

WorkOrder order_work(const std::vector<const Plan*>& plans) {
  WorkOrder out;
  if (states_are_few(plans)) {
    out.steps = of_all_orders(plans);
  } else {
    const std::vector<Stretches> all = stretches_of(plans);
    const PlaneSequence sequence = fewest_changes(all);
    out.fewest = sequence.fewest;
    out.steps = plane_by_plane(plans, all, sequence.planes);
  }
  count(plans, out.steps, out.plane_changes, out.settings);
  std::vector<WorkStep> one_by_one;
  for (std::size_t k = 0; k < plans.size(); ++k)
    for (std::size_t i = 0; i < plans[k]->cuts.size(); ++i) one_by_one.push_back({k, i});
  count(plans, one_by_one, out.plane_changes_one_by_one, out.settings_one_by_one);
  return out;
}

}  // namespace arrisline
