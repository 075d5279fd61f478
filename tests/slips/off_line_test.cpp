// How far a section departs from the drawn line, against figures worked out by hand.
#include "slips/off_line.h"

#include <cmath>

#include "plan/planning.h"
#include "plan/soles.h"

using namespace arrisline;
using test::flat;
using test::profile;

namespace {

constexpr double kFound = 1.1e-3;  // to which it is found

}  // namespace

TEST_CASE("a rebate cut too wide, too deep, or short of the line", "[off_line]") {
  // Corner at (12.7, 6.35): element 1 the wall, element 2 the floor.
  const Section section = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  const Plane plane = flat(19.05);
  const auto off = [&](double x, double y) {
    return off_line(section, {Sweep(plane, {{x - plane.width / 2, y}, 0})});
  };
  const std::vector<OffLine> right = off(12.7, 6.35);
  REQUIRE(right.size() == 2);
  for (const OffLine& element : right) {
    CHECK(element.lost == Approx(0).margin(1e-6));
    CHECK(element.left == Approx(0).margin(1e-6));
  }
  // Too deep: the floor is lost, and of the wall its foot, which is as far from what remains.
  const std::vector<OffLine> deep = off(12.7, 6.65);
  CHECK(deep[1].lost == Approx(0.3).margin(kFound));
  CHECK(deep[0].lost == Approx(0).margin(kFound));
  // Too wide: the wall is lost; the foot, where the floor begins, stands at the end of the floor that
  // remains.
  const std::vector<OffLine> wide = off(13.1, 6.35);
  CHECK(wide[0].lost == Approx(0.4).margin(kFound));
  CHECK(wide[1].lost == Approx(0).margin(kFound));
  // Short of the floor alone: so thick all along it, and as thick at the foot of the wall.
  const std::vector<OffLine> shallow = off(12.7, 6.25);
  CHECK(shallow[0].left == Approx(0.1).margin(kFound));
  CHECK(shallow[1].left == Approx(0.1).margin(kFound));
  // Short of both: the strip on the wall stands on the floor, half a millimetre up it as near as to the wall.
  const std::vector<OffLine> small = off(12.2, 6.25);
  CHECK(small[0].left == Approx(0.5).margin(kFound));
  CHECK(small[1].left == Approx(0.5).margin(kFound));
  CHECK(small[0].lost + small[1].lost == Approx(0).margin(1e-6));
}

TEST_CASE("a chamfer too deep is lost by as much as it is shifted", "[off_line]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\nchamfer 1/4");
  const Plane plane = flat(19.05);
  for (const double by : {-0.25, -0.01, 0.01, 0.25}) {
    INFO("sunk by " << by);
    const std::vector<OffLine> off =
        off_line(section, {Sweep(plane, {Point{3.175, 3.175} - by * outward(45), 45})});
    CHECK(off[0].lost == Approx(std::max(by, 0.0)).margin(kFound));
    CHECK(off[0].left == Approx(std::max(-by, 0.0)).margin(kFound));
  }
}

TEST_CASE("a flat across a round-over: most in the middle", "[off_line]") {
  // A chamfer sunk h below the crown of the bead leaves h less than nothing there, and at the ends of the
  // quadrant the corner that stands R(√2 − 1) − … beyond it: what the flat does not reach.
  const double r = 9.525;
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  const Plane plane = flat(25);
  const double h = 0.2;
  const std::vector<OffLine> off =
      off_line(section, {Sweep(plane, {Point{r, r} + (r - h) * outward(45), 45})});
  CHECK(off[0].lost == Approx(h).margin(kFound));
  // The flat meets the face where x = √2·(2r − (r − h))/... by the line x + y = 2r − √2(r − h).
  const Point arris{2 * r - std::sqrt(2.0) * (r - h), 0};
  CHECK(off[0].left == Approx(norm(arris - Point{r, r}) - r).margin(kFound));
}

TEST_CASE("a hollow of another place departs from its bead by the shift", "[off_line]") {
  // Two soles of the bead's radius, 30° and 60°, moved down by d: below the crown d is lost, and nothing is
  // left where the sole reaches.
  const double r = 9.525, d = 0.15;
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  Plane plane;
  plane.kind = PlaneKind::hollow;
  plane.radius = plane.width = r;
  std::vector<Sweep> sweeps;
  for (const double tilt : {30.0, 60.0})
    sweeps.emplace_back(plane, Pose{Point{r, r + d} + r * outward(tilt), tilt});
  const std::vector<OffLine> off = off_line(section, sweeps);
  // At the face end the drawn line runs along the face, where d is the whole depth of it.
  CHECK(off[0].lost == Approx(d).margin(kFound));
  CHECK(off[0].left == Approx(0).margin(kFound));
}

TEST_CASE("what is lost of all the wood is no more than the stock", "[off_line]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\nchamfer 1/4");
  const Plane plane = flat(200);
  const std::vector<OffLine> off = off_line(section, {Sweep(plane, {{25, 30}, 0})});
  CHECK(off[0].lost == Approx(50.8));
  CHECK(off[0].left == 0);
}
