// Soles and poses by figures that can be told by hand.
#include "arrisline/plane.h"

#include <cmath>

#include "catch.h"

using namespace arrisline;

namespace {

Plane plane_of(PlaneKind kind, double width, double radius = 0) {
  Plane plane;
  plane.kind = kind;
  plane.width = width;
  plane.radius = radius;
  return plane;
}

/// A quarter-round of 5 down to the middle, a flat, an arc up of radius 2 and a slope; 20 wide.
Plane shaped() {
  Plane plane = plane_of(PlaneKind::shaped, 20);
  plane.sole = {{{-10, 5}, {-5, 0}, {-5, 5}, Turn::left},
                {{-5, 0}, {2, 0}, {}, Turn::straight},
                {{2, 0}, {4, 2}, {4, 0}, Turn::right},
                {{4, 2}, {4.5, 2.25}, {}, Turn::straight},
                {{4.5, 2.25}, {10, 5}, {}, Turn::straight}};
  return plane;
}

}  // namespace

TEST_CASE("half the arc of a sole is that of its chord, up to half a circle", "[geometry]") {
  CHECK(to_degrees(plane_of(PlaneKind::hollow, 9, 9).half_arc()) == Approx(30));
  CHECK(to_degrees(plane_of(PlaneKind::round, 10, 5).half_arc()) == Approx(90));
  // A width that rounding put a hair over the circle of the sole.
  CHECK(to_degrees(plane_of(PlaneKind::round, 10 * (1 + 1e-13), 5).half_arc()) == Approx(90));
}

TEST_CASE("a round stands out of the middle of its sole and a hollow stands in", "[geometry]") {
  const Plane round = plane_of(PlaneKind::round, 8, 5), hollow = plane_of(PlaneKind::hollow, 8, 5);
  for (const auto& [u, rise] :
       {std::pair(0.0, 0.0), std::pair(3.0, 1.0), std::pair(-3.0, 1.0), std::pair(4.0, 2.0)}) {
    CHECK(sole_height(round, u) == Approx(rise).margin(1e-15));
    CHECK(sole_height(hollow, u) == Approx(-rise).margin(1e-15));
  }
  CHECK(sole_height(round, 7) == Approx(2));  // past its edge, as at it
  CHECK(sole_height(round, -7) == Approx(2));
  CHECK(sole_height(plane_of(PlaneKind::rebate, 8), 3) == 0);
  // Half a circle, whose width rounding put a hair over it.
  const Plane half = plane_of(PlaneKind::round, 10 * (1 + 1e-13), 5);
  CHECK(sole_height(half, 5 * (1 + 1e-13)) == Approx(5));
  CHECK(sole_height(half, 4.99) == Approx(5 - std::sqrt(25 - 4.99 * 4.99)));
}

TEST_CASE("a shaped sole has the height of the edge over which the line stands", "[geometry]") {
  const Plane plane = shaped();
  for (const auto& [u, height] :
       {std::pair(-10.0, 5.0), std::pair(-9.0, 2.0), std::pair(-8.0, 1.0), std::pair(-5.0, 0.0),
        std::pair(0.0, 0.0), std::pair(2.0, 0.0), std::pair(2.4, 1.2), std::pair(2.8, 1.6),
        std::pair(4.0, 2.0), std::pair(4.2, 2.1), std::pair(6.0, 3.0), std::pair(10.0, 5.0),
        std::pair(12.0, 5.0), std::pair(-12.0, 5.0)}) {
    INFO(u);
    CHECK(sole_height(plane, u) == Approx(height).margin(1e-12));
  }
  Plane wide = plane;  // by rounding: past the last edge the sole is as high as at its end
  wide.width = 20.0000001;
  CHECK(sole_height(wide, 10.00000005) == 5);
  CHECK(sole_height(wide, -10.00000005) == Approx(5).margin(1e-6));
  wide.sole = {{{-10, 5}, {-10 + 1e-9, 0}, {}, Turn::straight},
               {{-10 + 1e-9, 0}, {10, 0}, {}, Turn::straight}};
  CHECK(sole_height(wide, -10.00000005) == 5);
  CHECK(sole_height(plane_of(PlaneKind::shaped, 20), 3) == 0);
  Plane step = plane_of(PlaneKind::shaped, 20);  // that begins with a rise straight down
  step.sole = {{{-10, 5}, {-10, 0}, {}, Turn::straight}, {{-10, 0}, {10, 0}, {}, Turn::straight}};
  CHECK(sole_height(step, -10) == 5);
  CHECK(sole_height(step, -9.99) == 0);
}

TEST_CASE("two planes are one when kind, label, width and radius are", "[geometry]") {
  Plane plane = plane_of(PlaneKind::hollow, 9, 9);
  plane.label = "hollow 6";
  CHECK(same_plane(plane, plane));
  Plane other = plane;
  other.kind = PlaneKind::round;
  CHECK_FALSE(same_plane(plane, other));
  other = plane;
  other.label = "hollow 8";
  CHECK_FALSE(same_plane(plane, other));
  other = plane;
  other.width = 8;
  CHECK_FALSE(same_plane(plane, other));
  other = plane;
  other.radius = 8;
  CHECK_FALSE(same_plane(plane, other));
}

TEST_CASE("a tilt leans the plane toward the working edge", "[geometry]") {
  // Upright on the face out of the wood is up, to smaller y; on its side, to smaller x.
  CHECK(distance(outward(0), Point{0, -1}) < 1e-15);
  CHECK(distance(outward(90), Point{-1, 0}) < 1e-15);
  CHECK(distance(outward(30), Point{-0.5, -std::sqrt(0.75)}) < 1e-15);
  CHECK(distance(across(0), Point{1, 0}) < 1e-15);
  CHECK(distance(across(90), Point{0, -1}) < 1e-15);
  CHECK(distance(across(30), Point{std::sqrt(0.75), -0.5}) < 1e-15);
  for (const double tilt : {-150.0, -90.0, -20.0, 0.0, 45.0, 135.0, 180.0}) {
    CHECK(tilt_of(3 * outward(tilt)) == Approx(tilt).margin(1e-12));
    CHECK(dot(across(tilt), outward(tilt)) == Approx(0).margin(1e-15));
  }
}

TEST_CASE("a point keeps its place when it goes into the frame of the sole and back", "[geometry]") {
  const Pose pose{{10, 5}, 30};
  const Point p = Point{10, 5} + 3 * across(30) + 2 * outward(30);
  CHECK(distance(to_sole_frame(pose, p), Point{3, 2}) < 1e-14);
  CHECK(distance(from_sole_frame(pose, Point{3, 2}), p) < 1e-14);
  CHECK(distance(from_sole_frame({{10, 5}, 0}, {3, 2}), Point{13, 3}) < 1e-15);
}

TEST_CASE("the edges of a sole run with u rising along the curve of the sole", "[geometry]") {
  for (const Plane& plane : {plane_of(PlaneKind::rebate, 8), plane_of(PlaneKind::round, 8, 5),
                             plane_of(PlaneKind::hollow, 8, 5), shaped()})
    for (const double tilt : {0.0, 70.0, -130.0}) {
      const Pose pose{{10, 5}, tilt};
      const std::vector<Edge> edges = sole_edges(plane, pose);
      INFO(word(plane.kind) << " at " << tilt);
      REQUIRE(edges.size() == (plane.kind == PlaneKind::shaped ? 5U : 1U));
      CHECK(to_sole_frame(pose, edges.front().from).x == Approx(-plane.width / 2));
      CHECK(to_sole_frame(pose, edges.back().to).x == Approx(plane.width / 2));
      for (const Edge& edge : edges)
        for (const double t : {0.0, 0.3, 0.5, 1.0}) {
          const Point uv = to_sole_frame(pose, point_at(edge, t));
          CHECK(uv.y == Approx(sole_height(plane, uv.x)).margin(1e-6));
        }
    }
}
