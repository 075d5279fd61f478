// The level moulding's section sheared and shortened; its arcs become parts of ellipses, and those arcs
// again. docs/reshaping.md derives it. Shown by tests/section/raked_test.cpp, which meets both mouldings in
// space.
#include <algorithm>
#include <cmath>

#include "section/arcs_through.h"
#include "section/one_chain.h"
#include "section/reshaped.h"
#include "section/walk.h"

namespace arrisline {
namespace {

constexpr double kNothing = 1e-9;           // mm
constexpr double kClear = 10 * kOnOutline;  // mm under the face, so that no corner is moved onto it
constexpr double kAxis = 1e-9;              // of a move: what is less across or down than this is rounding

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

/// The arc as the map sends it, in arcs. One of more than half a turn goes in two pieces.
void add_arc(const Edge& arc, const Slant& slant, int element, double tolerance, Raked& out) {
  if (std::abs(sweep(arc)) > kPi * 0.99) {
    add_arc(piece(arc, 0, 0.5), slant, element, tolerance, out);
    add_arc(piece(arc, 0.5, 1), slant, element, tolerance, out);
    return;
  }
  const SmoothCurve curve{[&](double t) { return slant(point_at(arc, t)); },
                          [&](double t) { return slant(direction_at(arc, t)); }};
  const FittedArcs arcs = arcs_through(curve, tolerance);
  out.greatest = std::max(out.greatest, arcs.greatest);
  for (const Edge& edge : arcs.edges) {
    Stroke stroke;
    stroke.move = edge.to - edge.from;
    stroke.turn = edge.turn;
    stroke.radius = radius(edge);
    stroke.element = element;
    out.drawing.chains.front().strokes.push_back(stroke);
  }
}

}  // namespace

std::optional<Raked> raked(const Drawing& drawing, const RakeOptions& options, std::string* why) {
  if (!is_one_chain(drawing)) {
    *why =
        "only work that is one chain, from the face to the working edge or the underside, is raked; write "
        "each chain as a profile of its own";
    return std::nullopt;
  }
  const Slant slant = slant_of(options);
  const DrawnChain& level = drawing.chains.front();
  Raked out;
  out.drawing = drawing;
  DrawnChain& chain = out.drawing.chains.front();
  chain.strokes.clear();
  Point at;
  Point level_end;
  for (const Stroke& stroke : level.strokes) {
    const Edge edge = edge_between(at, at + stroke.move, stroke.turn, stroke.radius, stroke.large);
    if (edge.is_arc()) {
      add_arc(edge, slant, stroke.element, options.tolerance, out);
    } else {
      chain.strokes.push_back(straight(slant(stroke.move), stroke.element));
    }
    at = edge.to;
  }
  level_end = at;

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
