// A whole job, stage by stage. Shown by tests/job/plan_job_test.cpp.
#include <tbb/parallel_for.h>

#include <algorithm>
#include <atomic>
#include <mutex>

#include "arrisline/job_plan.h"
#include "job/buying.h"
#include "job/ripping.h"
#include "job/runs.h"

namespace arrisline {
namespace {

/// A profile that nothing but the board's stops keeps from being cut at its own width may yet be stuck on the
/// wider blank: how it is held there is seen strip by strip.
Plan plan_run(const Section& section, const Kit& kit, const PlanOptions& of_job) {
  PlanOptions options = from_now(of_job);
  Plan plan = make_plan(section, kit, options);
  if (plan.feasible) return plan;
  if (kit.board) {
    Kit without_board = kit;
    without_board.board.reset();
    // The first search may have used up its time; where the stops are the trouble the second is soon done.
    options = from_now(of_job);
    Plan unheld = make_plan(section, without_board, options);
    if (unheld.feasible) return unheld;
  }
  find_remedies(plan, kit, options);
  return plan;
}

/// From the ripped width to the widest blank that serves; a strip that is ripped first has its own width
/// only.
std::optional<double> narrowest_for(const Job& job, const Run& run) {
  if (!job.kit.board || !run.plan.feasible) return std::nullopt;
  double widest = run.plan.section.width;
  if (!run.ripped_first) {
    for (const std::size_t mould : run.moulds)
      for (const std::size_t stock : stocks_for(job, job.moulds[mould]))
        widest = std::max(widest, job.stocks[stock].width);
  }
  return narrowest_held(run.plan, run.plan.section.width, widest, *job.kit.board);
}

/// Every run's plan, as many at once as there are cores; each comes out as it would alone.
void plan_runs(const Job& job, const JobOptions& options, std::vector<Run>& runs) {
  PlanOptions each = options.plan;
  each.progress = nullptr;  // one profile's seconds say nothing while others are planned beside it
  std::mutex telling;
  std::size_t done = 0;
  tbb::parallel_for(std::size_t{0}, runs.size(), [&](std::size_t r) {
    runs[r].plan = plan_run(runs[r].plan.section, job.kit, each);
    runs[r].ripped_first = needs_back_edge(runs[r].plan);
    runs[r].narrowest = narrowest_for(job, runs[r]);
    const std::lock_guard<std::mutex> lock(telling);
    if (options.progress) options.progress(++done, runs.size());
  });
}

WorkOrder order_runs(const std::vector<Run>& runs) {
  std::vector<const Plan*> plans;
  std::vector<std::size_t> which;
  for (std::size_t r = 0; r < runs.size(); ++r) {
    if (!runs[r].plan.feasible) continue;
    plans.push_back(&runs[r].plan);
    which.push_back(r);
  }
  WorkOrder order = order_work(plans);
  for (WorkStep& step : order.steps) step.run = which[step.run];
  return order;
}

Estimate estimate_of(const Job& job, const JobPlan& plan) {
  Estimate out;
  for (const BlankWork& blank : plan.blanks) {
    const double length = job.stocks[blank.stock].length;
    for (const RipStep& strip : blank.strips) {
      const Plan& stuck = plan.runs[strip.run].plan;
      out.metres += length / 1000;
      if (!stuck.feasible) continue;
      for (const Cut& cut : stuck.cuts) out.strokes += cut.strokes;
      out.shavings_litres += stuck.waste_area * length / 1e6;
    }
  }
  if (job.kit.shop.strokes_per_minute > 0) out.minutes = out.strokes / job.kit.shop.strokes_per_minute;
  return out;
}

std::vector<Shortage> shortages_of(const Job& job, const JobPlan& plan) {
  std::vector<Shortage> out;
  for (std::size_t r = 0; r < plan.runs.size(); ++r) {
    const Run& run = plan.runs[r];
    if (!run.plan.feasible) {
      out.push_back(
          {run.plan.undecided ? Shortage::Kind::undecided : Shortage::Kind::planes, r, std::nullopt, 0});
      continue;
    }
    // A strip that is stuck after it is ripped has no more wood to be held by than its own width.
    if (run.ripped_first && job.moulds[run.moulds.front()].width < job.ripping.hold - kSameWidth)
      out.push_back({Shortage::Kind::too_narrow, r, std::nullopt, 0});
    const bool unheld = std::any_of(plan.blanks.begin(), plan.blanks.end(), [&](const BlankWork& blank) {
      return std::any_of(blank.strips.begin(), blank.strips.end(),
                         [&](const RipStep& strip) { return strip.run == r && !all_held(strip.stops); });
    });
    if (unheld) out.push_back({Shortage::Kind::holding, r, std::nullopt, 0});
  }
  for (std::size_t s = 0; s < job.stocks.size(); ++s) {
    if (plan.cutting.missing[s] > 0)
      out.push_back({Shortage::Kind::blanks, std::nullopt, s, plan.cutting.missing[s]});
  }
  return out;
}

}  // namespace

JobPlan plan_job(const Job& job, const JobOptions& options) {
  JobPlan out;
  out.runs = runs_of(job);
  plan_runs(job, options, out.runs);
  out.order = order_runs(out.runs);
  const BlankLayout layout = lay_out_blanks(job, out.runs);
  out.cutting = cut_boards(layout.problem, {options.plan.limit, options.plan.interrupt});
  out.blanks = work_blanks(job, out.runs, layout, out.cutting);
  out.mitres = mitres_of(job);
  out.movements = movements_of(job);
  out.estimate = estimate_of(job, out);
  out.shortages = shortages_of(job, out);
  out.buying = planes_to_buy(job, out.runs, options.plan);
  return out;
}

}  // namespace arrisline
