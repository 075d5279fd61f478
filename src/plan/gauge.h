// Gauge lines: what is struck for a flat cut, and the cut as it comes out when the lines are rounded.
#pragma once

#include <optional>
#include <vector>

#include "plan/problem.h"
#include "plan/wood.h"

namespace arrisline {

inline constexpr double kLine = 1e-5;       // mm within which a piece lies along a line
inline constexpr double kOneFigure = 1e-6;  // mm within which two figures are one
inline constexpr double kAlong = 1e-6;      // sine of the angle below which a line runs upright or level

/// Position of p as gauged from a side of the blank, mm.
double gauged(const Section& section, Side side, Point p);
/// The way a point moves when the figure gauged from that side grows.
Point growth(Side side);

/// The side that a line on a surface running along `d` is gauged from: on an upright one the face, on a level
/// one the edge, or the side opposite where the plane stands at that. Nothing on a slanted one.
std::optional<Side> side_along(Point d, double tilt);

/// Total length of the wood's boundary along the line u = `at` of the sweep's frame, above v = `floor`;
/// `top`, where given, is set to its highest point.
double along_side(const Wood& wood, const Sweep& sweep, double at, double floor, Point* top);

/// The lines that lay out a flat cut, from the wood before and after it. Square cuts give their floor and
/// the walls that were not there before; slanted ones the two lines where sole or side leave the wood.
/// `on_wall` tells that a side runs along a wall already cut.
struct LaidOut {
  std::vector<GaugeLine> lines;
  std::vector<int> ends;  // slanted cuts, beside `lines`: 0 the sole meets the line, ±1 the side at ±u does
  bool on_wall = false;
  std::vector<bool> exactly;  // beside `lines` where given: not rounded at all
};
LaidOut lay_out(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses,
                const Wood& before, const Wood& after);

/// One figure on the gauge, to kOneFigure.
bool same_figure(const GaugeLine& a, const GaugeLine& b);

/// The lines that a square flat cut needs in any order of the cuts: its floor, and the walls that stand on
/// the finished wood and that nothing else makes (see stands_at() in figures.h). Without `finished`, the
/// floor alone.
std::vector<GaugeLine> certain_lines(const Problem& problem, const Plane& plane,
                                     const std::vector<Pose>& poses, const Wood* finished);

/// Divisions to which lines are rounded, mm.
struct Divisions {
  double coarse = 0;
  double fine = 0;  // of lines that lay a rail
};
Divisions divisions(const Kit& kit, const PlanOptions& options);

/// Rounds each line toward the wood (so that less is taken), fills in `set` of each line and returns the
/// poses that the rounded lines give. A line that cannot move without cutting into the target keeps its exact
/// figure.
std::vector<Pose> set_to_lines(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses,
                               LaidOut& laid_out, const Divisions& divisions);

}  // namespace arrisline
