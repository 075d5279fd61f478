// The grid grows coarser as squares fill up, so that one pass in little memory is enough, and the grid that
// is left does not depend on the order of the points. Shown by tests/trace/kept_points_test.cpp.
#include "trace/kept_points.h"

#include <algorithm>
#include <cmath>

namespace arrisline {

/// The first grid: fine against the points so far, but never so fine that kLargestFigure would not fit into
/// the number of a square.
static constexpr double kFirstShare = 1.0 / (1 << 20);
static constexpr double kLeastSide = 1e-9;

std::size_t KeptPoints::Hash::operator()(const Square& square) const {
  // Odd constants spread neighbours; the last step brings the high bits down.
  const std::uint64_t mixed = static_cast<std::uint64_t>(square.x) * 0x9E3779B97F4A7C15u +
                              static_cast<std::uint64_t>(square.y) * 0xC2B2AE3D27D4EB4Fu;
  return static_cast<std::size_t>(mixed ^ (mixed >> 29));
}

void KeptPoints::add(Point point) {
  if (count_++ == 0) least_ = greatest_ = point;
  least_ = {std::min(least_.x, point.x), std::min(least_.y, point.y)};
  greatest_ = {std::max(greatest_.x, point.x), std::max(greatest_.y, point.y)};
  if (side_ == 0 && as_they_are_.size() < most_) {
    as_they_are_.push_back(point);
    return;
  }
  if (side_ == 0) {
    const Point extent = greatest_ - least_;
    const double wanted = std::max(std::max(extent.x, extent.y) * kFirstShare, kLeastSide);
    side_ = std::exp2(std::ceil(std::log2(wanted)));
    for (const Point one : as_they_are_) average(one);
    as_they_are_.clear();
  }
  average(point);
}

void KeptPoints::average(Point point) {
  const Square square{static_cast<std::int64_t>(std::floor(point.x / side_)),
                      static_cast<std::int64_t>(std::floor(point.y / side_))};
  add_sum({square, point, 1});
  while (sums_.size() > most_) coarsen();
}

void KeptPoints::add_sum(const Sum& sum) {
  const auto [found, added] = index_.try_emplace(sum.square, sums_.size());
  if (added) {
    sums_.push_back(sum);
    return;
  }
  Sum& all = sums_[found->second];
  all.sum = all.sum + sum.sum;
  all.count += sum.count;
}

void KeptPoints::coarsen() {
  side_ *= 2;
  std::vector<Sum> finer;
  finer.swap(sums_);
  index_.clear();
  for (Sum& sum : finer) {
    // Halves, rounded down for negative numbers too.
    sum.square = {sum.square.x >> 1, sum.square.y >> 1};
    add_sum(sum);
  }
}

std::vector<Point> KeptPoints::points() const {
  if (side_ == 0) return as_they_are_;
  std::vector<Point> out;
  out.reserve(sums_.size());
  for (const Sum& sum : sums_) out.push_back((1 / sum.count) * sum.sum);
  return out;
}

}  // namespace arrisline
