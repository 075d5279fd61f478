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

TEST_CASE("circles all but the same part where they part, and no piece of either is lost", "[wood]") {
  // Found at random; the last figure is that of exact arithmetic.
  struct Step {
    PlaneKind kind;
    double width, radius;
    Pose pose;
  };
  const std::vector<Step> steps = {
      {PlaneKind::round,
       5.2031251995948962,
       14.362401615954768,
       {{21.188965703325152, 18.834231027371683}, 180}},
      {PlaneKind::round,
       5.2031251995948962,
       14.362401615954768,
       {{21.188964229728299, 18.834227534103892}, 179.99999999998045}},
      {PlaneKind::rebate, 14, 0, {{20.574621643535082, 25.766165452254484}, -94.352843617444989}},
      {PlaneKind::round, 2, 2, {{50, 5.4531015958906517}, -90}},
      {PlaneKind::round,
       7.4362345534021275,
       14.362401615954766,
       {{20.440504152565584, 18.853742840356357}, -177.01282289953076}},
      {PlaneKind::round, 12, 12, {{43.050157706443201, 21.607695154586736}, 0}},
      {PlaneKind::hollow,
       18.358932243949418,
       14.362756204375426,
       {{19.170398058306734, 18.976782832568528}, 8.0793998380389347}}};
  std::vector<Plane> planes;
  for (const Step& step : steps) {
    Plane plane = curved(step.kind, step.radius);
    plane.width = step.width;
    planes.push_back(plane);
  }
  Wood wood(blank_outline(50, 20));
  double last = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) last = wood.cut({planes[i], steps[i].pose});
  CHECK(last == Approx(359.594544030).margin(1e-6));
}

TEST_CASE("no crumb of a circle stays behind in the air", "[wood]") {
  // Found at random: two hollows all but touch in a sliver that the last one takes away.
  struct Step {
    PlaneKind kind;
    double width, radius;
    Pose pose;
  };
  const std::vector<Step> steps = {
      {PlaneKind::hollow,
       12.276746809333297,
       12.276746809333297,
       {{0.27039587716412805, 13.867584967997399}, -92.524700964226255}},
      {PlaneKind::rebate, 3, 0, {{-2.7676740055551091e-12, 12.885482301583821}, 90}},
      {PlaneKind::rebate,
       11.896707779437762,
       0,
       {{45.25900165383149, 6.6806586788730842}, -105.58579527026387}},
      {PlaneKind::rebate, 3, 0, {{-0.00071187284129278663, 12.88547609652338}, 90.000317075996378}},
      {PlaneKind::rebate,
       1.000085262570813,
       0,
       {{0.47478191925031626, 7.8682476575460942}, 161.71047796806067}},
      {PlaneKind::hollow,
       6.9887901976500775,
       12.276746809333298,
       {{0.27739540851750061, 13.674227061954069}, -91.62169749465798}},
      {PlaneKind::rebate,
       11.008010613961124,
       0,
       {{0.009456114271241196, 10.869538353598644}, 71.710477968067977}},
      {PlaneKind::hollow, 7, 13.14693534055354, {{4.0460417006432596, 15.040731232254}, 45}},
  };
  std::vector<Plane> planes;
  for (const Step& step : steps) {
    Plane plane = curved(step.kind, step.radius);
    plane.width = step.width;
    planes.push_back(plane);
  }
  Wood wood(blank_outline(50, 20));
  for (std::size_t i = 0; i < steps.size(); ++i) wood.cut({planes[i], steps[i].pose});
  // By exact arithmetic nothing is left beyond y 9.671.
  for (const Edge& edge : wood.edges()) CHECK(std::max(edge.from.y, edge.to.y) < 10);
}

TEST_CASE("a steep sole is as far off as the way to it, not as its height above", "[wood]") {
  Plane plane;
  plane.kind = PlaneKind::shaped;
  plane.width = 6;
  // A quarter-round that ends upright, and a flat beside it.
  plane.sole = {{{-3, 3}, {0, 0}, {0, 3}, Turn::left}, {{0, 0}, {3, 0}, {}, Turn::straight}};
  const Sweep sweep(plane, {{25, 5}, 0});
  // A micron beside the sole where it is nearly upright.
  const double a = to_radians(2);
  const Point centre{25, 2}, p = centre - (3 - 1e-3) * Point{std::cos(a), -std::sin(a)};
  CHECK(sweep.depth(p) == Approx(1e-3).margin(1e-9));
  // The same again takes nothing, nor does it a hair to the side.
  Wood wood(blank_outline(50, 19));
  wood.cut(sweep);
  CHECK(wood.cut({plane, {{25 - 3e-8, 5 - 2e-9}, 0}}) < 1e-5);
  CHECK(wood.area() == Approx(50 * 19 - (3 * 5 + 3 * 5 - (9 - kPi * 9 / 4))).margin(1e-5));
}

TEST_CASE("no wood stands between a pose and the end of the stick that it reaches", "[wood]") {
  // Where the middle of a later sole comes just there, no piece of it is left in the air.
  const Plane wide = flat(14);
  const Plane narrower = flat(13);
  const Plane narrow = flat(12);
  for (const Plane& plane : {flat(4), curved(PlaneKind::round, 4), curved(PlaneKind::hollow, 4)}) {
    Wood wood(blank_outline(50, 20));
    CHECK(wood.cut({wide, {{43, 14}, 0}}) == Approx(14 * 14));
    CHECK(wood.cut({plane, {{50, 10}, 0}}) == 0);
    for (const Edge& edge : wood.edges()) CHECK(std::max(edge.from.x, edge.to.x) <= 50);
  }
  Wood wood(blank_outline(50, 20));
  wood.cut({narrow, {{6, 18}, 0}});
  CHECK(wood.cut({narrower, {{0, 0}, 0}}) == 0);
  for (const Edge& edge : wood.edges()) CHECK(std::min(edge.from.x, edge.to.x) >= 0);
}

TEST_CASE("a sole that passes between two ends a hair apart is parted there", "[wood]") {
  // Three circles within a micron of one another; found at random, the last figure is that of exact
  // arithmetic.
  Wood wood({{{22, 3},
              {24.907212880093365, 2.7969189584594112},
              {23.438973082720466, 2.6889752035185874},
              Turn::left},
             {{24.907212880093365, 2.7969189584594112},
              {32.128493819516279, 4.9396084532983853},
              {27.88816076426874, 5.9904503673528628},
              Turn::left},
             {{32.128493819516279, 4.9396084532983853}, {22, 3}, {}, Turn::straight}});
  Plane first = curved(PlaneKind::hollow, 4.3686031149091971);
  first.width = 5.4915896153888459;
  Plane second = curved(PlaneKind::hollow, 4.3686036118272904);
  second.width = 5.52580757554942;
  wood.cut({first, {{29.789502035493665, 2.0573078442053183}, -25.799784776432141}});
  wood.cut({second, {{26.057101332948911, 2.0241029119405951}, 24.780354894433259}});
  CHECK(wood.area() == Approx(16.2167859581).margin(1e-6));
}
