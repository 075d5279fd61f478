// Arcs finished by flats, where the shop allows it and no hollow or round of the kit stands on them.
#include "plan/facets.h"

#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "arrisline/report.h"
#include "plan/planning.h"

using namespace arrisline;
using test::kit;
using test::profile;

namespace {

const char* const kRoundOver = "start face 3/16\novolo 3/16";

/// A rebate plane wide and one narrow, with so many facets allowed.
Kit flats_only(int facets) {
  return kit("units inch\nrebate 3/4\nrebate 1/16\nshop facets " + std::to_string(facets) + "\n");
}

}  // namespace

TEST_CASE("tangents finish a round-over where facets are allowed, as few as the tolerance lets", "[facets]") {
  // Between the tangents at 22.5, 45 and 67.5 degrees and the flats beside them R (sec 11.25 − 1) is left.
  const Section section = profile("2 wide, 3/4 thick", kRoundOver);
  CHECK_FALSE(make_plan(section, flats_only(0), {}).feasible);
  for (const int allowed : {2, 4}) {
    const Plan plan = make_plan(section, flats_only(allowed), {});
    REQUIRE(plan.feasible);
    CHECK(test::faults(plan).empty());
    CHECK(plan.facets == allowed);
    // Two tangents leave R (sec 15 − 1), 0.168 mm: within the 0.2 mm allowed.
    CHECK(plan.cuts.size() == 2);
    CHECK(plan.left.max_height ==
          Approx(3 * kMmPerInch / 16 * (1 / std::cos(to_radians(15)) - 1)).margin(1e-3));
    const std::string list = cut_list(plan, flats_only(allowed), {});
    CHECK(list.find("leaves flats on element 1 (ovolo)") != std::string::npos);
  }
  CHECK_FALSE(make_plan(section, flats_only(1), {}).feasible);
}

TEST_CASE("chords finish a cove where facets are allowed", "[facets]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/16\ncavetto 3/16");
  const Plan plan = make_plan(section, flats_only(12), {});
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan).empty());
  CHECK(plan.facets == 12);
}

TEST_CASE("a hollow that fits is not passed over for facets", "[facets]") {
  const Kit with = kit("units inch\nrebate 3/4\nhollow 3\nshop facets 4\n");
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", kRoundOver), with, {});
  REQUIRE(plan.feasible);
  CHECK(plan.facets == 0);
  CHECK(plan.cuts.back().plane.kind == PlaneKind::hollow);
}

TEST_CASE("a hollow that stands on its arc but rides on nothing gives way to facets", "[facets]") {
  // Sixteen degrees of a bead of 3/4 in. Hollow 2 bears there with the edges of its sole, and leaves little
  // enough for the scraper; no two arrises can be laid under it.
  const Section section =
      profile("2 wide, 3/4 thick", "start face 1/4\nstep down 1/32\nbead out 1/4 down 1/16 radius 3/4");
  const std::string flats = "units inch\nrebate 3/4\nscraper\nshop facets 12\n";
  const Plan without = make_plan(section, kit(flats), {});
  const Plan with = make_plan(section, kit(flats + "hollow 2\n"), {});
  REQUIRE(without.feasible);
  REQUIRE(with.feasible);
  CHECK(test::faults(with).empty());
  CHECK(with.effort == Approx(without.effort));
}

TEST_CASE("the replay counts facets", "[facets]") {
  Plan plan = make_plan(profile("2 wide, 3/4 thick", kRoundOver), flats_only(4), {});
  REQUIRE(plan.feasible);
  plan.facets = 1;
  CHECK(test::faults(plan).find("left as 2 facets, and the shop allows 1") != std::string::npos);
  plan.facets = 0;
  CHECK(test::faults(plan).find("is not finished by a hollow") != std::string::npos);
}

TEST_CASE("an arc is not planned as facets that nobody allowed", "[facets]") {
  // Tangents 22.5 degrees apart on a bead of 1/4 in leave 0.12 mm, less than may be left, wherever the hollow
  // does not come. However early the search is left off, the hollow has its half of the arc.
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\nastragal 1/2");
  const Kit sixes = kit("units inch\nrebate 3/4\nhollow 6\nround 6\nscraper\n");
  PlanOptions options;
  for (const std::uint64_t work : {300000U, 1000000U, 3000000U}) {
    options.most_work = work;
    const Plan plan = make_plan(section, sixes, options);
    INFO(work);
    if (work == 3000000U) REQUIRE(plan.feasible);
    if (plan.feasible) CHECK(test::faults(plan) == "");
  }
}

TEST_CASE("tangents alone do not make an arc", "[facets]") {
  const Section section = profile("2 wide, 3/4 thick", kRoundOver);
  const Kit with = kit("units inch\nrebate 3/4\nhollow 3\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, with, options);
  const Surface& arc = problem.surfaces[0];
  REQUIRE(arc.arc);
  const auto at = [&](int plane, std::vector<double> tilts) {
    Draft draft;
    draft.plane = plane;
    for (const double tilt : tilts)
      draft.poses.push_back(pose_on_arc(problem, arc, problem.plane(plane), tilt));
    return draft;
  };
  CHECK_FALSE(arcs_are_finished(problem, {at(0, {15, 45, 75})}, options.tolerance));
  CHECK(arcs_are_finished(problem, {at(0, {15, 45, 75}), at(1, {45})}, options.tolerance));
}

TEST_CASE("the sole of a flat beside the arc is no facet of it", "[facets]") {
  // The bevel leans as some place of the bead does, and its sole, run on, comes there within the scrape
  // limit.
  const Section section =
      profile("3 wide, 3/4 thick",
              "start face 14/32\nbevel out 4/32 down 3/32\nbead out 10/32 down 8/32 radius 12/32");
  PlanOptions options;
  options.any = true;
  options.most_work = 100000;
  const Plan plan =
      make_plan(section, kit("units inch\nrebate 3/4\nplough 1/4\nshop facets 3\nscraper\n"), options);
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan) == "");
}

TEST_CASE("of arcs of one circle each is finished, as the replay asks of each", "[facets]") {
  // Rounded on both arrises, a slip of 1/8 in is half round: two quadrants of 1/16 in, end to end.
  const Section slip = test::profile(
      "1/2 wide, 1/8 thick", "start face 1/16\novolo 1/16\nside underside\nstart face 1/16\novolo 1/16");
  for (const char* hollow : {"hollow 2", "hollow 4", "hollow radius 1/16 width 1/16"}) {
    INFO(hollow);
    const Plan plan = make_plan(slip, test::kit(std::string("units inch\nrebate 3/4\n") + hollow), {});
    REQUIRE(plan.feasible);
    CHECK(test::faults(plan) == "");
  }
}
