// Crossings in closed form. Shown by tests/plan/wood_test.cpp.
#include "geometry/crossing.h"

#include <cmath>

namespace arrisline {

namespace {

void keep(double t, std::vector<double>& ts) {
  if (t > 0 && t < 1) ts.push_back(t);
}

/// The fraction of the arc at which its spoke points along `spoke`, if it gets there.
void keep_spoke(const Edge& arc, Point spoke, std::vector<double>& ts) {
  if (!spoke_meets(arc, spoke)) return;
  const Point a = arc.from - arc.centre;
  double ahead = std::atan2(cross(a, spoke), dot(a, spoke));
  if (arc.turn == Turn::right) ahead = -ahead;
  if (ahead < 0) ahead += 2 * kPi;
  keep(ahead / std::abs(sweep(arc)), ts);
}

}  // namespace

void cross_line(const Edge& edge, Point p, Point d, std::vector<double>& ts) {
  if (!edge.is_arc()) {
    const double a = cross(d, edge.from - p);
    const double b = cross(d, edge.to - p);
    if (a != b) keep(a / (a - b), ts);
    return;
  }
  const double r = radius(edge);
  const Point n = {-d.y, d.x};
  const double off = dot(p - edge.centre, n);  // of the line from the centre
  if (std::abs(off) > r + kSame) return;
  const double along = std::sqrt(std::max(0.0, r * r - off * off));
  keep_spoke(edge, off * n + along * d, ts);
  if (along > 0) keep_spoke(edge, off * n - along * d, ts);
}

void cross_circle(const Edge& edge, Point centre, double r, std::vector<double>& ts) {
  if (!edge.is_arc()) {
    const Point along = edge.to - edge.from;
    const double len = norm(along);
    if (len == 0) return;
    const Point d = (1 / len) * along;
    const Point q = edge.from - centre;
    const double foot = -dot(q, d);
    const double off = std::abs(cross(d, q));
    if (off > r + kSame) return;
    const double half = std::sqrt(std::max(0.0, r * r - off * off));
    keep((foot - half) / len, ts);
    if (half > 0) keep((foot + half) / len, ts);
    return;
  }
  const double big = radius(edge);
  const Point between = centre - edge.centre;
  const double gap = norm(between);
  if (gap < kSame) return;  // concentric: the same circle or none
  if (gap > big + r + kSame || gap < std::abs(big - r) - kSame) return;
  const Point d = (1 / gap) * between;
  const double foot = (gap * gap + big * big - r * r) / (2 * gap);
  const double half = std::sqrt(std::max(0.0, big * big - foot * foot));
  const Point n = {-d.y, d.x};
  keep_spoke(edge, foot * d + half * n, ts);
  if (half > 0) keep_spoke(edge, foot * d - half * n, ts);
}

void cross_carrier(const Edge& edge, const Edge& other, std::vector<double>& ts) {
  if (other.is_arc()) {
    cross_circle(edge, other.centre, radius(other), ts);
    return;
  }
  const double len = length(other);
  if (len > 0) cross_line(edge, other.from, (1 / len) * (other.to - other.from), ts);
}

void cross_at(const Edge& edge, Point p, std::vector<double>& ts) {
  if (edge.is_arc()) {
    const Point spoke = p - edge.centre;
    if (std::abs(norm(spoke) - radius(edge)) < kSame) keep_spoke(edge, spoke, ts);
    return;
  }
  const Point along = edge.to - edge.from;
  const double square = dot(along, along);
  if (square == 0) return;
  const Point off = p - edge.from;
  if (std::abs(cross(along, off)) < kSame * std::sqrt(square)) keep(dot(along, off) / square, ts);
}

void extremes_along(const Edge& arc, Point d, std::vector<double>& ts) {
  if (!arc.is_arc()) return;
  keep_spoke(arc, d, ts);
  keep_spoke(arc, -1 * d, ts);
}

}  // namespace arrisline
