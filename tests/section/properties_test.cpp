// Properties that hold for every profile: what a mirror, a scale, or another unit changes, and what it does
// not.
#include <random>
#include <sstream>

#include "section/sections.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

/// Statements of a chain that goes out and down over `out` and `down` units, in `count` steps of whole units.
struct Made {
  std::string statements;
  int out = 0;
  int down = 0;
};

Made random_chain(std::mt19937& random) {
  Made made;
  std::ostringstream text;
  // Room above for flat beads, which rise a little before they fall.
  text << "step down 4@\n";
  made.down += 4;
  const int count = 2 + static_cast<int>(random() % 6);
  for (int i = 0; i < count; ++i) {
    const int a = 2 + static_cast<int>(random() % 6);
    const int b = 2 + static_cast<int>(random() % 6);
    switch (random() % 10) {
      case 0:
        text << "step down " << b << "@\n";
        made.down += b;
        break;
      case 1:
        text << "fillet out " << a << "@\n";
        made.out += a;
        break;
      case 2:
        text << "bevel out " << a << "@ down " << b << "@\n";
        made.out += a;
        made.down += b;
        break;
      case 3:
        text << "bead out " << a << "@ down " << a << "@\n";
        made.out += a;
        made.down += a;
        break;
      case 4:
        text << "cove out " << a << "@ down " << b << "@ radius " << (a + b) << "@\n";
        made.out += a;
        made.down += b;
        break;
      case 5:
        text << "ovolo " << a << "@\n";
        made.out += a;
        made.down += a;
        break;
      case 6:
        text << "cavetto " << a << "@\n";
        made.out += a;
        made.down += a;
        break;
      case 7:
        text << "ogee out " << a << "@ down " << b << "@\n";
        made.out += a;
        made.down += b;
        break;
      case 8:
        text << "reverse-ogee out " << a << "@ down " << b << "@ radius " << (a + b) << "@\n";
        made.out += a;
        made.down += b;
        break;
      default:
        text << "thumbnail out 10@ down 5@\n";
        made.out += 10;
        made.down += 5;
        break;
    }
  }
  text << "step down 1@\nfillet out 3@\n";
  made.out += 3;
  made.down += 1;
  made.statements = text.str();
  return made;
}

/// A profile on stock 100 × 70 whose lengths each carry `unit`.
std::string profile(const Made& made, const std::string& side, const std::string& unit) {
  std::string text = "stock 100@ wide, 70@ thick\n" + side + "start face " + std::to_string(made.out) +
                     "@\n" + made.statements;
  for (std::size_t at = text.find('@'); at != std::string::npos; at = text.find('@'))
    text.replace(at, 1, unit);
  return text;
}

/// Whether two outlines are the same edges, the second with each point sent through `turned`.
template <class Map>
void check_same(const Section& a, const Section& b, Map turned, double within) {
  REQUIRE(a.target.size() == b.target.size());
  for (std::size_t i = 0; i < a.elements.size(); ++i) {
    const auto one = edges_of(a, static_cast<int>(i));
    const auto two = edges_of(b, static_cast<int>(i));
    REQUIRE(one.size() == two.size());
    for (std::size_t k = 0; k < one.size(); ++k) {
      // A mirror turns the order of the ends round.
      const bool straight =
          near(turned(two[k].from), one[k].from, within) && near(turned(two[k].to), one[k].to, within);
      const bool swapped =
          near(turned(two[k].to), one[k].from, within) && near(turned(two[k].from), one[k].to, within);
      CHECK((straight || swapped));
      if (one[k].is_arc()) CHECK(near(turned(two[k].centre), one[k].centre, within));
      CHECK(one[k].is_arc() == two[k].is_arc());
      if (straight && !swapped) CHECK((one[k].turn == two[k].turn));
    }
  }
}

}  // namespace

TEST_CASE("mirrored, upside down, in other units and to another scale", "[section][properties]") {
  const unsigned seed = 7321;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  int with_arcs = 0;
  for (int round = 0; round < 200; ++round) {
    const Made made = random_chain(random);
    CAPTURE(made.statements);
    const Section face =
        section_of(profile(made, "", "mm"), !read_profile(profile(made, "", "mm"), "p").diagnostics.empty());
    check_promises(face);
    const Reading<Section> back = read_profile(profile(made, "side back\n", "mm"), "p");
    const Reading<Section> under = read_profile(profile(made, "side underside\n", "mm"), "p");
    const Reading<Section> inch = read_profile(profile(made, "", "in"), "p");
    const Reading<Section> tenfold = read_profile("units mm\n" + profile(made, "", "0"), "p");
    for (const auto* reading : {&back, &under, &inch, &tenfold}) REQUIRE(reading->value.has_value());
    check_same(
        face, *back.value,
        [](Point p) {
          return Point{100 - p.x, p.y};
        },
        1e-9);
    check_same(
        face, *under.value,
        [](Point p) {
          return Point{p.x, 70 - p.y};
        },
        1e-9);
    check_same(
        face, *inch.value, [](Point p) { return (1 / 25.4) * p; }, 1e-9);
    check_same(
        face, *tenfold.value, [](Point p) { return 0.1 * p; }, 1e-9);
    CHECK(area(back.value->target) == Approx(area(face.target)).epsilon(1e-12));
    for (const Edge& edge : face.target) with_arcs += edge.is_arc() ? 1 : 0;
  }
  CHECK(with_arcs > 200);
}

TEST_CASE("a bare number in a file of millimetres, and in one of inches", "[section][properties]") {
  const std::string text = "stock 100 wide, 70 thick\nstart face 20\novolo 10\nfillet out 10\n";
  const Section mm = section_of("units mm\n" + text);
  const Section inch = section_of("units inch\n" + text);
  const Section bare = section_of(text);
  CHECK(area(inch.target) == Approx(area(mm.target) * 25.4 * 25.4).epsilon(1e-13));
  CHECK(area(bare.target) == area(inch.target));
}

TEST_CASE("a chain and its two parts take the same", "[section][properties]") {
  // An ogee is its bead and its cove.
  const Section whole =
      section_of("units mm\nstock 60 wide 40 thick\nstart face 30\nogee out 20 down 20\nfillet out 10\n");
  const Section parts = section_of(
      "units mm\nstock 60 wide 40 thick\nstart face 30\nbead out 10 down 10\ncove out 10 down 10\nfillet out "
      "10\n");
  CHECK(area(whole.target) == area(parts.target));
}
