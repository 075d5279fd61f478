// The gauge lines of a plan, each once, in the order they are first needed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/plan.h"

namespace arrisline {

/// A line and the side of the blank it is struck on.
struct StruckLine {
  Side from = Side::edge;
  double at = 0;   // mm, the exact figure
  double set = 0;  // mm
  Side on = Side::face;
  bool fine = false;
  bool rail = false;      // fine since it lays a rail
  bool finer = false;     // as of GaugeLine
  int after = 0;          // the last cut that takes down the surface there before; 0: it is the blank's own
  std::vector<int> cuts;  // that work to it
  int wall_of = 0;        // the cut on whose wall or floor, inside the wood, it is struck; 0: on none

  /// A cut that works to it where an earlier one has left a corner: that is there to be seen.
  struct AtCorner {
    int cut = 0;
    int left_by = 0;
  };
  std::vector<AtCorner> corners;

  /// What the stock of the gauge bears on, and how far from there: `from` and `set`, unless that surface is
  /// gone by then.
  struct Gauged {
    Side from = Side::edge;
    double set = 0;   // mm
    int left_by = 0;  // the cut that left that surface; 0: it is the blank's own
  } gauged;
};

/// Where the line has to be seen for that cut to work to it: at a corner that this cut has left; 0: at none.
int corner_of(const StruckLine& line, const Cut& cut);

std::vector<StruckLine> struck_lines(const Plan& plan);

/// The place of a cut's line in the list. REQUIRES: the cut and its line are of the plan the list was made
/// for.
std::size_t find_line(const std::vector<StruckLine>& lines, const Cut& cut, const GaugeLine& line);

/// "A" for the first, "Z" for the 26th, then "AA".
std::string line_letter(std::size_t index);

/// "edge", "back edge", "face", "underside".
const char* word(Side side);

}  // namespace arrisline
