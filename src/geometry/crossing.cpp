// Crossings in closed form. Shown by tests/plan/wood_test.cpp.
#include "geometry/crossing.h"

#include <cmath>

namespace arrisline {

namespace {

void keep(double t, std::vector<double>& ts) {
  if (t > 0 && t < 1) ts.push_back(t);
}

/// The place on the arc at which its spoke points along `spoke`, if it gets there.
void keep_spoke(const Measured& arc, Point spoke, std::vector<double>& ts) {
  if (spoke_meets(arc.edge(), spoke)) keep(arc.place(spoke), ts);
}

/// At most two places.
template <class T>
struct Places {
  T at[2];
  int count = 0;
  void add(T place) { at[count++] = place; }
  const T* begin() const { return at; }
  const T* end() const { return at + count; }
};

/// Where the line from + s·along meets the circle, or all but touches it: s.
Places<double> on_circle(Point from, Point along, Point centre, double r) {
  Places<double> out;
  const double square = dot(along, along);
  const Point q = from - centre;
  const double aside = cross(along, q);  // times the length of `along`
  if (square == 0 || aside * aside > (r + kSame) * (r + kSame) * square) return out;
  const double foot = -dot(q, along) / square;
  const double half = std::sqrt(std::max(0.0, r * r * square - aside * aside)) / square;
  out.add(foot - half);
  if (half > 0) out.add(foot + half);
  return out;
}

/// Where two circles meet, as spokes of the first; `between` goes from its centre to the other's.
Places<Point> on_both(Point between, double gap, double big, double r) {
  Places<Point> out;
  if (gap == 0 || gap > big + r + kSame || gap < std::abs(big - r) - kSame) return out;
  const Point d = (1 / gap) * between;
  const double foot = (gap * gap + (big - r) * (big + r)) / (2 * gap);
  const double half = std::sqrt(std::max(0.0, big * big - foot * foot));
  const Point n = {-d.y, d.x};
  out.add(foot * d + half * n);
  if (half > 0) out.add(foot * d - half * n);
  return out;
}

void keep_meetings(const Measured& edge, Point between, double gap, double r, std::vector<double>& ts) {
  for (const Point spoke : on_both(between, gap, edge.r(), r)) keep_spoke(edge, spoke, ts);
}

}  // namespace

void cross_line(const Measured& edge, Point p, Point d, std::vector<double>& ts) {
  const Edge& own = edge.edge();
  if (!edge.is_arc()) {
    const double a = cross(d, own.from - p);
    const double b = cross(d, own.to - p);
    if ((a < 0 && b > 0) || (a > 0 && b < 0)) keep(a / (a - b), ts);
    return;
  }
  const double r = edge.r();
  const Point n = {-d.y, d.x};
  const double off = dot(p - own.centre, n);  // of the line from the centre
  if (std::abs(off) > r + kSame) return;
  const double along = std::sqrt(std::max(0.0, r * r - off * off));
  keep_spoke(edge, off * n + along * d, ts);
  if (along > 0) keep_spoke(edge, off * n - along * d, ts);
}

void cross_circle(const Measured& edge, Point centre, double r, std::vector<double>& ts) {
  const Edge& own = edge.edge();
  if (!edge.is_arc()) {
    for (const double t : on_circle(own.from, own.to - own.from, centre, r)) keep(t, ts);
    return;
  }
  const Point between = centre - own.centre;
  const double gap = norm(between);
  if (gap < kSame) return;  // concentric: the same circle or none
  keep_meetings(edge, between, gap, r, ts);
}

// Closer to touching or to lying along one another than this, two carriers part so slowly that where they
// count as one has to be told from where they do not.
static constexpr double kNearlyTouching = 1e-5;  // mm
static constexpr double kNearlyAlong = 1e-3;     // radians of lines; mm of centres and of radii

/// Whether a line all but touches a circle of radius r, or comes so near to doing so; `aside` is how far from
/// its centre the line passes times the root of `square`.
static bool nearly_touches(double aside, double r, double square) {
  const double low = r - kNearlyTouching, high = r + kNearlyTouching;
  return !(low > 0 && aside * aside < low * low * square) && aside * aside <= high * high * square;
}

/// Whether part_line() has nothing to say of the line through p along d, whose length is the root of
/// `square`.
static inline bool far_from_along(const Measured& edge, Point p, Point d, double square) {
  const Edge& own = edge.edge();
  if (!edge.is_arc()) {
    const Point along = own.to - own.from;
    const double turn = cross(d, along);
    return turn * turn > kNearlyAlong * kNearlyAlong * dot(along, along) * square;
  }
  return !nearly_touches(cross(d, p - own.centre), edge.r(), square);
}

void part_line(const Measured& edge, Point p, Point d, std::vector<double>& ts) {
  if (far_from_along(edge, p, d, 1)) return;
  const Point n = {-d.y, d.x};
  for (const double aside : {kSame, -kSame}) cross_line(edge, p + aside * n, d, ts);
}

void part_circle(const Measured& edge, Point centre, double r, std::vector<double>& ts) {
  const Edge& own = edge.edge();
  if (!edge.is_arc()) {
    const Point along = own.to - own.from;
    if (!nearly_touches(cross(along, centre - own.from), r, dot(along, along))) return;
    for (const double aside : {kSame, -kSame}) cross_circle(edge, centre, r + aside, ts);
    return;
  }
  const double big = edge.r();
  const Point between = centre - own.centre;
  const double gap = norm(between);
  const bool along = gap < kNearlyAlong && std::abs(big - r) < kNearlyAlong;
  const bool crosses_plainly = gap > std::abs(big - r) + kNearlyTouching && gap < big + r - kNearlyTouching;
  if (!along && crosses_plainly) return;
  for (const double aside : {kSame, -kSame}) keep_meetings(edge, between, gap, r + aside, ts);
}

void part_carrier(const Measured& edge, const Measured& other, std::vector<double>& ts) {
  const Edge& its = other.edge();
  if (other.is_arc()) {
    part_circle(edge, its.centre, other.r(), ts);
    return;
  }
  const Point along = its.to - its.from;
  const double square = dot(along, along);
  if (square == 0 || far_from_along(edge, its.from, along, square)) return;
  part_line(edge, its.from, (1 / std::sqrt(square)) * along, ts);
}

void cross_at(const Measured& edge, Point p, std::vector<double>& ts, double reach) {
  const Edge& own = edge.edge();
  if (edge.is_arc()) {
    const Point spoke = p - own.centre;
    const double square = dot(spoke, spoke), least = std::max(0.0, edge.r() - reach);
    if (square > least * least && square < (edge.r() + reach) * (edge.r() + reach))
      keep_spoke(edge, spoke, ts);
    return;
  }
  const Point along = own.to - own.from;
  const double square = dot(along, along);
  const Point off = p - own.from;
  const double aside = cross(along, off);  // times the length of the edge
  if (aside * aside < reach * reach * square) keep(dot(along, off) / square, ts);
}

void extremes_along(const Measured& arc, Point d, std::vector<double>& ts) {
  if (!arc.is_arc()) return;
  keep_spoke(arc, d, ts);
  keep_spoke(arc, -1 * d, ts);
}

}  // namespace arrisline
