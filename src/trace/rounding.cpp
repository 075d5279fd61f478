// Shown by tests/trace/rounding_test.cpp.
#include "trace/rounding.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
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

/// The step of decimals; 0 where there are too many.
double decimal_step(const std::vector<Point>& points) {
  double scale = 1;
  for (int decimals = 0; decimals <= kMostDecimals; ++decimals, scale *= 10)
    if (const std::int64_t steps = common(points, scale); steps > 0)
      return static_cast<double>(steps) / scale;
  return 0;
}

std::vector<double> sorted_once(const std::vector<Point>& points, double Point::*axis) {
  std::vector<double> out;
  for (const Point& p : points) out.push_back(p.*axis);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

/// The step of figures that were rounded and then had another unit, or another origin: all lie whole steps
/// from one another, but for what `decimals` rounds off. 0 where they do not.
double step_apart(const std::vector<Point>& points, double decimals) {
  constexpr std::size_t kFewest = 30;  // figures that tell: fewer may lie so by chance
  constexpr double kFinest = 20;       // decimals, below which they hide it
  constexpr double kOff = 0.1;         // of a step
  const std::vector<double> axes[] = {sorted_once(points, &Point::x), sorted_once(points, &Point::y)};
  if (axes[0].size() + axes[1].size() < kFewest) return 0;
  double step = std::numeric_limits<double>::infinity();
  for (const std::vector<double>& axis : axes)
    for (std::size_t i = 1; i < axis.size(); ++i) step = std::min(step, axis[i] - axis[i - 1]);
  if (step < kFinest * decimals) return 0;
  double told = 0;  // by the longest stretch so far
  for (const std::vector<double>& axis : axes) {
    for (const double figure : axis) {
      const double along = figure - axis.front();
      const double steps = std::round(along / step);
      if (std::abs(along - steps * step) > kOff * step) return 0;
      if (along > told) told = along, step = along / steps;
    }
  }
  return step;
}

}  // namespace

double step_of(const std::vector<Point>& points) {
  const double decimals = decimal_step(points);
  return std::max(decimals, step_apart(points, decimals));
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
