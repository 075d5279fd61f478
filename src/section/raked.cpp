// The level moulding's section sheared and shortened; its arcs become parts of ellipses, and those arcs
// again. docs/reshaping.md derives it. Shown by tests/section/raked_test.cpp, which meets both mouldings in
// space.
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "section/arcs_through.h"
#include "section/one_chain.h"
#include "section/reshaped.h"
#include "section/walk.h"

namespace arrisline {
namespace {

constexpr double kNothing = 1e-9;           // mm
constexpr double kClear = 10 * kOnOutline;  // mm under the face, so that no corner is moved onto it
constexpr double kAxis = 1e-9;              // of a move: what is less across or down than this is rounding

constexpr double kMostSweep = 0.99 * kPi;  // radians, of an arc that is drawn anew in one go

/// The part of the map that turns moves into moves: out as far as before, deeper by what it is out.
struct Slant {
  double shorter = 1;  // of the depth
  double deeper = 0;   // for each mm out

  Point operator()(Point p) const { return {p.x, shorter * p.y - deeper * p.x}; }
};

Slant slant_of(const RakeOptions& options) {
  const double slope = to_radians(options.slope);
  const double out = std::sin(slope) / std::tan(to_radians(options.corner) / 2);
  const bool deeper = (options.at == ReturnAt::foot) == (options.face == Face::down);
  return {std::cos(slope), deeper ? out : -out};
}

Stroke straight(Point move, int element) {
  if (std::abs(move.x) < kAxis * norm(move)) move.x = 0;
  if (std::abs(move.y) < kAxis * norm(move)) move.y = 0;
  Stroke out;
  out.move = move;
  out.element = element;
  return out;
}

/// Whether two edges run on into each other, or a chain's end along the side of the stock that it is on.
bool runs_on(Point in, Point out) {
  constexpr double kSmooth = 1e-3;  // radians
  return std::abs(std::atan2(cross(in, out), dot(in, out))) < kSmooth;
}

/// For each edge of the level chain whether it meets what is on either side of it in corners.
std::vector<bool> between_corners(const std::vector<Edge>& edges, bool to_underside) {
  std::vector<bool> out;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const bool last = i + 1 == edges.size();
    const Point before = i == 0 ? Point{-1, 0} : direction_at(edges[i - 1], 1);
    const Point after = !last ? direction_at(edges[i + 1], 0) : to_underside ? Point{1, 0} : Point{0, 1};
    out.push_back(!runs_on(before, direction_at(edges[i], 0)) && !runs_on(direction_at(edges[i], 1), after));
  }
  return out;
}

/// The one arc from end to end of what the map makes of an arc that keeps nearest to it, where that is near
/// enough; `off` is how near.
std::optional<Edge> one_arc(const Edge& arc, const Slant& slant, double tolerance, double& off) {
  constexpr int kPoints = 512;
  if (std::abs(sweep(arc)) > kMostSweep) return std::nullopt;
  std::vector<Point> points;
  for (int i = 0; i <= kPoints; ++i)
    points.push_back(slant(point_at(arc, static_cast<double>(i) / kPoints) - arc.from));
  const Point to = points.back();
  const double middle = std::abs(cross(to, points[kPoints / 2])) / norm(to);
  auto with_rise = [&](double rise) {
    const double half = norm(to) / 2;
    return edge_between({}, to, arc.turn, (half * half + rise * rise) / (2 * rise), rise > half);
  };
  auto farthest = [&](double rise) {
    const Edge edge = with_rise(rise);
    double worst = 0;
    for (const Point& p : points) worst = std::max(worst, distance(p, edge));
    return worst;
  };
  double low = 0.5 * middle;
  double high = 2 * middle;
  for (int i = 0; i < 60; ++i) {
    const double a = low + (high - low) / 3;
    const double b = high - (high - low) / 3;
    (farthest(a) < farthest(b) ? high : low) = farthest(a) < farthest(b) ? b : a;
  }
  off = farthest((low + high) / 2);
  if (off > tolerance) return std::nullopt;
  return with_rise((low + high) / 2);
}

void add_edge(const Edge& edge, int element, Raked& out) {
  Stroke stroke;
  stroke.move = edge.to - edge.from;
  stroke.turn = edge.turn;
  stroke.radius = radius(edge);
  stroke.large = std::abs(sweep(edge)) > kPi;
  stroke.element = element;
  out.drawing.chains.front().strokes.push_back(stroke);
}

/// The arc as the map sends it, in arcs. One of more than half a turn goes in two pieces.
void add_arc(const Edge& arc, const Slant& slant, int element, double tolerance, Raked& out) {
  if (std::abs(sweep(arc)) > kMostSweep) {
    add_arc(piece(arc, 0, 0.5), slant, element, tolerance, out);
    add_arc(piece(arc, 0.5, 1), slant, element, tolerance, out);
    return;
  }
  const SmoothCurve curve{[&](double t) { return slant(point_at(arc, t)); },
                          [&](double t) { return slant(direction_at(arc, t)); }};
  const FittedArcs arcs = arcs_through(curve, tolerance);
  out.greatest = std::max(out.greatest, arcs.greatest);
  for (const Edge& edge : arcs.edges) add_edge(edge, element, out);
}

}  // namespace

std::optional<Raked> raked(const Drawing& drawing, const RakeOptions& options, std::string* why) {
  if (!is_one_chain(drawing)) {
    *why = "only work that is one chain, from the face to the working edge or the underside, is raked; " +
           std::string(drawing.chains.size() > 1 ? "write each chain as a profile of its own"
                                                 : "give a profile that runs so");
    return std::nullopt;
  }
  const Slant slant = slant_of(options);
  const DrawnChain& level = drawing.chains.front();
  Raked out;
  out.drawing = drawing;
  DrawnChain& chain = out.drawing.chains.front();
  chain.strokes.clear();
  std::vector<Edge> edges;
  Point level_end;
  for (const Stroke& stroke : level.strokes) {
    edges.push_back(
        edge_between(level_end, level_end + stroke.move, stroke.turn, stroke.radius, stroke.large));
    level_end = edges.back().to;
  }
  // One arc may bulge a little farther out than the curve: not so where that would be off the stock.
  const auto fits = [&](std::size_t i, const Edge& arc) {
    if (i > 0 && i + 1 < edges.size()) return true;
    const Point low = reach_of(arc).low;
    return low.x >= std::min(arc.from.x, arc.to.x) - kNothing &&
           low.y >= std::min(arc.from.y, arc.to.y) - kNothing;
  };
  const std::vector<bool> free = between_corners(edges, ends_on_underside(drawing));
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const int element = level.strokes[i].element;
    double off = 0;
    if (!edges[i].is_arc()) {
      chain.strokes.push_back(straight(slant(level.strokes[i].move), element));
    } else if (const auto one = free[i] ? one_arc(edges[i], slant, options.tolerance, off) : std::nullopt;
               one && fits(i, *one)) {
      out.greatest = std::max(out.greatest, off);
      add_edge(*one, element, out);
    } else {
      add_arc(edges[i], slant, element, options.tolerance, out);
    }
  }

  Point last;
  for (const Stroke& stroke : chain.strokes) last = last + stroke.move;
  const double highest = reach_of(chain.strokes).low.y;
  double deepest = reach_of(chain.strokes).high.y;
  if (highest < -kNothing) {
    out.step = kClear - highest;
    Stroke& first = chain.strokes.front();
    if (first.turn == Turn::straight && first.move.x == 0 && first.move.y > 0) {
      first.move.y += out.step;
    } else {
      chain.strokes.insert(chain.strokes.begin(), straight({0, out.step}, first.element));
    }
  }
  deepest += out.step;
  const double end = last.y + out.step;
  if (!ends_on_underside(drawing)) {
    out.drawing.thickness =
        usual_thickness(deepest + slant.shorter * (drawing.thickness - level_end.y), drawing.unit);
  } else {
    out.drawing.thickness = deepest;
    if (end < deepest - kNothing)
      chain.strokes.push_back(straight({0, deepest - end}, chain.strokes.back().element));
  }
  return out;
}

}  // namespace arrisline
