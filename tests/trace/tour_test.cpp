// The way found is the best of all where there are few places, and undoes what small changes do not.
#include "trace/tour.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

#include "catch.h"

namespace arrisline::testing {
namespace {

/// Every order of the places tried.
double least_cost(const std::vector<Point>& places) {
  std::vector<std::size_t> way(places.size());
  std::iota(way.begin(), way.end(), std::size_t{0});
  double least = HUGE_VAL;
  do {
    least = std::min(least, cost_of_way(places, way));
  } while (std::next_permutation(way.begin(), way.end()));
  return least;
}

bool each_once(std::vector<std::size_t> way, std::size_t count) {
  std::sort(way.begin(), way.end());
  std::vector<std::size_t> all(count);
  std::iota(all.begin(), all.end(), std::size_t{0});
  return way == all;
}

TEST_CASE("a way costs its steps and its turns", "[trace][order]") {
  // Straight on 2 mm; then 1 mm square to it, which costs 1 mm more; then half back, 2 × 0.5 mm more.
  const std::vector<Point> places = {{0, 0}, {2, 0}, {2, 1}, {2, 0.5}};
  CHECK(cost_of_way(places, {0, 1}) == Approx(2));
  CHECK(cost_of_way(places, {0, 1, 2}) == Approx(4));
  CHECK(cost_of_way(places, {0, 1, 2, 3}) == Approx(5.5));
}

TEST_CASE("of a few places at random the way found is all but always the best", "[trace][order]") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> somewhere(0, 10);
  int best = 0;
  constexpr int kTried = 40;
  for (int n = 0; n < kTried; ++n) {
    std::vector<Point> places;
    for (int i = 0; i < 7; ++i) places.push_back({somewhere(random), somewhere(random)});
    const std::vector<std::size_t> way = shortest_way(places, std::vector<Point>(places.size()));
    REQUIRE(each_once(way, places.size()));
    const double least = least_cost(places);
    CHECK(cost_of_way(places, way) >= least - 1e-9);
    best += cost_of_way(places, way) <= least + 1e-9;
  }
  CHECK(best >= kTried / 2);
}

TEST_CASE("a way goes round a cleft narrower than the places are apart", "[trace][order]") {
  // Down one side and up the other, 0.6 mm off, a place every millimetre.
  std::vector<Point> places;
  for (int i = 0; i <= 20; ++i) places.push_back({-0.3, static_cast<double>(i)});
  for (int i = 20; i >= 0; --i) places.push_back({0.3, static_cast<double>(i)});
  std::vector<std::size_t> shuffled(places.size());
  std::iota(shuffled.begin(), shuffled.end(), std::size_t{0});
  std::shuffle(shuffled.begin(), shuffled.end(), std::mt19937(3));
  std::vector<Point> given;
  for (const std::size_t i : shuffled) given.push_back(places[i]);
  std::vector<std::size_t> found;
  for (const std::size_t i : shortest_way(given, std::vector<Point>(given.size(), {0, 1})))
    found.push_back(shuffled[i]);
  // Either end may be the open one, and the way may run either way round.
  std::rotate(found.begin(), std::find(found.begin(), found.end(), 0U), found.end());
  if (found[1] != 1) std::reverse(found.begin() + 1, found.end());
  CHECK(std::is_sorted(found.begin(), found.end()));
}

TEST_CASE("places that are alike, or few, are each passed once", "[trace][order]") {
  for (const std::size_t count : {0U, 1U, 2U, 3U, 40U}) {
    const std::vector<Point> places(count, Point{1, 2});
    CHECK(each_once(shortest_way(places, std::vector<Point>(count)), count));
  }
}

}  // namespace
}  // namespace arrisline::testing
