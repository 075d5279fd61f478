// What a sole rests on, in closed form and on a strip of the wood, against looks along the sole and the whole
// wood.
#include <cmath>
#include <random>

#include "arrisline/section.h"
#include "catch.h"
#include "plan/rest.h"
#include "plan/touch.h"
#include "plan/wood.h"

using namespace arrisline;

namespace {

constexpr unsigned kSeed = 71;

struct Chance {
  std::mt19937 random{kSeed};

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  }

  Plane plane() {
    Plane out;
    const auto kind = random() % 3;
    out.kind = kind == 0 ? PlaneKind::rebate : kind == 1 ? PlaneKind::hollow : PlaneKind::round;
    out.width = between(3, 14);
    if (kind > 0) out.radius = out.width * between(0.55, 1.5);
    return out;
  }

  /// Half of them on a coarse grid, so that edges are shared and arcs touch.
  Pose pose() {
    Pose out{{between(-5, 55), between(0, 22)}, between(-120, 120)};
    if (random() % 2 == 0)
      out = {{std::round(out.at.x), std::round(out.at.y)}, 45 * std::round(out.tilt / 45)};
    return out;
  }
};

/// Where the wood stands highest over the sole, looked for at many places of every edge.
double highest_look(const std::vector<Edge>& edges, const Sweep& sole, double from, double to) {
  double best = -INFINITY;
  for (const Edge& edge : edges) {
    for (int i = 0; i <= 4000; ++i) {
      const Point p = point_at(edge, i / 4000.0);
      const double u = sole.u(p);
      if (u < from || u > to) continue;
      best = std::max(best, sole.v(p) - sole_height(sole.plane(), u));
    }
  }
  return best;
}

}  // namespace

TEST_CASE("a strip of the wood is cut under the sole as the whole wood is", "[wood][property]") {
  Chance chance;
  int met = 0;
  for (int trial = 0; trial < 400; ++trial) {
    const Plane sole_plane = chance.plane();
    const Sweep sole(sole_plane, chance.pose());
    const double reach = sole.half() + kTouch;
    Wood wood(blank_outline(50, 19));
    Wood strip = wood.strip(sole);
    std::vector<Plane> planes(5);
    for (Plane& plane : planes) {
      plane = chance.plane();
      const Sweep sweep(plane, chance.pose());
      wood.cut(sweep);
      strip.cut(sweep);
      const double whole = rest_height_between(wood.edges(), sole, -reach, reach);
      const double part = rest_height_between(strip.edges(), sole, -reach, reach);
      if (!std::isfinite(whole)) {
        REQUIRE(whole == part);
        continue;
      }
      REQUIRE(part == Approx(whole).margin(1e-9));
      REQUIRE(touch(strip.edges(), sole).contacts.size() == touch(wood.edges(), sole).contacts.size());
      ++met;
    }
  }
  REQUIRE(met > 500);
}

TEST_CASE("the height a sole rests at is the greatest that looks along the wood find", "[touch][property]") {
  Chance chance;
  int met = 0;
  for (int trial = 0; trial < 60; ++trial) {
    Wood wood(blank_outline(50, 19));
    std::vector<Plane> planes(4);
    for (Plane& plane : planes) {
      plane = chance.plane();
      wood.cut(Sweep(plane, chance.pose()));
    }
    const Plane sole_plane = chance.plane();
    const Sweep sole(sole_plane, chance.pose());
    const double half = sole.half();
    for (const auto& [from, to] : {std::pair{-half, half}, std::pair{-0.4 * half, 0.9 * half}}) {
      const double found = rest_height_between(wood.edges(), sole, from, to);
      const double looked = highest_look(wood.edges(), sole, from, to);
      if (!std::isfinite(looked)) continue;
      // Looks miss the top by what the edge rises within a step of some hundredths of a millimetre.
      REQUIRE(found >= looked - 1e-9);
      REQUIRE(found <= looked + 0.06);
      ++met;
    }
  }
  REQUIRE(met > 30);
}
