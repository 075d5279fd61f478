// A smooth curve as arcs that meet in common tangents.
#pragma once

#include <functional>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// A curve from t = 0 to t = 1 that turns one way throughout, by more than 0 and at most 180° in all.
struct SmoothCurve {
  std::function<Point(double)> at;         // mm
  std::function<Point(double)> direction;  // of travel, of any length but 0
};

struct FittedArcs {
  std::vector<Edge> edges;  // arcs, each beginning where and in the direction in which the one before ends
  double greatest = 0;      // mm: how far the curve lies from them at most, as measured on 2049 points of it
};

/// The curve as pairs of arcs. Every pair begins and ends on the curve, with the curve's direction there, so
/// that whatever met the curve smoothly meets the arcs so. (1) No measured point is farther off than
/// `tolerance`. (2) The pairs are as few as pairs taken one after another, each as long as it may be, can be;
/// (3) so many made, they are laid out anew with the least tolerance for which that number does. A curve that
/// is an arc becomes one. REQUIRES: tolerance of at least a millionth of the curve's length.
FittedArcs arcs_through(const SmoothCurve& curve, double tolerance);

}  // namespace arrisline
