// An edge whose radius, sweep and length are worked out once.
#pragma once

#include "arrisline/geometry.h"

namespace arrisline {

/// Refers to the edge, which must outlive it. Edges turn into this by themselves where they are handed on.
class Measured {
 public:
  Measured(const Edge& edge) : edge_(edge), r_(edge.is_arc() ? radius(edge) : 0) {}

  const Edge& edge() const { return edge_; }
  bool is_arc() const { return edge_.is_arc(); }
  /// Of an arc; 0 of a straight edge.
  double r() const { return r_; }
  double length() const;

  /// As point_at(), direction_at() and piece().
  Point at(double t) const;
  Point direction(double t) const;
  /// Unit normal to the left at p. REQUIRES: p lies on the edge, and the edge is not a point.
  Point left_of(Point p) const;
  Edge piece(double t0, double t1) const;

  /// The fraction of the arc at which its spoke, a vector from the centre, points so. REQUIRES: it does
  /// somewhere on the arc (spoke_meets()).
  double fraction(Point spoke) const;

 private:
  double sweep() const;
  Point spoke(double t) const;

  const Edge& edge_;
  double r_;
  mutable double sweep_ = 0;  // of an arc; 0 until it is asked for
};

}  // namespace arrisline
