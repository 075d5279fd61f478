// Places on an edge: where they lie, that they grow along it, and what of the edge lies between two.
#include "geometry/measured.h"

#include <cmath>

#include "catch.h"
#include "geometry/by_hand.h"

using namespace arrisline;
using by_hand::arc;
using by_hand::kCentre;
using by_hand::line;

TEST_CASE("a place on a straight edge is a share of its length", "[geometry]") {
  const Edge edge = line({1, 1}, {9, 7});
  const Measured measured(edge);
  CHECK(measured.at(0.25) == Point{3, 2.5});
  CHECK(measured.at(0) == edge.from);
  CHECK(measured.at(1) == edge.to);
  CHECK(measured.short_length() == 10);
}

TEST_CASE("the place where an arc's spoke points so is where it points", "[geometry]") {
  for (const double degrees : {5.0, 60.0, 90.0, 135.0, 180.0, 250.0, 270.0, 355.0})
    for (const double sign : {1.0, -1.0}) {
      const Edge edge = arc(5, sign * degrees);
      const Measured measured(edge);
      double before = 0;
      for (int i = 1; i < 40; ++i) {
        const double angle = sign * degrees * i / 40;
        INFO(sign * degrees << " at " << angle);
        const Point spoke{std::cos(to_radians(angle)), std::sin(to_radians(angle))};
        const double t = measured.place(2 * spoke);
        CHECK(t > before);
        CHECK(t < 1);
        CHECK(distance(measured.at(t), kCentre + 5 * spoke) < 1e-13);
        CHECK(distance(measured.at(t), point_at(edge, i / 40.0)) < 1e-13);
        before = t;
      }
    }
}

TEST_CASE("a quarter turn is a place like any other", "[geometry]") {
  const Edge half = arc(5, 180), other = arc(5, -180);
  CHECK(Measured(half).at(0.5) == kCentre + Point{0, 5});
  CHECK(Measured(other).at(0.5) == kCentre - Point{0, 5});
  CHECK(Measured(half).place({0, 1}) == 0.5);
  CHECK(Measured(other).place({0, -7}) == 0.5);
}

TEST_CASE("between two places lies no less of an arc than they tell, and not much more", "[geometry]") {
  for (const double degrees : {5.0, 60.0, 90.0, 135.0, 250.0, 355.0}) {
    const Edge edge = arc(5, degrees);
    const Measured measured(edge);
    CHECK(measured.short_length() <= length(edge) * (1 + 1e-12));
    CHECK(measured.short_length() >= 0.6 * length(edge));
    for (int i = 0; i < 40; ++i) {
      const double told = measured.short_length() / 40;
      const double lies = length(measured.piece(i / 40.0, (i + 1) / 40.0));
      CHECK(lies >= told * (1 - 1e-9));
      CHECK(lies <= 2 * told * (1 + 1e-9));
    }
  }
}
