// The searches one after another: without and with each shaped plane. Shown by tests/plan/plan_test.cpp.
#include "plan/compose.h"

#include <algorithm>

#include "plan/access.h"
#include "plan/search.h"

namespace arrisline {

double most_left(const Problem& problem) {
  return problem.kit.scraper ? std::max(problem.options.tolerance, problem.options.scrape)
                             : problem.options.tolerance;
}

Composition compose(const Problem& problem) {
  const std::vector<Draft> flats = flat_drafts(problem);
  Patience patience(problem.options);
  Composition out;
  if (is_hopeless(problem, flats)) return out;
  double unsearched = std::numeric_limits<double>::infinity();
  auto search = [&](std::vector<Draft> given) {
    Composition found;
    found.best = std::move(out.best);
    Search one(problem, flats, std::move(given), patience, found);
    one.run();
    unsearched = std::min(unsearched, one.unsearched());
    return found;
  };
  out = search({});
  for (const Draft& shaped : shaped_drafts(problem)) {
    // The rest of the profile with this part of it done by the shaped plane in one setting.
    Composition with = search({shaped});
    out.best = std::move(with.best);
    out.stopped = out.stopped || with.stopped;
  }
  const bool over = out.best && out.best->left.height > problem.options.tolerance;
  out.proved = out.best && unsearched == std::numeric_limits<double>::infinity();
  if (out.best) out.bound = out.proved ? out.best->effort : over ? 0 : std::min(unsearched, out.best->effort);
  return out;
}

}  // namespace arrisline
