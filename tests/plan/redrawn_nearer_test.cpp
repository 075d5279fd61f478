// A line moved until it departs from the drawn one as little as it can.
#include "plan/redrawn_nearer.h"

#include "plan/planning.h"
#include "section/drawing_of.h"

namespace arrisline::test {
namespace {

/// A chain, and what it keeps with another radius for one of its arcs.
struct Redrawing {
  Section section;
  ChainLine chain;
  Held held;

  Redrawing(const std::string& stock, const std::string& text, std::size_t stroke, double radius)
      : section(profile(stock, text)),
        chain(line_of(drawing_of(section, Unit::mm).chains[0], section.width)),
        held(kept(chain, section.width, section.thickness)) {
    held.radius[stroke] = radius;
  }
  double departure(const FlatsAndArcs& line) const { return apart(chain.line, line, section.thickness); }
  FlatsAndArcs nearer(const FlatsAndArcs& line) const {
    const std::optional<FlatsAndArcs> out = nearer_line(chain, line, held, section.thickness, 1);
    REQUIRE(out);
    return *out;
  }
};

const char* const kQuadrant =
    "start face 19mm\nstep down 2mm\nbead out 12mm down 12mm radius 12mm\nfillet out 7mm";
constexpr std::size_t kBead = 1;

TEST_CASE("no line round about the one found departs less", "[substitute][nearer]") {
  const Redrawing one("50mm wide, 25mm thick", kQuadrant, kBead, 9.525);
  const double thickness = one.section.thickness;
  // From two beginnings: the ends as drawn, and a line by least squares.
  FlatsAndArcs ends = one.chain.line;
  const Edge bead = edge_of(ends, kBead);
  ends.bulges[kBead] = bulge_of(edge_between(bead.from, bead.to, bead.turn, 9.525, false));
  const std::optional<FlatsAndArcs> weighted = nearest_line(one.chain, one.held, thickness, 1);
  REQUIRE(weighted);
  const FlatsAndArcs found = one.nearer(*weighted);
  const double least = one.departure(found);
  CHECK(least <= one.departure(*weighted));
  CHECK(one.departure(one.nearer(ends)) == Approx(least).margin(2e-3));

  // The start along the face, the step, the far end of the bead and the fillet: tried one by one and
  // together.
  int tried = 0;
  for (const double by : {0.02, 0.1}) {
    for (int at = 0; at < 625; ++at) {
      const double start = by * (at % 5 - 2), step = by * (at / 5 % 5 - 2), out = by * (at / 25 % 5 - 2),
                   low = by * (at / 125 - 2);
      FlatsAndArcs other = found;
      other.joints[0].x += start;
      other.joints[1] = other.joints[1] + Point{start, step};
      other.joints[2] = other.joints[2] + Point{out, low};
      other.joints[3].y += low;
      const Edge arc = edge_of(other, kBead);
      if (distance(arc.from, arc.to) > 2 * 9.525) continue;
      other.bulges[kBead] = bulge_of(edge_between(arc.from, arc.to, arc.turn, 9.525, false));
      CHECK(one.departure(other) > least - 2e-3);
      ++tried;
    }
  }
  CHECK(tried > 1000);
}

TEST_CASE("what is held stays so while the line moves", "[substitute][nearer]") {
  // A cyma, whose two arcs run smooth into each other.
  const Redrawing cyma("50mm wide, 25mm thick",
                       "start face 20mm\nbead out 6mm down 6mm radius 6mm\ncove out 7mm down 7mm radius 7mm\n"
                       "step down 3mm\nfillet out 7mm",
                       1, 9);
  const std::optional<FlatsAndArcs> weighted = nearest_line(cyma.chain, cyma.held, cyma.section.thickness, 2);
  REQUIRE(weighted);
  const FlatsAndArcs found = cyma.nearer(*weighted);
  CHECK(cyma.departure(found) <= cyma.departure(*weighted));
  CHECK(smooth_at(found, 1));
  CHECK(radius(edge_of(found, 0)) == Approx(6));
  CHECK(radius(edge_of(found, 1)) == Approx(9));
  CHECK(found.joints[0].y == 0);
  CHECK(found.joints[4].x == 0);
  CHECK(found.joints[2].x == found.joints[3].x);
  CHECK(found.joints[3].y == found.joints[4].y);
}

TEST_CASE("a line is put to what is held with the rest moved by little, or not at all",
          "[substitute][nearer]") {
  Redrawing one("50mm wide, 25mm thick", kQuadrant, kBead, 9.525);
  const std::optional<FlatsAndArcs> weighted = nearest_line(one.chain, one.held, one.section.thickness, 1);
  REQUIRE(weighted);
  one.held.y[1] = 2;  // the step as deep as it is drawn
  const std::optional<FlatsAndArcs> put = held_line(one.chain, *weighted, one.held, one.section.thickness, 1);
  REQUIRE(put);
  CHECK(put->joints[1].y == 2);
  CHECK(put->joints[1].x == weighted->joints[1].x);
  CHECK(distance(put->joints[2], weighted->joints[2]) < 1e-9);
  // An arc of this radius does not reach so far.
  one.held.x[2] = 0.5;
  one.held.x[1] = 21;
  CHECK_FALSE(held_line(one.chain, *weighted, one.held, one.section.thickness, 1));
}

}  // namespace
}  // namespace arrisline::test
