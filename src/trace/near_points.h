// Which points lie near a place.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Points dealt out to the squares of a grid.
class NearPoints {
 public:
  /// `side` of a square, mm: about as far as is looked. More squares than a few for each point there never
  /// are. REQUIRES: at least 1 point; the points outlive this.
  NearPoints(const std::vector<Point>& points, double side);

  /// Calls `found` with the index of each point at most so far from p.
  template <class Found>
  void within(Point p, double far, const Found& found) const {
    const auto [left, right] = columns(p.x - far, p.x + far);
    const auto [top, bottom] = rows(p.y - far, p.y + far);
    for (std::size_t row = top; row <= bottom; ++row) {
      const std::size_t begin = begins_[row * across_ + left];
      const std::size_t end = begins_[row * across_ + right + 1];
      for (std::size_t k = begin; k < end; ++k)
        if (distance(points_[dealt_[k]], p) <= far) found(dealt_[k]);
    }
  }

  /// The nearest `count` points, the nearest first; all where there are fewer. A point at p is one of them.
  std::vector<std::size_t> nearest(Point p, std::size_t count) const;

 private:
  struct Range {
    std::size_t first, last;
  };
  static Range range(double low, double high, double origin, double side, std::size_t count);
  Range columns(double low, double high) const { return range(low, high, low_.x, side_, across_); }
  Range rows(double low, double high) const { return range(low, high, low_.y, side_, down_); }

  const std::vector<Point>& points_;
  Point low_;
  double side_ = 1;
  double size_ = 0;  // of the whole
  std::size_t across_ = 1, down_ = 1;
  std::vector<std::size_t> begins_;  // of each square, in dealt_
  std::vector<std::size_t> dealt_;   // indices of points, square by square
};

}  // namespace arrisline
