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

namespace {

int shaped_cuts(const Plan& plan) {
  int count = 0;
  for (const Cut& cut : plan.cuts) count += cut.plane.kind == PlaneKind::shaped ? 1 : 0;
  return count;
}

}  // namespace

TEST_CASE("each part that a shaped plane matches is made with it", "[plan][shaped]") {
  const Kit ovolo = kit("units inch\nrebate 3/4\nshaped ovolo\nbead out 3/8 down 3/8\nend\n");
  const Kit two =
      kit("units inch\nrebate 3/4\nshaped ovolo\nbead out 3/8 down 3/8\nend\n"
          "shaped small ovolo\nbead out 1/4 down 1/4\nend\n");
  const std::string on_back = "\nside back\nstart face ";
  // One below the other on one edge; the same on both edges; on the face and the underside; two of a size
  // each.
  for (const auto& [chain, planes] :
       {std::pair{
            std::string("start face 1\nstep down 1/8\novolo 3/8\nstep down 1/8\nfillet out 1/4\novolo 3/8"),
            &ovolo},
        std::pair{"start face 3/8\novolo 3/8" + on_back + "3/8\novolo 3/8", &ovolo},
        std::pair{std::string("start face 3/8\novolo 3/8\nside underside\nstart face 3/8\novolo 3/8"),
                  &ovolo},
        std::pair{"start face 3/8\novolo 3/8" + on_back + "1/4\novolo 1/4", &two}}) {
    INFO(chain);
    const Plan plan = make_plan(profile("4 wide, 1 1/4 thick", chain), *planes, {});
    REQUIRE(plan.feasible);
    CHECK(faults(plan) == "");
    CHECK(shaped_cuts(plan) == 2);
  }
}

TEST_CASE("for the other edge the blank is turned end for end under a shaped plane", "[plan][shaped]") {
  const Kit ogee = kit("units inch\nrebate 3/4\nshaped ogee plane\nogee out 3/4 down 1/2\nend\n");
  const std::string chain = "start face 3/4\nogee out 3/4 down 1/2";
  const auto lies_of = [](const Plan& plan) {
    for (const Cut& cut : plan.cuts)
      if (cut.plane.kind == PlaneKind::shaped) return cut.lies;
    FAIL("no cut with the shaped plane");
    return Lies::face_up;
  };
  // On the working edge, on the back edge, and on the underside.
  for (const auto& [before, lies] :
       {std::pair{"", Lies::face_up}, std::pair{"side back\n", Lies::end_for_end},
        std::pair{"side underside\n", Lies::underside_up}}) {
    INFO(before);
    const Plan plan = make_plan(profile("2 wide, 3/4 thick", before + chain), ogee, {});
    REQUIRE(plan.feasible);
    CHECK(faults(plan) == "");
    CHECK(shaped_cuts(plan) == 1);
    CHECK(lies_of(plan) == lies);
  }
}

TEST_CASE("a sole turned end for end twice is as it was; its own mirror image stays as it is",
          "[plane][shaped]") {
  const Kit planes =
      kit("units inch\nshaped ogee plane\nogee out 3/4 down 1/2\nend\n"
          "shaped half-round\nbead out 1/2 radius 1/4\nend\n");
  const Plane& ogee = planes.planes.front();
  const std::optional<Plane> once = turned(ogee);
  REQUIRE(once);
  CHECK(once->turned);
  for (const double u : {-9.0, -4.0, 0.0, 2.5, 8.0})
    CHECK(sole_height(*once, u) == Approx(sole_height(ogee, -u)).margin(1e-9));
  const std::optional<Plane> twice = turned(*once);
  REQUIRE(twice);
  CHECK_FALSE(twice->turned);
  CHECK(twice->sole.size() == ogee.sole.size());
  CHECK(sole_height(*twice, 3) == Approx(sole_height(ogee, 3)).margin(1e-9));
  CHECK_FALSE(turned(planes.planes.back()));
}
