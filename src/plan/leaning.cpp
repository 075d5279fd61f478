// Shown by tests/plan/reach_test.cpp.
#include "plan/leaning.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "plan/facets.h"
#include "plan/gouge.h"
#include "plan/sequence.h"
#include "plan/tilts.h"

namespace arrisline {

namespace {

/// A lean about the sole's own centre from the upright tilt `from`, and on from there.
struct Leaning {
  double from = 0;
  std::vector<Pose> poses;  // the one upright at `from` first
};

/// Where a wall or the next flat lets a plane of another radius turn no farther than `end`: it leans back
/// about its own centre, and then goes on toward the end of the arc bearing nearer and nearer to the edge of
/// its sole. It leans back where the blank lies the same way for that and all that follows: at `end`, or
/// short of it where the plane lies on its side.
Leaning leaning_on(const Problem& problem, const Surface& arc, const Plane& plane,
                   const std::vector<double>& tilts, double toward) {
  const double end = toward > 0 ? tilts.back() : tilts.front();
  constexpr double kStep = 0.5;  // degrees
  constexpr double kGain = 1.0;  // degrees of the arc, for which it is worth leaning
  constexpr int kLeans = 24;
  const double beta = to_degrees(plane.half_arc());
  const double most_lean = std::min(beta, 2 * beta - kOverlap);
  const double goal = toward > 0 ? arc.hi : arc.lo;
  if (worst_between(problem, arc, plane, tilts, std::min(end, goal), std::max(end, goal)) <=
      allowances(problem).front())
    return {};
  auto pose_at = [&](double contact, double lean) {
    return leaning_pose(problem, arc, plane, contact, contact - toward * lean);
  };
  std::vector<double> hinges = {end};
  const double halves = (end / 90 - 1) / 2;
  const double on_side = 90 * (2 * (toward > 0 ? std::floor(halves) : std::ceil(halves)) + 1);
  if (on_side > tilts.front() && on_side < tilts.back()) hinges.push_back(on_side);
  double best_lean = 0, best_hinge = end, farthest = end;
  for (const double hinge : hinges) {
    auto stands_at = [&](double contact, double lean) {
      const Pose pose = pose_at(contact, lean);
      return toward * (pose.tilt - end) < 1e-6 &&
             !all_ways_to_lie(plane, std::array{pose_at(hinge, 0), pose_at(hinge, lean), pose}).empty() &&
             !gouges(problem.section.target, Sweep(plane, pose), kExact) &&
             body_clears(problem.section.target, plane, pose);
    };
    for (int i = 1; i <= kLeans; ++i) {
      const double lean = most_lean * i / kLeans;
      if (!stands_at(hinge, lean) || !stands_at(end, lean)) continue;
      double at = end;
      while (toward * (goal - at) > 1e-9) {
        const double next = toward * (goal - at) < kStep ? goal : at + toward * kStep;
        if (stands_at(next, lean)) {
          at = next;
          continue;
        }
        double out = next;
        while (std::abs(out - at) > 1e-6) {
          const double mid = (at + out) / 2;
          (stands_at(mid, lean) ? at : out) = mid;
        }
        break;
      }
      if (toward * (at - farthest) < 1e-6) continue;
      farthest = at;
      best_lean = lean;
      best_hinge = hinge;
    }
  }
  if (toward * (farthest - end) < kGain) return {};
  Leaning out{best_hinge, {pose_at(best_hinge, 0)}};
  std::vector<double> steps;  // in degrees from the hinge
  if (best_hinge != end) spread(0, std::abs(end - best_hinge), kMostTurn / 3, steps);
  if (!steps.empty()) steps.pop_back();
  spread(std::abs(end - best_hinge), std::abs(farthest - best_hinge), kMostTurn / 3, steps);
  for (const double by : steps) out.poses.push_back(pose_at(best_hinge + toward * by, best_lean));
  return out;
}

/// The poses at the tilts with those that lean on from one of them beside it, so that what turns the blank
/// does not come between.
void put_in(const Leaning& leaning, double toward, std::vector<Pose>& poses) {
  if (leaning.poses.empty()) return;
  auto at = std::find_if(poses.begin(), poses.end(), [&](const Pose& pose) {
    return toward > 0 ? pose.tilt > leaning.from + 1e-6 : pose.tilt > leaning.from - 1e-6;
  });
  std::vector<Pose> all = leaning.poses;
  const auto upright = toward > 0 ? (at == poses.begin() ? poses.end() : at - 1) : at;
  if (upright != poses.end() && same_pose(*upright, all.front())) all.erase(all.begin());
  if (toward < 0) std::reverse(all.begin(), all.end());
  poses.insert(at, all.begin(), all.end());
}

/// Leaves out poses that the others make up for: those that lean on come beside what was spaced without them.
void leave_out_spare(const Problem& problem, const Surface& arc, Draft& draft) {
  const Plane& plane = problem.plane(draft.plane);
  const std::vector<double> looks = arc_looks(arc);
  // By the sole alone, since half of an arc has to be its work.
  const auto left = [&](const std::vector<Pose>& poses) {
    std::vector<double> out;
    for (const double at : looks) out.push_back(left_at(problem, arc, plane, poses, at));
    return out;
  };
  const auto follow_from_any = [&](const Draft& some) {
    return std::all_of(some.poses.begin(), some.poses.end(), [&](const Pose& start) {
      Draft from = some;
      from.poses = poses_from(problem, some, start.tilt);
      return from.poses.size() == some.poses.size() && all_follow(problem, from);
    });
  };
  const std::vector<double> before = left(draft.poses);
  const std::vector<double> may_stay = allowances(problem);
  const auto as_good = [&](const std::vector<double>& after) {
    for (std::size_t i = 0; i < looks.size(); ++i) {
      for (const double allowed : may_stay) {
        if (before[i] <= allowed && after[i] > allowed) return false;
      }
    }
    return true;
  };
  for (std::size_t i = 0; draft.poses.size() > 1 && i < draft.poses.size();) {
    Draft fewer = draft;
    fewer.poses.erase(fewer.poses.begin() + static_cast<std::ptrdiff_t>(i));
    if (as_good(left(fewer.poses)) && follow_from_any(fewer)) {
      draft = std::move(fewer);
    } else {
      ++i;
    }
  }
}

}  // namespace

void lean_on(const Problem& problem, const Surface& arc, const Plane& plane, const std::vector<double>& tilts,
             Draft& draft) {
  put_in(leaning_on(problem, arc, plane, tilts, 1), 1, draft.poses);
  put_in(leaning_on(problem, arc, plane, tilts, -1), -1, draft.poses);
  if (draft.poses.size() > tilts.size()) leave_out_spare(problem, arc, draft);
}

}  // namespace arrisline
