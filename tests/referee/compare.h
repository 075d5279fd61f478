// How far the planner's wood is from the exact: areas, boundaries, and bounds of a greatest distance.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "plan/wood.h"
#include "referee/region.h"

namespace arrisline::referee {

/// The area in one of the two and not in the other, mm²; negative where the pieces of the wood do not link
/// into outlines that bound something.
double symmetric_difference(const Region& exact, const Wood& wood);

std::vector<Edge> edges_of(const Region& region);

/// Not so along a fin or a crack no wider than rounding, where the same is on both sides. Its end is looked
/// at from a little way along: straight beside it may lie another such fin.
bool parts_wood_from_air(const Region& region, const Edge& edge, double t, double beside = 1e-6);

/// The farthest that any of some points of the pieces is from the boundary of the exact wood, and the other
/// way.
double apart(const Region& exact, const Wood& wood);

struct Bounds {
  double low = 0, high = 0;
};

/// Of a distance over the pieces: what some points show, and what no point can exceed, each being within
/// `steps` steps of one that was asked. `value` is kNone where the point does not count; elsewhere it changes
/// by no more than the way gone, so that points too near to a low one to change anything are passed over.
inline constexpr double kNone = -1e9;
template <class Value>
Bounds distances(const std::vector<Edge>& pieces, double steps, const Value& value) {
  constexpr double kStep = 0.02;
  Bounds out;
  for (const Edge& edge : pieces) {
    const double whole = length(edge);
    const int count = std::max(1, static_cast<int>(std::ceil(whole / kStep)));
    const double step = whole / count, beyond = steps * step + 1e-6;
    for (int i = 0; i <= count;) {
      const double off = value(edge, static_cast<double>(i) / count);
      out.low = std::max(out.low, off);
      out.high = std::max(out.high, off + beyond);
      const double idle = off == kNone ? 0 : std::min(out.low, out.high - beyond) - off;
      i += std::max(1, static_cast<int>(std::floor(idle / step)));
    }
  }
  return out;
}

/// How far `found` is outside of the bounds.
inline double outside(const Bounds& bounds, double found) {
  return std::max({0.0, bounds.low - found, found - std::max(bounds.high, bounds.low)});
}

}  // namespace arrisline::referee
