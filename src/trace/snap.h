// What a maker would have drawn: flats level or upright, lines that run on without a corner, whole divisions.
#pragma once

#include <vector>

#include "trace/chain.h"

namespace arrisline {

struct SnapOptions {
  double division = 0;            // mm, of levels and radii
  std::vector<double> preferred;  // radii, mm, taken before any division
  std::vector<double> widths;     // of grooves, mm, likewise
};

/// mm by which a line that was drawn by figures may lie farther off for what a maker would have drawn.
inline constexpr double kOffExact = 0.003;
/// mm within which a line follows what was drawn by figures.
inline constexpr double kFollowsExactly = 0.005;

/// Whether the line follows its samples so nearly that it was drawn by figures, which are not to be rounded
/// away.
bool drawn_by_figures(const Fitted& fitted, const Allowed& allowed);

/// Holds, one thing after another, whatever still lets the line follow the samples: flats level or upright,
/// joints without a corner, widths of grooves, levels of flats, radii, the other joints. Each has to lie
/// about as near to the samples as the line without it. `fitted` is left as the last line that does. Values
/// already in `held` stay.
void snap(const Samples& samples, Fitted& fitted, Held& held, const SnapOptions& options,
          const Allowed& allowed);

}  // namespace arrisline
