// Depth-first over covers of the flats, planes for the arcs and rails for those planes; each complete
// choice is put in its cheapest order and judged. Shown by tests/plan/plan_test.cpp.
#include "plan/compose.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "plan/rails.h"

namespace arrisline {

namespace {

constexpr std::size_t kCovers = 4;        // covers of the flats carried on to the arcs
constexpr std::size_t kPerSurface = 10;   // flat drafts considered for one surface
constexpr std::size_t kPlanesPerArc = 3;
constexpr std::size_t kSetupsPerArc = 6;
constexpr int kMostLeaves = 400;          // complete choices ordered and judged
constexpr double kUncovered = 0.02;       // mm of a flat that may stay unclaimed by soles and sides

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

  /// Length of the surface that the chosen drafts leave unclaimed; `at` is the middle of its first bare stretch.
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
      if (options.size() > kPlanesPerArc) options.resize(kPlanesPerArc);
      arcs_.push_back({surface, std::move(options)});
    }
    guided_.assign(arcs_.size(), false);
  }

  void run(const std::vector<int>& cover) {
    std::vector<Draft> drafts;
    for (const int d : cover) drafts.push_back(flats_[static_cast<std::size_t>(d)]);
    Wood wood(problem_.blank);
    cut_all(problem_, drafts, wood);
    leaves_ = 0;
    for (const bool forward : {true, false}) {
      if (!forward && arcs_.size() < 2) break;
      forward_ = forward;
      std::vector<Draft> curved;
      choose(0, drafts, curved, wood);
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

  bool better(const Sequence& a, const Sequence& b) const {
    const double over_a = std::max(0.0, a.left.height - problem_.options.tolerance);
    const double over_b = std::max(0.0, b.left.height - problem_.options.tolerance);
    if (std::abs(over_a - over_b) > 1e-4) return over_a < over_b;
    if (std::abs(a.effort - b.effort) > 1e-6) return a.effort < b.effort;
    return a.imbalance < b.imbalance - 1e-6;
  }

  void choose(std::size_t k, std::vector<Draft>& flats, std::vector<Draft>& curved, const Wood& wood) {
    if (leaves_ > kMostLeaves) return;
    const double least = problem_.kit.shop.weight_cut * static_cast<double>(flats.size() + curved.size() + arcs_.size() - k);
    if (out_.best && least >= out_.best->effort) return;
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
      if (const std::optional<Start> start = best_start(problem_, option, wood)) {
        setups.push_back({{}, start->tilt, start->guidance});
      }
      std::vector<Setup> laid = lay_rails(problem_, option, wood);
      // Most wood to flat soles first: their rails leave the curved plane the least.
      std::vector<std::pair<double, std::size_t>> rank;
      for (std::size_t i = 0; i < laid.size(); ++i) {
        Wood after = wood;
        cut_all(problem_, laid[i].cuts, after);
        rank.emplace_back(after.area() + 2.0 * static_cast<double>(laid[i].cuts.size()), i);
      }
      std::sort(rank.begin(), rank.end());
      for (const auto& [area, i] : rank) {
        if (setups.size() >= kSetupsPerArc) break;
        setups.push_back(laid[i]);
      }
      if (!setups.empty()) guided_[index] = true;
      for (const Setup& setup : setups) {
        const std::size_t before = flats.size();
        flats.insert(flats.end(), setup.cuts.begin(), setup.cuts.end());
        const std::size_t curved_before = curved.size();
        curved.insert(curved.end(), way.begin(), way.end());
        curved[curved_before].starts.push_back(setup.start);
        Wood after = wood;
        cut_all(problem_, setup.cuts, after);
        choose(k + 1, flats, curved, after);
        curved.resize(curved_before);
        flats.resize(before);
      }
    }
  }

  const Problem& problem_;
  const std::vector<Draft>& flats_;
  Composition& out_;
  std::vector<Arc> arcs_;
  std::vector<bool> guided_;
  bool forward_ = true;
  int leaves_ = 0;
};

std::vector<Draft> drafts_of(const Sequence& sequence) {
  std::vector<Draft> out;
  for (const Step& step : sequence.steps) out.push_back(step.draft);
  return out;
}

/// Leaves out each flat that the plan is better without, until none is left to leave out.
void prune(const Problem& problem, Chooser& chooser, Composition& out) {
  bool again = out.best.has_value();
  while (again) {
    again = false;
    const std::vector<Draft> drafts = drafts_of(*out.best);
    const double before = out.best->effort;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
      if (problem.plane(drafts[i].plane).is_curved()) continue;
      std::vector<Draft> fewer = drafts;
      fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
      if (!fewer.empty()) chooser.judge(fewer, false);
    }
    again = out.best->effort < before - 1e-6;
  }
}

}  // namespace

double most_left(const Problem& problem) {
  return problem.kit.scraper ? std::max(problem.options.tolerance, problem.options.scrape) : problem.options.tolerance;
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
    prune(problem, chooser, out);
    chooser.judge(drafts_of(*out.best), true);
  }
  return out;
}

}  // namespace arrisline
