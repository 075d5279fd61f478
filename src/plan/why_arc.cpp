// Shown by tests/plan/reasons_test.cpp.
#include "plan/why_arc.h"

#include <algorithm>
#include <cmath>

#include "plan/access.h"
#include "plan/facets.h"
#include "plan/tilts.h"
#include "wording/figures.h"

namespace arrisline {

namespace {

/// The plane at every degree of the arc at which its sole lies along it, or at every one where the sole is
/// wider.
std::vector<Pose> along(const Problem& problem, const Surface& arc, const Plane& plane) {
  const double half = to_degrees(plane.half_arc());
  const bool wider = arc.hi - arc.lo <= 2 * half;
  const double from = wider ? arc.lo : arc.lo + half, to = wider ? arc.hi : arc.hi - half;
  std::vector<Pose> out;
  const int steps = std::max(2, static_cast<int>(to - from));
  for (int i = 0; i <= steps; ++i)
    out.push_back(pose_on_arc(problem, arc, plane, from + (to - from) * i / steps));
  return out;
}

std::string meets(const Problem& problem, const Plane& plane, const Obstacle& obstacle) {
  const std::string what = named(problem.section, obstacle.edge);
  switch (obstacle.part) {
    case Obstacle::Part::body:
      return "its body, wider than its sole, meets " + what;
    case Obstacle::Part::side:
      return "its side meets " + what;
    case Obstacle::Part::sole:
      break;
  }
  return "its sole, " + about(plane.width, problem.options.unit) + " wide, runs into " + what;
}

std::string named_curve(const Problem& problem, const Surface& arc) {
  return std::string(arc.bead ? "bead" : "cove") + " of radius " +
         about(radius(problem.edge(arc)), problem.options.unit);
}

/// Of the kit's planes for the arc, those nearest in size.
struct Nearest {
  const Plane* enters = nullptr;  // that goes in
  const Plane* bears = nullptr;   // that would bear on the edges of its sole
};

Nearest nearest(const Problem& problem, const Surface& arc) {
  const PlaneKind kind = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  const double r = radius(problem.edge(arc));
  Nearest out;
  for (const Plane& plane : problem.kit.planes) {
    if (plane.kind != kind) continue;
    const bool edges = arc.bead ? plane.radius < r - kFits : plane.radius > r + kFits;
    const Plane*& best = edges ? out.bears : out.enters;
    if (best == nullptr || std::abs(plane.radius - r) < std::abs(best->radius - r)) best = &plane;
  }
  return out;
}

bool is_its(const Problem& problem, const Surface& arc, const Plane& plane) {
  return std::abs(plane.radius - radius(problem.edge(arc))) <= kFits;
}

/// "hollow 6 fits the bead of radius 3/8 in, but ".
std::string would_do(const Problem& problem, const Surface& arc, const Plane& plane) {
  const char* how = is_its(problem, arc, plane) ? " fits the "
                    : arc.bead                  ? " is open enough for the "
                                                : " is small enough for the ";
  return plane.label + how + named_curve(problem, arc) + ", but ";
}

/// Whether these poses of the plane finish the arc, by itself at least half of it: flats beside a bead make
/// up for a sole of another radius, which cannot lie along it to its ends.
bool finish(const Problem& problem, const Surface& arc, const Plane& plane, const std::vector<Pose>& poses) {
  constexpr double kEnds = 0.03;  // of the arc: its ends are judged with the flats beside them
  const double allowed = allowances(problem).back();
  std::size_t by_sole = 0, by_any = 0;
  const std::vector<double> looks = arc_looks(arc);
  for (const double at : looks) {
    const bool sole = left_at(problem, arc, plane, poses, at) <= allowed;
    by_sole += sole ? 1 : 0;
    by_any += sole || left_by_end_flats(problem, arc, at) <= allowed ? 1 : 0;
  }
  const auto share = [&](std::size_t n) {
    return static_cast<double>(n) / static_cast<double>(looks.size());
  };
  return is_its(problem, arc, plane) ? share(by_sole) >= 1 - kEnds
                                     : share(by_any) >= 1 - kEnds && share(by_sole) >= 0.5;
}

std::string bears_on_edges(const Problem& problem, const Surface& arc, const Plane& plane) {
  return plane.label + (arc.bead ? " is too tight for a " : " is too flat for a ") +
         named_curve(problem, arc) + " and would bear on the edges of its sole";
}

}  // namespace

bool makes_arc(const Problem& problem, int surface, const Plane& plane) {
  const Surface& arc = surface_of(problem, surface);
  if (plane.kind != (arc.bead ? PlaneKind::hollow : PlaneKind::round)) return false;
  if (standing_ranges(problem, arc, plane).empty()) return false;
  Kit one = problem.kit;
  one.planes = {plane};
  const Problem with = make_problem(problem.section, one, problem.options);
  const std::vector<std::vector<Draft>> ways = arc_drafts(with, surface);
  return std::any_of(ways.begin(), ways.end(), [&](const std::vector<Draft>& way) {
    std::vector<Pose> poses;
    for (const Draft& draft : way) poses.insert(poses.end(), draft.poses.begin(), draft.poses.end());
    return finish(with, arc, plane, poses);
  });
}

std::string why_no_plane(const Problem& problem, int surface) {
  const Surface& arc = surface_of(problem, surface);
  const auto [enters, bears] = nearest(problem, arc);
  std::string out;
  if (bears != nullptr) out = bears_on_edges(problem, arc, *bears);
  if (enters != nullptr) {
    if (!out.empty()) out += "; ";
    const std::optional<Obstacle> found = obstacle(problem.section, *enters, along(problem, arc, *enters));
    out += would_do(problem, arc, *enters) +
           (found ? meets(problem, *enters, *found) : "cannot get in without cutting wood that must stay");
  }
  if (!out.empty()) return out;
  const PlaneKind kind = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  return std::string("the kit has no ") + word(kind) + " for a " + named_curve(problem, arc);
}

std::optional<std::string> what_bears_on_edges(const Problem& problem, int surface, int plane) {
  const Surface& arc = surface_of(problem, surface);
  if (stands_off(problem, arc, problem.plane(plane)) <= allowances(problem).front()) return std::nullopt;
  const auto [enters, bears] = nearest(problem, arc);
  // That plane is not the one a maker would think of.
  if (enters != nullptr || bears == nullptr || bears == &problem.plane(plane)) return std::nullopt;
  return bears_on_edges(problem, arc, *bears);
}

std::optional<std::string> what_keeps_out(const Problem& problem, int surface) {
  const Surface& arc = surface_of(problem, surface);
  const Plane* enters = nearest(problem, arc).enters;
  if (enters == nullptr) return std::nullopt;
  const bool only_its = is_its(problem, arc, *enters);
  for (const Plane& plane : problem.kit.planes) {
    if ((!only_its || is_its(problem, arc, plane)) && makes_arc(problem, surface, plane)) return std::nullopt;
  }
  std::vector<Pose> poses = along(problem, arc, *enters);
  const std::size_t all = poses.size();
  std::erase_if(poses, [&](const Pose& pose) { return !obstacle(problem.section, *enters, {pose}); });
  const std::optional<Obstacle> found = obstacle(problem.section, *enters, poses);
  if (!found) return std::nullopt;
  return would_do(problem, arc, *enters) + (poses.size() < all ? "toward an end of it " : "") +
         meets(problem, *enters, *found);
}

}  // namespace arrisline
