// Best first on the first flat that is still bare. Shown by tests/plan/oracle_test.cpp.
#include "plan/covers.h"

#include <algorithm>
#include <cmath>

#include "plan/gauge.h"
#include "plan/orders.h"

namespace arrisline {

namespace {

constexpr std::size_t kMostChoices = 50000;  // choices kept at once before the rest is left out
constexpr std::size_t kManyFlats = 9;        // of which the cheapest cover takes long to find

}  // namespace

Covers::Covers(const Problem& problem, const std::vector<Draft>& drafts, const std::vector<Draft>& given,
               double besides)
    : problem_(problem), drafts_(drafts), given_(given), besides_(besides) {
  by_surface_.resize(problem.surfaces.size());
  share_.assign(problem.surfaces.size(), std::numeric_limits<double>::infinity());
  std::vector<int> all;
  for (std::size_t d = 0; d < drafts.size(); ++d) {
    std::set<int> touched;
    for (const Stretch& s : drafts[d].finishes) touched.insert(s.surface);
    // A cut that does for several is shared among them; its figures others may use as well.
    const bool square = is_square(drafts[d].poses.front().tilt);
    const double cost = problem.weights.cut + (square ? 0 : problem.weights.setting);
    for (const int s : touched) {
      by_surface_[static_cast<std::size_t>(s)].push_back(static_cast<int>(d));
      double& share = share_[static_cast<std::size_t>(s)];
      share = std::min(share, cost / static_cast<double>(touched.size()));
    }
    all.push_back(static_cast<int>(d));
  }
  Node first;
  for (std::size_t s = 0; s < problem_.surfaces.size(); ++s) {
    const int surface = static_cast<int>(s);
    if (problem_.surfaces[s].arc) continue;
    if (first_bare(surface, all)) {
      uncoverable_.push_back(surface);
    } else if (const std::optional<double> at = first_bare(surface, {})) {
      first.open.push_back({surface, *at});
    }
  }
  first.least = least(first);
  open_.insert(std::move(first));
}

double Covers::least_to_come() const {
  return open_.empty() ? std::numeric_limits<double>::infinity() : open_.begin()->least;
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

double Covers::least(const Node& node) const {
  constexpr std::uint64_t kPiecesPerCut = 10;  // of wood that could be cut in the time that one takes here
  count_work(kPiecesPerCut * node.chosen.size());
  std::vector<Draft> cuts;
  for (const int d : node.chosen) cuts.push_back(drafts_[static_cast<std::size_t>(d)]);
  double cost = LeastCost(problem_, cuts, OrderOf::any).total() + besides_;
  for (const Open& open : node.open) cost += share_[static_cast<std::size_t>(open.surface)];
  return cost;
}

/// All that come of the choice by a cut that finishes the first of its bare flats there.
std::vector<Covers::Node> Covers::with_one_more(const Node& node) const {
  std::vector<Node> out;
  const Open& first = node.open.front();
  for (const int d : by_surface_[static_cast<std::size_t>(first.surface)]) {
    const std::vector<Stretch>& all = drafts_[static_cast<std::size_t>(d)].finishes;
    if (std::none_of(all.begin(), all.end(), [&](const Stretch& s) {
          return s.surface == first.surface && s.from < first.at && s.to > first.at;
        }))
      continue;
    Node more;
    more.chosen = node.chosen;
    more.chosen.insert(std::upper_bound(more.chosen.begin(), more.chosen.end(), d), d);
    out.push_back(std::move(more));
  }
  return out;
}

void Covers::work_out(Node& node, const std::vector<Open>& open_before) const {
  for (const Open& open : open_before) {
    if (const std::optional<double> at = first_bare(open.surface, node.chosen))
      node.open.push_back({open.surface, *at});
  }
  node.least = least(node);
}

/// From nothing, the cut that costs least for what it does, again and again.
Covers::Cover Covers::soon_found() const {
  Node node = *open_.begin();
  while (!node.open.empty()) {
    std::vector<Node> next = with_one_more(node);
    for (Node& one : next) work_out(one, node.open);
    node = *std::min_element(next.begin(), next.end());
  }
  return {node.chosen, node.least};
}

std::optional<Covers::Cover> Covers::next(Patience& patience) {
  if (!begun_) {
    begun_ = true;
    if (!open_.empty() && open_.begin()->open.size() >= kManyFlats) return first_ = soon_found();
  }
  while (!open_.empty() && !patience.over()) {
    const Node node = std::move(open_.extract(open_.begin()).value());
    if (node.open.empty()) {
      if (first_ && first_->drafts == node.chosen) continue;
      return Cover{node.chosen, node.least};
    }
    for (Node& more : with_one_more(node)) {
      if (!seen_.insert(more.chosen).second) continue;
      if (open_.size() >= kMostChoices) {
        too_many_ = true;
        return std::nullopt;
      }
      work_out(more, node.open);
      open_.insert(std::move(more));
    }
  }
  return std::nullopt;
}

}  // namespace arrisline
