// One chain walked from its start, checked against the stock, and laid into the blank's frame.
#pragma once

#include <optional>
#include <vector>

#include "section/drawing.h"

namespace arrisline {

/// A chain's end or corner this near to a side of the stock is on it, and is moved there, in mm: room for
/// decimals that a maker has rounded, and nothing a plane could tell.
inline constexpr double kOnOutline = 1e-3;

/// A straight edge, or the arc of that radius and sense (the one over 180° where `large` is set). A radius
/// too small by rounding is taken as half the chord.
Edge edge_between(Point from, Point to, Turn turn, double radius, bool large);

/// The least and the greatest that an edge reaches in x and y.
struct Reach {
  Point low;
  Point high;
};
Reach reach_of(const Edge& edge);

/// A chain in the blank's frame, running so that the wood lies to its left, from one point of the outline to
/// another. `source[i]` is the element of edges[i], −1 where it lies along the outline.
struct Path {
  std::vector<Edge> edges;
  std::vector<int> source;
};

/// A straight edge that lies on one of the stock's sides.
bool runs_along_outline(double width, double thickness, const Edge& edge);

/// An edge as its chain's side is read, in the blank's frame with the wood to its left; or the other way
/// about: done twice it gives the edge back.
Edge turned_round(double width, double thickness, Chain side, Edge edge);

/// Walks the chain. Nothing, with the reasons reported, where it leaves the stock, ends off the outline or on
/// the wrong side of its start, or cuts nothing. Stretches along the outline at either end are left off.
std::optional<Path> walk(const Drawing& drawing, const DrawnChain& chain, Mistakes& mistakes);

/// Where a point of the outline stands on the way round it, from (0, 0) along the face; in [0, 2W + 2T).
double along_outline(double width, double thickness, Point p);

/// Appends to the path the blank's outline from where it ends to another place on the outline, in the sense
/// of the face from the working edge to the back edge. REQUIRES: a path of one edge at least.
void follow_outline(double width, double thickness, Point to, Path& path);

}  // namespace arrisline
