// Depth-first over covers of the flats, planes for the arcs and rails for those planes; each complete
// choice is put in its cheapest order and judged. Shown by tests/plan/plan_test.cpp.
#include "plan/compose.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "plan/rails.h"

namespace arrisline {

namespace {

constexpr std::size_t kCovers = 4;       // covers of the flats carried on to the arcs
constexpr std::size_t kPerSurface = 10;  // flat drafts considered for one surface
constexpr std::size_t kPlanesPerArc = 3;
constexpr std::size_t kSetupsPerArc = 4;
constexpr int kMostLeaves = 60;      // complete choices ordered and judged for one cover
constexpr double kUncovered = 0.02;  // mm of a flat that may stay unclaimed by soles and sides

// --- covers of the flat surfaces --------------------------------------------------------------------

double draft_cost(const Problem& problem, const Draft& draft) {
  const Shop& shop = problem.kit.shop;
  const double tilt = draft.poses.front().tilt;
  double cost = shop.weight_cut + 1.5 * shop.weight_setting + 0.05 * static_cast<double>(draft.poses.size());
  if (lies_for(draft.poses) != Lies::face_up) cost += shop.weight_change;
  // Upright on the face before on its side, square before slanted: easier to hold and to see.
  if (std::abs(wrap_degrees(tilt)) > 1e-6) cost += 0.2;
  if (std::abs(wrap_degrees(4 * tilt)) > 1e-6) cost += 0.3;
  return cost;
}

class Covers {
 public:
  Covers(const Problem& problem, const std::vector<Draft>& drafts) : problem_(problem), drafts_(drafts) {
    by_surface_.resize(problem.surfaces.size());
    for (std::size_t d = 0; d < drafts.size(); ++d) {
      std::set<int> touched;
      for (const Stretch& s : drafts[d].finishes) touched.insert(s.surface);
      for (const int s : touched) by_surface_[static_cast<std::size_t>(s)].push_back(static_cast<int>(d));
    }
  }

  std::vector<int> uncoverable() const { return uncoverable_; }

  std::vector<std::vector<int>> best() {
    std::vector<int> chosen;
    // Flats that all drafts together leave bare are left to the final judgement.
    std::vector<int> all(drafts_.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<int>(i);
    for (std::size_t s = 0; s < problem_.surfaces.size(); ++s) {
      if (!problem_.surfaces[s].arc && bare(static_cast<int>(s), all) > kUncovered)
        uncoverable_.push_back(static_cast<int>(s));
    }
    search(chosen, 0);
    std::vector<std::vector<int>> out;
    for (const Found& found : found_) out.push_back(found.chosen);
    return out;
  }

 private:
  struct Found {
    double cost;
    std::vector<int> chosen;
  };

  /// Length of the surface that the chosen drafts leave unclaimed; `at` is the middle of its first bare
  /// stretch.
  double bare(int surface, const std::vector<int>& chosen, double* at = nullptr) const {
    std::vector<std::pair<double, double>> spans;
    for (const int d : chosen) {
      for (const Stretch& s : drafts_[static_cast<std::size_t>(d)].finishes) {
        if (s.surface == surface) spans.emplace_back(s.from, s.to);
      }
    }
    std::sort(spans.begin(), spans.end());
    const double len = length(problem_.edge(problem_.surfaces[static_cast<std::size_t>(surface)]));
    double reached = 0, sum = 0;
    bool first = true;
    spans.emplace_back(1, 1);
    for (const auto& [from, to] : spans) {
      if (from > reached + 1e-9) {
        sum += (from - reached) * len;
        if (first && (from - reached) * len > kUncovered && at != nullptr) {
          *at = (from + reached) / 2;
          first = false;
        }
      }
      reached = std::max(reached, to);
    }
    return sum;
  }

  void search(std::vector<int>& chosen, double cost) {
    if (++visited_ > 20000) return;
    if (found_.size() >= kCovers && cost >= found_.back().cost) return;
    int open = -1;
    double at = 0;
    for (std::size_t s = 0; s < problem_.surfaces.size() && open < 0; ++s) {
      const int surface = static_cast<int>(s);
      if (problem_.surfaces[s].arc ||
          std::find(uncoverable_.begin(), uncoverable_.end(), surface) != uncoverable_.end())
        continue;
      if (bare(surface, chosen, &at) > kUncovered) open = surface;
    }
    if (open < 0) {
      std::vector<int> sorted = chosen;
      std::sort(sorted.begin(), sorted.end());
      for (const Found& found : found_) {
        if (found.chosen == sorted) return;
      }
      found_.push_back({cost, sorted});
      std::sort(found_.begin(), found_.end(), [](const Found& a, const Found& b) { return a.cost < b.cost; });
      if (found_.size() > kCovers) found_.pop_back();
      return;
    }
    std::vector<std::pair<double, int>> options;
    for (const int d : by_surface_[static_cast<std::size_t>(open)]) {
      const Draft& draft = drafts_[static_cast<std::size_t>(d)];
      const bool reaches = std::any_of(draft.finishes.begin(), draft.finishes.end(), [&](const Stretch& s) {
        return s.surface == open && s.from < at && s.to > at;
      });
      if (!reaches) continue;
      double extra = draft_cost(problem_, draft);
      const bool new_plane = std::none_of(chosen.begin(), chosen.end(), [&](int c) {
        return drafts_[static_cast<std::size_t>(c)].plane == draft.plane;
      });
      if (new_plane) extra += problem_.kit.shop.weight_change;
      // What else it finishes counts for it when options are put in order, not in the cost.
      options.emplace_back(extra - 0.4 * static_cast<double>(draft.finishes.size()), d);
    }
    std::sort(options.begin(), options.end());
    if (options.size() > kPerSurface) options.resize(kPerSurface);
    for (const auto& [rank, d] : options) {
      const Draft& draft = drafts_[static_cast<std::size_t>(d)];
      double extra = rank + 0.4 * static_cast<double>(draft.finishes.size());
      chosen.push_back(d);
      search(chosen, cost + extra);
      chosen.pop_back();
    }
  }

  const Problem& problem_;
  const std::vector<Draft>& drafts_;
  std::vector<std::vector<int>> by_surface_;
  std::vector<int> uncoverable_;
  std::vector<Found> found_;
  int visited_ = 0;
};

// --- arcs and their rails ---------------------------------------------------------------------------

void cut_all(const Problem& problem, const std::vector<Draft>& drafts, Wood& wood) {
  for (const Draft& draft : drafts) {
    for (const Pose& pose : draft.poses) wood.cut(Sweep(problem.plane(draft.plane), pose));
  }
}

class Chooser {
 public:
  Chooser(const Problem& problem, const std::vector<Draft>& flats, Composition& out)
      : problem_(problem), flats_(flats), out_(out) {
    for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
      if (!problem.surfaces[s].arc) continue;
      const int surface = static_cast<int>(s);
      std::vector<std::vector<Draft>> options = arc_drafts(problem, surface);
      if (options.empty()) {
        out_.no_plane.push_back(surface);
        continue;
      }
      arcs_.push_back({surface, std::move(options)});
    }
    keep_likely_planes();
    guided_.assign(arcs_.size(), false);
  }

  void run(const std::vector<int>& cover) {
    std::vector<Draft> drafts;
    for (const int d : cover) drafts.push_back(flats_[static_cast<std::size_t>(d)]);
    Wood wood(problem_.blank);
    cut_all(problem_, drafts, wood);
    leaves_ = 0;
    const Shop& shop = problem_.kit.shop;
    const double cost =
        shop.weight_change + static_cast<double>(drafts.size()) * (shop.weight_cut + shop.weight_setting);
    for (const bool forward : {true, false}) {
      if (!forward && arcs_.size() < 2) break;
      forward_ = forward;
      std::vector<Draft> curved;
      choose(0, drafts, curved, wood, cost);
    }
  }

  std::vector<int> unguided() const {
    std::vector<int> out;
    for (std::size_t i = 0; i < arcs_.size(); ++i) {
      if (!guided_[i]) out.push_back(arcs_[i].surface);
    }
    return out;
  }

  void judge(const std::vector<Draft>& drafts, bool thorough) {
    std::optional<Sequence> sequence = best_order(problem_, drafts, thorough);
    if (!sequence) return;
    if (sequence->left.height > most_left(problem_)) {
      if (!out_.too_thick || sequence->left.height < out_.too_thick->left.height) out_.too_thick = sequence;
      return;
    }
    if (!out_.best || better(*sequence, *out_.best)) out_.best = std::move(sequence);
  }

 private:
  struct Arc {
    int surface;
    std::vector<std::vector<Draft>> options;
  };

  /// Of the planes for an arc only the nearest in radius, and those that are nearest for another arc, where
  /// one plane may then do for both.
  void keep_likely_planes() {
    std::set<int> nearest;
    for (const Arc& arc : arcs_) nearest.insert(arc.options.front().front().plane);
    for (Arc& arc : arcs_) {
      std::vector<std::vector<Draft>> kept;
      for (std::size_t i = 0; i < arc.options.size() && kept.size() < kPlanesPerArc; ++i) {
        const std::vector<Draft>& way = arc.options[i];
        const bool same = way.front().plane == arc.options.front().front().plane;
        if (i < 2 || same || nearest.count(way.front().plane) > 0) kept.push_back(way);
      }
      arc.options = std::move(kept);
    }
  }

  bool better(const Sequence& a, const Sequence& b) const {
    const double over_a = std::max(0.0, a.left.height - problem_.options.tolerance);
    const double over_b = std::max(0.0, b.left.height - problem_.options.tolerance);
    if (std::abs(over_a - over_b) > 1e-4) return over_a < over_b;
    if (std::abs(a.effort - b.effort) > 1e-6) return a.effort < b.effort;
    return a.imbalance < b.imbalance - 1e-6;
  }

  /// Effort of a setup and of the curved cuts it guides, as far as it can be told before the order is known.
  double estimate(const std::vector<Draft>& way, const Setup& setup, const Wood& wood) const {
    const Shop& shop = problem_.kit.shop;
    Wood left = wood;
    double effort = 0;
    for (const Draft& draft : setup.cuts) {
      const Plane& plane = problem_.plane(draft.plane);
      effort += shop.weight_cut + shop.weight_setting;
      for (const Pose& pose : draft.poses) {
        effort += shop.weight_stroke * strokes_of(problem_, plane, pose, left);
        left.cut(Sweep(plane, pose));
      }
    }
    for (const Draft& draft : way) {
      const Plane& plane = problem_.plane(draft.plane);
      effort += shop.weight_cut;
      double taken = 0;
      for (const Pose& pose : draft.poses) {
        effort += shop.weight_stroke * strokes_of(problem_, plane, pose, left);
        taken += left.cut(Sweep(plane, pose));
      }
      if (plane.is_curved()) effort += shop.weight_wear * taken / (plane.width * plane.width);
    }
    if (!well_laid(setup.guidance, problem_.plane(way.front().plane))) effort += kIllLaid;
    return effort;
  }

  void choose(std::size_t k, std::vector<Draft>& flats, std::vector<Draft>& curved, const Wood& wood,
              double cost) {
    if (leaves_ > kMostLeaves) return;
    // Sharing of settings and rails can only lower the estimate by so much.
    constexpr double kShared = 0.85;
    if (out_.best && kShared * cost >= out_.best->effort) return;
    if (k == arcs_.size()) {
      ++leaves_;
      std::vector<Draft> all = flats;
      all.insert(all.end(), curved.begin(), curved.end());
      judge(all, false);
      return;
    }
    const std::size_t index = forward_ ? k : arcs_.size() - 1 - k;
    for (const std::vector<Draft>& way : arcs_[index].options) {
      // The first cut that something guides lets the others ride in the arc it leaves.
      std::vector<Setup> setups;
      const Draft& option = way.front();
      const std::optional<Start> start = best_start(problem_, option, wood);
      if (start && well_laid(start->guidance, problem_.plane(option.plane))) {
        setups.push_back({{}, start->tilt, start->guidance});
      }
      const std::vector<Setup>& laid = rails_for(option, wood);
      setups.insert(setups.end(), laid.begin(), laid.end());
      if (setups.empty() && start) setups.push_back({{}, start->tilt, start->guidance});
      if (!setups.empty()) guided_[index] = true;
      // The cheapest first, each with what it and the curved cut will come to if nothing is shared.
      std::vector<std::pair<double, std::size_t>> rank;
      for (std::size_t i = 0; i < setups.size(); ++i) rank.emplace_back(estimate(way, setups[i], wood), i);
      std::sort(rank.begin(), rank.end());
      if (rank.size() > kSetupsPerArc) rank.resize(kSetupsPerArc);
      for (const auto& [extra, i] : rank) {
        const Setup& setup = setups[i];
        const std::size_t before = flats.size();
        flats.insert(flats.end(), setup.cuts.begin(), setup.cuts.end());
        const std::size_t curved_before = curved.size();
        curved.insert(curved.end(), way.begin(), way.end());
        curved[curved_before].starts.push_back(setup.start);
        Wood after = wood;
        cut_all(problem_, setup.cuts, after);
        choose(k + 1, flats, curved, after, cost + extra);
        curved.resize(curved_before);
        flats.resize(before);
      }
    }
  }

  /// Rails for the draft on this wood. Woods of the same area and number of pieces are taken for the same:
  /// they are all cut from one blank by the same few cuts.
  const std::vector<Setup>& rails_for(const Draft& draft, const Wood& wood) {
    const auto key = std::make_tuple(draft.arc, draft.plane, draft.poses.size(),
                                     std::llround(wood.area() * 1e7), wood.edges().size());
    auto [slot, fresh] = rails_.try_emplace(key);
    if (fresh) slot->second = lay_rails(problem_, draft, wood);
    return slot->second;
  }

  const Problem& problem_;
  const std::vector<Draft>& flats_;
  Composition& out_;
  std::map<std::tuple<int, int, std::size_t, long long, std::size_t>, std::vector<Setup>> rails_;
  std::vector<Arc> arcs_;
  std::vector<bool> guided_;
  bool forward_ = true;
  int leaves_ = 0;
};

/// Flat cuts that may take waste from before the curved planes: chamfers on beads, corners in coves, and the
/// flats that stand against corners of the target.
std::vector<Draft> roughing_pool(const Problem& problem, const std::vector<Draft>& flats) {
  std::vector<Draft> pool;
  int widest = -1;
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    if (problem.plane(p).kind == PlaneKind::rebate &&
        (widest < 0 || problem.plane(p).width > problem.plane(widest).width))
      widest = p;
  }
  auto add = [&](std::vector<Pose> poses) {
    if (poses.empty()) return;
    Draft draft;
    draft.plane = widest;
    draft.poses = std::move(poses);
    pool.push_back(std::move(draft));
  };
  for (const Surface& s : problem.surfaces) {
    if (!s.arc || widest < 0) continue;
    for (const double share : {0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875}) {
      const double lean = s.lo + share * (s.hi - s.lo);
      if (s.bead) {
        add(chamfer_on_arc(problem, s, problem.plane(widest), lean, 0));
        continue;
      }
      const Point k = problem.edge(s).centre - radius(problem.edge(s)) * outward(lean);
      const double frame = std::abs(wrap_degrees(lean)) <= 90 ? 0 : 180;
      const int open = wrap_degrees(lean - frame) > 0 ? -1 : 1;
      add(flat_cut(problem, problem.plane(widest), frame, dot(k, across(frame)), open,
                   dot(k, outward(frame))));
    }
  }
  for (const Draft& draft : flats) {
    if (problem.plane(draft.plane).kind == PlaneKind::rebate) pool.push_back(draft);
  }
  return pool;
}

std::vector<Draft> drafts_of(const Sequence& sequence) {
  std::vector<Draft> out;
  for (const Step& step : sequence.steps) out.push_back(step.draft);
  return out;
}

/// Leaves out each flat that the plan is better without, and puts in each of the pool that it is better with,
/// until neither helps.
void improve(const Problem& problem, const std::vector<Draft>& pool, Chooser& chooser, Composition& out) {
  constexpr double kWorthwhile = 0.01;  // of the waste, that a cut from the pool must save the curved planes
  constexpr int kRounds = 8;
  double before = std::numeric_limits<double>::infinity();
  for (int round = 0; round < kRounds && out.best->effort < before - 1e-6; ++round) {
    before = out.best->effort;
    const std::vector<Draft> drafts = drafts_of(*out.best);
    Wood flat_wood(problem.blank);
    for (std::size_t i = 0; i < drafts.size(); ++i) {
      if (problem.plane(drafts[i].plane).is_curved()) continue;
      cut_all(problem, {drafts[i]}, flat_wood);
      if (!drafts[i].finishes.empty()) continue;
      std::vector<Draft> fewer = drafts;
      fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
      if (!fewer.empty()) chooser.judge(fewer, false);
    }
    const double waste = area(problem.blank) - area(problem.section.target);
    for (const Draft& extra : pool) {
      Wood wood = flat_wood;
      cut_all(problem, {extra}, wood);
      if (flat_wood.area() - wood.area() < kWorthwhile * waste) continue;
      std::vector<Draft> more = drafts;
      more.push_back(extra);
      chooser.judge(more, false);
      // In the place of one that is there.
      for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (!problem.plane(drafts[i].plane).is_flat() || !drafts[i].finishes.empty()) continue;
        std::vector<Draft> swapped = drafts;
        swapped[i] = extra;
        chooser.judge(swapped, false);
      }
    }
  }
}

}  // namespace

double most_left(const Problem& problem) {
  return problem.kit.scraper ? std::max(problem.options.tolerance, problem.options.scrape)
                             : problem.options.tolerance;
}

Composition compose(const Problem& problem) {
  Composition out;
  const std::vector<Draft> flats = flat_drafts(problem);
  Covers covers(problem, flats);
  const std::vector<std::vector<int>> best_covers = covers.best();
  out.no_flat = covers.uncoverable();
  Chooser chooser(problem, flats, out);
  if (!out.no_plane.empty()) return out;
  for (const std::vector<int>& cover : best_covers) chooser.run(cover);
  out.no_rails = chooser.unguided();
  if (out.best) {
    improve(problem, roughing_pool(problem, flats), chooser, out);
    chooser.judge(drafts_of(*out.best), true);
  }
  return out;
}

}  // namespace arrisline
