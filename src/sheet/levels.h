// Figures that stand in a row beside what they measure, spread until none lies on another.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"

namespace arrisline {

/// A figure and the place that it measures, mm of paper along the side of the blank it stands at.
struct Level {
  double at = 0;
  double from = 0;  // where its line begins, across that side
  std::string words;
};

// mm of paper.
inline constexpr double kLevelType = 3;
inline constexpr double kLevelRow = 4.1;  // from row to row of figures

/// Which way a line of figures stands off the blank.
enum class Beside { above, below, left, right };

/// Draws a leader from each place out to its figure. Above and below the blank a figure stands like a flag on
/// its line, in as many rows as keep each line clear of the figures before it; at the sides figures stand
/// under each other. They are pushed to the right and down only as far as the room for them asks, and above
/// the blank never past its left side.
///
/// `edge` is the side of the blank they stand at; `clear` is how far off it the figures begin at least.
/// REQUIRES: levels in the order of `at`.
void add_levels(Picture& picture, const std::vector<Level>& levels, Beside beside, double edge, double clear);

/// Places as near to the wanted ones as can be had at least `apart` from each other, in their order, from
/// `low` on.
std::vector<double> stand_apart(const std::vector<double>& wanted, double apart, double low);

}  // namespace arrisline
