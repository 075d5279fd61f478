// Chains on the stock: where they may start and end, second chains, and what they take off.
#include "section/sections.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

constexpr double kIn = kMmPerInch;
const std::string kStock = "stock 2 wide, 3/4 thick\n";

double waste(const Section& section) {
  return (section.width * section.thickness - area(section.target)) / (kIn * kIn);
}

}  // namespace

TEST_CASE("a rebate for glass on the underside", "[section][chains]") {
  const Section section =
      section_of(kStock + "side underside\nstart back 1/4\nfillet out 3/8\nstep up 1/4\n");
  check_promises(section);
  CHECK(has_corner(section, {2 * kIn, 0.5 * kIn}));
  CHECK(has_corner(section, {1.625 * kIn, 0.5 * kIn}));
  CHECK(has_corner(section, {1.625 * kIn, 0.75 * kIn}));
  CHECK_FALSE(has_corner(section, {2 * kIn, 0.75 * kIn}));
  CHECK(waste(section) == Approx(0.375 * 0.25).epsilon(1e-13));
  CHECK(describe(section.elements[0]) == "element 1 (fillet) on the underside");
  CHECK(section.elements[0].chain == Chain::underside);
}

TEST_CASE("the underside is read upside down", "[section][chains]") {
  // A bead on the lower arris of the working edge.
  const Section section = section_of(kStock + "side underside\nstart face 1/4\nbead out 1/4 down 1/4\n");
  check_promises(section);
  const Edge bead = edge_of(section, 0);
  CHECK(near(bead.centre, {0.25 * kIn, 0.5 * kIn}));
  CHECK(waste(section) == Approx((1 - kPi / 4) / 16).epsilon(1e-12));
}

TEST_CASE("the back is read mirrored", "[section][chains]") {
  const Section section = section_of(kStock + "side back\nstart face 1/2\nstep down 1/8\nfillet out 1/2\n");
  check_promises(section);
  CHECK(has_corner(section, {1.5 * kIn, 0}));
  CHECK(has_corner(section, {1.5 * kIn, 0.125 * kIn}));
  CHECK(has_corner(section, {2 * kIn, 0.125 * kIn}));
  CHECK(waste(section) == Approx(0.5 * 0.125).epsilon(1e-12));
}

TEST_CASE("a chain may end on the underside", "[section][chains]") {
  const Section section = section_of(kStock + "start face 1\nbevel out 1/2 down 3/4\n");
  check_promises(section);
  CHECK(waste(section) == Approx((1 + 0.5) / 2 * 0.75).epsilon(1e-12));
}

TEST_CASE("a flute goes back to the face", "[section][chains]") {
  const Section section = section_of(kStock + "start face 1 1/4\ncove out 1/2 radius 1/4\n");
  check_promises(section);
  CHECK(waste(section) == Approx(kPi / 2 / 16).epsilon(1e-12));
  CHECK(section.target.size() == 6);
}

TEST_CASE("two flutes are two chains of the face", "[section][chains]") {
  const Section section = section_of(kStock +
                                     "start face 3/4\ncove out 1/2 radius 1/4\n"
                                     "side face\nstart face 1 3/4\ncove out 1/2 radius 1/4\n");
  check_promises(section);
  CHECK(waste(section) == Approx(kPi / 16).epsilon(1e-12));
  CHECK(section.elements[1].number == 1);  // counted from each start
}

TEST_CASE("a chain from the back edge to the working edge", "[section][chains]") {
  const Section section =
      section_of(kStock + "start back 1/4\nfillet out 1\nbevel out 1/2 up 1/8\nbevel out 1/2 down 1/8\n");
  check_promises(section);
  CHECK(waste(section) == Approx(0.25 * 2 - 0.125 / 2).epsilon(1e-12));
}

TEST_CASE("a groove in the back edge", "[section][chains]") {
  const Section section = section_of(kStock + "start back 1/2\nfillet out 1/4\nstep up 1/4\nfillet in 1/4\n");
  check_promises(section);
  CHECK(waste(section) == Approx(1.0 / 16).epsilon(1e-12));
}

TEST_CASE("a rebate on the upper back arris", "[section][chains]") {
  const Section section = section_of(kStock + "start back 1/4\nfillet out 3/8\nstep up 1/4\n");
  check_promises(section);
  CHECK(waste(section) == Approx(0.375 * 0.25).epsilon(1e-12));
  CHECK(has_corner(section, {1.625 * kIn, 0.25 * kIn}));
}

TEST_CASE("chains on three sides close into one outline", "[section][chains]") {
  const Section section = section_of(
      "stock 4 wide 3 thick\n"
      "start face 1 1/2\nstep down 1/4\nogee out 3/4 down 3/4\nfillet out 3/4\n"
      "side underside\nstart face 1/4\nstep down 3/8\nfillet out 1/4\n"
      "side back\nstart face 1\nstep down 1/8\nscotia 7/8\nfillet out 5/8\n"
      "side face\nstart face 2 1/2\ncove out 1/2 radius 1/2\n");
  check_promises(section);
  CHECK(section.target.size() == 16);
  CHECK(section.elements.size() == 11);
  for (int i = 0; i < 11; ++i) CHECK(edges_of(section, i).size() == 1);
  // By hand: strip and S-curve, rebate, strip with two segments of circle, and a 60° segment.
  const double face = 1.5 * 0.25 + 0.75 * 0.75 + 0.75 * 0.75 / 2;
  const double underside = 0.25 * 0.375;
  const auto segment = [](double r, double degrees) {
    return r * r / 2 * (to_radians(degrees) - std::sin(to_radians(degrees)));
  };
  const double unit = 0.125;  // a seventh of 7/8
  const double chords = 1 * 0.125 + 0.625 * 0.875 + unit * unit * (0.5 * (3 + 4.8) * 5.4 + 0.5 * 4.8 * 1.6);
  const double bends = segment(3 * unit, 143.13010235415598) + segment(8 * unit, 36.86989764584402);
  CHECK(waste(section) == Approx(face + underside + chords + bends + segment(0.5, 60)).epsilon(1e-9));
}

TEST_CASE("chains that meet are closed to the last bit", "[section][chains]") {
  // Added up from either side, 7/8 of an inch is not the same number.
  check_promises(
      section_of("units inch\nstock 2 wide, 1 1/4 thick\nstart face 5/8\ncove out 5/8 down 7/8 radius 7/8\n"
                 "side underside\nstart face 3/4\nstep down 3/8\nfillet out 3/4\n"));
}

TEST_CASE("an end within 0.001 mm is moved onto the outline", "[section][chains]") {
  const auto ends = [](const std::string& last) {
    return section_of("units mm\nstock 50 wide 20 thick\nstart face 20\nstep down 5\nfillet out " + last +
                      "\n");
  };
  for (const std::string last : {"19.9991", "20", "20.0009"}) {
    const Section section = ends(last);
    check_promises(section);
    CHECK(edge_of(section, 1).from == Point{0, 5});
  }
  CHECK_FALSE(
      read_profile("units mm\nstock 50 wide 20 thick\nstart face 20\nstep down 5\nfillet out 19.9985\n", "p")
          .value.has_value());
  CHECK_FALSE(
      read_profile("units mm\nstock 50 wide 20 thick\nstart face 20\nstep down 5\nfillet out 20.0015\n", "p")
          .value.has_value());
}

TEST_CASE("a last arc that is moved keeps its radius", "[section][chains]") {
  const Section section =
      section_of("units mm\nstock 50 wide 20 thick\nstart face 10\nbead out 9.9992 down 9.9992 radius 10\n");
  check_promises(section);
  const Edge bead = edge_of(section, 0);
  CHECK(bead.from.x == 0);
  CHECK(radius(bead) == Approx(10).epsilon(1e-13));
}

TEST_CASE("a chain may run along the outline", "[section][chains]") {
  // Along the face at its start, along the working edge on the way, along the underside at its end.
  const Section section = section_of(
      "units mm\nstock 50 wide 20 thick\nstart face 12\nfillet out 4\nstep down 4\nfillet out 8\nstep down "
      "4\n"
      "fillet in 4\nstep down 12\nfillet out 4\n");
  check_promises(section);
  CHECK(section.width * section.thickness - area(section.target) == Approx(8.0 * 4 + 4 * 12));
  CHECK(edges_of(section, 0).empty());
  CHECK(edges_of(section, 3).empty());
  CHECK(edges_of(section, 6).empty());
  CHECK(edge_of(section, 1).to == Point{8, 0});
  CHECK(edge_of(section, 5).from == Point{4, 20});
}

TEST_CASE("a chain may touch the outline on the side it takes away", "[section][chains]") {
  const Section section = section_of(
      "units mm\nstock 50 wide 20 thick\nstart face 5\nstep down 3\nbead down 10 radius 5\nstep down 7\n");
  check_promises(section);
  CHECK(near(point_at(edge_of(section, 1), 0.5), {0, 8}));
}

TEST_CASE("flats in one line from different statements stay apart", "[section][chains]") {
  const Section section = section_of(
      "units mm\nstock 50 wide 20 thick\nstart face 20\nstep down 2\nstep down 3\n"
      "fillet out 10\nfillet out 10\n");
  CHECK(section.target.size() == 8);
  for (int i = 0; i < 4; ++i) CHECK(edges_of(section, i).size() == 1);
}

TEST_CASE("work that is undercut is legal", "[section][chains]") {
  const Section section = section_of(
      "units mm\nstock 50 wide 20 thick\nstart face 20\nstep down 5\n"
      "fillet in 5\nstep down 5\nfillet out 25\n");
  check_promises(section);
  CHECK(has_corner(section, {25, 5}));
}

TEST_CASE("elements that close to nothing are legal and warned of", "[section][chains]") {
  const std::string text =
      "units mm\nstock 50 wide 60 thick\nstart face 20\nstep down 5\ntorus 10\nfillet out 20\n";
  CHECK(profile_messages(text) ==
        "6:1: warning: element 3 (fillet) and element 2 (torus) close to nothing where they meet: no plane "
        "can reach into the cleft; put a fillet between them\n");
  check_promises(section_of(text, true));
  const std::string feather =
      "units mm\nstock 50 wide 60 thick\nstart face 20\ncove down 10 radius 5\nfillet out 20\n";
  CHECK(profile_messages(feather) ==
        "4:1: warning: element 1 (cove) and the face meet in a feather edge of no thickness; put a fillet "
        "between them\n");
}

TEST_CASE("names and units may be left out", "[section][chains]") {
  const Section section = section_of("stock 2 wide 1 thick\nstart face 1\nchamfer 1/2\nfillet out 1/2\n");
  CHECK(section.name == "test");
  CHECK(section.width == 50.8);
}

TEST_CASE("stock may come last, and its measures in either order", "[section][chains]") {
  const Section section = section_of("start face 1\nstep down 1/2\nfillet out 1\nstock 1 thick, 2 wide\n");
  CHECK(section.width == 50.8);
  CHECK(section.thickness == 25.4);
}
