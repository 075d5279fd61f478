// Reasons in a maker's words. What would help is found by remedies.cpp. Shown by tests/plan/reasons_test.cpp.
#include "plan/reasons.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "plan/access.h"
#include "plan/stuck.h"
#include "plan/why_arc.h"
#include "plan/wood.h"
#include "wording/figures.h"

namespace arrisline {

namespace {

/// How the outline turns at this end of the edge.
struct Corner {
  bool inner = false;  // wood stands on both sides of it
  bool sharp = false;  // and leaves less than a square between
};
Corner corner(const Section& section, int edge, bool at_end) {
  const std::size_t n = section.target.size();
  const auto i = static_cast<std::size_t>(edge);
  const Point in = direction_at(section.target[at_end ? i : (i + n - 1) % n], 1);
  const Point out = direction_at(section.target[at_end ? (i + 1) % n : i], 0);
  const bool inner = cross(in, out) < -1e-6 || dot(in, out) < -1 + 1e-9;
  return {inner, inner && dot(in, out) < -1e-6};
}

int neighbour(const Section& section, int edge, bool after) {
  const auto n = static_cast<int>(section.target.size());
  return (edge + (after ? 1 : n - 1)) % n;
}

/// Both neighbours, the one that stands first in the profile before the other.
std::array<int, 2> neighbours(const Section& section, int edge) {
  std::array<int, 2> out = {neighbour(section, edge, false), neighbour(section, edge, true)};
  if (comes_before(section, out[1], out[0])) std::swap(out[0], out[1]);
  return out;
}

bool between_walls(const Section& section, int edge) {
  return corner(section, edge, true).inner && corner(section, edge, false).inner;
}

/// The floor of the groove of which this flat is a wall, where that lets nothing in either.
std::optional<int> floor_beside(const Problem& problem, int surface, const std::vector<int>& failing) {
  for (const int beside : neighbours(problem.section, surface_of(problem, surface).edge)) {
    const bool fails = std::any_of(failing.begin(), failing.end(), [&](int f) {
      const Surface& other = surface_of(problem, f);
      return other.edge == beside && !other.arc && between_walls(problem.section, beside);
    });
    if (fails) return beside;
  }
  return std::nullopt;
}

/// The narrowest flat sole; of those that may work aslant, where `slanting`.
const Plane* narrowest_flat(const Kit& kit, bool slanting = false) {
  const Plane* out = nullptr;
  for (const Plane& plane : kit.planes) {
    if (!plane.is_flat() || (slanting && plane.kind == PlaneKind::plough)) continue;
    if (out == nullptr || plane.width < out->width) out = &plane;
  }
  return out;
}

/// The kit's own access with one of its planes made otherwise.
bool would_reach(const Problem& problem, int surface, const Plane& plane, const Access& own) {
  Kit one;
  one.planes = {plane};
  const Problem with = make_problem(problem.section, one, problem.options);
  const std::vector<int> left = out_of_reach(with, both(own, access(with)));
  return std::find(left.begin(), left.end(), surface) == left.end();
}

/// The widest rebate plane, in mm and narrower than `most`, that would do; 0 where not even a thin one does.
double widest_that_enters(const Problem& problem, int surface, double most, const Access& own) {
  Plane plane;
  double low = 0.5;
  plane.width = low;
  if (most <= low || !would_reach(problem, surface, plane, own)) return 0;
  double high = most;
  while (high - low > 0.01) {
    plane.width = (low + high) / 2;
    (would_reach(problem, surface, plane, own) ? low : high) = plane.width;
  }
  return low;
}

std::string why_no_flat(const Problem& problem, int surface, const Access& own,
                        const std::vector<int>& failing) {
  const Section& section = problem.section;
  const Surface& flat = surface_of(problem, surface);
  const Unit unit = problem.options.unit;
  const double len = length(problem.edge(flat));
  if (narrowest_flat(problem.kit) == nullptr) return "the kit has no plane with a flat sole";
  const Plane* narrowest = narrowest_flat(problem.kit, !is_square(flat.tilt));
  if (narrowest == nullptr)
    return "it slants, and the kit has no rebate plane; a plough works square to a side only";
  if (const std::optional<int> floor = floor_beside(problem, surface, failing))
    return "it is a wall of the groove with " + named(section, *floor) + " for its floor";
  if (between_walls(section, flat.edge) && len < narrowest->width - 1e-6) {
    const auto [one, other] = neighbours(section, flat.edge);
    const bool alike = named(section, one) == named(section, other);
    // Its narrowest sole of all may be a plough's.
    const bool leaning = narrowest != narrowest_flat(problem.kit);
    const auto [wide, sole] = about_each(len, narrowest->width, unit);
    return "a flat " + wide + " wide between " +
           (alike ? "its two walls" : named(section, one) + " and " + named(section, other)) +
           " lets in no flat sole of the kit" + (leaning ? " that can lean" : "") + ", the narrowest being " +
           sole;
  }
  for (const Plane& plane : problem.kit.planes) {
    if (plane.kind != PlaneKind::plough) continue;
    Plane other = plane;
    other.reach = other.deep = 1e6;
    if (!would_reach(problem, surface, other, own)) continue;
    other.reach = plane.reach;
    if (would_reach(problem, surface, other, own))
      return plane.label + " fits, but it lies deeper than the " + about(plane.deep, unit) +
             " that the plough goes";
    return plane.label + " fits, but its fence reaches no farther than " + about(plane.reach, unit);
  }
  for (const Plane& plane : problem.kit.planes) {
    if (!plane.is_flat() || !plane.body) continue;
    Plane other = plane;
    other.body.reset();
    if (would_reach(problem, surface, other, own))
      return "the body of " + plane.label + ", wider than its sole, meets wood that must stay";
  }
  double most = narrowest->width;
  for (const Plane& plane : problem.kit.planes) {
    if (plane.kind == PlaneKind::rebate) most = std::max(most, plane.width);
  }
  const double enters = widest_that_enters(problem, surface, most, own);
  if (enters > 0)
    return "the wood that must stay beside it lets in a flat sole " + about(enters, unit) +
           " wide at most; the narrowest of the kit is " + about(narrowest->width, unit);
  for (const int beside : neighbours(section, flat.edge)) {
    if (corner(section, flat.edge, beside == neighbour(section, flat.edge, true)).sharp)
      return "its corner with " + named(section, beside) +
             " is sharper than square, and no flat sole or side gets into it";
  }
  Plane thin;
  thin.width = std::min(len, 1.0);
  const std::optional<Obstacle> over =
      obstacle(section, thin, {{point_at(problem.edge(flat), 0.5), flat.tilt}});
  if (over)
    return named(section, over->edge) + " lies over it, and no flat sole or side comes at it another way";
  return "no flat sole or side gets at the whole of it, whichever way it comes in";
}

Reason reason_at(const Problem& problem, int surface, std::string why) {
  Reason reason;
  reason.element = element_of(problem, surface);
  reason.why = std::move(why);
  return reason;
}

std::optional<std::string> kept_out_of(const Problem& problem, int surface) {
  return surface_of(problem, surface).arc ? what_keeps_out(problem, surface) : std::nullopt;
}

Reason too_thick(const Problem& problem, const Sequence& best) {
  Reason reason;
  const Unit unit = problem.options.unit;
  double nearest = 1e300;
  int surface = -1;
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    const double d = distance(best.left.at, problem.edge(problem.surfaces[i]));
    if (d >= nearest) continue;
    nearest = d;
    surface = static_cast<int>(i);
  }
  const bool too_much = best.left.height > most_left(problem);
  if (too_much) reason.leaves = best.left.height;
  const auto [left, allowed] = too_much ? told_apart(best.left.height, most_left(problem), unit)
                                        : std::pair(thickness(best.left.height, unit), std::string());
  reason.why = "the best found leaves " + left + " of wood above the finished line, and " +
               (too_much ? allowed + " is allowed" : "as a fin too narrow to be scraped");
  if (surface < 0) return reason;
  reason.element = element_of(problem, surface);
  const Surface& s = surface_of(problem, surface);
  if (!s.arc) return reason;
  const double r = radius(problem.edge(s));
  for (const Step& step : best.steps) {
    if (step.draft.arc != surface) continue;
    const Plane& plane = problem.plane(step.draft.plane);
    if (plane.is_flat()) {
      reason.why = plane.label + " cuts it in flats; " + reason.why;
    } else if (plane.is_curved() && std::abs(plane.radius - r) > kFits) {
      reason.why = plane.label + " is not of its radius, " + about(r, unit) + "; " + reason.why;
    } else if (const std::optional<std::string> kept_out = kept_out_of(problem, surface)) {
      reason.why = *kept_out + "; " + reason.why;
    }
    break;
  }
  return reason;
}

std::string why_stuck(const Problem& problem, const Stuck& stuck) {
  const Plane& plane = problem.plane(stuck.plane);
  switch (stuck.cause) {
    case Stuck::Cause::rides:
      return narrowest_flat(problem.kit) == nullptr
                 ? "the kit has no plane with a flat sole to leave two arrises for " + plane.label +
                       " to ride on"
                 : "no flat cut found leaves two arrises for " + plane.label + " to ride on";
    case Stuck::Cause::body:
      return "the body of " + plane.label + ", wider than its sole, meets wood that still stands";
    case Stuck::Cause::turning:
      return plane.label + " would have to work from two sides of the blank in one cut";
    case Stuck::Cause::held:
      return "the blank is not held by a stop: none can stand in the wood and clear below " + plane.label;
    case Stuck::Cause::other:
      break;
  }
  return "no order of the cuts found lets " + plane.label + " finish it";
}

/// Of the arcs that one curve is drawn as and that share its name, this one.
std::string which_arc(const Problem& problem, int surface) {
  const Surface& arc = surface_of(problem, surface);
  const auto shares_name = [&](const Surface& other) {
    return other.arc && other.edge != arc.edge &&
           named(problem.section, other.edge) == named(problem.section, arc.edge);
  };
  if (!arc.arc || std::none_of(problem.surfaces.begin(), problem.surfaces.end(), shares_name)) return "";
  return "at its arc of radius " + about(radius(problem.edge(arc)), problem.options.unit) + ", ";
}

/// Of the whole, or of a part by itself. `thinnest`: of the orders found that leave too much, if any.
std::vector<Reason> reasons_for(const Problem& problem, const std::optional<Sequence>& thinnest) {
  std::vector<Reason> out;
  const Access own = access(problem);
  std::vector<int> failing = out_of_reach(problem, own);
  // The floor of a groove is the cause of what is said of its walls.
  const std::vector<int> all = failing;
  std::stable_partition(failing.begin(), failing.end(),
                        [&](int s) { return surface_of(problem, s).arc || !floor_beside(problem, s, all); });
  for (const int s : failing) {
    const bool arc = surface_of(problem, s).arc;
    out.push_back(
        reason_at(problem, s, arc ? why_no_plane(problem, s) : why_no_flat(problem, s, own, failing)));
  }
  if (out.empty() && thinnest) out.push_back(too_thick(problem, *thinnest));
  if (out.empty()) {
    std::vector<int> named_already;
    for (const Stuck& stuck : stuck_cuts(problem)) {
      for (const int s : stuck.surfaces) {
        const int element = element_of(problem, s);
        if (std::find(named_already.begin(), named_already.end(), element) != named_already.end()) continue;
        named_already.push_back(element);
        std::optional<std::string> unfit = kept_out_of(problem, s);
        if (!unfit && surface_of(problem, s).arc) unfit = what_bears_on_edges(problem, s, stuck.plane);
        out.push_back(reason_at(
            problem, s, which_arc(problem, s) + (unfit ? *unfit + "; " : "") + why_stuck(problem, stuck)));
      }
    }
  }
  if (out.empty()) {
    for (int s = 0; s < static_cast<int>(problem.surfaces.size()); ++s) {
      if (const std::optional<std::string> kept_out = kept_out_of(problem, s))
        out.push_back(
            reason_at(problem, s, which_arc(problem, s) + *kept_out + ", and no plan was found without it"));
    }
  }
  if (out.empty()) {
    Reason reason;
    reason.why =
        "each part can be made by itself, but no order of the cuts was found that leaves every plane "
        "something to ride on";
    if (problem.kit.board) reason.why += " and the blank held by a stop";
    out.push_back(reason);
  }
  return out;
}

}  // namespace

std::vector<Reason> explain(const Problem& problem, const Composition& composition) {
  if (composition.unmade.empty()) return reasons_for(problem, composition.too_thick);
  std::vector<Reason> out;
  for (const Unmade& unmade : composition.unmade) {
    const std::vector<Reason> more =
        reasons_for(make_problem(unmade.part, problem.kit, problem.options), unmade.too_thick);
    out.insert(out.end(), more.begin(), more.end());
  }
  return out;
}

}  // namespace arrisline
