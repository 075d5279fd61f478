// What planes of another radius leave between their tilts, and what flats leave on an arc: by formula, and
// measured on the wood after the poses have been cut.
#include <cmath>

#include "catch.h"
#include "replay/plans.h"
#include "replay/standing.h"

using namespace arrisline;
using namespace arrisline::replaying;

static constexpr double kFar = 400;
static constexpr double kStock = 120;

static double cove_cusp(double R, double r, double degrees) {
  const double half = to_radians(degrees) / 2, d = R - r;
  return R - (d * std::cos(half) + std::sqrt(r * r - d * d * std::sin(half) * std::sin(half)));
}

static double bead_cusp(double R, double r, double degrees) {
  const double half = to_radians(degrees) / 2, d = r - R;
  return std::sqrt(r * r - d * d * std::sin(half) * std::sin(half)) - d * std::cos(half) - R;
}

// Height left between two tilts, `degrees` apart, of a round of radius r in a cove of R.
static double cove_measured(double R, double r, double degrees) {
  const Plane plane = plans::curved(PlaneKind::round, r);
  const Point centre{kStock / 2, 0};
  Standing wood(kStock, kStock);
  for (const double tilt : {-degrees / 2, degrees / 2})
    wood.take(sweep_of(plane, plans::round_in(centre, R, tilt), kFar));
  return R + wood.top({centre, 0}, 0).value();
}

// The same of a hollow of radius r on a bead of R, standing free on the face.
static double bead_measured(double R, double r, double degrees) {
  const Plane plane = plans::curved(PlaneKind::hollow, r);
  const Point centre{kStock / 2, R + 1};
  Standing wood(kStock, kStock);
  for (const double tilt : {-degrees / 2, degrees / 2})
    wood.take(sweep_of(plane, plans::hollow_on(centre, R, tilt), kFar));
  return wood.top({centre, 0}, 0).value() - R;
}

TEST_CASE("side by side on a flat, a ball leaves h = r - sqrt(r² - s²/4)", "[cusps]") {
  // Published: ball-end mill scallop tables, radius 3 step 0.5 and radius 0.25 step 0.05.
  struct Row {
    double r, s, h, play;
  };
  for (const Row& row : {Row{3, 0.5, 0.0104, 5e-5}, Row{0.25, 0.05, 0.001253, 5e-7}}) {
    CHECK(row.r - std::sqrt(row.r * row.r - row.s * row.s / 4) == Approx(row.h).margin(row.play));
    const Plane plane = plans::curved(PlaneKind::round, row.r);
    Standing wood(kStock, kStock);
    for (const double x : {50.0, 50 + row.s}) wood.take(sweep_of(plane, {{x, 10}, 0}, kFar));
    const double left = wood.top({{50 + row.s / 2, 10}, 0}, 0).value();
    CHECK(left == Approx(row.h).margin(row.play));
  }
}

TEST_CASE("a smaller round in a cove leaves these cusps", "[cusps]") {
  // Computed, by the construction of Suresh and Yang, J. Eng. Ind. 116, 1994 (from memory).
  struct Row {
    double R, r, degrees, h;
  };
  for (const Row& row : {Row{1, 0.75, 30, 0.01131489}, Row{1, 0.5, 15, 0.00855514},
                         Row{12, 10, 30, 0.08155479}, Row{25, 12, 10, 0.10307804}}) {
    CHECK(cove_cusp(row.R, row.r, row.degrees) == Approx(row.h).margin(5e-9));
    CHECK(cove_measured(row.R, row.r, row.degrees) == Approx(row.h).margin(1e-8));
  }
}

TEST_CASE("a larger hollow on a bead leaves these cusps", "[cusps]") {
  // Computed, as above.
  struct Row {
    double R, r, degrees, h;
  };
  for (const Row& row : {Row{1, 1.25, 30, 0.00684274}, Row{10, 12, 30, 0.05697860}}) {
    CHECK(bead_cusp(row.R, row.r, row.degrees) == Approx(row.h).margin(5e-9));
    CHECK(bead_measured(row.R, row.r, row.degrees) == Approx(row.h).margin(1e-8));
  }
}

TEST_CASE("flats leave facets: tangents outside a bead, chords inside a cove", "[cusps]") {
  // Computed: R(sec φ/2 − 1) and R(1 − cos φ/2).
  const double R = 20, degrees = 30, half = to_radians(degrees) / 2;
  Plane flat;
  flat.width = 30;
  const Point centre{kStock / 2, R + 1};
  Standing bead(kStock, kStock);
  for (const double tilt : {-degrees / 2, degrees / 2})
    bead.take(sweep_of(flat, {centre + R * outward(tilt), tilt}, kFar));
  CHECK(bead.top({centre, 0}, 0).value() - R == Approx(R * (1 / std::cos(half) - 1)).margin(1e-9));

  // A flat sole whose two corners lie on the cove leaves the rise of the arc over its chord.
  Standing cove(kStock, kStock);
  flat.width = 2 * R * std::sin(half);
  const Point above{kStock / 2, 0};
  cove.take(sweep_of(flat, {{above.x, R * std::cos(half)}, 0}, kFar));
  CHECK(R + cove.top({above, 0}, 0).value() == Approx(R * (1 - std::cos(half))).margin(1e-9));
}

TEST_CASE("a round too large, or a hollow too small, leaves the difference of their rises", "[cusps]") {
  // Computed: s(r, w) = r − √(r² − w²/4); the sole's edges rest on the arc and its middle stands off.
  const auto rise = [](double r, double w) { return r - std::sqrt(r * r - w * w / 4); };
  const double R = 10, w = 8;
  Plane hollow = plans::curved(PlaneKind::hollow, 8);
  hollow.width = w;
  const Point centre{kStock / 2, R + 1};
  // The edges of the sole on the bead of R.
  const double edge_depth = rise(R, w), middle = rise(8, w) - edge_depth;
  Standing wood(kStock, kStock);
  wood.take(sweep_of(hollow, {{centre.x, centre.y - R - middle}, 0}, kFar));
  CHECK(wood.top({centre, 0}, 0).value() - R == Approx(rise(8, w) - rise(R, w)).margin(1e-9));
  CHECK(wood.top({centre, 0}, w / 2 - 1e-9).value() == Approx(std::sqrt(R * R - w * w / 4)).margin(1e-6));
}
