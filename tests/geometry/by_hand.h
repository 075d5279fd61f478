// Edges whose figures can be told by hand.
#pragma once

#include <cmath>

#include "arrisline/geometry.h"
#include "geometry/measured.h"

namespace arrisline::by_hand {

inline constexpr Point kCentre{3, 4};

inline Edge line(Point from, Point to) {
  return {from, to, {}, Turn::straight};
}

/// The arc about (3, 4) from its rightmost point over so many degrees, counter-clockwise where they are
/// positive.
inline Edge arc(double radius, double degrees) {
  const double a = to_radians(degrees);
  return {kCentre + Point{radius, 0}, kCentre + Point{radius * std::cos(a), radius * std::sin(a)}, kCentre,
          degrees > 0 ? Turn::left : Turn::right};
}

/// Where a place of Measured lies, as a share of the length of the edge.
inline double share_of_length(const Edge& edge, double t) {
  const Edge up_to = Measured(edge).piece(0, t);
  return edge.is_arc() ? sweep(up_to) / sweep(edge) : length(up_to) / length(edge);
}

}  // namespace arrisline::by_hand
