// Another radius for the drawing: one that the kit has. Shown by tests/plan/remedies_test.cpp.
#include <algorithm>
#include <cmath>

#include "plan/trials.h"
#include "section/redraw.h"
#include "wording/figures.h"

namespace arrisline {

namespace {

constexpr int kLeastRadii = 3;  // radii tried for one arc, nearest drawing first

/// Of how far an arc rises over its chord: redrawn by more it is another shape.
constexpr double kMostOfRise = 0.5;

/// Arcs of one radius in one statement: they are drawn with one figure.
struct Group {
  std::vector<int> elements;
  bool bead = false, cove = false;
  double drawn = 0;
  double rise = 0;  // of the arc that rises least over its chord
};

double rise_of(const Edge& arc) {
  return radius(arc) * (1 - std::cos(sweep(arc) / 2));
}

std::vector<Group> groups(const Trials& trials) {
  std::vector<Group> out;
  const std::vector<Element>& elements = trials.problem.section.elements;
  auto same_figure = [&](const Surface& a, const Surface& b) {
    const Element& one = elements[static_cast<std::size_t>(element_of(trials.problem, a))];
    const Element& two = elements[static_cast<std::size_t>(element_of(trials.problem, b))];
    // Two chains may both have an element of that number: a statement has one line.
    return one.number == two.number && one.chain == two.chain && one.line == two.line &&
           std::abs(radius(trials.problem.edge(a)) - radius(trials.problem.edge(b))) < 1e-6;
  };
  for (const Reason& reason : trials.plan.reasons) {
    for (const Surface& s : trials.problem.surfaces) {
      if (!s.arc || element_of(trials.problem, s) != reason.element) continue;
      const bool known = std::any_of(out.begin(), out.end(), [&](const Group& g) {
        return std::find(g.elements.begin(), g.elements.end(), element_of(trials.problem, s)) !=
               g.elements.end();
      });
      if (known) continue;
      Group group;
      group.drawn = radius(trials.problem.edge(s));
      for (const Surface& other : trials.problem.surfaces) {
        if (!other.arc || !same_figure(s, other)) continue;
        group.elements.push_back(element_of(trials.problem, other));
        const double rise = rise_of(trials.problem.edge(other));
        if (group.rise == 0 || rise < group.rise) group.rise = rise;
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
std::vector<Choice> radii(const Trials& trials, const Group& group) {
  std::vector<Choice> out;
  for (const Plane& plane : trials.kit.planes) {
    const bool serves =
        (group.bead && plane.kind == PlaneKind::hollow) || (group.cove && plane.kind == PlaneKind::round);
    if (!serves || std::abs(plane.radius - group.drawn) < kSameLength) continue;
    const bool known = std::any_of(out.begin(), out.end(), [&](const Choice& c) {
      return std::abs(c.radius - plane.radius) < kSameLength;
    });
    if (known) continue;
    const std::optional<Section> drawn = with_radius(trials.plan.section, group.elements, plane.radius);
    if (!drawn) continue;
    const double departure = largest_departure(trials.plan.section, *drawn);
    if (departure <= kMostOfRise * group.rise) out.push_back({plane.radius, departure});
  }
  std::sort(out.begin(), out.end(), [](const Choice& a, const Choice& b) {
    return a.departure != b.departure ? a.departure < b.departure : a.radius < b.radius;
  });
  return out;
}

}  // namespace

void find_radius(Trials& trials) {
  Budget left{8, 1, kRemedyWork / 2};
  const std::vector<Group> arcs = groups(trials);
  if (arcs.empty() || arcs.size() > 4) return;
  std::vector<std::vector<Choice>> choices;
  for (const Group& group : arcs) {
    choices.push_back(radii(trials, group));
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
    std::optional<Section> drawn = trials.plan.section;
    for (std::size_t g = 0; g < way.size() && drawn; ++g) {
      const double r = choices[g][way[g]].radius;
      drawn = with_radius(*drawn, arcs[g].elements, r);
      for (const int element : arcs[g].elements) remedy.redraw.push_back({element, r});
    }
    if (!drawn) continue;
    const Problem redrawn = make_problem(*drawn, trials.kit, trials.options);
    const std::vector<int> left_out = out_of_reach(redrawn, access(redrawn));
    if (std::any_of(left_out.begin(), left_out.end(),
                    [&](int i) { return redrawn.surfaces[static_cast<std::size_t>(i)].arc; }))
      continue;
    const std::optional<Plan> plan = trials.plan_with(*drawn, trials.kit, trials.options, left);
    if (!plan) return;
    if (!plan->feasible) continue;
    remedy.departure = largest_departure(trials.plan.section, *drawn);
    trials.plan.remedies.push_back(std::move(remedy));
    return;
  }
}

}  // namespace arrisline
