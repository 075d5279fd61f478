// How far into, or away from, an outline some edges reach.
#pragma once

#include <functional>
#include <limits>
#include <span>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline::replaying {

struct Depth {
  double mm = 0;
  Point at;
};

/// The greatest distance from `outline` of any point of `edges` that `counts`, and where; `floor` where no
/// such point is farther than it. Never overstated, and short of the truth by at most 1e-4 mm. REQUIRES:
/// `counts` changes only where an edge crosses the outline, which is not empty.
Depth greatest_distance(std::span<const Edge> edges, std::span<const Edge> outline,
                        const std::function<bool(Point)>& counts, Depth floor = {});

inline constexpr double kEndless = std::numeric_limits<double>::infinity();

struct Nearest {
  double mm = kEndless;            // from p to the nearest of the edges
  std::vector<const Edge*> edges;  // those that may be nearest to some point within `reach` of p
};

std::vector<const Edge*> each_of(std::span<const Edge> edges);
Nearest nearest_about(const std::vector<const Edge*>& edges, Point p, double reach);

}  // namespace arrisline::replaying
