// Many points as few: means of the squares of a grid.
#include "trace/kept_points.h"

#include <map>
#include <random>

#include "catch.h"
#include "trace/faults.h"

using namespace arrisline;

namespace {

/// The same by other means: of grids with sides 2^k, the finest with few enough squares.
std::map<std::pair<double, double>, Point> means(const std::vector<Point>& points, std::size_t most) {
  for (int k = -60;; ++k) {
    const double side = std::ldexp(1, k);
    std::map<std::pair<double, double>, std::pair<Point, double>> sums;
    for (const Point p : points) {
      auto& [sum, count] = sums[{std::floor(p.x / side), std::floor(p.y / side)}];
      sum = sum + p;
      ++count;
    }
    if (sums.size() > most) continue;
    std::map<std::pair<double, double>, Point> out;
    for (const auto& [square, sum] : sums) out[square] = (1 / sum.second) * sum.first;
    return out;
  }
}

std::vector<Point> kept(const std::vector<Point>& points, std::size_t most) {
  KeptPoints keeper(most);
  for (const Point p : points) keeper.add(p);
  CHECK(keeper.count() == points.size());
  return keeper.points();
}

}  // namespace

TEST_CASE("points that are few stay as they are", "[trace][points]") {
  const std::vector<Point> points{{3, 1}, {1, 1}, {3, 1}, {-2, 0}};
  CHECK(kept(points, 4) == points);
}

TEST_CASE("points that are many are averaged, whatever their order", "[trace][points]") {
  std::mt19937 random(7);
  std::normal_distribution<double> noise(0, 0.05);
  for (const std::size_t most : {10u, 100u, 999u}) {
    std::vector<Point> points;
    for (int i = 0; i < 5000; ++i) {
      const double t = 0.01 * i;
      points.push_back({t - 20 + noise(random), 10 * std::sin(0.3 * t) + noise(random)});
    }
    const auto expected = means(points, most);
    CHECK(expected.size() > most / 4);
    for (int order = 0; order < 3; ++order) {
      const std::vector<Point> out = kept(points, most);
      REQUIRE(out.size() == expected.size());
      double off = 0;
      for (const auto& [square, mean] : expected) {
        double least = HUGE_VAL;
        for (const Point p : out) least = std::min(least, distance(p, mean));
        off = std::max(off, least);
      }
      CHECK(off < 1e-9);
      if (order == 0) {
        // In the order of the line: from one to the next is not far.
        for (std::size_t i = 0; i + 1 < out.size(); ++i)
          REQUIRE(distance(out[i], out[i + 1]) < 600.0 / static_cast<double>(most) + 0.5);
      }
      std::shuffle(points.begin(), points.end(), random);
    }
  }
}

TEST_CASE("figures far apart fit into the grid", "[trace][points]") {
  std::vector<Point> points;
  for (int i = 0; i < 20; ++i) points.push_back({i * 1e-9, 0});
  points.push_back({kLargestFigure, -kLargestFigure});
  points.push_back({-kLargestFigure, kLargestFigure});
  const std::vector<Point> out = kept(points, 10);
  CHECK(out.size() <= 10);
  CHECK(out.size() >= 3);
  CHECK(out[out.size() - 2] == Point{kLargestFigure, -kLargestFigure});
}
