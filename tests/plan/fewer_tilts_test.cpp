// No tilt stays in a plan that matters nothing.
#include "plan/fewer_tilts.h"

#include "plan/planning.h"
#include "plan/thickness.h"

using namespace arrisline;

namespace {

/// What the plan's cuts leave, but for one pose of one of them.
double left_but_for(const Plan& plan, std::size_t cut, std::size_t pose) {
  Wood wood(blank_outline(plan.section.width, plan.section.thickness));
  for (std::size_t c = 0; c < plan.cuts.size(); ++c) {
    for (std::size_t p = 0; p < plan.cuts[c].poses.size(); ++p) {
      if (c != cut || p != pose) wood.cut(Sweep(plan.cuts[c].plane, plan.cuts[c].poses[p]));
    }
  }
  return thickest_left(wood, plan.section.target).height;
}

}  // namespace

TEST_CASE("where a cut starts makes none of its tilts needless", "[plan][tilts]") {
  // A shallow bead of 74° between quirks, of the radius of its hollow: two tilts make it, wherever it starts.
  const Plan plan = make_plan(
      test::profile("3 wide, 1 thick",
                    "start face 1 1/2\nstep down 1/4\nfillet out 1/8\nstep up 1/8\nbead out 3/4 radius 5/8\n"
                    "step down 1/8\nfillet out 1/8\nstep down 3/8\nfillet out 1/2"),
      test::kit("hollow 10\nrebate 1\nplough 1/8\n"), {});
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan) == "");
  std::size_t tilts = 0;
  for (std::size_t c = 0; c < plan.cuts.size(); ++c) {
    if (!plan.cuts[c].plane.is_curved()) continue;
    tilts += plan.cuts[c].poses.size();
    for (std::size_t p = 0; p < plan.cuts[c].poses.size(); ++p) {
      INFO("cut " << c + 1 << ", tilt " << p + 1);
      CHECK(left_but_for(plan, c, p) > plan.left.max_height + 0.01);
    }
  }
  CHECK(tilts == 2);
}
