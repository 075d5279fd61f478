#include "referee/region.h"

#include <CGAL/Boolean_set_operations_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/General_polygon_set_2.h>
#include <CGAL/Gps_circle_segment_traits_2.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace arrisline::referee {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Traits = CGAL::Gps_circle_segment_traits_2<Kernel>;
using Set = CGAL::General_polygon_set_2<Traits>;
using Polygon = Traits::Polygon_2;
using Curve = Traits::Curve_2;
using XCurve = Traits::X_monotone_curve_2;

// Mean width under which a piece is the rounding of coordinates that were meant to be equal.
static constexpr double kNoWidth = 1e-8;

// Turned from the first spoke to the second in the sense of the arc, 0 to 2π.
static double turned(const Edge& arc, Point from, Point to) {
  const double angle = std::atan2(cross(from, to), dot(from, to));
  const double way = arc.turn == Turn::left ? angle : -angle;
  return way < 0 ? way + 2 * kPi : way;
}

static double swept_angle(const Edge& arc) {
  return turned(arc, arc.from - arc.centre, arc.to - arc.centre);
}

static Point turn_by(const Edge& arc, double angle) {
  const double way = arc.turn == Turn::left ? angle : -angle;
  const Point s = arc.from - arc.centre;
  return arc.centre +
         Point{s.x * std::cos(way) - s.y * std::sin(way), s.x * std::sin(way) + s.y * std::cos(way)};
}

double length_of(const Edge& edge) {
  if (!edge.is_arc()) return distance(edge.from, edge.to);
  return swept_angle(edge) * distance(edge.from, edge.centre);
}

Point middle_of(const Edge& edge) {
  return edge.is_arc() ? turn_by(edge, swept_angle(edge) / 2) : 0.5 * (edge.from + edge.to);
}

Edge first_half(const Edge& edge) {
  return {edge.from, middle_of(edge), edge.centre, edge.turn};
}

Edge second_half(const Edge& edge) {
  return {middle_of(edge), edge.to, edge.centre, edge.turn};
}

double off_edge(Point p, const Edge& edge) {
  const double ends = std::min(distance(p, edge.from), distance(p, edge.to));
  if (!edge.is_arc()) {
    const Point d = edge.to - edge.from;
    const double t = dot(p - edge.from, d), whole = dot(d, d);
    return t <= 0 || t >= whole ? ends : std::abs(cross(d, p - edge.from)) / std::sqrt(whole);
  }
  // Whether the foot is on the arc: all of the arc is on one side of its chord, all of the rest on the other.
  const Point spoke = p - edge.centre;
  const double far = norm(spoke), r = distance(edge.from, edge.centre);
  if (far == 0) return r;
  const double side = cross(edge.to - edge.from, edge.centre + (r / far) * spoke - edge.from);
  bool on = edge.turn == Turn::left ? side < 0 : side > 0;
  // An arc may be so flat that rounding tells on which side of its chord it is; then its spokes tell better.
  Point first = edge.from - edge.centre, last = edge.to - edge.centre;
  if (edge.turn == Turn::right) std::swap(first, last);
  if (cross(first, last) > 0) on = cross(first, spoke) >= 0 && cross(spoke, last) >= 0;
  return on ? std::abs(far - r) : ends;
}

double off_outline(Point p, const std::vector<Edge>& outline) {
  double least = std::numeric_limits<double>::infinity();
  for (const Edge& edge : outline) least = std::min(least, off_edge(p, edge));
  return least;
}

static double area_of(const Edge& edge) {
  const double chord = cross(edge.from, edge.to) / 2;
  if (!edge.is_arc()) return chord;
  const double r = distance(edge.from, edge.centre), angle = swept_angle(edge);
  const double segment = r * r * (angle - std::sin(angle)) / 2;
  return chord + (edge.turn == Turn::left ? segment : -segment);
}

static double area_of(const std::vector<Edge>& loop) {
  double sum = 0;
  for (const Edge& edge : loop) sum += area_of(edge);
  return sum;
}

std::vector<Edge> inside_to_the_left(std::vector<Edge> outline) {
  if (area_of(outline) >= 0) return outline;
  std::reverse(outline.begin(), outline.end());
  for (Edge& edge : outline) {
    std::swap(edge.from, edge.to);
    if (edge.is_arc()) edge.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
  }
  return outline;
}

struct Region::Body {
  Set set;
  std::vector<std::vector<Edge>> loops;
};

static Kernel::Point_2 exact(Point p) {
  return {p.x, p.y};
}

// A lazy figure is only worked out as far as its comparisons ask; by itself it is good to five digits.
static const bool fine = [] {
  Kernel::FT::set_relative_precision_of_to_double(1e-14);
  return true;
}();

static Edge edge_of(const XCurve& curve) {
  Edge out;
  out.from = {CGAL::to_double(curve.source().x()), CGAL::to_double(curve.source().y())};
  out.to = {CGAL::to_double(curve.target().x()), CGAL::to_double(curve.target().y())};
  if (curve.is_linear()) return out;
  const auto centre = curve.supporting_circle().center();
  out.centre = {CGAL::to_double(centre.x()), CGAL::to_double(centre.y())};
  out.turn = curve.orientation() == CGAL::COUNTERCLOCKWISE ? Turn::left : Turn::right;
  // Of so short a piece the rounded ends tell nothing of how it turns.
  constexpr double kStraight = 1e-6;
  if (distance(out.from, out.to) < kStraight) out.turn = Turn::straight;
  return out;
}

static void add_loop(const Polygon& polygon, std::vector<std::vector<Edge>>& out) {
  std::vector<Edge> loop;
  double around = 0;
  for (auto curve = polygon.curves_begin(); curve != polygon.curves_end(); ++curve) {
    const Edge edge = edge_of(*curve);
    if (edge.from == edge.to) continue;
    loop.push_back(edge);
    around += length_of(loop.back());
  }
  if (2 * std::abs(area_of(loop)) > kNoWidth * around) out.push_back(std::move(loop));
}

static std::vector<std::vector<Edge>> loops_of(const Set& set) {
  std::vector<Set::Polygon_with_holes_2> pieces;
  set.polygons_with_holes(std::back_inserter(pieces));
  std::vector<std::vector<Edge>> out;
  for (const auto& piece : pieces) {
    if (!piece.is_unbounded()) add_loop(piece.outer_boundary(), out);
    for (auto hole = piece.holes_begin(); hole != piece.holes_end(); ++hole) add_loop(*hole, out);
  }
  return out;
}

Region::Region() : body_(std::make_shared<Body>()) {}

std::shared_ptr<const Region> Region::inside(std::vector<Edge> outline) {
  if (outline.size() < 2) return nullptr;
  outline = inside_to_the_left(std::move(outline));
  Polygon polygon;
  for (const Edge& edge : outline) {
    if (edge.from == edge.to) return nullptr;
    if (!edge.is_arc()) {
      polygon.push_back(XCurve(exact(edge.from), exact(edge.to)));
      continue;
    }
    const Curve curve(exact(edge.from), exact(middle_of(edge)), exact(edge.to));
    std::vector<CGAL::Object> parts;
    Traits().make_x_monotone_2_object()(curve, std::back_inserter(parts));
    for (const CGAL::Object& part : parts) {
      XCurve piece;
      if (CGAL::assign(piece, part)) polygon.push_back(piece);
    }
  }
  for (std::size_t i = 0; i < outline.size(); ++i)
    if (!(outline[i].to == outline[(i + 1) % outline.size()].from)) return nullptr;
  if (!CGAL::is_valid_polygon(polygon, Traits())) return nullptr;
  auto body = std::make_shared<Body>();
  body->set.insert(polygon);
  body->loops = loops_of(body->set);
  return std::shared_ptr<const Region>(new Region(std::move(body)));
}

Region Region::less(const Region& other) const {
  auto body = std::make_shared<Body>();
  body->set = body_->set;
  body->set.difference(other.body_->set);
  body->loops = loops_of(body->set);
  return Region(std::move(body));
}

Region Region::common(const Region& other) const {
  auto body = std::make_shared<Body>();
  body->set = body_->set;
  body->set.intersection(other.body_->set);
  body->loops = loops_of(body->set);
  return Region(std::move(body));
}

double Region::area() const {
  double sum = 0;
  for (const auto& loop : body_->loops) sum += area_of(loop);  // holes run the other way round
  return sum;
}

const std::vector<std::vector<Edge>>& Region::loops() const {
  return body_->loops;
}

bool Region::holds(Point p) const {
  // By the turning of the boundary as seen from p: an arc turns as its chord does, once more about its
  // centre where p lies between chord and arc.
  double turning = 0;
  for (const auto& loop : body_->loops) {
    for (const Edge& edge : loop) {
      const Point a = edge.from - p, b = edge.to - p;
      // One figure tells the side of the chord for both, and a point on the chord is to the left of it.
      const double side = cross(a, b) == 0 ? 0.0 : cross(a, b);
      turning += std::atan2(side, dot(a, b));
      if (!edge.is_arc()) continue;
      const bool within = distance(p, edge.centre) < distance(edge.from, edge.centre);
      if (!within) continue;
      // The arc is right of the chord where it turns left.
      if (edge.turn == Turn::left && side < 0) turning += 2 * kPi;
      if (edge.turn == Turn::right && side >= 0) turning -= 2 * kPi;
    }
  }
  return turning > kPi;
}

}  // namespace arrisline::referee
