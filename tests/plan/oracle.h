// A planner that tries everything: no bounds, no order of likelihood, nothing cut off. It takes the drafts of
// cuts from the planner's own generators and lets stand() and settle() say what a cut costs on a given wood;
// covers, choices, sets and orders are gone through anew, from the list in docs/how-it-plans.md.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <queue>
#include <set>
#include <tuple>
#include <vector>

#include "plan/compose.h"
#include "plan/orders.h"
#include "plan/rails.h"
#include "plan/search.h"
#include "plan/sequence.h"
#include "plan/sets.h"

namespace arrisline::test {

class Oracle {
 public:
  explicit Oracle(const Problem& problem, long most_sets)
      : problem_(problem), most_sets_(most_sets), flats_(flat_drafts(problem)) {
    for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
      if (problem.surfaces[s].arc) arcs_.push_back(arc_drafts(problem, static_cast<int>(s)));
    }
    keep_planes();
    fill_pool();
  }

  /// Least effort of all plans with their flats first and one waste cut, or more put to the best of these, or
  /// flats left out of it, as long as that makes it better; infinity where there is none.
  double least() {
    if (std::any_of(arcs_.begin(), arcs_.end(), [](const auto& ways) { return ways.empty(); }))
      return effort_;
    cover({});
    // Rails of many grooves only where there is nothing else.
    trenches_ = true;
    if (!std::isfinite(effort_) && roughing_pool(problem_, flats_).trough) cover({});
    more_waste();
    return effort_;
  }
  /// Each arc is made in the ways that the other tries: where all else of the problem is alike, so is the
  /// answer.
  bool makes_arcs_like(const Oracle& other) const {
    const auto alike_ways = [](const auto& a, const auto& b) {
      return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Drafts& one, const Drafts& two) {
        return std::equal(one.begin(), one.end(), two.begin(), two.end(), same);
      });
    };
    return std::equal(arcs_.begin(), arcs_.end(), other.arcs_.begin(), other.arcs_.end(), alike_ways);
  }
  /// More sets of cuts than were to be tried: the answer is worth nothing.
  bool gave_up() const { return sets_ > most_sets_; }
  long sets() const { return sets_; }
  /// Some plane of the least plan rides on rails that are not well laid out.
  bool rides_ill() const { return ill_; }
  /// Cuts of the plan that the pool has too, made one way or the other.
  long of_pool(const Sequence& plan) const {
    return std::count_if(plan.steps.begin(), plan.steps.end(), [&](const Step& step) {
      return std::any_of(pool_.begin(), pool_.end(), [&](const Draft& cut) {
        Draft other = cut;
        other.poses = cut.otherwise;
        return same(cut, step.draft) || same(other, step.draft);
      });
    });
  }
  /// Some curved cut of the plan has not all the tilts of any way to make its arc.
  bool has_fewer_tilts(const Sequence& plan) const {
    return std::any_of(plan.steps.begin(), plan.steps.end(), [&](const Step& step) {
      if (!problem_.plane(step.draft.plane).is_curved()) return false;
      const auto has_it = [&](const Pose& pose) {
        return std::any_of(step.draft.poses.begin(), step.draft.poses.end(),
                           [&](const Pose& other) { return same_pose(pose, other); });
      };
      for (const auto& ways : arcs_) {
        for (const Drafts& way : ways) {
          for (const Draft& cut : way) {
            if (cut.plane == step.draft.plane && cut.arc == step.draft.arc &&
                std::all_of(cut.poses.begin(), cut.poses.end(), has_it))
              return false;
          }
        }
      }
      return true;
    });
  }
  /// How far what some cuts must cost in any case was above what they then cost; below 0 as it should be.
  double bound_over() const { return bound_over_; }

 private:
  using Drafts = std::vector<Draft>;

  // The nearest two planes of an arc, and those nearest for another arc; three at most. One that does it
  // roughly is not counted.
  void keep_planes() {
    std::set<int> nearest;
    for (const auto& ways : arcs_) {
      if (!ways.empty()) nearest.insert(ways[0][0].plane);
    }
    for (auto& ways : arcs_) {
      std::vector<Drafts> kept;
      std::set<int> planes, rough;
      for (const Drafts& way : ways) {
        const int plane = way[0].plane;
        const std::size_t room = problem_.other_radii ? 3 : 2;
        const bool more = planes.size() < room || (planes.size() < room + 1 && nearest.count(plane) > 0);
        if (planes.count(plane) + rough.count(plane) == 0 && !more) continue;
        (way[0].rough ? rough : planes).insert(plane);
        kept.push_back(way);
      }
      ways = kept;
    }
  }

  // Chamfers and corners at eighths of each arc with the widest rebate plane; grooves of every plough, alone
  // and two and two, in a cove without corners; and the flats of rebate planes.
  void fill_pool() {
    int widest = -1;
    for (std::size_t p = 0; p < problem_.kit.planes.size(); ++p) {
      const Plane& plane = problem_.kit.planes[p];
      if (plane.kind == PlaneKind::rebate && plane.width < problem_.rebates_below &&
          (widest < 0 || plane.width > problem_.plane(widest).width))
        widest = static_cast<int>(p);
    }
    for (const Surface& s : problem_.surfaces) {
      const std::size_t before = pool_.size();
      for (int i = 1; s.arc && widest >= 0 && i < 8; ++i) {
        const double lean = s.lo + i * (s.hi - s.lo) / 8;
        const Plane& plane = problem_.plane(widest);
        const Point k = problem_.edge(s).centre - radius(problem_.edge(s)) * outward(lean);
        const double up = std::abs(wrap_degrees(lean)) <= 90 ? 0 : 180;
        Draft draft;
        draft.plane = widest;
        draft.poses = s.bead ? chamfer_on_arc(problem_, s, plane, lean, 0)
                             : flat_cut(problem_, plane, up, dot(k, across(up)),
                                        wrap_degrees(lean - up) > 0 ? -1 : 1, dot(k, outward(up)));
        if (!draft.poses.empty()) pool_.push_back(draft);
      }
      if (s.arc && !s.bead && pool_.size() == before) add_grooves(s);
    }
    for (const Draft& draft : flats_) {
      if (problem_.plane(draft.plane).kind == PlaneKind::rebate) pool_.push_back(draft);
    }
    for (Draft& draft : pool_) find_other_poses(problem_, draft);
    for (Drafts& pair : pairs_) {
      for (Draft& draft : pair) find_other_poses(problem_, draft);
    }
  }

  void add_grooves(const Surface& s) {
    for (std::size_t p = 0; p < problem_.kit.planes.size(); ++p) {
      if (problem_.kit.planes[p].kind != PlaneKind::plough) continue;
      const auto groove = [&](double lean) {  // and those beside it
        const double middle = wrap_degrees((s.lo + s.hi) / 2);
        const double square = is_sunk_in_edge(s)                   ? (middle > 0 ? 90 : -90)
                              : std::abs(wrap_degrees(lean)) <= 90 ? 0
                                                                   : 180;
        const Point k = problem_.edge(s).centre - radius(problem_.edge(s)) * outward(lean);
        Drafts out;
        for (const Pose& pose : grooves(problem_, problem_.kit.planes[p], square, dot(k, across(square)),
                                        wrap_degrees(lean - square) > 0 ? -1 : 1, dot(k, outward(square)))) {
          Draft draft;
          draft.plane = static_cast<int>(p);
          draft.poses = {pose};
          out.push_back(draft);
        }
        return out;
      };
      for (const double sixteenths : {1, 2, 4, 6, 8}) {
        const double aside = sixteenths / 16 * (s.hi - s.lo);
        const Drafts left = groove(s.lo + aside);
        pool_.insert(pool_.end(), left.begin(), left.end());
        if (sixteenths == 8) break;
        const Drafts right = groove(s.hi - aside);
        pool_.insert(pool_.end(), right.begin(), right.end());
        if (!left.empty() && !right.empty()) pairs_.push_back({left[0], right[0]});
      }
    }
  }

  static bool same(const Draft& a, const Draft& b) {
    if (a.plane != b.plane || a.arc != b.arc || a.poses.size() != b.poses.size()) return false;
    for (std::size_t i = 0; i < a.poses.size(); ++i) {
      if (distance(a.poses[i].at, b.poses[i].at) > 1e-5 ||
          std::abs(wrap_degrees(a.poses[i].tilt - b.poses[i].tilt)) > 1e-5)
        return false;
    }
    return true;
  }
  static bool has(const Drafts& drafts, const Draft& draft) {
    return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& other) { return same(other, draft); });
  }

  // First point of the first flat that nothing of these finishes, among what all flats together finish.
  bool bare(const Drafts& drafts, int surface, double* at) const {
    std::vector<std::pair<double, double>> spans = {{1, 1}};
    for (const Draft& draft : drafts) {
      for (const Stretch& part : draft.finishes) {
        if (part.surface == surface) spans.emplace_back(part.from, part.to);
      }
    }
    std::sort(spans.begin(), spans.end());
    const double len = length(problem_.edge(problem_.surfaces[static_cast<std::size_t>(surface)]));
    double to = 0, open = 0;
    bool first = true;
    for (const auto& span : spans) {
      if (span.first > to + 1e-9) {
        open += (span.first - to) * len;
        if (first && (span.first - to) * len > 1e-6) {
          *at = (to + span.first) / 2;
          first = false;
        }
      }
      to = std::max(to, span.second);
    }
    return open > 0.02;
  }

  void cover(const Drafts& chosen) {
    for (std::size_t s = 0; s < problem_.surfaces.size(); ++s) {
      double at = 0, never = 0;
      const int surface = static_cast<int>(s);
      if (problem_.surfaces[s].arc || bare(flats_, surface, &never) || !bare(chosen, surface, &at)) continue;
      for (const Draft& draft : flats_) {
        const bool over = std::any_of(draft.finishes.begin(), draft.finishes.end(), [&](const Stretch& part) {
          return part.surface == surface && part.from < at && part.to > at;
        });
        if (!over || gave_up()) continue;
        Drafts more = chosen;
        more.push_back(draft);
        cover(more);
      }
      return;
    }
    Wood wood(problem_.blank);
    cut_all(problem_, chosen, wood);
    choose(chosen, {}, wood, 0, true);
    if (arcs_.size() > 1) choose(chosen, {}, wood, 0, false);
  }

  void choose(const Drafts& flats, const Drafts& curved, const Wood& wood, std::size_t k, bool forward) {
    if (gave_up()) return;
    if (k == arcs_.size()) {
      whole(flats, curved, 0);
      return;
    }
    for (const Drafts& way : arcs_[forward ? k : arcs_.size() - 1 - k]) {
      const Plane& plane = problem_.plane(way[0].plane);
      std::vector<Setup> setups;
      if (plane.is_curved()) {
        const std::optional<Start> start = best_start(problem_, way[0], wood);
        setups = lay_rails(problem_, way[0], wood, trenches_);
        if (start) setups.push_back({{}, start->tilt, start->guidance});
      } else {
        setups = {{}};
      }
      for (const Setup& setup : setups) {
        Drafts more = flats;
        for (const Draft& cut : setup.cuts) {
          if (!has(more, cut)) more.push_back(cut);
        }
        Drafts arcs = curved;
        arcs.insert(arcs.end(), way.begin(), way.end());
        if (plane.is_curved()) arcs[curved.size()].starts.push_back(setup.start);
        Wood after = wood;
        cut_all(problem_, setup.cuts, after);
        choose(more, arcs, after, k + 1, forward);
      }
    }
  }

  void whole(const Drafts& flats, const Drafts& curved, int thinned, Thickest before = {1e9, {}}) {
    if (++sets_ > most_sets_) return;
    Drafts all = flats;
    all.insert(all.end(), curved.begin(), curved.end());
    Wood wood(problem_.blank);
    cut_all(problem_, all, wood);
    const Thickest left = thickest_left(wood, problem_.section.target);
    const bool thick = left.height > most_left(problem_);
    const bool elsewhere = distance(left.at, before.at) > 1;
    const bool of_use = left.height < before.height + (elsewhere ? 1e-4 : -1e-4);
    if (thick && !of_use) return;
    if (!thick) order(all);
    for (const Drafts& pair : pairs_) {
      if (thick || has(flats, pair[0]) || has(flats, pair[1])) continue;
      Drafts with = flats;
      with.insert(with.end(), pair.begin(), pair.end());
      with.insert(with.end(), curved.begin(), curved.end());
      order(with);
    }
    for (const Draft& extra : pool_) {
      if (has(flats, extra)) continue;
      Drafts more = flats;
      more.push_back(extra);
      if (!thick) {
        Drafts with = more;
        with.insert(with.end(), curved.begin(), curved.end());
        order(with);
      }
      if (left.height <= problem_.options.tolerance) continue;
      const bool takes = std::any_of(extra.poses.begin(), extra.poses.end(), [&](const Pose& pose) {
        return Sweep(problem_.plane(extra.plane), pose).depth(left.at) > -1e-7;
      });
      if (takes && of_use && thinned < 3) whole(more, curved, thinned + 1, left);
    }
  }

  // The best with more from the pool, as long as one more, or two in a cove, make it better.
  void more_waste() {
    for (double before = std::numeric_limits<double>::infinity(); effort_ < before - kTie;) {
      before = effort_;
      const Drafts now = best_;
      const auto with = [&](const Drafts& more) {
        if (std::any_of(more.begin(), more.end(), [&](const Draft& one) { return has(now, one); })) return;
        order(together(now, more));
      };
      for (const Draft& extra : pool_) with({extra});
      for (const Drafts& pair : pairs_) with(pair);
      for (std::size_t i = 0; i < now.size(); ++i) {
        Drafts rest = now;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        if (now[i].arc < 0) order(rest);
      }
    }
  }

  // Uniform cost over which cuts are done, at which starts, which came last, and how the blank lies.
  void order(const Drafts& drafts) {
    using Key = std::tuple<unsigned, std::vector<int>, int, Lies>;
    struct Reached {
      double cost;
      Wood wood;
      Step step;
      bool ill = false;  // it or one before it rides on rails that are not well laid out
    };
    std::map<Key, Reached> reached;
    std::set<Key> closed;
    std::priority_queue<std::pair<double, Key>, std::vector<std::pair<double, Key>>, std::greater<>> open;
    const Key begin{0, std::vector<int>(drafts.size(), 0), -1, Lies::face_up};
    reached.insert({begin, {0, Wood(problem_.blank), {}}});
    open.push({0, begin});
    // Flats that all curves wait for: not those that finish something where the blank cannot lie face up.
    unsigned flat = 0, curved = 0;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
      const Plane& plane = problem_.plane(drafts[i].plane);
      const bool turned = !ways_to_lie(problem_, drafts[i]).has(Lies::face_up);
      if (plane.is_flat() && (drafts[i].finishes.empty() || !turned)) flat |= 1U << i;
      if (!plane.is_flat()) curved |= 1U << i;
    }
    const unsigned full = (1U << drafts.size()) - 1;
    while (!open.empty()) {
      const Key key = open.top().second;
      open.pop();
      if (!closed.insert(key).second) continue;
      const auto& [done, starts, last, lay] = key;
      const Reached here = reached.at(key);
      if (done == full) {
        // What is told quickly, and what is told nearer: neither may be more than the cost.
        KnownTurns known(problem_);
        LeastCost least(known, drafts, OrderOf::flats_first);
        bound_over_ = std::max(bound_over_, least.total() - here.cost);
        least.work_out();
        bound_over_ = std::max(bound_over_, least.total() - here.cost);
        const double left = thickest_left(here.wood, problem_.section.target).height;
        const double over = std::max(0.0, left - problem_.options.tolerance);
        if (over < over_ - 1e-4 || (over < over_ + 1e-4 && here.cost < effort_)) {
          over_ = over;
          effort_ = here.cost;
          best_ = drafts;
          ill_ = here.ill;
        }
        return;
      }
      std::vector<const Draft*> before;
      for (std::size_t i = 0; i < drafts.size(); ++i) {
        if ((done >> i & 1) != 0) before.push_back(&drafts[i]);
      }
      for (std::size_t i = 0; i < drafts.size(); ++i) {
        if ((done >> i & 1) != 0 || ((curved >> i & 1) != 0 && (done & flat) != flat)) continue;
        for (Step step : stand(problem_, drafts[i], before, here.wood)) {
          for (const Lies lies : kWaysToLie) {
            if (!step.may_lie.has(lies)) continue;
            settle(problem_, step, last < 0 ? nullptr : &here.step, lies);
            std::vector<int> at = starts;
            at[i] = static_cast<int>(std::lround(step.draft.poses.front().tilt * 1e4));
            Key next{done | 1U << i, at, static_cast<int>(i), lies};
            const double cost = here.cost + step.effort;
            const auto known = reached.find(next);
            if (known != reached.end() && known->second.cost <= cost) continue;
            Wood wood = here.wood;
            cut_all(problem_, {step.draft}, wood);
            reached.insert_or_assign(next, Reached{cost, wood, step, here.ill || step.ill_laid});
            open.push({cost, next});
          }
        }
      }
    }
  }

  const Problem& problem_;
  const long most_sets_;
  const Drafts flats_;
  std::vector<std::vector<Drafts>> arcs_;
  Drafts pool_;
  std::vector<Drafts> pairs_;
  Drafts best_;  // of the least effort
  bool ill_ = false;
  bool trenches_ = false;
  long sets_ = 0;
  double bound_over_ = -std::numeric_limits<double>::infinity();
  double over_ = std::numeric_limits<double>::infinity();
  double effort_ = std::numeric_limits<double>::infinity();
};

}  // namespace arrisline::test
