// How the blank lies for a plane to stand, which edge is then free, and which way the plane goes.
#include <string>

#include "plan/gauge.h"
#include "plan/holding.h"
#include "plan/planning.h"
#include "plan/problem.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::profile;

namespace {

std::optional<Lies> lies_at(std::initializer_list<double> tilts) {
  std::vector<Pose> poses;
  for (const double tilt : tilts) poses.push_back({{1, 1}, tilt});
  return lies_for(poses);
}

}  // namespace

TEST_CASE("the blank lies so that the plane leans over the free edge", "[lies]") {
  CHECK(lies_at({0}) == Lies::face_up);
  CHECK(lies_at({45, 90}) == Lies::face_up);
  CHECK(lies_at({-60, 30}) == Lies::face_up);  // over the fence as far as that lets it
  CHECK(lies_at({-75}) == Lies::end_for_end);
  CHECK(lies_at({-90, 0}) == Lies::end_for_end);
  // Turned over: toward the working edge end over end, toward the back edge over about its length.
  CHECK(lies_at({180}) == Lies::underside_up);
  CHECK(lies_at({120, 180}) == Lies::underside_up);
  CHECK(lies_at({-130, 170}) == Lies::underside_up);
  CHECK(lies_at({-110}) == Lies::rolled_over);
  CHECK(lies_at({-100, 180}) == Lies::rolled_over);
  // From both sides of what cannot be reached at once.
  CHECK_FALSE(lies_at({100, -100}));
  CHECK_FALSE(lies_at({0, 180}));
}

TEST_CASE("turned end for end or end over end, the stick is planed against the arrow", "[lies]") {
  // The stick's own length changes ends when it is turned about the upright or about the way across it, and
  // keeps them when it is rolled about its length.
  CHECK(planed(Lies::face_up) == Planed::along);
  CHECK(planed(Lies::end_for_end) == Planed::against);
  CHECK(planed(Lies::underside_up) == Planed::against);
  CHECK(planed(Lies::rolled_over) == Planed::along);
  // Each turn keeps a right hand a right hand: of width, thickness and length two are reversed, or none.
  for (const Lies lies : {Lies::face_up, Lies::end_for_end, Lies::underside_up, Lies::rolled_over}) {
    const int reversed = (back_edge_free(lies) ? 1 : 0) + (is_underside_up(lies) ? 1 : 0) +
                         (planed(lies) == Planed::against ? 1 : 0);
    CHECK(reversed % 2 == 0);
  }
}

TEST_CASE("the stops are told off from the edge at the fence", "[lies][board]") {
  // One stop 1/2 in from the fence, on stock 2 in wide, and a groove to each side: whichever edge is at the
  // fence, the wood over the stop must stand.
  const Section section = profile("2 wide, 3/4 thick", "start face 1/8\nchamfer 1/8");
  const Kit planes = kit("units inch\nrebate 3/4\nboard stops at 1/2\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, planes, options);
  const double in = kMmPerInch;
  // Wood gone at 1/2 in from the working edge, through all of the thickness but the middle.
  Plane groove;
  groove.kind = PlaneKind::plough;
  groove.width = 0.75 * in;
  const auto wood_less = [&](double x) {
    Wood wood(problem.blank);
    wood.cut(Sweep(groove, {{x, in / 4}, 0}));
    wood.cut(Sweep(groove, {{x, in / 2}, 180}));
    return wood;
  };
  const std::vector<Pose> end_over_end = {{{0.05 * in, 0.7 * in}, 120}};
  const std::vector<Pose> rolled = {{{1.95 * in, 0.7 * in}, -110}};
  REQUIRE(lies_for(end_over_end) == Lies::underside_up);
  REQUIRE(lies_for(rolled) == Lies::rolled_over);
  const Plane& rebate = planes.planes[0];
  CHECK(can_be_held(problem, rebate, end_over_end, wood_less(in / 2)));
  CHECK_FALSE(can_be_held(problem, rebate, end_over_end, wood_less(1.5 * in)));
  CHECK(can_be_held(problem, rebate, rolled, wood_less(1.5 * in)));
  CHECK_FALSE(can_be_held(problem, rebate, rolled, wood_less(in / 2)));
}

TEST_CASE("a chamfer on each of the four arrises", "[lies]") {
  struct Case {
    const char* chain;
    Lies lies;
  };
  for (const Case& one : {Case{"start face 1/4\nchamfer 1/4", Lies::face_up},
                          Case{"side back\nstart face 1/8\nbevel out 1/8 down 3/8", Lies::end_for_end},
                          Case{"side underside\nstart face 1/4\nchamfer 1/4", Lies::underside_up},
                          Case{"side underside\nstart back 3/8\nbevel out 1/8 up 3/8", Lies::rolled_over}}) {
    INFO(one.chain);
    const Section section = profile("2 wide, 3/4 thick", one.chain);
    const Plan plan = make_plan(section, kit("units inch\nrebate 3/4\n"), {});
    REQUIRE(plan.feasible);
    REQUIRE(plan.cuts.size() == 1);
    CHECK(plan.cuts[0].lies == one.lies);
    CHECK(faults(plan) == "");
  }
}
