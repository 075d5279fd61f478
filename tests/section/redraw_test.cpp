// A section drawn over with another radius between the same ends.
#include "section/redraw.h"

#include "section/sections.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

constexpr double kIn = kMmPerInch;
const std::string kStock = "stock 2 wide, 3/4 thick\n";

double rise_of(double r, double chord) {
  return r - std::sqrt(r * r - chord * chord / 4);
}

/// Largest distance of many points of one outline from the other: never more than the true one.
double sampled(const Section& a, const Section& b) {
  double most = 0;
  for (const Edge& edge : a.target) {
    for (int i = 0; i <= 1000; ++i) most = std::max(most, distance(point_at(edge, i / 1000.0), b.target));
  }
  return most;
}

}  // namespace

TEST_CASE("another radius keeps the ends, and departs by the difference of the sagittas",
          "[section][redraw]") {
  const Section drawn =
      section_of(kStock + "start face 1/2\nstep down 1/8\nbead out 3/8 down 3/8\nfillet out 1/8\n");
  const double chord = std::sqrt(2.0) * 0.375 * kIn;
  for (const double r : {0.28, 0.3125, 0.5, 0.75, 2.0}) {
    const std::optional<Section> other = with_radius(drawn, {1}, r * kIn);
    REQUIRE(other.has_value());
    check_promises(*other);
    const Edge was = edge_of(drawn, 1);
    const Edge is = edge_of(*other, 1);
    CHECK(is.from == was.from);
    CHECK(is.to == was.to);
    CHECK(is.turn == was.turn);
    CHECK(radius(is) == Approx(r * kIn));
    const double expected = std::abs(rise_of(r * kIn, chord) - rise_of(0.375 * kIn, chord));
    CHECK(largest_departure(drawn, *other) == Approx(expected).epsilon(1e-9));
    CHECK(largest_departure(*other, drawn) == Approx(expected).epsilon(1e-9));
  }
}

TEST_CASE("the section drawn over is the one that reads from the changed text", "[section][redraw]") {
  const std::string head = kStock + "start face 1/2\nstep down 1/8\nogee out 1/2 down 3/8 radius ";
  const std::optional<Section> other = with_radius(section_of(head + "3/8\n"), {1, 2}, kIn / 4);
  const Section read = section_of(head + "1/4\n");
  REQUIRE(other.has_value());
  REQUIRE(other->target.size() == read.target.size());
  for (std::size_t i = 0; i < read.target.size(); ++i) {
    CHECK(near(other->target[i].from, read.target[i].from));
    CHECK(near(other->target[i].centre, read.target[i].centre));
    CHECK(other->target[i].turn == read.target[i].turn);
  }
}

TEST_CASE("a radius that does not reach, and one that leaves the stock", "[section][redraw]") {
  const Section quadrant = section_of(kStock + "start face 3/8\nbead out 3/8 down 3/8\n");
  CHECK(least_radius(quadrant, {0}) == Approx(0.375 / std::sqrt(2.0) * kIn));
  CHECK_FALSE(with_radius(quadrant, {0}, 0.26 * kIn).has_value());
  // At 0.27 the arc from face to edge is over 90 degrees and bulges beyond both.
  CHECK_FALSE(with_radius(quadrant, {0}, 0.27 * kIn).has_value());
  CHECK(with_radius(quadrant, {0}, 0.4 * kIn).has_value());
  // A half-round takes no smaller radius, and is flatter with a larger.
  const Section torus = section_of("stock 2 wide, 1/2 thick\nstart face 1/4\ntorus 1/2\n");
  CHECK_FALSE(with_radius(torus, {0}, 0.24 * kIn).has_value());
  CHECK(with_radius(torus, {0}, 0.3 * kIn).has_value());
  // Nothing to draw over.
  CHECK_FALSE(with_radius(section_of(kStock + "start face 1/2\nchamfer 1/2\n"), {0}, kIn).has_value());
}

TEST_CASE("an arc that would run into its neighbour is not drawn", "[section][redraw]") {
  // Two coves back to back with 1/16 in of wood between them, which a half-round of the first would take.
  const std::string chain =
      "start face 1 1/4\ncove out 1/2 radius 0.26\nfillet out 1/16\ncove down 1/2 radius 0.8\nfillet out "
      "11/16\n";
  const Section drawn = section_of("stock 2 wide, 1 thick\n" + chain);
  CHECK_FALSE(with_radius(drawn, {2}, 0.26 * kIn).has_value());
  CHECK(with_radius(drawn, {2}, 1.0 * kIn).has_value());
}

TEST_CASE("an arc over 180 degrees stays one, and the departure is that of sampled outlines",
          "[section][redraw]") {
  const Section drawn = section_of(
      "stock 3 wide, 3 thick\nstart face 2\nstep down 1\ncove down 1/2 radius 0.3 large\nfillet out 2\n");
  const std::optional<Section> other = with_radius(drawn, {1}, 0.35 * kIn);
  REQUIRE(other.has_value());
  CHECK(std::abs(sweep(edge_of(*other, 1))) > kPi);
  const double exact = largest_departure(drawn, *other);
  const double twin = std::max(sampled(drawn, *other), sampled(*other, drawn));
  CHECK(exact >= twin - 1e-9);
  CHECK(exact == Approx(twin).margin(0.01));
}
