// The planes a maker owns, and where one stands when it cuts.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

enum class PlaneKind { rebate, plough, bench, hollow, round, shaped, scraper };

/// The word for the kind in files, plans and cut lists: "rebate", "plough", …
const char* word(PlaneKind kind);

/// The part of a plane wider than its sole: `overhang` mm beyond each side of the sole, from `above` mm
/// above the middle of the sole upward. It must clear the wood and cuts nothing.
struct Body {
  double overhang = 0;
  double above = 0;
};

/// One plane. Lengths in mm.
///
/// The sole is v = f(u), |u| ≤ width/2, u across the sole and v out of the wood:
///   flat kinds (rebate, plough, bench)  f = 0
///   round (convex, cuts coves)          f = r − √(r² − u²)
///   hollow (concave, cuts beads)        f = √(r² − u²) − r
///   shaped                              `sole`, a chain of edges in (u, v), u rising strictly from
///                                       −width/2 to width/2, lowest point v = 0
/// A scraper has no sole. REQUIRES: 0 < width ≤ 2·radius for hollows and rounds.
struct Plane {
  PlaneKind kind = PlaneKind::rebate;
  std::string label;          // how the maker calls it: "hollow 6", "rebate 3/4"
  double width = 0;           // of the sole; 0 for a scraper
  double radius = 0;          // hollows and rounds; 0 for the rest
  std::optional<int> number;  // hollows and rounds that carry one
  std::optional<Body> body;
  std::vector<Edge> sole;  // shaped planes only, in (u, v)
  double reach = 127.0;    // plough: farthest the fence goes from the near side of the iron, 5 in
  double deep = 19.05;     // plough: deepest groove, 3/4 in
  bool turned = false;     // shaped: as it stands to a blank turned end for end, its sole mirrored

  bool is_flat() const {
    return kind == PlaneKind::rebate || kind == PlaneKind::plough || kind == PlaneKind::bench;
  }
  bool is_curved() const { return kind == PlaneKind::hollow || kind == PlaneKind::round; }
  /// Half the arc of a curved sole in radians: asin(width / 2r).
  double half_arc() const;
};

/// Two cuts are made with one and the same plane.
bool same_plane(const Plane& a, const Plane& b);

/// A shaped plane as it stands to a blank turned end for end; of a sole that is its own mirror image nothing.
std::optional<Plane> turned(const Plane& plane);

/// f(u) of the sole in mm; u beyond ±width/2 is taken at the nearer edge.
double sole_height(const Plane& plane, double u);

/// How far an arc of radius r rises over a chord, u its half, in mm; r where the chord is longer than the
/// circle is wide.
double sagitta(double r, double u);

/// Where a plane stands: `at` is the middle of the sole, `tilt` its lean in degrees from upright on the
/// face, positive toward the working edge (90: bearing on the working edge, −90: on the back edge,
/// 180: on the underside).
struct Pose {
  Point at;
  double tilt = 0;

  friend bool operator==(const Pose&, const Pose&) = default;
};

/// Unit vector across the sole, e = (cos tilt, −sin tilt).
Point across(double tilt);
/// Unit vector out of the wood along the plane, a = (−sin tilt, −cos tilt).
Point outward(double tilt);
/// The same, told from the unit vector across the sole.
inline Point outward_of(Point e) {
  return {e.y, -e.x};
}
/// The tilt whose outward vector points along n (n need not be a unit vector), in (−180, 180].
double tilt_of(Point n);

/// Coordinates (u, v) of p in the frame of the pose: p = at + u·across + v·outward.
Point to_sole_frame(const Pose& pose, Point p);
Point from_sole_frame(const Pose& pose, Point uv);

/// The sole as edges of the section, u rising. REQUIRES: not a scraper.
std::vector<Edge> sole_edges(const Plane& plane, const Pose& pose);

}  // namespace arrisline
