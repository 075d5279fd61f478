// Best first on the first flat that is still bare. Shown by tests/plan/oracle_test.cpp.
#include "plan/covers.h"

#include <algorithm>
#include <cmath>

#include "plan/gauge.h"
#include "plan/orders.h"

namespace arrisline {

namespace {

constexpr std::size_t kMostChoices = 50000;  // choices kept at once before the rest is left out

}  // namespace

Covers::Covers(const Problem& problem, const std::vector<Draft>& drafts, const std::vector<Draft>& given)
    : problem_(problem), drafts_(drafts), given_(given) {
  by_surface_.resize(problem.surfaces.size());
  std::vector<int> all;
  for (std::size_t d = 0; d < drafts.size(); ++d) {
    std::set<int> touched;
    for (const Stretch& s : drafts[d].finishes) touched.insert(s.surface);
    for (const int s : touched) by_surface_[static_cast<std::size_t>(s)].push_back(static_cast<int>(d));
    all.push_back(static_cast<int>(d));
  }
  for (std::size_t s = 0; s < problem_.surfaces.size(); ++s) {
    if (!problem_.surfaces[s].arc && first_bare(static_cast<int>(s), all))
      uncoverable_.push_back(static_cast<int>(s));
  }
  open_.emplace(0.0, std::vector<int>{});
}

double Covers::least_to_come() const {
  return open_.empty() ? std::numeric_limits<double>::infinity() : open_.begin()->first;
}

/// Middle of the first stretch of the surface that the chosen drafts leave unclaimed.
std::optional<double> Covers::first_bare(int surface, const std::vector<int>& chosen) const {
  std::vector<std::pair<double, double>> spans;
  auto claim = [&](const Draft& draft) {
    for (const Stretch& s : draft.finishes) {
      if (s.surface == surface) spans.emplace_back(s.from, s.to);
    }
  };
  for (const int d : chosen) claim(drafts_[static_cast<std::size_t>(d)]);
  for (const Draft& draft : given_) claim(draft);
  const double len = length(problem_.edge(problem_.surfaces[static_cast<std::size_t>(surface)]));
  const Bare bare = bare_of(std::move(spans), len);
  return bare.length > kUnclaimed ? bare.at : std::nullopt;
}

std::optional<Covers::Open> Covers::first_open(const std::vector<int>& chosen) const {
  for (std::size_t s = 0; s < problem_.surfaces.size(); ++s) {
    const int surface = static_cast<int>(s);
    if (problem_.surfaces[s].arc ||
        std::find(uncoverable_.begin(), uncoverable_.end(), surface) != uncoverable_.end())
      continue;
    if (const std::optional<double> at = first_bare(surface, chosen)) return Open{surface, *at};
  }
  return std::nullopt;
}

double Covers::least(const std::vector<int>& chosen) const {
  std::vector<Draft> cuts;
  for (const int d : chosen) cuts.push_back(drafts_[static_cast<std::size_t>(d)]);
  return LeastCost(problem_, cuts).total();
}

std::optional<Covers::Cover> Covers::next(Patience& patience) {
  while (!open_.empty()) {
    if (patience.over()) {
      exhausted_ = false;
      return std::nullopt;
    }
    const auto [cost, chosen] = *open_.begin();
    open_.erase(open_.begin());
    const std::optional<Open> open = first_open(chosen);
    if (!open) return Cover{chosen, cost};
    for (const int d : by_surface_[static_cast<std::size_t>(open->surface)]) {
      const Draft& draft = drafts_[static_cast<std::size_t>(d)];
      const bool reaches = std::any_of(draft.finishes.begin(), draft.finishes.end(), [&](const Stretch& s) {
        return s.surface == open->surface && s.from < open->at && s.to > open->at;
      });
      if (!reaches) continue;
      std::vector<int> more = chosen;
      more.insert(std::upper_bound(more.begin(), more.end(), d), d);
      if (!seen_.insert(more).second) continue;
      if (open_.size() >= kMostChoices) {
        exhausted_ = false;
        return std::nullopt;
      }
      open_.emplace(least(more), std::move(more));
    }
  }
  return std::nullopt;
}

}  // namespace arrisline
