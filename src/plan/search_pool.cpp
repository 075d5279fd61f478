// Cuts of waste beside those that a plan needs: one more where it saves effort, some more where too much
// would be left. Shown by tests/plan/oracle_test.cpp and tests/plan/large_test.cpp.
#include <algorithm>
#include <array>
#include <utility>

#include "geometry/crossing.h"
#include "plan/search.h"
#include "plan/sets.h"

namespace arrisline {

namespace {

/// Where waste is taken, as shares of an arc.
constexpr std::array kWasteAt = {0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875};
constexpr int kMostThinningAtAll = 12;  // where with so few none is found
constexpr std::size_t kManyCuts = 10;   // more than the search gets through all choices of

std::vector<Draft> without(const std::vector<Draft>& drafts, std::size_t i) {
  std::vector<Draft> out = drafts;
  out.erase(out.begin() + static_cast<std::ptrdiff_t>(i));
  return out;
}

}  // namespace

/// Whether a plough has room in the cove at this lean where no rebate plane has.
static bool only_ploughs_have_room(const Problem& problem, const Surface& cove, double lean,
                                   const std::vector<int>& rebates) {
  const bool by_rebate = std::any_of(rebates.begin(), rebates.end(), [&](int p) {
    return !waste_on_arc(problem, cove, problem.plane(p), lean).empty();
  });
  const std::vector<Plane>& planes = problem.kit.planes;
  return !by_rebate && std::any_of(planes.begin(), planes.end(), [&](const Plane& plane) {
    return plane.kind == PlaneKind::plough && !grooves_in_cove(problem, cove, plane, lean).empty();
  });
}

RoughingPool roughing_pool(const Problem& problem, const std::vector<Draft>& flats) {
  RoughingPool pool;
  const std::vector<int> rebates = rebate_planes(problem);
  auto add = [&](int plane, std::vector<Pose> poses) {
    if (poses.empty()) return false;
    Draft draft;
    draft.plane = plane;
    draft.poses = std::move(poses);
    find_other_poses(problem, draft);
    pool.cuts.push_back(std::move(draft));
    return true;
  };
  for (const Surface& s : problem.surfaces) {
    if (!s.arc) continue;
    bool open = false;
    for (const double share : kWasteAt) {
      const double lean = s.lo + share * (s.hi - s.lo);
      const bool room = !rebates.empty() &&
                        add(rebates.front(), waste_on_arc(problem, s, problem.plane(rebates.front()), lean));
      open = open || room;
      // Rails are not ploughed from the edges.
      if (!room && !s.bead && !pool.trough && !is_sunk_in_edge(s))
        pool.trough = only_ploughs_have_room(problem, s, lean, rebates);
    }
    if (s.bead || open) continue;
    for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
      if (problem.plane(p).kind != PlaneKind::plough) continue;
      // Each groove is a cut of its own, since the fence is set anew.
      const auto add_grooves = [&](double lean) {
        const std::vector<Pose> grooves = grooves_in_cove(problem, s, problem.plane(p), lean);
        for (const Pose& groove : grooves) add(p, {groove});
        return pool.cuts.size() - grooves.size();  // the place of the first
      };
      for (const double share : {0.0625, 0.125, 0.25, 0.375}) {
        const double aside = share * (s.hi - s.lo);
        const std::size_t left = add_grooves(s.lo + aside);
        const std::size_t right = add_grooves(s.hi - aside);
        if (left < right && right < pool.cuts.size()) pool.pairs.emplace_back(left, right);
      }
      add_grooves((s.lo + s.hi) / 2);
    }
  }
  for (const Draft& draft : flats) {
    if (problem.plane(draft.plane).kind == PlaneKind::rebate) pool.cuts.push_back(draft);
  }
  pool.keys = keys_of(pool.cuts);
  return pool;
}

bool Search::takes(const Draft& draft, Point at) const {
  return std::any_of(draft.poses.begin(), draft.poses.end(), [&](const Pose& pose) {
    return Sweep(problem_.plane(draft.plane), pose).depth(at) > -kSame;
  });
}

/// Tries each set of cuts that was put by with one cut more from the pool, those that cost least first: what
/// they lead to cuts off the others.
void Search::try_pool() {
  std::vector<Pending> pending = std::move(pending_);
  pending_.clear();
  std::stable_sort(pending.begin(), pending.end(),
                   [](const Pending& a, const Pending& b) { return a.least < b.least; });
  // What one more cut may save is not in `least`, so what is left untried may cost as little as was known
  // before.
  double unknown = std::numeric_limits<double>::infinity();
  for (auto one = pending.rbegin(); one != pending.rend(); ++one)
    one->known = unknown = std::min(unknown, one->known);
  for (Pending& one : pending) {
    if (leave_off(one.known)) return;
    if (!one.worked) one.worked = std::make_shared<LeastCost>(known_, one.drafts, orders_);
    // It is no longer needed once its turn is over.
    try_with_one_more(*std::move(one.worked), one.left);
    try_with_more();
  }
}

/// Tries these cuts, which leave so much, with each cut of the pool besides.
void Search::try_with_one_more(LeastCost least, const Thickest& before) {
  const std::vector<Draft> drafts = least.drafts();
  const Keys keys = keys_of(drafts);
  least.work_out_curves();
  for (std::size_t i = 0; i < pool_.cuts.size(); ++i) {
    const Draft& extra = pool_.cuts[i];
    if (std::find(keys.begin(), keys.end(), pool_.keys[i]) != keys.end()) continue;
    std::vector<long long> key = key_of(keys, pool_.keys[i]);
    if (seen_.count(key) > 0) continue;
    // Where it takes nothing from the thickest, that stays as thick.
    double left = takes(extra, before.at) ? 0 : before.height;
    if (worth(left) > worth(before.height)) {
      Wood finished = least.finished();
      cut_all(problem_, {extra}, finished);
      left = thickest_left(finished, problem_.section.target).height;
      left = sure_to_stay(drafts, finished, {left, {}}).height;
    }
    const std::optional<LeastCost> with = least.with(extra, worth(left));
    if (!with) continue;
    seen_.insert(std::move(key));
    judge(*with, thickest_left(with->finished(), problem_.section.target).height);
  }
  for (const auto& [a, b] : pool_.pairs) {
    const Draft& first = pool_.cuts[a];
    const Draft& second = pool_.cuts[b];
    if (!has(drafts, first) && !has(drafts, second)) try_drafts(together(drafts, {first, second}));
  }
}

/// The best plan with another cut of the pool, or with one left out that another cut all but makes, as long
/// as that makes it better: what helps in one arc helps as much in the next.
void Search::try_with_more() {
  while (out_.best && out_.best->effort < with_more_ - kTie && !patience_.over()) {
    with_more_ = out_.best->effort;
    if (best_drafts_.empty()) return;
    if (try_without_one()) continue;
    LeastCost best(known_, best_drafts_, orders_);
    const Thickest left = thickest_left(best.finished(), problem_.section.target);
    const Thickest sure = sure_to_stay(best_drafts_, best.finished(), left);
    try_with_one_more(std::move(best), sure);
  }
}

/// The choice leaves this at a point, too much or as much as would have to be scraped: each cut of the pool
/// that takes it, those that leave least first. Where many are needed and there is no plan yet, of each only
/// the one that leaves least.
void Search::thin(const Choice& choice, const Wood& finished, const Thickest& left) {
  if (choice.thinning >= (out_.best ? kMostThinning : kMostThinningAtAll)) return;
  struct Thinner {
    double left;
    const Draft* draft;
  };
  std::vector<Thinner> cuts;
  for (const Draft& extra : pool_.cuts) {
    if (!takes(extra, left.at) || has(choice.flats, extra)) continue;
    Wood wood = finished;
    cut_all(problem_, {extra}, wood);
    cuts.push_back({thickest_left(wood, problem_.section.target).height, &extra});
  }
  std::stable_sort(cuts.begin(), cuts.end(),
                   [](const Thinner& a, const Thinner& b) { return a.left < b.left; });
  if (choice.thinning >= kMostThinning && cuts.size() > 1) cuts.erase(cuts.begin() + 1, cuts.end());
  for (const Thinner& cut : cuts) {
    Choice more = choice;
    more.flats.push_back(*cut.draft);
    ++more.thinning;
    more.left = left;
    cut_all(problem_, {*cut.draft}, more.wood);
    const double least = least_of(more, arcs_.size());
    if (!cut_off(least)) whole(more, least);
  }
}

/// Choices that would have to be scraped with cuts more, and then what comes of them with another.
void Search::thin_scraped() {
  while (!scraped_.empty()) {
    std::vector<Scraped> now = std::move(scraped_);
    scraped_.clear();
    std::stable_sort(now.begin(), now.end(),
                     [](const Scraped& a, const Scraped& b) { return a.known < b.known; });
    for (const Scraped& one : now) {
      if (leave_off(one.known)) return;
      if (!cut_off(one.known)) thin(one.choice, one.finished, one.left);
    }
    try_pool();
  }
}

/// Puts these cuts in order where they may be the best. Whether they are better than the best before.
bool Search::try_drafts(std::vector<Draft> drafts) {
  drafts = in_order(std::move(drafts));
  if (!seen_.insert(key_of(drafts)).second) return false;
  LeastCost least(known_, drafts, orders_);
  const double left = thickest_left(least.finished(), problem_.section.target).height;
  if (cut_off(least.total()) || left > may_leave(least, left)) return false;
  least.work_out();
  const double before = out_.best ? out_.best->effort : std::numeric_limits<double>::infinity();
  judge(least, left);
  return out_.best && out_.best->effort < before - kTie;
}

/// Whether a plan may do without the cut.
bool Search::may_go(const Draft& draft) const {
  return draft.arc < 0 && !has(given_, draft);
}

/// Tries the best plan with one of its flats left out. Whether that makes it better.
bool Search::try_without_one() {
  const std::vector<Draft> now = best_drafts_;
  for (std::size_t i = 0; i < now.size() && !patience_.over(); ++i) {
    if (may_go(now[i]) && try_drafts(without(now, i))) return true;
  }
  return false;
}

/// A plan of many cuts, where the search does not get through all there are, is made better a cut at a time
/// as long as that helps: one left out, one more, or one in place of another.
void Search::improve() {
  if (best_drafts_.size() < kManyCuts) return;
  const auto step = [&] {
    const std::vector<Draft> now = best_drafts_;
    const auto over = [&] { return patience_.over(); };
    if (try_without_one()) return true;
    for (const Draft& extra : pool_.cuts) {
      if (!over() && !has(now, extra) && try_drafts(together(now, {extra}))) return true;
    }
    for (std::size_t i = 0; i < now.size(); ++i) {
      if (!may_go(now[i])) continue;
      for (const std::vector<Draft>* others : {&flat_drafts_, &std::as_const(pool_.cuts)}) {
        for (const Draft& other : *others) {
          if (!over() && !has(now, other) && try_drafts(together(without(now, i), {other}))) return true;
        }
      }
    }
    return false;
  };
  while (step()) {
  }
}

}  // namespace arrisline
