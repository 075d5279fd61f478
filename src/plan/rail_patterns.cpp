// Where rails may lie: the patterns that docs/how-it-plans.md lists, each with one free figure. Shown by
// tests/plan/rails_test.cpp.
#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/gouge.h"
#include "plan/rail_finder.h"

namespace arrisline {

void RailFinder::bead() {
  const double w = sole_.width;
  const Pattern leaning = [&](double lean) { return cuts_.chamfer(lean, 0); };
  if (!solve(start_ - 20, start_ + 20, leaning)) solve(start_ - 20, start_ + 20, leaning, true);

  const std::vector<Draft> tangent = cuts_.chamfer(start_, 0);
  const Point middle = cuts_.on_circle(start_, 1);
  // A step below the chamfer, its wall crossing it somewhere out from the middle.
  auto outer = [&](double out) {
    const Point q = middle + cuts_.open() * out * across(start_);
    return cuts_.step(cuts_.u(q), -1e9);
  };
  // A floor above the chamfer, crossing it somewhere in from the middle.
  auto inner = [&](double in) {
    const Point p = middle - cuts_.open() * in * across(start_);
    return cuts_.floor_step(cuts_.u(p), cuts_.v(p));
  };
  const double near = 0.1 * w, far = kWellLaidReach * w;
  solve_with(tangent, near, far, outer);
  solve_with(tangent, near, far, inner);
  const std::vector<Draft> rail = both(tangent, outer(0.38 * w));
  solve_with(rail, near, far, inner);

  // A second chamfer beside the one at the start: the arris between them is one rail. A third on the other
  // side where nothing stands there to be the other rail.
  for (const double side : {1.0, -1.0}) {
    solve_with(tangent, 4, 45, [&](double turn) { return cuts_.chamfer(start_ + side * turn, 0); });
  }
  for (const double turn : {20.0, 28.0}) {
    bool done = false;
    for (const double side : {1.0, -1.0}) {
      const std::vector<Draft> pair = both(tangent, cuts_.chamfer(start_ + side * turn, 0));
      done = solve_with(pair, 4, 45, [&](double other) { return cuts_.chamfer(start_ - side * other, 0); }) ||
             done;
    }
    if (done) break;
  }
  // Where no two do, one near either end of the arc, and another leaned until the arrises on both its sides
  // meet the sole: where the start is so near an end that no second one goes beside it.
  constexpr double kNearEnd = 3;  // degrees
  const auto of_two = [&](const Setup& setup) { return setup.start == start_ && setup.cuts.size() <= 2; };
  if (std::none_of(found_.begin(), found_.end(), of_two)) {
    for (const double end : {arc_.lo + kNearEnd, arc_.hi - kNearEnd})
      solve_with(cuts_.chamfer(end, 0), start_ - 20, start_ + 20, leaning);
  }
  // Two chamfers, leaning alike to either side of the middle of the arc; the plane starts on the lower one.
  const double mid = (arc_.lo + arc_.hi) / 2;
  if (std::abs(start_ - mid) > 3) {
    solve(start_ - 10, start_ + 10,
          [&](double lean) { return both(cuts_.chamfer(lean, 0), cuts_.chamfer(2 * mid - lean, 0)); });
  }
  // Two chamfers side by side about the start, turned together.
  for (const double apart : {7.0, 12.0}) {
    solve(-12, 12, [&](double turn) {
      return both(cuts_.chamfer(start_ + turn - apart, 0), cuts_.chamfer(start_ + turn + apart, 0));
    });
  }
  // A notch in the square arris outside the bead: its two arrises are the rails. Its corner stands a little
  // off the arc.
  for (const double share : {1.02, 1.06, 1.12}) {
    if (solve(start_ - 20, start_ + 20, [&](double lean) { return cuts_.corner(lean, share); })) break;
  }
  // A chamfer standing off the arc, where a tangent one leaves its arrises wider than the sole.
  for (const double off : {0.02, 0.05, 0.1}) {
    if (solve(start_ - 20, start_ + 20, [&](double lean) { return cuts_.chamfer(lean, off * radius_); }))
      break;
  }
}

/// Tilts between which the bead is divided alike: its ends, and where it comes out to a side of the blank.
std::vector<double> RailFinder::quarters() const {
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
void RailFinder::tangents_all_round() {
  const std::vector<double> ends = quarters();
  for (int n = 1; n <= 3; ++n) {
    std::vector<double> leans;
    for (std::size_t q = 0; q + 1 < ends.size(); ++q) {
      for (int i = 1; i <= n; ++i) leans.push_back(ends[q] + (ends[q + 1] - ends[q]) * i / (n + 1));
    }
    std::vector<std::vector<Draft>> chamfers;
    for (const double lean : leans) chamfers.push_back(cuts_.chamfer(lean, 0));
    const double play = (ends[1] - ends[0]) / (n + 1) / 3;
    for (std::size_t i = 0; i < leans.size(); ++i) {
      std::vector<Draft> others;
      for (std::size_t j = 0; j < leans.size(); ++j) {
        if (j != i) others.insert(others.end(), chamfers[j].begin(), chamfers[j].end());
      }
      const Pattern leaning = [&](double lean) {
        std::vector<Draft> all = cuts_.chamfer(lean, 0);
        if (!all.empty()) all.insert(all.end(), others.begin(), others.end());
        return all;
      };
      solve(leans[i] - play, leans[i] + play, leaning, true);
    }
  }
}

void RailFinder::cove() {
  const double w = sole_.width;
  const double mid = start_;
  const double spread = std::min(25.0, (arc_.hi - arc_.lo) / 2);
  // One step with its corner on the arc, or drawn back from it until its arrises lie under the sole.
  for (const double share : {1.0, 0.98, 0.96, 0.93, 0.9, 0.8, 0.7}) {
    const Pattern one_step = [&](double lean) { return cuts_.corner(lean, share); };
    if (solve(mid - spread, mid + spread, one_step) || solve(mid - spread, mid + spread, one_step, true))
      break;
  }
  // Three steps: the rails are the arrises between them.
  const double quarter = (arc_.hi - arc_.lo) / 4;
  const Pattern spreading = [&](double shift) {
    return both(both(cuts_.corner(mid - quarter - shift, 1), cuts_.corner(mid, 1)),
                cuts_.corner(mid + quarter - shift, 1));
  };
  const Pattern moving = [&](double shift) {
    return both(both(cuts_.corner(mid - quarter + shift, 1), cuts_.corner(mid + shift, 1)),
                cuts_.corner(mid + quarter + shift, 1));
  };
  if (!solve(-0.6 * quarter, 0.6 * quarter, spreading)) solve(-0.6 * quarter, 0.6 * quarter, moving);
  // One step with rails on the two arms of its corner: a lower step outward, a higher floor inward.
  const double near = 0.1 * w;
  bool outward_found = false, inward_found = false, both_found = false;
  for (const double share : {1.0, 0.95, 0.85, 0.7}) {
    for (const double aside : {0.0, 8.0, -8.0, 16.0, -16.0}) {
      const double lean = mid - cuts_.open() * aside;
      const std::vector<Draft> first = cuts_.corner(lean, share);
      if (first.empty()) continue;
      const Point k = cuts_.on_circle(lean, share);
      auto outer = [&](double out) { return cuts_.step(cuts_.u(k) + cuts_.open() * out, -1e9); };
      auto inner = [&](double up) { return cuts_.floor_step(cuts_.u(k), cuts_.v(k) + up); };
      if (!outward_found) outward_found = solve_with(first, near, 1.5 * w, outer);
      if (!inward_found) inward_found = solve_with(first, near, 1.5 * w, inner);
      if (both_found) continue;
      const std::vector<Draft> rail = both(first, outer(0.55 * w));
      both_found = solve_with(rail, near, 1.5 * w, inner);
    }
    if (outward_found || inward_found || both_found) break;
  }
}

/// Cuts into the middle of a cove: a sole narrower than the round, or the corner of a wide one leaned over.
void RailFinder::slots() {
  const double w = sole_.width;
  for (const std::vector<int>* group : {&std::as_const(ploughs_), &rebates_}) {
    for (const int p : *group) {
      const Plane& plane = problem_.plane(p);
      if (plane.width > 2 * kWellLaidReach * w || plane.width < 0.2 * w) continue;
      const double square = std::round(start_ / 90) * 90;
      if (plane.kind == PlaneKind::plough && std::abs(start_ - square) > 1e-6) continue;
      const double middle = dot(centre_, across(start_));
      const std::vector<Pose> poses = flat_cut(problem_, plane, start_, middle + plane.width / 2, -1, -1e9);
      if (!poses.empty()) accept(flat_draft(p, {poses.front()}), start_);
    }
  }
  // Leaned over as far as this, a square corner would stand upright: that is the step of a cove.
  if (std::abs(wrap_degrees(start_ - cuts_.frame())) > 30) return;
  for (const int p : rebates_) {
    const Plane& plane = problem_.plane(p);
    bool done = false;
    for (int i = 50; i >= 0; --i) {
      const double share = i / 50.0;
      for (const int side : {-1, 1}) {
        const double lean = start_ + side * 45;
        const Point k = cuts_.on_circle(start_, share);
        // The corner of the sole that points down between the two arms.
        const Pose pose{k + side * (plane.width / 2) * across(lean), lean};
        if (gouges(problem_.section.target, Sweep(plane, pose), kExact)) continue;
        done = accept(flat_draft(p, {pose}), start_) || done;
      }
      if (done) break;
    }
    if (done) break;
  }
}

}  // namespace arrisline
