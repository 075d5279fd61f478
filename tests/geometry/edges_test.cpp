// Edges and loops against published tables.
#include "arrisline/geometry.h"
#include "catch.h"

using namespace arrisline;

TEST_CASE("a semicircle and its diameter enclose half a circle", "[geometry]") {
  const Loop half = {{{-1, 0}, {1, 0}, {}, Turn::straight}, {{1, 0}, {-1, 0}, {0, 0}, Turn::left}};
  CHECK(area(half) == Approx(kPi / 2).epsilon(1e-14));
  CHECK(contains(half, {0, 0.5}));
  CHECK_FALSE(contains(half, {0, -0.5}));
}
