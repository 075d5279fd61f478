// What a choice must cost at the least, so that what cannot be the best is left. Shown by
// tests/plan/oracle_test.cpp.
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "plan/search.h"

namespace arrisline {

/// What a mm² must cost that a flat takes, and one that any plane takes: its part of a full shaving of the
/// widest.
void Search::work_out_shavings() {
  const Shop& shop = problem_.kit.shop;
  const auto costs = [&](double width, double shaving) {
    return weighed(problem_.weights, {1 / shaving, 1 / shaving}) / width;
  };
  double widest = 0, of_any = std::numeric_limits<double>::infinity();
  for (const Plane& plane : problem_.kit.planes) {
    if (plane.width <= 0) continue;
    if (plane.is_flat()) {
      widest = std::max(widest, plane.width);
    } else {
      const double wear = problem_.weights.wear / (plane.width * plane.width);
      of_any = std::min(of_any, costs(plane.width, shop.shaving_curved) + wear);
    }
  }
  if (widest > 0) cheapest_shaving_ = costs(widest, shop.shaving_rebate);
  if (widest > 0) of_any = std::min(of_any, cheapest_shaving_);
  // All that any plan takes beside what is given: what stays is no thicker than may be left.
  const double most = most_left(problem_);
  double may_stay = 0;
  for (const Surface& s : problem_.surfaces) may_stay += most * (length(problem_.edge(s)) + 4 * most);
  const double waste = area(problem_.blank) - area(problem_.section.target) - taken_by_given_ - may_stay;
  if (std::isfinite(of_any)) least_waste_ = std::max(0.0, waste) * of_any;
}

/// What the cuts of the arcs from `done` on must cost beside these planes: each its own weight, and a plane
/// for each arc that none of these can finish, nor any for those before it.
double Search::least_of_arcs(std::size_t done, std::set<int> planes) const {
  const Weights& weights = problem_.weights;
  double cost = 0;
  for (std::size_t k = done; k < arcs_.size(); ++k) {
    const Ways& ways = arcs_[forward_ ? k : arcs_.size() - 1 - k];
    std::size_t cuts = ways.front().size();
    bool needs = true;
    for (const Way& way : ways) {
      cuts = std::min(cuts, way.size());
      needs = needs && planes.count(way.front().plane) == 0;
    }
    cost += weights.cut * static_cast<double>(cuts);
    if (!needs) continue;
    for (const Way& way : ways) planes.insert(way.front().plane);
    cost += weights.change + weights.plane;
  }
  return cost;
}

/// The same of all arcs, whatever the flats.
double Search::least_of_arcs() const {
  std::set<int> for_flats;
  for (int p = 0; p < static_cast<int>(problem_.kit.planes.size()); ++p) {
    if (problem_.plane(p).is_flat()) for_flats.insert(p);
  }
  return least_of_arcs(0, std::move(for_flats));
}

/// What the strokes must cost that take all the waste, or those of the flats that take what the chosen ones
/// take between them, with others or without: all of it in full shavings of the widest.
double Search::least_work(const Choice& choice) {
  if (orders_ != OrderOf::flats_first || one_by_one_) return least_waste_;
  double taken = area(problem_.blank) - choice.wood.area() - taken_by_given_;
  for (const Draft& draft : choice.flats) {
    // A curve that comes before may have taken what one of these reaches.
    const SharedTurns turns = known_.of(draft);
    if (may_come_late(problem_, draft, turns->may_lie)) taken -= turns->area_in_blank;
  }
  return std::max(least_waste_, taken * cheapest_shaving_);
}

/// What any plan with these cuts must cost, the arcs from `arcs_done` on still to be chosen for.
double Search::least_of(const Choice& choice, std::size_t arcs_done) {
  const std::vector<Draft> drafts = together(choice.flats, choice.curved);
  std::set<int> planes;
  for (const Draft& draft : drafts) planes.insert(problem_.taken_up(draft.plane));
  // What comes first may still be held back.
  const OrderOf orders = problem_.hold_back ? OrderOf::any : orders_;
  return LeastCost(problem_, drafts, orders).total() + least_work(choice) +
         least_of_arcs(arcs_done, std::move(planes));
}

}  // namespace arrisline
