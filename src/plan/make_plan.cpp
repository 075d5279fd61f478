// The planner's stages in order: what has to be cut, the choice of cuts, their figures as the maker sets
// them, and the reasons where there is no plan. Shown by tests/plan/plan_test.cpp.
#include <algorithm>
#include <cmath>

#include "arrisline/limits.h"
#include "arrisline/plan.h"
#include "plan/as_set.h"
#include "plan/compose.h"
#include "plan/gouge.h"
#include "plan/holding.h"
#include "plan/reasons.h"
#include "plan/rest.h"

namespace arrisline {

const char* word(Lies lies) {
  switch (lies) {
    case Lies::face_up:
      return "face up";
    case Lies::underside_up:
    case Lies::rolled_over:
      return "underside up";
    case Lies::end_for_end:
      return "end for end";
  }
  return "";
}

bool is_underside_up(Lies lies) {
  return lies == Lies::underside_up || lies == Lies::rolled_over;
}

bool back_edge_free(Lies lies) {
  return lies == Lies::end_for_end || lies == Lies::rolled_over;
}

Planed planed(Lies lies) {
  // Turned about the upright or end over end, the stick has its other end foremost.
  return lies == Lies::face_up || lies == Lies::rolled_over ? Planed::along : Planed::against;
}

const char* word(Planed planed) {
  return planed == Planed::along ? "along the arrow" : "against the arrow";
}

namespace {

std::vector<int> elements_of(const Problem& problem, const Draft& draft) {
  std::vector<int> out;
  if (draft.arc >= 0) out = elements_of(problem, surface_of(problem, draft.arc));
  for (const Stretch& s : draft.finishes) out.push_back(element_of(problem, s.surface));
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

std::string made_for(const Problem& problem, const std::vector<int>& elements) {
  if (elements.empty()) return "waste";
  std::string out = elements.size() == 1 ? "element " : "elements ";
  for (std::size_t i = 0; i < elements.size(); ++i) {
    const Element& element = problem.section.elements[static_cast<std::size_t>(elements[i])];
    if (i > 0) out += i + 1 == elements.size() ? " and " : ", ";
    out += std::to_string(element.number);
    if (element.chain != Chain::face) out += std::string(" (") + word(element.chain) + ")";
  }
  return out;
}

/// Where the outermost contacts of the curved steps lie on the wood, with the step that rides there.
struct Rail {
  std::size_t step;
  Point at;
};

std::vector<Rail> rails_of(const Problem& problem, const Sequence& sequence) {
  std::vector<Rail> out;
  Wood wood(problem.blank);
  for (std::size_t k = 0; k < sequence.steps.size(); ++k) {
    const Step& step = sequence.steps[k];
    if (step.rides == Rides::two_arrises) {
      const Plane& plane = problem.plane(step.draft.plane);
      const Sweep sole(plane, step.draft.poses.front());
      const double height = rest_height(wood.edges(), sole);
      for (const double u : {step.guidance.left, step.guidance.right})
        out.push_back({k, from_sole_frame(sole.pose(), {u, height + sole_height(plane, u)})});
    }
    cut_all(problem, {step.draft}, wood);
  }
  return out;
}

/// The first later step that rides on an arris this flat step lays: a contact lies on its boundary.
std::optional<std::size_t> lays_rail_for(const Problem& problem, const Sequence& sequence,
                                         const std::vector<Rail>& rails, std::size_t flat) {
  const Draft& draft = sequence.steps[flat].draft;
  for (const Rail& rail : rails) {
    if (rail.step <= flat) continue;
    for (const Pose& pose : draft.poses) {
      if (std::abs(Sweep(problem.plane(draft.plane), pose).depth(rail.at)) < 2 * kTouch) return rail.step;
    }
  }
  return std::nullopt;
}

/// The last step before this flat one that rode on an arris which this one takes away.
std::optional<std::size_t> takes_rail_of(const Problem& problem, const Sequence& sequence,
                                         const std::vector<Rail>& rails, std::size_t flat) {
  const Draft& draft = sequence.steps[flat].draft;
  std::optional<std::size_t> out;
  for (const Rail& rail : rails) {
    if (rail.step >= flat) break;
    for (const Pose& pose : draft.poses) {
      if (Sweep(problem.plane(draft.plane), pose).depth(rail.at) >= 2 * kTouch) out = rail.step;
    }
  }
  return out;
}

/// Whether a part of the sole stands beyond the side of the blank that bears on the board.
bool passes_below(const Problem& problem, const Plane& plane, const Pose& pose, Lies lies) {
  for (const Edge& edge : sole_edges(plane, pose)) {
    const double below = is_underside_up(lies) ? -std::min(edge.from.y, edge.to.y)
                                               : std::max(edge.from.y, edge.to.y) - problem.section.thickness;
    if (below > 1e-6) return true;
  }
  return false;
}

std::string reason_for(const Problem& problem, const Sequence& sequence, std::size_t i,
                       const std::vector<Rail>& rails, const std::optional<std::size_t>& rail_for) {
  const Step& step = sequence.steps[i];
  const Plane& plane = problem.plane(step.draft.plane);
  if (step.rides == Rides::own_arc) return "its own arc, cut before, guides it now";
  if (plane.is_curved()) return "its two arrises stand ready";
  if (plane.kind == PlaneKind::shaped) return "its fence guides it, and it makes its part in one setting";
  if (step.draft.arc >= 0) return "no curved plane of the kit serves there, and the shop allows facets";
  std::string out;
  if (rail_for) out = "leaves an arris for cut " + std::to_string(*rail_for + 1) + " to ride on";
  if (!step.draft.finishes.empty()) {
    const auto begin = sequence.steps.begin(), at = begin + static_cast<std::ptrdiff_t>(i);
    const bool curve_before = std::any_of(
        begin, at, [&](const Step& earlier) { return problem.plane(earlier.draft.plane).is_curved(); });
    const auto rail_of = takes_rail_of(problem, sequence, rails, i);
    const bool turned = i > 0 && sequence.steps[i - 1].lies != step.lies;
    const std::string does = !curve_before ? "finishes its flats before the curves"
                             : rail_of     ? "finishes its flats up to the curve of cut " +
                                             std::to_string(*rail_of + 1) + ", which needs no arris there now"
                             : turned ? "finishes its flats, now that the blank is turned for them"
                                      : "finishes its flats";
    out = out.empty() ? does : out + ", " + does;
  }
  if (out.empty()) out = "takes waste with a flat sole before a curved one";
  return out;
}

void fill_set(const Problem& problem, Plan& plan) {
  // Rounded rails may differ by a division in height: the plane then settles on both, leaning a hair.
  const Divisions rounding = divisions(problem.kit, problem.options);
  Wood wood(problem.blank);
  for (Cut& cut : plan.cuts) {
    if (cut.plane.kind == PlaneKind::scraper) continue;
    if (cut.rides == Rides::two_arrises) {
      const Guidance guided =
          guidance(touch(wood.edges(), Sweep(cut.plane, cut.set.front()), rounding.fine), cut.plane);
      cut.imbalance_set = guided.two_arrises ? guided.imbalance : 0.5;
    }
    for (const Pose& pose : cut.set) {
      const Sweep sweep(cut.plane, pose);
      wood.cut(sweep);
      plan.left.as_set_deepest_gouge =
          std::max(plan.left.as_set_deepest_gouge, gouge_depth(problem.section.target, sweep));
    }
  }
  plan.left.as_set_max_height = thickest_left(wood, problem.section.target).height;
}

/// The effort by the kit's own weights, whatever was preferred.
double standard_effort(const Problem& problem, const Sequence& sequence) {
  const Weights weights = weights_for(problem.kit.shop, Prefer::least_effort);
  double effort = 0;
  const Step* previous = nullptr;
  for (const Step& step : sequence.steps) {
    effort += effort_of(weights, step, previous);
    previous = &step;
  }
  return effort;
}

/// mm that the cuts may leave, or do where that is more.
double allowed(const Problem& problem, const Sequence& sequence) {
  const bool scraped = sequence.left.height > problem.options.tolerance && problem.kit.scraper;
  return std::max(scraped ? problem.options.scrape : problem.options.tolerance, sequence.left.height);
}

void fill(const Problem& problem, Sequence sequence, Plan& plan) {
  const Divisions rounding = divisions(problem.kit, problem.options);
  const std::vector<Rail> rails = rails_of(problem, sequence);
  claim_flats(problem, allowed(problem, sequence), sequence);
  std::vector<LaidOut> lines;
  std::vector<std::optional<std::size_t>> rail_for;
  for (std::size_t i = 0; i < sequence.steps.size(); ++i) {
    const Step& step = sequence.steps[i];
    const bool flat = problem.plane(step.draft.plane).is_flat();
    rail_for.push_back(flat ? lays_rail_for(problem, sequence, rails, i) : std::nullopt);
    lines.push_back(step.laid_out);
    for (GaugeLine& line : lines.back().lines) line.fine = rail_for.back().has_value();
  }
  // A plan that is looked for only to see whether there is one is set by nobody.
  if (!problem.options.any) set_fine_enough(problem, sequence, allowed(problem, sequence), lines);
  Wood wood(problem.blank);
  for (std::size_t i = 0; i < sequence.steps.size(); ++i) {
    const Step& step = sequence.steps[i];
    Cut cut;
    cut.number = static_cast<int>(i) + 1;
    cut.plane = problem.plane(step.draft.plane);
    cut.elements = elements_of(problem, step.draft);
    cut.made_for = made_for(problem, cut.elements);
    cut.poses = step.draft.poses;
    cut.rides = step.rides;
    cut.imbalance = step.guidance.imbalance;
    cut.lies = step.lies;
    cut.settings = step.settings;
    cut.strokes = step.strokes.plain;
    cut.set =
        cut.plane.is_flat() ? set_to_lines(problem, cut.plane, cut.poses, lines[i], rounding) : cut.poses;
    cut.lines = lines[i].lines;
    cut.reason = reason_for(problem, sequence, i, rails, rail_for[i]);
    if (step.draft.arc >= 0 && cut.plane.is_flat()) plan.facets = problem.kit.shop.facets;
    for (const Pose& pose : cut.poses) {
      cut.removed += wood.cut(Sweep(problem.plane(step.draft.plane), pose));
      cut.overhang = cut.overhang || passes_below(problem, cut.plane, pose, cut.lies);
    }
    if (cut.plane.is_flat()) plan.waste_by_flat += cut.removed;
    plan.cuts.push_back(std::move(cut));
  }
  const Thickest left = thickest_left(wood, problem.section.target);
  plan.left.max_height = left.height;
  plan.left.area = std::max(0.0, wood.area() - area(problem.section.target));
  if (left.height > 1e-3) {
    double nearest = 1e300;
    for (const Surface& s : problem.surfaces) {
      const double d = distance(left.at, problem.edge(s));
      if (d >= nearest) continue;
      nearest = d;
      plan.left.where = describe(
          problem.section
              .elements[static_cast<std::size_t>(problem.section.source[static_cast<std::size_t>(s.edge)])]);
    }
  }
  plan.effort = standard_effort(problem, sequence);
  if (left.height > problem.options.tolerance && problem.kit.scraper) {
    Cut scrape;
    scrape.number = static_cast<int>(plan.cuts.size()) + 1;
    scrape.plane.kind = PlaneKind::scraper;
    scrape.plane.label = "scraper";
    scrape.made_for = "waste";
    scrape.rides = Rides::by_hand;
    scrape.removed = plan.left.area;
    scrape.reason = "takes the facets that the planes leave";
    scrape.lies = plan.cuts.empty() ? Lies::face_up : plan.cuts.back().lies;
    plan.left.scrape = true;
    plan.effort += problem.kit.shop.weight_cut + problem.kit.shop.weight_change;
    plan.cuts.push_back(std::move(scrape));
  }
  fill_set(problem, plan);
}

/// Where the kit has a plan but for its board: which of that plan's cuts no stop holds the blank for.
std::optional<Reason> only_unheld(const Problem& problem) {
  Kit unbound = problem.kit;
  unbound.board.reset();
  const Composition unchecked = compose(make_problem(problem.section, unbound, problem.options));
  if (!unchecked.best) return std::nullopt;
  Wood wood(problem.blank);
  for (const Step& step : unchecked.best->steps) {
    const Plane& plane = problem.plane(step.draft.plane);
    for (const Pose& pose : step.draft.poses) wood.cut(Sweep(plane, pose));
    if (!held(problem, plane, step.draft.poses, wood, ways_to_lie(problem, plane, step.draft.poses)).empty())
      continue;
    Reason reason;
    const std::vector<int> made = elements_of(problem, step.draft);
    if (!made.empty()) reason.element = made.front();
    const std::size_t cuts = unchecked.best->steps.size();
    reason.why = "the blank is not held by a stop: none can stand in the wood and clear below " +
                 plane.label + "; held another way, the kit makes it in " + std::to_string(cuts) +
                 (cuts == 1 ? " cut" : " cuts");
    return reason;
  }
  return std::nullopt;
}

}  // namespace

PlanOptions from_now(PlanOptions options) {
  options.since = std::chrono::steady_clock::now();
  return options;
}

Plan make_plan(const Section& section, const Kit& kit, const PlanOptions& options) {
  const Problem problem = make_problem(section, kit, options);
  Plan plan;
  plan.section = section;
  plan.waste_area = area(problem.blank) - area(section.target);
  plan.prefer = options.prefer;
  plan.holding_checked = kit.board.has_value();
  if (problem.surfaces.empty()) {
    plan.feasible = true;
    plan.optimal = true;
    return plan;
  }
  if (problem.surfaces.size() > kMaxSurfaces) {
    plan.undecided = true;
    Reason reason;
    reason.why = "the profile has " + std::to_string(problem.surfaces.size()) +
                 " flats and arcs to cut; at most " + std::to_string(kMaxSurfaces) +
                 " are planned at once; plan it in parts, each a profile of its own";
    plan.reasons.push_back(reason);
    return plan;
  }
  const Composition composition = compose(problem);
  if (!composition.best && composition.stopped) {
    plan.undecided = true;
    Reason reason;
    reason.why =
        "the search was left off before it found a plan or made sure that there is none; give a "
        "longer --limit";
    plan.reasons.push_back(reason);
    return plan;
  }
  if (!composition.best) {
    // A plan that is looked for only to see whether there is one needs no reason.
    if (kit.board && !options.any) {
      if (std::optional<Reason> reason = only_unheld(problem)) {
        plan.reasons.push_back(*std::move(reason));
        return plan;
      }
    }
    plan.reasons = explain(problem, composition);
    return plan;
  }
  plan.feasible = true;
  fill(problem, *composition.best, plan);
  plan.optimal = composition.proved;
  if (composition.proved) {
    plan.bound = plan.effort;
  } else if (options.prefer == Prefer::least_effort) {
    plan.bound = std::min(plan.effort, composition.bound);
  } else {
    // What is preferred outweighs the rest: of the kit's own weights only the first cut is certain.
    plan.bound = std::min(plan.effort, kit.shop.weight_cut + kit.shop.weight_change);
  }
  return plan;
}

}  // namespace arrisline
