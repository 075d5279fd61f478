// Which figures on the gauge cuts may have in common, whatever their order.
#pragma once

#include <vector>

#include "plan/gauge.h"
#include "plan/problem.h"

namespace arrisline {

/// Where the wood may have straight surfaces once something is cut.
struct Flanks {
  struct Line {
    Point at, along;
  };
  std::vector<Line> lines;
  std::vector<double> upright, level;  // x of those that stand upright, y of those that lie level
};

/// Of the blank: its sides, which no cut leaves.
Flanks flanks_of(const Loop& blank);
/// Of a cut: the soles that are flat, and the sides.
Flanks flanks_of(const std::vector<Sweep>& poses);

/// A figure that a slanted flat may come to need, and the draft on whose flank it would lie; −1 for the blank
/// and for the flat itself.
struct MaybeFigure {
  Side from = Side::edge;
  double at = 0;  // mm
  int by = -1;

  friend bool operator<(const MaybeFigure& a, const MaybeFigure& b) {
    return a.from != b.from ? a.from < b.from : a.at < b.at;
  }
};

/// The figures that a slanted flat may come to need whatever else is cut: where it meets the sides of the
/// blank, and where a corner of its sole ends in the wood. In their order.
std::vector<MaybeFigure> figures_alone(const Section& section, const Loop& blank,
                                       const std::vector<Sweep>& slanted);

/// Adds the figures that a slanted flat may come to need where it meets these flanks of the draft `by`, in
/// their order.
void add_figures(const Section& section, const std::vector<Sweep>& slanted, const Flanks& flanks, int by,
                 std::vector<MaybeFigure>& figures);

/// A side or a flat sole runs along the line.
bool stands_at(const Section& section, const Flanks& flanks, const MaybeFigure& figure);

/// Whether the slanted flats `i` and `j`, which may come to need these figures in their order, may need one
/// in common. Where the two cross neither can end in the other's line: the one cut first runs on beyond.
bool share_a_figure(const std::vector<MaybeFigure>& of_i, int i, const std::vector<MaybeFigure>& of_j, int j);

}  // namespace arrisline
