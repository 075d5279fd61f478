// Edges, loops and their measures in closed form. Shown by tests/geometry.
#include "arrisline/geometry.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {

double wrap_degrees(double degrees) {
  if (degrees > -180 && degrees <= 180) return degrees;
  const double wrapped = std::remainder(degrees, 360);
  return wrapped <= -180 ? wrapped + 360 : wrapped;
}

double radius(const Edge& arc) {
  return distance(arc.centre, arc.from);
}

double sweep(const Edge& edge) {
  if (!edge.is_arc()) return 0;
  const Point a = edge.from - edge.centre;
  const Point b = edge.to - edge.centre;
  const double angle = std::atan2(cross(a, b), dot(a, b));
  if (edge.turn == Turn::left) return angle > 0 ? angle : angle + 2 * kPi;
  return angle < 0 ? angle : angle - 2 * kPi;
}

double length(const Edge& edge) {
  return edge.is_arc() ? std::abs(sweep(edge)) * radius(edge) : distance(edge.from, edge.to);
}

/// From the centre to the point at fraction t of the arc.
static Point spoke_at(const Edge& arc, double t) {
  const Point a = arc.from - arc.centre;
  const double angle = t * sweep(arc), c = std::cos(angle), s = std::sin(angle);
  return {c * a.x - s * a.y, s * a.x + c * a.y};
}

Point point_at(const Edge& edge, double t) {
  if (t <= 0) return edge.from;
  if (t >= 1) return edge.to;
  return edge.is_arc() ? edge.centre + spoke_at(edge, t) : edge.from + t * (edge.to - edge.from);
}

Point direction_at(const Edge& edge, double t) {
  if (!edge.is_arc()) {
    const double n = distance(edge.from, edge.to);
    return n > 0 ? (1 / n) * (edge.to - edge.from) : Point{};
  }
  const Point p = t <= 0 ? edge.from - edge.centre : t >= 1 ? edge.to - edge.centre : spoke_at(edge, t);
  const double n = norm(p);
  const Point ahead = {-p.y / n, p.x / n};
  return edge.turn == Turn::left ? ahead : -1 * ahead;
}

Edge piece(const Edge& edge, double t0, double t1) {
  Edge out = edge;
  out.from = point_at(edge, t0);
  out.to = point_at(edge, t1);
  return out;
}

Edge reversed(const Edge& edge) {
  Edge out = edge;
  std::swap(out.from, out.to);
  if (edge.turn == Turn::left) out.turn = Turn::right;
  if (edge.turn == Turn::right) out.turn = Turn::left;
  return out;
}

bool spoke_meets(const Edge& arc, Point spoke) {
  Point a = arc.from - arc.centre;
  Point b = arc.to - arc.centre;
  if (arc.turn == Turn::right) std::swap(a, b);
  const double turn = cross(a, b);
  if (turn > 0) return cross(a, spoke) >= 0 && cross(spoke, b) >= 0;
  // Half a circle or more: anywhere but in the gap.
  return !(cross(b, spoke) > 0 && cross(spoke, a) > 0);
}

double distance(Point p, const Edge& edge) {
  if (!edge.is_arc()) {
    const Point along = edge.to - edge.from;
    const double square = dot(along, along);
    const double t = square > 0 ? std::clamp(dot(p - edge.from, along) / square, 0.0, 1.0) : 0;
    return distance(p, edge.from + t * along);
  }
  const Point q = p - edge.centre;
  if (spoke_meets(edge, q)) return std::abs(norm(q) - radius(edge));
  return std::min(distance(p, edge.from), distance(p, edge.to));
}

double area_term(const Edge& edge) {
  const double chord = cross(edge.from, edge.to) / 2;
  if (!edge.is_arc()) return chord;
  const double angle = sweep(edge);
  const double r = radius(edge);
  // Between chord and arc lies the circular segment, ½r²(θ − sin θ), added when turning left.
  return chord + r * r * (angle - std::sin(angle)) / 2;
}

double area(std::span<const Edge> edges) {
  double sum = 0;
  for (const Edge& edge : edges) sum += area_term(edge);
  return sum;
}

bool contains(const Loop& loop, Point p) {
  // The turns of the outline about p, counted where it passes to the right of p. Each arc is its chord, plus
  // a turn where p lies between the two.
  int turns = 0;
  for (const Edge& edge : loop) {
    const double side = cross(edge.to - edge.from, p - edge.from);
    if (edge.from.y <= p.y && edge.to.y > p.y && side > 0) ++turns;
    if (edge.from.y > p.y && edge.to.y <= p.y && side < 0) --turns;
    if (!edge.is_arc() || distance(p, edge.centre) >= radius(edge)) continue;
    if (edge.turn == Turn::left && side <= 0) ++turns;
    if (edge.turn == Turn::right && side >= 0) --turns;
  }
  return turns > 0;
}

double distance(Point p, std::span<const Edge> edges) {
  double nearest = std::numeric_limits<double>::infinity();
  for (const Edge& edge : edges) nearest = std::min(nearest, distance(p, edge));
  return nearest;
}

}  // namespace arrisline
