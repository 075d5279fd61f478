// Depth first: a cover of the flats, then for each arc a plane and the rails it rides on, then cuts from the
// pool. What the cuts chosen so far must cost at the least cuts a branch off. Shown by
// tests/plan/oracle_test.cpp.
#include "plan/search.h"

#include <algorithm>
#include <cmath>

#include "geometry/crossing.h"
#include "plan/facets.h"

namespace arrisline {

namespace {

constexpr std::size_t kNearestPlanes = 2;
constexpr std::size_t kPlanesPerArc = 3;
constexpr int kMostThinning = 3;         // cuts from the pool that one plan may need to leave little enough
constexpr int kMostThinningAtAll = 12;   // where with so few none is found
constexpr std::size_t kManyArcs = 3;     // from which first only choices near the likeliest are looked at
constexpr std::size_t kFirstCovers = 8;  // that are looked at so
constexpr int kFewStrays = 1;  // steps in all by which a choice near the likeliest may stray from it
constexpr int kAnyStrays = std::numeric_limits<int>::max();
constexpr std::size_t kManyCuts = 10;     // more than the search gets through all choices of
constexpr std::size_t kTooManyCuts = 12;  // whose best order takes long to find
constexpr int kFewOrders = 300;           // states looked at before the best order of some cuts is put by
constexpr double kSameTilt = 1e-6;        // degrees
constexpr double kTie = 1e-6;             // efforts that differ by less are equal, and imbalance decides
constexpr double kNoMore = 1e-4;          // mm beyond the tolerance that count as nothing

std::vector<Draft> together(const std::vector<Draft>& a, const std::vector<Draft>& b) {
  std::vector<Draft> out = a;
  out.insert(out.end(), b.begin(), b.end());
  return out;
}

/// What tells a draft from another, to a hundredth of a micron and of a thousandth of a degree.
std::vector<long long> key_of(const Draft& draft) {
  std::vector<long long> out = {draft.plane, draft.arc};
  for (const Pose& pose : draft.poses) {
    out.push_back(std::llround(pose.at.x * 1e5));
    out.push_back(std::llround(pose.at.y * 1e5));
    out.push_back(std::llround(wrap_degrees(pose.tilt) * 1e5));
  }
  for (const double start : draft.starts) out.push_back(std::llround(start * 1e5));
  return out;
}

bool has(const std::vector<Draft>& drafts, const Draft& draft) {
  const std::vector<long long> key = key_of(draft);
  return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& other) { return key_of(other) == key; });
}

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

/// A set of drafts whatever their order.
std::vector<long long> key_of(const std::vector<Draft>& drafts) {
  std::vector<std::vector<long long>> keys;
  for (const Draft& draft : drafts) keys.push_back(key_of(draft));
  std::sort(keys.begin(), keys.end());
  std::vector<long long> out;
  for (const std::vector<long long>& key : keys) {
    out.push_back(static_cast<long long>(key.size()));
    out.insert(out.end(), key.begin(), key.end());
  }
  return out;
}

/// Woods of the same area whose boundaries weigh the same about a slanting line are taken for the same.
WoodKey wood_key(const Wood& wood) {
  double moment = 0;
  for (const Edge& edge : wood.edges()) {
    const Point middle = point_at(edge, 0.5);
    moment += length(edge) * (middle.x + kPi / 2 * middle.y);
  }
  return {std::llround(wood.area() * 1e7), std::llround(moment * 1e4)};
}

double beyond(const Problem& problem, double height) {
  return std::max(0.0, height - problem.options.tolerance);
}

bool better(const Problem& problem, const Sequence& a, const Sequence& b) {
  const double over_a = beyond(problem, a.left.height);
  const double over_b = beyond(problem, b.left.height);
  if (std::abs(over_a - over_b) > kNoMore) return over_a < over_b;
  if (std::abs(a.effort - b.effort) > kTie) return a.effort < b.effort;
  return a.imbalance < b.imbalance - kTie;
}

/// Flat cuts that may take waste from before the curved planes: chamfers on beads, corners in coves, and the
/// flats that stand against corners of the target.
std::vector<Draft> roughing_pool(const Problem& problem, const std::vector<Draft>& flats) {
  std::vector<Draft> pool;
  const std::vector<int> rebates = rebate_planes(problem);
  if (rebates.empty()) return pool;
  const int widest = rebates.front();
  auto add = [&](std::vector<Pose> poses) {
    if (poses.empty()) return;
    Draft draft;
    draft.plane = widest;
    draft.poses = std::move(poses);
    pool.push_back(std::move(draft));
  };
  for (const Surface& s : problem.surfaces) {
    if (!s.arc) continue;
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

}  // namespace

Search::Search(const Problem& problem, const std::vector<Draft>& flats, std::vector<Draft> given,
               Patience& patience, Composition& out)
    : problem_(problem), flat_drafts_(flats), given_(std::move(given)), patience_(patience), out_(out) {
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
  double widest = 0;
  for (const Plane& plane : problem.kit.planes) {
    if (plane.is_flat()) widest = std::max(widest, plane.width);
  }
  const double shaving = problem.kit.shop.shaving_rebate;
  if (widest > 0) cheapest_shaving_ = weighed(problem.weights, {1 / shaving, 1 / shaving}) / widest;
}

/// Of the planes for an arc only the nearest in radius, and those that are nearest for another arc, where
/// one plane may then do for both.
void Search::keep_likely_planes() {
  std::set<int> nearest;
  for (const Ways& ways : arcs_) nearest.insert(ways.front().front().plane);
  for (Ways& ways : arcs_) {
    std::vector<Way> kept;
    std::set<int> planes;
    for (Way& way : ways) {
      const int plane = way.front().plane;
      const bool room =
          planes.size() < kNearestPlanes || (planes.size() < kPlanesPerArc && nearest.count(plane) > 0);
      if (planes.count(plane) == 0 && !room) continue;
      planes.insert(plane);
      kept.push_back(std::move(way));
    }
    ways = std::move(kept);
  }
}

void Search::run() {
  if (!possible_) return;
  struct Pass {
    OrderOf orders;
    bool one_by_one;
  };
  // Flats after curves, and the arrises that a finished arc leaves, are looked to only where flats that come
  // first lead nowhere.
  for (const Pass pass :
       {Pass{OrderOf::flats_first, false}, Pass{OrderOf::any, false}, Pass{OrderOf::any, true}}) {
    // What is left depends on the cuts and not on their order.
    if (pass.orders == OrderOf::any && (out_.best || arcs_.empty() || !little_enough_)) break;
    orders_ = pass.orders;
    one_by_one_ = pass.one_by_one;
    seen_.clear();
    covers();
    try_pool();
    order_unordered();
    if (!out_.best) order_too_thick();
    too_thick_.clear();
  }
}

/// Every choice of a cover, and of a way and rails for every arc. Of many arcs those near the likeliest are
/// looked at first: a good plan early cuts off more.
void Search::covers() {
  Covers covers(problem_, flat_drafts_, given_, least_of_arcs());
  std::vector<Covers::Cover> first;
  while (arcs_.size() >= kManyArcs && first.size() < kFirstCovers && !cut_off(covers.least_to_come())) {
    std::optional<Covers::Cover> cover = covers.next(patience_);
    if (!cover) break;
    try_cover(*cover, kFewStrays);
    improve();
    first.push_back(std::move(*cover));
  }
  for (const Covers::Cover& cover : first) {
    if (leave_off(cover.least)) return;
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

/// What the cuts of the arcs must cost whatever the flats.
double Search::least_of_arcs() const {
  std::size_t cuts = 0;
  for (const Ways& ways : arcs_) {
    const auto fewest = std::min_element(ways.begin(), ways.end(),
                                         [](const Way& a, const Way& b) { return a.size() < b.size(); });
    cuts += fewest->size();
  }
  return problem_.weights.cut * static_cast<double>(cuts);
}

/// What leaves `left` mm or more, and costs this much or more, cannot be the best.
double Search::worth(double left) const {
  constexpr double kAnything = std::numeric_limits<double>::infinity();
  if (!out_.best) return kAnything;
  const double over = beyond(problem_, left);
  const double best_over = beyond(problem_, out_.best->left.height);
  if (over > best_over + kNoMore) return -kAnything;
  return over > best_over - kNoMore ? out_.best->effort + kTie : kAnything;
}

bool Search::cut_off(double least, double left) const {
  return least >= worth(left);
}

bool Search::leave_off(double least) {
  const bool enough = problem_.options.any && out_.best;
  if (!enough && !patience_.over()) return false;
  unsearched_ = std::min(unsearched_, least);
  out_.stopped = !enough;
  return true;
}

/// What the strokes of the flats must cost that take what the chosen ones take between them, with others or
/// without: all of it in full shavings of the widest.
double Search::least_work(const Choice& choice) const {
  if (orders_ != OrderOf::flats_first || one_by_one_) return 0;
  const double taken = area(problem_.blank) - choice.wood.area() - taken_by_given_;
  return std::max(0.0, taken) * cheapest_shaving_;
}

/// What any plan with these cuts must cost, the arcs from `arcs_done` on still to be chosen for.
double Search::least_of(const Choice& choice, std::size_t arcs_done) const {
  const std::vector<Draft> drafts = together(choice.flats, choice.curved);
  double cost = LeastCost(problem_, drafts).total() + least_work(choice);
  std::set<int> planes;
  for (const Draft& draft : drafts) planes.insert(draft.plane);
  // An arc that no plane so far can finish needs another; of several such arcs each that shares none with
  // those before it.
  for (std::size_t k = arcs_done; k < arcs_.size(); ++k) {
    const Ways& ways = arcs_[forward_ ? k : arcs_.size() - 1 - k];
    std::size_t cuts = ways.front().size();
    bool needs = true;
    for (const Way& way : ways) {
      cuts = std::min(cuts, way.size());
      needs = needs && planes.count(way.front().plane) == 0;
    }
    cost += problem_.weights.cut * static_cast<double>(cuts);
    if (!needs) continue;
    for (const Way& way : ways) planes.insert(way.front().plane);
    cost += problem_.weights.change + problem_.weights.plane;
  }
  return cost;
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
    laid.push_back(setups(ways[w], choice.wood));
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
std::vector<Setup> Search::setups(const Way& way, const Wood& wood) {
  const Draft& first = way.front();
  std::vector<Setup> out;
  if (!problem_.plane(first.plane).is_curved()) return {{}};
  const std::optional<Start> start = best_start(problem_, first, wood);
  if (start && well_laid(start->guidance, problem_.plane(first.plane)))
    out.push_back({{}, start->tilt, start->guidance});
  const std::vector<Setup>& laid = rails_for(first, wood);
  out.insert(out.end(), laid.begin(), laid.end());
  if (out.empty() && start) out.push_back({{}, start->tilt, start->guidance});
  return out;
}

/// Rails for the draft on this wood.
const std::vector<Setup>& Search::rails_for(const Draft& draft, const Wood& wood) {
  const auto key = std::make_pair(key_of(draft), wood_key(wood));
  auto [slot, fresh] = rails_.try_emplace(key);
  if (fresh) slot->second = lay_rails(problem_, draft, wood, [this] { return patience_.over(); });
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
        effort += weighed(weights, strokes_of(problem_, plane, pose, left));
        taken += left.cut(Sweep(plane, pose));
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
  LeastCost least(problem_, drafts, orders_);
  const Thickest left = thickest_left(least.finished(), problem_.section.target);
  if (left.height > may_leave(least, left.height)) {
    if (!out_.best) put_by_too_thick({least.total(), left.height, drafts});
    // A cut more that leaves no less was of no use.
    if (left.height < choice.left - kNoMore) thin(choice, least.finished(), left);
    return;
  }
  const Thickest sure = sure_to_stay(drafts, least.finished(), left);
  if (!cut_off(least.total(), sure.height)) {
    least.work_out();
    judge(least, left.height);
  }
  little_enough_ = true;
  pending_.push_back({least.total(), least_known, sure, drafts});
}

/// Tries each set of cuts that was put by with one cut more from the pool, those that cost least first: what
/// they lead to cuts off the others.
void Search::try_pool() {
  std::vector<Pending> pending = std::move(pending_);
  pending_.clear();
  std::stable_sort(pending.begin(), pending.end(),
                   [](const Pending& a, const Pending& b) { return a.least < b.least; });
  // What one more cut may save is not in `least`, so what is left untried may cost as little as was known
  // before.
  double unknown = std::numeric_limits<double>::infinity();
  for (auto one = pending.rbegin(); one != pending.rend(); ++one)
    one->known = unknown = std::min(unknown, one->known);
  for (const Pending& one : pending) {
    if (leave_off(one.known)) return;
    LeastCost least(problem_, one.drafts, orders_);
    least.work_out();
    for (const Draft& extra : pool_) {
      if (has(one.drafts, extra)) continue;
      std::vector<Draft> more = one.drafts;
      more.push_back(extra);
      auto key = key_of(more);
      if (seen_.count(key) > 0) continue;
      // Where it takes nothing from the thickest, that stays as thick.
      double left = takes(extra, one.left.at) ? 0 : one.left.height;
      if (worth(left) > worth(one.left.height)) {
        Wood finished = least.finished();
        cut_all(problem_, {extra}, finished);
        left = thickest_left(finished, problem_.section.target).height;
        left = sure_to_stay(one.drafts, finished, {left, {}}).height;
      }
      const std::optional<LeastCost> with = least.with(extra, worth(left));
      if (!with) continue;
      seen_.insert(std::move(key));
      judge(*with, thickest_left(with->finished(), problem_.section.target).height);
    }
  }
}

/// The choice leaves this, too much at a point: each cut of the pool that takes it, those that leave least
/// first. Where many are needed and there is no plan yet, of each only the one that leaves least.
void Search::thin(const Choice& choice, const Wood& finished, const Thickest& left) {
  if (choice.thinning >= (out_.best ? kMostThinning : kMostThinningAtAll)) return;
  struct Thinner {
    double left;
    const Draft* draft;
  };
  std::vector<Thinner> cuts;
  for (const Draft& extra : pool_) {
    if (!takes(extra, left.at) || has(choice.flats, extra)) continue;
    Wood wood = finished;
    cut_all(problem_, {extra}, wood);
    cuts.push_back({thickest_left(wood, problem_.section.target).height, &extra});
  }
  std::stable_sort(cuts.begin(), cuts.end(),
                   [](const Thinner& a, const Thinner& b) { return a.left < b.left; });
  if (choice.thinning >= kMostThinning && cuts.size() > 1) cuts.erase(cuts.begin() + 1, cuts.end());
  for (const Thinner& cut : cuts) {
    Choice more = choice;
    more.flats.push_back(*cut.draft);
    ++more.thinning;
    more.left = left.height;
    cut_all(problem_, {*cut.draft}, more.wood);
    const double least = least_of(more, arcs_.size());
    if (!cut_off(least)) whole(more, least);
  }
}

/// Of what the drafts' own poses leave on the finished wood, that which stays wherever the curved cuts start.
Thickest Search::sure_to_stay(const std::vector<Draft>& drafts, const Wood& finished,
                              const Thickest& left) const {
  if (left.height <= problem_.options.tolerance) return left;
  Wood wood = finished;
  for (const Draft& draft : drafts) {
    for (const double start : draft.starts)
      wood.cut(Sweep(problem_.plane(draft.plane), start_pose(problem_, draft, start)));
  }
  return thickest_left(wood, problem_.section.target);
}

bool Search::takes(const Draft& draft, Point at) const {
  return std::any_of(draft.poses.begin(), draft.poses.end(), [&](const Pose& pose) {
    return Sweep(problem_.plane(draft.plane), pose).depth(at) > -kSame;
  });
}

/// Whether some curved cut finds something to ride on once the flats are done, where these come first.
bool Search::startable(const LeastCost& least) const {
  if (orders_ == OrderOf::any) return true;
  bool curved = false;
  for (const Draft& draft : least.drafts()) {
    if (!problem_.plane(draft.plane).is_curved()) continue;
    curved = true;
    if (!guided_starts(problem_, draft, least.flats_left()).empty()) return true;
  }
  return !curved;
}

/// How much of a height of `left` may stay once the cuts are done, in mm. A fin so narrow that the scraper
/// takes next to nothing is not for the scraper.
double Search::may_leave(const LeastCost& least, double left) const {
  const bool scraped = left > problem_.options.tolerance;
  const bool fin = least.finished().area() - area(problem_.section.target) < kLeastCut;
  return scraped && fin ? problem_.options.tolerance : most_left(problem_);
}

/// Puts the cuts, which leave so much, in order where they may be the best, and keeps them if they are. Where
/// that takes long and is not to be done to the end, a good order will do for now.
void Search::judge(const LeastCost& least, double left, bool to_the_end) {
  const double most = may_leave(least, left);
  if (left > most && out_.best) return;
  const double cutoff = worth(sure_to_stay(least.drafts(), least.finished(), {left, {}}).height);
  if (least.total() >= cutoff || !startable(least)) return;
  // What leaves too much is no plan in any case, and is kept for what it tells of the kit.
  const double limit = left > problem_.options.tolerance ? most : problem_.options.tolerance;
  if (left <= limit && !arcs_are_finished(problem_, least.drafts(), limit)) return;
  const auto out_of_patience = [this] { return patience_.over(); };
  std::optional<Sequence> sequence;
  int looked_at = !to_the_end && least.drafts().size() >= kTooManyCuts ? kFewOrders + 1 : 0;
  if (looked_at == 0) {
    sequence = best_order(problem_, least, cutoff,
                          [&] { return patience_.over() || (!to_the_end && ++looked_at > kFewOrders); });
  }
  if (looked_at > kFewOrders) {
    unordered_.push_back({least.total(), left, least.drafts()});
    sequence = good_order(problem_, least, cutoff, out_of_patience);
  }
  // Its best order is not known where patience ended amidst.
  if (patience_.over()) leave_off(least.total());
  if (!sequence) return;
  if (sequence->left.height > most) {
    if (!out_.too_thick || sequence->left.height < out_.too_thick->left.height) out_.too_thick = sequence;
  } else if (!out_.best || better(problem_, *sequence, *out_.best)) {
    out_.best = std::move(sequence);
    best_drafts_ = least.drafts();
  }
}

/// A plan of many cuts, where the search does not get through all there are, is made better a cut at a time
/// as long as that helps: one left out, one more, or one in place of another.
void Search::improve() {
  if (best_drafts_.size() < kManyCuts) return;
  const auto try_set = [&](std::vector<Draft> drafts) {
    drafts = in_order(std::move(drafts));
    if (!seen_.insert(key_of(drafts)).second) return false;
    LeastCost least(problem_, drafts, orders_);
    const double left = thickest_left(least.finished(), problem_.section.target).height;
    if (cut_off(least.total()) || left > may_leave(least, left)) return false;
    least.work_out();
    const double before = out_.best->effort;
    judge(least, left);
    return out_.best->effort < before - kTie;
  };
  const auto step = [&] {
    const std::vector<Draft> now = best_drafts_;
    const auto without = [&](std::size_t i) {
      std::vector<Draft> out = now;
      out.erase(out.begin() + static_cast<std::ptrdiff_t>(i));
      return out;
    };
    const auto may_go = [&](const Draft& draft) { return draft.arc < 0 && !has(given_, draft); };
    const auto over = [&] { return patience_.over(); };
    for (std::size_t i = 0; i < now.size() && !over(); ++i) {
      if (may_go(now[i]) && try_set(without(i))) return true;
    }
    for (const Draft& extra : pool_) {
      if (!over() && !has(now, extra) && try_set(together(now, {extra}))) return true;
    }
    for (std::size_t i = 0; i < now.size(); ++i) {
      if (!may_go(now[i])) continue;
      for (const std::vector<Draft>* others : {&flat_drafts_, &std::as_const(pool_)}) {
        for (const Draft& other : *others) {
          if (!over() && !has(now, other) && try_set(together(without(i), {other}))) return true;
        }
      }
    }
    return false;
  };
  while (step()) {
  }
}

/// The best orders that were put by, of those cuts first that must cost least.
void Search::order_unordered() {
  std::vector<Unordered> unordered = std::move(unordered_);
  unordered_.clear();
  std::stable_sort(unordered.begin(), unordered.end(),
                   [](const Unordered& a, const Unordered& b) { return a.least < b.least; });
  for (const Unordered& one : unordered) {
    if (cut_off(one.least)) continue;
    if (leave_off(one.least)) return;
    LeastCost least(problem_, one.drafts, orders_);
    least.work_out();
    judge(least, one.left, true);
  }
}

/// Of what leaves too much only the thinnest are kept.
void Search::put_by_too_thick(Unordered one) {
  constexpr std::size_t kThinnest = 200;
  too_thick_.push_back(std::move(one));
  if (too_thick_.size() < 2 * kThinnest) return;
  std::stable_sort(too_thick_.begin(), too_thick_.end(),
                   [](const Unordered& a, const Unordered& b) { return a.left < b.left; });
  too_thick_.erase(too_thick_.begin() + kThinnest, too_thick_.end());
}

/// What leaves too much is no plan, and is kept for what it tells of the kit: of that which can be made at
/// all, what leaves least.
void Search::order_too_thick() {
  std::stable_sort(too_thick_.begin(), too_thick_.end(),
                   [](const Unordered& a, const Unordered& b) { return a.left < b.left; });
  for (const Unordered& one : too_thick_) {
    if (out_.too_thick && out_.too_thick->left.height <= one.left) return;
    if (patience_.over()) return;
    LeastCost least(problem_, one.drafts, orders_);
    least.work_out();
    judge(least, one.left);
  }
}

}  // namespace arrisline
