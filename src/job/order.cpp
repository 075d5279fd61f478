// The order of work over several profiles: a plane taken up serves every profile that waits for it. Fewest
// plane changes first, found by A* over how far each profile has got; then, among the cuts made with one
// plane in hand, fewest gauge settings. Shown by tests/job/order_test.cpp.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <queue>

#include "arrisline/job_plan.h"

namespace arrisline {
namespace {

// States of the search past which the rest is filled in as it comes: some tens of megabytes.
constexpr std::size_t kMostStates = 200000;

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
    if (reached.size() > kMostStates) {
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

/// One way to have done some of the cuts, and its settings.
struct Way {
  int settings = 0;
  WorkStep step;
  std::size_t from = 0;  // index into all ways; its own where it is the first
};

/// The cuts of the stretches in an order of least settings, plane by plane: every state of each stretch by
/// itself, with the step last made.
class Interleaved {
 public:
  Interleaved(const std::vector<const Plan*>& plans, const std::vector<Stretches>& all)
      : plans_(plans), all_(all), position_(all.size()) {}

  void take(int plane) {
    std::vector<std::size_t> runs;
    Position ends(all_.size());
    for (std::size_t k = 0; k < all_.size(); ++k) {
      if (position_[k] >= all_[k].size() || all_[k][position_[k]].plane != plane) continue;
      runs.push_back(k);
      ends[k] = static_cast<std::uint16_t>(all_[k][position_[k]].end - all_[k][position_[k]].begin);
      ++position_[k];
    }
    // Layer by layer, one cut more in each.
    using Key = std::pair<Position, std::size_t>;  // cuts done of each stretch, and the run of the last
    std::map<Key, std::size_t> layer;
    std::size_t steps = 0;
    for (const std::size_t k : runs) steps += ends[k];
    for (std::size_t done = 0; done < steps; ++done) {
      std::map<Key, std::size_t> next;
      const auto extend = [&](const Position& at, std::optional<std::size_t> from) {
        for (const std::size_t k : runs) {
          if (at[k] == ends[k]) continue;
          const WorkStep step{k, all_[k][position_[k] - 1U].begin + at[k]};
          const Cut* before = from ? &cut_of(plans_, ways_[*from].step) : nullptr;
          const int settings =
              (from ? ways_[*from].settings : 0) + settings_after(cut_of(plans_, step), before);
          Position on = at;
          ++on[k];
          const auto [place, fresh] = next.try_emplace(Key{on, k}, ways_.size());
          if (!fresh && ways_[place->second].settings <= settings) continue;
          place->second = ways_.size();
          ways_.push_back({settings, step, from ? *from : ways_.size()});
        }
      };
      if (done == 0) {
        const Position none(all_.size());
        if (last_.empty()) extend(none, std::nullopt);
        for (const std::size_t way : last_) extend(none, way);
      } else {
        for (const auto& [key, way] : layer) extend(key.first, way);
      }
      layer = narrowed(std::move(next));
    }
    last_.clear();
    for (const auto& [key, way] : layer) last_.push_back(way);
  }

  std::vector<WorkStep> steps() const {
    std::vector<WorkStep> out;
    if (last_.empty()) return out;
    std::size_t at = *std::min_element(last_.begin(), last_.end(), [&](std::size_t a, std::size_t b) {
      return ways_[a].settings < ways_[b].settings;
    });
    for (;; at = ways_[at].from) {
      out.push_back(ways_[at].step);
      if (ways_[at].from == at) break;
    }
    std::reverse(out.begin(), out.end());
    return out;
  }

 private:
  /// Of very many ways the cheapest go on.
  template <class Map>
  Map narrowed(Map ways) const {
    constexpr std::size_t kMostWays = 5000;
    if (ways.size() <= kMostWays) return ways;
    std::vector<int> settings;
    for (const auto& [key, way] : ways) settings.push_back(ways_[way].settings);
    std::nth_element(settings.begin(), settings.begin() + kMostWays, settings.end());
    const int most = settings[kMostWays];
    Map out;
    for (const auto& [key, way] : ways)
      if (ways_[way].settings <= most && out.size() < kMostWays) out.emplace(key, way);
    return out;
  }

  const std::vector<const Plan*>& plans_;
  const std::vector<Stretches>& all_;
  Position position_;
  std::vector<Way> ways_;
  std::vector<std::size_t> last_;  // the ways that end with the plane last taken up
};

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
  const std::vector<Stretches> all = stretches_of(plans);
  const PlaneSequence sequence = fewest_changes(all);
  out.fewest = sequence.fewest;
  Interleaved interleaved(plans, all);
  for (const int plane : sequence.planes) interleaved.take(plane);
  out.steps = interleaved.steps();
  count(plans, out.steps, out.plane_changes, out.settings);
  std::vector<WorkStep> one_by_one;
  for (std::size_t k = 0; k < plans.size(); ++k)
    for (std::size_t i = 0; i < plans[k]->cuts.size(); ++i) one_by_one.push_back({k, i});
  count(plans, one_by_one, out.plane_changes_one_by_one, out.settings_one_by_one);
  return out;
}

}  // namespace arrisline
