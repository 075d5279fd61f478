// Kits that read, and the planes, shop and board that come of them.
#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

Kit kit_of(const std::string& text) {
  const Reading<Kit> reading = read_kit(text, "test.kit");
  INFO(shown(reading));
  REQUIRE(reading.value.has_value());
  CHECK(reading.diagnostics.empty());
  return *reading.value;
}

Plane plane_of(const std::string& line) {
  const Kit kit = kit_of(line + "\n");
  REQUIRE(kit.planes.size() == 1);
  return kit.planes.front();
}

std::string labels(const Kit& kit) {
  std::string out;
  for (const Plane& plane : kit.planes) out += plane.label + "\n";
  return out;
}

}  // namespace

TEST_CASE("the kit in the description of the files", "[text][kit]") {
  const Kit kit = kit_of(
      "kit      chest by the window\n"
      "units    inch\n"
      "hollow   6\n"
      "round    6\n"
      "rebate   3/4                 # sole width\n"
      "plough   1/8 1/4 3/8         # irons\n"
      "hollow   10  radius 0.66  width 0.64   # measured, departs from the table\n"
      "scraper\n"
      "shop     shaving rebate .006  shaving curved .004\n"
      "board    stops at 1/2, 1, 1 1/2, 2, 3, 4, 5  screw 3/8  clear 1/16\n");
  CHECK(kit.name == "chest by the window");
  CHECK(kit.unit == Unit::inch);
  CHECK(kit.scraper);
  CHECK(labels(kit) == "hollow 6\nround 6\nrebate 3/4\nplough 1/8\nplough 1/4\nplough 3/8\nhollow 10\n");
  const Plane& six = kit.planes[0];
  CHECK(six.kind == PlaneKind::hollow);
  CHECK(six.number == 6);
  CHECK(kit.planes[1].kind == PlaneKind::round);
  CHECK(kit.planes[2].kind == PlaneKind::rebate);
  CHECK(kit.planes[2].width == Approx(19.05));
  CHECK(kit.planes[4].kind == PlaneKind::plough);
  CHECK(kit.planes[4].width == Approx(6.35));
  CHECK(kit.planes[4].reach == 127.0);
  CHECK(kit.planes[4].deep == 19.05);
  CHECK(kit.planes[6].radius == Approx(0.66 * 25.4));
  CHECK(kit.planes[6].width == Approx(0.64 * 25.4));
  CHECK(kit.shop.shaving_rebate == Approx(0.1524));
  CHECK(kit.shop.shaving_curved == Approx(0.1016));
  REQUIRE(kit.board.has_value());
  REQUIRE(kit.board->stops.size() == 7);
  CHECK(kit.board->stops[2] == Approx(38.1));
  CHECK(kit.board->screw == Approx(9.525));
  CHECK(kit.board->clear == Approx(1.5875));
}

TEST_CASE("a numbered sole is n/16 in radius and 60 degrees, its chord its radius", "[text][kit]") {
  // Common practice, no source; number 6 is half of 3/4 in stock.
  const Plane six = plane_of("hollow 6");
  CHECK(six.radius == 0.375 * 25.4);
  CHECK(six.width == Approx(six.radius).epsilon(1e-14));
  CHECK(2 * six.half_arc() == Approx(kPi / 3).epsilon(1e-14));
  CHECK(plane_of("round 18").radius == Approx(28.575));
  // In a kit of millimetres too.
  CHECK(kit_of("units mm\nhollow 6\n").planes[0].radius == Approx(9.525));
}

TEST_CASE("measured soles", "[text][kit]") {
  const Plane by_radius = plane_of("round radius 0.66in");
  CHECK(by_radius.label == "round radius 0.66in");
  CHECK_FALSE(by_radius.number.has_value());
  CHECK(by_radius.width == Approx(0.66 * 25.4));
  // Tables of circular segments: the chord of 90° is 1.4142 r, of 75° 1.2175 r.
  CHECK(plane_of("round radius 1 arc 90").width == Approx(1.4142 * 25.4).epsilon(5e-5));
  CHECK(plane_of("hollow width 1.2175 arc 75deg").radius == Approx(25.4).epsilon(5e-5));
  CHECK(plane_of("hollow width 1 arc 180\u00B0").radius == Approx(12.7));
  const Plane wide = plane_of("hollow 8 width 5/8");
  CHECK(wide.radius == Approx(12.7));
  CHECK(wide.width == Approx(15.875));
  CHECK(plane_of("hollow 8 arc 90").width == Approx(1.4142 * 12.7).epsilon(5e-5));
  CHECK(plane_of("hollow 8 width 1 arc 90").radius == Approx(25.4 / 1.4142).epsilon(5e-5));
  // Three that agree within 0.1 mm: the radius and the width are kept.
  const Plane three = plane_of("hollow radius 10mm width 10.09mm arc 60");
  CHECK(three.radius == 10);
  CHECK(three.width == 10.09);
  CHECK(kit_messages("hollow radius 10mm width 10.11mm arc 60\n") ==
        "1:1: radius, width and arc disagree: this radius and arc make a width of 0.3937in; leave one of "
        "them out\n");
}

TEST_CASE("a numbering table holds for the whole kit", "[text][kit]") {
  const Kit kit = kit_of("hollow 6\nnumber 6 radius .4\nround 6\nround 8\nhollow 6 radius .5\n");
  CHECK(kit.planes[0].radius == Approx(10.16));
  CHECK(kit.planes[1].radius == Approx(10.16));
  CHECK(kit.planes[2].radius == Approx(12.7));
  CHECK(kit.planes[3].radius == Approx(12.7));
}

TEST_CASE("planes of one label are told apart", "[text][kit]") {
  const Kit kit = kit_of(
      "hollow 6\nhollow 6 radius .40  width .39\nhollow 6\nhollow 6\nrebate 1/2\nrebate 1/2\n"
      "plough 1/4 1/4\nshaped hollow 6\nfillet out 1\nend\nrebate 1 1/2\nrebate 1-1/2\n");
  CHECK(labels(kit) ==
        "hollow 6\nhollow 6 radius .40 width .39\nhollow 6 (2)\nhollow 6 (3)\nrebate 1/2\nrebate 1/2 (2)\n"
        "plough 1/4\nplough 1/4 (2)\nhollow 6 (4)\nrebate 1 1/2\nrebate 1-1/2\n");
}

TEST_CASE("a mixed number is one iron, and a comma makes it two", "[text][kit]") {
  CHECK(labels(kit_of("plough 1 1/4\n")) == "plough 1 1/4\n");
  CHECK(labels(kit_of("plough 1, 1/4\n")) == "plough 1\nplough 1/4\n");
  CHECK(labels(kit_of("plough 1/4 1\n")) == "plough 1/4\nplough 1\n");
}

TEST_CASE("reach, depth and body of planes", "[text][kit]") {
  const Kit kit = kit_of(
      "units mm\nplough 3 6, 10 reach 100 deep 15\nbody 4 above 20\nrebate 19 body 5 above 30\nbench 50\n"
      "body 2 above 0\nhollow 6, body 3 above 9\nscraper\n");
  REQUIRE(kit.planes.size() == 6);
  for (int i = 0; i < 3; ++i) {
    CHECK(kit.planes[static_cast<std::size_t>(i)].reach == 100);
    CHECK(kit.planes[static_cast<std::size_t>(i)].deep == 15);
    CHECK(kit.planes[static_cast<std::size_t>(i)].body->overhang == 4);
    CHECK(kit.planes[static_cast<std::size_t>(i)].body->above == 20);
  }
  CHECK(kit.planes[3].body->above == 30);
  CHECK(kit.planes[4].kind == PlaneKind::bench);
  CHECK(kit.planes[4].body->above == 0);
  CHECK(kit.planes[5].body->overhang == 3);
  CHECK(kit.planes[5].label == "hollow 6");
}

TEST_CASE("every figure of the shop can be set", "[text][kit]") {
  const Shop plain = kit_of("rebate 1\n").shop;
  CHECK(plain.weight_change == 2);
  CHECK(plain.weight_stroke == 0.05);
  CHECK(plain.weight_wear == 30);
  CHECK(plain.weight_slow == 3);
  CHECK(plain.weight_slant == 2);
  CHECK(plain.weight_uneven == 6);
  CHECK(plain.deep == 3);
  CHECK(plain.facets == 0);
  CHECK_FALSE(plain.gauge.has_value());
  const Shop shop =
      kit_of(
          "rebate 1\nshop shaving rebate .01 curved .005\n"
          "shop weight change 3 cut 1/2 setting 0 stroke .1, strokes 30\nshop gauge 1/64 facets 4\n"
          "shop weight wear 20 slow 1.5 slant 1 uneven 0 deep 1/8\n")
          .shop;
  CHECK(shop.shaving_rebate == Approx(0.254));
  CHECK(shop.shaving_curved == Approx(0.127));
  CHECK(shop.weight_change == 3);
  CHECK(shop.weight_cut == 0.5);
  CHECK(shop.weight_setting == 0);
  CHECK(shop.weight_stroke == 0.1);
  CHECK(shop.strokes_per_minute == 30);
  CHECK(shop.gauge == 25.4 / 64);
  CHECK(shop.facets == 4);
  CHECK(shop.weight_wear == 20);
  CHECK(shop.weight_slow == 1.5);
  CHECK(shop.weight_slant == 1);
  CHECK(shop.weight_uneven == 0);
  CHECK(shop.deep == 25.4 / 8);
  CHECK(kit_of("rebate 1\nshop deep 0\n").shop.deep == 0);
}

TEST_CASE("a board by default", "[text][kit]") {
  CHECK_FALSE(kit_of("rebate 1\n").board.has_value());
  const auto board = kit_of("rebate 1\nboard clear 0 stops at 1 1/2 2 3/4\n").board;
  REQUIRE(board.has_value());
  REQUIRE(board->stops.size() == 2);
  CHECK(board->stops[1] == Approx(2.75 * 25.4));
  CHECK(board->screw == 9.525);
  CHECK(board->clear == 0);
}

TEST_CASE("a kit without a name has its file's", "[text][kit]") {
  CHECK(read_kit("rebate 1\n", "shop/travelling.kit").value->name == "travelling");
}
