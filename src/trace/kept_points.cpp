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
  if (count_ > 0) offer(last_);
  last_ = {count_++, point};
}

/// Takes in the point that is the last no longer. The first keeps its place.
void KeptPoints::offer(const Kept& one) {
  if (kept_.size() < before_last_) {
    kept_.push_back(one);
    return;
  }
  // The remainder is even enough: of 64 bits for numbers of at most some thousand millions.
  const std::size_t place = 1 + static_cast<std::size_t>(random_() % one.number);
  if (place < before_last_) kept_[place] = one;
}

std::vector<Point> KeptPoints::points() const {
  std::vector<Kept> kept = kept_;
  std::sort(kept.begin(), kept.end(), [](const Kept& a, const Kept& b) { return a.number < b.number; });
  std::vector<Point> out;
  out.reserve(kept.size() + 1);
  for (const Kept& one : kept) out.push_back(one.point);
  if (count_ > 0) out.push_back(last_.point);
  return out;
}

}  // namespace arrisline
