// Measured points, however many there are, as no more than are needed.
#pragma once

#include <cstddef>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Points as they are added up to `most`; when there are more, the mean of those in each square of a grid,
/// the finest (of sides a power of two) with no more than `most` squares that hold any. Squares come in the
/// order in which the first of their points came, so what follows the line goes on following it.
class KeptPoints {
 public:
  explicit KeptPoints(std::size_t most) : most_(most) {}
  /// REQUIRES: coordinates within ±kLargestFigure.
  void add(Point point);
  std::size_t count() const { return count_; }
  Point least() const { return least_; }
  Point greatest() const { return greatest_; }
  std::vector<Point> points() const;

 private:
  struct Square {
    std::int64_t x = 0;
    std::int64_t y = 0;
    bool operator==(const Square&) const = default;
  };
  struct Hash {
    std::size_t operator()(const Square& square) const;
  };
  struct Sum {
    Square square;
    Point sum;
    double count = 0;
  };

  void average(Point point);
  void add_sum(const Sum& sum);
  void coarsen();

  std::size_t most_;
  std::size_t count_ = 0;
  Point least_;
  Point greatest_;
  std::vector<Point> as_they_are_;
  double side_ = 0;  // of a square; 0 while the points are kept as they are
  std::vector<Sum> sums_;
  std::unordered_map<Square, std::size_t, Hash> index_;
};

}  // namespace arrisline
