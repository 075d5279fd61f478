// The order of the cuts: what each finds, takes and costs in its turn, and the order that costs least.
#pragma once

#include <optional>
#include <vector>

#include "plan/gauge.h"
#include "plan/problem.h"
#include "plan/thickness.h"
#include "plan/touch.h"
#include "plan/wood.h"

namespace arrisline {

struct Strokes {
  double plain = 0;
  double counted = 0;
};

/// One draft in its place, every rule that concerns it checked on the wood as it then stands.
struct Step {
  Draft draft;  // a curved draft's poses begin at its start
  LaidOut laid_out;
  Rides rides = Rides::gauge_line;
  Guidance guidance;  // two arrises only
  Lies lies = Lies::face_up;
  double removed = 0;
  Strokes strokes;
  double wear = 0;  // of a sole that is not flat: wood taken, in squares of its width
  int settings = 0;
  double effort = 0;  // what it adds
};

struct Sequence {
  std::vector<Step> steps;
  double effort = 0;
  double imbalance = 0;  // sum over the curved cuts, to settle ties
  double by_flat = 0;
  Thickest left;
  double left_area = 0;
};

/// Strokes a pose takes on this wood, not rounded; `counted` has the slow ones as often as
/// docs/how-it-plans.md says.
Strokes strokes_of(const Problem& problem, const Plane& plane, const Pose& pose, const Wood& wood);

/// Makes the draft the next step after `previous` (null at the start), taking its wood away. Nothing where a
/// rule forbids it there: it takes too little, has nothing to ride on, or cannot be held. `done` are the
/// curved drafts already cut.
std::optional<Step> take(const Problem& problem, const Draft& draft, const std::vector<const Draft*>& done,
                         const Step* previous, Wood& wood);

/// The order of least effort among all orders of the drafts, when there are few; among the orders that keep
/// the flat cuts from the back wall outward otherwise. Nothing where no order passes the rules.
std::optional<Sequence> best_order(const Problem& problem, std::vector<Draft> drafts, bool thorough);

}  // namespace arrisline
