// What must not matter to a plan: which edge is worked, the size of everything, the unit it is written in.
#include <cmath>

#include "plan/planning.h"

using namespace arrisline;
using test::kit;
using test::need;
using test::pair_of_sixes;
using test::profile;

namespace {

const char* const kChain = "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8";

Section scaled(Section section, double by) {
  auto scale = [&](Point& p) { p = by * p; };
  section.width *= by;
  section.thickness *= by;
  for (Edge& edge : section.target) {
    scale(edge.from);
    scale(edge.to);
    scale(edge.centre);
  }
  return section;
}

Kit scaled(Kit kit, double by) {
  for (Plane& plane : kit.planes) {
    plane.width *= by;
    plane.radius *= by;
  }
  kit.shop.shaving_rebate *= by;
  kit.shop.shaving_curved *= by;
  return kit;
}

}  // namespace

TEST_CASE("the back edge is worked like the working edge", "[plan][property]") {
  const Plan edge = make_plan(profile("3 wide, 3/4 thick", kChain), pair_of_sixes(), {});
  const Plan back =
      make_plan(profile("3 wide, 3/4 thick", std::string("side back\n") + kChain), pair_of_sixes(), {});
  REQUIRE(edge.feasible);
  REQUIRE(back.feasible);
  CHECK(edge.cuts.size() >= 4);
  CHECK(back.cuts.size() == edge.cuts.size());
  CHECK(back.waste_by_flat == Approx(edge.waste_by_flat).margin(1e-6));
  CHECK(back.left.max_height == Approx(edge.left.max_height).margin(1e-6));
}

TEST_CASE("profile and kit twice the size take four times the wood in as many cuts", "[plan][property]") {
  const Section section = profile("3 wide, 3/4 thick", kChain);
  const Plan plain = make_plan(section, pair_of_sixes(), {});
  for (const double by : {0.8, 2.0}) {
    PlanOptions options;
    options.tolerance *= by;
    options.scrape *= by;
    const Plan plan = make_plan(scaled(section, by), scaled(pair_of_sixes(), by), options);
    REQUIRE(plan.feasible);
    CHECK(plan.cuts.size() == plain.cuts.size());
    CHECK(plan.waste_by_flat == Approx(by * by * plain.waste_by_flat).epsilon(1e-6));
    for (std::size_t i = 0; i < plan.cuts.size() && i < plain.cuts.size(); ++i)
      CHECK(plan.cuts[i].removed == Approx(by * by * plain.cuts[i].removed).epsilon(1e-6));
  }
}

TEST_CASE("inches and millimetres give the same cuts", "[plan][property]") {
  const Plan inch = make_plan(profile("3 wide, 3/4 thick", kChain), pair_of_sixes(), {});
  const Section in_mm =
      need(read_profile("units mm\nstock 76.2 wide, 19.05 thick\nstart face 12.7\nstep down 3.175\novolo "
                        "9.525\nfillet out 3.175\n",
                        "mm.profile"));
  const Plan mm = make_plan(in_mm, pair_of_sixes(), {});
  REQUIRE(inch.feasible);
  REQUIRE(mm.cuts.size() == inch.cuts.size());
  for (std::size_t i = 0; i < mm.cuts.size(); ++i) {
    REQUIRE(mm.cuts[i].poses.size() == inch.cuts[i].poses.size());
    for (std::size_t k = 0; k < mm.cuts[i].poses.size(); ++k) {
      CHECK(distance(mm.cuts[i].poses[k].at, inch.cuts[i].poses[k].at) < 1e-6);
      CHECK(mm.cuts[i].poses[k].tilt == Approx(inch.cuts[i].poses[k].tilt).margin(1e-6));
    }
  }
}

TEST_CASE("the same input gives the same plan, to the last digit", "[plan][property]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/4\nreverse-ogee out 3/4 down 3/4");
  const std::string first = plan_to_json(make_plan(section, pair_of_sixes(), {}));
  CHECK(first.size() > 1000);
  CHECK(plan_to_json(make_plan(section, pair_of_sixes(), {})) == first);
}

TEST_CASE("a plane that is of no use does no harm", "[plan][property]") {
  const Section section = profile("3 wide, 3/4 thick", kChain);
  const Plan plain = make_plan(section, pair_of_sixes(), {});
  const Plan more =
      make_plan(section, kit("units inch\nhollow 6\nround 6\nrebate 3/4\nscraper\nhollow 2\nround 18\n"), {});
  REQUIRE(more.feasible);
  CHECK(more.effort == Approx(plain.effort).margin(1e-6));
}
