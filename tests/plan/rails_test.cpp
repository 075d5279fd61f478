// Rails are solved so that both meet the sole together, mirror images or not.
#include "plan/rails.h"

#include "plan/gouge.h"
#include "plan/planning.h"

using namespace arrisline;
using test::pair_of_sixes;
using test::profile;

namespace {

struct Laid {
  int setups = 0;
  int well = 0;
  double worst = 0;
};

/// Rails for the first arc of the profile on the raw blank.
Laid lay(const Section& section) {
  const Kit kit = pair_of_sixes();
  const PlanOptions options;
  const Problem problem = make_problem(section, kit, options);
  Laid out;
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    if (!problem.surfaces[i].arc) continue;
    const Draft draft = arc_drafts(problem, static_cast<int>(i)).front().front();
    const Wood blank(problem.blank);
    for (const Setup& setup : lay_rails(problem, draft, blank)) {
      ++out.setups;
      // Tried again from the start: the rails are there on the wood itself.
      Wood wood = blank;
      for (const Draft& cut : setup.cuts) {
        for (const Pose& pose : cut.poses) {
          const Sweep sweep(problem.plane(cut.plane), pose);
          CHECK_FALSE(gouges(section.target, sweep, 0.001));
          wood.cut(sweep);
        }
      }
      const Plane& sole = problem.plane(draft.plane);
      const Pose start = pose_on_arc(problem, problem.surfaces[i], sole, setup.start);
      const Guidance guided = guidance(touch(wood.edges(), Sweep(sole, start)), sole);
      CHECK(guided.two_arrises);
      if (well_laid(guided, sole)) ++out.well;
      out.worst = std::max(out.worst, guided.imbalance);
    }
    return out;
  }
  return out;
}

}  // namespace

TEST_CASE("rails for a quadrant bead and a quadrant cove", "[rails]") {
  for (const char* chain :
       {"start face 3/8\nbead out 3/8 down 3/8", "start face 3/8\ncove out 3/8 down 3/8"}) {
    INFO(chain);
    const Laid laid = lay(profile("2 wide, 3/4 thick", chain));
    CHECK(laid.setups >= 3);
    CHECK(laid.well == laid.setups);
  }
}

TEST_CASE("rails that are not mirror images still meet the sole together", "[rails]") {
  // A bead that leaves the face at an angle and ends on the edge at another.
  const Laid laid = lay(profile("2 wide, 3/4 thick", "start face 5/16\nbead out 5/16 down 3/16 radius 3/8"));
  CHECK(laid.setups >= 1);
  CHECK(laid.well == laid.setups);
  CHECK(laid.worst > 1e-6);
}

// The hollow stands so near the far end of its arc that no second chamfer goes beyond the middle of its sole:
// by hand 4 cuts, one at half the steepest lean and one at the steepest.
TEST_CASE("two chamfers leave rails where the second comes near the end of the bead", "[rails]") {
  const Plan plan = make_plan(
      profile("3 wide, 1 1/4 thick", "start face 9/16\nbead out 5/16 down 3/16 radius 3/8\nfillet out 1/4"),
      test::kit("hollow 6\nround 6\nrebate 3/4\n"), {});
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan) == "");
  CHECK(plan.cuts.size() <= 4);
  for (const Cut& cut : plan.cuts) {
    // None is a chamfer so flat that it is next to none.
    const double lean = std::abs(cut.poses.front().tilt);
    CHECK((lean == 0 || lean > 10));
  }
}

TEST_CASE("a cove in the middle of a face is entered with the corner of a leaning sole", "[rails]") {
  const Laid laid = lay(profile("3 wide, 3/4 thick", "start face 1 3/4\ncove out 1/2 radius 3/8"));
  CHECK(laid.setups >= 1);
  CHECK(laid.well == laid.setups);
}
