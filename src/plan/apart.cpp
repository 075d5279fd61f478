// Shown by tests/plan/apart_test.cpp.
#include "plan/apart.h"

#include <algorithm>
#include <chrono>
#include <optional>

#include "plan/compose.h"
#include "section/walk.h"

namespace arrisline {

namespace {

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

std::vector<Draft> planned_apart(const Problem& problem) {
  const std::vector<Section> parts = parts_of(problem.section);
  if (parts.size() < 2) return {};
  PlanOptions options = problem.options;
  constexpr double kShare = 2.0 / 3;  // of the limit, for all parts together
  const double shares = static_cast<double>(parts.size()) / kShare;
  options.since = std::nullopt;
  options.limit /= shares;
  options.most_work = static_cast<std::uint64_t>(static_cast<double>(options.most_work) / shares);
  if (options.progress) {
    using Clock = std::chrono::steady_clock;
    options.progress = [&problem, began = problem.options.since.value_or(Clock::now())](double) {
      problem.options.progress(std::chrono::duration<double>(Clock::now() - began).count());
    };
  }
  std::vector<Draft> out;
  for (const Section& section : parts) {
    const Problem part = make_problem(section, problem.kit, options);
    const Composition found = compose(part);
    if (!found.best) return {};
    for (const Step& step : found.best->steps) {
      Draft draft = step.draft;
      if (!tell_surfaces(part, problem, draft)) return {};
      out.push_back(std::move(draft));
    }
  }
  return out;
}

}  // namespace arrisline
