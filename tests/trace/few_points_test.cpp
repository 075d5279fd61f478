// Of some points to a flat of 1 mm the line is made that a maker would say in as few figures, and no arc that
// runs under what is over it.
#include <initializer_list>
#include <string>

#include "catch.h"
#include "section/sections.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// What comes of so many points of the chain, that scatter by so much.
std::string kinds_of(const std::string& chain, std::size_t points, double scatter, unsigned seed) {
  const Section section = section_of("units mm\nstock 60 wide, 60 thick\n" + chain);
  Digitiser by;
  by.points = points;
  by.scatter = scatter;
  return kinds(worked_line(on_halves(digitised(with_sides(worked_line(section), 5), by, seed)).section));
}

TEST_CASE("a step of 1 mm under a quarter round is not taken for the bead running under",
          "[trace][few][campaign]") {
  const std::string chain =
      "start face 25.5\nstep down 1.5\ncove out 20 down 14 radius 32\nfillet out 1.5\nstep down 1.5\n"
      "bead out 2 down 2\nstep down 1\nfillet out 2\n";
  for (const double scatter : {0.0, 0.01})
    for (const std::size_t points : {150U, 200U})
      for (unsigned seed = 1; seed <= 5; ++seed) {
        INFO(points << " points, scatter " << scatter << ", seed " << seed);
        CHECK(kinds_of(chain, points, scatter, seed) == "step cove fillet step bead step fillet ");
      }
}

TEST_CASE("steps and fillets of 1 mm are not taken for coves of most of a circle", "[trace][few][campaign]") {
  const std::string chain =
      "start face 13\nstep down 1\nfillet out 1\nstep down 1\nfillet out 1\nstep down 1\nfillet out 1\n"
      "bead out 8 down 10 radius 12\nfillet out 2\n";
  for (unsigned seed = 1; seed <= 12; ++seed) {
    INFO(seed);
    CHECK(kinds_of(chain, 200, 0.03, seed) == "step fillet step fillet step fillet bead fillet ");
  }
}

TEST_CASE("a fillet that runs on from a cove to a square corner is kept", "[trace][few][campaign]") {
  const std::string chain =
      "start face 18\nstep down 3\ncove out 5 down 5\nfillet out 1.5\nstep down 1.5\nbead out 4 down 4\n"
      "step down 2\nfillet out 2\ncove out 4 down 6 radius 8\nfillet out 1.5\n";
  for (unsigned seed = 1; seed <= 12; ++seed) {
    INFO(seed);
    CHECK(kinds_of(chain, 200, 0.03, seed) == "step cove fillet step bead step fillet cove fillet ");
  }
}

}  // namespace
}  // namespace arrisline::testing
