// What two planes side by side leave between their sides.
#include "replay/remains.h"

#include <cmath>

#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using namespace arrisline::replaying;

// A step 6 out and 5 down by two rebates 3 wide side by side, their sides `apart`, each 0.05 short of the
// floor.
static double thickest_between(double apart) {
  Plan plan;
  Section& s = plan.section;
  s.width = plans::kWidth;
  s.thickness = plans::kThickness;
  s.target = {{{6, 0}, {s.width, 0}, {}, Turn::straight},
              {{s.width, 0}, {s.width, s.thickness}, {}, Turn::straight},
              {{s.width, s.thickness}, {0, s.thickness}, {}, Turn::straight},
              {{0, s.thickness}, {0, 5}, {}, Turn::straight},
              {{0, 5}, {6, 5}, {}, Turn::straight},
              {{6, 5}, {6, 0}, {}, Turn::straight}};
  s.source = {-1, -1, -1, -1, -1, -1};
  plan.feasible = true;
  Plane outer = plans::rebate(), inner = plans::rebate();
  outer.width = 3;
  inner.width = 3 - apart;
  plan.cuts = {plans::cut(1, outer, {{{1.5, 4.95}, 0}}, 14.85, Rides::gauge_line),
               plans::cut(2, inner, {{{4.5 + apart / 2, 4.95}, 0}}, 14.85, Rides::gauge_line)};
  plan.waste_area = 30;
  plan.waste_by_flat = 29.7;
  return replay(plan, {}).max_height;
}

TEST_CASE("a fin no wider than rounding is no wood, also where it stands on what is left", "[replay]") {
  CHECK(thickest_between(0) == Approx(0.05).margin(1e-4));
  CHECK(thickest_between(1e-6) == Approx(0.05).margin(1e-4));
  CHECK(thickest_between(3e-6) == Approx(0.05).margin(1e-4));
}

TEST_CASE("a fin as thin as a shaving is wood", "[replay]") {
  // The nearest point of the target is the floor below it or the wall 3 mm beside it.
  CHECK(thickest_between(1e-3) == Approx(3).margin(0.01));
  CHECK(thickest_between(5e-5) == Approx(3).margin(0.01));
  CHECK(thickest_between(0.05) == Approx(3).margin(0.1));
}

TEST_CASE("what chords leave between two soles that meet is no wood", "[replay]") {
  // A round and a hollow that cross at the end of the stick: flattened, a crumb of 1e-8 mm² stands there, 5
  // mm from the target. In truth the farthest is the corner that the hollow's side leaves at x 48.2945.
  const double wide = 50, thick = 20;
  Plane round, hollow;
  round.kind = PlaneKind::round;
  round.width = 13.309938823092851;
  round.radius = 32.042612040828615;
  hollow.kind = PlaneKind::hollow;
  hollow.width = 3.101193330571729;
  hollow.radius = 9.1708104067810332;
  Standing wood(wide, thick);
  ClipperLib::Paths flat{flatten(std::span<const Edge>(blank_outline(wide, thick)))};
  const auto cut = [&](const Plane& plane, const Pose& pose) {
    const Swept swept = sweep_of(plane, pose, 200);
    flat = less(flat, {flatten(swept)});
    wood.take(swept);
  };
  cut(round, {{47.941119125938663, 7.1052431233419133}, 47.831840148495928});
  cut(hollow, {{48.295103586741327, 2.9682636340331046}, -174.77854193175105});
  const Loop target = {{{2, 1}, {30, 1}, {}, Turn::straight},
                       {{30, 1}, {44, 8}, {}, Turn::straight},
                       {{44, 8}, {44, 19}, {}, Turn::straight},
                       {{44, 19}, {2, 19}, {}, Turn::straight},
                       {{2, 19}, {2, 1}, {}, Turn::straight}};
  const Depth found = thickest_left(wood, target, less(flat, {flatten(std::span<const Edge>(target))}));
  CHECK(found.mm == Approx(std::hypot(48.294486836730918 - 44, 1)).margin(2e-4));
}

TEST_CASE("a sole that touches the end of the stick from outside is no surface of it", "[replay]") {
  // By 6 nm it does not reach the wood.
  Plane round;
  round.kind = PlaneKind::round;
  round.width = round.radius = 14;
  Standing wood(50, 20);
  wood.take(sweep_of(round, {{-6e-9, 10}, 90}, 200));
  const Loop target = {{{1, 1}, {49, 1}, {}, Turn::straight},
                       {{49, 1}, {49, 19}, {}, Turn::straight},
                       {{49, 19}, {1, 19}, {}, Turn::straight},
                       {{1, 19}, {1, 1}, {}, Turn::straight}};
  CHECK(thickest_left(wood, target, {}).mm == Approx(std::sqrt(2)).margin(2e-4));
}

namespace {

constexpr double kFar = 200;
constexpr double kWide = 50, kThick = 20;

/// A stick with a target, and what planes have left of it.
struct Stick {
  Loop target;
  Standing wood{kWide, kThick};
  ClipperLib::Paths flat{flatten(std::span<const Edge>(blank_outline(kWide, kThick)))};
  std::vector<Plane> planes;

  explicit Stick(Loop outline) : target(std::move(outline)) { planes.reserve(64); }
  Stick& take(const Plane& plane, const Pose& pose) {
    planes.push_back(plane);
    const Swept swept = sweep_of(planes.back(), pose, kFar);
    flat = less(flat, {flatten(swept)});
    wood.take(swept);
    return *this;
  }
  Stick& take(double width, const Pose& pose) {
    Plane plane;
    plane.width = width;
    return take(plane, pose);
  }
  Depth thickest() const {
    return thickest_left(wood, target, less(flat, {flatten(std::span<const Edge>(target))}));
  }
};

/// The stick below a face at depth y, with a round hole about (x, y0), open at the face by a mouth 6 wide.
Loop with_hole(double x, double r) {
  const double rise = std::sqrt(r * r - 9);
  return {
      {{0, 0}, {x - 3, 0}, {}, Turn::straight},           {{x - 3, 0}, {x + 3, 0}, {x, rise}, Turn::right},
      {{x + 3, 0}, {kWide, 0}, {}, Turn::straight},       {{kWide, 0}, {kWide, kThick}, {}, Turn::straight},
      {{kWide, kThick}, {0, kThick}, {}, Turn::straight}, {{0, kThick}, {0, 0}, {}, Turn::straight}};
}

Loop below(double y) {
  return {{{0, y}, {kWide, y}, {}, Turn::straight},
          {{kWide, y}, {kWide, kThick}, {}, Turn::straight},
          {{kWide, kThick}, {0, kThick}, {}, Turn::straight},
          {{0, kThick}, {0, y}, {}, Turn::straight}};
}

}  // namespace

TEST_CASE("in a hole wider than its mouth the wood is thickest in the middle", "[replay]") {
  for (const double x : {8.0, 25.0, 33.7, 42.0})
    for (const double r : {3.5, 5.0, 6.5}) {
      const double rise = std::sqrt(r * r - 9);
      INFO("radius " << r << " at " << x);
      const Depth whole = Stick(with_hole(x, r)).thickest();
      CHECK(whole.mm <= r + 1e-9);
      CHECK(whole.mm >= r - 0.002);
      // A slot through the middle: beside it, at the height of the centre, half its width less.
      Stick slotted(with_hole(x, r));
      slotted.take(1, {{x, rise + r}, 0});
      const Depth beside = slotted.thickest();
      CHECK(beside.mm == Approx(r - 0.5).margin(2e-4));
      CHECK(beside.at.y == Approx(rise).margin(0.1));
      // Planed to under the centre: on the floor, the farther from the hole the nearer to its middle.
      Stick planed(with_hole(x, r));
      planed.take(5.9, {{x, rise + 1}, 0});
      CHECK(planed.thickest().mm == Approx(r - 1).margin(2e-4));
    }
}

TEST_CASE("a crumb before a piece, or after it, does not hide it", "[replay]") {
  const Stick stick(with_hole(25, 5));
  const auto square = [](Point middle, double half) {
    const Point a = middle - Point{half, half}, b = middle + Point{half, half};
    const std::vector<Edge> edges{{a, {b.x, a.y}, {}, Turn::straight},
                                  {{b.x, a.y}, b, {}, Turn::straight},
                                  {b, {a.x, b.y}, {}, Turn::straight},
                                  {{a.x, b.y}, a, {}, Turn::straight}};
    return flatten(std::span<const Edge>(edges));
  };
  const ClipperLib::Path crumb = square({10, 1e-3}, 1e-3), hole = square({25, 4}, 5);
  for (const ClipperLib::Paths& left : {ClipperLib::Paths{crumb, hole}, {hole, crumb}, {crumb, hole, crumb}})
    CHECK(thickest_left(stick.wood, stick.target, left).mm == Approx(5).margin(0.002));
}

TEST_CASE("in two chambers round a tongue of the target the wood is thickest in their middles", "[replay]") {
  // Chambers of 8 by 8 and of `wide` by 8, a channel under the tongue between them, and a mouth over the
  // first.
  for (const double wide : {6.0, 8.0, 7.2}) {
    const double end = 30 + wide;
    const std::vector<Point> corners{{0, 0},    {13.5, 0},  {13.5, 2},       {10, 2},    {10, 10}, {end, 10},
                                     {end, 2},  {30, 2},    {30, 9},         {18, 9},    {18, 2},  {14.5, 2},
                                     {14.5, 0}, {kWide, 0}, {kWide, kThick}, {0, kThick}};
    Loop target;
    for (std::size_t i = 0; i < corners.size(); ++i)
      target.push_back({corners[i], corners[(i + 1) % corners.size()], {}, Turn::straight});
    Stick stick(target);
    INFO(wide);
    CHECK(stick.thickest().mm == Approx(4).margin(0.002));
    stick.take(7.99, {{14, 9.9}, 0});
    CHECK(stick.thickest().mm == Approx(wide / 2).margin(0.002));
  }
}

TEST_CASE("nothing is left of what is planed to its line, and on it as much as it stands over", "[replay]") {
  Stick stick(below(3));
  CHECK(stick.thickest().mm == Approx(3));
  CHECK(stick.take(60, {{25, 2}, 0}).thickest().mm == Approx(1));
  CHECK(stick.take(30, {{15, 2.5}, 0}).thickest().mm == Approx(1));
  CHECK(stick.take(60, {{25, 3}, 0}).thickest().mm == 0);
  CHECK(stick.take(20, {{25, 4}, 0}).thickest().mm == 0);  // into the finished wood
}

TEST_CASE("what stands beside the target is as far from it as its farthest arris", "[replay]") {
  // From the left end of the stick 10 mm are waste; a round, a hollow and flats have been at it.
  const Loop target{{{10, 0}, {kWide, 0}, {}, Turn::straight},
                    {{kWide, 0}, {kWide, kThick}, {}, Turn::straight},
                    {{kWide, kThick}, {10, kThick}, {}, Turn::straight},
                    {{10, kThick}, {10, 0}, {}, Turn::straight}};
  CHECK(Stick(target).thickest().mm == Approx(10));
  CHECK(Stick(target).take(40, {{4, 10}, 90}).thickest().mm == Approx(6));
  // A round from the left leaves the two corners of its sole, one from the face its own.
  const Plane round = plans::curved(PlaneKind::round, 8), hollow = plans::curved(PlaneKind::hollow, 8);
  const double rise = sole_height(round, 4);
  CHECK(Stick(target).take(40, {{4, 10}, 90}).take(round, {{8, 10}, 90}).thickest().mm == Approx(6));
  CHECK(
      Stick(target).take(14, {{4, 0}, 90}).take(14, {{4, 20}, 90}).take(round, {{8, 10}, 90}).thickest().mm ==
      Approx(std::max(2 + rise, 6.0)));
  Stick coved(target);
  coved.take(16.1, {{9, -2}, 90}).take(16.1, {{9, 22}, 90}).take(round, {{9, 10}, 90});
  CHECK(coved.thickest().mm == Approx(1 + sole_height(round, 3.95)).margin(2e-4));
  Stick beaded(target);
  beaded.take(16.1, {{9, -2}, 90}).take(16.1, {{9, 22}, 90}).take(hollow, {{5, 10}, 90});
  CHECK(beaded.thickest().mm == Approx(5).margin(2e-4));
}

TEST_CASE("soles that cross leave the arris where they cross", "[replay]") {
  // Two rounds side by side over a floor: h = r − sqrt(r² − s²/4) over it where they meet.
  const Plane round = plans::curved(PlaneKind::round, 10);
  for (const double apart : {1.0, 3.0, 6.0}) {
    Stick stick(below(5));
    stick.take(60, {{25, 4.7}, 0});
    for (int k = -9; k <= 9; ++k) stick.take(round, {{25 + k * apart, 5}, 0});
    const double cusp = 10 - std::sqrt(100 - apart * apart / 4);
    INFO(apart);
    // Of 1 apart they do not come to the ends of the stick, of 6 they stand over the floor where they meet.
    CHECK(stick.thickest().mm == Approx(apart == 3 ? cusp : 0.3).margin(1e-4));
  }
}

TEST_CASE("wood left in pieces is as thick as the thickest of them, wherever it comes", "[replay]") {
  for (const bool thick_first : {true, false}) {
    Stick stick(below(5));
    // Two ribs, 1 and 2 high.
    stick.take(10, {{5, 5}, 0}).take(14, {{27, 5}, 0}).take(6, {{47, 5}, 0});
    stick.take(10, {{thick_first ? 15.0 : 39.0, 3}, 0}).take(10, {{thick_first ? 39.0 : 15.0, 4}, 0});
    const Depth found = stick.thickest();
    CHECK(found.mm == Approx(2));
    CHECK((found.at.x < 25) == thick_first);
  }
}

TEST_CASE("a floor a millionth short of the corner of another is parted there", "[replay]") {
  // The second rebate ends so near the wall of the first that rounding might have put it there.
  for (const double gap : {0.0, 2e-7, -2e-7, 5e-7}) {
    Stick stick(below(5));
    stick.take(20, {{10, 4}, 0}).take(30 - gap, {{20 + gap + (30 - gap) / 2, 4.5}, 0});
    INFO(gap);
    CHECK(stick.thickest().mm == Approx(1).margin(1e-6));
    stick.take(20, {{10, 5}, 0});
    CHECK(stick.thickest().mm == Approx(0.5).margin(1e-6));
    stick.take(30 - gap, {{20 + gap + (30 - gap) / 2, 5}, 0});
    CHECK(stick.thickest().mm < 1e-6);
  }
}
