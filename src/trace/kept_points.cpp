// A sample drawn in one pass: point n takes the place of one drawn before with chance most/n (Vitter's
// algorithm R, ACM Transactions on Mathematical Software 11, 1985). Shown by
// tests/trace/kept_points_test.cpp.
#include "trace/kept_points.h"

#include <algorithm>

namespace arrisline {

void KeptPoints::add(Point point) {
  if (count_ == 0) least_ = greatest_ = point;
  least_ = {std::min(least_.x, point.x), std::min(least_.y, point.y)};
  greatest_ = {std::max(greatest_.x, point.x), std::max(greatest_.y, point.y)};
  const std::size_t number = count_++;
  if (kept_.size() < most_) {
    kept_.push_back({number, point});
    return;
  }
  // The remainder is even enough: of 64 bits for numbers of at most some thousand millions.
  const std::size_t place = static_cast<std::size_t>(random_() % count_);
  if (place < most_) kept_[place] = {number, point};
}

std::vector<Point> KeptPoints::points() const {
  std::vector<Kept> kept = kept_;
  std::sort(kept.begin(), kept.end(), [](const Kept& a, const Kept& b) { return a.number < b.number; });
  std::vector<Point> out;
  out.reserve(kept.size());
  for (const Kept& one : kept) out.push_back(one.point);
  return out;
}

}  // namespace arrisline
