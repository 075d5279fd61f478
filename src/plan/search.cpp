// Depth first: a cover of the flats, then for each arc a plane and the rails it rides on, then cuts from the
// pool. What the cuts chosen so far must cost at the least cuts a branch off. Shown by
// tests/plan/oracle_test.cpp.
#include "plan/search.h"

#include <algorithm>
#include <cmath>

#include "plan/apart.h"
#include "plan/held_back.h"
#include "plan/sets.h"

namespace arrisline {

namespace {

constexpr std::size_t kNearestPlanes = 2;
constexpr std::size_t kPlanesPerArc = 3;
constexpr std::size_t kManyArcs = 3;     // from which first only choices near the likeliest are looked at
constexpr std::size_t kFirstCovers = 8;  // that are looked at so
constexpr int kFewStrays = 1;  // steps in all by which a choice near the likeliest may stray from it
constexpr int kAnyStrays = std::numeric_limits<int>::max();
constexpr double kSameTilt = 1e-6;       // degrees
constexpr double kElsewhere = 1;         // mm
constexpr std::size_t kMostKept = 1000;  // sets put by of which all that is known is kept

/// Starts in order, none twice and none that is one of its poses already.
void tidy_starts(Draft& draft) {
  std::sort(draft.starts.begin(), draft.starts.end());
  std::vector<double> kept;
  for (const double start : draft.starts) {
    const bool own = std::any_of(draft.poses.begin(), draft.poses.end(),
                                 [&](const Pose& pose) { return std::abs(pose.tilt - start) < kSameTilt; });
    if (!own && (kept.empty() || start - kept.back() >= kSameTilt)) kept.push_back(start);
  }
  draft.starts = std::move(kept);
}

/// Woods of the same area whose boundaries have the same moments are taken for the same. Those of the first
/// order alone do not tell: the boundaries of steps that take the same area have them in common.
WoodKey wood_key(const Wood& wood) {
  double first = 0, second = 0, mixed = 0;
  for (const Edge& edge : wood.edges()) {
    // Simpson's rule, which is exact of what is straight.
    const auto add = [&](Point p, double weight) {
      first += weight * (p.x + kPi / 2 * p.y);
      second += weight * (p.x * p.x + kPi / 2 * p.y * p.y);
      mixed += weight * p.x * p.y;
    };
    const double sixth = length(edge) / 6;
    add(edge.from, sixth);
    add(point_at(edge, 0.5), 4 * sixth);
    add(edge.to, sixth);
  }
  return {std::llround(wood.area() * 1e7), std::llround(first * 1e4), std::llround(second * 1e3),
          std::llround(mixed * 1e3)};
}

}  // namespace

Search::Search(const Problem& problem, const std::vector<Draft>& flats, std::vector<Draft> given,
               std::vector<Draft> apart, Patience& patience, Composition& out)
    : problem_(problem),
      known_(problem),
      flat_drafts_(flats),
      given_(std::move(given)),
      patience_(patience),
      out_(out),
      apart_(std::move(apart)) {
  std::set<int> done;
  for (const Draft& draft : given_) {
    for (const Stretch& s : draft.finishes) done.insert(s.surface);
  }
  for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
    const int surface = static_cast<int>(s);
    if (!problem.surfaces[s].arc || done.count(surface) > 0) continue;
    arcs_.push_back(arc_drafts(problem, surface));
    if (!arcs_.back().empty()) continue;
    possible_ = false;  // no plane of the kit can finish it where it stands
    return;
  }
  keep_likely_planes();
  pool_ = roughing_pool(problem, flats);
  Wood with_given(problem.blank);
  cut_all(problem, given_, with_given);
  taken_by_given_ = area(problem.blank) - with_given.area();
  work_out_shavings();
}

/// Of the planes for an arc only the nearest in radius, and those that are nearest for another arc, where
/// one plane may then do for both.
void Search::keep_likely_planes() {
  std::set<int> nearest;
  for (const Ways& ways : arcs_) nearest.insert(ways.front().front().plane);
  // Beside those that match, where these do not do.
  const std::size_t more = problem_.other_radii ? 1 : 0;
  for (Ways& ways : arcs_) {
    std::vector<Way> kept;
    std::set<int> planes, rough;
    for (Way& way : ways) {
      const int plane = way.front().plane;
      const bool room = planes.size() < kNearestPlanes + more ||
                        (planes.size() < kPlanesPerArc + more && nearest.count(plane) > 0);
      if (planes.count(plane) == 0 && rough.count(plane) == 0 && !room) continue;
      // One that does it roughly keeps out none that does it well.
      (way.front().rough ? rough : planes).insert(plane);
      kept.push_back(std::move(way));
    }
    ways = std::move(kept);
  }
}

void Search::run() {
  if (!possible_) return;
  if (problem_.hold_back) {
    if (leaves_too_much_in_any_case()) return;
    look(OrderOf::flats_first);
    if (out_.best || !given_.empty() || arcs_.size() < 2 || patience_.over()) return;
    const std::vector<Draft> sides = planned_in_sides(problem_);
    if (!sides.empty()) try_first(sides);
    return;
  }
  look(OrderOf::flats_first);
  if (out_.best) return;
  // Flats after curves, the arrises that a finished arc leaves, and rails of many grooves are looked to only
  // where flats that come first lead nowhere.
  for (const bool one_by_one : {false, true}) {
    // What is left depends on the cuts and not on their order.
    const bool all_leave_too_much = chosen_ && !little_enough_;
    if (out_.best || arcs_.empty() || all_leave_too_much) break;
    one_by_one_ = one_by_one;
    look(OrderOf::any);
  }
  one_by_one_ = false;
  if (!pool_.trough) return;
  trenches_ = true;
  rails_.clear();
  look(OrderOf::flats_first);
}

/// Whether all flats, all ways of all arcs and all waste cuts together leave more than may be left.
bool Search::leaves_too_much_in_any_case() const {
  Wood wood(problem_.blank);
  cut_all(problem_, given_, wood);
  cut_all(problem_, flat_drafts_, wood);
  cut_all(problem_, pool_.cuts, wood);
  for (const Ways& ways : arcs_) {
    for (const Way& way : ways) cut_all(problem_, way, wood);
  }
  return thickest_left(wood, problem_.section.target).height > most_left(problem_);
}

/// All choices, and all orders of this kind.
void Search::look(OrderOf orders) {
  orders_ = orders;
  seen_.clear();
  // A good plan early cuts off more.
  if (!apart_.empty() && !out_.best) try_first(apart_);
  covers();
  try_pool();
  thin_scraped();
  order_unordered();
  if (!out_.best) order_too_thick();
  too_thick_.clear();
  unordered_.clear();
}

/// Every choice of a cover, and of a way and rails for every arc. Of many arcs those near the likeliest are
/// looked at first: a good plan early cuts off more.
void Search::covers() {
  Covers covers(problem_, flat_drafts_, given_, least_of_arcs() + least_waste_);
  std::vector<Covers::Cover> first;
  while (arcs_.size() >= kManyArcs && first.size() < kFirstCovers && !cut_off(covers.least_to_come())) {
    std::optional<Covers::Cover> cover = covers.next(patience_);
    if (!cover) break;
    try_cover(*cover, kFewStrays);
    improve();
    first.push_back(std::move(*cover));
  }
  std::stable_sort(first.begin(), first.end(),
                   [](const Covers::Cover& a, const Covers::Cover& b) { return a.least < b.least; });
  for (const Covers::Cover& cover : first) {
    if (leave_off(std::min(cover.least, covers.least_to_come()))) return;
    try_cover(cover, kAnyStrays);
  }
  while (!cut_off(covers.least_to_come()) && !leave_off(covers.least_to_come())) {
    const std::optional<Covers::Cover> cover = covers.next(patience_);
    if (cover) {
      try_cover(*cover, kAnyStrays);
    } else if (covers.too_many()) {
      unsearched_ = std::min(unsearched_, covers.least_to_come());
      out_.stopped = true;
      return;
    }
  }
}

void Search::try_cover(const Covers::Cover& cover, int strays) {
  Choice choice(Wood(problem_.blank));
  choice.flats = given_;
  for (const int d : cover.drafts) choice.flats.push_back(flat_drafts_[static_cast<std::size_t>(d)]);
  cut_all(problem_, choice.flats, choice.wood);
  for (const bool forward : {true, false}) {
    if (!forward && arcs_.size() < 2) break;
    forward_ = forward;
    arcs(0, choice, strays);
  }
}

/// `strays`: by how many places in all the branches may lie behind the likeliest.
void Search::arcs(std::size_t k, const Choice& choice, int strays) {
  const double least = least_of(choice, k);
  if (cut_off(least) || leave_off(least)) return;
  if (k == arcs_.size()) {
    whole(choice, least);
    return;
  }
  const Ways& ways = arcs_[forward_ ? k : arcs_.size() - 1 - k];
  struct Branch {
    double estimate;
    std::size_t way, setup;
  };
  std::vector<std::vector<Setup>> laid;
  std::vector<Branch> branches;
  for (std::size_t w = 0; w < ways.size(); ++w) {
    if (leave_off(least)) return;
    laid.push_back(setups(ways[w], choice));
    for (std::size_t s = 0; s < laid[w].size(); ++s)
      branches.push_back({estimate(ways[w], laid[w][s], choice.wood), w, s});
  }
  // Likely ones first: a good plan early cuts off more.
  std::stable_sort(branches.begin(), branches.end(),
                   [](const Branch& a, const Branch& b) { return a.estimate < b.estimate; });
  int behind = 0;
  for (const Branch& branch : branches) {
    if (behind > strays) break;
    const Way& way = ways[branch.way];
    const Setup& setup = laid[branch.way][branch.setup];
    Choice next = choice;
    for (const Draft& cut : setup.cuts) {
      if (!has(next.flats, cut)) next.flats.push_back(cut);
    }
    for (Draft& flat : next.flats)
      flat.late = flat.late || (setup.late && key_of(flat) == key_of(*setup.late));
    cut_all(problem_, setup.cuts, next.wood);
    const std::size_t first = next.curved.size();
    next.curved.insert(next.curved.end(), way.begin(), way.end());
    if (problem_.plane(way.front().plane).is_curved()) next.curved[first].starts.push_back(setup.start);
    // Told apart by their starts, the same cuts would be tried again and again.
    for (std::size_t i = first; i < next.curved.size(); ++i) tidy_starts(next.curved[i]);
    if (one_by_one_) cut_all(problem_, way, next.wood);
    arcs(k + 1, next, strays == kAnyStrays ? kAnyStrays : strays - behind);
    ++behind;
  }
}

/// Ways to guide the first cut of the way; it lets the others ride in the arc it leaves.
std::vector<Setup> Search::setups(const Way& way, const Choice& choice) {
  const Draft& first = way.front();
  std::vector<Setup> out;
  if (!problem_.plane(first.plane).is_curved()) return {{}};
  const std::optional<Start> start = best_start(problem_, first, choice.wood);
  if (start) out.push_back({{}, start->tilt, start->guidance});
  const std::vector<Setup>& laid = rails_for(first, choice.wood);
  out.insert(out.end(), laid.begin(), laid.end());
  if (out.empty() && problem_.hold_back) return on_held_back(first, choice.flats);
  return out;
}

/// Ways to guide it while one of the flats waits: all that the first few places of such a flat lead to.
std::vector<Setup> Search::on_held_back(const Draft& first, const std::vector<Draft>& flats) {
  constexpr std::size_t kEnough = 4;
  std::vector<Setup> out;
  for (const HeldBack& back : held_back(problem_, first, flats)) {
    if (out.size() >= kEnough || patience_.over()) break;
    std::vector<Setup> found = rails_for(first, back.wood);
    if (const std::optional<Start> start = best_start(problem_, first, back.wood))
      found.push_back({{}, start->tilt, start->guidance});
    for (Setup& setup : found) {
      if (back.meanwhile) setup.cuts.push_back(*back.meanwhile);
      setup.late = back.flat;
      out.push_back(std::move(setup));
    }
  }
  return out;
}

/// Rails for the draft on this wood.
const std::vector<Setup>& Search::rails_for(const Draft& draft, const Wood& wood) {
  const auto key = std::make_pair(key_of(draft), wood_key(wood));
  auto [slot, fresh] = rails_.try_emplace(key);
  if (fresh) slot->second = lay_rails(problem_, draft, wood, trenches_, [this] { return patience_.over(); });
  return slot->second;
}

/// Effort of a setup and of the curved cuts it guides, as far as it can be told before the order is known.
double Search::estimate(const Way& way, const Setup& setup, const Wood& wood) const {
  const Weights& weights = problem_.weights;
  Wood left = wood;
  double effort = 0;
  for (const std::vector<Draft>& drafts : {setup.cuts, way}) {
    for (const Draft& draft : drafts) {
      const Plane& plane = problem_.plane(draft.plane);
      effort += weights.cut + (plane.is_flat() ? weights.setting : 0);
      double taken = 0;
      for (const Pose& pose : draft.poses) {
        const Sweep sweep(plane, pose);
        effort += weighed(weights, strokes_of(problem_, sweep, left));
        taken += left.cut(sweep);
      }
      if (!plane.is_flat()) effort += weights.wear * taken / (plane.width * plane.width);
    }
  }
  const Plane& plane = problem_.plane(way.front().plane);
  if (plane.is_curved() && !well_laid(setup.guidance, plane)) effort += weights.ill_laid;
  return effort;
}

/// A cover with a way and rails for every arc, which must cost `least_known`: put in order, and tried with a
/// cut from the pool.
void Search::whole(const Choice& choice, double least_known) {
  const std::vector<Draft> drafts = in_order(together(choice.flats, choice.curved));
  if (!seen_.insert(key_of(drafts)).second || leave_off(least_known)) return;
  chosen_ = true;
  LeastCost least(known_, drafts, orders_);
  const Thickest left = thickest_left(least.finished(), problem_.section.target);
  // A cut more that leaves no less was of no use, unless what is as thick stands elsewhere, as on the other
  // side of a flute.
  const bool elsewhere = distance(left.at, choice.left.at) > kElsewhere;
  const bool of_use = left.height < choice.left.height + (elsewhere ? kNoMore : -kNoMore);
  if (left.height > may_leave(least, left.height)) {
    if (problem_.hold_back) return;  // it is about rails, and not about what stays
    if (!out_.best) put_by_too_thick({least.total(), left.height, drafts});
    if (of_use) thin(choice, least.finished(), left);
    return;
  }
  const Thickest sure = sure_to_stay(drafts, least.finished(), left);
  if (!cut_off(least.total(), sure.height)) {
    least.work_out_curves();
    if (!cut_off(least.total(), sure.height)) least.work_out();
    judge(least, left.height);
  }
  little_enough_ = true;
  // The scraper would take it; but what need not be scraped is better, and may cost less.
  if (left.height > problem_.options.tolerance && of_use && choice.thinning < kMostThinning) {
    if (scraped_.size() < kMostKept) {
      scraped_.push_back({least_known, choice, least.finished(), left});
    } else {
      unsearched_ = std::min(unsearched_, least_known);
    }
  }
  pending_.push_back({least.total(), least_known, sure, drafts, {}});
  if (pending_.size() < kMostKept) pending_.back().worked = std::make_shared<LeastCost>(std::move(least));
}

}  // namespace arrisline
