// Edges and loops by figures that can be told by hand: ends, senses of turn, halves and more than halves of a
// circle, and points either side of each limit.
#include <cmath>

#include "arrisline/geometry.h"
#include "catch.h"
#include "geometry/by_hand.h"

using namespace arrisline;
using by_hand::kCentre;
using by_hand::line;

namespace {

/// Of radius 2.
Edge arc(double degrees) {
  return by_hand::arc(2, degrees);
}

Point spoke(double degrees) {
  return {std::cos(to_radians(degrees)), std::sin(to_radians(degrees))};
}

}  // namespace

TEST_CASE("a semicircle and its diameter enclose half a circle", "[geometry]") {
  const Loop half = {{{-1, 0}, {1, 0}, {}, Turn::straight}, {{1, 0}, {-1, 0}, {0, 0}, Turn::left}};
  CHECK(area(half) == Approx(kPi / 2).epsilon(1e-14));
  CHECK(contains(half, {0, 0.5}));
  CHECK_FALSE(contains(half, {0, -0.5}));
}

TEST_CASE("an angle is brought over -180 and up to 180 degrees", "[geometry]") {
  CHECK(wrap_degrees(0) == 0);
  CHECK(wrap_degrees(180) == 180);
  CHECK(wrap_degrees(-180) == 180);
  CHECK(wrap_degrees(181) == -179);
  CHECK(wrap_degrees(-181) == 179);
  CHECK(wrap_degrees(179) == 179);
  CHECK(wrap_degrees(-179) == -179);
  CHECK(wrap_degrees(360) == 0);
  CHECK(wrap_degrees(540) == 180);
  CHECK(wrap_degrees(-540) == 180);
  CHECK(wrap_degrees(725) == 5);
}

TEST_CASE("an arc sweeps what it was drawn over, to the left as positive", "[geometry]") {
  for (const double degrees : {1.0, 30.0, 90.0, 179.0, 180.0, 181.0, 270.0, 359.0})
    for (const double sign : {1.0, -1.0}) {
      const Edge edge = arc(sign * degrees);
      INFO(sign * degrees);
      CHECK(to_degrees(sweep(edge)) == Approx(sign * degrees));
      CHECK(length(edge) == Approx(2 * to_radians(degrees)));
      CHECK(radius(edge) == 2);
    }
  const Edge straight = line({1, 1}, {4, 5});
  CHECK(sweep(straight) == 0);
  CHECK(length(straight) == 5);
}

TEST_CASE("a point a fraction along an edge lies there, and the direction is that of travel", "[geometry]") {
  for (const double degrees : {60.0, -60.0, 200.0, -300.0})
    for (const double t : {0.0, 0.25, 0.5, 0.9, 1.0}) {
      const Edge edge = arc(degrees);
      const double angle = t * degrees;
      INFO(degrees << " at " << t);
      CHECK(distance(point_at(edge, t), kCentre + 2 * spoke(angle)) < 1e-12);
      CHECK(distance(direction_at(edge, t), spoke(angle + (degrees > 0 ? 90 : -90))) < 1e-12);
    }
  const Edge straight = line({1, 1}, {4, 5});
  CHECK(distance(point_at(straight, 0.2), Point{1.6, 1.8}) < 1e-15);
  CHECK(distance(direction_at(straight, 0.7), Point{0.6, 0.8}) < 1e-15);
  CHECK(direction_at(line({2, 2}, {2, 2}), 0.5) == Point{0, 0});
}

TEST_CASE("the ends of an edge are its own to the last bit, and nothing lies beyond them", "[geometry]") {
  // About such a centre the turning of a spoke by nothing does not give the end back.
  for (const Turn turn : {Turn::straight, Turn::left, Turn::right}) {
    const Edge edge{{0.1, 0.7}, {1e-3, 1.3}, {1000.0 / 3, 0.1}, turn};
    CHECK(point_at(edge, 0) == edge.from);
    CHECK(point_at(edge, -0.5) == edge.from);
    CHECK(point_at(edge, 1) == edge.to);
    CHECK(point_at(edge, 1.5) == edge.to);
    const Edge first = piece(edge, 0, 0.25), last = piece(edge, 0.25, 1);
    CHECK(first.from == edge.from);
    CHECK(first.to == point_at(edge, 0.25));
    CHECK(last.from == first.to);
    CHECK(last.to == edge.to);
    CHECK(first.turn == turn);
    CHECK(first.centre == edge.centre);
  }
}

TEST_CASE("an edge turned round runs the same way back", "[geometry]") {
  for (const double degrees : {60.0, -250.0}) {
    const Edge edge = arc(degrees), back = reversed(edge);
    CHECK(back.from == edge.to);
    CHECK(back.to == edge.from);
    CHECK(back.centre == edge.centre);
    CHECK(to_degrees(sweep(back)) == Approx(-degrees));
    CHECK(reversed(back).turn == edge.turn);
  }
  CHECK(reversed(line({1, 2}, {3, 4})).turn == Turn::straight);
}

TEST_CASE("a spoke meets an arc from its one end to the other, both included", "[geometry]") {
  for (const double degrees : {20.0, 90.0, 179.0, 180.0, 181.0, 200.0, 270.0, 340.0})
    for (const double sign : {1.0, -1.0}) {
      const Edge edge = arc(sign * degrees);
      INFO(sign * degrees);
      CHECK(spoke_meets(edge, edge.from - kCentre));
      CHECK(spoke_meets(edge, edge.to - kCentre));
      for (double angle = 0.5; angle < 360; ++angle)
        CHECK(spoke_meets(edge, 7 * spoke(sign * angle)) == (angle < degrees));
    }
}

TEST_CASE("the distance to an arc is along the spoke, or to the nearer end where there is none",
          "[geometry]") {
  for (const double sign : {1.0, -1.0}) {
    const Edge edge = arc(sign * 90);
    CHECK(distance(kCentre + 5 * spoke(sign * 30), edge) == Approx(3));
    CHECK(distance(kCentre + 0.5 * spoke(sign * 30), edge) == Approx(1.5));
    CHECK(distance(Point{5, 4 - sign * 3}, edge) == Approx(3));          // below its beginning
    CHECK(distance(Point{3 - 1.5, 4 + sign * 2}, edge) == Approx(1.5));  // beside its end
    CHECK(distance(kCentre + 2 * spoke(sign * 225), edge) == Approx(4 * std::sin(to_radians(67.5))));
  }
}

TEST_CASE("the distance to a straight edge is square to it, or to the nearer end", "[geometry]") {
  const Edge edge = line({1, 1}, {5, 4});  // 5 long
  CHECK(distance(Point{1, 1} + Point{1.6, 1.2} + Point{-1.2, 1.6}, edge) == Approx(2));
  CHECK(distance(Point{1, 1} + Point{1.6, 1.2} - Point{-1.2, 1.6}, edge) == Approx(2));
  CHECK(distance(Point{-3, -2}, edge) == Approx(5));
  CHECK(distance(Point{13, 10}, edge) == Approx(10));
  CHECK(distance(Point{3, 4}, line({0, 0}, Point{0, 0})) == 5);  // an edge of no length is a point
  const std::vector<Edge> two{edge, line({10, 0}, {10, 1})};
  CHECK(distance(Point{9, 0.5}, two) == Approx(1));
  CHECK(distance(Point{1, 0}, two) == Approx(1));
}

TEST_CASE("a point level with a corner of an outline is inside or outside all the same", "[geometry]") {
  // A square on its corner: the horizontal through its middle passes through two corners.
  const Loop diamond = {line({2, 0}, {4, 2}), line({4, 2}, {2, 4}), line({2, 4}, {0, 2}),
                        line({0, 2}, {2, 0})};
  CHECK(contains(diamond, {2, 2}));
  CHECK(contains(diamond, {0.1, 2}));
  CHECK(contains(diamond, {3.9, 2}));
  for (const Point p : {Point{-1, 2}, Point{5, 2}, Point{1, 0}, Point{3, 0}, Point{1, 4}, Point{3, 4}})
    CHECK_FALSE(contains(diamond, p));
  // A step: points level with its inner corner, on both sides of it.
  const Loop step = {line({0, 0}, {6, 0}), line({6, 0}, {6, 4}), line({6, 4}, {3, 4}),
                     line({3, 4}, {3, 2}), line({3, 2}, {0, 2}), line({0, 2}, {0, 0})};
  CHECK(contains(step, {4, 2}));
  CHECK(contains(step, {5.9, 2}));
  CHECK(contains(step, {1, 1.9}));
  for (const Point p : {Point{-1, 2}, Point{7, 2}, Point{1, 2.1}, Point{2.9, 3}, Point{-1, 0}, Point{7, 4}})
    CHECK_FALSE(contains(step, p));
}

TEST_CASE("beads stand out of an outline and coves into it, wherever in the outline they come",
          "[geometry]") {
  // A strip 10 by 4 with half a bead of radius 1 at each end of one side, and two coves of it in the other.
  const Loop strip = {line({0, 0}, {1, 0}),  {{1, 0}, {3, 0}, {2, 0}, Turn::right},
                      line({3, 0}, {7, 0}),  {{7, 0}, {9, 0}, {8, 0}, Turn::right},
                      line({9, 0}, {10, 0}), line({10, 0}, {10, 4}),
                      line({10, 4}, {9, 4}), {{9, 4}, {7, 4}, {8, 4}, Turn::left},
                      line({7, 4}, {3, 4}),  {{3, 4}, {1, 4}, {2, 4}, Turn::left},
                      line({1, 4}, {0, 4}),  line({0, 4}, {0, 0})};
  CHECK(area(strip) == Approx(40));
  for (const double x : {2.0, 8.0}) {
    CHECK(contains(strip, {x, 4.9}));
    CHECK(contains(strip, {x + 0.6, 4.7}));
    CHECK_FALSE(contains(strip, {x, 5.1}));
    CHECK_FALSE(contains(strip, {x + 0.8, 4.7}));
    CHECK_FALSE(contains(strip, {x, 0.9}));
    CHECK_FALSE(contains(strip, {x - 0.6, 0.7}));
    CHECK(contains(strip, {x, 1.1}));
    CHECK(contains(strip, {x - 0.8, 0.7}));
    CHECK_FALSE(contains(strip, {x, -0.5}));  // in the circle of the cove, but below the outline
  }
  CHECK(contains(strip, {5, 2}));
  CHECK_FALSE(contains(strip, {5, 4.5}));
}

TEST_CASE("a point on the chord of an arc is inside by the arc", "[geometry]") {
  // A circle of two arcs, so that the one chord is within it; and two coves that leave a lens between them.
  const Loop circle = {{{1, 0}, {-1, 0}, {0, 0}, Turn::left}, {{-1, 0}, {1, 0}, {0, 0}, Turn::left}};
  for (const double x : {-0.9, 0.0, 0.9}) CHECK(contains(circle, {x, 0}));
  CHECK_FALSE(contains(circle, {1.1, 0}));
  CHECK_FALSE(contains(circle, {-1.1, 0}));
  const Loop waist = {line({0, -3}, {4, -3}),
                      {{4, -3}, {4, 3}, {4, 0}, Turn::right},
                      line({4, 3}, {0, 3}),
                      line({0, 3}, {0, -3})};
  CHECK_FALSE(contains(waist, {3.999, 0}));
  CHECK_FALSE(contains(waist, {4, 1}));  // on the chord of the cove
  CHECK(contains(waist, {0.5, 0}));
}
