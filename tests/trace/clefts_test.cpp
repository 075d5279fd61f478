// Where a line comes back close beside itself.
#include "trace/clefts.h"

#include "catch.h"
#include "section/sections.h"
#include "trace/mouldings.h"

namespace arrisline::testing {
namespace {

TEST_CASE("a groove is a cleft where it is no wider than is asked for", "[trace][order]") {
  const Section section = classical(kCleft[0]);  // a quirk of 0.7 mm, 12 mm from the working edge
  CHECK(clefts_of(section, 0.6).empty());
  const std::vector<Cleft> found = clefts_of(section, 0.8);
  REQUIRE(found.size() == 1);
  CHECK(found[0].gap == Approx(0.7).margin(0.05));
  CHECK(found[0].at.x == Approx(12.35).margin(0.05));
  CHECK(found[0].at.y > 1);
  CHECK(found[0].at.y < 6);
}

TEST_CASE("each cleft is told once, and a corner is none", "[trace][order]") {
  CHECK(clefts_of(classical(kCleft[2]), 1.6).size() == 2);      // grooves of 0.9 and 1.5 mm
  CHECK(clefts_of(classical(kCleft[4]), 0.3).size() == 3);      // three reeds, the first beside a step
  CHECK(clefts_of(classical(kClassical[0]), 0.6).empty());      // an ovolo between fillets
  CHECK(clefts_of(classical(kClassical[3]), 0.6).size() == 1);  // a torus on its plinth
  CHECK(clefts_of(classical(kClassical[0]), 0).empty());
}

}  // namespace
}  // namespace arrisline::testing
