// Wood, cut piece by piece of its boundary, against a polygon clipper on flattened arcs.
#include "plan/wood.h"

#include <random>

#include "arrisline/section.h"
#include "catch.h"
#include "plan/clipper_twin.h"
#include "plan/soles.h"

using namespace arrisline;
using test::curved;
using test::flat;

TEST_CASE("a square rebate takes width times depth", "[wood]") {
  Wood wood(blank_outline(50, 19));
  const Plane plane = flat(20);
  CHECK(wood.cut({plane, {{-5, 6}, 0}}) == Approx(5 * 6));
  CHECK(wood.cut({plane, {{-5, 6}, 0}}) == 0);
  CHECK(wood.cut({plane, {{-5, 8}, 0}}) == Approx(5 * 2));
  // On its side against the working edge, in line with the floor already cut.
  CHECK(wood.cut({plane, {{10, -2}, 90}}) == Approx(5 * 8));
}

TEST_CASE("a floor in line with the seam between two earlier poses leaves no edge behind", "[wood]") {
  Wood wood(blank_outline(50, 19));
  const Plane plane = flat(6);
  // Two poses from the edge, side by side; they meet at a depth of 5.
  wood.cut({plane, {{4, 8}, 90}});
  wood.cut({plane, {{4, 2}, 90}});
  wood.cut({plane, {{7, 5}, 0}});
  wood.cut({plane, {{1, 5}, 0}});
  for (const Edge& edge : wood.edges()) {
    INFO(edge.from.x << " " << edge.from.y << " to " << edge.to.x << " " << edge.to.y);
    CHECK(std::min(edge.from.x, edge.to.x) >= 0);
    CHECK((edge.from.x > 3.9 || edge.from.y > 10.9));
  }
}

TEST_CASE("random cuts agree with the clipper", "[wood][property]") {
  const unsigned seed = 20240517;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> x(-5, 55), y(0, 22), tilt(-120, 120), size(3, 14);
  std::uniform_int_distribution<int> kind(0, 2), coin(0, 1);
  int took = 0;
  for (int trial = 0; trial < 300; ++trial) {
    const Loop blank = blank_outline(50, 19);
    Wood wood(blank);
    test::ClipperTwin twin(blank);
    std::vector<Plane> planes(8);
    double arcs = 0;
    for (Plane& plane : planes) {
      const int k = kind(random);
      plane =
          k == 0 ? flat(size(random)) : curved(k == 1 ? PlaneKind::hollow : PlaneKind::round, size(random));
      // Half of the poses stand on a coarse grid, so that edges are shared and arcs touch.
      Pose pose{{x(random), y(random)}, tilt(random)};
      if (coin(random) == 1)
        pose = {{std::round(pose.at.x), std::round(pose.at.y)}, 45 * std::round(pose.tilt / 45)};
      const Sweep sweep(plane, pose);
      const double took_exact = wood.cut(sweep);
      const double took_twin = twin.cut(sweep);
      if (plane.is_curved()) arcs += plane.width * 1.05;
      // Chord error of the twin: 2/3 of 0.0005 mm along each arc, on what was cut so far.
      REQUIRE(std::abs(took_exact - took_twin) < 0.001 + 0.0007 * arcs);
      REQUIRE(std::abs(wood.area() - twin.area()) < 0.001 + 0.0007 * arcs);
      if (took_exact > 0.01) ++took;
    }
  }
  CHECK(took > 1000);
}
