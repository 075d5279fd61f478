// Rule 4 of docs/model.md. Shown by tests/replay.
#include "replay/riding.h"

#include <algorithm>
#include <cmath>

#include "replay/seating.h"
#include "wording/figures.h"

namespace arrisline::replaying {

// A sole rides in an arc that lies within this of where an earlier cut left it.
static constexpr double kCutTo = 0.05;
// The sole lies along the arc of the target where it is this near: as near as counts as touching.
static constexpr double kAlong = 0.02;
// Of the sole, for riding in its own arc and for turning on from one pose to the next.
static constexpr double kOverlapDegrees = 10;
// With a plane of another radius the soles do not overlap; the step from tilt to tilt is limited instead.
static constexpr double kMostStepDegrees = 30;
// Centres and radii that are meant to be the same agree this well: what rule 1 allows in depth.
static constexpr double kSameCircle = 0.01;
// Angles are computed from figures exact to 1e-12; this lets a step of exactly 30° pass.
static constexpr double kAngleSlack = 1e-6;
// The sole is looked at every quarter of a degree, so 10° are 40 looks.
static constexpr double kLookDegrees = 0.25;

static Point sole_centre(const Plane& plane, const Pose& pose) {
  const double side = plane.kind == PlaneKind::round ? 1 : -1;
  return pose.at + (side * plane.radius) * outward(pose.tilt);
}

static bool same_circle(const Edge& arc, Point centre, double r) {
  return arc.is_arc() && distance(arc.centre, centre) <= kSameCircle &&
         std::abs(radius(arc) - r) <= kSameCircle;
}

// Degrees of the sole that lie along an arc of the target where an earlier cut about its centre has been.
static double degrees_in_own_arc(const Standing& wood, const Loop& target, const Plane& plane,
                                 const Pose& pose) {
  const Point centre = sole_centre(plane, pose);
  std::vector<Edge> arcs, cut;
  for (const Edge& edge : target)
    if (same_circle(edge, centre, plane.radius)) arcs.push_back(edge);
  for (const Swept& swept : wood.taken())
    if (swept.plane->kind == plane.kind && same_circle(swept.bounds.front(), centre, plane.radius))
      cut.push_back(swept.bounds.front());
  const double half = to_degrees(plane.half_arc());
  const int looks = static_cast<int>(std::ceil(2 * half / kLookDegrees));
  int along = 0;
  for (int i = 0; i < looks; ++i) {
    const double angle = to_radians(half * (2 * (i + 0.5) / looks - 1));
    const double u = plane.radius * std::sin(angle);
    const Point p = from_sole_frame(pose, {u, sole_height(plane, u)});
    if (distance(p, arcs) <= kAlong && distance(p, cut) <= kCutTo) ++along;
  }
  return 2 * half * along / looks;
}

// Whether `later` is `earlier` turned about `centre`, given in mm of the section.
static bool turned_about(const Pose& earlier, const Pose& later, Point centre) {
  return distance(to_sole_frame(earlier, centre), to_sole_frame(later, centre)) <= kSameCircle;
}

static bool follows(const Loop& target, const Plane& plane, const Pose& earlier, const Pose& later) {
  const double step = std::abs(wrap_degrees(later.tilt - earlier.tilt));
  const double overlap = 2 * to_degrees(plane.half_arc()) - step;
  const bool overlaps = overlap >= kOverlapDegrees - kAngleSlack;
  if (overlaps && turned_about(earlier, later, sole_centre(plane, earlier))) return true;
  return std::any_of(target.begin(), target.end(), [&](const Edge& edge) {
    if (!edge.is_arc() || !turned_about(earlier, later, edge.centre)) return false;
    const bool own = std::abs(radius(edge) - plane.radius) <= kSameCircle;
    return own ? overlaps : step <= kMostStepDegrees + kAngleSlack;
  });
}

static std::string share(double u, double width) {
  const double part = u / width;
  return (std::signbit(part) ? "" : "+") + fixed(part, 2);
}

static std::string why_not_seated(const Seating& seating, const Plane& plane) {
  const std::string what = std::string("the ") + word(plane.kind);
  if (!seating.touches) return what + " touches no wood";
  bool bears = false;
  for (const Patch& patch : seating.patches) bears = bears || !patch.guides;
  std::string out = what + " has not two arrises to ride on: ";
  if (seating.contacts.empty()) return out + "it bears on plain wood with the edge of its sole";
  out += seating.contacts.size() == 1 ? "it touches only at " : "it touches at ";
  for (std::size_t i = 0; i < seating.contacts.size(); ++i)
    out += (i > 0 ? " and " : std::string()) + share(seating.contacts[i], plane.width);
  return out + " of its width from the middle" + (bears ? ", beside an edge on plain wood" : "");
}

Riding judge_riding(const Standing& wood, const Loop& target, const Cut& cut) {
  Riding out;
  const std::string what = std::string("the ") + word(cut.plane.kind);
  const Seating seating = seat(wood, cut.plane, cut.poses.front());
  out.imbalance = seating.imbalance;
  const bool two =
      seating.two_arrises;  // no contact leaves the sole, so none is more than 0.5 out of balance
  const double own = degrees_in_own_arc(wood, target, cut.plane, cut.poses.front());
  const bool in_arc = own >= kOverlapDegrees;
  if (!two && !in_arc) {
    out.faults.push_back(why_not_seated(seating, cut.plane));
  } else if (cut.rides == Rides::two_arrises && !two) {
    out.faults.push_back(what + " is said to ride on two arrises, but rides only in its own arc");
  } else if (cut.rides == Rides::own_arc && !in_arc) {
    out.faults.push_back(what + " is said to ride in its own arc, but rides only on two arrises");
  } else if (cut.rides != Rides::two_arrises && cut.rides != Rides::own_arc) {
    out.faults.push_back(what + " is not said to ride on two arrises or in its own arc");
  }
  for (std::size_t i = 1; i < cut.poses.size(); ++i) {
    const auto earlier_end = cut.poses.begin() + static_cast<std::ptrdiff_t>(i);
    const bool guided = std::any_of(cut.poses.begin(), earlier_end, [&](const Pose& earlier) {
      return follows(target, cut.plane, earlier, cut.poses[i]);
    });
    if (!guided)
      out.faults.push_back("pose " + std::to_string(i + 1) +
                           " does not turn on from an earlier one about the centre of its sole or of an arc");
  }
  return out;
}

}  // namespace arrisline::replaying
