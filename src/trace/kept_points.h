// Measured points, however many there are, as no more than are needed.
#pragma once

#include <cstddef>
#include <random>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Points as they are added up to `most`; of more, so many of them in their order: the first and the last,
/// where a line that was traced along begins and ends, and of the others each with the same chance. The
/// choice is the same each time. Chosen points scatter about the line as all of them do, in whatever order or
/// rows they were measured; means of neighbours would not.
class KeptPoints {
 public:
  /// REQUIRES: most is 3 or more.
  explicit KeptPoints(std::size_t most) : before_last_(most - 1) {}
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

  void offer(const Kept& one);

  std::size_t before_last_;  // so many are kept
  std::size_t count_ = 0;
  Point least_;
  Point greatest_;
  Kept last_;
  std::vector<Kept> kept_;  // of those before the last
  std::mt19937_64 random_{1};
};

}  // namespace arrisline
