// How far a finished section departs from the drawn one, element by element.
#pragma once

#include <vector>

#include "arrisline/section.h"
#include "plan/sweep.h"

namespace arrisline {

struct OffLine {
  double lost = 0;  // mm: how far the wood that remains of the target lies from the drawn line at the most
  double left = 0;  // mm: the thickest wood left on the drawn line, told off to the nearest element
};

/// One for each of Section::elements, on the blank less what the sweeps take; found to 0.001 mm. A place as
/// near to two elements counts for both. What is left is looked for on its surface.
std::vector<OffLine> off_line(const Section& section, const std::vector<Sweep>& sweeps);

}  // namespace arrisline
