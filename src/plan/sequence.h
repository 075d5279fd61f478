// One cut in its turn: what it finds, takes and costs there.
#pragma once

#include <optional>
#include <vector>

#include "plan/effort.h"
#include "plan/gauge.h"
#include "plan/problem.h"
#include "plan/thickness.h"
#include "plan/touch.h"
#include "plan/wood.h"

namespace arrisline {

/// One draft in its place, every rule that concerns it checked on the wood as it then stands.
struct Step {
  Draft draft;       // a curved draft's poses begin at its start
  int taken_up = 0;  // Problem::taken_up() of its plane
  LaidOut laid_out;
  Rides rides = Rides::gauge_line;
  Guidance guidance;  // two arrises only
  LieSet may_lie;     // the ways the blank may lie
  Lies lies = Lies::face_up;
  double removed = 0;
  Strokes strokes;
  double wear = 0;        // of a sole that is not flat: wood taken, in squares of its width
  bool ill_laid = false;  // rides on two arrises, but not well
  int settings = 0;
  double effort = 0;  // what it adds
};

struct Sequence {
  std::vector<Step> steps;
  double effort = 0;
  double imbalance = 0;  // sum over the curved cuts, to settle ties
  Thickest left;
};

/// Strokes a pose takes on this wood, not rounded.
Strokes strokes_of(const Problem& problem, const Sweep& sweep, const Wood& wood);

/// The poses of a curved draft reordered to begin at `start` and turn outward from it; `start` itself is put
/// in where it is none of them. One that rule 4 reaches only by way of another comes after it; one that it
/// does not reach at all comes last.
std::vector<Pose> poses_from(const Problem& problem, const Draft& draft, double start);

/// Whether rule 4 lets the plane get to each pose of the curved draft from one of those before it.
bool all_follow(const Problem& problem, const Draft& draft);

/// The draft on this wood, every rule that concerns it checked: one step for each tilt it may start at. None
/// where a rule forbids it there: it takes too little, has nothing to ride on, or cannot be held. `done` are
/// the drafts already cut. How the blank lies and what a step costs beside the cut before it are left
/// open: `settings` and `effort` are 0.
std::vector<Step> stand(const Problem& problem, const Draft& draft, const std::vector<const Draft*>& done,
                        const Wood& wood);

/// How the blank lies at the start, face up, or after `previous`.
Lies lies_after(const Step* previous);

/// The ways to lay the blank for the step after `previous` (null at the start) of which one leads to an order
/// of least effort: as it lies already where that serves, since what is not turned now can be turned later.
LieSet ways_to_lay(const Step& step, const Step* previous);

/// Fills in what the step costs after `previous` (null at the start) with the blank lying so.
void settle(const Problem& problem, Step& step, const Step* previous, Lies lies);

/// Both together: the draft made the next step after `previous`, at the start that costs least, and its wood
/// taken away.
std::optional<Step> take(const Problem& problem, const Draft& draft, const std::vector<const Draft*>& done,
                         const Step* previous, Wood& wood);

/// The cuts one after another as they are given, each at the start that costs least there, with the weight of
/// the planes they use; nothing where one of them breaks a rule.
std::optional<Sequence> as_given(const Problem& problem, const std::vector<Draft>& drafts);

}  // namespace arrisline
