// The points of a tracing in their order along the line, and how far they scatter about it.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Radians by which a drawn line turns at one point, from which that is a corner and not a point of a curve.
inline constexpr double kDrawnCorner = 0.1;

/// Points along a line, in order, in mm.
struct Samples {
  std::vector<Point> points;
  std::vector<bool> filled;     // of each: put in where the tracing has a gap, so it says nothing of the line
  std::vector<double> weights;  // of each in a fit; empty: all alike
  double scatter = 0;           // standard deviation of the points square to the line, mm; 0 for drawn lines
  bool put_in_order = false;    // they were in none
  double spacing = 0;           // median distance along the line from point to point, mm
};

/// Points of a drawn line (straight from one to the next), set close enough to fit to; corners are kept.
/// A line drawn through points that scatter is taken as measured.
Samples samples_of_drawn(const std::vector<Point>& points);

/// Points that are joined straight from one to the next, whatever they look like.
Samples samples_of_joined(const std::vector<Point>& points);

/// Points measured along a line, given in any order. Those that follow the line as they stand keep their
/// order; others are put in the order of a smooth way through them.
/// REQUIRES: at least 4 points, not all alike.
Samples samples_of_measured(std::vector<Point> points);

}  // namespace arrisline
