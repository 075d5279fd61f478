// Shown by tests/plan/more_planes_test.cpp.
#include "plan/narrower.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace arrisline {

namespace {

/// Whether the two take the same of the blank.
bool take_the_same(const Problem& problem, const Draft& a, const Draft& b) {
  constexpr double kNone = 1e-6;  // mm²
  Wood one(problem.blank), both(problem.blank);
  cut_all(problem, {a}, one);
  cut_all(problem, {b}, both);
  if (std::abs(one.area() - both.area()) > kNone) return false;
  cut_all(problem, {a}, both);
  return std::abs(one.area() - both.area()) < kNone;
}

/// The flat cut made with another plane, from either end of it.
std::optional<Draft> made_with(const Problem& problem, const Draft& flat, int plane) {
  const double tilt = flat.poses.front().tilt;
  const double half = problem.plane(flat.plane).width / 2;
  const double floor = dot(flat.poses.front().at, outward(tilt));
  double low = 1e300, high = -1e300;
  for (const Pose& pose : flat.poses) {
    low = std::min(low, dot(pose.at, across(tilt)) - half);
    high = std::max(high, dot(pose.at, across(tilt)) + half);
  }
  for (const auto& [wall, open] : {std::pair(low, 1), std::pair(high, -1)}) {
    Draft out = flat;
    out.plane = plane;
    out.otherwise.clear();
    out.poses = flat_cut(problem, problem.plane(plane), tilt, wall, open, floor);
    if (out.poses.empty() || !take_the_same(problem, flat, out)) continue;
    find_other_poses(problem, out);
    return out;
  }
  return std::nullopt;
}

/// The rebate planes taken up, as indices into Kit::planes, by width.
std::set<std::pair<double, int>> rebates_of(const Problem& problem, const Sequence& sequence) {
  std::set<std::pair<double, int>> out;
  for (const Step& step : sequence.steps) {
    const Plane& plane = problem.plane(step.draft.plane);
    if (plane.kind == PlaneKind::rebate) out.emplace(plane.width, step.draft.plane);
  }
  return out;
}

}  // namespace

double widest_of_two(const Problem& problem, const Sequence& sequence) {
  const auto rebates = rebates_of(problem, sequence);
  const bool two = !rebates.empty() && rebates.begin()->first < rebates.rbegin()->first;
  return two ? rebates.rbegin()->first : 0;
}

std::optional<Sequence> by_the_narrower(const Problem& problem, const Sequence& sequence) {
  const auto rebates = rebates_of(problem, sequence);
  const double widest = rebates.rbegin()->first;
  const auto next = std::find_if(rebates.rbegin(), rebates.rend(),
                                 [&](const auto& rebate) { return rebate.first < widest; });
  std::vector<Draft> drafts;
  for (const Step& step : sequence.steps) {
    drafts.push_back(step.draft);
    const Plane& plane = problem.plane(step.draft.plane);
    if (plane.kind != PlaneKind::rebate || plane.width < widest) continue;
    std::optional<Draft> narrower = made_with(problem, step.draft, next->second);
    if (!narrower) return std::nullopt;
    drafts.back() = std::move(*narrower);
  }
  return as_given(problem, drafts);
}

}  // namespace arrisline
