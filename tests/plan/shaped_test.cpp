// A shaped plane makes the part of the profile that it matches in one setting, guided by its fence.
#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::profile;

TEST_CASE("a shaped plane cuts its ovolo and fillet in one setting", "[plan][shaped]") {
  const Section section =
      profile("2 wide, 3/4 thick", "start face 3/8\nstep down 1/8\nbead out 1/4 down 1/4\nfillet out 1/8");
  const Plan plan = make_plan(
      section,
      kit("units inch\nrebate 3/4\nshaped quarter ovolo\nbead out 1/4 down 1/4\nfillet out 1/8\nend\n"), {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  int shaped = 0;
  for (const Cut& cut : plan.cuts) {
    if (cut.plane.kind != PlaneKind::shaped) continue;
    ++shaped;
    CHECK(cut.poses.size() == 1);
    CHECK(cut.rides == Rides::fence);
    CHECK(cut.elements == std::vector<int>{1, 2});
  }
  CHECK(shaped == 1);
  // One of another radius does not serve.
  CHECK_FALSE(
      make_plan(section,
                kit("units inch\nrebate 3/4\nshaped other\nbead out 3/16 down 3/16\nfillet out 3/16\nend\n"),
                {})
          .feasible);
}
