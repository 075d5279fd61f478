// How the blank lies for a plane to stand, which edge is then free, and which way the plane goes.
#include <algorithm>
#include <iterator>
#include <string>

#include "plan/gauge.h"
#include "plan/holding.h"
#include "plan/planning.h"
#include "plan/problem.h"
#include "plan/sequence.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::pair_of_sixes;
using test::profile;

namespace {

/// The ways in which a blank 50 x 20 mm can lie for a narrow plane in the middle of it at these tilts, the
/// likelier before the others; or with its sole so far from the working edge.
std::vector<Lies> lies_at(std::initializer_list<double> tilts, double in = 25) {
  const Section section = profile("50mm wide, 20mm thick", "start face 1mm\nchamfer 1mm");
  const Kit planes = kit("rebate 6mm\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, planes, options);
  std::vector<Pose> poses;
  for (const double tilt : tilts) poses.push_back({{in, 10}, tilt});
  const LieSet set = ways_to_lie(problem, problem.plane(0), poses);
  std::vector<Lies> out;
  std::copy_if(kWaysToLie.begin(), kWaysToLie.end(), std::back_inserter(out),
               [&](Lies lies) { return set.has(lies); });
  return out;
}

using All = std::vector<Lies>;

}  // namespace

TEST_CASE("the blank lies so that the plane leans over the free edge", "[lies]") {
  CHECK(lies_at({0, 45, 75}) == All{Lies::face_up});
  // Upright it matters not which edge is free. Over the fence it leans as far as that lets it, where the
  // blank lies face up; it need not if the blank lies end for end already.
  CHECK(lies_at({0}) == All{Lies::face_up, Lies::end_for_end});
  CHECK(lies_at({-60, 30}) == All{Lies::face_up});
  CHECK(lies_at({-60, 0}) == All{Lies::face_up, Lies::end_for_end});
  CHECK(lies_at({-75}) == All{Lies::end_for_end});
  CHECK(lies_at({-90, 0}) == All{Lies::end_for_end});
  // But where its sole reaches to an edge, that edge is not at the fence if it need not be.
  CHECK(lies_at({0}, 3) == All{Lies::face_up});
  CHECK(lies_at({0}, 49) == All{Lies::face_up, Lies::end_for_end});
  // On its side against an edge it stands whichever side of the blank is up.
  CHECK(lies_at({90}) == All{Lies::face_up, Lies::underside_up});
  CHECK(lies_at({-90}) == All{Lies::end_for_end, Lies::rolled_over});
  // Turned over: toward the working edge end over end, toward the back edge over about its length.
  CHECK(lies_at({180}) == All{Lies::underside_up, Lies::rolled_over});
  CHECK(lies_at({100, 180}) == All{Lies::underside_up});
  CHECK(lies_at({-110}) == All{Lies::rolled_over});
  CHECK(lies_at({-100, 180}) == All{Lies::rolled_over});
  // From both sides of what cannot be reached at once.
  CHECK(lies_at({100, -100}).empty());
  CHECK(lies_at({0, 180}).empty());
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
  const auto is_held = [&](const std::vector<Pose>& poses, const Wood& wood, Lies lies) {
    return held(problem, planes.planes[0], poses, wood, LieSet(lies)).has(lies);
  };
  CHECK(is_held(end_over_end, wood_less(in / 2), Lies::underside_up));
  CHECK_FALSE(is_held(end_over_end, wood_less(1.5 * in), Lies::underside_up));
  CHECK(is_held(rolled, wood_less(1.5 * in), Lies::rolled_over));
  CHECK_FALSE(is_held(rolled, wood_less(in / 2), Lies::rolled_over));
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

TEST_CASE("the blank stays as it lies where the plane can stand so", "[lies]") {
  Step upright, last;
  upright.may_lie.add(Lies::face_up);
  upright.may_lie.add(Lies::end_for_end);
  CHECK(ways_to_lay(upright, nullptr) == LieSet(Lies::face_up));
  last.lies = Lies::end_for_end;
  CHECK(ways_to_lay(upright, &last) == LieSet(Lies::end_for_end));
  // It has to be turned, and either way may do for what comes after.
  last.lies = Lies::rolled_over;
  CHECK(ways_to_lay(upright, &last) == upright.may_lie);
}

TEST_CASE("one edge is finished before the blank is turned for the other", "[lies]") {
  const Section section = profile("2 wide, 3/4 thick",
                                  "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8\n"
                                  "side back\nstart face 1/8\nbevel out 1/8 down 3/8");
  const Plan plan = make_plan(section, pair_of_sixes(), {});
  REQUIRE(plan.feasible);
  std::string lies;
  for (const Cut& cut : plan.cuts) lies += std::string(word(cut.plane.kind)) + " " + word(cut.lies) + "\n";
  CHECK(lies ==
        "rebate face up\nrebate face up\nrebate face up\nhollow face up\n"
        "rebate end for end\n");
  CHECK(faults(plan) == "");
}

TEST_CASE("a blank that no stop holds as it lies is turned to where one does", "[lies][board]") {
  // A groove 5/8 in deep over the only stop while the blank lies face up; end for end the stop is under whole
  // wood.
  const Section section =
      profile("2 wide, 3/4 thick", "start face 1 5/8\nstep down 5/8\nfillet out 1/4\nstep up 5/8");
  const Plan plan = make_plan(section, kit("units inch\nplough 1/4\nboard stops at 1/2\n"), {});
  REQUIRE(plan.feasible);
  REQUIRE(plan.cuts.size() == 1);
  CHECK(plan.cuts[0].lies == Lies::end_for_end);
  CHECK(faults(plan) == "");
  // Stops that stand alike from either edge are under the groove or clear of it both ways.
  CHECK_FALSE(make_plan(section, kit("units inch\nplough 1/4\nboard stops at 1/8\n"), {}).feasible);
}
