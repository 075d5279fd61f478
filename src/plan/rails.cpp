// Laying rails. Each pattern has one free figure; the difference in height of the two rails against the
// sole is brought to nothing by regula falsi. Shown by tests/plan/rails_test.cpp.
#include "plan/rails.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "plan/gouge.h"
#include "plan/rail_finder.h"
#include "plan/rest.h"

namespace arrisline {

namespace {

constexpr double kStraightDown = 8;  // degrees of lean below which neither side of an arc is the open one
constexpr int kSamples = 10;  // places at which a free figure is tried before the root between two is sought
constexpr double kLevel = 1e-9;  // mm by which the two rails may differ when solved

bool same_cuts(const std::vector<Draft>& a, const std::vector<Draft>& b) {
  auto is_in = [](const Draft& draft, const std::vector<Draft>& all) {
    return std::any_of(all.begin(), all.end(), [&](const Draft& other) {
      const Pose& p = draft.poses.front();
      const Pose& q = other.poses.front();
      return draft.plane == other.plane && draft.poses.size() == other.poses.size() &&
             distance(p.at, q.at) < kSameFigure && std::abs(wrap_degrees(p.tilt - q.tilt)) < kSameFigure;
    });
  };
  return a.size() == b.size() && std::all_of(a.begin(), a.end(), [&](const Draft& d) { return is_in(d, b); });
}

}  // namespace

RailFinder::RailFinder(const Problem& problem, const Draft& draft, const Wood& wood, bool trenches,
                       const std::function<bool()>& stop)
    : problem_(problem),
      draft_(draft),
      wood_(wood),
      sole_(problem.plane(draft.plane)),
      arc_(problem.surfaces[static_cast<std::size_t>(draft.arc)]),
      centre_(problem.edge(arc_).centre),
      radius_(radius(problem.edge(arc_))),
      rebates_(rebate_planes(problem)),
      trenches_(trenches),
      stop_(stop),
      cuts_(problem, arc_, rebates_) {
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    if (problem.plane(p).kind == PlaneKind::plough) ploughs_.push_back(p);
  }
}

std::vector<Setup> RailFinder::find() {
  find_all();
  if (trenches_ && !ploughs_.empty()) {
    cuts_.may_trench(ploughs_);
    find_all();
  } else if (found_.empty() && lesser_.empty() && !ploughs_.empty()) {
    // Where no rebate plane has room a plough may: in a trough the other side stands in the way.
    cuts_.may_square(ploughs_);
    find_all();
  }
  if (found_.empty() && lesser_.empty()) any_flats();
  // Under a narrow sole the others are as good a choice as those that only just count as well laid out.
  const auto is_narrow = [](const Setup& setup) { return setup.guidance.narrow; };
  if (!std::all_of(found_.begin(), found_.end(), is_narrow)) return std::move(found_);
  std::stable_sort(lesser_.begin(), lesser_.end(), [](const Setup& a, const Setup& b) {
    return a.guidance.imbalance < b.guidance.imbalance;
  });
  if (lesser_.size() > 3) lesser_.resize(3);
  std::move(lesser_.begin(), lesser_.end(), std::back_inserter(found_));
  return std::move(found_);
}

/// Every tilt the draft may start at.
std::vector<double> RailFinder::starts() const {
  std::vector<double> out = draft_.starts;
  for (const Pose& pose : draft_.poses) out.push_back(pose.tilt);
  return out;
}

void RailFinder::find_all() {
  std::vector<double> tried;
  for (const double start : starts()) {
    if (std::any_of(tried.begin(), tried.end(), [&](double t) { return std::abs(t - start) < 1; })) continue;
    tried.push_back(start);
    start_ = start;
    cuts_.turn_to(start);
    under_ = wood_.strip(sole_at(start_));
    const double local = wrap_degrees(start - cuts_.frame());
    if (std::abs(local) > kStraightDown) {
      cuts_.open_to(local > 0 ? -1 : 1);
      arc_.bead ? bead() : cove();
    } else {
      for (const int side : {-1, 1}) {
        cuts_.open_to(side);
        arc_.bead ? bead() : cove();
      }
    }
    if (!arc_.bead) slots();
  }
  if (arc_.bead) tangents_all_round();
}

/// Where no pattern serves: any one or two of the flats that stand against corners of the target.
void RailFinder::any_flats() {
  constexpr std::size_t kMostPool = 40;
  constexpr std::size_t kEnough = 3;
  std::vector<Draft> pool;
  for (const Draft& draft : flat_drafts(problem_)) {
    if (problem_.plane(draft.plane).kind == PlaneKind::rebate && pool.size() < kMostPool)
      pool.push_back(draft);
  }
  const std::vector<double> tilts = starts();
  for (std::size_t i = 0; i < pool.size(); ++i) {
    for (const double start : tilts) accept({pool[i]}, start);
  }
  for (std::size_t i = 0; i < pool.size() && found_.size() < kEnough; ++i) {
    for (std::size_t j = i + 1; j < pool.size() && found_.size() < kEnough; ++j) {
      for (const double start : tilts) accept({pool[i], pool[j]}, start);
    }
  }
}

Sweep RailFinder::sole_at(double start) const {
  return {sole_, start_pose(problem_, draft_, start)};
}

/// Height of the left rail less that of the right one, the sole standing over this wood.
std::optional<double> RailFinder::difference(const Wood& wood, const Sweep& sole) const {
  const double w = sole_.width;
  const double left = rest_height_between(wood.edges(), sole, -kWellLaidReach * w, -kOffMiddle * w);
  const double right = rest_height_between(wood.edges(), sole, kOffMiddle * w, kWellLaidReach * w);
  if (!std::isfinite(left) || !std::isfinite(right)) return std::nullopt;
  return left - right;
}

/// Keeps the cuts where they guide the plane at this start. Whether they do so well laid out.
bool RailFinder::accept(const std::vector<Draft>& cuts, double start) {
  if (cuts.empty() || (stop_ && stop_())) return false;
  const Sweep sole = sole_at(start);
  if (gouges(problem_.section.target, sole, kExact)) return false;
  Wood wood = wood_.strip(sole);
  cut_all(problem_, cuts, wood);
  const Touch bears = touch(wood.edges(), sole);
  if (bears.height < 0.005) return false;  // nothing left to ride on
  const Guidance guided = guidance(bears, sole_);
  if (!guided.two_arrises) return false;
  const bool good = well_laid(guided, sole_);
  std::vector<Setup>& list = good ? found_ : lesser_;
  const bool known = std::any_of(list.begin(), list.end(), [&](const Setup& other) {
    return std::abs(other.start - start) < kSameFigure && same_cuts(other.cuts, cuts);
  });
  if (known) return good;
  // Along a bead that all but reaches a side of the blank a flat may be tangent to it in the air.
  std::vector<Draft> taking = cuts;
  std::erase_if(taking, [&](const Draft& cut) {
    Wood uncut = wood_;
    cut_all(problem_, {cut}, uncut);
    return wood_.area() - uncut.area() <= kLeastCut;
  });
  if (taking.size() < cuts.size()) return accept(taking, start);
  list.push_back({cuts, start, guided});
  for (Draft& cut : list.back().cuts) find_other_poses(problem_, cut);
  return good;
}

/// Solves for the figure x of the pattern, the plane starting at start_ or, where it follows, at x itself.
bool RailFinder::solve(double from, double to, const Pattern& pattern, bool start_follows) {
  return solve_after({}, from, to, pattern, start_follows);
}

/// The same with cuts that do not depend on x and come with the pattern's.
bool RailFinder::solve_with(const std::vector<Draft>& fixed, double from, double to, const Pattern& pattern) {
  return !fixed.empty() && solve_after(fixed, from, to, pattern, false);
}

bool RailFinder::solve_after(const std::vector<Draft>& fixed, double from, double to, const Pattern& pattern,
                             bool start_follows) {
  if (stop_ && stop_()) return false;
  Wood base = start_follows ? Wood(Loop{}) : under_;
  if (!start_follows) cut_all(problem_, fixed, base);
  const Sweep sole_at_start = sole_at(start_);
  auto start_at = [&](double x) { return start_follows ? x : start_; };
  auto rails_at = [&](double x) -> std::optional<double> {
    const std::vector<Draft> cuts = pattern(x);
    if (cuts.empty()) return std::nullopt;
    if (!start_follows) {
      Wood wood = base;
      cut_all(problem_, cuts, wood);
      return difference(wood, sole_at_start);
    }
    const Sweep sole = sole_at(x);
    Wood wood = wood_.strip(sole);
    cut_all(problem_, fixed, wood);
    cut_all(problem_, cuts, wood);
    return difference(wood, sole);
  };
  auto accept_at = [&](double x) {
    return accept(fixed.empty() ? pattern(x) : both(fixed, pattern(x)), start_at(x));
  };
  bool found = false;
  double last_x = 0;
  std::optional<double> last;
  for (int i = 0; i <= kSamples; ++i) {
    const double x = from + (to - from) * i / kSamples;
    const std::optional<double> here = rails_at(x);
    const bool level = here && std::abs(*here) < kLevel;
    if (level) found = accept_at(x) || found;
    // Level all the way, as mirror images are: one figure does for all.
    if (level && found && last && std::abs(*last) < kLevel) return true;
    if (!level && here && last && std::abs(*last) >= kLevel && (*here < 0) != (*last < 0)) {
      // Regula falsi, the end that stays put counting half (the Illinois rule).
      double low = last_x, high = x;
      double at_low = *last, at_high = *here;
      double root = x;
      for (int i_step = 0; i_step < 50 && std::abs(high - low) > 1e-12; ++i_step) {
        root = (low * at_high - high * at_low) / (at_high - at_low);
        const std::optional<double> g = rails_at(root);
        if (!g || std::abs(*g) < kLevel) break;
        if ((*g < 0) == (at_high < 0)) {
          at_low /= 2;
        } else {
          low = high;
          at_low = at_high;
        }
        high = root;
        at_high = *g;
      }
      found = accept_at(root) || found;
    }
    last = here;
    last_x = x;
  }
  return found;
}

bool well_laid(const Guidance& guidance, const Plane& plane) {
  const double reach = kWellLaidReach * plane.width + 1e-6;
  return guidance.well_laid() && -guidance.left <= reach && guidance.right <= reach;
}

std::vector<Start> guided_starts(const Problem& problem, const Draft& draft, const Wood& wood) {
  const Plane& plane = problem.plane(draft.plane);
  std::vector<double> tilts;
  auto add = [&](double tilt) {
    if (std::none_of(tilts.begin(), tilts.end(), [&](double t) { return std::abs(t - tilt) < 1e-6; }))
      tilts.push_back(tilt);
  };
  for (const Pose& pose : draft.poses) add(pose.tilt);
  for (const double tilt : draft.starts) add(tilt);
  std::vector<Start> out;
  for (const double tilt : tilts) {
    const Touch bears = touch(wood.edges(), Sweep(plane, start_pose(problem, draft, tilt)));
    const Guidance guided = guidance(bears, plane);
    if (guided.two_arrises) out.push_back({tilt, guided});
  }
  return out;
}

std::optional<Start> best_start(const Problem& problem, const Draft& draft, const Wood& wood) {
  const Plane& plane = problem.plane(draft.plane);
  std::optional<Start> best;
  for (const Start& start : guided_starts(problem, draft, wood)) {
    const bool well = well_laid(start.guidance, plane);
    const bool best_well = best && well_laid(best->guidance, plane);
    if (!best || (well && !best_well) ||
        (well == best_well && start.guidance.imbalance < best->guidance.imbalance - 1e-6))
      best = start;
  }
  return best;
}

std::vector<Setup> lay_rails(const Problem& problem, const Draft& draft, const Wood& wood, bool trenches,
                             const std::function<bool()>& stop) {
  return RailFinder(problem, draft, wood, trenches, stop).find();
}

}  // namespace arrisline
