// Many points as few, each with the same chance.
#include "trace/kept_points.h"

#include <algorithm>
#include <set>

#include "catch.h"

using namespace arrisline;

namespace {

/// The numbers kept of points 0, 1, 2, … `count` − 1.
std::vector<std::size_t> kept(std::size_t count, std::size_t most) {
  KeptPoints keeper(most);
  for (std::size_t i = 0; i < count; ++i) keeper.add({static_cast<double>(i), -static_cast<double>(i)});
  CHECK(keeper.count() == count);
  CHECK(keeper.least() == Point{0, 1 - static_cast<double>(count)});
  CHECK(keeper.greatest() == Point{static_cast<double>(count) - 1, 0});
  std::vector<std::size_t> out;
  for (const Point p : keeper.points()) {
    CHECK(p.y == -p.x);
    out.push_back(static_cast<std::size_t>(p.x));
  }
  return out;
}

}  // namespace

TEST_CASE("points that are few stay as they are", "[trace][points]") {
  CHECK(kept(4, 4) == std::vector<std::size_t>{0, 1, 2, 3});
  CHECK(kept(3, 4) == std::vector<std::size_t>{0, 1, 2});
}

TEST_CASE("of many points some are kept, in their order and the same each time", "[trace][points]") {
  const std::vector<std::size_t> numbers = kept(100000, 1000);
  CHECK(numbers.size() == 1000);
  CHECK(std::is_sorted(numbers.begin(), numbers.end()));
  CHECK(std::set<std::size_t>(numbers.begin(), numbers.end()).size() == 1000);
  CHECK(kept(100000, 1000) == numbers);
}

TEST_CASE("of many points the first and the last are kept, where the line ends", "[trace][points]") {
  for (const std::size_t count : {5U, 1000U, 100000U}) {
    const std::vector<std::size_t> numbers = kept(count, 4);
    REQUIRE(numbers.size() == 4);
    CHECK(numbers.front() == 0);
    CHECK(numbers.back() == count - 1);
  }
}

TEST_CASE("every point has the same chance to be kept", "[trace][points]") {
  const std::vector<std::size_t> numbers = kept(1 << 20, 16384);
  // In 64 parts of the file, and in 64 places of rows of 1024, as a scanner measures them: 256 each on
  // average, with a standard deviation of 16 (binomial); 5 of them would come once in some ten thousand such
  // tests.
  std::vector<int> parts(64);
  std::vector<int> places(64);
  for (const std::size_t number : numbers) {
    ++parts[number >> 14];
    ++places[(number & 1023) >> 4];
  }
  for (const std::vector<int>& counts : {parts, places}) {
    CHECK(*std::min_element(counts.begin(), counts.end()) > 256 - 80);
    CHECK(*std::max_element(counts.begin(), counts.end()) < 256 + 80);
  }
}
