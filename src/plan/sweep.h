// The region that a plane at one pose takes: everything its sole passes through on the way in.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "arrisline/plane.h"
#include "geometry/measured.h"

namespace arrisline {

/// The whole edge lies farther than `reach` to one side of `at`, measured along the unit vector e.
bool lies_beside(const Measured& edge, Point at, Point e, double reach);

/// One pose of one plane with its directions worked out. Holds a pointer to the plane, which must outlive it.
class Sweep {
 public:
  Sweep(const Plane& plane, const Pose& pose);

  const Plane& plane() const { return *plane_; }
  const Pose& pose() const { return pose_; }
  double half() const { return half_; }
  Point e() const { return e_; }
  Point a() const { return a_; }

  double u(Point p) const { return dot(p - pose_.at, e_); }
  double v(Point p) const { return dot(p - pose_.at, a_); }

  /// How deep p lies in the region in mm: the distance to the nearer of sole and sides where it is inside,
  /// negative outside (there not a distance).
  double depth(Point p) const {
    const double within_sides = half_ - std::abs(u(p));
    switch (plane_->kind) {
      case PlaneKind::round:
        // Above the centre the nearest of the sole is farther off than the nearer side.
        return v(p) >= plane_->radius ? within_sides
                                      : std::min(within_sides, plane_->radius - distance(p, centre_));
      case PlaneKind::hollow:
        // ... and below it nothing is within.
        return v(p) <= -plane_->radius ? kFarOutside
                                       : std::min(within_sides, distance(p, centre_) - plane_->radius);
      case PlaneKind::shaped:
        return std::min(within_sides, depth_over_shape(p));
      default:
        return std::min(within_sides, v(p));
    }
  }

  /// The whole edge lies beyond one of the plane's sides or below its sole, more than `by` mm off its
  /// outline. An edge that this does not tell may be clear of it all the same.
  bool clear_of(const Measured& edge, double by) const;

  /// Between two places within it lies all that is straight between them: not over a hollow sole.
  bool is_convex() const { return plane_->is_flat() || plane_->kind == PlaneKind::round; }

  /// Left side, sole and right side in one chain with the wood to the left; the sides run up to `far`
  /// above the middle of the sole.
  std::vector<Edge> boundary(double far) const;
  /// Appends the same.
  void add_boundary(double far, std::vector<Edge>& chain) const;

  /// Appends the places at which the edge crosses the outline of this region drawn in by `inset` on
  /// all sides (its lines and circles produced).
  void crossings(const Measured& edge, double inset, std::vector<double>& ts) const;

  /// Appends the places at which the edge parts from the outline of this region, where it runs along it or
  /// all but touches it: see part_line().
  void partings(const Measured& edge, std::vector<double>& ts) const;

  /// The same region slid out of the wood by `height` along the plane.
  Sweep lifted(double height) const;

 private:
  static constexpr double kFarOutside = -std::numeric_limits<double>::infinity();
  double depth_over_shape(Point p) const;
  Edge own_sole() const;

  const Plane* plane_;
  Pose pose_;
  double half_;
  Point e_;
  Point a_;
  Point centre_;            // of a curved sole, in the section
  std::vector<Edge> sole_;  // of a shaped sole, in the section
};

}  // namespace arrisline
