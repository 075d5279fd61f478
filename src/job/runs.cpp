// Shown by tests/job/plan_job_test.cpp.
#include "job/runs.h"

#include <algorithm>

namespace arrisline {

std::vector<Run> runs_of(const Job& job) {
  std::vector<Run> out;
  for (std::size_t i = 0; i < job.moulds.size(); ++i) {
    const Mould& mould = job.moulds[i];
    const auto same = std::find_if(out.begin(), out.end(), [&](const Run& run) {
      return same_strip(job.moulds[run.moulds.front()], mould);
    });
    if (same == out.end()) {
      out.emplace_back();
      out.back().plan.section = mould.section;
      out.back().moulds.push_back(i);
    } else {
      same->moulds.push_back(i);
    }
  }
  return out;
}

std::vector<std::size_t> stocks_for(const Job& job, const Mould& mould) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < job.stocks.size(); ++i)
    if (serves(job.stocks[i], mould, job)) out.push_back(i);
  return out;
}

std::vector<std::string> species_for(const Job& job, const Mould& mould) {
  if (!mould.species.empty()) return {mould.species};
  std::vector<std::string> out;
  for (const std::size_t stock : stocks_for(job, mould)) {
    const std::string& species = job.stocks[stock].species;
    if (!species.empty() && std::find(out.begin(), out.end(), species) == out.end()) out.push_back(species);
  }
  return out;
}

bool needs_back_edge(const Plan& plan) {
  const bool back_cut = std::any_of(plan.cuts.begin(), plan.cuts.end(), [](const Cut& cut) {
    return back_edge_free(cut.lies) ||
           std::any_of(cut.lines.begin(), cut.lines.end(),
                       [](const GaugeLine& line) { return line.from == Side::back; });
  });
  // Wood that goes at the back edge itself: the strip would not part from the blank where it should.
  const double width = plan.section.width;
  const bool back_work =
      std::any_of(plan.section.target.begin(), plan.section.target.end(), [&](const Edge& edge) {
        const auto index = static_cast<std::size_t>(&edge - plan.section.target.data());
        return plan.section.source[index] >= 0 && std::max(edge.from.x, edge.to.x) > width - 1e-6;
      });
  return back_cut || back_work;
}

}  // namespace arrisline
