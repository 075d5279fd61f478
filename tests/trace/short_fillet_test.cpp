// A short fillet beside an arc that would run on over it is found where many points tell of it, however
// little the arc lies off.
#include <string>

#include "arrisline/trace.h"
#include "catch.h"
#include "section/sections.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

TEST_CASE("a fillet of 1.25 mm beside a cavetto is not lost in it", "[trace][short_fillet][campaign]") {
  // The torus leaves the fillet over it on the way that this runs: there the joint is hard to place.
  const std::string text =
      "units mm\nstock 60 wide, 60 thick\nstart face 26.25\nstep down 1.8\ncove out 12 down 9.5 radius 14.5\n"
      "fillet out 3\nbead down 17.8 radius 8.9\nfillet out 2.67\nstep down 3.5\ncove out 7.33 down 7.33\n"
      "fillet out 1.25\n";
  const std::vector<Edge> drawn = worked_line(section_of(text, true));
  for (unsigned seed = 1; seed <= 8; ++seed) {
    INFO("seed " << seed);
    Digitiser by;
    by.points = 2000;
    by.scatter = 0.02;
    const std::vector<Edge> back = worked_line(on_halves(digitised(with_sides(drawn, 8), by, seed)).section);
    CHECK(kinds(back) == kinds(drawn));
    if (back.size() == drawn.size()) CHECK(length(back.back()) == Approx(1.25).margin(0.25));
  }
}

}  // namespace
}  // namespace arrisline::testing
