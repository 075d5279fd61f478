// What the grid finds is what looking at every point finds.
#include "trace/near_points.h"

#include <random>

#include "catch.h"

namespace arrisline::testing {
namespace {

TEST_CASE("points near a place are those that a look at every one finds", "[trace][order]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> somewhere(-5, 5);
  for (const double side : {0.0, 0.3, 50.0}) {
    std::vector<Point> points;
    for (int i = 0; i < 300; ++i) points.push_back({somewhere(random), 0.01 * somewhere(random)});
    const NearPoints near(points, side);
    for (int n = 0; n < 50; ++n) {
      const Point p = {1.5 * somewhere(random), somewhere(random)};
      const double far = std::abs(somewhere(random));
      std::vector<std::size_t> found, wanted;
      near.within(p, far, [&](std::size_t i) { found.push_back(i); });
      std::sort(found.begin(), found.end());
      for (std::size_t i = 0; i < points.size(); ++i)
        if (distance(points[i], p) <= far) wanted.push_back(i);
      CHECK(found == wanted);
      std::vector<double> all;
      for (const Point& q : points) all.push_back(distance(p, q));
      std::sort(all.begin(), all.end());
      const std::vector<std::size_t> nearest = near.nearest(p, 8);
      REQUIRE(nearest.size() == 8);
      for (std::size_t i = 0; i < 8; ++i) CHECK(distance(points[nearest[i]], p) == all[i]);
    }
  }
}

TEST_CASE("points that are all alike, or one alone, are found", "[trace][order]") {
  const std::vector<Point> alike(5, Point{2, 3});
  CHECK(NearPoints(alike, 0).nearest({2, 3}, 3).size() == 3);
  CHECK(NearPoints(alike, 0).nearest({1e6, -1e6}, 9).size() == 5);
  const std::vector<Point> one = {{1, 1}};
  CHECK(NearPoints(one, 1).nearest({0, 0}, 2) == std::vector<std::size_t>{0});
}

}  // namespace
}  // namespace arrisline::testing
