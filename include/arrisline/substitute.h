// The nearest profile that a kit can cut, for one that it cannot.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/plan.h"

namespace arrisline {

/// One figure of the drawing that is another now. Lengths in mm.
struct Redrawn {
  // Where the chain that begins with the element starts; of an arc; the move out or in; the move down or up.
  enum class What { start, radius, across, down };
  int element = 0;  // index into Section::elements of the drawing
  What what = What::radius;
  double drawn = 0;
  double now = 0;
  bool back = false;  // of a move: in, or up
};

struct Substitute {
  Section section;               // what `profile` reads as
  std::string profile;           // its text, in the unit of the options
  double departure = 0;          // mm: the greatest distance from a point of the one line to the other
  std::vector<Redrawn> changes;  // element by element
  Plan plan;                     // the first found of it; make_plan() may find a better one
};

struct Redrawing {
  std::optional<Substitute> nearest;
  bool left_off = false;  // by the limit or an interruption, before everything was tried
};

/// For a plan that is a no: of the profiles tried whose line lies within `allow` mm of the drawn one, the one
/// that departs least and of which make_plan() makes a plan. Arcs get radii of the kit's planes, too short
/// ones the length of the sole as well, and flats that no plane gets at widths of its flat ones; joints then
/// move so that the line departs least, flats staying level or upright and smooth joints smooth; or stay
/// where they are, smooth or not; or move from there too, where smooth it could not be cut or would lie more
/// than twice as far off. Where such a line cannot be cut but one with the same figures can, those between
/// are tried. First only what the reasons name changes so, and arcs that run smooth into that; then any arc,
/// where the line then lies nearer, without those between. What lies within 1/16 mm is looked for first, then
/// within twice as much, and so on, so that with a larger `allow` none is found that lies farther off, unless
/// the limit comes in between: all of it takes three quarters of what is left of it at most. REQUIRES:
/// `refused` is infeasible, made with these options.
Redrawing nearest_profile(const Plan& refused, const Kit& kit, const PlanOptions& options, double allow);

}  // namespace arrisline
