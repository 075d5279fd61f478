// Laying rails. Each pattern has one free figure; the difference in height of the two rails against the
// sole is brought to nothing by regula falsi. Shown by tests/plan/rails_test.cpp.
#include "plan/rails.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace arrisline {

namespace {

constexpr double kStraightDown = 8;  // degrees of lean below which neither side of an arc is the open one
constexpr int kSamples = 10;  // places at which a free figure is tried before the root between two is sought
constexpr double kLevel = 1e-9;  // mm by which the two rails may differ when solved

constexpr double kSameFigure = 1e-6;  // mm or degrees within which two cuts are one

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

using Pattern = std::function<std::vector<Draft>(double)>;

class RailFinder {
 public:
  RailFinder(const Problem& problem, const Draft& draft, const Wood& wood, const std::function<bool()>& stop)
      : problem_(problem),
        draft_(draft),
        wood_(wood),
        sole_(problem.plane(draft.plane)),
        arc_(problem.surfaces[static_cast<std::size_t>(draft.arc)]),
        centre_(problem.edge(arc_).centre),
        radius_(radius(problem.edge(arc_))),
        flats_(rebate_planes(problem)),
        square_(flats_),
        stop_(stop) {
    for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
      if (problem.plane(p).kind == PlaneKind::plough) slots_.push_back(p);
    }
  }

  /// The well laid-out ways, or where there are none the least unbalanced.
  std::vector<Setup> find() {
    find_all();
    if (found_.empty() && lesser_.empty() && !slots_.empty()) {
      // Where no rebate plane has room a plough may: in a trough the other side stands in the way.
      square_.insert(square_.end(), slots_.begin(), slots_.end());
      find_all();
    }
    if (found_.empty() && lesser_.empty()) any_flats();
    if (!found_.empty()) return std::move(found_);
    std::stable_sort(lesser_.begin(), lesser_.end(), [](const Setup& a, const Setup& b) {
      return a.guidance.imbalance < b.guidance.imbalance;
    });
    if (lesser_.size() > 3) lesser_.resize(3);
    return std::move(lesser_);
  }

 private:
  /// Every tilt the draft may start at.
  std::vector<double> starts() const {
    std::vector<double> out = draft_.starts;
    for (const Pose& pose : draft_.poses) out.push_back(pose.tilt);
    return out;
  }

  void find_all() {
    std::vector<double> tried;
    for (const double start : starts()) {
      if (std::any_of(tried.begin(), tried.end(), [&](double t) { return std::abs(t - start) < 1; }))
        continue;
      tried.push_back(start);
      start_ = start;
      const double lean = wrap_degrees(start);
      frame_ = std::abs(lean) <= 90 + 1e-9 ? 0 : 180;
      e_ = across(frame_);
      a_ = outward(frame_);
      under_ = wood_.strip(sole_at(start_));
      const double local = wrap_degrees(start - frame_);
      if (std::abs(local) > kStraightDown) {
        open_ = local > 0 ? -1 : 1;
        arc_.bead ? bead() : cove();
      } else {
        for (const int side : {-1, 1}) {
          open_ = side;
          arc_.bead ? bead() : cove();
        }
      }
      if (!arc_.bead) slots();
    }
    if (arc_.bead) tangents_all_round();
  }

  /// Where no pattern serves: any one or two of the flats that stand against corners of the target.
  void any_flats() {
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

  // --- building blocks -----------------------------------------------------------------------------

  std::vector<Draft> one(int plane, std::vector<Pose> poses) const {
    if (poses.empty()) return {};
    Draft draft;
    draft.plane = plane;
    draft.poses = std::move(poses);
    return {draft};
  }

  /// A square cut with its wall at `wall` and its floor through `floor` (or as low as it goes).
  std::vector<Draft> step(double wall_u, double floor_v) const {
    for (const int p : square_) {
      std::vector<Pose> poses = flat_cut(problem_, problem_.plane(p), frame_, wall_u, open_, floor_v);
      if (!poses.empty()) return one(p, std::move(poses));
    }
    return {};
  }

  /// A square cut whose floor is at `floor_v` and whose wall stands as far in as the target allows: at the
  /// nearest point of it, going in from near_u, that rises above the floor.
  std::vector<Draft> floor_step(double near_u, double floor_v) const {
    constexpr double kAbove = 1e-6;  // mm by which rounding may lift what stands level with the floor
    double reach = std::numeric_limits<double>::infinity();
    auto consider = [&](Point uv) {
      if (uv.y <= floor_v + kAbove) return;
      const double in = -open_ * (uv.x - near_u);
      if (in > -kAbove) reach = std::min(reach, in);
    };
    for (const Edge& edge : problem_.section.target) {
      const Point from = {u(edge.from), v(edge.from)};
      const Point to = {u(edge.to), v(edge.to)};
      consider(from);
      consider(to);
      if (!edge.is_arc()) {
        auto cross_at = [&](double share) {
          if (share > 0 && share < 1)
            consider({from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)});
        };
        // Just above the floor, and straight above the near end.
        if (from.y != to.y) cross_at((floor_v + 2 * kAbove - from.y) / (to.y - from.y));
        if (from.x != to.x) cross_at((near_u - from.x) / (to.x - from.x));
        continue;
      }
      const Point c = {u(edge.centre), v(edge.centre)};
      const double r = radius(edge);
      auto at_spoke = [&](double across_spoke, double up) {
        if (spoke_meets(edge, across_spoke * e_ + up * a_)) consider({c.x + across_spoke, c.y + up});
      };
      at_spoke(r, 0);
      at_spoke(-r, 0);
      const double up = floor_v + 2 * kAbove - c.y;
      const double along = near_u - c.x;
      for (const double side : {1.0, -1.0}) {
        if (std::abs(up) < r) at_spoke(side * std::sqrt(r * r - up * up), up);
        if (std::abs(along) < r) at_spoke(along, side * std::sqrt(r * r - along * along));
      }
    }
    if (!std::isfinite(reach)) return {};
    double wall = near_u - open_ * std::max(0.0, reach);
    for (const Edge& edge : problem_.section.target) {
      const double corner = u(edge.from);
      if (std::abs(corner - wall) < 1e-5) wall = corner;
    }
    return step(wall, floor_v);
  }

  /// A slanted flat at `lean`, `off` mm outside the circle of the arc.
  std::vector<Draft> chamfer(double lean, double off) const {
    for (const int p : flats_) {
      std::vector<Pose> poses = chamfer_on_arc(problem_, arc_, problem_.plane(p), lean, off);
      if (!poses.empty()) return one(p, std::move(poses));
    }
    return {};
  }

  Point on_circle(double lean, double share) const {
    return centre_ + (arc_.bead ? 1.0 : -1.0) * share * radius_ * outward(lean);
  }
  double u(Point p) const { return dot(p, e_); }
  double v(Point p) const { return dot(p, a_); }

  static std::vector<Draft> both(std::vector<Draft> a, std::vector<Draft> b) {
    if (a.empty() || b.empty()) return {};
    a.insert(a.end(), b.begin(), b.end());
    return a;
  }

  // --- trying and solving --------------------------------------------------------------------------

  Sweep sole_at(double start) const { return {sole_, start_pose(problem_, draft_, start)}; }

  /// Height of the left rail less that of the right one, the sole standing over this wood.
  std::optional<double> difference(const Wood& wood, const Sweep& sole) const {
    const double w = sole_.width;
    const double left = rest_height_between(wood.edges(), sole, -kWellLaidReach * w, -kOffMiddle * w);
    const double right = rest_height_between(wood.edges(), sole, kOffMiddle * w, kWellLaidReach * w);
    if (!std::isfinite(left) || !std::isfinite(right)) return std::nullopt;
    return left - right;
  }

  bool accept(const std::vector<Draft>& cuts, double start) {
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
    if (!known) list.push_back({cuts, start, guided});
    return good;
  }

  /// Solves for the figure x of the pattern, the plane starting at start_ or, where it follows, at x itself.
  bool solve(double from, double to, const Pattern& pattern, bool start_follows = false) {
    return solve_after({}, from, to, pattern, start_follows);
  }

  /// The same with cuts that do not depend on x and come with the pattern's.
  bool solve_with(const std::vector<Draft>& fixed, double from, double to, const Pattern& pattern) {
    return !fixed.empty() && solve_after(fixed, from, to, pattern, false);
  }

  bool solve_after(const std::vector<Draft>& fixed, double from, double to, const Pattern& pattern,
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

  // --- patterns ------------------------------------------------------------------------------------

  void bead() {
    const double w = sole_.width;
    const Pattern leaning = [&](double lean) { return chamfer(lean, 0); };
    if (!solve(start_ - 20, start_ + 20, leaning)) solve(start_ - 20, start_ + 20, leaning, true);

    const std::vector<Draft> tangent = chamfer(start_, 0);
    const Point middle = on_circle(start_, 1);
    // A step below the chamfer, its wall crossing it somewhere out from the middle.
    auto outer = [&](double out) {
      const Point q = middle + open_ * out * across(start_);
      return step(u(q), -1e9);
    };
    // A floor above the chamfer, crossing it somewhere in from the middle.
    auto inner = [&](double in) {
      const Point p = middle - open_ * in * across(start_);
      return floor_step(u(p), v(p));
    };
    const double near = 0.1 * w, far = kWellLaidReach * w;
    solve_with(tangent, near, far, outer);
    solve_with(tangent, near, far, inner);
    const std::vector<Draft> rail = both(tangent, outer(0.38 * w));
    solve_with(rail, near, far, inner);

    // A second chamfer beside the one at the start: the arris between them is one rail. A third on the other
    // side where nothing stands there to be the other rail.
    for (const double side : {1.0, -1.0}) {
      solve_with(tangent, 4, 45, [&](double turn) { return chamfer(start_ + side * turn, 0); });
    }
    for (const double turn : {20.0, 28.0}) {
      bool done = false;
      for (const double side : {1.0, -1.0}) {
        const std::vector<Draft> pair = both(tangent, chamfer(start_ + side * turn, 0));
        done =
            solve_with(pair, 4, 45, [&](double other) { return chamfer(start_ - side * other, 0); }) || done;
      }
      if (done) break;
    }
    // Two chamfers, leaning alike to either side of the middle of the arc; the plane starts on the lower one.
    const double mid = (arc_.lo + arc_.hi) / 2;
    if (std::abs(start_ - mid) > 3) {
      solve(start_ - 10, start_ + 10,
            [&](double lean) { return both(chamfer(lean, 0), chamfer(2 * mid - lean, 0)); });
    }
    // Two chamfers side by side about the start, turned together.
    for (const double apart : {7.0, 12.0}) {
      solve(-12, 12, [&](double turn) {
        return both(chamfer(start_ + turn - apart, 0), chamfer(start_ + turn + apart, 0));
      });
    }
    // A notch in the square arris outside the bead: its two arrises are the rails. Its corner stands a little
    // off the arc.
    for (const double share : {1.02, 1.06, 1.12}) {
      if (solve(start_ - 20, start_ + 20, [&](double lean) { return corner(lean, share); })) break;
    }
    // A chamfer standing off the arc, where a tangent one leaves its arrises wider than the sole.
    for (const double off : {0.02, 0.05, 0.1}) {
      if (solve(start_ - 20, start_ + 20, [&](double lean) { return chamfer(lean, off * radius_); })) break;
    }
  }

  /// Tilts between which the bead is divided alike: its ends, and where it comes out to a side of the blank.
  std::vector<double> quarters() const {
    std::vector<double> out = {arc_.lo};
    for (double tilt = std::ceil(arc_.lo / 90 + 0.05) * 90; tilt < arc_.hi - 4.5; tilt += 90) {
      const Point p = centre_ + radius_ * outward(tilt);
      if (distance(p, problem_.blank) < kSameFigure) out.push_back(tilt);
    }
    out.push_back(arc_.hi);
    return out;
  }

  /// Tangent chamfers all round the bead, as many in each quarter, each leaning alike from the next and from
  /// the sides of the blank; the plane starts on any of them. The one it starts on is leaned until both its
  /// arrises meet the sole.
  void tangents_all_round() {
    const std::vector<double> ends = quarters();
    for (int n = 1; n <= 3; ++n) {
      std::vector<double> leans;
      for (std::size_t q = 0; q + 1 < ends.size(); ++q) {
        for (int i = 1; i <= n; ++i) leans.push_back(ends[q] + (ends[q + 1] - ends[q]) * i / (n + 1));
      }
      std::vector<std::vector<Draft>> chamfers;
      for (const double lean : leans) chamfers.push_back(chamfer(lean, 0));
      const double play = (ends[1] - ends[0]) / (n + 1) / 3;
      for (std::size_t i = 0; i < leans.size(); ++i) {
        std::vector<Draft> others;
        for (std::size_t j = 0; j < leans.size(); ++j) {
          if (j != i) others.insert(others.end(), chamfers[j].begin(), chamfers[j].end());
        }
        const Pattern leaning = [&](double lean) {
          std::vector<Draft> all = chamfer(lean, 0);
          if (!all.empty()) all.insert(all.end(), others.begin(), others.end());
          return all;
        };
        solve(leans[i] - play, leans[i] + play, leaning, true);
      }
    }
  }

  void cove() {
    const double w = sole_.width;
    const double mid = start_;
    const double spread = std::min(25.0, (arc_.hi - arc_.lo) / 2);
    // One step with its corner on the arc, or drawn back from it until its arrises lie under the sole.
    for (const double share : {1.0, 0.98, 0.96, 0.93, 0.9, 0.8, 0.7}) {
      const Pattern one_step = [&](double lean) { return corner(lean, share); };
      if (solve(mid - spread, mid + spread, one_step) || solve(mid - spread, mid + spread, one_step, true))
        break;
    }
    // Three steps: the rails are the arrises between them.
    const double quarter = (arc_.hi - arc_.lo) / 4;
    const Pattern spreading = [&](double shift) {
      return both(both(corner(mid - quarter - shift, 1), corner(mid, 1)), corner(mid + quarter - shift, 1));
    };
    const Pattern moving = [&](double shift) {
      return both(both(corner(mid - quarter + shift, 1), corner(mid + shift, 1)),
                  corner(mid + quarter + shift, 1));
    };
    if (!solve(-0.6 * quarter, 0.6 * quarter, spreading)) solve(-0.6 * quarter, 0.6 * quarter, moving);
    // One step with rails on the two arms of its corner: a lower step outward, a higher floor inward.
    const double near = 0.1 * w;
    bool outward_found = false, inward_found = false, both_found = false;
    for (const double share : {1.0, 0.95, 0.85, 0.7}) {
      for (const double aside : {0.0, 8.0, -8.0, 16.0, -16.0}) {
        const double lean = mid - open_ * aside;
        const std::vector<Draft> first = corner(lean, share);
        if (first.empty()) continue;
        const Point k = on_circle(lean, share);
        auto outer = [&](double out) { return step(u(k) + open_ * out, -1e9); };
        auto inner = [&](double up) { return floor_step(u(k), v(k) + up); };
        if (!outward_found) outward_found = solve_with(first, near, 1.5 * w, outer);
        if (!inward_found) inward_found = solve_with(first, near, 1.5 * w, inner);
        if (both_found) continue;
        const std::vector<Draft> rail = both(first, outer(0.55 * w));
        both_found = solve_with(rail, near, 1.5 * w, inner);
      }
      if (outward_found || inward_found || both_found) break;
    }
  }

  /// A step whose corner lies on the circle of the arc, or at a share of its radius from the centre.
  std::vector<Draft> corner(double lean, double share) const {
    const Point k = on_circle(lean, share);
    return step(u(k), v(k));
  }

  /// Cuts into the middle of a cove: a sole narrower than the round, or the corner of a wide one leaned over.
  void slots() {
    const double w = sole_.width;
    for (const std::vector<int>* group : {&slots_, &flats_}) {
      for (const int p : *group) {
        const Plane& plane = problem_.plane(p);
        if (plane.width > 2 * kWellLaidReach * w || plane.width < 0.2 * w) continue;
        const double square = std::round(start_ / 90) * 90;
        if (plane.kind == PlaneKind::plough && std::abs(start_ - square) > 1e-6) continue;
        const double middle = dot(centre_, across(start_));
        std::vector<Pose> poses = flat_cut(problem_, plane, start_, middle + plane.width / 2, -1, -1e9);
        if (poses.size() > 1) poses.resize(1);
        if (!poses.empty()) accept(one(p, poses), start_);
      }
    }
    // Leaned over as far as this, a square corner would stand upright: that is the step of a cove.
    if (std::abs(wrap_degrees(start_ - frame_)) > 30) return;
    for (const int p : flats_) {
      const Plane& plane = problem_.plane(p);
      bool done = false;
      for (int i = 50; i >= 0; --i) {
        const double share = i / 50.0;
        for (const int side : {-1, 1}) {
          const double lean = start_ + side * 45;
          const Point k = on_circle(start_, share);
          // The corner of the sole that points down between the two arms.
          const Pose pose{k + side * (plane.width / 2) * across(lean), lean};
          if (gouges(problem_.section.target, Sweep(plane, pose), kExact)) continue;
          done = accept(one(p, {pose}), start_) || done;
        }
        if (done) break;
      }
      if (done) break;
    }
  }

  const Problem& problem_;
  const Draft& draft_;
  const Wood& wood_;
  const Plane& sole_;
  const Surface& arc_;
  const Point centre_;
  const double radius_;
  std::vector<int> flats_;
  std::vector<int> square_;  // that make the square cuts
  const std::function<bool()>& stop_;
  std::vector<int> slots_;
  double start_ = 0;
  double frame_ = 0;
  Point e_, a_;         // across and outward of frame_
  Wood under_{Loop{}};  // the wood under the sole at start_
  int open_ = -1;
  std::vector<Setup> found_;
  std::vector<Setup> lesser_;
};

}  // namespace

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

std::vector<Setup> lay_rails(const Problem& problem, const Draft& draft, const Wood& wood,
                             const std::function<bool()>& stop) {
  return RailFinder(problem, draft, wood, stop).find();
}

}  // namespace arrisline
