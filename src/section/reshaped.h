// A moulding made larger or smaller, or as it has to be on a slope.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/kit.h"
#include "section/drawing.h"

namespace arrisline {

/// What became of one stroke beside plain scaling.
struct Change {
  double meant = 0;  // mm: width of a flat, radius of an arc
  double made = 0;
  const Plane* plane = nullptr;  // whose radius it took; else a flat kept as wide as it has to be
  bool too_far = false;          // the plane is the nearest, but its radius was not taken
};

/// How much larger or smaller a plane's radius may be than an arc's for the arc to take it, of the arc's: the
/// project's choice, wide enough for any radius between two planes of a half set.
inline constexpr double kFarthestRadius = 1.0 / 3;

struct Scaled {
  Drawing drawing;
  double factor = 1;
  double greatest = 0;  // mm: a corner lies this far from where plain scaling puts it, counted from the start
  std::vector<std::optional<Change>> changes;  // for each stroke, chain by chain
  bool plainly = false;  // the stock too, since the work is not one chain from the face to edge or underside
};

struct ScaleOptions {
  std::optional<double> height;      // mm, from the highest that a member of any chain reaches to the lowest
  std::optional<double> projection;  // mm, likewise
  std::optional<double> by;
  double fillet = 0;         // mm: no flat along or square to the face becomes narrower
  const Kit* kit = nullptr;  // arcs take the nearest radii of its hollows and rounds
};

/// Scales a drawing as drawing_of() gives it. Flats that are narrower than `fillet` to begin with keep their
/// width; where the height or the projection is asked for, the other members make up for what flats keep.
/// With a kit, it may come out otherwise by what the radii ask. The wood behind the moulding stays, and the
/// stock is as thick as the usual sizes allow. REQUIRES: exactly one of height, projection and by. Nothing,
/// and why, where there is no such height, or flats that have to stay leave nothing for the rest.
std::optional<Scaled> scaled(const Drawing& drawing, const ScaleOptions& options, std::string* why);

enum class ReturnAt { foot, head };
enum class Face { down, up };  // where the face looks when the moulding hangs

struct RakeOptions {
  double slope = 0;    // degrees, above 0 and at most 60
  double corner = 90;  // degrees between the walls, in plan; 180: in one line
  ReturnAt at = ReturnAt::foot;
  Face face = Face::down;
  double tolerance = 0.1;  // mm
};

struct Raked {
  Drawing drawing;
  double greatest = 0;  // mm: of its arcs from the true curves
  double step = 0;      // mm: a step put before the first member, or added to it, to begin on the face
};

/// The moulding that runs up a slope and mitres, in an upright plane that halves the corner, with the level
/// one that goes round it. A point of the level moulding out by p and deep by y lies as far out, and deep by
/// y cos s ± p sin s cot(C/2). REQUIRES: a tolerance of at least 0.001 mm. Nothing, and why, where the work
/// is not one chain from the face to the working edge or the underside.
std::optional<Raked> raked(const Drawing& drawing, const RakeOptions& options, std::string* why);

/// The least usual thickness that is not under this one: eighths of an inch to 1, quarters to 2, halves to 4,
/// then whole inches; or whole millimetres 6, 8, 10, 12, 15, 18, 20, then fives to 50, tens. By common
/// practice, no source.
double usual_thickness(double mm, Unit unit);

}  // namespace arrisline
