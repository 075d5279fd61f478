// Circular segments against published tables, and the identities that areas must keep.
#include <cmath>
#include <random>

#include "arrisline/geometry.h"
#include "arrisline/section.h"
#include "catch.h"

using namespace arrisline;

// An arc of radius r over `degrees`, turning left, and its chord back.
static Loop segment(double r, double degrees) {
  const double a = to_radians(degrees);
  const Point from{r, 0}, to{r * std::cos(a), r * std::sin(a)};
  return {{from, to, {0, 0}, Turn::left}, {to, from, {}, Turn::straight}};
}

TEST_CASE("segments of a circle of radius 1", "[geometry]") {
  // Published: engineering reference tables of circular segments (arc length, rise, chord, area for radius
  // 1), as in mechanical engineers' handbooks; formulas in the CRC Concise Encyclopedia of Mathematics,
  // "Circular Segment".
  struct Row {
    double degrees, arc, rise, chord, area;
  };
  const Row rows[] = {{10, .1745, .0038, .1743, .00044},     {15, .2618, .0086, .2611, .00149},
                      {20, .3491, .0152, .3473, .00352},     {30, .5236, .0341, .5176, .01180},
                      {40, .6981, .0603, .6840, .02767},     {45, .7854, .0761, .7654, .03915},
                      {50, .8727, .0937, .8452, .05331},     {60, 1.0472, .1340, 1.0000, .09059},
                      {70, 1.2217, .1808, 1.1472, .14102},   {75, 1.3090, .2066, 1.2175, .17154},
                      {80, 1.3963, .2340, 1.2856, .20573},   {90, 1.5708, .2929, 1.4142, .28540},
                      {100, 1.7453, .3572, 1.5321, .38026},  {120, 2.0944, .5000, 1.7321, .61418},
                      {180, 3.1416, 1.0000, 2.0000, 1.57080}};
  for (const Row& row : rows) {
    INFO(row.degrees << " degrees");
    const Loop loop = segment(1, row.degrees);
    CHECK(length(loop[0]) == Approx(row.arc).margin(0.00006));
    CHECK(length(loop[1]) == Approx(row.chord).margin(0.00006));
    CHECK(area(loop) == Approx(row.area).margin(0.000011));
    CHECK(distance(point_at(loop[0], 0.5), 0.5 * (loop[1].from + loop[1].to)) ==
          Approx(row.rise).margin(0.00006));
    CHECK(distance(point_at(loop[0], 0.5), loop[1]) == Approx(row.rise).margin(0.00006));
  }
}

TEST_CASE("the radius of an arc from its chord and rise", "[geometry]") {
  // Published: r = (c² + 4h²)/8h, ICS Building Trades Pocketbook; worked example in R. G. Hatfield, The
  // American House Carpenter, §518: chord 120, rise 30, radius 75.
  const double chord = 120, rise = 30;
  const double r = (chord * chord + 4 * rise * rise) / (8 * rise);
  CHECK(r == 75);
  const Edge arc{{-chord / 2, 0}, {chord / 2, 0}, {0, -(r - rise)}, Turn::right};
  CHECK(radius(arc) == Approx(75));
  const Point crown = point_at(arc, 0.5);
  CHECK(crown.x == Approx(0).margin(1e-12));
  CHECK(crown.y == Approx(rise));
}

TEST_CASE("a cyma is two arcs on equilateral triangles", "[geometry]") {
  // Published: Peter Nicholson, The Mechanic's Companion: where height and projection differ, two arcs of 60°
  // with r = ½√(H² + P²). For H 4, P 3 the radius is 2.5, the rise of each .334936 and the length of
  // each 2.617994.
  const Point from{0, 0}, middle{1.5, 2};
  const double r = std::hypot(4, 3) / 2;
  CHECK(r == 2.5);
  const Point half = 0.5 * (from + middle), along = (1 / norm(middle)) * middle;
  const Edge arc{from, middle, half + (r * std::sqrt(3.0) / 2) * Point{-along.y, along.x}, Turn::left};
  CHECK(radius(arc) == Approx(r));
  CHECK(to_degrees(sweep(arc)) == Approx(60));
  CHECK(length(arc) == Approx(2.617994).margin(5e-7));
  CHECK(2 * length(arc) == Approx(5.235988).margin(5e-7));
  CHECK(distance(point_at(arc, 0.5), half) == Approx(.334936).margin(5e-7));
}

TEST_CASE("area does not care where an outline lies, and changes sign with its sense", "[geometry]") {
  std::mt19937 random(20240611);
  std::uniform_real_distribution<double> unit(0, 1);
  for (int i = 0; i < 500; ++i) {
    const double degrees = 1 + 358 * unit(random), r = 0.1 + 20 * unit(random);
    Loop loop = segment(r, degrees);
    const double whole = area(loop);
    const double angle = to_radians(degrees);
    CHECK(whole == Approx(r * r * (angle - std::sin(angle)) / 2).margin(1e-10));
    const Point shift{200 * unit(random) - 100, 200 * unit(random) - 100};
    for (Edge& edge : loop) {
      edge.from = edge.from + shift;
      edge.to = edge.to + shift;
      edge.centre = edge.centre + shift;
    }
    CHECK(area(loop) == Approx(whole).margin(1e-9));
    const double t = unit(random);
    const Edge first = piece(loop[0], 0, t), second = piece(loop[0], t, 1);
    CHECK(area_term(first) + area_term(second) == Approx(area_term(loop[0])).margin(1e-8));
    CHECK(length(first) + length(second) == Approx(length(loop[0])).margin(1e-9));
    const Loop back = {reversed(loop[1]), reversed(loop[0])};
    CHECK(area(back) == Approx(-whole).margin(1e-9));
  }
}

TEST_CASE("a point is inside a segment when it is within the circle and beyond the chord", "[geometry]") {
  std::mt19937 random(77);
  std::uniform_real_distribution<double> unit(-1.2, 1.2);
  int inside = 0;
  for (const double degrees : {20.0, 90.0, 180.0, 270.0, 340.0}) {
    const Loop loop = segment(1, degrees);
    for (int i = 0; i < 2000; ++i) {
      const Point p{unit(random), unit(random)};
      if (distance(p, loop) < 1e-6) continue;
      const bool beyond = cross(loop[1].to - loop[1].from, p - loop[1].from) > 0;
      const bool expected = norm(p) < 1 && beyond;
      CHECK(contains(loop, p) == expected);
      inside += expected ? 1 : 0;
    }
  }
  CHECK(inside > 1500);
}

TEST_CASE("the distance to an edge is that of its nearest sampled point", "[geometry]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> unit(-3, 3);
  for (const double degrees : {30.0, 150.0, 300.0}) {
    for (const Edge& edge : segment(1.5, degrees)) {
      for (int i = 0; i < 200; ++i) {
        const Point p{unit(random), unit(random)};
        double nearest = 1e9;
        for (int k = 0; k <= 4000; ++k) nearest = std::min(nearest, distance(p, point_at(edge, k / 4000.0)));
        CHECK(distance(p, edge) == Approx(nearest).margin(0.001));
        CHECK(distance(p, edge) <= nearest + 1e-12);
      }
    }
  }
}

TEST_CASE("an inch is 25.4 mm, and a blank's area is its sides' product", "[geometry]") {
  // Published: 1 in = 25.4 mm exactly, international yard and pound agreement, 1959.
  CHECK(kMmPerInch == 25.4);
  CHECK(area(blank_outline(2 * kMmPerInch, 0.75 * kMmPerInch)) == Approx(1.5 * 645.16));
}
