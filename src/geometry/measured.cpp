// Shown by tests/geometry/crossing_test.cpp.
#include "geometry/measured.h"

#include <cmath>

namespace arrisline {

double Measured::sweep() const {
  if (sweep_ == 0) sweep_ = arrisline::sweep(edge_);
  return sweep_;
}

double Measured::length() const {
  return is_arc() ? std::abs(sweep()) * r_ : distance(edge_.from, edge_.to);
}

Point Measured::spoke(double t) const {
  const Point a = edge_.from - edge_.centre;
  const double angle = t * sweep(), c = std::cos(angle), s = std::sin(angle);
  return {c * a.x - s * a.y, s * a.x + c * a.y};
}

Point Measured::at(double t) const {
  if (t <= 0) return edge_.from;
  if (t >= 1) return edge_.to;
  return is_arc() ? edge_.centre + spoke(t) : edge_.from + t * (edge_.to - edge_.from);
}

Point Measured::direction(double t) const {
  if (!is_arc()) {
    const double n = distance(edge_.from, edge_.to);
    return n > 0 ? (1 / n) * (edge_.to - edge_.from) : Point{};
  }
  const Point p = spoke(t);
  const double n = norm(p);
  const Point ahead = {-p.y / n, p.x / n};
  return edge_.turn == Turn::left ? ahead : -1 * ahead;
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

double Measured::fraction(Point spoke) const {
  const Point a = edge_.from - edge_.centre;
  double ahead = std::atan2(cross(a, spoke), dot(a, spoke));
  if (edge_.turn == Turn::right) ahead = -ahead;
  if (ahead < 0) ahead += 2 * kPi;
  return ahead / std::abs(sweep());
}

}  // namespace arrisline
