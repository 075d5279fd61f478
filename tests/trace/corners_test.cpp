// Lists of corners, as callipers give them, are joined straight.
#include "trace/corners.h"

#include "catch.h"
#include "section/sections.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

constexpr double kTolerance = 0.05;

std::vector<Point> turned(std::vector<Point> points, double degrees) {
  const double c = std::cos(to_radians(degrees));
  const double s = std::sin(to_radians(degrees));
  for (Point& p : points) p = {c * p.x - s * p.y, s * p.x + c * p.y};
  return points;
}

/// With so many points between one and the next, at even distances.
std::vector<Point> with_between(const std::vector<Point>& corners, int between) {
  std::vector<Point> out;
  for (std::size_t i = 0; i + 1 < corners.size(); ++i)
    for (int k = 0; k <= between; ++k)
      out.push_back(corners[i] + (1.0 * k / (between + 1)) * (corners[i + 1] - corners[i]));
  out.push_back(corners.back());
  return out;
}

/// Points as many to an arc, with both ends.
std::vector<Point> on_quarter(Point centre, double radius, int points) {
  std::vector<Point> out;
  for (int k = 0; k < points; ++k) {
    const double angle = kPi / 2 * k / (points - 1);
    out.push_back(centre + radius * Point{std::cos(angle), std::sin(angle)});
  }
  return out;
}

const std::vector<Point> kStairs = {{32, 0},    {22.5, 0}, {22.5, 8}, {17.5, 8}, {17.5, 10}, {13.5, 10},
                                    {13.5, 16}, {8, 16},   {8, 21},   {0, 21},   {0, 25.5}};

std::optional<FittedProfile> found_in(const std::vector<Point>& points, std::string& why) {
  Tracing tracing;
  tracing.points = points;
  return fit_tracing(tracing, {}, &why);
}

TEST_CASE("stairs by their corners come back as they are, however few points there are",
          "[trace][corners][campaign]") {
  for (const int between : {0, 1, 2, 3}) {
    for (const double askew : {0.0, 0.5, -3.0}) {
      for (const bool backward : {false, true}) {
        std::vector<Point> points = turned(with_between(kStairs, between), askew);
        if (backward) std::reverse(points.begin(), points.end());
        INFO(between << " between, " << askew << " degrees");
        std::string why;
        const auto found = found_in(points, why);
        INFO(why);
        REQUIRE(found);
        CHECK(found->joined == (between < 3 ? points.size() : 0));
        const std::vector<Edge> line = worked_line(found->section);
        REQUIRE(kinds(line) == "step fillet step fillet step fillet step fillet ");
        const double depths[] = {8, 2, 6, 5};
        for (std::size_t i = 0; i < 4; ++i) CHECK(length(line[2 * i]) == Approx(depths[i]).margin(0.005));
      }
    }
  }
}

TEST_CASE("the four corners of a rebate are enough", "[trace][corners]") {
  std::string why;
  const auto found = found_in({{0, 0}, {5.5, 0}, {5.5, 3.5}, {9.5, 3.5}}, why);
  INFO(why);
  REQUIRE(found);
  const std::vector<Edge> line = worked_line(found->section);
  REQUIRE(kinds(line) == "step fillet ");
  CHECK(length(line[0]) == Approx(3.5).margin(1e-6));
  CHECK(length(line[1]) == Approx(5.5).margin(1e-6));
}

TEST_CASE("a list of corners that ends where it began is the whole section", "[trace][corners]") {
  std::string why;
  const auto found = found_in({{0, 5}, {8, 5}, {8, 0}, {30, 0}, {30, 20}, {0, 20}, {0, 5}}, why);
  INFO(why);
  REQUIRE(found);
  CHECK(found->section.width == Approx(30).margin(1e-9));
  CHECK(found->section.thickness == Approx(20).margin(1e-9));
  CHECK(kinds(worked_line(found->section)) == "step fillet ");
}

TEST_CASE("a bevel by its two ends is one", "[trace][corners]") {
  std::string why;
  const auto found = found_in({{20, 0}, {12, 0}, {12, 4}, {7, 9}, {0, 9}, {0, 15}}, why);
  INFO(why);
  REQUIRE(found);
  CHECK(kinds(worked_line(found->section)) == "step bevel fillet ");
}

TEST_CASE("what may be an arc, a corner cut off, or no line is no list of corners", "[trace][corners]") {
  CHECK(are_corners(kStairs, kTolerance));
  // A quarter of a circle by three points and more, between flats that it runs on from.
  for (const int points : {3, 4, 5, 9, 40}) {
    std::vector<Point> line = on_quarter({0, 0}, 10, points);
    line.insert(line.begin(), {10, -8});
    line.push_back({-8, 10});
    INFO(points);
    CHECK_FALSE(are_corners(line, kTolerance));
  }
  // Both ends of a quarter that meets its flats at corners, and its middle.
  std::vector<Point> ovolo = {{20, -3}, {10, -3}};
  for (const Point p : on_quarter({0, 0}, 10, 3)) ovolo.push_back(p);
  ovolo.insert(ovolo.end(), {{-3, 10}, {-3, 20}});
  CHECK_FALSE(are_corners(ovolo, kTolerance));
  // Points two millimetres apart with none at the corner.
  CHECK_FALSE(are_corners({{0, 0}, {2, 0}, {4, 0}, {6, 0}, {7, 1}, {7, 3}, {7, 5}, {7, 7}}, kTolerance));
  // Corners in no order.
  CHECK_FALSE(
      are_corners({kStairs[0], kStairs[7], kStairs[2], kStairs[9], kStairs[4], kStairs[1]}, kTolerance));
  // Points that scatter by more than the tolerance, and so close that it turns them.
  CHECK_FALSE(are_corners({{0, 0}, {4, 0.2}, {8, 0}, {8, 4}, {8, 8}}, kTolerance));
  CHECK_FALSE(are_corners({{0, 0}, {0.1, 0}, {0.1, 0.1}, {0.2, 0.1}}, kTolerance));
  // A straight line has no corner.
  CHECK_FALSE(are_corners({{0, 0}, {1, 0}, {2, 0}, {3, 0}}, kTolerance));
}

TEST_CASE("points that are few and no corners are refused and not smoothed away", "[trace][corners]") {
  // The corners of stairs and a cove by three points: whatever is drawn through them is a guess.
  std::vector<Point> points = {{32, 0}, {22, 0}, {22, 6}, {16, 6}};
  for (const Point p : on_quarter({6, 6}, 10, 3)) points.push_back(p);
  points.insert(points.end(), {{6, 20}, {0, 20}, {0, 26}});
  REQUIRE_FALSE(are_corners(points, kTolerance));
  std::string why;
  CHECK_FALSE(found_in(points, why));
  CHECK(why ==
        "the points lie too far apart, or in too loose a row, to tell a line from how they scatter; measure "
        "more points, and closer, or of flats alone the corners one after the other");
}

}  // namespace
}  // namespace arrisline::testing
