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
  bool fine = false;  // as of GaugeLine
  bool rail = false;
  bool finer = false;
  int after = 0;          // the last cut that takes down the surface there before; 0: it is the blank's own
  std::vector<int> cuts;  // that work to it

  /// What the stock of the gauge bears on, and how far from there: `from` and `set`, unless that surface is
  /// gone by then.
  struct Gauged {
    Side from = Side::edge;
    double set = 0;   // mm
    int left_by = 0;  // the cut that left that surface; 0: it is the blank's own
  } gauged;
};

std::vector<StruckLine> struck_lines(const Plan& plan);

/// The place of a cut's line in the list. REQUIRES: the cut and its line are of the plan the list was made
/// for.
std::size_t find_line(const std::vector<StruckLine>& lines, const Cut& cut, const GaugeLine& line);

/// "A" for the first, "Z" for the 26th, then "AA".
std::string line_letter(std::size_t index);

/// "edge", "back edge", "face", "underside".
const char* word(Side side);

}  // namespace arrisline
