// Cuts put in order and held against the best plan so far. Shown by tests/plan/oracle_test.cpp and
// tests/plan/large_test.cpp.
#include <algorithm>
#include <cmath>

#include "plan/facets.h"
#include "plan/search.h"
#include "plan/sets.h"

namespace arrisline {

namespace {

constexpr std::size_t kTooManyCuts = 12;  // whose best order takes long to find
constexpr int kFewOrders = 300;           // states looked at before the best order of some cuts is put by

double beyond(const Problem& problem, double height) {
  return std::max(0.0, height - problem.options.tolerance);
}

/// Whether its curved cuts finish the arcs by what they leave with the starts chosen: cuts that leave `left`
/// without, of which the scraper takes some, may leave it nothing then, and have to come as near as that.
bool finishes_arcs(const Problem& problem, const Sequence& sequence, double left) {
  const double tolerance = problem.options.tolerance;
  if (left <= tolerance || sequence.left.height > tolerance) return true;  // as judged without the starts
  std::vector<Draft> drafts;
  for (const Step& step : sequence.steps) drafts.push_back(step.draft);
  return arcs_are_finished(problem, drafts, tolerance);
}

}  // namespace

bool better(const Problem& problem, const Sequence& a, const Sequence& b) {
  const double over_a = beyond(problem, a.left.height);
  const double over_b = beyond(problem, b.left.height);
  if (std::abs(over_a - over_b) > kNoMore) return over_a < over_b;
  if (std::abs(a.effort - b.effort) > kTie) return a.effort < b.effort;
  return a.imbalance < b.imbalance - kTie;
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

/// Whether the curved cuts ride so ill, or not at all, that these cuts must cost `cutoff` or more. This is
/// told where the flats come first.
bool Search::rides_cut_off(const LeastCost& least, double cutoff) {
  if (orders_ == OrderOf::any || least.curves_meet_late_flats()) return false;
  struct Ride {
    const Draft* draft;
    double cost;  // infinite where nothing guides it
  };
  std::vector<Ride> rides;
  for (const Draft& draft : least.drafts()) {
    const Plane& plane = problem_.plane(draft.plane);
    if (!plane.is_curved()) continue;
    double cost = std::numeric_limits<double>::infinity();
    for (const Start& start : guided_starts(problem_, draft, least.flats_left()))
      cost = std::min(cost, well_laid(start.guidance, plane) ? 0 : problem_.weights.ill_laid);
    rides.push_back({&draft, cost});
  }
  const auto too_much = [&](double cost) { return least.total() + cost >= cutoff; };
  double one = std::numeric_limits<double>::infinity(), all = 0;
  for (const Ride& ride : rides) {
    one = std::min(one, ride.cost);
    all += ride.cost;
  }
  // One of them comes first, and others after it may find what it leaves.
  if (rides.empty() || !too_much(all)) return false;
  if (too_much(one)) return true;
  double sure = 0;
  for (const Ride& ride : rides) {
    if (ride.cost > 0 && finds_flats_left(*ride.draft, least)) sure += ride.cost;
    if (too_much(sure)) return true;
  }
  return false;
}

/// Whether a curved cut finds what the flats leave, and all of it, whatever other curves come before it.
bool Search::finds_flats_left(const Draft& draft, const LeastCost& least) {
  constexpr double kNone = 1e-9;  // mm²
  const auto centre_of = [&](const Draft& of) { return problem_.edge(surface_of(problem_, of.arc)).centre; };
  Wood after = least.flats_left();
  for (const Draft& other : least.drafts()) {
    if (&other == &draft || problem_.plane(other.plane).is_flat()) continue;
    // It may turn in an arc of the same circle.
    if (other.arc >= 0 && distance(centre_of(other), centre_of(draft)) < 2 * kSameCircle) return false;
    cut_whole(*known_.of(other), after);
  }
  const auto taken = [](Wood wood, const Sweep& sweep) { return wood.cut(sweep); };
  const SharedTurns turns = known_.of(draft);
  return std::all_of(turns->all.begin(), turns->all.end(), [&](const Sweep& sweep) {
    return taken(least.flats_left(), sweep) - taken(after, sweep) < kNone;
  });
}

/// How much of a height of `left` may stay once the cuts are done, in mm. A fin so narrow that the scraper
/// takes next to nothing is not for the scraper.
double Search::may_leave(const LeastCost& least, double left) const {
  const bool scraped = left > problem_.options.tolerance;
  const bool fin = least.finished().area() - area(problem_.section.target) < kLeastCut;
  return scraped && fin ? problem_.options.tolerance : most_left(problem_);
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

/// Puts the cuts, which leave so much, in order where they may be the best, and keeps them if they are. Where
/// that takes long and is not to be done to the end, a good order will do for now.
void Search::judge(const LeastCost& least, double left, bool to_the_end) {
  const double most = may_leave(least, left);
  if (left > most && out_.best) return;
  const double cutoff = worth(sure_to_stay(least.drafts(), least.finished(), {left, {}}).height);
  if (least.total() >= cutoff || rides_cut_off(least, cutoff)) return;
  // What leaves too much is no plan in any case, and is kept for what it tells of the kit.
  const double limit = limit_for(left, most);
  if (left <= limit && !arcs_are_finished(problem_, least.drafts(), limit)) return;
  const auto out_of_patience = [this] { return patience_.over(); };
  std::optional<Sequence> sequence;
  bool too_long = !to_the_end && least.drafts().size() >= kTooManyCuts;
  if (!too_long) {
    int looked_at = 0;
    sequence = best_order(problem_, least, cutoff, [&] {
      if (patience_.over()) return true;
      too_long = !to_the_end && ++looked_at > kFewOrders;
      return too_long;
    });
  }
  if (too_long) {
    unordered_.push_back({least.total(), left, least.drafts()});
    sequence = good_order(problem_, least, cutoff, out_of_patience);
  }
  // Its best order is not known where patience ended amidst.
  if (patience_.over()) leave_off(least.total());
  take_in(std::move(sequence), left, most, least.drafts());
}

/// How near the curved cuts of what leaves `left` have to come to their arcs.
double Search::limit_for(double left, double most) const {
  return left > problem_.options.tolerance ? most : problem_.options.tolerance;
}

/// Keeps an order of these cuts, which leave `left` before they have starts, where it is better than the best
/// and leaves no more than `most`, or is the thinnest of those that do.
void Search::take_in(std::optional<Sequence> sequence, double left, double most,
                     const std::vector<Draft>& drafts) {
  if (!sequence || !finishes_arcs(problem_, *sequence, left)) return;
  if (sequence->left.height > most) {
    if (!out_.too_thick || sequence->left.height < out_.too_thick->left.height) out_.too_thick = sequence;
  } else if (!out_.best || better(problem_, *sequence, *out_.best)) {
    out_.best = std::move(sequence);
    best_drafts_ = drafts;
  }
}

/// Cuts that may make a plan: first as they are given, since of many cuts another order may not be found, and
/// then in the best order.
void Search::try_first(const std::vector<Draft>& drafts) {
  const LeastCost least(known_, in_order(drafts), orders_);
  const double left = thickest_left(least.finished(), problem_.section.target).height;
  const double most = may_leave(least, left);
  if (left <= most && arcs_are_finished(problem_, drafts, limit_for(left, most)))
    take_in(as_given(problem_, drafts), left, most, least.drafts());
  try_drafts(drafts);
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
    LeastCost least(known_, one.drafts, orders_);
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
    LeastCost least(known_, one.drafts, orders_);
    least.work_out();
    judge(least, one.left);
  }
}

}  // namespace arrisline
