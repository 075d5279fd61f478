// Measured points, however many there are, as no more than are needed.
#pragma once

#include <cstddef>
#include <random>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Points as they are added up to `most`; of more, so many of them, each with the same chance, in their
/// order. The choice is the same each time. Chosen points scatter about the line as all of them do, in
/// whatever order or rows they were measured; means of neighbours would not.
class KeptPoints {
 public:
  explicit KeptPoints(std::size_t most) : most_(most) {}
  void add(Point point);
  std::size_t count() const { return count_; }
  /// Of all points. REQUIRES: there is one.
  Point least() const { return least_; }
  Point greatest() const { return greatest_; }
  std::vector<Point> points() const;

 private:
  struct Kept {
    std::size_t number = 0;  // in the order in which they came
    Point point;
  };

  std::size_t most_;
  std::size_t count_ = 0;
  Point least_;
  Point greatest_;
  std::vector<Kept> kept_;
  std::mt19937_64 random_{1};
};

}  // namespace arrisline
