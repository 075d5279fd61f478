// The searches one after another: without and with shaped planes. Shown by tests/plan/plan_test.cpp.
#include "plan/compose.h"

#include <algorithm>

#include "plan/access.h"
#include "plan/apart.h"
#include "plan/fewer_tilts.h"
#include "plan/narrower.h"
#include "plan/search.h"
#include "plan/tilts.h"

namespace arrisline {

double most_left(const Problem& problem) {
  return problem.kit.scraper ? std::max(problem.options.tolerance, problem.options.scrape)
                             : problem.options.tolerance;
}

namespace {

bool share_a_surface(const Draft& a, const Draft& b) {
  return std::any_of(a.finishes.begin(), a.finishes.end(), [&](const Stretch& mine) {
    return std::any_of(b.finishes.begin(), b.finishes.end(),
                       [&](const Stretch& other) { return mine.surface == other.surface; });
  });
}

/// The shaped cuts one by one, and then as many together as make each a part of its own.
std::vector<std::vector<Draft>> shaped_together(const std::vector<Draft>& shaped) {
  constexpr std::size_t kMostSets = 40;
  std::vector<std::vector<std::size_t>> sets;
  for (std::size_t i = 0; i < shaped.size(); ++i) sets.push_back({i});
  for (std::size_t s = 0; s < sets.size() && sets.size() < kMostSets; ++s) {
    for (std::size_t next = sets[s].back() + 1; next < shaped.size() && sets.size() < kMostSets; ++next) {
      if (std::any_of(sets[s].begin(), sets[s].end(),
                      [&](std::size_t i) { return share_a_surface(shaped[i], shaped[next]); }))
        continue;
      std::vector<std::size_t> more = sets[s];
      more.push_back(next);
      sets.push_back(std::move(more));
    }
  }
  std::vector<std::vector<Draft>> out;
  for (const std::vector<std::size_t>& set : sets) {
    out.emplace_back();
    for (const std::size_t i : set) out.back().push_back(shaped[i]);
  }
  return out;
}

bool rides_ill(const Sequence& sequence) {
  return std::any_of(sequence.steps.begin(), sequence.steps.end(),
                     [](const Step& step) { return step.ill_laid; });
}

/// Whether some arc is made in other ways in the one problem than in the other.
bool has_other_ways(const Problem& one, const Problem& other) {
  const auto same_way = [](const std::vector<Draft>& a, const std::vector<Draft>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Draft& x, const Draft& y) {
      return x.plane == y.plane && x.poses == y.poses;
    });
  };
  for (int s = 0; s < static_cast<int>(one.surfaces.size()); ++s) {
    if (!surface_of(one, s).arc) continue;
    const std::vector<std::vector<Draft>> ways = arc_drafts(one, s), others = arc_drafts(other, s);
    if (!std::equal(ways.begin(), ways.end(), others.begin(), others.end(), same_way)) return true;
  }
  return false;
}

/// Whether some curve is made with a plane of another radius.
bool has_misfit(const Sequence& sequence) {
  return std::any_of(sequence.steps.begin(), sequence.steps.end(),
                     [](const Step& step) { return step.draft.miss > kSameRadius; });
}

/// Where there was no time to look for a plan without the widest rebate plane, that which the best comes to.
void put_narrower(const Problem& problem, Composition& out) {
  if (widest_of_two(problem, *out.best) == 0) return;
  std::optional<Sequence> narrower = by_the_narrower(problem, *out.best);
  if (!narrower || !better(problem, *narrower, *out.best)) return;
  out.bound = std::min(out.bound, narrower->effort);
  out.best = std::move(narrower);
}

/// All the searches of one problem, for what is better than `best`. `apart`: a plan put together part by
/// part.
Composition compose(const Problem& problem, const std::vector<Draft>& flats, const std::vector<Draft>& apart,
                    Patience& patience, std::optional<Sequence> best = std::nullopt) {
  Composition out;
  out.best = std::move(best);
  double unsearched = std::numeric_limits<double>::infinity();
  auto search = [&](std::vector<Draft> given) {
    Composition found;
    found.best = std::move(out.best);
    std::vector<Draft> first = given.empty() ? apart : std::vector<Draft>{};
    Search one(problem, flats, std::move(given), std::move(first), patience, found);
    one.run();
    unsearched = std::min(unsearched, one.unsearched());
    return found;
  };
  out = search({});
  for (std::vector<Draft>& shaped : shaped_together(shaped_drafts(problem))) {
    // The rest of the profile with these parts of it done by shaped planes, each in one setting.
    Composition with = search(std::move(shaped));
    out.best = std::move(with.best);
    out.stopped = out.stopped || with.stopped;
  }
  const bool over = out.best && out.best->left.height > problem.options.tolerance;
  out.proved = out.best && unsearched == std::numeric_limits<double>::infinity();
  if (out.best) out.bound = out.proved ? out.best->effort : over ? 0 : std::min(unsearched, out.best->effort);
  return out;
}

/// The searches one after another, as long as there is reason for the next.
Composition search_all(const Problem& problem) {
  const std::vector<Draft> flats = flat_drafts(problem);
  if (is_hopeless(problem, flats)) return {};
  Patience patience(problem.options);
  Apart apart = planned_apart(problem);
  if (!apart.unmade.empty()) {
    Composition none;
    none.unmade = std::move(apart.unmade);
    return none;
  }
  Composition out = compose(problem, flats, apart.cuts, patience);
  const bool none = !out.best;
  const auto look_further = [&](const Problem& further, const std::vector<Draft>& its_flats) {
    if (out.stopped) return;
    Composition found = compose(further, its_flats, apart.cuts, patience, out.best);
    if (found.best) {
      out = std::move(found);
    } else {
      out.stopped = found.stopped;
    }
  };
  // A plane that matches its arc, and yet is not guided there, is as good as none.
  Problem with_others = problem;
  with_others.other_radii = true;
  if ((none || rides_ill(*out.best)) && has_other_ways(with_others, problem))
    look_further(with_others, flats);
  Problem with_held_back = problem;
  with_held_back.hold_back = true;
  if (none) look_further(with_held_back, flats);
  // The fewest tilts may leave so much where they end that another cut has to take it.
  Problem with_closer = problem;
  with_closer.closer_tilts = true;
  if (out.best && has_misfit(*out.best) && has_other_ways(with_closer, problem))
    look_further(with_closer, flats);
  // Cuts are made with the widest plane that makes them. Where the next is out anyway it may do for all.
  if (const double widest = out.best ? widest_of_two(problem, *out.best) : 0; widest > 0) {
    Problem with_narrower = problem;
    with_narrower.rebates_below = widest;
    look_further(with_narrower, flat_drafts(with_narrower));
    if (out.stopped) put_narrower(problem, out);
  }
  if (out.best || out.stopped || problem.kit.shop.facets <= 0) return out;
  // So is any that stands on its arc, and yet serves in no plan.
  Problem with_facets = problem;
  with_facets.facets_too = true;
  return compose(with_facets, flats, apart.cuts, patience);
}

}  // namespace

Composition compose(const Problem& problem) {
  Composition out = search_all(problem);
  if (!out.best) return out;
  out.best = without_needless_tilts(problem, *std::move(out.best));
  out.bound = std::min(out.bound, out.best->effort);
  return out;
}

}  // namespace arrisline
