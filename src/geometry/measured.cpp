// Shown by tests/geometry/measured_test.cpp and tests/geometry/crossing_test.cpp.
#include "geometry/measured.h"

#include <cmath>

namespace arrisline {

/// How far the spoke is turned from the first of the arc: whole quarter turns, and of the last one the share
/// that the leg across has of both.
double Measured::turned_to(Point spoke) const {
  const Point a = edge_.from - edge_.centre;
  const double along = dot(a, spoke);
  const double across = edge_.turn == Turn::left ? cross(a, spoke) : cross(spoke, a);
  if (across >= 0) return along > 0 ? across / (across + along) : 1 - along / (across - along);
  return along < 0 ? 2 + across / (across + along) : 3 + along / (along - across);
}

double Measured::whole() const {
  if (whole_ == 0) whole_ = turned_to(edge_.to - edge_.centre);
  // As sweep(): an arc that ends where it began is a whole turn.
  if (whole_ == 0) whole_ = 4;
  return whole_;
}

double Measured::short_length() const {
  return is_arc() ? whole() * r_ : distance(edge_.from, edge_.to);
}

Point Measured::at(double t) const {
  if (t <= 0) return edge_.from;
  if (t >= 1) return edge_.to;
  if (!is_arc()) return edge_.from + t * (edge_.to - edge_.from);
  const double turned = t * whole();
  const int quarters = static_cast<int>(turned);
  const double share = turned - quarters;
  Point legs = {1 - share, share};
  if ((quarters & 1) != 0) legs = {-legs.y, legs.x};
  if ((quarters & 2) != 0) legs = -1 * legs;
  if (edge_.turn == Turn::right) legs.y = -legs.y;
  const Point a = edge_.from - edge_.centre;
  return edge_.centre + 1 / norm(legs) * Point{legs.x * a.x - legs.y * a.y, legs.y * a.x + legs.x * a.y};
}

Point Measured::left_of(Point p) const {
  if (is_arc()) return (edge_.turn == Turn::left ? 1 : -1) / r_ * (edge_.centre - p);
  const Point along = edge_.to - edge_.from;
  return 1 / norm(along) * Point{-along.y, along.x};
}

Edge Measured::piece(double t0, double t1) const {
  Edge out = edge_;
  out.from = at(t0);
  out.to = at(t1);
  return out;
}

double Measured::place(Point spoke) const {
  return turned_to(spoke) / whole();
}

}  // namespace arrisline
