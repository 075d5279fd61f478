// The geometry of elements and trade shapes. Where each proportion comes from stands beside it.
// Shown by tests/section/shapes_test.cpp.
#include "section/shapes.h"

#include <algorithm>
#include <cmath>

#include "section/arcs_through.h"

namespace arrisline {

static Part flat(double out, double down, const char* name = "") {
  return {{-out, down}, Turn::straight, 0, false, name, 0};
}

static Part arc(Turn turn, double out, double down, double radius, const char* name = "") {
  return {{-out, down}, turn, std::max(radius, std::hypot(out, down) / 2), false, name, 0};
}

static Part bead(double out, double down, double radius, const char* name = "") {
  return arc(Turn::right, out, down, radius, name);
}

static Part cove(double out, double down, double radius, const char* name = "") {
  return arc(Turn::left, out, down, radius, name);
}

/// Two arcs of one radius that meet halfway. Peter Nicholson, The Mechanic's Companion: a cyma of equal
/// height and projection is two quadrants, otherwise two arcs on equilateral triangles, so r is half the
/// whole chord.
static std::vector<Part> cyma(bool bead_first, const Dimensions& given) {
  const double out = -given.move.x / 2;
  const double down = given.move.y / 2;
  const bool equal = std::abs(std::abs(out) - std::abs(down)) < 1e-6;
  const double by_rule = equal ? std::abs(out) : std::hypot(out, down);
  const double radius = given.radius > 0 ? given.radius : by_rule;
  if (bead_first) return {bead(out, down, radius, "bead"), cove(out, down, radius, "cove")};
  return {cove(out, down, radius, "cove"), bead(out, down, radius, "bead")};
}

/// A quarter of an ellipse, level at one end and upright at the other; or a parabola that is level at the
/// same end, where its vertex is. Which end it is follows from the way the curve has to turn.
static std::vector<Part> curve(const Dimensions& given) {
  const Point move = given.move;
  const Turn turn = given.convex ? Turn::right : Turn::left;
  const bool level_first = (move.x * move.y < 0) == given.convex;
  SmoothCurve meant;
  if (given.parabola) {
    // y = x² of the moves, run from the vertex or toward it.
    meant.at = [=](double t) {
      return level_first ? Point{t * move.x, t * t * move.y}
                         : Point{t * move.x, (1 - (1 - t) * (1 - t)) * move.y};
    };
    meant.direction = [=](double t) {
      return level_first ? Point{move.x, 2 * t * move.y} : Point{move.x, 2 * (1 - t) * move.y};
    };
  } else {
    meant.at = [=](double t) {
      const double s = std::sin(t * kPi / 2);
      const double c = 1 - std::cos(t * kPi / 2);
      return level_first ? Point{s * move.x, c * move.y} : Point{c * move.x, s * move.y};
    };
    meant.direction = [=](double t) {
      const double s = std::sin(t * kPi / 2);
      const double c = std::cos(t * kPi / 2);
      return level_first ? Point{c * move.x, s * move.y} : Point{s * move.x, c * move.y};
    };
  }
  const FittedArcs arcs = arcs_through(meant, kCurveTolerance);
  std::vector<Part> parts;
  for (const Edge& edge : arcs.edges)
    parts.push_back(
        {edge.to - edge.from, turn, radius(edge), false, given.convex ? "bead" : "cove", arcs.greatest});
  return parts;
}

double smallest_radius(Shape shape, Point move) {
  switch (shape) {
    case Shape::bead:
    case Shape::cove:
      return norm(move) / 2;
    case Shape::ogee:
    case Shape::reverse_ogee:
      return norm(move) / 4;
    default:
      return 0;
  }
}

std::vector<Part> parts_of(Shape shape, const Dimensions& given) {
  const double size = given.size;
  const double out = -given.move.x;
  const double down = given.move.y;
  switch (shape) {
    case Shape::step:
    case Shape::fillet:
    case Shape::bevel:
      return {flat(out, down)};
    case Shape::bead:
    case Shape::cove: {
      const double radius = given.radius > 0 ? given.radius : std::abs(out);
      Part part = shape == Shape::bead ? bead(out, down, radius) : cove(out, down, radius);
      part.large = given.large;
      return {part};
    }
    case Shape::ovolo:  // Nicholson: a quadrant
      return {bead(size, size, size)};
    case Shape::cavetto:  // Nicholson: a quadrant
      return {cove(size, size, size)};
    case Shape::ogee:
      return cyma(true, given);
    case Shape::reverse_ogee:
      return cyma(false, given);
    case Shape::torus:
      return {bead(0, size, size / 2)};
    case Shape::astragal:  // fillets a quarter of the half-round: common practice, no source
      return {flat(0, size / 4, "fillet"), bead(0, size, size / 2, "bead"), flat(0, size / 4, "fillet")};
    case Shape::chamfer:
      return {flat(size, size)};
    case Shape::scotia: {
      // After Sheraton's Drawing-Book (1793), a reconstruction: the height in 7 parts, an arc of 3 and an arc
      // of 8 that meet in a common tangent; the lower end stands 3 parts out from the upper.
      const double unit = size / 7;
      return {cove(-1.8 * unit, 5.4 * unit, 3 * unit, "upper cove"),
              cove(4.8 * unit, 1.6 * unit, 8 * unit, "lower cove")};
    }
    case Shape::quirk: {  // a square-cornered groove: common practice, no source
      const double wide = size > 0 ? size : out;
      const double deep = size > 0 ? size : down;
      return {flat(0, deep, "wall"), flat(wide, 0, "floor"), flat(0, -deep, "wall")};
    }
    case Shape::thumbnail: {
      // A step of a fifth of the depth, then an arc that leaves it level: common practice, no source. With
      // one length R, a step of R/4 and a quadrant of R.
      const double wide = size > 0 ? size : out;
      const double deep = size > 0 ? size * 5 / 4 : down;
      const double step = deep / 5;
      const double drop = deep - step;
      const double radius = (wide * wide + drop * drop) / (2 * drop);
      return {flat(0, step, "step"), bead(wide, drop, radius, "bead")};
    }
    case Shape::curve:
      return curve(given);
  }
  return {};
}

}  // namespace arrisline
