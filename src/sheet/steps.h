// What there is to see of each cut of a plan: the wood before and after, where the sole ends, what it rides
// on.
#pragma once

#include <string>
#include <vector>

#include "arrisline/plan.h"
#include "sheet/outline.h"

namespace arrisline {

/// A gauge line of a cut: an x of the section where it is gauged from an edge, a y where from the face or the
/// underside.
struct GaugeMark {
  bool upright = false;
  double at = 0;       // as set, mm in the section's frame
  std::string letter;  // as the cut list calls it
  double set = 0;      // from the side it is gauged from, mm
};

struct StepView {
  std::size_t cut = 0;  // index into Plan::cuts
  Region before;
  Region after;
  std::vector<std::vector<Edge>> soles;  // at each pose, u rising; none for a scraper
  std::vector<Point> rails;  // where a sole on two arrises bears as it is set down, its pose already there
  std::vector<GaugeMark> marks;
};

/// Of every cut in order, on the exact figures of the plan. A scraper takes what is above the target.
std::vector<StepView> steps_of(const Plan& plan);

}  // namespace arrisline
