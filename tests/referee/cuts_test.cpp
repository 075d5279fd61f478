// The wood of the planner against the exact twin, cut by cut.
#include "arrisline/section.h"
#include "catch.h"
#include "referee/exact.h"

using namespace arrisline;
using namespace arrisline::referee;

TEST_CASE("a rebate meets the blank it stands in, and not the air beside it", "[referee]") {
  Plane rebate;
  rebate.width = 20;
  const ExactWood exact(blank_outline(50, 20));
  CHECK(exact.meets(ExactWood::region(Sweep(rebate, {{5, 5}, 0}), 200)));
  CHECK_FALSE(exact.meets(ExactWood::region(Sweep(rebate, {{-15, 5}, 0}), 200)));
}
