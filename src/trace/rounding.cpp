// Shown by tests/trace/rounding_test.cpp.
#include "trace/rounding.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>

namespace arrisline {
namespace {

constexpr int kMostDecimals = 6;    // more are no rounding that anything is measured to
constexpr double kWhole = 1e-5;     // by which a figure of so many decimals may be off a whole number of them
constexpr double kMostSteps = 1e9;  // past which arithmetic itself comes near that

/// `figure` in units of its last decimal; false where it has more decimals.
bool whole(double figure, double scale, std::int64_t& out) {
  const double scaled = figure * scale;
  const double near = std::round(scaled);
  if (std::abs(scaled) > kMostSteps || std::abs(scaled - near) > kWhole) return false;
  out = static_cast<std::int64_t>(near);
  return true;
}

/// The greatest number that divides all figures, in units of a decimal; 0 where one has more decimals.
std::int64_t common(const std::vector<Point>& points, double scale) {
  std::int64_t out = 0;
  for (const Point& p : points) {
    std::int64_t x = 0, y = 0;
    if (!whole(p.x, scale, x) || !whole(p.y, scale, y)) return 0;
    out = std::gcd(std::gcd(x, y), out);
  }
  return out;
}

}  // namespace

double step_of(const std::vector<Point>& points) {
  double scale = 1;
  for (int decimals = 0; decimals <= kMostDecimals; ++decimals, scale *= 10)
    if (const std::int64_t steps = common(points, scale); steps > 0)
      return static_cast<double>(steps) / scale;
  return 0;
}

bool shows_rounding(const std::vector<Point>& line) {
  constexpr double kStraight = 1e-6;  // of the way there and on: less is arithmetic
  constexpr int kTells = 3;           // turns, each with another one beside it
  int beside = 0;
  bool before = false;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const Point in = line[i] - line[i - 1];
    const Point on = line[i + 1] - line[i];
    const bool turns = std::abs(cross(in, on)) > kStraight * norm(in) * norm(on);
    beside += turns && before ? 1 : 0;
    before = turns;
  }
  return beside >= kTells;
}

}  // namespace arrisline
