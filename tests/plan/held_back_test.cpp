// Arcs as wide as the sole that makes them, between an inner corner and another: no flat cut leaves rails for
// them once the flats beside them are done, so one of these waits. The cuts by hand stand beside each.
#include "plan/held_back.h"

#include <set>
#include <string>

#include "catch.h"
#include "plan/planning.h"

using namespace arrisline;
using namespace arrisline::test;

namespace {

Kit eight_planes() {
  return kit(
      "units inch\nrebate 1 1/4\nrebate 3/4\nhollow 4\nround 4\nhollow 6\nround 6\nhollow 10\nround 10\n");
}

/// Places in the plan of the curved cut and of the flat that is finished after it; the plan is found valid
/// first.
struct Places {
  std::size_t curve = 0, last_flat = 0;
};
Places places(const Plan& plan) {
  Places out;
  for (std::size_t i = 0; i < plan.cuts.size(); ++i)
    (plan.cuts[i].plane.is_flat() ? out.last_flat : out.curve) = i;
  return out;
}

std::size_t planes_used(const Plan& plan) {
  std::set<std::string> labels;
  for (const Cut& cut : plan.cuts) labels.insert(cut.plane.label);
  return labels.size();
}

}  // namespace

TEST_CASE("a bead between a wall and a fillet rides on arrises in the wood of the fillet",
          "[plan][held_back]") {
  // By hand 5 cuts: the level of the bead's head; a step with both its corners outside the bead; the fillet
  // short of its corner; the hollow; the fillet to its corner.
  const std::string chain = GENERATE(
      std::string(
          "start face 7/16\nstep down 3/16\nbead out 3/16 down 0.324759526 radius 3/8\nfillet out 1/4"),
      std::string(
          "start face 15/16\nstep down 3/16\nbead out 3/16 down 0.324759526 radius 3/8\nfillet out 3/4"),
      std::string(
          "start face 3/8\nstep down 3/16\nbead out 1/8 down 0.216506351 radius 1/4\nfillet out 1/4"));
  INFO(chain);
  const Plan plan = make_plan(profile("3 wide, 1 1/4 thick", chain), eight_planes(), {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  CHECK(plan.cuts.size() <= 5);
  CHECK(planes_used(plan) == 2);
  const Places at = places(plan);
  REQUIRE(at.last_flat > at.curve);
  CHECK(plan.cuts[at.last_flat].reason == "finishes its flats up to the curve of cut " +
                                              std::to_string(at.curve + 1) +
                                              ", which needs no arris there now");
}

TEST_CASE("a bead at the foot of a wall rides on wood that the wall's cut has left", "[plan][held_back]") {
  // By hand 5 cuts too: above the bead's head; a step; the fillet; the hollow; the head to its depth.
  const Plan plan = make_plan(profile("3 wide, 1 1/4 thick",
                                      "start face .716506351\nstep down 3/16\n"
                                      "bead out 0.216506351 down 1/8 radius 1/4\nfillet out 1/2"),
                              eight_planes(), {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  CHECK(plan.cuts.size() <= 5);
  CHECK(places(plan).last_flat > places(plan).curve);
}

// A hollow or round that matches, but that nothing guides: the same planes without it plan the work, and so
// the plan with it may cost no more.
TEST_CASE("a matching plane that nothing guides keeps no other out", "[plan][other_radii]") {
  const char* others = "units inch\nrebate 1 1/4\nrebate 3/4\nhollow 6\nround 6\nround 8\nscraper\n";
  for (const char* chain : {"start face 7/16\ncove out 5/16 down 3/16 radius 5/8\nfillet out 1/8\n",
                            "start face 3/8\ncove out 1/4 down 1/4 radius 5/8\nfillet out 1/8\n"}) {
    INFO(chain);
    const Section section = profile("2 wide, 1 thick", chain);
    const Plan without = make_plan(section, kit(others), {});
    const Plan with = make_plan(section, kit(std::string(others) + "round 10\n"), {});
    REQUIRE(without.feasible);
    REQUIRE(with.feasible);
    CHECK(faults(with) == "");
    CHECK(with.optimal);
    CHECK(with.effort < without.effort + 1e-6);
    CHECK(with.cuts.size() <= 3);
  }
}

TEST_CASE("a cove under a fillet rides on wood left on the fillet", "[plan][held_back]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick",
                                      "start face 0.478765877\nstep down 1/4\nfillet out 1/8\n"
                                      "cove out 0.228765877 down 0.228765877 radius 5/8\nfillet out 1/8"),
                              eight_planes(), {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  CHECK(plan.cuts.size() <= 6);
}

// The steps of the two fillets take the same area, 3/4 in by 1/4 in and 3/8 in by 1/2 in: the woods without
// the one and without the other are two all the same.
TEST_CASE("a flat is held back beside another that takes as much", "[plan][held_back]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick",
                                      "start face 3/4\nstep down 1/4\nfillet out 1/8\n"
                                      "cove out 1/4 down 1/4 radius 5/8\nfillet out 3/8"),
                              kit("units inch\nrebate 1 1/4\nround 10\n"), {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  CHECK(plan.cuts.size() <= 6);
}

TEST_CASE("a flat is held back whole, raised, or short of its corner, and never into what must stay",
          "[plan][held_back]") {
  const Section section =
      profile("3 wide, 1 1/4 thick",
              "start face 7/16\nstep down 3/16\nbead out 3/16 down 0.324759526 radius 3/8\n"
              "fillet out 1/4");
  const Kit kit = eight_planes();
  const PlanOptions options;
  const Problem problem = make_problem(section, kit, options);
  const std::vector<Draft> flats = flat_drafts(problem);
  std::vector<Draft> curves;
  for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
    if (problem.surfaces[s].arc) curves = arc_drafts(problem, static_cast<int>(s)).front();
  }
  REQUIRE(curves.size() == 1);
  const std::vector<HeldBack> ways = held_back(problem, curves.front(), flats);
  int whole = 0, less = 0;
  for (const HeldBack& back : ways) {
    CHECK(back.flat.late);
    Wood done = back.wood;
    cut_all(problem, {back.flat}, done);
    CHECK(back.wood.area() - done.area() > 0.02);  // it has something left to take
    if (!back.meanwhile) {
      ++whole;
      continue;
    }
    ++less;
    CHECK(back.meanwhile->finishes.empty());
    CHECK_FALSE(back.meanwhile->late);
    for (const Edge& edge : section.target) CHECK(back.wood.contains(edge.from));
  }
  CHECK(whole == static_cast<int>(flats.size()));
  CHECK(less > whole);
}
