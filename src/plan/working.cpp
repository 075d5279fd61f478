// Shown by tests/plan/working_test.cpp and tests/plan/oracle_test.cpp.
#include "plan/working.h"

#include <algorithm>
#include <limits>

#include "plan/sequence.h"
#include "plan/sets.h"

namespace arrisline {

namespace {

constexpr std::size_t kFewPoses = 3;   // of which each is looked at by itself
constexpr std::size_t kFewTurns = 12;  // starts by poses, of which each order is gone through

/// Every pose that the draft may take wood at, the places it may start at among them.
std::vector<Pose> all_poses(const Problem& problem, const Draft& draft) {
  std::vector<Pose> out = draft.poses;
  if (!problem.plane(draft.plane).is_curved()) return out;
  auto add = [&](double tilt) {
    const Pose pose = start_pose(problem, draft, tilt);
    if (std::none_of(out.begin(), out.end(), [&](const Pose& other) { return same_pose(other, pose); }))
      out.push_back(pose);
  };
  for (const Pose& pose : draft.poses) add(pose.tilt);
  for (const double start : draft.starts) add(start);
  return out;
}

double strokes_at(const Problem& problem, const Sweep& sweep, const Wood& wood) {
  return weighed(problem.weights, strokes_of(problem, sweep, wood));
}

double taken_by(const std::vector<Sweep>& sweeps, Wood wood) {
  double taken = 0;
  for (const Sweep& sweep : sweeps) taken += wood.cut(sweep);
  return taken;
}

/// Strokes at these poses one after another; no more than `enough` matters.
double strokes_along(const Problem& problem, const std::vector<Sweep>& sweeps, const Wood& wood,
                     double enough) {
  double strokes = strokes_at(problem, sweeps.front(), wood);
  if (sweeps.size() == 1 || strokes >= enough) return strokes;
  if (sweeps.size() <= kFewPoses) {
    // What each finds is told by the wood under its sole alone.
    for (std::size_t i = 1; i < sweeps.size() && strokes < enough; ++i) {
      Wood under = wood.strip(sweeps[i]);
      for (std::size_t j = 0; j < i; ++j) under.cut(sweeps[j]);
      strokes += strokes_at(problem, sweeps[i], under);
    }
    return strokes;
  }
  Wood left = wood;
  for (std::size_t i = 1; i < sweeps.size() && strokes < enough; ++i) {
    left.cut(sweeps[i - 1]);
    strokes += strokes_at(problem, sweeps[i], left);
  }
  return strokes;
}

}  // namespace

Turns::Turns(const Problem& problem, const Draft& draft) {
  const Plane& plane = problem.plane(draft.plane);
  const auto sweeps = [&](const std::vector<Pose>& poses) {
    std::vector<Sweep> out;
    out.reserve(poses.size());
    for (const Pose& pose : poses) out.emplace_back(plane, pose);
    return out;
  };
  flat = plane.is_flat();
  may_lie = ways_by_poses(problem, draft);
  own = sweeps(draft.poses);
  const std::vector<Sweep> other = sweeps(draft.otherwise);
  std::vector<Sweep> either = own;
  either.insert(either.end(), other.begin(), other.end());
  flanks = flanks_of(either);
  const std::vector<Pose> poses = all_poses(problem, draft);
  all = sweeps(poses);
  if (flat) reach(problem, either);
  if (flat && !is_square(draft.poses.front().tilt))
    figures = figures_alone(problem.section, problem.blank, own);
  if (!plane.is_curved()) from = {own};
  if (!other.empty()) from.push_back(other);
  if (!plane.is_curved() || poses.size() * draft.poses.size() > kFewTurns) return;
  for (const Pose& start : poses) from.push_back(sweeps(poses_from(problem, draft, start.tilt)));
}

void Turns::reach(const Problem& problem, const std::vector<Sweep>& either) {
  Wood blank(problem.blank);
  area_in_blank = cut_whole(*this, blank);
  double width = 0;
  for (const Sweep& sweep : either) {
    double low = sweep.half(), high = -sweep.half();
    const auto include = [&](double u) {
      low = std::min(low, std::max(u, -sweep.half()));
      high = std::max(high, std::min(u, sweep.half()));
    };
    for (const Edge& edge : problem.blank) {
      const double from_v = sweep.v(edge.from), to_v = sweep.v(edge.to);
      if (from_v >= 0) include(sweep.u(edge.from));
      if ((from_v < 0) != (to_v < 0))
        include(sweep.u(edge.from + (from_v / (from_v - to_v)) * (edge.to - edge.from)));
    }
    width = std::max(width, high - low);
  }
  if (width <= 0) return;
  const Shop& shop = problem.kit.shop;
  const double counted = is_square(own.front().pose().tilt) ? 1 : shop.weight_slant;
  cost_in_blank = weighed(problem.weights, {1 / shop.shaving_rebate, counted / shop.shaving_rebate}) / width;
}

SharedTurns KnownTurns::of(const Draft& draft) {
  SharedTurns& slot = known_[key_of(draft)];
  if (!slot) slot = std::make_shared<const Turns>(problem_, draft);
  return slot;
}

double cut_whole(const Turns& turns, Wood& wood) {
  double taken = 0;
  for (const Sweep& sweep : turns.all) taken += wood.cut(sweep);
  return taken;
}

Worked worked_alone(const Problem& problem, const Turns& turns, const Wood& wood,
                    std::optional<double> taken) {
  const Plane& plane = turns.own.front().plane();
  Worked out;
  if (!turns.flat) {
    out.width = plane.width;
    // Wherever it starts, it takes all of this.
    out.taken = taken ? *taken : taken_by(turns.own, wood);
  }
  out.strokes = std::numeric_limits<double>::infinity();
  for (const std::vector<Sweep>& order : turns.from)
    out.strokes = std::min(out.strokes, strokes_along(problem, order, wood, out.strokes));
  if (!turns.from.empty()) return out;
  // No stroke takes more than a shaving as wide as the sole.
  for (const Sweep& start : turns.all) {
    const double rest = std::max(0.0, out.taken - taken_by({start}, wood));
    const double strokes = rest / (plane.width * problem.kit.shop.shaving_curved);
    out.strokes = std::min(out.strokes,
                           strokes_at(problem, start, wood) + weighed(problem.weights, {strokes, strokes}));
  }
  return out;
}

Worked worked_together(const Problem& problem, const std::vector<SharedTurns>& drafts, const Wood& wood) {
  Worked out;
  out.strokes = std::numeric_limits<double>::infinity();
  Wood left = wood;
  double taken = 0;
  bool curved = true;
  for (const SharedTurns& turns : drafts) {
    curved = curved && turns->own.front().plane().is_curved();
    if (!turns->flat) out.width = std::max(out.width, turns->own.front().plane().width);
    for (const Sweep& sweep : turns->all)
      out.strokes = std::min(out.strokes, strokes_at(problem, sweep, wood));
    for (const Sweep& sweep : turns->own) taken += left.cut(sweep);
  }
  if (out.width > 0) out.taken = taken;
  // No stroke takes more than a shaving as wide as the widest sole.
  if (curved) {
    const double strokes = taken / (out.width * problem.kit.shop.shaving_curved);
    out.strokes = std::max(out.strokes, weighed(problem.weights, {strokes, strokes}));
  }
  return out;
}

}  // namespace arrisline
