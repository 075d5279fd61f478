// What a rebate plane takes as well upright as on its side. Shown by tests/plan/reach_test.cpp and
// tests/plan/oracle_test.cpp.
#include <cmath>
#include <set>

#include "plan/problem.h"
#include "plan/sets.h"

namespace arrisline {

/// mm² by which two cuts that take the same may differ.
static constexpr double kSameArea = 1e-3;

void find_other_poses(const Problem& problem, Draft& draft) {
  const Plane& plane = problem.plane(draft.plane);
  const Pose& first = draft.poses.front();
  if (plane.kind != PlaneKind::rebate || !is_square(first.tilt) || !draft.otherwise.empty()) return;
  const Point e = across(first.tilt);
  Wood taken(problem.blank);
  cut_all(problem, {draft}, taken);
  for (const int open : {-1, 1}) {
    // From the corner of its side and its sole it lies toward where it was open, and opens to where it came
    // from.
    const Point corner = first.at - open * plane.width / 2 * e;
    if (draft.poses.size() > 1 && dot(draft.poses[1].at - first.at, e) * open < 0) continue;
    const double tilt = wrap_degrees(first.tilt - 90 * open);
    const int other_open = dot(outward(first.tilt), across(tilt)) > 0 ? 1 : -1;
    std::vector<Pose> poses =
        flat_cut(problem, plane, tilt, dot(corner, across(tilt)), other_open, dot(corner, outward(tilt)));
    if (poses.empty()) continue;
    Draft other = draft;
    other.poses = std::move(poses);
    Wood wood(problem.blank);
    cut_all(problem, {other}, wood);
    if (std::abs(wood.area() - taken.area()) > kSameArea) continue;
    cut_all(problem, {draft}, wood);
    if (taken.area() - wood.area() > kSameArea) continue;
    draft.otherwise = std::move(other.poses);
    // Upright first, so that one cut is known by its poses from whichever side it was found.
    if (std::abs(e.x) < 0.5) std::swap(draft.poses, draft.otherwise);
    return;
  }
}

void join_alike(const Problem& problem, std::vector<Draft>& drafts) {
  std::set<std::vector<long long>> known;
  std::vector<Draft> out;
  for (Draft& draft : drafts) {
    if (!known.insert(key_of(draft)).second) continue;
    find_other_poses(problem, draft);
    Draft one_way = draft;
    one_way.otherwise.clear();
    for (const std::vector<Pose>* poses : {&draft.poses, &draft.otherwise}) {
      one_way.poses = *poses;
      known.insert(key_of(one_way));
    }
    out.push_back(std::move(draft));
  }
  drafts = std::move(out);
}

}  // namespace arrisline
