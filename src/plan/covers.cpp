// Branch and bound on the first flat that is still bare. Shown by tests/plan/plan_test.cpp.
#include "plan/covers.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace arrisline {

namespace {

constexpr std::size_t kCovers = 4;       // covers carried on to the arcs
constexpr std::size_t kPerSurface = 10;  // flat drafts considered for one surface
constexpr int kMostVisits = 20000;       // choices looked at before the search is cut short
constexpr double kUncovered = 0.02;      // mm of a flat that may stay unclaimed by soles and sides

double draft_cost(const Problem& problem, const Draft& draft) {
  const Shop& shop = problem.kit.shop;
  const double tilt = draft.poses.front().tilt;
  double cost = shop.weight_cut + 1.5 * shop.weight_setting + 0.05 * static_cast<double>(draft.poses.size());
  if (lies_for(draft.poses) != Lies::face_up) cost += shop.weight_change;
  // Upright on the face before on its side, square before slanted: easier to hold and to see.
  if (std::abs(wrap_degrees(tilt)) > 1e-6) cost += 0.2;
  if (!is_square(tilt)) cost += 0.3;
  return cost;
}

class Covers {
 public:
  Covers(const Problem& problem, const std::vector<Draft>& drafts, const std::vector<Draft>& given)
      : problem_(problem), drafts_(drafts), given_(given) {
    by_surface_.resize(problem.surfaces.size());
    for (std::size_t d = 0; d < drafts.size(); ++d) {
      std::set<int> touched;
      for (const Stretch& s : drafts[d].finishes) touched.insert(s.surface);
      for (const int s : touched) by_surface_[static_cast<std::size_t>(s)].push_back(static_cast<int>(d));
    }
  }

  CoverSet best() {
    std::vector<int> chosen;
    // Flats that all drafts together leave bare are left to the final judgement.
    std::vector<int> all(drafts_.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<int>(i);
    for (std::size_t s = 0; s < problem_.surfaces.size(); ++s) {
      if (!problem_.surfaces[s].arc && bare(static_cast<int>(s), all) > kUncovered)
        uncoverable_.push_back(static_cast<int>(s));
    }
    search(chosen, 0);
    CoverSet out;
    for (const Found& found : found_) out.covers.push_back(found.chosen);
    out.uncoverable = uncoverable_;
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
    auto claim = [&](const Draft& draft) {
      for (const Stretch& s : draft.finishes) {
        if (s.surface == surface) spans.emplace_back(s.from, s.to);
      }
    };
    for (const int d : chosen) claim(drafts_[static_cast<std::size_t>(d)]);
    for (const Draft& draft : given_) claim(draft);
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
    if (++visited_ > kMostVisits) return;
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
  const std::vector<Draft>& given_;
  std::vector<std::vector<int>> by_surface_;
  std::vector<int> uncoverable_;
  std::vector<Found> found_;
  int visited_ = 0;
};

}  // namespace

CoverSet cheapest_covers(const Problem& problem, const std::vector<Draft>& drafts,
                         const std::vector<Draft>& given) {
  return Covers(problem, drafts, given).best();
}

}  // namespace arrisline
