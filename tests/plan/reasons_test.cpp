// A clear no: the element, why, and the nearest that would do.
#include <algorithm>
#include <string>

#include "plan/planning.h"
#include "plan/why_arc.h"

using namespace arrisline;
using test::kit;
using test::pair_of_sixes;
using test::profile;

namespace {

Plan refused(const Section& section, const Kit& planes, const PlanOptions& options = {}) {
  Plan plan = make_plan(section, planes, options);
  REQUIRE_FALSE(plan.feasible);
  find_remedies(plan, planes, options);
  REQUIRE_FALSE(plan.reasons.empty());
  CHECK(plan.cuts.empty());
  return plan;
}

/// What is said of the element; empty where nothing is.
std::string why(const Plan& plan, int element) {
  for (const Reason& reason : plan.reasons) {
    if (reason.element == element) return reason.why;
  }
  return "";
}

}  // namespace

TEST_CASE("no hollow in the kit", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"),
                            kit("units inch\nround 6\nrebate 3/4\n"));
  CHECK(plan.reasons[0].element == 0);
  CHECK(plan.reasons[0].why == "the kit has no hollow for a bead of radius 3/8 in");
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->kind == PlaneKind::hollow);
  CHECK(plan.reasons[0].nearest->number == 6);
}

TEST_CASE("a round too flat for the cove", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4"), pair_of_sixes());
  CHECK(plan.reasons[0].why ==
        "round 6 is too flat for a cove of radius 1/4 in and would bear on the edges of its sole");
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->number == 4);
}

TEST_CASE("a groove narrower than any sole", "[plan][reasons]") {
  const char* chain = "start face 1 1/2\nstep down 1/4\nfillet out 1/4\nstep up 1/4";
  const Plan plan = refused(profile("3 wide, 3/4 thick", chain), pair_of_sixes());
  CHECK(
      why(plan, 1) ==
      "a flat 1/4 in wide between element 1 (step) and element 3 (step) lets in no flat sole of the kit, the "
      "narrowest being 3/4 in");
  CHECK(why(plan, 0) == "it is a wall of the groove with element 2 (fillet) for its floor");
  CHECK(why(plan, 2) == "it is a wall of the groove with element 2 (fillet) for its floor");
  // With the plough named as nearest it goes.
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->kind == PlaneKind::plough);
  CHECK(plan.reasons[0].nearest->width == Approx(6.35));
  const Plan with =
      make_plan(profile("3 wide, 3/4 thick", chain), kit("units inch\nrebate 3/4\nplough 1/4\n"), {});
  REQUIRE(with.feasible);
  REQUIRE(with.cuts.size() == 1);
  CHECK(with.cuts[0].rides == Rides::fence);
}

TEST_CASE("a groove narrower than a sole by a hair is told so", "[plan][reasons]") {
  const Plan plan =
      refused(profile("2 wide, 3/4 thick", "start face 1\nstep down 1/8\nfillet out 1/8\nstep up 1/8"),
              test::kit("units inch\nrebate 3/4\nplough .126\n"));
  CHECK(why(plan, 1) ==
        "a flat 0.125 in wide between element 1 (step) and element 3 (step) lets in no flat sole of the kit, "
        "the narrowest being 0.126 in");
}

TEST_CASE("nothing to lay rails with", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"),
                            kit("units inch\nhollow 6\n"));
  CHECK(plan.reasons[0].element == 0);
  CHECK(plan.reasons[0].why ==
        "the kit has no plane with a flat sole to leave two arrises for hollow 6 to ride on");
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->kind == PlaneKind::rebate);
}

TEST_CASE("the floor of a groove is named before its walls", "[plan][reasons]") {
  const Plan plan =
      refused(profile("3 wide, 3/4 thick", "start face 5/8\nquirk out 1/16 down 1/8\nogee out 9/16 down 3/8"),
              pair_of_sixes());
  REQUIRE(plan.reasons.size() >= 3);
  CHECK(plan.reasons[0].element == 1);
  CHECK(plan.reasons[0].why ==
        "a flat 1/16 in wide between its two walls lets in no flat sole of the kit, the narrowest being 3/4 "
        "in");
  for (const int wall : {0, 2})
    CHECK(why(plan, wall) == "it is a wall of the groove with element 1 (quirk, floor) for its floor");
}

TEST_CASE("of a curve drawn as several arcs it is said which arc", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 1 thick", "start face 5/8\ncurve bead out 5/8 down 1/2"),
                            kit("units inch\nhollow 4\nhollow 6\nhollow 10\nhollow 12\nhollow 14\n"));
  REQUIRE(plan.reasons.size() == 2);
  for (const Reason& reason : plan.reasons) CHECK(reason.why.rfind("at its arc of radius ", 0) == 0);
  CHECK(plan.reasons[0].why.substr(0, 30) != plan.reasons[1].why.substr(0, 30));
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
  const std::string start = "hollow 6 fits the bead of radius 3/8 in, but its sole, 3/8 in wide, runs into ";
  CHECK((plan.reasons[0].why == start + "element 1 (step)" ||
         plan.reasons[0].why == start + "element 3 (fillet)"));
}

TEST_CASE("what keeps the plane of its radius off an arc", "[plan][reasons]") {
  // A cyma of 45 degrees each: the bead is 0.096 in from end to end, and the cove begins at its upper end.
  const Section section =
      profile("2 wide, 1 thick",
              "start face 1/2\nstep down 1/8\nfillet out 1/16\ncove out .0732 down .1768 radius "
              "1/4\nbead out .0366 down .0884 radius 1/8\nfillet out .3277");
  const PlanOptions options;
  const auto kept_out = [&](const char* planes) {
    const Kit own = kit(planes);
    const Problem problem = make_problem(section, own, options);
    for (int s = 0; s < static_cast<int>(problem.surfaces.size()); ++s) {
      if (element_of(problem, s) == 3) return what_keeps_out(problem, s);
    }
    FAIL("the bead is not there to be cut");
    return std::optional<std::string>();
  };
  const std::string wide =
      "hollow 2 fits the bead of radius 1/8 in, but its sole, 1/8 in wide, runs into element 3 (cove)";
  CHECK(kept_out("units inch\nhollow 2\n") == wide);
  // One that stands there and is of another radius may yet serve or not.
  CHECK(kept_out("units inch\nhollow 2\nhollow 3 width 1/16\n") == wide);
  CHECK(kept_out("units inch\nhollow 2\nhollow radius 1/8 width 1/16\n") == std::nullopt);
  CHECK(kept_out("units inch\nround 2\n") == std::nullopt);
}

TEST_CASE("what keeps a plane from an end of its arc", "[plan][reasons]") {
  // A reed of 150 degrees between walls as high: leaning for its ends the plane has no room.
  const Section section = profile("3 wide, 3/4 thick",
                                  "start face 2\nstep down .278\nfillet out 1/8\nbead out .7244 radius "
                                  "3/8\nfillet out 1/8\nstep up .278");
  const Plan plan = refused(section, kit("units inch\nrebate 3/4\nplough 1/8\nhollow 6\n"));
  CHECK(why(plan, 2).find("hollow 6 fits the bead of radius 3/8 in, but toward an end of it its side meets "
                          "element 1 (step); the best found leaves ") == 0);
}

TEST_CASE("a plane of the arc's radius that is kept out is named before one that stands there",
          "[plan][reasons]") {
  // Computed: the bead is 2 3/8 sin 22.5° = 0.287 in from end to end, the sole of hollow 6 0.375 in. Hollow
  // 1, 1/16 in wide, bears on its edges within what the scraper takes.
  const Section section =
      profile("2 wide, 1 thick",
              "start face 1\nstep down 1/4\nbead out .1747 down .2277 radius 3/8\nfillet out .8253");
  const Plan plan = refused(section, kit("units inch\nrebate 3/4\nhollow 1\nhollow 6\nscraper\n"));
  INFO(plan.reasons[0].why);
  CHECK(why(plan, 1).find("hollow 6 fits the bead of radius 3/8 in, but its ") == 0);
  CHECK(why(plan, 1).find("hollow 1 ") != std::string::npos);
}

TEST_CASE("planes on both sides of the size, each with what hinders it", "[plan][reasons]") {
  // A bead of 3/8 between walls: hollow 4 is too tight, and hollow 8 stands in the way of itself.
  const Section section =
      profile("2 wide, 1 thick", "start face 3/4\nstep down 1/4\nbead out 3/8 down 3/8\nfillet out 3/8");
  const Plan plan = refused(section, kit("units inch\nhollow 4\nrebate 3/4\n"));
  CHECK(why(plan, 1) ==
        "hollow 4 is too tight for a bead of radius 3/8 in and would bear on the edges of its sole");
}

TEST_CASE("of hollows all too tight the nearest is named first", "[plan][reasons]") {
  // So narrow a sole as that of 3 mm all but lies on any bead.
  const Section section =
      profile("60mm wide, 20mm thick", "start face 12mm\nbead out 12mm down 10mm radius 30mm");
  const Plan plan =
      refused(section, kit("units mm\nrebate 20\nhollow radius 3\nhollow radius 18\nscraper\n"));
  CHECK(why(plan, 0).find("hollow radius 18 is too tight for a bead of radius ") == 0);
}

TEST_CASE("a plough that is narrow enough and cannot lean is not passed over", "[plan][reasons]") {
  const Section section =
      profile("60mm wide, 20mm thick",
              "start face 30mm\nstep down 4mm\nbevel out 6mm down 3mm\nstep up 3mm\nfillet out 24mm");
  const Plan plan = refused(section, kit("units mm\nrebate 20\nplough 3 6\n"));
  REQUIRE_FALSE(plan.reasons.empty());
  CHECK(plan.reasons[0].why.find("lets in no flat sole of the kit that can lean, the narrowest being ") !=
        std::string::npos);
}

TEST_CASE("a body wider than the sole, and what it meets", "[plan][reasons]") {
  const char* chain = "start face 1\nstep down 1/2\ncavetto 3/8\nfillet out 5/8";
  const Section section = profile("2 wide, 1 thick", chain);
  const char* rest = "rebate 3/4\n";
  REQUIRE(make_plan(section, kit(std::string("units inch\nround 6\n") + rest), {}).feasible);
  const Plan plan = refused(section, kit(std::string("units inch\nround 6 body 1/2 above 3/8\n") + rest));
  CHECK(why(plan, 1) ==
        "round 6 fits the cove of radius 3/8 in, but its body, wider than its sole, meets element 1 (step)");
}

TEST_CASE("a plough that does not go so deep, or so far", "[plan][reasons]") {
  const std::string stock = "4 wide, 1 thick";
  const Section deep =
      profile(stock, "start face 3/4\nstep down 1/2\nfillet out 1/4\nstep up 1/2\nfillet out 1/2");
  const Plan shallow = refused(deep, kit("units inch\nrebate 3/4\nplough 1/4 deep 3/8\n"));
  CHECK(why(shallow, 1) == "plough 1/4 fits, but it lies deeper than the 3/8 in that the plough goes");
  const Section far =
      profile(stock, "start face 2 1/4\nstep down 1/4\nfillet out 1/4\nstep up 1/4\nfillet out 2");
  const Plan short_reach = refused(far, kit("units inch\nrebate 3/4\nplough 1/4 reach 1\n"));
  CHECK(why(short_reach, 1) == "plough 1/4 fits, but its fence reaches no farther than 1 in");
}

TEST_CASE("a slant needs a rebate plane", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick", "start face 1/2\nbevel out 1/2 down 1/4"),
                            kit("units inch\nplough 1/4\n"));
  CHECK(why(plan, 0) == "it slants, and the kit has no rebate plane; a plough works square to a side only");
  REQUIRE(plan.reasons[0].nearest.has_value());
  CHECK(plan.reasons[0].nearest->kind == PlaneKind::rebate);
}

TEST_CASE("nothing to hold the blank by names what cannot be held", "[plan][reasons]") {
  // The one stop stands under the edge that is cut away.
  const Section section = profile("2 wide, 3/4 thick", "start face 1\nstep down 5/8\nfillet out 1");
  REQUIRE(make_plan(section, kit("units inch\nrebate 3/4\nboard stops at 1/2 screw 3/8 clear 1/16\n"), {})
              .feasible);
  const Plan plan =
      refused(section, kit("units inch\nrebate 3/4\nboard stops at 1 1/2 screw 3/8 clear 1/16\n"));
  REQUIRE(plan.reasons.size() == 1);
  CHECK(plan.reasons[0].element >= 0);
  CHECK(
      plan.reasons[0].why ==
      "the blank is not held by a stop: none can stand in the wood and clear below rebate 3/4; held another "
      "way, the kit makes it in 1 cut");
}

TEST_CASE("where only the holding fails no plane is blamed", "[plan][reasons]") {
  // The bar is too narrow for the stop; the kit gets at every flat of it.
  const Section section = profile(
      "5/8 wide, 3/4 thick",
      "start face 3/8\nstep down 1/8\nbead out 1/4 down 3/8 radius 3/8\nstep down 1/16\nfillet out 1/8");
  const std::string planes = "units inch\nrebate 3/4\nhollow 6\nscraper\n";
  const Plan free = make_plan(section, kit(planes), {});
  REQUIRE(free.feasible);
  const Plan plan = refused(section, kit(planes + "board stops at 1/2 screw 3/8 clear 1/16\n"));
  REQUIRE(plan.reasons.size() == 1);
  CHECK(plan.reasons[0].why.find("the blank is not held by a stop") == 0);
  const auto cuts = std::count_if(free.cuts.begin(), free.cuts.end(),
                                  [](const Cut& cut) { return cut.plane.kind != PlaneKind::scraper; });
  CHECK(plan.reasons[0].why.find("makes it in " + std::to_string(cuts) + " cuts") != std::string::npos);
}

TEST_CASE("what is left over, beside what is allowed", "[plan][reasons]") {
  // A bead of 3/8 with a hollow of 1/2 between a step and a fillet: its lower edge keeps it off.
  PlanOptions close;
  close.tolerance = 0.025;
  close.most_work *= 2;  // it takes about as much as is usually allowed
  const Section section =
      profile("2 wide, 1 thick", "start face 3/4\nstep down 1/32\nbead out 3/8 down 3/8\nfillet out 3/8");
  const Plan plan = refused(section, kit("units inch\nhollow 8\nrebate 3/4\n"), close);
  INFO(plan.reasons[0].why);
  CHECK(plan.reasons[0].element == 1);
  CHECK(plan.reasons[0].why.find("hollow 8 is not of its radius, 3/8 in; the best found leaves ") == 0);
  CHECK(plan.reasons[0].why.find("0.001 in is allowed") != std::string::npos);
  REQUIRE(plan.reasons[0].leaves.has_value());
  CHECK(*plan.reasons[0].leaves > close.tolerance);
  // A hair more than that is all it takes.
  REQUIRE_FALSE(plan.remedies.empty());
  CHECK(plan.remedies.back().tolerance.value_or(0) == Approx(*plan.reasons[0].leaves).margin(0.0255));
}

TEST_CASE("a flat sole is not called one of another radius", "[plan][reasons]") {
  const Plan plan = refused(profile("2 wide, 3/4 thick",
                                    "start face 1\nstep down 1/32\nbead out 3/16 down 1/32 radius 3/4\nstep "
                                    "down 1/16\nfillet out 13/16"),
                            kit("units inch\nrebate 3/4\nshop facets 12\n"));
  CHECK(why(plan, 1) ==
        "rebate 3/4 cuts it in flats; the best found leaves 0.01 in of wood above the finished line, and "
        "0.008 in "
        "is allowed");
}

TEST_CASE("what is left over never reads like what is allowed", "[plan][reasons]") {
  // Planned again with a hair less than it leaves.
  PlanOptions wide;
  wide.tolerance = 0.4;
  const Section section = profile(
      "2 wide, 3/4 thick",
      "start face 1\nstep down 1/32\nbead out 3/16 down 1/32 radius 3/4\nstep down 1/16\nfillet out 13/16");
  const Kit planes = kit("units inch\nrebate 3/4\nshop facets 12\n");
  const Plan yes = make_plan(section, planes, wide);
  REQUIRE(yes.feasible);
  PlanOptions hair;
  hair.tolerance = yes.left.max_height - 0.001;
  const Plan plan = refused(section, planes, hair);
  const std::string said = why(plan, 1);
  INFO(said);
  const std::string leaves = "leaves ", above = " of wood above the finished line, and ",
                    allowed = " is allowed";
  const std::size_t from = said.find(leaves) + leaves.size(), to = said.find(above), end = said.find(allowed);
  REQUIRE((to != std::string::npos && end != std::string::npos));
  CHECK(said.substr(from, to - from) != said.substr(to + above.size(), end - to - above.size()));
}
