// The sole of a shaped plane from the section that it leaves. The chain runs from the fence side to the
// working edge with the plane upright; seen from the plane, u rises toward the fence and v out of the wood.
// Shown by tests/text/kit_sole_test.cpp.
#include <algorithm>
#include <cmath>

#include "section/shapes.h"
#include "section/walk.h"
#include "text/kit_planes.h"

namespace arrisline {

/// Rounding allowed where an arc begins or ends upright, in mm.
static constexpr double kRounding = 1e-9;
/// No part of a sole is shorter, in mm: the same as of a profile.
static constexpr double kShortest = 1e-6;

bool shape_sole(PlaneText& text, const std::vector<Part>& parts, const std::vector<Place>& places,
                Mistakes& mistakes) {
  std::vector<Edge> chain;
  Point here;
  bool sound = true;
  double deepest = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Point next = here + parts[i].move;
    const Edge edge = edge_between(here, next, parts[i].turn, parts[i].radius, parts[i].large);
    const Reach reach = reach_of(edge);
    const bool runs_out =
        next.x < here.x && reach.low.x >= next.x - kRounding && reach.high.x <= here.x + kRounding;
    if (!runs_out) {
      mistakes.error(
          places[i],
          next.x == here.x && !edge.is_arc()
              ? "a shaped plane cannot have an upright part in its sole; let it lean, or leave it out"
              : "a shaped plane's sole must go out all the way; write each element with 'out'");
      sound = false;
    }
    if (runs_out && distance(here, next) < kShortest) {
      mistakes.error(places[i], "this element is shorter than 0.000001mm; leave it out");
      sound = false;
    }
    deepest = std::max(deepest, reach.high.y);
    chain.push_back(edge);
    here = next;
  }
  if (!sound) return false;
  const double width = -here.x;
  if (width > 10000) {
    mistakes.error(text.place,
                   "the sole of a shaped plane is at most 10 m wide; check the figures and their unit");
    return false;
  }
  const auto in_sole = [&](Point p) { return Point{p.x + width / 2, deepest - p.y}; };
  std::reverse(chain.begin(), chain.end());
  for (Edge& edge : chain) {
    // Running the other way and turning y over each change the sense of turn, and so keep it.
    std::swap(edge.from, edge.to);
    edge.from = in_sole(edge.from);
    edge.to = in_sole(edge.to);
    if (edge.is_arc()) edge.centre = in_sole(edge.centre);
  }
  chain.front().from.x = -width / 2;
  chain.back().to.x = width / 2;
  text.plane.width = width;
  text.plane.sole = std::move(chain);
  return true;
}

}  // namespace arrisline
