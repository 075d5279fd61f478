// A cut judged on the wood it finds. Shown by tests/plan/sequence_test.cpp.
#include "plan/sequence.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "plan/gouge.h"
#include "plan/holding.h"
#include "plan/rails.h"
#include "plan/taken_along.h"

namespace arrisline {

namespace {

constexpr double kOwnArc = 10;  // degrees of its own arc that guide a sole
/// How a later pose of a cut turns on: degrees of its sole that lie over an earlier one about the same
/// centre, and the step where the sole turns about the centre of the arc.
constexpr double kOverlap = 10;
constexpr double kMostStep = 30;

/// Degrees of the arc that the sole at `tilt` shares with earlier cuts of the same plane on it.
bool rides_in_own_arc(const Problem& problem, const Draft& draft, double tilt,
                      const std::vector<const Draft*>& done) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(draft.arc)];
  const Plane& plane = problem.plane(draft.plane);
  if (std::abs(plane.radius - radius(problem.edge(arc))) > kSameCircle) return false;
  const double beta = to_degrees(plane.half_arc());
  for (const Draft* other : done) {
    if (other->arc < 0) continue;
    const Surface& its = problem.surfaces[static_cast<std::size_t>(other->arc)];
    const Plane& its_plane = problem.plane(other->plane);
    if (distance(problem.edge(its).centre, problem.edge(arc).centre) > kSameCircle ||
        std::abs(its_plane.radius - plane.radius) > kSameCircle)
      continue;
    for (const Pose& pose : other->poses) {
      const double its_beta = to_degrees(its_plane.half_arc());
      const double low = std::max({tilt - beta, pose.tilt - its_beta, its.lo});
      const double high = std::min({tilt + beta, pose.tilt + its_beta, its.hi});
      if (high - low >= kOwnArc + 0.1) return true;
    }
  }
  return false;
}

/// The figures to be set. One that the cut before used as well may still be on the gauge.
int settings_after(const Step& step, const Step* previous) {
  const std::vector<GaugeLine>& lines = step.laid_out.lines;
  const bool still_set =
      previous != nullptr && std::any_of(lines.begin(), lines.end(), [&](const GaugeLine& line) {
        const std::vector<GaugeLine>& others = previous->laid_out.lines;
        return std::any_of(others.begin(), others.end(),
                           [&](const GaugeLine& other) { return same_figure(line, other); });
      });
  return static_cast<int>(lines.size()) - (still_set ? 1 : 0);
}

/// Whether the plane gets from the one pose to the other as rule 4 lets it.
bool follows(const Plane& plane, const Edge& arc, const Pose& earlier, const Pose& later) {
  auto turned_about = [&](Point centre) {
    return distance(to_sole_frame(earlier, centre), to_sole_frame(later, centre)) <= kSameCircle;
  };
  const double step = std::abs(wrap_degrees(later.tilt - earlier.tilt));
  const double side = plane.kind == PlaneKind::round ? plane.radius : -plane.radius;
  const bool overlaps = 2 * to_degrees(plane.half_arc()) - step >= kOverlap;
  if (overlaps && turned_about(earlier.at + side * outward(earlier.tilt))) return true;
  // The limit of the step is for soles of another radius, which do not overlap on the arc.
  const bool own = std::abs(radius(arc) - plane.radius) <= kSameCircle;
  return (own ? overlaps : step <= kMostStep) && turned_about(arc.centre);
}

}  // namespace

bool all_follow(const Problem& problem, const Draft& draft) {
  const Edge& arc = problem.edge(problem.surfaces[static_cast<std::size_t>(draft.arc)]);
  for (auto pose = draft.poses.begin() + 1; pose < draft.poses.end(); ++pose) {
    if (std::none_of(draft.poses.begin(), pose, [&](const Pose& earlier) {
          return follows(problem.plane(draft.plane), arc, earlier, *pose);
        }))
      return false;
  }
  return true;
}

std::vector<Pose> poses_from(const Problem& problem, const Draft& draft, double start) {
  const Pose first = start_pose(problem, draft, start);
  std::vector<Pose> poses = {first};
  for (const Pose& pose : draft.poses) {
    if (!same_pose(pose, first)) poses.push_back(pose);
  }
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(draft.arc)];
  const Plane& plane = problem.plane(draft.plane);
  const double begins = contact_of(problem, arc, plane, first);
  std::stable_sort(poses.begin() + 1, poses.end(), [&](const Pose& a, const Pose& b) {
    const double at_a = contact_of(problem, arc, plane, a), at_b = contact_of(problem, arc, plane, b);
    const double from_a = std::abs(at_a - begins), from_b = std::abs(at_b - begins);
    if (std::abs(from_a - from_b) > 1e-6) return from_a < from_b;
    // Square to the arc before leaning on about the sole's own centre.
    return std::abs(a.tilt - at_a) < std::abs(b.tilt - at_b) - 1e-6;
  });
  // One that the plane gets to only by way of another comes after that one.
  for (auto next = poses.begin() + 1; next < poses.end(); ++next) {
    const auto found = std::find_if(next, poses.end(), [&](const Pose& pose) {
      return std::any_of(poses.begin(), next, [&](const Pose& earlier) {
        return follows(plane, problem.edge(arc), earlier, pose);
      });
    });
    if (found == poses.end()) break;
    std::rotate(next, found, found + 1);
  }
  return poses;
}

Strokes strokes_of(const Problem& problem, const Sweep& sweep, const Wood& wood) {
  const double thick = thickest_taken(wood.edges(), sweep);
  const Plane& plane = sweep.plane();
  const Shop& shop = problem.kit.shop;
  if (plane.is_flat()) {
    const double strokes = thick / shop.shaving_rebate;
    const bool slanted = !is_square(sweep.pose().tilt);
    return {strokes, slanted ? shop.weight_slant * strokes : strokes};
  }
  const double deep = plane.is_curved() ? std::max(0.0, thick - shop.deep) : 0;
  return {thick / shop.shaving_curved, (thick + (shop.weight_slow - 1) * deep) / shop.shaving_curved};
}

namespace {

/// Where the body of a curved plane has no room at its next pose yet, one that comes later and that the plane
/// can get to from those before goes first, if it has.
void put_first_that_clears(const Problem& problem, Draft& draft, const Wood& wood,
                           std::vector<Pose>::iterator next) {
  const Plane& plane = problem.plane(draft.plane);
  if (!plane.body || draft.arc < 0 || next == draft.poses.begin()) return;
  const Edge& arc = problem.edge(problem.surfaces[static_cast<std::size_t>(draft.arc)]);
  const auto clears = [&](const Pose& pose) {
    Wood after = wood;
    after.cut(Sweep(plane, pose));
    return body_clears(after.edges(), plane, pose);
  };
  const auto found = std::find_if(next, draft.poses.end(), [&](const Pose& pose) {
    return std::any_of(draft.poses.begin(), next,
                       [&](const Pose& earlier) { return follows(plane, arc, earlier, pose); }) &&
           clears(pose);
  });
  if (found != draft.poses.end()) std::rotate(next, found, found + 1);
}

/// Fills in what the step takes from the wood and checks the rules that depend on it.
bool judge_cut(const Problem& problem, const Wood& before, Step& step) {
  const Plane& plane = problem.plane(step.draft.plane);
  step.may_lie = ways_to_lie(problem, plane, step.draft.poses);
  if (step.may_lie.empty()) return false;
  Wood wood = before;
  std::vector<Pose>& poses = step.draft.poses;
  for (auto at = poses.begin(); at != poses.end(); ++at) {
    put_first_that_clears(problem, step.draft, wood, at);
    const Pose pose = *at;
    const Sweep sweep(plane, pose);
    const Strokes strokes = strokes_of(problem, sweep, wood);
    step.strokes.plain += strokes.plain;
    step.strokes.counted += strokes.counted;
    step.removed += wood.cut(sweep);
    // Wood that a later pose takes is still there for the body at this one.
    if (!body_clears(wood.edges(), plane, pose)) return false;
  }
  if (step.removed < kLeastCut) return false;
  if (plane.is_flat()) {
    step.laid_out = lay_out(problem, plane, step.draft.poses, before, wood);
    step.rides = plane.kind == PlaneKind::plough ? Rides::fence
                 : step.laid_out.on_wall         ? Rides::wall
                                                 : Rides::gauge_line;
  } else {
    step.wear = step.removed / (plane.width * plane.width);
  }
  step.may_lie = held(problem, plane, step.draft.poses, wood, step.may_lie);
  return !step.may_lie.empty();
}

/// The steps of a curved draft before what it takes is known: one for each start that two arrises guide, or
/// where there is none the first that its own arc guides.
std::vector<Step> curved_starts(const Problem& problem, const Draft& draft,
                                const std::vector<const Draft*>& done, const Wood& wood) {
  std::vector<Step> out;
  for (const Start& start : guided_starts(problem, draft, wood)) {
    Step step;
    step.draft = draft;
    step.draft.poses = poses_from(problem, draft, start.tilt);
    step.rides = Rides::two_arrises;
    step.guidance = start.guidance;
    step.ill_laid = !well_laid(step.guidance, problem.plane(draft.plane));
    if (all_follow(problem, step.draft)) out.push_back(std::move(step));
  }
  if (!out.empty()) return out;
  for (const Pose& pose : draft.poses) {
    if (!rides_in_own_arc(problem, draft, pose.tilt, done)) continue;
    Step step;
    step.draft = draft;
    step.draft.poses = poses_from(problem, draft, pose.tilt);
    step.rides = Rides::own_arc;
    if (all_follow(problem, step.draft)) return {step};
  }
  return {};
}

}  // namespace

std::vector<Step> stand(const Problem& problem, const Draft& draft, const std::vector<const Draft*>& done,
                        const Wood& wood) {
  std::vector<Step> steps;
  const Plane& plane = problem.plane(draft.plane);
  if (plane.is_curved()) {
    steps = curved_starts(problem, draft, done, wood);
  } else {
    steps.emplace_back();
    steps.back().draft = draft;
    if (plane.kind == PlaneKind::shaped) steps.back().rides = Rides::fence;
    if (!draft.otherwise.empty()) {
      steps.emplace_back();
      steps.back().draft = draft;
      steps.back().draft.poses = draft.otherwise;
    }
  }
  std::vector<Step> out;
  for (Step& step : steps) {
    step.taken_up = problem.taken_up(draft.plane);
    if (judge_cut(problem, wood, step)) out.push_back(std::move(step));
  }
  return out;
}

Lies lies_after(const Step* previous) {
  return previous == nullptr ? Lies::face_up : previous->lies;
}

LieSet ways_to_lay(const Step& step, const Step* previous) {
  const Lies already = lies_after(previous);
  return step.may_lie.has(already) ? LieSet(already) : step.may_lie;
}

void settle(const Problem& problem, Step& step, const Step* previous, Lies lies) {
  step.lies = lies;
  step.settings = settings_after(step, previous);
  step.effort = effort_of(problem.weights, step, previous);
}

std::optional<Step> take(const Problem& problem, const Draft& draft, const std::vector<const Draft*>& done,
                         const Step* previous, Wood& wood) {
  std::optional<Step> best;
  for (Step& step : stand(problem, draft, done, wood)) {
    settle(problem, step, previous, ways_to_lay(step, previous).first());
    if (!best || step.effort < best->effort) best = std::move(step);
  }
  if (best) cut_all(problem, {best->draft}, wood);
  return best;
}

std::optional<Sequence> as_given(const Problem& problem, const std::vector<Draft>& drafts) {
  Sequence out;
  Wood wood(problem.blank);
  std::vector<const Draft*> done;
  std::set<int> planes;
  for (const Draft& draft : drafts) {
    const Step* previous = out.steps.empty() ? nullptr : &out.steps.back();
    std::optional<Step> step = take(problem, draft, done, previous, wood);
    if (!step) return std::nullopt;
    out.effort += step->effort;
    out.imbalance += step->guidance.imbalance;
    planes.insert(step->taken_up);
    out.steps.push_back(std::move(*step));
    done.push_back(&draft);
  }
  out.effort += problem.weights.plane * static_cast<double>(planes.size());
  out.left = thickest_left(wood, problem.section.target);
  return out;
}

}  // namespace arrisline
