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

// Where two circles meet, one of them the edge's; `between` goes from its centre to the other's.
void keep_meetings(const Edge& edge, Point between, double gap, double big, double r,
                   std::vector<double>& ts) {
  if (gap == 0 || gap > big + r + kSame || gap < std::abs(big - r) - kSame) return;
  const Point d = (1 / gap) * between;
  const double foot = (gap * gap + (big - r) * (big + r)) / (2 * gap);
  const double half = std::sqrt(std::max(0.0, big * big - foot * foot));
  const Point n = {-d.y, d.x};
  keep_spoke(edge, foot * d + half * n, ts);
  if (half > 0) keep_spoke(edge, foot * d - half * n, ts);
}

}  // namespace

void cross_line(const Edge& edge, Point p, Point d, std::vector<double>& ts) {
  if (!edge.is_arc()) {
    const double a = cross(d, edge.from - p);
    const double b = cross(d, edge.to - p);
    if ((a < 0 && b > 0) || (a > 0 && b < 0)) keep(a / (a - b), ts);
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
  keep_meetings(edge, between, gap, big, r, ts);
}

void cross_carrier(const Edge& edge, const Edge& other, std::vector<double>& ts) {
  if (other.is_arc()) {
    cross_circle(edge, other.centre, radius(other), ts);
    return;
  }
  const double len = length(other);
  if (len > 0) cross_line(edge, other.from, (1 / len) * (other.to - other.from), ts);
}

// Closer to touching or to lying along one another than this, two carriers part so slowly that where they
// count as one has to be told from where they do not.
static constexpr double kNearlyTouching = 1e-5;  // mm
static constexpr double kNearlyAlong = 1e-3;     // radians of lines; mm of centres and of radii

void part_line(const Edge& edge, Point p, Point d, std::vector<double>& ts) {
  const Point n = {-d.y, d.x};
  if (!edge.is_arc()) {
    const Point along = edge.to - edge.from;
    if (std::abs(cross(d, along)) > kNearlyAlong * norm(along)) return;
  } else if (std::abs(std::abs(dot(p - edge.centre, n)) - radius(edge)) > kNearlyTouching) {
    return;
  }
  for (const double aside : {kSame, -kSame}) cross_line(edge, p + aside * n, d, ts);
}

void part_circle(const Edge& edge, Point centre, double r, std::vector<double>& ts) {
  if (!edge.is_arc()) {
    const Point along = edge.to - edge.from;
    const double len = norm(along);
    if (std::abs(std::abs(cross(along, centre - edge.from)) - r * len) > kNearlyTouching * len) return;
    for (const double aside : {kSame, -kSame}) cross_circle(edge, centre, r + aside, ts);
    return;
  }
  const double big = radius(edge);
  const Point between = centre - edge.centre;
  const double gap = norm(between);
  const bool along = gap < kNearlyAlong && std::abs(big - r) < kNearlyAlong;
  const bool crosses_plainly = gap > std::abs(big - r) + kNearlyTouching && gap < big + r - kNearlyTouching;
  if (!along && crosses_plainly) return;
  for (const double aside : {kSame, -kSame}) keep_meetings(edge, between, gap, big, r + aside, ts);
}

void part_carrier(const Edge& edge, const Edge& other, std::vector<double>& ts) {
  if (other.is_arc()) {
    part_circle(edge, other.centre, radius(other), ts);
    return;
  }
  const double len = length(other);
  if (len > 0) part_line(edge, other.from, (1 / len) * (other.to - other.from), ts);
}

void cross_at(const Edge& edge, Point p, std::vector<double>& ts, double reach) {
  if (edge.is_arc()) {
    const Point spoke = p - edge.centre;
    if (std::abs(norm(spoke) - radius(edge)) < reach) keep_spoke(edge, spoke, ts);
    return;
  }
  const Point along = edge.to - edge.from;
  const double square = dot(along, along);
  const Point off = p - edge.from;
  if (std::abs(cross(along, off)) < reach * std::sqrt(square)) keep(dot(along, off) / square, ts);
}

void extremes_along(const Edge& arc, Point d, std::vector<double>& ts) {
  if (!arc.is_arc()) return;
  keep_spoke(arc, d, ts);
  keep_spoke(arc, -1 * d, ts);
}

}  // namespace arrisline
