// Shown by tests/plan/remedies_test.cpp.
#include "plan/trials.h"

#include <algorithm>
#include <limits>

#include "plan/wood.h"

namespace arrisline {

namespace {

constexpr std::uint64_t kLeastWork = 150000;  // that each plan may cost

/// For the whole of the search: the budgets bound its work, and the limit its time only where that counts
/// from before.
PlanOptions unbounded(PlanOptions options) {
  options.most_work = std::numeric_limits<std::uint64_t>::max();
  if (!options.since) options.limit = std::numeric_limits<double>::infinity();
  return options;
}

}  // namespace

Trials::Trials(Plan& no, const Kit& own_kit, const PlanOptions& as_asked)
    : plan(no),
      kit(own_kit),
      options(as_asked),
      problem(make_problem(no.section, kit, options)),
      own(access(problem)),
      failing(out_of_reach(problem, own)),
      for_all_(unbounded(options)),
      clock_(for_all_) {}

std::optional<Plan> Trials::plan_with(const Section& section, const Kit& with_kit,
                                      const PlanOptions& with_options, Budget& budget) {
  if (budget.spent()) return std::nullopt;
  if (clock_.over()) {
    left_off = true;
    return std::nullopt;
  }
  PlanOptions any = with_options;
  any.any = true;
  any.most_work = std::max(kLeastWork, budget.sure > 0 ? budget.work : budget.work / budget.share);
  const std::uint64_t before = wood_work();
  Plan made = make_plan(section, with_kit, any);
  const std::uint64_t work = wood_work() - before;
  budget.work -= std::min(budget.work, budget.sure > 0 ? work / 2 : work);
  --budget.plans;
  --budget.sure;
  left_off = left_off || (made.undecided && clock_.over());
  return made;
}

Kit Trials::with(const std::vector<Plane>& added) const {
  Kit out = kit;
  for (const Plane& plane : added) {
    if (plane.kind == PlaneKind::scraper) {
      out.scraper = true;
    } else {
      out.planes.push_back(plane);
    }
  }
  return out;
}

std::uint64_t Trials::gets_at(const Plane& plane) const {
  if (plane.kind == PlaneKind::scraper) return 0;
  Kit one;
  one.planes = {plane};
  const Problem with_it = make_problem(problem.section, one, options);
  const std::vector<int> left = out_of_reach(with_it, both(own, access(with_it)));
  std::uint64_t out = 0;
  for (std::size_t i = 0; i < failing.size(); ++i) {
    if (std::find(left.begin(), left.end(), failing[i]) == left.end()) out |= std::uint64_t{1} << i;
  }
  return out;
}

}  // namespace arrisline
