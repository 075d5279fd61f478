// An edge whose radius, sweep and length are worked out once.
#pragma once

#include "arrisline/geometry.h"

namespace arrisline {

/// Refers to the edge, which must outlive it. Edges turn into this by themselves where they are handed on.
///
/// A place on the edge is told by a figure t that grows along it from 0 to 1: on a straight edge the share of
/// its length, on an arc one that is had from the direction of its spoke without angles (the two legs of the
/// spoke's triangle, of each quarter turn the one as a share of both). No more is to be read from it; shares
/// of the length of an arc are those of point_at().
class Measured {
 public:
  Measured(const Edge& edge) : edge_(edge), r_(edge.is_arc() ? radius(edge) : 0) {}

  const Edge& edge() const { return edge_; }
  bool is_arc() const { return edge_.is_arc(); }
  /// Of an arc; 0 of a straight edge.
  double r() const { return r_; }
  /// No more than the length of the edge, and no less than six tenths of it; of a straight edge its length.
  /// What lies between t0 and t1 is no shorter than (t1 − t0) of this.
  double short_length() const;

  Point at(double t) const;
  /// Unit normal to the left at p. REQUIRES: p lies on the edge, and the edge is not a point.
  Point left_of(Point p) const;
  /// The piece between t0 < t1. Ends at 0 and 1 keep the edge's own end points bit for bit.
  Edge piece(double t0, double t1) const;

  /// Where on the arc its spoke, a vector from the centre, points so. REQUIRES: it does somewhere
  /// (spoke_meets()).
  double place(Point spoke) const;

 private:
  double turned_to(Point spoke) const;
  double whole() const;

  const Edge& edge_;
  double r_;
  mutable double whole_ = 0;  // of an arc, turned_to() its end; 0 until it is asked for
};

}  // namespace arrisline
