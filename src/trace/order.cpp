// A shortest tree through the points finds how near neighbours are and where the line ends; the way along
// near neighbours from one end then tells how far along the line each point lies. A narrow quirk is no short
// cut, since only neighbours much nearer than its width are joined. Shown by tests/trace/round_trip_test.cpp.
#include "trace/order.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <queue>
#include <utility>

namespace arrisline {
namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

struct Join {
  std::size_t a = 0;
  std::size_t b = 0;
  double length = 0;
};

/// The shortest tree that joins all points (Prim's way, every pair looked at).
std::vector<Join> shortest_tree(const std::vector<Point>& points) {
  std::vector<double> near(points.size(), kFar);
  std::vector<std::size_t> to(points.size(), 0);
  std::vector<bool> in(points.size(), false);
  std::vector<Join> tree;
  std::size_t last = 0;
  in[0] = true;
  for (std::size_t n = 1; n < points.size(); ++n) {
    std::size_t next = 0;
    double least = kFar;
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (in[i]) continue;
      const double d = distance(points[i], points[last]);
      if (d < near[i]) near[i] = d, to[i] = last;
      if (near[i] < least) least = near[i], next = i;
    }
    in[next] = true;
    tree.push_back({to[next], next, least});
    last = next;
  }
  return tree;
}

using Joins = std::vector<std::vector<std::pair<std::size_t, double>>>;

Joins joins_of(std::size_t count, const std::vector<Join>& list) {
  Joins out(count);
  for (const Join& join : list) {
    out[join.a].emplace_back(join.b, join.length);
    out[join.b].emplace_back(join.a, join.length);
  }
  return out;
}

/// The length of the shortest way from `start` to each point.
std::vector<double> ways_from(std::size_t start, const Joins& joins) {
  std::vector<double> out(joins.size(), kFar);
  using Entry = std::pair<double, std::size_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue;
  out[start] = 0;
  queue.emplace(0, start);
  while (!queue.empty()) {
    const auto [way, at] = queue.top();
    queue.pop();
    if (way > out[at]) continue;
    for (const auto& [next, length] : joins[at]) {
      if (way + length < out[next]) {
        out[next] = way + length;
        queue.emplace(out[next], next);
      }
    }
  }
  return out;
}

std::size_t farthest(const std::vector<double>& ways) {
  return static_cast<std::size_t>(std::max_element(ways.begin(), ways.end()) - ways.begin());
}

/// All pairs nearer than `limit`, found by sorting along x.
void add_neighbours(const std::vector<Point>& points, double limit, std::vector<Join>& list) {
  std::vector<std::size_t> by_x(points.size());
  std::iota(by_x.begin(), by_x.end(), std::size_t{0});
  std::sort(by_x.begin(), by_x.end(),
            [&](std::size_t a, std::size_t b) { return points[a].x < points[b].x; });
  for (std::size_t i = 0; i < by_x.size(); ++i) {
    for (std::size_t j = i + 1; j < by_x.size() && points[by_x[j]].x - points[by_x[i]].x <= limit; ++j) {
      const double d = distance(points[by_x[i]], points[by_x[j]]);
      if (d <= limit) list.push_back({by_x[i], by_x[j], d});
    }
  }
}

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

std::vector<Point> along_from(const std::vector<Point>& points, const std::vector<double>& ways) {
  std::vector<std::size_t> order(points.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return ways[a] < ways[b]; });
  std::vector<Point> out;
  for (const std::size_t i : order) out.push_back(points[i]);
  return out;
}

}  // namespace

std::vector<Point> in_line(std::vector<Point> points) {
  if (points.size() < 3) return points;
  std::vector<Join> list = shortest_tree(points);
  std::vector<double> lengths;
  for (const Join& join : list) lengths.push_back(join.length);
  std::sort(lengths.begin(), lengths.end());
  const double usual = lengths[lengths.size() * 19 / 20];

  Joins joins = joins_of(points.size(), list);
  const std::size_t one = farthest(ways_from(0, joins));
  const std::vector<double> along_tree = ways_from(one, joins);
  const std::size_t other = farthest(along_tree);
  // The ends of a closed line meet, and near neighbours would lead both ways round it.
  const bool open = distance(points[one], points[other]) > 8 * usual || along_tree[other] < 40 * usual;
  std::vector<Point> sorted = along_from(points, along_tree);
  if (open) {
    add_neighbours(points, 4 * usual, list);
    joins = joins_of(points.size(), list);
    // Where a cleft makes a short cut, the way looks longest to somewhere before the end: the better of both.
    const std::vector<double> from_one = ways_from(one, joins);
    sorted = along_from(points, from_one);
    std::vector<Point> other_way = along_from(points, ways_from(farthest(from_one), joins));
    if (length_in_order(other_way) < length_in_order(sorted)) sorted = std::move(other_way);
  }
  // As they stood they tell more: where the scatter is wider than the points are apart no sorting gets it
  // back.
  constexpr double kAsGood = 1.1;
  return length_in_order(points) <= kAsGood * length_in_order(sorted) ? points : sorted;
}

}  // namespace arrisline
