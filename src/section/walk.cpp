// From relative strokes to edges on the stock. Everything happens in the reading of the chain's own side,
// where the surface it starts on is y = 0; the last step turns the result the right way round. Shown by
// tests/section/chains_test.cpp and walk_mistakes_test.cpp.
#include "section/walk.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "section/contacts.h"
#include "wording/length.h"

namespace arrisline {

namespace {

/// Names of the sides as the blank has them, for a side of the reading.
struct SideNames {
  const char* near_surface;  // y = 0
  const char* far_surface;
  const char* near_edge;  // x = 0
  const char* far_edge;
};

SideNames names_of(Chain side) {
  switch (side) {
    case Chain::face:
      return {"face", "underside", "working edge", "back edge"};
    case Chain::underside:
      return {"underside", "face", "working edge", "back edge"};
    case Chain::back:
      return {"face", "underside", "back edge", "working edge"};
  }
  return {};
}

double moved_onto(double value, double limit) {
  if (std::abs(value) <= kOnOutline) return 0;
  return std::abs(value - limit) <= kOnOutline ? limit : value;
}

/// The point moved onto the sides of the stock that it is as good as on.
Point onto_outline(const Drawing& drawing, Point p) {
  return {moved_onto(p.x, drawing.width), moved_onto(p.y, drawing.thickness)};
}

bool on_outline(const Drawing& drawing, Point p) {
  return p.x == 0 || p.y == 0 || p.x == drawing.width || p.y == drawing.thickness;
}

std::string called(const Drawing& drawing, int element) {
  return describe(drawing.elements[static_cast<std::size_t>(element)]);
}

Place place_of(const Drawing& drawing, int element) {
  return drawing.places[static_cast<std::size_t>(element)];
}

/// Reports the elements outside the stock, each stretch of them once. False where there is any.
bool check_inside(const Drawing& drawing, const DrawnChain& chain, const std::vector<Edge>& edges,
                  Mistakes& mistakes) {
  const SideNames names = names_of(chain.side);
  bool inside = true;
  bool outside_before = false;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const Reach reach = reach_of(edges[i]);
    const std::pair<double, const char*> over[] = {{-reach.low.x, names.near_edge},
                                                   {reach.high.x - drawing.width, names.far_edge},
                                                   {-reach.low.y, names.near_surface},
                                                   {reach.high.y - drawing.thickness, names.far_surface}};
    const auto* const worst = std::max_element(std::begin(over), std::end(over));
    const bool outside = worst->first > kSamePoint;
    if (outside && !outside_before) {
      std::string message = called(drawing, chain.strokes[i].element) + " leaves the stock over the " +
                            worst->second + ", by " + show(worst->first, drawing.unit, true);
      if (i > 0 && chain.strokes[i - 1].element != chain.strokes[i].element) {
        message += ", after " + called(drawing, chain.strokes[i - 1].element);
      }
      mistakes.error(place_of(drawing, chain.strokes[i].element),
                     message + "; shorten a move, or take a larger stock");
      inside = false;
    }
    // An arc that comes back in by its end leaves nothing open.
    const Point end = edges[i].to;
    outside_before =
        outside && (end.x < 0 || end.y < 0 || end.x > drawing.width || end.y > drawing.thickness);
  }
  return inside;
}

std::optional<Point> start_of(const Drawing& drawing, const DrawnChain& chain, Mistakes& mistakes) {
  const double limit = chain.from_back ? drawing.thickness : drawing.width;
  if (chain.start > limit + kOnOutline) {
    mistakes.error(chain.place, "the chain starts off the stock, which is " + show(limit, drawing.unit) +
                                    (chain.from_back ? " thick" : " wide") + "; start it within that");
    return std::nullopt;
  }
  const double at = moved_onto(chain.start, limit);
  return chain.from_back ? Point{drawing.width, at} : Point{at, 0};
}

std::string position(const Drawing& drawing, const DrawnChain& chain, Point p) {
  const SideNames names = names_of(chain.side);
  return show(p.x, drawing.unit) + " from the " + names.near_edge + " and " + show(p.y, drawing.unit) +
         " from the " + names.near_surface;
}

/// Whether the wood that stays is the part with the corner where the far edge and the far surface meet, as
/// it is for every chain that runs the right way round.
bool keeps_far_corner(const Drawing& drawing, Point start, Point end) {
  const double round = 2 * (drawing.width + drawing.thickness);
  const double from = along_outline(drawing.width, drawing.thickness, start);
  const auto ahead = [&](double at) { return at >= from ? at - from : at - from + round; };
  const double to_end = ahead(along_outline(drawing.width, drawing.thickness, end));
  return to_end > 0 && to_end >= ahead(drawing.width + drawing.thickness);
}

}  // namespace

/// mm to which a radius is written.
static constexpr double kWritten = 1e-6;

Edge edge_between(Point from, Point to, Turn turn, double radius, bool large) {
  Edge edge{from, to, {}, turn};
  if (!edge.is_arc()) return edge;
  const Point chord = to - from;
  const double half = norm(chord) / 2;
  const double square = radius * radius - half * half;
  // Within rounding of a half-round, of figures as they are written down too, the centre is the chord's
  // middle.
  const double off = square > 2 * half * kWritten ? std::sqrt(square) : 0;
  const Point left = (1 / (2 * half)) * Point{-chord.y, chord.x};
  const double side = (turn == Turn::left) == large ? -1 : 1;
  edge.centre = 0.5 * (from + to) + (side * off) * left;
  return edge;
}

bool runs_along_outline(double width, double thickness, const Edge& edge) {
  if (edge.is_arc()) return false;
  const bool upright = edge.from.x == edge.to.x && (edge.from.x == 0 || edge.from.x == width);
  const bool level = edge.from.y == edge.to.y && (edge.from.y == 0 || edge.from.y == thickness);
  return upright || level;
}

Edge turned_round(double width, double thickness, Chain side, Edge edge) {
  if (side == Chain::face) return reversed(edge);
  const auto turned = [&](Point p) {
    return side == Chain::back ? Point{width - p.x, p.y} : Point{p.x, thickness - p.y};
  };
  edge.from = turned(edge.from);
  edge.to = turned(edge.to);
  if (edge.is_arc()) {
    edge.centre = turned(edge.centre);
    edge.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
  }
  return edge;
}

Reach reach_of(const Edge& edge) {
  Reach reach{{std::min(edge.from.x, edge.to.x), std::min(edge.from.y, edge.to.y)},
              {std::max(edge.from.x, edge.to.x), std::max(edge.from.y, edge.to.y)}};
  if (!edge.is_arc()) return reach;
  const double r = radius(edge);
  const auto passes = [&](Point direction) {
    return distance(edge.centre + r * direction, edge) <= 1e-9 * r;
  };
  if (passes({-1, 0})) reach.low.x = std::min(reach.low.x, edge.centre.x - r);
  if (passes({1, 0})) reach.high.x = std::max(reach.high.x, edge.centre.x + r);
  if (passes({0, -1})) reach.low.y = std::min(reach.low.y, edge.centre.y - r);
  if (passes({0, 1})) reach.high.y = std::max(reach.high.y, edge.centre.y + r);
  return reach;
}

double along_outline(double width, double thickness, Point p) {
  if (p.y == 0) return p.x;
  if (p.x == width) return width + p.y;
  if (p.y == thickness) return 2 * width + thickness - p.x;
  return 2 * (width + thickness) - p.y;
}

void follow_outline(double width, double thickness, Point to, Path& path) {
  Point here = path.edges.back().to;
  const double round = 2 * (width + thickness);
  const double at = along_outline(width, thickness, here);
  double until = along_outline(width, thickness, to);
  if (until < at) until += round;
  const std::array<std::pair<double, Point>, 4> corners = {{{width, {width, 0}},
                                                            {width + thickness, {width, thickness}},
                                                            {2 * width + thickness, {0, thickness}},
                                                            {round, {0, 0}}}};
  const auto go = [&](Point next) {
    if (distance(here, next) < kSamePoint) return;
    path.edges.push_back({here, next, {}, Turn::straight});
    path.source.push_back(-1);
    here = next;
  };
  for (const double lap : {0.0, round}) {
    for (const auto& [where, corner] : corners) {
      if (where + lap > at && where + lap < until) go(corner);
    }
  }
  go(to);
}

std::optional<Path> walk(const Drawing& drawing, const DrawnChain& chain, Mistakes& mistakes) {
  const std::optional<Point> start = start_of(drawing, chain, mistakes);
  if (!start || chain.strokes.empty()) return std::nullopt;

  std::vector<Edge> edges;
  edges.reserve(chain.strokes.size());
  Point exact = *start;
  Point from = *start;
  for (std::size_t i = 0; i < chain.strokes.size(); ++i) {
    const Stroke& stroke = chain.strokes[i];
    exact = exact + stroke.move;
    const Point to = onto_outline(drawing, exact);
    if (distance(from, to) < kSamePoint) {
      mistakes.error(place_of(drawing, stroke.element),
                     called(drawing, stroke.element) + " is too short to be drawn; leave it out");
      return std::nullopt;
    }
    edges.push_back(edge_between(from, to, stroke.turn, stroke.radius, stroke.large));
    from = to;
  }
  if (!check_inside(drawing, chain, edges, mistakes)) return std::nullopt;

  const SideNames names = names_of(chain.side);
  const int last_element = chain.strokes.back().element;
  const std::string wanted = std::string("expected an end on the ") + names.near_edge + ", the " +
                             names.far_surface + " or the " + names.near_surface;
  if (!on_outline(drawing, from)) {
    mistakes.error(place_of(drawing, last_element), "the chain ends inside the stock with " +
                                                        called(drawing, last_element) + ", " +
                                                        position(drawing, chain, from) + "; " + wanted);
    return std::nullopt;
  }

  Path path;
  std::size_t first = 0;
  std::size_t end = edges.size();
  while (first < end && runs_along_outline(drawing.width, drawing.thickness, edges[first])) ++first;
  while (end > first && runs_along_outline(drawing.width, drawing.thickness, edges[end - 1])) --end;
  if (first == end) {
    mistakes.error(chain.place,
                   "the chain runs along the outside of the stock and cuts nothing; start it farther in");
    return std::nullopt;
  }
  if (!keeps_far_corner(drawing, edges[first].from, edges[end - 1].to)) {
    const Point at = edges[end - 1].to;
    const bool on_far_edge = at.x == drawing.width && at.y != 0;
    const std::string where = on_far_edge ? names.far_edge : names.near_surface;
    mistakes.error(place_of(drawing, last_element),
                   "the chain ends on the " + where + ", on the wrong side of its start, with " +
                       called(drawing, last_element) + "; " + wanted + ", farther out than its start");
    return std::nullopt;
  }
  for (std::size_t i = first; i < end; ++i) {
    path.edges.push_back(turned_round(drawing.width, drawing.thickness, chain.side, edges[i]));
    path.source.push_back(
        runs_along_outline(drawing.width, drawing.thickness, edges[i]) ? -1 : chain.strokes[i].element);
  }
  if (chain.side == Chain::face) {
    std::reverse(path.edges.begin(), path.edges.end());
    std::reverse(path.source.begin(), path.source.end());
  }
  return path;
}

}  // namespace arrisline
