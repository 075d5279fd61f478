// Another plane on the shelf, and the plan costs no more: what the planner takes first because it is wider,
// or because a scraper could mend it, keeps nothing better out.
#include <algorithm>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "plan/narrower.h"
#include "plan/planning.h"

using namespace arrisline;
using namespace arrisline::test;

namespace {

const char* const kThreePairs =
    "units inch\nrebate 3/4\nhollow 4\nround 4\nhollow 6\nround 6\nhollow 8\nround 8\n";

// Beads that no hollow of the kit matches, over a bevel.
const std::vector<Moulding> kOverBevels = {
    {"bead 3/16", "3 wide, 1 1/4 thick",
     "start face 1 3/16\nstep down 1/8\nbead out 3/16 down 3/16\nbevel out 3/4 down 3/8\nstep down 1/16\n"
     "fillet out 1/4"},
    {"bead 1/4", "3 wide, 1 thick",
     "start face 1 1/2\nstep down 1/8\nbead out 1/4 down 1/4\nbevel out 3/4 down 1/4\nstep down 1/8\n"
     "fillet out 1/2"},
};

std::set<std::string> planes_of(const Plan& plan) {
  std::set<std::string> out;
  for (const Cut& cut : plan.cuts) out.insert(cut.plane.label);
  return out;
}

/// Both are plans that hold, proved, and the one costs no more and takes up no more planes.
void check_no_dearer(const Plan& with, const Plan& without) {
  REQUIRE(without.feasible);
  REQUIRE(with.feasible);
  CHECK(faults(with) == "");
  CHECK(with.optimal);
  CHECK(with.effort < without.effort + 1e-6);
  CHECK(planes_of(with).size() <= planes_of(without).size());
}

}  // namespace

TEST_CASE("a wider rebate plane in the kit makes no plan dearer where the narrow one is out anyway",
          "[plan][more_planes]") {
  for (const Moulding& one : kOverBevels) {
    INFO(one.name);
    const Section section = profile(one.stock, one.chain);
    const Plan without = make_plan(section, kit(kThreePairs), {});
    const Plan with = make_plan(section, kit(std::string(kThreePairs) + "rebate 1 1/4\n"), {});
    check_no_dearer(with, without);
  }
}

TEST_CASE("a scraper in the kit makes no plan dearer that leaves nothing to scrape", "[plan][more_planes]") {
  const Section section = profile(kOverBevels[1].stock, kOverBevels[1].chain);
  const Plan without = make_plan(section, kit("units inch\nrebate 3/4\nhollow 6\n"), {});
  const Plan with = make_plan(section, kit("units inch\nrebate 3/4\nhollow 6\nscraper\n"), {});
  check_no_dearer(with, without);
  CHECK(planes_of(with).count("scraper") == 0);
}

TEST_CASE("a hollow too tight to lie on a bead at one tilt keeps no larger one out", "[plan][more_planes]") {
  const Section section = profile("5 wide, 1 1/8 thick", "start face 9/16\ntorus 1 1/8");
  const std::string larger = "units inch\nrebate 3/4\nhollow 10\nhollow 12\n";
  const Plan without = make_plan(section, kit(larger), {});
  check_no_dearer(make_plan(section, kit(larger + "hollow 8\n"), {}), without);
  check_no_dearer(make_plan(section, kit(larger + "hollow 8\nscraper\n"), {}), without);
}

TEST_CASE("a worn hollow turns more often than its arc asks for where that spares a cut",
          "[plan][more_planes]") {
  const Section section = profile(
      "50mm wide, 24mm thick", "start face 14.5mm\nstep down 2mm\nbead out 9.5mm down 9.5mm\nfillet out 5mm");
  const auto with_hollow = [&](double radius) {
    std::ostringstream words;
    words << "units mm\nrebate 20\nhollow radius " << radius << " arc 66\n";
    return make_plan(section, kit(words.str()), {});
  };
  const Plan exact = with_hollow(9.5);
  REQUIRE(exact.feasible);
  // At one of these the ends of a single tilt stand off by a hair more than may be left.
  for (const double worn : {9.6, 9.65, 9.7, 9.737, 9.77, 9.8, 9.9}) {
    INFO(worn);
    const Plan plan = with_hollow(worn);
    REQUIRE(plan.feasible);
    CHECK(plan.optimal);
    CHECK(plan.cuts.size() <= exact.cuts.size());
    CHECK(plan.effort < exact.effort + 0.5);
    CHECK(faults(plan) == "");
  }
}

TEST_CASE("the blank is not turned for a hair that a tight hollow would lean too far",
          "[plan][more_planes]") {
  // A field sunk between two beads: on the far one the hollow leans back over the fence.
  const Section section = profile("90mm wide, 20mm thick",
                                  "start face 65mm\nstep down 1mm\nbead out 6mm down 6mm\nfillet out 30mm\n"
                                  "bead out 6mm up 6mm\nstep up 1mm");
  const Plan exact = make_plan(section, kit("units mm\nrebate 20\nhollow radius 6\n"), {});
  const Plan tight = make_plan(section, kit("units mm\nrebate 20\nhollow radius 5.89\n"), {});
  for (const Plan* plan : {&exact, &tight}) {
    REQUIRE(plan->feasible);
    CHECK(faults(*plan) == "");
    for (const Cut& cut : plan->cuts) CHECK(cut.lies == Lies::face_up);
  }
  CHECK(tight.effort < exact.effort + 0.5);
}

TEST_CASE("cuts of two rebate planes are made with the narrower alone, and take the same",
          "[plan][more_planes]") {
  const Section section = profile("4 wide, 1 thick",
                                  "start face 1 1/2\nstep down 1/8\nfillet out 1 1/2\n"
                                  "side back\nstart face 1/2\nstep down 1/4\nfillet out 1/2");
  const Kit planes = kit("units inch\nrebate 1 1/4\nrebate 3/4\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, planes, options);
  Problem narrow = problem;
  narrow.rebates_below = problem.plane(0).width;
  const auto finishes = [&](const Draft& draft, Chain chain) {
    return std::any_of(draft.finishes.begin(), draft.finishes.end(), [&](const Stretch& part) {
      return section.elements[static_cast<std::size_t>(element_of(problem, part.surface))].chain == chain;
    });
  };
  const auto first_of = [&](const Problem& of, Chain chain) {
    const std::vector<Draft> drafts = flat_drafts(of);
    const auto found = std::find_if(drafts.begin(), drafts.end(), [&](const Draft& draft) {
      return finishes(draft, chain) && is_square(draft.poses.front().tilt);
    });
    REQUIRE(found != drafts.end());
    return *found;
  };
  const std::vector<Draft> drafts = {first_of(problem, Chain::face), first_of(narrow, Chain::back)};
  REQUIRE(drafts[0].plane == 0);
  REQUIRE(drafts[1].plane == 1);
  const std::optional<Sequence> both = as_given(problem, drafts);
  REQUIRE(both.has_value());
  REQUIRE(widest_of_two(problem, *both) == Approx(problem.plane(0).width));
  const std::optional<Sequence> one = by_the_narrower(problem, *both);
  REQUIRE(one.has_value());
  CHECK(widest_of_two(problem, *one) == 0);
  REQUIRE(one->steps.size() == both->steps.size());
  for (std::size_t i = 0; i < one->steps.size(); ++i) {
    CHECK(one->steps[i].draft.plane == 1);
    CHECK(one->steps[i].removed == Approx(both->steps[i].removed));
  }
  CHECK(one->steps[1].effort == Approx(both->steps[1].effort - problem.weights.change));
}
