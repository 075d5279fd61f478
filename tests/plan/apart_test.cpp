// Work on several edges, planned part by part.
#include "plan/apart.h"

#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::profile;

namespace {

const char* kHalfSet =
    "units inch\nrebate 1 1/4\nrebate 3/4\nplough 1/8 3/16 1/4\nhollow 2\nround 2\nhollow 4\nround 4\nhollow "
    "6\nround 6\nhollow 8\nround 8\nhollow 10\nround 10\nscraper\n";

}  // namespace

TEST_CASE("what the blank's outline parts is a section of its own", "[plan][apart]") {
  const Section both =
      profile("3 wide, 3/4 thick",
              "start face 1/2\novolo 1/2\nside underside\nstart face 1/8\ncavetto 1/8\nside back\nstart face "
              "3/8\nstep down 1/8\novolo 3/8\n");
  const std::vector<Section> parts = parts_of(both);
  REQUIRE(parts.size() == 3);
  const double blank = both.width * both.thickness;
  double waste = 0;
  for (const Section& part : parts) {
    CHECK(area(part.target) < blank);
    waste += blank - area(part.target);
    for (std::size_t i = 0; i < part.target.size(); ++i) {
      CHECK(part.target[i].to == part.target[(i + 1) % part.target.size()].from);
      // What is not to be cut lies on the outline of the blank.
      if (part.source[i] >= 0) continue;
      CHECK(distance(part.target[i].from, blank_outline(both.width, both.thickness)) < 1e-9);
      CHECK(distance(point_at(part.target[i], 0.5), blank_outline(both.width, both.thickness)) < 1e-9);
    }
  }
  CHECK(waste == Approx(blank - area(both.target)));
}

TEST_CASE("two flutes are two parts, and one chain is one", "[plan][apart]") {
  CHECK(parts_of(profile("3 wide, 3/4 thick",
                         "start face 2\ncove out 1/2 radius 1/4\nfillet out 1/4\ncove out "
                         "1/2 radius 1/4"))
            .size() == 2);
  CHECK(parts_of(profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8"))
            .size() == 1);
}

TEST_CASE("what can be planned on each edge can be planned on both", "[plan][apart]") {
  // A scotia between steps, and the same on the back edge: by hand twice seven cuts.
  const std::string scotia =
      "start face .55175\nstep down 1/8\ncove out .0732 down .1768 radius 1/4\ncove out .35355 down .14645 "
      "radius "
      "1/2\nfillet out 1/8\nstep down 1/8\n";
  const Kit half_set = kit(kHalfSet);
  const Plan one = make_plan(profile("4 wide, 1 1/4 thick", scotia), half_set, {});
  REQUIRE(one.feasible);
  const Plan both = make_plan(profile("4 wide, 1 1/4 thick", scotia + "side back\n" + scotia), half_set, {});
  REQUIRE(both.feasible);
  CHECK(faults(both) == "");
  CHECK(both.cuts.size() <= 2 * one.cuts.size());
  CHECK(both.effort < 2 * one.effort);
}

TEST_CASE("plans of two parts one after another are a plan where no order of all their cuts is found",
          "[plan][apart]") {
  // Of radii that no plane has: eleven cuts on either edge, and the scraper.
  const std::string edge =
      "start face 1.3\nstep down 1/8\nbead out .2 down .13 radius .33\ncove out .3 down .26 radius "
      ".43\nfillet out "
      ".15\ncove out .35 down .35\nstep down .08\nfillet out .3\n";
  const Plan both = make_plan(profile("5 wide, 1 1/2 thick", edge + "side back\n" + edge),
                              kit(std::string(kHalfSet) + "round 12\n"), {});
  REQUIRE(both.feasible);
  CHECK(faults(both) == "");
  CHECK(both.cuts.size() >= 20);
}
