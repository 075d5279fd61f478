// Points are moved on to the ridge along which they lie densest, few enough of them taken that one comes
// after the other, those put in the order of a way that is short and turns little, and then all along it.
// Shown by tests/trace/order_test.cpp.
#include "trace/order.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <utility>

#include "trace/near_points.h"
#include "trace/spread.h"
#include "trace/tour.h"

namespace arrisline {
namespace {

constexpr std::size_t kMostPlaces = 1200;  // of a way: more take longer and say no more
// Over how much of the line the scatter is averaged out, as a multiple of it: at 2 the sides of a cleft six
// times it wide lie 2.7 standard deviations apart in what is averaged, and two heaps show from 2 on.
constexpr double kWidth = 2;
constexpr int kRounds = 4;  // by which a point comes to rest on the ridge

/// The length of the line, scatter averaged out, if the points follow it in this order.
double length_in_order(const std::vector<Point>& points) {
  const std::size_t group = std::max<std::size_t>(1, points.size() / 100);
  double out = 0;
  Point before;
  for (std::size_t i = 0; i + group <= points.size(); i += group) {
    Point sum;
    for (std::size_t j = i; j < i + group; ++j) sum = sum + points[j];
    const Point mean = (1 / static_cast<double>(group)) * sum;
    if (i > 0) out += distance(before, mean);
    before = mean;
  }
  return out;
}

/// Points of which each other one is within `far`, and none within it of another: each the mean of those that
/// are nearest to it.
struct Net {
  std::vector<Point> places;
  std::vector<Point> along;
};

Net net_of(const std::vector<Point>& points, const std::vector<Point>& along, double far) {
  const NearPoints near(points, far);
  std::vector<std::size_t> of(points.size(), std::numeric_limits<std::size_t>::max());
  std::vector<double> away(points.size(), std::numeric_limits<double>::infinity());
  Net out;
  std::vector<Point> taken;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (away[i] < far) continue;
    near.within(points[i], far, [&](std::size_t k) {
      const double d = distance(points[k], points[i]);
      if (d < away[k]) away[k] = d, of[k] = taken.size();
    });
    away[i] = 0, of[i] = taken.size();
    taken.push_back(points[i]);
  }
  std::vector<double> count(taken.size(), 0);
  out.places.assign(taken.size(), {});
  out.along.assign(taken.size(), {});
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::size_t at = of[i];
    out.places[at] = out.places[at] + points[i];
    out.along[at] = out.along[at] + (dot(out.along[at], along[i]) < 0 ? -1.0 : 1.0) * along[i];
    count[at] += 1;
  }
  for (std::size_t i = 0; i < taken.size(); ++i) {
    out.places[i] = (1 / count[i]) * out.places[i];
    out.along[i] = (1 / count[i]) * out.along[i];
  }
  return out;
}

/// How far along the way each point lies: the number of the step that is nearest, and the share of it.
std::vector<double> along_way(const std::vector<Point>& points, const std::vector<Point>& way) {
  const NearPoints near(way, 0);
  std::vector<double> out;
  for (const Point& p : points) {
    double least = std::numeric_limits<double>::infinity();
    double best = 0;
    for (const std::size_t place : near.nearest(p, 6)) {
      for (const std::size_t step : {place == 0 ? 0 : place - 1, place}) {
        if (step + 1 >= way.size()) continue;
        const Point on = way[step + 1] - way[step];
        const double squared = dot(on, on);
        const double share = squared > 0 ? dot(p - way[step], on) / squared : 0;
        const double held = std::clamp(share, 0.0, 1.0);
        const double d = distance(p, way[step] + held * on);
        if (d >= least) continue;
        least = d;
        // What is nearest to an end of the way lies before it or behind it.
        const bool beyond = (step == 0 && share < 0) || (step + 2 == way.size() && share > 1);
        best = static_cast<double>(step) + (beyond ? share : held);
      }
    }
    out.push_back(best);
  }
  return out;
}

std::vector<Point> sorted_by(const std::vector<Point>& points, const std::vector<double>& along) {
  std::vector<std::size_t> order(points.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return along[a] < along[b]; });
  std::vector<Point> out;
  for (const std::size_t i : order) out.push_back(points[i]);
  return out;
}

std::vector<Point> along_smooth_way(const std::vector<Point>& points) {
  if (points.size() < 4) return points;
  const Density density = density_of(points, NearPoints(points, 0));
  if (!(density.spacing > 0) || !std::isfinite(density.spacing)) return points;
  // Where points are farther apart than they scatter there is little to average, and clefts would close.
  constexpr double kDense = 0.3;  // of the spacing
  const bool dense = density.scatter > kDense * density.spacing;
  const double width = dense ? kWidth * density.scatter : 1.5 * density.spacing;
  std::vector<Point> along;
  const std::vector<Point> ridge = on_ridge(points, width, dense ? kRounds : 0, along);
  const double far = std::max(dense ? std::max(0.75 * width, density.spacing) : 0.0,
                              density.spacing * static_cast<double>(points.size()) / kMostPlaces);
  const Net net = net_of(ridge, along, far);
  std::vector<Point> way;
  for (const std::size_t i : shortest_way(net.places, net.along)) way.push_back(net.places[i]);
  return way.size() < 2 ? points : sorted_by(points, along_way(ridge, way));
}

}  // namespace

std::vector<Point> in_line(const std::vector<Point>& points, bool& changed) {
  changed = false;
  std::vector<Point> sorted = along_smooth_way(points);
  // As they stood they tell more: where the scatter is wider than the points are apart no sorting gets it
  // back.
  constexpr double kAsGood = 1.1;
  if (length_in_order(points) <= kAsGood * length_in_order(sorted)) return points;
  changed = true;
  return sorted;
}

}  // namespace arrisline
