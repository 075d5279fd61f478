// The fitted line as its section has it. The lines are made up for the purpose.
#include "trace/exact.h"

#include <cmath>

#include "arrisline/trace.h"
#include "catch.h"
#include "section/drawing_of.h"
#include "text/write_profile.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

using namespace arrisline;

namespace {

constexpr double kWrittenTo = 2e-6;  // mm: how far the six decimals of two figures may move a line

/// A bead `wide` across on a floor at `floor`, quirks beside it; face and working edge before and behind. Its
/// bulge is `round`, 1 for a half-round.
FlatsAndArcs quirk_bead(double floor, double wide, double round) {
  FlatsAndArcs line;
  line.joints = {{30, 0}, {20, 0}, {20, floor}, {18, floor}, {18 - wide, floor}, {0, floor}, {0, floor + 9}};
  line.bulges = {0, 0, 0, -round, 0, 0};
  return line;
}

Held flats_held(const FlatsAndArcs& line) {
  Held held(line.size());
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line.bulges[i] != 0) continue;
    held.axis[i] = line.joints[i].y == line.joints[i + 1].y ? Held::Axis::level : Held::Axis::upright;
  }
  return held;
}

constexpr std::size_t kBead = 3;

/// How far the bead's crown lies below the face, mm.
double below_face(const FlatsAndArcs& line, const Held& held) {
  return reach_of(exact_edge(line, held, kBead)).low.y;
}

}  // namespace

TEST_CASE("a half-round but for a hair is a half-round", "[trace][exact]") {
  for (const double round : {0.9995, 1.0005}) {
    FlatsAndArcs line = quirk_bead(4.5, 8, round);
    Held held = flats_held(line);
    make_half_round(line, held);
    CHECK(std::abs(line.bulges[kBead]) == 1);
    CHECK(held.radius[kBead] == Approx(4));
    CHECK(below_face(line, held) == Approx(0.5));
  }
  FlatsAndArcs flatter = quirk_bead(4.5, 8, 0.99);
  Held held = flats_held(flatter);
  make_half_round(flatter, held);
  CHECK(flatter.bulges[kBead] == -0.99);
}

TEST_CASE("a half-round that leans by a hair stands square to the face that it starts on", "[trace][exact]") {
  // On the face, and a step from its foot down to a fillet: a foot that lies 0.006 mm aside would lift its
  // crown over the face by 1e-6 mm.
  for (const double aside : {0.006, -0.006}) {
    FlatsAndArcs line;
    line.joints = {{20, 0}, {8, 0}, {8 - aside, 7}, {8 - aside, 9}, {0, 9}, {0, 15}};
    line.bulges = {0, -1.0001, 0, 0, 0};
    Held held = flats_held(line);
    held.y[0] = held.y[1] = 0;
    make_half_round(line, held);
    CHECK(line.joints[1].x == line.joints[2].x);
    CHECK(line.joints[2].x == 8 - aside);
    CHECK(reach_of(exact_edge(line, held, 1)).low.y >= 0);
    CHECK(*held.radius[1] == Approx(3.5).margin(1e-12));
  }
}

TEST_CASE("a bead that is level with the face stays under it", "[trace][exact]") {
  // As scatter has it: the crown over the face by less than is allowed. The feet stay where they are but for
  // a hair.
  const Allowed allowed{0.05, 0.02};
  for (const double over : {0.000002, 0.003, 0.02, 0.1}) {
    for (const double round : {1.0, 0.8}) {
      INFO(over << " over, bulge " << round);
      const double wide = 8;
      const double high = wide / 2 * round;  // of the bead over its feet: half the chord times the bulge
      FlatsAndArcs line = quirk_bead(high - over, wide, round);
      Held held = flats_held(line);
      REQUIRE(below_face(line, held) == Approx(-over));
      keep_in_blank(line, held, allowed);
      CHECK(below_face(line, held) >= -1e-9);
      CHECK(below_face(line, held) <= 0.0051);
      CHECK(std::abs(line.joints[kBead].x - 18) <= 0.005);
      CHECK(line.joints[kBead].y == high - over);
    }
  }
}

TEST_CASE("a nosing that makes the working edge is moved along its flats to it", "[trace][exact]") {
  for (const double over : {0.000006, 0.001, 0.03}) {
    INFO(over << " over");
    const double r = 9.525;
    FlatsAndArcs line;
    line.joints = {{30, 0}, {r - over, 0}, {r - over, 2 * r}, {20, 2 * r}};
    line.bulges = {0, -1, 0};
    Held held = flats_held(line);
    keep_in_blank(line, held, {0.05, 0});
    const Edge nosing = exact_edge(line, held, 1);
    CHECK(reach_of(nosing).low.x >= 0);
    CHECK(reach_of(nosing).low.x < kWrittenTo);
    CHECK(radius(nosing) == Approx(r));
    CHECK(nosing.from.x == nosing.to.x);
  }
}

TEST_CASE("a bead that stands over the face by more than scatter is left as it is", "[trace][exact]") {
  FlatsAndArcs line = quirk_bead(3.5, 8, 1);
  Held held = flats_held(line);
  keep_in_blank(line, held, {0.05, 0.02});
  CHECK(below_face(line, held) == Approx(-0.5));
}

TEST_CASE("a bead whose foot lies past where it stands upright at the edge keeps its radius",
          "[trace][exact]") {
  FlatsAndArcs line;
  line.joints = {{30, 0}, {8, 0}, {8, 3}, {0, 11.24}, {0, 20}};
  const double past = std::asin(0.24 / 8);  // radians
  line.bulges = {0, 0, -std::tan((kPi / 2 + past) / 4), 0};
  Held held = flats_held(line);
  held.x[3] = held.x[4] = 0;
  const auto bead = [&] { return exact_edge(line, held, 2); };
  REQUIRE(reach_of(bead()).low.x < -0.002);
  keep_in_blank(line, held, {0.05, 0});
  CHECK(reach_of(bead()).low.x >= -1e-9);
  CHECK(radius(bead()) == Approx(8).margin(0.01));
  CHECK(line.joints[3].x == 0);
  CHECK(line.joints[3].y == Approx(11).margin(0.01));
}

TEST_CASE("a bead that runs down to the working edge stays off it", "[trace][exact]") {
  // A quadrant from a fillet down to the edge, its foot 0.01 mm short of where it stands upright.
  FlatsAndArcs line;
  line.joints = {{30, 0}, {10, 0}, {10, 2}, {6, 2}, {0, 8.01}, {0, 20}};
  const double turn = to_radians(90.3);
  line.bulges = {0, 0, 0, -std::tan(turn / 4), 0};
  Held held = flats_held(line);
  const auto off_edge = [&] { return reach_of(exact_edge(line, held, 3)).low.x; };
  REQUIRE(off_edge() < 0);
  keep_in_blank(line, held, {0.05, 0});
  CHECK(off_edge() >= -1e-9);
  CHECK(line.joints[4].x == 0);
}

TEST_CASE("a bead flush with the face is not written over it", "[trace][exact]") {
  // Between two steps, by figures that six decimals do not hold.
  for (const double over : {-1.9e-8, -8e-7, 4.6e-6, 0.03}) {
    INFO(over << " over");
    const double r = 3.64999988;
    FlatsAndArcs line;
    line.joints = {{20, 0},
                   {14.50000012, 0},
                   {14.50000012, 7.29999312},
                   {12.3000003, 7.29999312},
                   {12.3000003, r - over},
                   {12.3000003 - 2 * r, r - over},
                   {12.3000003 - 2 * r, 9.65},
                   {0, 9.65},
                   {0, 15}};
    line.bulges = {0, 0, 0, 0, -1, 0, 0, 0};
    Held held = flats_held(line);
    keep_in_blank(line, held, {0.05, 0});
    const double low = reach_of(exact_edge(line, held, 4)).low.y;
    CHECK(low >= kWrittenTo / 2);
    CHECK(low < kWrittenTo);
  }
}

TEST_CASE("a bead that touches the face by whole figures keeps them", "[trace][exact]") {
  FlatsAndArcs line;
  line.joints = {{20, 0}, {14, 0}, {14, 5}, {4, 5}, {4, 9}, {0, 9}, {0, 15}};
  line.bulges = {0, 0, -1, 0, 0, 0};
  Held held = flats_held(line);
  keep_in_blank(line, held, {0.05, 0});
  CHECK(line.joints[2] == Point{14, 5});
  CHECK(line.joints[3] == Point{4, 5});
  CHECK(line.bulges[2] == -1);
}

TEST_CASE("a flat that runs on from a held level is written as that is", "[trace][exact]") {
  // The side of a blank that was drawn lies at no sixth decimal.
  FlatsAndArcs line = quirk_bead(4.5, 8, 1);
  Held held = flats_held(line);
  constexpr double kSide = 20.0000004;
  held.x[2] = kSide;
  line.joints[1].x = 20.0000006;
  make_exact(line, held);
  make_as_written(line, held);
  CHECK(line.joints[1].x == kSide);
  CHECK(line.joints[2].x == kSide);
  CHECK(line.joints[1].y == line.joints[0].y);
}

TEST_CASE("no flat that is level or upright leans for what is rounded away", "[trace][exact][drawn]") {
  // In a drawing whose bulges have six decimals the joints lie beside their places by less than one of them.
  std::string vertices;
  for (const char* const vertex :
       {"-20.25 20 0", "-14.25 20 0", "-14.25 20 -1.5 42 0.220427", "-11.75 20 -3.75 42 -0.220427",
        "-9.25 20 -6", "-7.5 20 -6", "-7.5 20 -7.25 42 -1", "-7.5 20 -12.25", "-7.5 20 -13.5",
        "-6.25 20 -13.5", "-6.25 20 -15.25 42 -0.414214", "-1.25 20 -20.25", "0 20 -20.25", "0 20 -25.25"})
    vertices += std::string("0 VERTEX 10 ") + vertex + " ";
  const FittedProfile found = testing::on_halves(testing::traced(
      testing::dxf_of("0 POLYLINE 66 1 70 0 " + vertices + "0 SEQEND", "9 $INSUNITS 70 4"), "a.dxf"));
  const std::string text = profile_text(drawing_of(found.section, Unit::mm));
  INFO(text);
  CHECK(text.find("bevel") == std::string::npos);
  CHECK(text.find("fillet   out 1.75\nstep     down 1.25\n") != std::string::npos);
}
