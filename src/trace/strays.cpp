// Shown by tests/trace/strays_test.cpp.
#include "trace/strays.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "trace/beside_line.h"
#include "trace/near_points.h"
#include "trace/spread.h"

namespace arrisline {
namespace {

constexpr std::size_t kFewest = 100;  // points by which it can be told
constexpr double kAlone = 6;          // times the distance that nineteen in twenty lie within of another
constexpr std::size_t kBeside = 8;    // points that tell which way the line runs there
constexpr double kAlong = 0.35;       // of its distance that an end of the line lies off that way

/// Whether p lies on the way that the points nearest to it run.
bool runs_on(Point p, const std::vector<Point>& beside) {
  const Spread here = spread_of(beside, std::vector<double>(beside.size(), 1));
  return std::abs(cross(here.along, p - here.mean)) < kAlong * distance(p, here.mean);
}

/// Parts the points that are told from the rest.
std::vector<Point> take_out(std::vector<Point>& points, const std::vector<bool>& told) {
  std::vector<Point> kept, out;
  for (std::size_t i = 0; i < points.size(); ++i) (told[i] ? out : kept).push_back(points[i]);
  points = std::move(kept);
  return out;
}

std::vector<Point> take_out_alone(std::vector<Point>& points) {
  if (points.size() < kFewest) return {};
  const NearPoints near(points, 0);
  std::vector<double> away;
  for (const Point& p : points) {
    const std::vector<std::size_t> others = near.nearest(p, 2);
    away.push_back(distance(p, points[others.back()]));
  }
  std::vector<double> sorted = away;
  const auto most = sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() * 19 / 20);
  std::nth_element(sorted.begin(), most, sorted.end());
  const double alone = kAlone * *most;
  std::vector<bool> stray(points.size(), false);
  std::size_t count = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (!(away[i] > alone)) continue;
    std::vector<Point> beside;
    for (const std::size_t k : near.nearest(points[i], kBeside + 1))
      if (k != i) beside.push_back(points[k]);
    // Where those that are nearest lie as far apart, the points are few there, and each stands for much.
    if (size_of(beside) > away[i] || runs_on(points[i], beside)) continue;
    stray[i] = true;
    ++count;
  }
  if (count == 0 || 100 * count > points.size()) return {};
  return take_out(points, stray);
}

}  // namespace

std::vector<Point> take_out_strays(std::vector<Point>& points, double tolerance, double step) {
  std::vector<Point> out = take_out(points, beside_line(points, tolerance, step));
  for (const Point& p : take_out_alone(points)) out.push_back(p);
  return out;
}

}  // namespace arrisline
