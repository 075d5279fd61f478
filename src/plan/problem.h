// One planning problem: the target with what has to be cut singled out, and the drafts of cuts that the
// planner chooses among.
#pragma once

#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "arrisline/plan.h"
#include "plan/effort.h"
#include "plan/lie_set.h"
#include "plan/sweep.h"
#include "plan/wood.h"

namespace arrisline {

/// How far a draft may stray into the target by rounding: far below the 0.01 mm that counts as a gouge.
inline constexpr double kExact = 1e-5;
/// Two circles are one where centres and radii agree this well; beyond it a sole turns about the arc's centre
/// and not its own, and does not ride in that arc. Just under the 0.01 mm by which the rules tell them apart.
inline constexpr double kSameCircle = 0.009;
/// Least area a cut must take to be worth taking up a plane, mm²; the rule asks for 0.01.
inline constexpr double kLeastCut = 0.02;

/// One edge of the target that has to be cut, or arcs of one circle that go on from each other.
struct Surface {
  int edge = 0;  // index into Section::target
  int last = 0;  // likewise: of the arcs the last
  Edge line;     // all of it
  bool arc = false;
  bool bead = false;      // arc with its centre in the wood
  double tilt = 0;        // of a flat: the tilt at which a sole lies along it
  double lo = 0, hi = 0;  // of an arc: tilts at which a sole's middle touches its ends, lo < hi, not wrapped
};

struct Problem {
  const Section& section;
  const Kit& kit;
  const PlanOptions& options;
  Weights weights;
  Loop blank;
  std::vector<Surface> surfaces;
  /// Shaped planes of the kit as they stand to a blank turned end for end, each with its index in the kit.
  /// They come after the kit's in the indices of drafts.
  std::vector<std::pair<int, Plane>> turned = {};
  /// Planes of other radii may make an arc although one that matches it can: it is guided badly or not at
  /// all.
  bool other_radii = false;
  /// A flat beside an arc may wait until it is cut, and only where one does is looked: nothing else serves.
  bool hold_back = false;
  /// Flats may finish an arc although some hollow or round stands on it: none that does can be guided.
  bool facets_too = false;
  /// Planes of other radii turn at closer tilts than what may be left asks for: less is left then where they
  /// end.
  bool closer_tilts = false;
  /// mm: rebate planes as wide as this are left on the shelf.
  double rebates_below = std::numeric_limits<double>::infinity();

  const Edge& edge(const Surface& s) const { return s.line; }
  const Plane& plane(int index) const {
    const auto at = static_cast<std::size_t>(index);
    return at < kit.planes.size() ? kit.planes[at] : turned[at - kit.planes.size()].second;
  }
  /// Whether cuts are looked for with the plane of the kit.
  bool uses(int index) const {
    return plane(index).kind != PlaneKind::rebate || plane(index).width < rebates_below;
  }
  /// The plane that is taken up, whichever way the blank lies: an index into Kit::planes.
  int taken_up(int index) const {
    const auto at = static_cast<std::size_t>(index);
    return at < kit.planes.size() ? index : turned[at - kit.planes.size()].first;
  }
};

Problem make_problem(const Section& section, const Kit& kit, const PlanOptions& options);

inline const Surface& surface_of(const Problem& problem, int surface) {
  return problem.surfaces[static_cast<std::size_t>(surface)];
}

/// The surface edge by edge, as the section has it: where arcs of one circle are one surface, each arc.
std::vector<Surface> edges_of(const Problem& problem, const Surface& surface);

/// Index into Section::elements of the element that the surface belongs to, of several the first.
int element_of(const Problem& problem, const Surface& surface);
int element_of(const Problem& problem, int surface);
/// Those of all the elements that it belongs to.
std::vector<int> elements_of(const Problem& problem, const Surface& surface);

/// The rebate planes that are used as indices into Kit::planes, wide soles first: fewer settings side by
/// side.
std::vector<int> rebate_planes(const Problem& problem);

/// One pose, to 1e-6 mm and degrees.
bool same_pose(const Pose& a, const Pose& b);

/// A stretch of a surface, as fractions along its edge.
struct Stretch {
  int surface = 0;
  double from = 0, to = 1;
  bool nearly = false;  // a little may stay on it
};

/// Length of a flat, in mm, that may stay unclaimed by soles and sides.
inline constexpr double kUnclaimed = 0.02;

/// What some spans, as fractions, leave unclaimed of a flat of this length.
struct Bare {
  double length = 0;         // mm in all
  std::optional<double> at;  // middle of the first stretch, as a fraction, but for crumbs
};
Bare bare_of(std::vector<std::pair<double, double>> spans, double length);

/// A cut that might be made. Flats carry the stretches of flat surfaces they finish; a curved draft
/// belongs to one arc.
struct Draft {
  int plane = 0;  // Problem::plane()
  std::vector<Pose> poses;
  std::vector<Pose> otherwise;    // of a square flat: poses that take the same, the plane turned on its side
  std::vector<Stretch> finishes;  // of flat and shaped soles
  int arc = -1;                   // surface index of the arc a curved draft or a facet finishes
  std::vector<double> starts;     // curved: tilts it may start at besides those of `poses`
  double miss = 0;                // curved: how far its radius is from the arc's, mm
  bool rough = false;  // curved: it leaves work for a scraper, or stands off by too much at one tilt
  bool late = false;   // a flat that may come after curves: rails stand where it takes
};

/// Those of the draft, made one way or the other.
LieSet ways_to_lie(const Problem& problem, const Draft& draft);
/// The same as far as its own poses tell: of one that may start elsewhere too, every way that is left.
LieSet ways_by_poses(const Problem& problem, const Draft& draft);
/// Whether the draft, for which the blank may lie so, is a flat that may come after curves: held back for
/// rails, or one that finishes a part of the target, the blank not face up, so that for curves after it the
/// blank would be turned back.
bool may_come_late(const Problem& problem, const Draft& draft, LieSet may_lie);

/// Takes the wood of all the drafts' poses.
void cut_all(const Problem& problem, const std::vector<Draft>& drafts, Wood& wood);

/// Upright on a side of the blank, as gauge lines and fences want it, to 1e-6 degrees.
bool is_square(double tilt);

/// Degrees that a plane can lean back over the fence.
inline constexpr double kOverFence = 60;

/// How the blank can lie on the board for this plane to stand at all these tilts; a shaped one is run in one
/// direction only. A plane leans out over the free edge until it lies on its side. None where the blank has
/// to be turned between the tilts.
LieSet all_ways_to_lie(const Plane& plane, std::span<const Pose> poses);
/// The likeliest of them, and those in which the plane neither leans over the fence nor reaches to it: ways
/// that a maker takes.
LieSet ways_to_lie(const Problem& problem, const Plane& plane, std::span<const Pose> poses);

/// The pose of a hollow, a round or a flat sole that rests on the arc at this tilt.
Pose pose_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double tilt);

/// The pose of a plane of another radius that bears on the arc at the place `contact` (the tilt of the arc's
/// normal there) with some part of its sole, leaning at `tilt`. REQUIRES: a round of less radius than the
/// arc, or a hollow of more.
Pose leaning_pose(const Problem& problem, const Surface& arc, const Plane& plane, double contact,
                  double tilt);

/// The place where such a plane bears; of any other the tilt itself.
double contact_of(const Problem& problem, const Surface& arc, const Plane& plane, const Pose& pose);

/// The pose at which a curved draft starts at this tilt: its own there, or else resting on the arc.
Pose start_pose(const Problem& problem, const Draft& draft, double tilt);

/// Flat cuts with a side or an end in every place that a corner of the target suggests.
std::vector<Draft> flat_drafts(const Problem& problem);

/// A flat cut with its wall side at `wall` (a point of the section; the plane lies on the `open` side, −1:
/// toward −u) and its floor through `floor` along the tilt, or as low as the target lets it where that is
/// higher. Poses are set side by side toward the open side until the blank ends. Empty where the cut would
/// take nothing or reaches no floor.
std::vector<Pose> flat_cut(const Problem& problem, const Plane& plane, double tilt, double wall_u, int open,
                           double floor_v);

/// A slanted flat at the tilt `lean`, its sole `off` mm outside the circle of the arc; set along its own line
/// clear of the target where it cannot stand over the middle. Empty where it cannot stand at all.
std::vector<Pose> chamfer_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double lean,
                                 double off);

/// The flat that takes waste at this lean of the arc's normal: of a bead a chamfer, in a cove a square cut
/// with its corner on it. Empty where the plane has no room.
std::vector<Pose> waste_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double lean);

/// Gives a square cut of a rebate plane the other poses that take the same of the blank, its sole where its
/// side is and its side where its sole is, if it has them.
void find_other_poses(const Problem& problem, Draft& draft);
/// Does so for all, and keeps one draft of each two that take the same, one upright and one on its side.
void join_alike(const Problem& problem, std::vector<Draft>& drafts);

/// Grooves side by side in place of such a cut, each of them a cut of its own since the fence is set anew.
std::vector<Pose> grooves(const Problem& problem, const Plane& plough, double tilt, double wall_u, int open,
                          double floor_v);

/// Whether a cove lies nearer to an edge than to the face or the underside. A quadrant, open to both, does
/// not.
bool is_sunk_in_edge(const Surface& arc);

/// Grooves side by side, as deep as the cove is where its normal leans so: the first with a corner of its
/// floor there, the others from it on over the open side as far as there is room. They stand square to the
/// side of the blank that the cove is sunk in. Empty where the plough has no room.
std::vector<Pose> grooves_in_cove(const Problem& problem, const Surface& arc, const Plane& plough,
                                  double lean);

/// Ways to finish the arc, the best-fitting planes first. Each is one cut, or several: with one plane where
/// the blank has to be turned between them, or each making a stretch that the other cannot get to. Where no
/// hollow or round stands on any of it, and with Problem::facets_too, ways of flats (facets.h).
std::vector<std::vector<Draft>> arc_drafts(const Problem& problem, int surface);

/// Shaped planes where their sole lies along the target: one draft for each place and way up, with the
/// surfaces it finishes whole.
std::vector<Draft> shaped_drafts(const Problem& problem);

}  // namespace arrisline
