// A slip of the hand among hundreds of points is left out, and told.
#include "trace/strays.h"

#include <random>

#include "catch.h"
#include "trace/mouldings.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

std::vector<Edge> ovolo() {
  return with_sides(worked_line(classical(kClassical[0])), 6);
}

TEST_CASE("a point that lies alone beside the line is left out, in whatever order the points stand",
          "[trace][strays]") {
  for (const bool any_order : {false, true}) {
    for (const Point off : {Point{4, 3}, Point{-2, -9}, Point{25, 15}}) {
      Digitiser by;
      by.scatter = 0.02;
      by.any_order = any_order;
      Tracing tracing = digitised(ovolo(), by, 2);
      const Point slip = tracing.points[230] + off;
      tracing.points[230] = slip;
      INFO(off.x << ", " << off.y << (any_order ? ", in no order" : ""));
      std::string why;
      const auto found = fit_tracing(tracing, {}, &why);
      INFO(why);
      REQUIRE(found);
      REQUIRE(found->strays.size() == 1);
      CHECK(distance(found->strays[0], slip) < 1e-9);
      CHECK(kinds(worked_line(found->section)) == "step bead fillet ");
    }
  }
}

TEST_CASE("points in order that lie half a millimetre and more beside the line are left out",
          "[trace][strays]") {
  for (const bool closed : {false, true}) {
    for (const double off : {0.5, 1.5}) {
      Digitiser by;
      by.scatter = 0.02;
      std::vector<Edge> line = ovolo();
      if (closed) {
        const Point low = {line.front().from.x, line.back().to.y};
        line.push_back(Edge{line.back().to, low, {}, Turn::straight});
        line.push_back(Edge{low, line.front().from, {}, Turn::straight});
      }
      Tracing tracing = digitised(line, by, 2);
      const Point slips[] = {tracing.points[60] + Point{off, off}, tracing.points[230] + Point{-off, off}};
      tracing.points[60] = slips[0];
      tracing.points[230] = slips[1];
      INFO(off << (closed ? ", closed" : ""));
      std::string why;
      const auto found = fit_tracing(tracing, {}, &why);
      INFO(why);
      REQUIRE(found);
      CHECK_FALSE(found->put_in_order);
      REQUIRE(found->strays.size() == 2);
      CHECK(distance(found->strays[0], slips[0]) < 1e-9);
      CHECK(distance(found->strays[1], slips[1]) < 1e-9);
      CHECK(kinds(worked_line(found->section)) == "step bead fillet ");
    }
  }
}

TEST_CASE("no point of a line is taken for a stray", "[trace][strays]") {
  std::size_t tried = 0;
  for (const Moulding& one : usual_examples()) {
    const std::vector<Edge> drawn = with_sides(worked_line(one.section), 6);
    for (const double scatter : {0.0, 0.1}) {
      Digitiser by;
      by.points = 300;
      by.scatter = scatter;
      by.any_order = true;
      std::vector<Point> points = digitised(drawn, by, 1).points;
      INFO(one.name);
      CHECK(take_out_strays(points, 0.05, 0).empty());
      ++tried;
    }
  }
  CHECK(tried >= 10);
  // Points at random along a line, and a curve by many points with its flats by their ends alone.
  std::mt19937 random(4);
  std::vector<Point> points;
  for (int i = 0; i < 2000; ++i) points.push_back({static_cast<double>(random() % 100'000) / 1000, 0});
  CHECK(take_out_strays(points, 0.05, 0).empty());
  points = {{0, 10}};
  for (int i = 0; i <= 200; ++i) {
    const double angle = kPi / 2 * i / 200;
    points.push_back({10 + 10 * std::sin(angle), 20 - 10 * std::cos(angle)});
  }
  points.push_back({20, 40});
  CHECK(take_out_strays(points, 0.05, 0).empty());
}

}  // namespace
}  // namespace arrisline::testing
