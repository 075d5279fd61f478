// Orders: rails stay until they are used, and the cheapest order is found.
#include "plan/orders.h"
#include "plan/planning.h"

using namespace arrisline;
using test::pair_of_sixes;
using test::profile;

namespace {

/// The drafts of the plan, in the order given.
std::vector<Draft> drafts_of(const Problem& problem, const Plan& plan) {
  std::vector<Draft> out;
  for (const Cut& cut : plan.cuts) {
    Draft draft;
    for (std::size_t p = 0; p < problem.kit.planes.size(); ++p) {
      if (problem.kit.planes[p].label == cut.plane.label) draft.plane = static_cast<int>(p);
    }
    draft.poses = cut.poses;
    for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
      if (cut.plane.is_curved() && problem.surfaces[s].arc) draft.arc = static_cast<int>(s);
    }
    out.push_back(draft);
  }
  return out;
}

}  // namespace

TEST_CASE("a hollow cannot come before what guides it", "[sequence]") {
  const Section section =
      profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8");
  const Kit kit = pair_of_sixes();
  const PlanOptions options;
  const Problem problem = make_problem(section, kit, options);
  const Plan plan = make_plan(section, kit, options);
  std::vector<Draft> drafts = drafts_of(problem, plan);
  REQUIRE(drafts.size() == 4);
  REQUIRE(drafts.back().arc >= 0);

  Wood raw(problem.blank);
  CHECK_FALSE(take(problem, drafts.back(), {}, nullptr, raw).has_value());

  // From any order given, the best is the same and ends with the hollow.
  std::swap(drafts.front(), drafts.back());
  KnownTurns known(problem);
  LeastCost least(known, in_order(drafts), OrderOf::any);
  least.work_out();
  const std::optional<Sequence> best = best_order(problem, least);
  REQUIRE(best.has_value());
  CHECK(best->steps.back().draft.arc >= 0);
  CHECK(best->effort == Approx(plan.effort).margin(1e-6));
}

TEST_CASE("a cut that finds nothing to take is no step", "[sequence]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  const Kit kit = pair_of_sixes();
  const PlanOptions options;
  const Problem problem = make_problem(section, kit, options);
  const std::vector<Draft> drafts = drafts_of(problem, make_plan(section, kit, options));
  REQUIRE(drafts.size() == 1);
  Wood wood(problem.blank);
  const std::optional<Step> first = take(problem, drafts[0], {}, nullptr, wood);
  REQUIRE(first.has_value());
  CHECK(first->settings == 2);
  CHECK(first->removed == Approx(0.5 * 0.25 * kMmPerInch * kMmPerInch));
  // The same again, even with its lines still set.
  CHECK_FALSE(take(problem, drafts[0], {}, &*first, wood).has_value());
}

TEST_CASE("weights of the shop change the effort they weigh", "[sequence]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  Kit kit = pair_of_sixes();
  const Plan plain = make_plan(section, kit, {});
  kit.shop.weight_cut += 1;
  const Plan dear = make_plan(section, kit, {});
  REQUIRE(dear.cuts.size() == plain.cuts.size());
  CHECK(dear.effort - plain.effort == Approx(static_cast<double>(plain.cuts.size())));
}
