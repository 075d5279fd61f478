// What would make a "no" a "yes". Cheap tests (which surfaces each candidate gets at) say what is worth
// trying; only a plan made with the change counts. The number of plans is fixed beforehand, by the size of
// the task; the clock only ends the search where a limit counts from before. Shown by
// tests/plan/remedies_test.cpp.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <limits>

#include "arrisline/limits.h"
#include "arrisline/plan.h"
#include "plan/access.h"
#include "plan/candidates.h"
#include "plan/patience.h"
#include "plan/uncut.h"
#include "plan/wood.h"
#include "section/redraw.h"
#include "wording/figures.h"

namespace arrisline {

namespace {

constexpr std::size_t kMostAdded = 4;      // planes; who lacks more lacks a kit
constexpr double kMostTolerance = 1.5875;  // 1/16 in: beyond it a moulding is no longer the one drawn
constexpr double kMostOfSize = 0.25;  // of the smallest size drawn: beyond it that is lost in what is left
constexpr int kLeastRadii = 3;        // radii tried for one arc, nearest drawing first
constexpr int kBisection = 9;         // plans: enough to find one figure in 63
constexpr std::uint64_t kWork = 1200000;      // pieces of wood cut: about a second
constexpr std::uint64_t kLeastWork = 300000;  // that each plan may cost

/// What may still be spent on one kind of remedy: so many plans and, once a few are made, so much work.
struct Budget {
  int plans = 0;
  int sure = 2;  // plans made whatever they cost
  std::uint64_t work = 0;

  bool spent() const { return plans <= 0 || (sure <= 0 && work == 0); }
};

class Remedies {
 public:
  Remedies(Plan& plan, const Kit& kit, const PlanOptions& options)
      : plan_(plan),
        kit_(kit),
        options_(options),
        problem_(make_problem(plan.section, kit_, options_)),
        own_(access(problem_)),
        failing_(out_of_reach(problem_, own_)),
        for_all_(unbounded(options)),
        clock_(for_all_) {}

  void find() {
    if (problem_.surfaces.empty() || problem_.surfaces.size() > kMaxSurfaces) return;
    find_planes();
    find_radius();
    find_tolerance(false);
    if (kit_.scraper) find_tolerance(true);
    drop_harmless();
    name_nearest();
    plan_.remedies_left_off = left_off_;
  }

 private:
  /// For the whole of the search: the budgets bound its work, and the limit its time only where that counts
  /// from before.
  static PlanOptions unbounded(PlanOptions options) {
    options.most_work = std::numeric_limits<std::uint64_t>::max();
    if (!options.since) options.limit = std::numeric_limits<double>::infinity();
    return options;
  }

  std::optional<Plan> plan_with(const Section& section, const Kit& kit, const PlanOptions& options,
                                Budget& budget) {
    if (budget.spent()) return std::nullopt;
    if (clock_.over()) {
      left_off_ = true;
      return std::nullopt;
    }
    PlanOptions any = options;
    any.any = true;
    any.most_work = std::max(kLeastWork, budget.work);
    const std::uint64_t before = wood_work();
    Plan plan = make_plan(section, kit, any);
    const std::uint64_t work = wood_work() - before;
    budget.work -= std::min(budget.work, work);
    --budget.plans;
    --budget.sure;
    left_off_ = left_off_ || (plan.undecided && clock_.over());
    return plan;
  }

  // Planes to add.

  Kit with(const std::vector<Plane>& added) const {
    Kit out = kit_;
    for (const Plane& plane : added) {
      if (plane.kind == PlaneKind::scraper) {
        out.scraper = true;
      } else {
        out.planes.push_back(plane);
      }
    }
    return out;
  }

  /// The surfaces out of reach that this plane gets at, a bit for each of failing_.
  std::uint64_t gets_at(const Plane& plane) const {
    if (plane.kind == PlaneKind::scraper) return 0;
    Kit one;
    one.planes = {plane};
    const Problem with_it = make_problem(problem_.section, one, options_);
    const std::vector<int> left = out_of_reach(with_it, both(own_, access(with_it)));
    std::uint64_t out = 0;
    for (std::size_t i = 0; i < failing_.size(); ++i) {
      if (std::find(left.begin(), left.end(), failing_[i]) == left.end()) out |= std::uint64_t{1} << i;
    }
    return out;
  }

  /// Plans with the planes added. True, and the remedy kept, where that serves; else why not, in `reasons`.
  bool try_planes(const std::vector<Plane>& added, Budget& budget, std::vector<Reason>& reasons) {
    const std::optional<Plan> plan = plan_with(plan_.section, with(added), options_, budget);
    if (!plan) return false;
    reasons = plan->reasons;
    if (!plan->feasible) return false;
    Remedy remedy;
    remedy.add = added;
    plan_.remedies.push_back(std::move(remedy));
    return true;
  }

  /// Sets of the candidates, of one size, that between them get at all that any of them does, likeliest
  /// first.
  std::vector<std::vector<std::size_t>> covers(const std::vector<std::uint64_t>& gets,
                                               std::size_t size) const {
    // A corner that no plane gets into may yet be left within the tolerance.
    std::uint64_t all = 0;
    for (const std::uint64_t one : gets) all |= one;
    std::vector<std::vector<std::size_t>> out;
    std::vector<std::size_t> chosen;
    int visits = 0;
    const std::function<void(std::size_t, std::uint64_t)> choose = [&](std::size_t from, std::uint64_t got) {
      if (++visits > kMostVisits) return;
      if (chosen.size() == size) {
        if (got == all) out.push_back(chosen);
        return;
      }
      for (std::size_t i = from; i < gets.size(); ++i) {
        if ((gets[i] & ~got) == 0) continue;
        chosen.push_back(i);
        choose(i + 1, got | gets[i]);
        chosen.pop_back();
      }
    };
    choose(0, 0);
    // Candidates come likeliest first, so a low sum of their places is a likely set.
    auto sum = [](const std::vector<std::size_t>& set) {
      std::size_t total = 0;
      for (const std::size_t i : set) total += i;
      return total;
    };
    std::stable_sort(out.begin(), out.end(), [&](const auto& a, const auto& b) { return sum(a) < sum(b); });
    return out;
  }

  /// What may help where everything is got at and the plan fails all the same. A reason for the whole may lie
  /// in any arc that is cut with a plane of another radius.
  std::vector<Plane> helpers(const std::vector<Reason>& reasons, const std::vector<Plane>& added) const {
    const Kit kit = with(added);
    std::vector<int> surfaces;
    for (const Reason& reason : reasons) {
      for (int i = 0; i < static_cast<int>(problem_.surfaces.size()); ++i) {
        if (reason.element < 0 || element_of(problem_, i) == reason.element) surfaces.push_back(i);
      }
    }
    return helping_planes(problem_, kit, surfaces);
  }

  void find_planes() {
    Budget left{20, 2, kWork};
    // Sets that get at everything and still make no plan, with the reasons that then remain.
    struct Short {
      std::vector<Plane> added;
      std::vector<Reason> reasons;
    };
    std::vector<Short> short_of;
    std::vector<Plane> candidates;
    std::vector<std::uint64_t> gets;
    if (failing_.empty()) {
      short_of.push_back({{}, plan_.reasons});
    } else {
      for (const Plane& plane : fitting_planes(problem_, failing_)) {
        const std::uint64_t got = gets_at(plane);
        if (got == 0) continue;
        candidates.push_back(plane);
        gets.push_back(got);
      }
    }
    if (candidates.empty() && !failing_.empty()) short_of.push_back({{}, plan_.reasons});
    constexpr std::size_t kSetsOfOneSize = 6;
    constexpr std::size_t kCarriedOn = 2;
    for (std::size_t size = 1; size <= kMostAdded && !left.spent(); ++size) {
      std::vector<Short> next;
      if (!failing_.empty()) {
        std::size_t tried = 0;
        for (const std::vector<std::size_t>& set : covers(gets, size)) {
          if (++tried > kSetsOfOneSize) break;
          Short one;
          for (const std::size_t i : set) one.added.push_back(candidates[i]);
          if (try_planes(one.added, left, one.reasons)) return;
          if (left.spent()) return;
          next.push_back(std::move(one));
        }
      }
      for (const Short& before : short_of) {
        for (const Plane& plane : helpers(before.reasons, before.added)) {
          Short one;
          one.added = before.added;
          one.added.push_back(plane);
          if (try_planes(one.added, left, one.reasons)) return;
          if (left.spent()) return;
          next.push_back(std::move(one));
        }
      }
      if (next.size() > kCarriedOn) next.resize(kCarriedOn);
      short_of = std::move(next);
    }
  }

  // Another radius for the drawing.

  /// Arcs of one radius in one statement: they are drawn with one figure.
  struct Group {
    std::vector<int> elements;
    bool bead = false, cove = false;
    double drawn = 0;
  };

  std::vector<Group> groups() const {
    std::vector<Group> out;
    const std::vector<Element>& elements = problem_.section.elements;
    auto same_figure = [&](const Surface& a, const Surface& b) {
      const Element& one = elements[static_cast<std::size_t>(element_of(problem_, a))];
      const Element& two = elements[static_cast<std::size_t>(element_of(problem_, b))];
      // Two chains may both have an element of that number: a statement has one line.
      return one.number == two.number && one.chain == two.chain && one.line == two.line &&
             std::abs(radius(problem_.edge(a)) - radius(problem_.edge(b))) < 1e-6;
    };
    for (const Reason& reason : plan_.reasons) {
      for (const Surface& s : problem_.surfaces) {
        if (!s.arc || element_of(problem_, s) != reason.element) continue;
        const bool known = std::any_of(out.begin(), out.end(), [&](const Group& g) {
          return std::find(g.elements.begin(), g.elements.end(), element_of(problem_, s)) != g.elements.end();
        });
        if (known) continue;
        Group group;
        group.drawn = radius(problem_.edge(s));
        for (const Surface& other : problem_.surfaces) {
          if (!other.arc || !same_figure(s, other)) continue;
          group.elements.push_back(element_of(problem_, other));
          (other.bead ? group.bead : group.cove) = true;
        }
        out.push_back(std::move(group));
      }
    }
    return out;
  }

  struct Choice {
    double radius = 0;
    double departure = 0;
  };

  /// Radii of the kit's own planes for the group, the least departure first.
  std::vector<Choice> radii(const Group& group) const {
    std::vector<Choice> out;
    for (const Plane& plane : kit_.planes) {
      const bool serves =
          (group.bead && plane.kind == PlaneKind::hollow) || (group.cove && plane.kind == PlaneKind::round);
      if (!serves || std::abs(plane.radius - group.drawn) < kSameLength) continue;
      const bool known = std::any_of(out.begin(), out.end(), [&](const Choice& c) {
        return std::abs(c.radius - plane.radius) < kSameLength;
      });
      if (known) continue;
      const std::optional<Section> drawn = with_radius(plan_.section, group.elements, plane.radius);
      if (drawn) out.push_back({plane.radius, largest_departure(plan_.section, *drawn)});
    }
    std::sort(out.begin(), out.end(), [](const Choice& a, const Choice& b) {
      return a.departure != b.departure ? a.departure < b.departure : a.radius < b.radius;
    });
    return out;
  }

  void find_radius() {
    Budget left{8, 1, kWork / 2};
    const std::vector<Group> arcs = groups();
    if (arcs.empty() || arcs.size() > 4) return;
    std::vector<std::vector<Choice>> choices;
    for (const Group& group : arcs) {
      choices.push_back(radii(group));
      if (choices.back().empty()) return;
      if (arcs.size() > 1 && choices.back().size() > kLeastRadii) choices.back().resize(kLeastRadii);
    }
    // Every way to give each group one of its radii, by the largest departure.
    std::vector<std::vector<std::size_t>> ways = {{}};
    for (const std::vector<Choice>& of_group : choices) {
      std::vector<std::vector<std::size_t>> longer;
      for (const std::vector<std::size_t>& way : ways) {
        for (std::size_t i = 0; i < of_group.size(); ++i) {
          longer.push_back(way);
          longer.back().push_back(i);
        }
      }
      ways = std::move(longer);
    }
    auto departure = [&](const std::vector<std::size_t>& way) {
      double most = 0;
      for (std::size_t g = 0; g < way.size(); ++g) most = std::max(most, choices[g][way[g]].departure);
      return most;
    };
    std::stable_sort(ways.begin(), ways.end(),
                     [&](const auto& a, const auto& b) { return departure(a) < departure(b); });
    for (const std::vector<std::size_t>& way : ways) {
      Remedy remedy;
      std::optional<Section> drawn = plan_.section;
      for (std::size_t g = 0; g < way.size() && drawn; ++g) {
        const double r = choices[g][way[g]].radius;
        drawn = with_radius(*drawn, arcs[g].elements, r);
        for (const int element : arcs[g].elements) remedy.redraw.push_back({element, r});
      }
      if (!drawn) continue;
      const Problem redrawn = make_problem(*drawn, kit_, options_);
      const std::vector<int> left_out = out_of_reach(redrawn, access(redrawn));
      if (std::any_of(left_out.begin(), left_out.end(),
                      [&](int i) { return redrawn.surfaces[static_cast<std::size_t>(i)].arc; }))
        continue;
      const std::optional<Plan> plan = plan_with(*drawn, kit_, options_, left);
      if (!plan) return;
      if (!plan->feasible) continue;
      remedy.departure = largest_departure(plan_.section, *drawn);
      plan_.remedies.push_back(std::move(remedy));
      return;
    }
  }

  // More left above the finished line.

  void find_tolerance(bool scraped) {
    Budget left{kBisection, 2, kWork / 2};
    const double step = options_.unit == Unit::inch ? kMmPerInch / 1000 : 0.01;
    auto options_at = [&](int steps) {
      PlanOptions options = options_;
      (scraped ? options.scrape : options.tolerance) = steps * step;
      return options;
    };
    // Nothing under what may be left now can serve.
    const double now = kit_.scraper ? std::max(options_.tolerance, options_.scrape) : options_.tolerance;
    int fails = static_cast<int>(std::floor(now / step + 1e-9));
    const double worth = std::min(kMostTolerance, kMostOfSize * least_size(problem_));
    const int most = static_cast<int>(std::floor(worth / step + 1e-9));
    if (fails >= most) return;
    int serves = most;
    std::optional<Plan> plan;
    auto narrow = [&](int to) {
      std::optional<Plan> made = plan_with(plan_.section, kit_, options_at(to), left);
      if (!made) return false;
      // Not to cut a part at all is no way to make it.
      if (made->feasible && !leaves_uncut(problem_, *made)) {
        serves = to;
        plan = std::move(made);
      } else {
        fails = to;
      }
      return true;
    };
    // What a scraper takes is as a rule what a tolerance would have to allow.
    for (const Remedy& remedy : plan_.remedies) {
      if (scraped && remedy.tolerance) narrow(static_cast<int>(std::lround(*remedy.tolerance / step)));
    }
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
    plan_.remedies.push_back(std::move(remedy));
  }

  /// Takes away the reasons for flats that a verified plan leaves as they are: too little stays on them to
  /// matter.
  void drop_harmless() {
    for (const Remedy& remedy : plan_.remedies) {
      if (remedy.add.empty()) continue;
      const Kit kit = with(remedy.add);
      const Problem problem = make_problem(plan_.section, kit, options_);
      const std::vector<int> still = out_of_reach(problem, access(problem));
      auto harmless = [&](const Reason& reason) {
        return std::any_of(still.begin(), still.end(),
                           [&](int s) { return element_of(problem_, s) == reason.element; });
      };
      std::vector<Reason> kept;
      for (const Reason& reason : plan_.reasons) {
        if (!harmless(reason)) kept.push_back(reason);
      }
      if (!kept.empty()) plan_.reasons = std::move(kept);
    }
  }

  // The share of each reason.

  void name_nearest() {
    for (Reason& reason : plan_.reasons) {
      reason.nearest.reset();
      for (const Remedy& remedy : plan_.remedies) {
        if (!remedy.add.empty()) {
          const Plane& plane = for_element(remedy.add, reason.element);
          Reason::Nearest nearest;
          nearest.kind = plane.kind;
          nearest.radius = plane.radius;
          nearest.width = plane.width;
          nearest.number = plane.number;
          reason.nearest = nearest;
          break;
        }
        for (const Remedy::Redrawn& redrawn : remedy.redraw) {
          if (redrawn.element != reason.element) continue;
          Reason::Nearest nearest;
          nearest.radius = redrawn.radius;
          reason.nearest = nearest;
        }
        if (reason.nearest) break;
      }
    }
  }

  /// The plane of those added that gets at the element, else the first.
  const Plane& for_element(const std::vector<Plane>& added, int element) const {
    for (std::size_t i = 0; i < failing_.size() && added.size() > 1; ++i) {
      if (element_of(problem_, failing_[i]) != element) continue;
      for (const Plane& plane : added) {
        if ((gets_at(plane) >> i & 1) != 0) return plane;
      }
    }
    return added.front();
  }

  static constexpr int kMostVisits = 200000;

  Plan& plan_;
  const Kit& kit_;
  const PlanOptions& options_;
  Problem problem_;  // refers to plan_.section
  Access own_;
  std::vector<int> failing_;  // surfaces that nothing in the kit gets at
  const PlanOptions for_all_;
  Patience clock_;
  bool left_off_ = false;
};

}  // namespace

void find_remedies(Plan& plan, const Kit& kit, const PlanOptions& options) {
  plan.remedies.clear();
  plan.remedies_left_off = false;
  if (plan.feasible || plan.undecided) return;
  Remedies(plan, kit, options).find();
}

}  // namespace arrisline
