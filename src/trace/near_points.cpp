// A grid of squares, row by row. Shown by tests/trace/near_points_test.cpp.
#include "trace/near_points.h"

namespace arrisline {

NearPoints::NearPoints(const std::vector<Point>& points, double side) : points_(points) {
  low_ = points.front();
  Point high = low_;
  for (const Point& p : points) {
    low_ = {std::min(low_.x, p.x), std::min(low_.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  size_ = distance(low_, high);
  // Squares enough for a line that fills the rectangle sparsely, and no more memory than the points take.
  const double most = std::max(1.0, 2 * std::sqrt(static_cast<double>(points.size())));
  side_ = std::max({side, std::max(high.x - low_.x, high.y - low_.y) / most, 1e-300});
  across_ = static_cast<std::size_t>((high.x - low_.x) / side_) + 1;
  down_ = static_cast<std::size_t>((high.y - low_.y) / side_) + 1;
  auto square = [&](Point p) { return rows(p.y, p.y).first * across_ + columns(p.x, p.x).first; };
  begins_.assign(across_ * down_ + 1, 0);
  for (const Point& p : points) ++begins_[square(p) + 1];
  for (std::size_t i = 1; i < begins_.size(); ++i) begins_[i] += begins_[i - 1];
  std::vector<std::size_t> next(begins_.begin(), begins_.end() - 1);
  dealt_.resize(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) dealt_[next[square(points[i])]++] = i;
}

NearPoints::Range NearPoints::range(double low, double high, double origin, double side, std::size_t count) {
  auto at = [&](double value) {
    return static_cast<std::size_t>(
        std::clamp(std::floor((value - origin) / side), 0.0, static_cast<double>(count - 1)));
  };
  return {at(low), at(high)};
}

std::vector<std::size_t> NearPoints::nearest(Point p, std::size_t count) const {
  count = std::min(count, points_.size());
  std::vector<std::size_t> out;
  // Seen from p, which may lie outside, all is within the distance to the low corner and the whole size.
  const double all = distance(p, low_) + 2 * size_;
  for (double far = side_; out.size() < count; far *= 2) {
    out.clear();
    within(p, far, [&](std::size_t i) { out.push_back(i); });
    if (far > all) break;
  }
  std::sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    const double to_a = distance(points_[a], p);
    const double to_b = distance(points_[b], p);
    return to_a < to_b || (to_a == to_b && a < b);
  });
  out.resize(std::min(count, out.size()));
  return out;
}

}  // namespace arrisline
