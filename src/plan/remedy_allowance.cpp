// More left above the finished line, by the tolerance or for the scraper. Shown by
// tests/plan/remedies_test.cpp.
#include <algorithm>
#include <cmath>

#include "plan/trials.h"
#include "plan/uncut.h"

namespace arrisline {

namespace {

constexpr double kMostTolerance = 1.5875;  // 1/16 in: beyond it a moulding is no longer the one drawn
constexpr double kMostOfSize = 0.25;  // of the smallest size drawn: beyond it that is lost in what is left
constexpr int kBisection = 9;         // plans: enough to find one figure in 63

}  // namespace

void find_allowance(Trials& trials, bool scraped) {
  // What the best found leaves is as a rule enough, and worth the work.
  std::optional<double> known;
  for (const Reason& reason : trials.plan.reasons) known = reason.leaves;
  Budget left{kBisection, 2, known ? kRemedyWork : kRemedyWork / 2};
  const double step = trials.options.unit == Unit::inch ? kMmPerInch / 1000 : 0.01;
  auto options_at = [&](int steps) {
    PlanOptions options = trials.options;
    (scraped ? options.scrape : options.tolerance) = steps * step;
    return options;
  };
  // Nothing under what may be left now can serve.
  const double now = trials.kit.scraper ? std::max(trials.options.tolerance, trials.options.scrape)
                                        : trials.options.tolerance;
  int fails = static_cast<int>(std::floor(now / step + 1e-9));
  const double worth = std::min(kMostTolerance, kMostOfSize * least_size(trials.problem));
  const int most = static_cast<int>(std::floor(worth / step + 1e-9));
  if (fails >= most) return;
  int serves = most;
  std::optional<Plan> plan;
  auto narrow = [&](int to) {
    std::optional<Plan> made = trials.plan_with(trials.plan.section, trials.kit, options_at(to), left);
    if (!made) return false;
    // Not to cut a part at all is no way to make it.
    if (made->feasible && !leaves_uncut(trials.problem, *made)) {
      serves = to;
      plan = std::move(made);
    } else {
      fails = to;
    }
    return true;
  };
  const int enough = known ? static_cast<int>(std::ceil(*known / step + 1e-6)) : most;
  // What a scraper takes is as a rule what a tolerance would have to allow.
  for (const Remedy& remedy : trials.plan.remedies) {
    if (scraped && remedy.tolerance) narrow(static_cast<int>(std::lround(*remedy.tolerance / step)));
  }
  if (!plan && enough > fails && enough < most) narrow(enough);
  if (!plan && (!narrow(most) || !plan)) return;
  while (serves - fails > 1) {
    // The least that serves is as a rule what the plan found leaves; else it is looked for half-way.
    const int leaves = static_cast<int>(std::ceil(plan->left.max_height / step - 1e-6));
    int to = (fails + serves) / 2;
    if (leaves == serves) to = serves - 1;
    if (leaves > fails && leaves < serves) to = leaves;
    if (!narrow(to)) break;
  }
  Remedy remedy;
  (scraped ? remedy.scrape : remedy.tolerance) = serves * step;
  trials.plan.remedies.push_back(std::move(remedy));
}

}  // namespace arrisline
