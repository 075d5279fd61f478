// Pieces of a boundary become outlines, whatever their order.
#include "sheet/outline.h"

#include <algorithm>
#include <random>

#include "catch.h"
#include "plan/wood.h"
#include "sheet/plans.h"

using namespace arrisline;

namespace {

std::vector<Edge> straight(const std::vector<Point>& points) {
  std::vector<Edge> out;
  for (std::size_t i = 0; i < points.size(); ++i)
    out.push_back({points[i], points[(i + 1) % points.size()], {}, Turn::straight});
  return out;
}

void check_closed(const Region& region) {
  for (const Loop& loop : region) {
    for (std::size_t i = 0; i < loop.size(); ++i) CHECK(loop[i].to == loop[(i + 1) % loop.size()].from);
  }
}

}  // namespace

TEST_CASE("an outline is linked from pieces in any order", "[sheet]") {
  std::vector<Edge> pieces = straight({{0, 0}, {10, 0}, {10, 5}, {0, 5}});
  std::mt19937 random(1);
  for (int i = 0; i < 20; ++i) {
    std::shuffle(pieces.begin(), pieces.end(), random);
    const Region region = linked(pieces);
    REQUIRE(region.size() == 1);
    CHECK(region[0].size() == 4);
    CHECK(area(region) == 50);
    check_closed(region);
  }
}

TEST_CASE("a hole is an outline of its own, and takes from the area", "[sheet]") {
  std::vector<Edge> pieces = straight({{0, 0}, {10, 0}, {10, 10}, {0, 10}});
  const std::vector<Edge> hole = straight({{4, 4}, {4, 6}, {6, 6}, {6, 4}});
  pieces.insert(pieces.end(), hole.begin(), hole.end());
  const Region region = linked(pieces);
  REQUIRE(region.size() == 2);
  CHECK(area(region) == 96);
}

TEST_CASE("pieces that run on along one line or one arc become one edge", "[sheet]") {
  const std::vector<Edge> lines = straight({{0, 0}, {3, 0}, {10, 0}, {10, 5}, {10, 5.5}, {10, 8}, {0, 8}});
  const Region region = linked(lines);
  REQUIRE(region.size() == 1);
  CHECK(region[0].size() == 4);

  const Edge arc = {{5, 0}, {0, 5}, {0, 0}, Turn::left};
  const Region quarter = linked(std::vector<Edge>{piece(arc, 0, 0.3),
                                                  {{0, 5}, {0, 0}, {}, Turn::straight},
                                                  {{0, 0}, {5, 0}, {}, Turn::straight},
                                                  piece(arc, 0.3, 1)});
  REQUIRE(quarter.size() == 1);
  CHECK(quarter[0].size() == 3);
  CHECK(std::fabs(area(quarter) - kPi * 25 / 4) < 1e-9);
}

TEST_CASE("two outlines that share a corner are both closed", "[sheet]") {
  std::vector<Edge> pieces = straight({{0, 0}, {2, 0}, {2, 2}, {0, 2}});
  const std::vector<Edge> other = straight({{2, 2}, {4, 2}, {4, 4}, {2, 4}});
  pieces.insert(pieces.end(), other.begin(), other.end());
  const Region region = linked(pieces);
  CHECK(area(region) == 8);
  check_closed(region);
}

TEST_CASE("ends a hair apart are joined, and crumbs are dropped", "[sheet]") {
  std::vector<Edge> pieces = straight({{0, 0}, {10, 0}, {10, 5}, {0, 5}});
  pieces[1].from.y += 1e-5;
  const std::vector<Edge> crumb = straight({{20, 0}, {20.0001, 0}, {20, 0.0001}});
  pieces.insert(pieces.end(), crumb.begin(), crumb.end());
  const Region region = linked(pieces);
  REQUIRE(region.size() == 1);
  check_closed(region);
  CHECK(std::fabs(area(region) - 50) < 1e-4);
  CHECK(linked(std::vector<Edge>{}).empty());
}

TEST_CASE("the outlines of wood enclose its area, cut by cut", "[sheet]") {
  for (const std::vector<test::Drawable>* drawables : {&test::drawn_examples(), &test::drawn_extremes()}) {
    for (const test::Drawable& one : *drawables) {
      Wood wood(blank_outline(one.plan.section.width, one.plan.section.thickness));
      for (const Cut& cut : one.plan.cuts) {
        for (const Pose& pose : cut.poses) wood.cut(Sweep(cut.plane, pose));
        INFO(one.name << ", cut " << cut.number);
        const Region region = linked(wood.edges());
        CHECK(std::fabs(area(region) - wood.area()) < 1e-4);
        check_closed(region);
      }
    }
  }
}
