// Shown by tests/plan/apart_test.cpp.
#include "plan/apart.h"

#include <algorithm>
#include <chrono>
#include <iterator>
#include <limits>
#include <optional>
#include <utility>

#include "plan/apart_at_flat.h"
#include "plan/apart_mirrored.h"
#include "plan/compose.h"
#include "section/walk.h"

namespace arrisline {

namespace {

/// In pieces of wood, at most some tenths of a second: a section that is soon planned as a whole must not
/// wait for its sides.
constexpr std::uint64_t kMostWorkOfSide = 200'000;

/// Arcs and slanted flats on both sides of a flat together from which on the whole is not soon planned.
constexpr int kManyShaped = 4;

/// Surfaces from which on a whole is not soon planned either where all its arcs lie in one part.
constexpr std::size_t kManySurfaces = 9;

/// Where a run of edges that have to be cut begins, and how many it has.
struct Run {
  std::size_t first, count;
  int element;  // the one that comes first in the profile
};

/// In the order of the profile.
std::vector<Run> runs_of(const Section& section) {
  const std::size_t n = section.target.size();
  const auto is_cut = [&](std::size_t i) { return section.source[i % n] >= 0; };
  std::vector<Run> out;
  for (std::size_t i = 0; i < n; ++i) {
    if (!is_cut(i) || is_cut(i + n - 1)) continue;
    std::size_t count = 1;
    int element = section.source[i];
    for (; is_cut(i + count); ++count) element = std::min(element, section.source[(i + count) % n]);
    out.push_back({i, count, element});
  }
  std::sort(out.begin(), out.end(), [](const Run& a, const Run& b) { return a.element < b.element; });
  return out;
}

/// The whole problem's surface that is this one of a part.
std::optional<int> same_surface(const Problem& whole, const Surface& part) {
  for (std::size_t s = 0; s < whole.surfaces.size(); ++s) {
    const Edge& line = whole.surfaces[s].line;
    if (line.from == part.line.from && line.to == part.line.to) return static_cast<int>(s);
  }
  return std::nullopt;
}

/// The draft of a part with its surfaces told as the whole problem has them. Whether all are known there.
bool tell_surfaces(const Problem& part, const Problem& whole, Draft& draft) {
  const auto tell = [&](int& surface) {
    const std::optional<int> same = same_surface(whole, surface_of(part, surface));
    if (same) surface = *same;
    return same.has_value();
  };
  if (draft.arc >= 0 && !tell(draft.arc)) return false;
  return std::all_of(draft.finishes.begin(), draft.finishes.end(),
                     [&](Stretch& stretch) { return tell(stretch.surface); });
}

/// The whole problem's, with a part's share of the limit.
PlanOptions options_of_part(const Problem& problem, std::size_t parts) {
  constexpr double kShare = 2.0 / 3;  // of the limit, for all parts together
  const double shares = static_cast<double>(parts) / kShare;
  PlanOptions options = problem.options;
  options.since = std::nullopt;
  options.limit /= shares;
  options.most_work = static_cast<std::uint64_t>(static_cast<double>(options.most_work) / shares);
  if (options.progress) {
    using Clock = std::chrono::steady_clock;
    options.progress = [&problem, began = problem.options.since.value_or(Clock::now())](double) {
      problem.options.progress(std::chrono::duration<double>(Clock::now() - began).count());
    };
  }
  return options;
}

/// The cuts of the best plan found for a part, as drafts of the whole problem; none where there is no plan,
/// and the part with them where it is certain that there is none.
Apart plan_of(const Section& section, const Problem& whole, const PlanOptions& options) {
  const Problem part = make_problem(section, whole.kit, options);
  Composition found = compose(part);
  Apart out;
  if (!found.best) {
    if (!found.stopped) out.unmade.push_back({section, std::move(found.too_thick)});
    return out;
  }
  for (const Step& step : found.best->steps) {
    Draft draft = step.draft;
    if (!tell_surfaces(part, whole, draft)) return {};
    out.cuts.push_back(std::move(draft));
  }
  return out;
}

/// Whether some plane stands on each arc, or shaped ones may make it.
bool each_arc_has_a_way(const Problem& problem) {
  for (int s = 0; s < static_cast<int>(problem.surfaces.size()); ++s) {
    if (surface_of(problem, s).arc && arc_drafts(problem, s).empty()) return !shaped_drafts(problem).empty();
  }
  return true;
}

/// The two sides of a flat, each by its own plan, or both by that of one where the other is its mirror image:
/// then they share more of their cuts.
std::vector<Draft> planned_at_flat(const Problem& problem, int least_shaped) {
  const std::vector<Section> sides = sides_of_flat(problem, least_shaped);
  if (sides.empty() || !each_arc_has_a_way(problem)) return {};
  PlanOptions options = options_of_part(problem, sides.size());
  options.most_work = std::min(options.most_work, kMostWorkOfSide);
  const std::vector<Draft> first = plan_of(sides.front(), problem, options).cuts;
  const std::vector<Draft> second = plan_of(sides.back(), problem, options).cuts;
  std::vector<Draft> best;
  double least = 0;
  for (const auto& [a, b] :
       {std::pair{first, second}, {first, mirrored(problem, first)}, {second, mirrored(problem, second)}}) {
    if (a.empty() || b.empty()) continue;
    std::vector<Draft> both = with_floors_joined(problem, {a, b});
    const std::optional<Sequence> sequence = as_given(problem, both);
    const bool plan = sequence && sequence->left.height <= most_left(problem);
    const double cost = plan ? sequence->effort : std::numeric_limits<double>::infinity();
    if (!best.empty() && cost >= least) continue;
    least = cost;
    best = std::move(both);
  }
  return best;
}

bool has_arc(const Section& part) {
  for (std::size_t i = 0; i < part.target.size(); ++i) {
    if (part.source[i] >= 0 && part.target[i].is_arc()) return true;
  }
  return false;
}

}  // namespace

std::vector<Section> parts_of(const Section& section) {
  const std::vector<Run> runs = runs_of(section);
  const std::size_t n = section.target.size();
  std::vector<Section> out;
  for (const Run& run : runs) {
    Path outline;
    for (std::size_t i = run.first; i < run.first + run.count; ++i) {
      outline.edges.push_back(section.target[i % n]);
      outline.source.push_back(section.source[i % n]);
    }
    follow_outline(section.width, section.thickness, outline.edges.front().from, outline);
    out.push_back(section);
    out.back().target = std::move(outline.edges);
    out.back().source = std::move(outline.source);
  }
  return out;
}

Apart planned_apart(const Problem& problem) {
  const std::vector<Section> parts = parts_of(problem.section);
  if (parts.size() < 2) return {planned_at_flat(problem, kManyShaped), {}};
  const bool soon_planned =
      problem.surfaces.size() < kManySurfaces && std::count_if(parts.begin(), parts.end(), has_arc) < 2;
  if (soon_planned || !each_arc_has_a_way(problem)) return {};
  const PlanOptions options = options_of_part(problem, parts.size());
  Apart out;
  // Before the best is looked for of any, whether each has one, which is soon known.
  PlanOptions any = options;
  any.any = true;
  bool all = true;
  for (const Section& section : parts) {
    Apart part = plan_of(section, problem, any);
    all = all && !part.cuts.empty();
    std::move(part.unmade.begin(), part.unmade.end(), std::back_inserter(out.unmade));
  }
  if (!all) return out;
  for (const Section& section : parts) {
    std::vector<Draft> cuts = plan_of(section, problem, options).cuts;
    std::move(cuts.begin(), cuts.end(), std::back_inserter(out.cuts));
  }
  return out;
}

std::vector<Draft> planned_in_sides(const Problem& problem) {
  return parts_of(problem.section).size() < 2 ? planned_at_flat(problem, 2) : std::vector<Draft>{};
}

}  // namespace arrisline
