// How far into, or away from, an outline some edges reach.
#pragma once

#include <functional>
#include <span>

#include "arrisline/geometry.h"

namespace arrisline::replaying {

struct Depth {
  double mm = 0;
  Point at;
};

/// The greatest distance from `outline` of any point of `edges` that `counts`, and where; `floor` where no
/// such point is farther than it. Never overstated, and short of the truth by at most 1e-4 mm. REQUIRES:
/// `counts` changes only where an edge crosses the outline.
Depth greatest_distance(std::span<const Edge> edges, std::span<const Edge> outline,
                        const std::function<bool(Point)>& counts, Depth floor = {});

}  // namespace arrisline::replaying
