// What the maker would rather have less of, and searches that are left off.
#include <atomic>
#include <set>

#include "plan/planning.h"
#include "plan/wood.h"

using namespace arrisline;
using test::faults;
using test::profile;

namespace {

/// A plinth moulding with a fillet on either side of an ogee, and a set that can do it in several ways.
Section plinth() {
  return profile("2 wide, 3/4 thick",
                 "start face 3/4\nstep down 1/16\ncove out 1/4 down 1/4\nfillet out 1/8\nstep down 1/16\n"
                 "bead out 3/8 down 3/8");
}

/// An ovolo between fillets: small enough to be proved.
Section ovolo() {
  return profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8");
}

Kit half_set() {
  return test::kit(
      "units inch\nrebate 1 1/4\nrebate 1/4\nplough 1/8\nhollow 4\nround 4\nhollow 6\nround 6\nscraper\n");
}

std::size_t planes_of(const Plan& plan) {
  std::set<std::string> labels;
  for (const Cut& cut : plan.cuts) labels.insert(cut.plane.label);
  return labels.size();
}

double strokes_of(const Plan& plan) {
  double sum = 0;
  for (const Cut& cut : plan.cuts) sum += cut.strokes;
  return sum;
}

}  // namespace

TEST_CASE("what is preferred is never more than in the plan of least effort, and the effort never less",
          "[plan][prefer]") {
  const Plan least = make_plan(ovolo(), half_set(), {});
  REQUIRE(least.feasible);
  REQUIRE(least.optimal);
  CHECK(least.bound == Approx(least.effort));
  for (const Prefer prefer : {Prefer::fewest_planes, Prefer::fewest_cuts, Prefer::least_strokes}) {
    INFO(word(prefer));
    PlanOptions options;
    options.prefer = prefer;
    const Plan plan = make_plan(ovolo(), half_set(), options);
    REQUIRE(plan.feasible);
    CHECK(faults(plan, options) == "");
    CHECK(plan.prefer == prefer);
    CHECK(plan.effort >= least.effort - 1e-6);
    if (prefer == Prefer::fewest_planes) CHECK(planes_of(plan) <= planes_of(least));
    if (prefer == Prefer::fewest_cuts) CHECK(plan.cuts.size() <= least.cuts.size());
    if (prefer == Prefer::least_strokes) CHECK(strokes_of(plan) <= strokes_of(least) + 1e-6);
  }
}

TEST_CASE("the least strokes take more cuts where flats spare the curved planes", "[plan][prefer]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  const Kit kit = test::pair_of_sixes();
  PlanOptions options;
  options.prefer = Prefer::least_strokes;
  const Plan plan = make_plan(section, kit, options);
  const Plan least = make_plan(section, kit, {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan, options) == "");
  CHECK(strokes_of(plan) < strokes_of(least));
}

TEST_CASE("a search left off gives a plan that holds, or no answer", "[plan][limit]") {
  const Plan least = make_plan(plinth(), half_set(), {});
  bool undecided = false, early = false;
  for (const std::uint64_t work : {1U, 3000U, 30000U, 100000U, 300000U}) {
    INFO("work " << work);
    PlanOptions options;
    options.most_work = work;
    const Plan plan = make_plan(plinth(), half_set(), options);
    undecided = undecided || plan.undecided;
    if (plan.undecided) {
      CHECK_FALSE(plan.feasible);
      CHECK(plan.reasons.size() == 1);
      continue;
    }
    REQUIRE(plan.feasible);
    CHECK(faults(plan, options) == "");
    CHECK(plan.effort >= least.effort - 1e-6);
    CHECK(plan.bound <= least.effort + 1e-6);
    early = early || !plan.optimal;
  }
  CHECK(undecided);
  CHECK(early);
}

TEST_CASE("an interruption leaves the search off at once", "[plan][limit]") {
  const std::atomic<bool> interrupted{true};
  PlanOptions options;
  options.interrupt = &interrupted;
  CHECK(make_plan(plinth(), half_set(), options).undecided);
}

TEST_CASE("the work allowed is kept to while flats are chosen for a complicated moulding", "[plan][limit]") {
  // So many flats that choices of cuts for all of them, too dear to be a plan, take far longer than the
  // search that would follow.
  const Section section =
      profile("29/16 wide, 47/32 thick",
              "start face 51/32\nstep down 3/16\nogee down 3/8 out 1/2\nfillet out 3/16\n"
              "quirk out 3/8 down 11/32\nfillet out 5/32\nbevel out 3/8 down 3/8\n"
              "side underside\nstart face 3/32\nstep down 1/8\nstep down 3/8\nfillet out 3/32");
  const Kit planes = test::kit(
      "units mm\nnumber 1 radius 9.5\nrebate 13.5\nhollow 6\nround 6\nhollow arc 60 width 5 radius 5\n"
      "shaped dome\ncove out 3.1 radius 3\nbead out 5.5 radius 5.5\nend\nhollow arc 43 width 3.5\nrebate "
      "3.1\nscraper\n");
  PlanOptions options;
  for (const std::uint64_t work : {2000U, 20000U}) {
    options.most_work = work;
    const std::uint64_t before = wood_work();
    const Plan plan = make_plan(section, planes, options);
    CHECK(plan.undecided);
    // What is begun is ended: the drafts before, one round of choices after.
    CHECK(wood_work() - before < work + 20000);
  }
}
