// A clear no: the element, why, and the nearest that would do.
#include "plan/planning.h"

using namespace arrisline;
using test::kit;
using test::pair_of_sixes;
using test::profile;

namespace {

Plan refused(const Section& section, const Kit& planes) {
  Plan plan = make_plan(section, planes, {});
  REQUIRE_FALSE(plan.feasible);
  REQUIRE_FALSE(plan.reasons.empty());
  CHECK(plan.cuts.empty());
  return plan;
}

}  // namespace

TEST_CASE("no hollow in the kit", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"),
                            kit("units inch\nround 6\nrebate 3/4\n"));
  CHECK(plan.reasons[0].element == 0);
  CHECK(plan.reasons[0].why == "the kit has no hollow for a bead of radius 0.375 in");
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->kind == PlaneKind::hollow);
  CHECK(plan.reasons[0].nearest->number == 6);
}

TEST_CASE("a round too flat for the cove", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4"), pair_of_sixes());
  CHECK(plan.reasons[0].why ==
        "round 6 is too flat for a cove of radius 0.250 in and would bear on the edges of its sole");
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->number == 4);
}

TEST_CASE("a groove narrower than any sole", "[plan][reasons]") {
  const char* chain = "start face 1 1/2\nstep down 1/4\nfillet out 1/4\nstep up 1/4";
  const Plan plan = refused(profile("3 wide, 3/4 thick", chain), pair_of_sixes());
  CHECK(plan.reasons[0].why.find("0.250 in wide between walls") != std::string::npos);
  // With the plough named as nearest it goes.
  const Plan with =
      make_plan(profile("3 wide, 3/4 thick", chain), kit("units inch\nrebate 3/4\nplough 1/4\n"), {});
  REQUIRE(with.feasible);
  REQUIRE(with.cuts.size() == 1);
  CHECK(with.cuts[0].rides == Rides::fence);
}

TEST_CASE("nothing to lay rails with", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"),
                            kit("units inch\nhollow 6\n"));
  CHECK(plan.reasons[0].why == "no flat plane of the kit can leave two arrises for the hollow to ride on");
}

TEST_CASE("more flats and arcs than are planned at once are left undecided", "[plan][reasons]") {
  std::string chain = "start face 10";
  for (int i = 0; i < 40; ++i) chain += "\nstep down 1/32\nfillet out 1/32";
  chain += "\nfillet out 8 3/4";
  const Plan plan = make_plan(profile("12 wide, 3 thick", chain), pair_of_sixes(), {});
  CHECK(plan.undecided);
  CHECK_FALSE(plan.feasible);
}

TEST_CASE("the plane named as nearest serves", "[plan][reasons]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4");
  const Plan plan = refused(section, pair_of_sixes());
  REQUIRE(plan.reasons[0].nearest.has_value());
  REQUIRE(plan.reasons[0].nearest->number.has_value());
  const Plan with = make_plan(section,
                              kit("units inch\nhollow 6\nround 6\nrebate 3/4\nround " +
                                  std::to_string(*plan.reasons[0].nearest->number) + "\n"),
                              {});
  CHECK(with.feasible);
}

TEST_CASE("a sole longer than its arc, between a wall and a fillet", "[plan][reasons]") {
  // Computed: the chord of 5/16 by 3/16 is √34/16 in, so at radius 3/8 the arc is 2 asin(√34/12) = 58.1°. A
  // sole of 60° overshoots one end or the other.
  const Section section =
      profile("2 wide, 3/4 thick",
              "start face 9/16\nstep down 3/16\nbead out 5/16 down 3/16 radius 3/8\nfillet out 1/4");
  const Plan plan = refused(section, pair_of_sixes());
  CHECK(plan.reasons[0].element == 1);
  CHECK(plan.reasons[0].why ==
        "hollow 6 fits the bead of radius 0.375 in but its sole or side meets wood that must stay");
}
