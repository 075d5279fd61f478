// Shown by tests/plan/plan_test.cpp.
#include "plan/chooser.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace arrisline {

namespace {

constexpr std::size_t kPlanesPerArc = 3;
constexpr std::size_t kSetupsPerArc = 7;
constexpr int kMostLeaves = 60;  // complete choices ordered and judged for one choice of flats

}  // namespace

Chooser::Chooser(const Problem& problem, const std::vector<int>& done, Composition& out)
    : problem_(problem), out_(out) {
  for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
    const int surface = static_cast<int>(s);
    if (!problem.surfaces[s].arc || std::find(done.begin(), done.end(), surface) != done.end()) continue;
    std::vector<std::vector<Draft>> options = arc_drafts(problem, surface);
    if (options.empty()) {
      out_.no_plane.push_back(surface);
      continue;
    }
    arcs_.push_back({surface, std::move(options)});
  }
  keep_likely_planes();
}

void Chooser::run(std::vector<Draft> flats) {
  Wood wood(problem_.blank);
  cut_all(problem_, flats, wood);
  leaves_ = 0;
  const Shop& shop = problem_.kit.shop;
  const double cost =
      shop.weight_change + static_cast<double>(flats.size()) * (shop.weight_cut + shop.weight_setting);
  for (const bool one_by_one : {false, true}) {
    // Arrises that a finished arc leaves are looked to only where the flats alone lead nowhere.
    if (one_by_one && (out_.best || arcs_.size() < 2)) break;
    for (const bool forward : {true, false}) {
      if (!forward && arcs_.size() < 2) break;
      forward_ = forward;
      one_by_one_ = one_by_one;
      std::vector<Draft> curved;
      choose(0, flats, curved, wood, cost);
    }
  }
}

std::vector<int> Chooser::unguided() const {
  std::vector<int> out;
  for (const Arc& arc : arcs_) {
    if (!arc.guided) out.push_back(arc.surface);
  }
  return out;
}

void Chooser::judge(const std::vector<Draft>& drafts, bool thorough) {
  std::optional<Sequence> sequence = best_order(problem_, drafts, thorough);
  if (!sequence) return;
  if (sequence->left.height > most_left(problem_)) {
    if (!out_.too_thick || sequence->left.height < out_.too_thick->left.height) out_.too_thick = sequence;
    return;
  }
  if (!out_.best || better(*sequence, *out_.best)) out_.best = std::move(sequence);
}

/// Of the planes for an arc only the nearest in radius, and those that are nearest for another arc, where
/// one plane may then do for both.
void Chooser::keep_likely_planes() {
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

bool Chooser::better(const Sequence& a, const Sequence& b) const {
  const double over_a = std::max(0.0, a.left.height - problem_.options.tolerance);
  const double over_b = std::max(0.0, b.left.height - problem_.options.tolerance);
  if (std::abs(over_a - over_b) > 1e-4) return over_a < over_b;
  if (std::abs(a.effort - b.effort) > 1e-6) return a.effort < b.effort;
  return a.imbalance < b.imbalance - 1e-6;
}

/// Effort of a setup and of the curved cuts it guides, as far as it can be told before the order is known.
double Chooser::estimate(const std::vector<Draft>& way, const Setup& setup, const Wood& wood) const {
  const Shop& shop = problem_.kit.shop;
  Wood left = wood;
  double effort = 0;
  for (const Draft& draft : setup.cuts) {
    const Plane& plane = problem_.plane(draft.plane);
    effort += shop.weight_cut + shop.weight_setting;
    for (const Pose& pose : draft.poses) {
      effort += shop.weight_stroke * strokes_of(problem_, plane, pose, left).counted;
      left.cut(Sweep(plane, pose));
    }
  }
  for (const Draft& draft : way) {
    const Plane& plane = problem_.plane(draft.plane);
    effort += shop.weight_cut;
    double taken = 0;
    for (const Pose& pose : draft.poses) {
      effort += shop.weight_stroke * strokes_of(problem_, plane, pose, left).counted;
      taken += left.cut(Sweep(plane, pose));
    }
    if (plane.is_curved()) effort += shop.weight_wear * taken / (plane.width * plane.width);
  }
  if (!well_laid(setup.guidance, problem_.plane(way.front().plane))) effort += kIllLaid;
  return effort;
}

void Chooser::choose(std::size_t k, std::vector<Draft>& flats, std::vector<Draft>& curved, const Wood& wood,
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
    if (problem_.plane(option.plane).is_flat()) {
      // Facets are laid out by gauge lines.
      arcs_[index].guided = true;
      const std::size_t before = curved.size();
      curved.insert(curved.end(), way.begin(), way.end());
      const double each = problem_.kit.shop.weight_cut + problem_.kit.shop.weight_setting;
      choose(k + 1, flats, curved, wood, cost + each * static_cast<double>(way.size()));
      curved.resize(before);
      continue;
    }
    const std::optional<Start> start = best_start(problem_, option, wood);
    if (start && well_laid(start->guidance, problem_.plane(option.plane))) {
      setups.push_back({{}, start->tilt, start->guidance});
    }
    const std::vector<Setup>& laid = rails_for(option, wood);
    setups.insert(setups.end(), laid.begin(), laid.end());
    if (setups.empty() && start) setups.push_back({{}, start->tilt, start->guidance});
    if (!setups.empty()) arcs_[index].guided = true;
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
const std::vector<Setup>& Chooser::rails_for(const Draft& draft, const Wood& wood) {
  const auto key = std::make_tuple(draft.arc, draft.plane, draft.poses.front().tilt,
                                   std::llround(wood.area() * 1e7), wood.edges().size());
  auto [slot, fresh] = rails_.try_emplace(key);
  if (fresh) slot->second = lay_rails(problem_, draft, wood);
  return slot->second;
}

}  // namespace arrisline
