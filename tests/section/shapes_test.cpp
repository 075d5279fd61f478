// The geometry of every element and trade shape.
#include "section/sections.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

constexpr double kIn = kMmPerInch;

/// A profile in mm that begins on the face 50 in and 10 down, and runs out to the working edge from wherever
/// `moves` ends, `left` from it.
Section on_wide_stock(const std::string& moves, const std::string& left, bool warned = false) {
  std::string text = "units mm\nstock 100 wide, 100 thick\nstart face 50\nstep down 10\n" + moves + "\n";
  if (!left.empty()) text += "fillet out " + left + "\n";
  const Section section = section_of(text, warned);
  check_promises(section);
  return section;
}

}  // namespace

TEST_CASE("the profile in the description of the files", "[section]") {
  const Section section = section_of(
      "# Ovolo between two fillets, on the edge of a table top\n"
      "profile  table edge\n"
      "units    inch\n"
      "stock    2 wide, 3/4 thick\n"
      "\n"
      "start    face 1/2            # begin on the face, 1/2 in from the working edge\n"
      "step     down 1/8\n"
      "bead     out 3/8 down 3/8\n"
      "fillet   out 1/8             # ends on the working edge\n");
  check_promises(section);
  CHECK(section.name == "table edge");
  CHECK(section.width == 2 * kIn);
  CHECK(section.thickness == Approx(0.75 * kIn));
  REQUIRE(section.elements.size() == 3);
  CHECK(describe(section.elements[1]) == "element 2 (bead)");
  CHECK(section.elements[1].line == 8);
  CHECK(section.elements[1].part == 0);
  // The quadrant is convex: its centre lies in the wood, straight below its start.
  const Edge bead = edge_of(section, 1);
  CHECK(near(bead.centre, {0.5 * kIn, 0.5 * kIn}));
  CHECK(bead.turn == Turn::left);
  CHECK(contains(section.target, bead.centre + Point{0.1, 0.1}));
  CHECK(near(bead.from, {0.125 * kIn, 0.5 * kIn}));
  CHECK(near(bead.to, {0.5 * kIn, 0.125 * kIn}));
  // Blank less a strip of 1/2 × 1/8, a strip of 1/8 × 3/8, and a quadrant's spandrel of 3/8.
  const double waste = 0.5 * 0.125 + 0.125 * 0.375 + (1 - kPi / 4) * 0.375 * 0.375;
  CHECK(area(section.target) == Approx((2 * 0.75 - waste) * kIn * kIn).epsilon(1e-13));
}

TEST_CASE("a cove has its centre in the air", "[section]") {
  const Section section = on_wide_stock("cove out 20 down 20", "30");
  const Edge cove = edge_of(section, 1);
  CHECK(near(cove.centre, {30, 10}));
  CHECK(cove.turn == Turn::right);
  CHECK_FALSE(contains(section.target, {30.1, 10.1}));
}

TEST_CASE("quadrants by rule", "[section]") {
  // Peter Nicholson, The Mechanic's Companion: ovolo and cavetto are quadrants.
  const Section ovolo = on_wide_stock("ovolo 20", "30");
  const Section bead = on_wide_stock("bead out 20 down 20", "30");
  const Section cavetto = on_wide_stock("cavetto 20", "30");
  const Section cove = on_wide_stock("cove out 20 down 20", "30");
  CHECK(area(ovolo.target) == area(bead.target));
  CHECK(area(cavetto.target) == area(cove.target));
  CHECK(std::abs(sweep(edge_of(ovolo, 1))) == Approx(kPi / 2).epsilon(1e-13));
  CHECK(std::abs(sweep(edge_of(cavetto, 1))) == Approx(kPi / 2).epsilon(1e-13));
  CHECK(describe(ovolo.elements[1]) == "element 2 (ovolo)");
  CHECK(ovolo.elements[1].part == 0);
}

TEST_CASE("a cyma of unequal height and projection is two arcs of 60 degrees", "[section]") {
  // Peter Nicholson, The Mechanic's Companion: arcs on equilateral triangles, so r is half the chord. For
  // H 4, P 3: r 2.5; the rise of a 60° segment is .1340 r and its length 1.0472 r (tables of circular
  // segments).
  const Section section = on_wide_stock("ogee out 3 down 4", "47");
  const Edge bead = edge_of(section, 1);
  const Edge cove = edge_of(section, 2);
  for (const Edge& arc : {bead, cove}) {
    CHECK(radius(arc) == Approx(2.5).epsilon(1e-13));
    CHECK(std::abs(sweep(arc)) == Approx(kPi / 3).epsilon(1e-13));
    CHECK(rise(arc) == Approx(0.334936).margin(5e-7));
    CHECK(length(arc) == Approx(2.617994).margin(5e-7));
  }
  CHECK(length(bead) + length(cove) == Approx(5.235988).margin(5e-7));
  CHECK(near(bead.from, {48.5, 12}));  // they meet halfway
  CHECK(bead.turn == Turn::left);      // read from the face, the bead comes first
  CHECK(cove.turn == Turn::right);
  CHECK(near(direction_at(cove, 1), direction_at(bead, 0), 1e-12));  // and run on into one another
  CHECK(describe(section.elements[1]) == "element 2 (ogee, bead)");
  CHECK(section.elements[1].name == "ogee (bead)");
  CHECK(section.elements[1].part == 1);
  CHECK(section.elements[2].part == 2);
  CHECK(section.elements[2].number == 2);
}

TEST_CASE("a cyma of equal height and projection is two quadrants", "[section]") {
  // Peter Nicholson, The Mechanic's Companion.
  const Section ogee = on_wide_stock("ogee out 20 down 20", "30");
  const Section reverse = on_wide_stock("reverse-ogee out 20 down 20", "30");
  for (const Section& section : {ogee, reverse}) {
    for (const int element : {1, 2}) {
      CHECK(radius(edge_of(section, element)) == Approx(10).epsilon(1e-13));
      CHECK(std::abs(sweep(edge_of(section, element))) == Approx(kPi / 2).epsilon(1e-13));
    }
  }
  CHECK(edge_of(ogee, 1).turn == Turn::left);
  CHECK(edge_of(reverse, 1).turn == Turn::right);
  CHECK(reverse.elements[1].name == "reverse-ogee (cove)");
  // Bead and cove take and leave the same: each halves the square.
  CHECK(area(ogee.target) == Approx(area(reverse.target)));
  const Section flat = on_wide_stock("bevel out 20 down 20", "30");
  CHECK(area(ogee.target) == Approx(area(flat.target)).epsilon(1e-13));
}

TEST_CASE("a cyma with its own radius", "[section]") {
  const Section section = on_wide_stock("ogee out 20 down 20 radius 30", "30");
  CHECK(radius(edge_of(section, 1)) == Approx(30).epsilon(1e-13));
  CHECK(radius(edge_of(section, 2)) == Approx(30).epsilon(1e-13));
  CHECK(near(edge_of(section, 1).from, {40, 20}));
}

TEST_CASE("a torus is half round and ends straight below its start", "[section]") {
  const Section section = on_wide_stock("torus 20\nstep down 5", "50");
  const Edge torus = edge_of(section, 1);
  CHECK(std::abs(sweep(torus)) == Approx(kPi).epsilon(1e-12));
  CHECK(near(torus.centre, {50, 20}));
  CHECK(near(point_at(torus, 0.5), {40, 20}));
  CHECK(near(torus.from, {50, 30}));
  CHECK(near(torus.to, {50, 10}));
  const Section spelt = on_wide_stock("bead down 20 radius 10\nstep down 5", "50");
  CHECK(area(spelt.target) == area(section.target));
}

TEST_CASE("an astragal stands between two fillets of a quarter of it", "[section]") {
  // Common practice, no source.
  const Section section = on_wide_stock("astragal 8", "50");
  CHECK(near(edge_of(section, 1).to, {50, 10}));
  CHECK(length(edge_of(section, 1)) == Approx(2));
  CHECK(radius(edge_of(section, 2)) == Approx(4));
  CHECK(near(edge_of(section, 3).from, {50, 22}));
  CHECK(section.elements[2].name == "astragal (bead)");
}

TEST_CASE("a chamfer is a bevel at 45 degrees", "[section]") {
  const Section section = on_wide_stock("chamfer 20", "30");
  CHECK(near(edge_of(section, 1).from, {30, 30}));
  CHECK(near(edge_of(section, 1).to, {50, 10}));
}

TEST_CASE("a scotia of two arcs", "[section]") {
  // After Sheraton's Drawing-Book (1793), a reconstruction: height in 7 parts, an arc of 3 parts and
  // 143.130°, an arc of 8 parts and 36.870°, tangent where they meet; the foot stands 3 parts out from the
  // head.
  const Section section = on_wide_stock("scotia 7", "47");
  const Edge upper = edge_of(section, 1);
  const Edge lower = edge_of(section, 2);
  CHECK(radius(upper) == Approx(3).epsilon(1e-13));
  CHECK(radius(lower) == Approx(8).epsilon(1e-13));
  CHECK(std::abs(to_degrees(sweep(upper))) == Approx(143.130).margin(5e-4));
  CHECK(std::abs(to_degrees(sweep(lower))) == Approx(36.870).margin(5e-4));
  CHECK(near(direction_at(lower, 1), direction_at(upper, 0), 1e-12));
  CHECK(near(upper.centre, {50, 13}));
  CHECK(near(lower.from, {47, 17}));
}

TEST_CASE("a quirk is a square groove", "[section]") {
  // Common practice, no source.
  const Section section = on_wide_stock("quirk 3", "47");
  CHECK(has_corner(section, {50, 13}));
  CHECK(has_corner(section, {47, 13}));
  CHECK(has_corner(section, {47, 10}));
  const Section deep = on_wide_stock("quirk out 2 down 6", "48");
  CHECK(has_corner(deep, {48, 16}));
  CHECK(deep.elements[2].name == "quirk (floor)");
}

TEST_CASE("a thumbnail leaves its step level", "[section]") {
  // Common practice, no source.
  const Section round = on_wide_stock("thumbnail 20", "30");
  CHECK(near(edge_of(round, 1).from, {50, 15}));
  CHECK(radius(edge_of(round, 2)) == Approx(20));
  CHECK(std::abs(sweep(edge_of(round, 2))) == Approx(kPi / 2).epsilon(1e-12));
  const Section long_one = on_wide_stock("thumbnail out 40 down 10", "10");
  const Edge arc = edge_of(long_one, 2);
  CHECK(near(arc.from, {10, 20}));
  CHECK(near(arc.to, {50, 12}));
  CHECK(direction_at(arc, 1).y == Approx(0).margin(1e-12));
  // Radius from chord and rise of twice the arc, r = (c² + 4h²)/8h (ICS Building Trades Pocketbook).
  CHECK(radius(arc) == Approx((80.0 * 80 + 4 * 8 * 8) / (8 * 8)).epsilon(1e-13));
}

TEST_CASE("arcs of a given radius, the small and the large", "[section]") {
  const Section small = on_wide_stock("bead out 20 down 20 radius 25", "30");
  const Edge arc = edge_of(small, 1);
  CHECK(radius(arc) == Approx(25).epsilon(1e-13));
  CHECK(std::abs(sweep(arc)) == Approx(2 * std::asin(std::sqrt(800.0) / 50)).epsilon(1e-12));
  const Section large = on_wide_stock("cove out 20 down 20 radius 15 large", "30");
  const Edge round = edge_of(large, 1);
  CHECK(radius(round) == Approx(15).epsilon(1e-13));
  CHECK(std::abs(sweep(round)) == Approx(2 * kPi - 2 * std::asin(std::sqrt(800.0) / 30)).epsilon(1e-12));
  CHECK(round.turn == Turn::right);
  const Section three_quarters = on_wide_stock("step down 30\ncove out 20 down 20 large", "30");
  CHECK(std::abs(sweep(edge_of(three_quarters, 2))) == Approx(1.5 * kPi).epsilon(1e-12));
}

TEST_CASE("a radius worked from chord and rise", "[section]") {
  // R. G. Hatfield, The American House Carpenter, § 518: chord 120 and rise 30 make a radius of 75.
  const Section section =
      section_of("units mm\nstock 300 wide, 100 thick\nstart face 200\ncove out 120 radius 75\n");
  const Edge arc = edge_of(section, 0);
  CHECK(rise(arc) == Approx(30).epsilon(1e-13));
}

TEST_CASE("moves may come in either order and up or in", "[section]") {
  const Section a = on_wide_stock("bevel out 20 down 5", "30");
  const Section b = on_wide_stock("bevel down 5, out 20", "30");
  CHECK(area(a.target) == area(b.target));
  const Section raised = on_wide_stock("bevel down 8 in 8\nfillet out 18\nstep up 4", "40");
  CHECK(near(edge_of(raised, 1).from, {58, 18}));
  CHECK(has_corner(raised, {40, 14}));
}

TEST_CASE("a curve is arcs within a twentieth of a millimetre of an ellipse or a parabola",
          "[section][curve]") {
  // Closed forms: a quarter of an ellipse has πab/4, a parabola over its rectangle ab/3 below it.
  struct Case {
    const char* word;
    double out, down;
    double share;  // of the rectangle of the moves, that is wood below the curve
  };
  const Case cases[] = {{"bead", 24, 16, kPi / 4},     {"bead", 10, 30, kPi / 4},
                        {"cove", 24, 16, 1 - kPi / 4}, {"cove", 10, 30, 1 - kPi / 4},
                        {"bead", 24, 16, 2.0 / 3},     {"cove", 24, 16, 1.0 / 3}};
  int at = 0;
  for (const Case& one : cases) {
    const bool parabola = at++ >= 4;
    const std::string moves = std::string("curve ") + one.word + " out " + std::to_string(one.out) +
                              " down " + std::to_string(one.down) + (parabola ? " parabola" : " ellipse");
    CAPTURE(moves);
    const Section section = on_wide_stock(moves, std::to_string(50 - one.out), true);
    const double below = one.share * one.out * one.down;
    const double rest = 100.0 * 100 - 50 * 10 - one.out * one.down - (50 - one.out) * one.down;
    CHECK(area(section.target) == Approx(rest + below).margin(0.05 * (one.out + one.down)));
    int arcs = 0;
    const Turn turn = std::string(one.word) == "bead" ? Turn::left : Turn::right;
    for (std::size_t i = 0; i < section.target.size(); ++i) {
      if (!section.target[i].is_arc()) continue;
      ++arcs;
      CHECK(section.target[i].turn == turn);
      const Element& element = section.elements[static_cast<std::size_t>(section.source[i])];
      CHECK(element.number == 2);
      CHECK(element.part > 0);
    }
    CHECK(arcs >= 2);
  }
}

TEST_CASE("a curve bead begins level and ends upright, a curve cove the other way", "[section][curve]") {
  const auto ends = [](const Section& section) {
    std::vector<Edge> arcs;
    for (const Edge& edge : section.target)
      if (edge.is_arc()) arcs.push_back(edge);
    // The target runs from the working edge in: the chain's last arc comes first.
    return std::pair{direction_at(arcs.back(), 1), direction_at(arcs.front(), 0)};
  };
  const auto bead = ends(on_wide_stock("curve bead out 24 down 16", "26", true));
  CHECK(near(bead.first, {1, 0}));
  CHECK(near(bead.second, {0, -1}));
  const auto cove = ends(on_wide_stock("curve cove out 24 down 16", "26", true));
  CHECK(near(cove.first, {0, -1}));
  CHECK(near(cove.second, {1, 0}));
  // A parabola has its vertex at the level end and is as steep as 2b/a at the other.
  const auto parabola = ends(on_wide_stock("curve bead out 24 down 16 parabola", "26", true));
  CHECK(near(parabola.first, {1, 0}));
  CHECK(parabola.second.y / parabola.second.x == Approx(-2 * 16.0 / 24));
}

TEST_CASE("a curve of equal moves is a quadrant, and one of its own name", "[section][curve]") {
  const Section section = on_wide_stock("curve bead out 20 down 20", "30");
  CHECK(area(section.target) == Approx(area(on_wide_stock("ovolo 20", "30").target)).epsilon(1e-12));
  CHECK(describe(section.elements[1]) == "element 2 (curve)");
}

TEST_CASE("whoever reads a curve is told how near its arcs lie", "[section][curve]") {
  CHECK(element_messages("curve bead out 3/4 down 1/2") ==
        "1+27: the ellipse is drawn as 2 arcs, nowhere farther than 0.0053in from it; check that this is "
        "near enough\n");
  CHECK(element_messages("curve out 3/4 down 1/2") ==
        "23+1: curve needs 'bead' or 'cove', as in 'curve bead out 1/2 down 3/4 ellipse'\n");
  CHECK(element_messages("curve bead cove out 3/4 down 1/2 ellipse parabola") ==
        "12+4: 'cove' (or 'bead') is given twice; leave one of them out\n42+8: 'parabola' (or 'ellipse') is "
        "given twice; leave one of them out\n");
  CHECK(element_messages("curve bead out 3/4 down 1/32") ==
        "1+28: neither move of a curve may be more than 20 times the other; make the shorter one longer\n");
  CHECK(element_messages("curve bead out 3/4 radius 1/2") ==
        "20+6: 'radius' does not belong to curve; expected out, in, down, up, bead, cove, ellipse or "
        "parabola\n");
}
