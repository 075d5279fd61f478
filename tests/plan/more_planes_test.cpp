// Another plane on the shelf, and the plan costs no more: what the planner takes first because it is wider,
// or because a scraper could mend it, keeps nothing better out.
#include <set>
#include <string>
#include <vector>

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
