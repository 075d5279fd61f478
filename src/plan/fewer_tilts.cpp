// Shown by tests/plan/fewer_tilts_test.cpp.
#include "plan/fewer_tilts.h"

#include <algorithm>
#include <cmath>

#include "plan/compose.h"
#include "plan/facets.h"
#include "plan/sets.h"

namespace arrisline {

namespace {

/// mm² that others do not take of one tilt, up to which it may be needless: what then stays may be no thicker
/// than what stays elsewhere.
constexpr double kLittle = 0.5;

double left_by(const Plane& plane, const std::vector<Pose>& poses, std::size_t but, Wood wood) {
  for (std::size_t i = 0; i < poses.size(); ++i) {
    if (i != but) wood.cut(Sweep(plane, poses[i]));
  }
  return wood.area();
}

/// The same cuts in their order, one pose of one of them left out; nothing where that is no plan, or no
/// better.
std::optional<Sequence> without(const Problem& problem, const Sequence& plan, std::size_t step,
                                std::size_t pose) {
  std::vector<Draft> drafts;
  for (const Step& one : plan.steps) {
    drafts.push_back(one.draft);
    drafts.back().starts.clear();
  }
  std::vector<Pose>& poses = drafts[step].poses;
  poses.erase(poses.begin() + static_cast<std::ptrdiff_t>(pose));
  std::optional<Sequence> out = as_given(problem, drafts);
  if (!out || out->effort >= plan.effort - kTie || out->left.height > plan.left.height + kNoMore)
    return std::nullopt;
  const double tolerance = problem.options.tolerance;
  const double limit = out->left.height > tolerance ? most_left(problem) : tolerance;
  if (!arcs_are_finished(problem, drafts, limit)) return std::nullopt;
  return out;
}

}  // namespace

Sequence without_needless_tilts(const Problem& problem, Sequence plan) {
  Wood wood(problem.blank);
  for (std::size_t s = 0; s < plan.steps.size(); ++s) {
    const Plane& plane = problem.plane(plan.steps[s].draft.plane);
    for (bool fewer = plane.is_curved(); fewer;) {
      fewer = false;
      const std::vector<Pose> poses = plan.steps[s].draft.poses;
      const double by_all = left_by(plane, poses, poses.size(), wood);
      for (std::size_t p = 0; poses.size() > 1 && p < poses.size() && !fewer; ++p) {
        if (left_by(plane, poses, p, wood) - by_all >= kLittle) continue;
        std::optional<Sequence> next = without(problem, plan, s, p);
        if (!next) continue;
        plan = *std::move(next);
        fewer = true;
      }
    }
    cut_all(problem, {plan.steps[s].draft}, wood);
  }
  return plan;
}

}  // namespace arrisline
