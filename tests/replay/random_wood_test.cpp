// The replay's measures against slow ones that are plainly right, on random wood. Seeds are in the file.
#include <algorithm>
#include <cmath>
#include <random>

#include "catch.h"
#include "replay/plans.h"
#include "replay/remains.h"
#include "replay/rules.h"
#include "replay/seating.h"

using namespace arrisline;
using namespace arrisline::replaying;

static constexpr double kWide = 50, kThick = 20, kFar = 200;

namespace {

struct Chance {
  std::mt19937 engine;
  explicit Chance(unsigned seed) : engine(seed) {}
  double in(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine); }
  int of(int n) { return std::uniform_int_distribution<int>(0, n - 1)(engine); }
};

}  // namespace

static Plane random_plane(Chance& chance) {
  Plane plane;
  const int kind = chance.of(4);
  plane.width = chance.in(2, 15);
  if (kind == 0) return plane;
  if (kind == 3) {
    plane.kind = PlaneKind::shaped;
    const double w = plane.width / 2;
    // A quarter-round of radius w down to the middle, a flat, and a slope up.
    plane.sole = {{{-w, w}, {0, 0}, {0, w}, Turn::left},
                  {{0, 0}, {w / 2, 0}, {}, Turn::straight},
                  {{w / 2, 0}, {w, w / 3}, {}, Turn::straight}};
    return plane;
  }
  plane.kind = kind == 1 ? PlaneKind::hollow : PlaneKind::round;
  plane.radius = plane.width * chance.in(0.5, 2);
  return plane;
}

static Pose random_pose(Chance& chance) {
  const double tilt = chance.of(3) == 0 ? 45.0 * chance.of(8) : chance.in(-180, 180);
  // Not through the middle, so that some wood is left.
  const Point inward = -1 * outward(tilt);
  const Point edge{std::clamp(kWide / 2 - 60 * inward.x, 0.0, kWide),
                   std::clamp(kThick / 2 - 60 * inward.y, 0.0, kThick)};
  return {edge + chance.in(0.5, 6) * inward + chance.in(-12, 12) * across(tilt), tilt};
}

namespace {

struct Wood {
  std::vector<Plane> planes;
  Standing standing{kWide, kThick};
  ClipperLib::Paths flat{flatten(std::span<const Edge>(blank_outline(kWide, kThick)))};

  Wood(Chance& chance, int poses) {
    for (int i = 0; i < poses; ++i) planes.push_back(random_plane(chance));
    for (const Plane& plane : planes) {
      const Swept swept = sweep_of(plane, random_pose(chance), kFar);
      flat = less(flat, {flatten(swept)});
      standing.take(swept);
    }
  }
};

}  // namespace

TEST_CASE("the topmost wood on a line is where walking down it meets wood first", "[random]") {
  Chance chance(11);
  int met = 0, none = 0;
  for (int round = 0; round < 120; ++round) {
    const Wood wood(chance, 1 + chance.of(6));
    for (int line = 0; line < 20; ++line) {
      const Pose pose = random_pose(chance);
      const double u = chance.in(-8, 8);
      const std::optional<double> top = wood.standing.top(pose, u);
      INFO("round " << round << ", line " << line);
      const double start = 80, step = 0.02;
      double v = start;
      while (v > -start && !wood.standing.solid(from_sole_frame(pose, {u, v}))) v -= step;
      if (!top) {
        ++none;
        CHECK(v <= -start);
        continue;
      }
      ++met;
      CHECK(wood.standing.solid(from_sole_frame(pose, {u, *top - 1e-7})));
      CHECK(v <= *top);
      // Wood thinner than a step may be walked past.
      if (wood.standing.solid(from_sole_frame(pose, {u, *top - step})) &&
          wood.standing.solid(from_sole_frame(pose, {u, *top - step / 2})))
        CHECK(v >= *top - step);
    }
  }
  CHECK(met > 1000);
  CHECK(none > 20);
}

TEST_CASE("the clipper's area is that of the points that are wood", "[random]") {
  Chance chance(12);
  const double cell = 0.1;
  for (int round = 0; round < 12; ++round) {
    const Wood wood(chance, 1 + chance.of(6));
    int solid = 0;
    for (double x = cell / 2; x < kWide; x += cell)
      for (double y = cell / 2; y < kThick; y += cell) solid += wood.standing.solid({x, y}) ? 1 : 0;
    INFO("round " << round);
    CHECK(area_of(wood.flat) == Approx(solid * cell * cell).margin(1.0));
  }
}

TEST_CASE("a sole comes to rest where the closest of many lines stops it", "[random]") {
  Chance chance(13);
  int touched = 0;
  for (int round = 0; round < 150; ++round) {
    const Wood wood(chance, 1 + chance.of(5));
    Plane plane = random_plane(chance);
    if (!plane.is_curved()) continue;
    const Pose pose = random_pose(chance);
    const Seating seating = seat(wood.standing, plane, pose);
    double highest = -1e9;
    for (int i = 0; i <= 20000; ++i) {
      const double u = (plane.width / 2 - 1e-7) * (i / 10000.0 - 1);
      const std::optional<double> top = wood.standing.top(pose, u);
      if (top) highest = std::max(highest, *top - sole_height(plane, u));
    }
    INFO("round " << round);
    CHECK(seating.touches == (highest > -1e9));
    if (!seating.touches) continue;
    ++touched;
    CHECK(seating.stands_off >= highest - 1e-3);
    CHECK(seating.stands_off <= highest + 5e-3);
    for (const Patch& patch : seating.patches) {
      const std::optional<double> top = wood.standing.top(pose, patch.u0);
      REQUIRE(top);
      CHECK(*top - sole_height(plane, patch.u0) >= seating.stands_off - 0.0201);
    }
  }
  CHECK(touched > 40);
}

TEST_CASE("a gouge is as deep as the deepest of many points", "[random]") {
  Chance chance(14);
  int gouges = 0;
  for (int round = 0; round < 60; ++round) {
    const Loop target =
        plans::quarter_section("", chance.of(2) == 0 ? Turn::left : Turn::right, 9.525).target;
    const Plane plane = random_plane(chance);
    Pose pose = random_pose(chance);
    if (chance.of(2) == 0) pose = {{chance.in(0, 12), chance.in(0, 12)}, chance.in(0, 90)};
    const Swept swept = sweep_of(plane, pose, kFar);
    const Depth found = gouge(swept, target, {});
    double deepest = 0;
    const int points = 20000;
    for (const Edge& edge : swept.bounds)
      for (int i = 0; i <= points; ++i) {
        const Point p = point_at(edge, static_cast<double>(i) / points);
        const double away = distance(p, target);
        if (away > deepest && contains(target, p)) deepest = away;
      }
    for (const Edge& edge : target)
      for (int i = 0; i <= points; ++i) {
        const Point p = point_at(edge, static_cast<double>(i) / points);
        const double away = distance(p, swept.bounds);
        if (away > deepest && takes(swept, p)) deepest = away;
      }
    INFO("round " << round);
    CHECK(found.mm >= deepest - 1.1e-4);
    CHECK(found.mm <= deepest + 0.01);
    gouges += deepest > 0.01 ? 1 : 0;
  }
  CHECK(gouges > 20);
}

TEST_CASE("what is left is as thick as the thickest of many points", "[random]") {
  Chance chance(15);
  for (int round = 0; round < 30; ++round) {
    const Wood wood(chance, 1 + chance.of(6));
    const Loop target =
        plans::quarter_section("", chance.of(2) == 0 ? Turn::left : Turn::right, 9.525).target;
    const ClipperLib::Paths flat_target{flatten(std::span<const Edge>(target))};
    const Depth found = thickest_left(wood.standing, target, less(wood.flat, flat_target));
    double thickest = 0;
    const auto look = [&](Point middle, double half, double cell) {
      for (double x = middle.x - half + cell / 2; x < middle.x + half; x += cell)
        for (double y = middle.y - half + cell / 2; y < middle.y + half; y += cell) {
          const Point p{x, y};
          const double away = distance(p, target);
          if (away > thickest && wood.standing.solid(p) && !contains(target, p)) thickest = away;
        }
    };
    look({6, 6}, 6, 0.05);
    // A sharp arris slips through that grid; the place that was found is looked at closely.
    look(found.at, 0.01, 0.0002);
    INFO("round " << round);
    CHECK(found.mm >= thickest - 0.0021);
    CHECK(found.mm <= thickest + 0.01);
  }
}
