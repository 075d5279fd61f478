// From the job to strips and lengths, and back to the bench. Shown by tests/job/plan_job_test.cpp.
#include "job/ripping.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

#include "job/runs.h"

namespace arrisline {
namespace {

/// Widths closer than this are one, mm: far below any saw, far above the noise of the arithmetic.
constexpr double kSamePlace = 1e-6;

/// How many times the mitred pieces of a run go together: two cornices with four returns are two sets.
int sets_of(const Job& job, const Run& run) {
  int sets = 0;
  for (const std::size_t i : run.moulds)
    if (job.moulds[i].mitre != Ends::none) sets = std::gcd(sets, job.moulds[i].count);
  return sets;
}

}  // namespace

BlankLayout lay_out_blanks(const Job& job, const std::vector<Run>& runs) {
  BlankLayout out;
  for (const Stock& stock : job.stocks)
    out.problem.sizes.push_back({stock.width, stock.length, stock.count, stock.to_buy});
  out.problem.rules = {job.saw.kerf, job.ripping.kerf, job.ripping.trued, job.ripping.hold};
  int meeting = 0;
  for (std::size_t r = 0; r < runs.size(); ++r) {
    const Run& run = runs[r];
    std::vector<std::size_t> stocks;
    for (const std::size_t i : run.moulds)
      for (const std::size_t stock : stocks_for(job, job.moulds[i]))
        if (std::find(stocks.begin(), stocks.end(), stock) == stocks.end()) stocks.push_back(stock);
    std::sort(stocks.begin(), stocks.end());
    out.problem.kinds.push_back({job.moulds[run.moulds.front()].width, stocks});
    const int sets = sets_of(job, run);
    // Those that meet stand as they do on the piece of furniture: what is mitred on the right end alone is
    // the leftmost.
    std::vector<std::size_t> moulds = run.moulds;
    std::stable_sort(moulds.begin(), moulds.end(), [&](std::size_t a, std::size_t b) {
      const auto place = [&](std::size_t i) {
        return job.moulds[i].mitre == Ends::right ? 0 : job.moulds[i].mitre == Ends::left ? 2 : 1;
      };
      return place(a) < place(b);
    });
    for (const std::size_t i : moulds) {
      const Mould& mould = job.moulds[i];
      const double length = mould.length + 2 * job.saw.allowance;
      const bool meets = mould.mitre != Ends::none;
      for (int set = 0; set < (meets ? sets : 1); ++set) {
        out.problem.pieces.push_back(
            {r, length, meets ? mould.count / sets : mould.count, meets ? meeting + set : -1});
        out.mould_of.push_back(i);
      }
    }
    meeting += sets;
    if (!job.spare) continue;
    out.problem.pieces.push_back({r, job.spare->length, job.spare->count, -1});
    out.mould_of.push_back(kSparePiece);
  }
  return out;
}

std::vector<BlankWork> work_blanks(const Job& job, const std::vector<Run>& runs, const BlankLayout& layout,
                                   const CuttingPlan& cutting) {
  std::vector<BlankWork> out;
  std::vector<int> here(job.stocks.size());  // boards of each stock that are not missing
  for (std::size_t s = 0; s < here.size(); ++s) {
    here[s] = static_cast<int>(std::count_if(cutting.boards.begin(), cutting.boards.end(),
                                             [s](const CutBoard& board) { return board.size == s; })) -
              cutting.missing[s];
  }
  // Blanks that are worked alike have the same stops.
  std::map<std::pair<std::size_t, double>, std::vector<StopSetting>> stops;
  for (const CutBoard& board : cutting.boards) {
    const Stock& stock = job.stocks[board.size];
    BlankWork blank;
    blank.stock = board.size;
    blank.missing = here[board.size]-- <= 0;
    double width = stock.width;
    for (const CutStrip& strip : board.strips) {
      const Run& run = runs[strip.kind];
      const double ripped = job.moulds[run.moulds.front()].width;
      RipStep step;
      step.run = strip.kind;
      step.width_before = width;
      step.ripped = width - ripped > kSamePlace;
      step.width_after = std::max(0.0, width - ripped - job.ripping.kerf - job.ripping.trued);
      if (step.width_after < kSamePlace) step.width_after = 0;
      double used = 0;
      for (const std::size_t piece : strip.pieces) {
        step.pieces.push_back(layout.mould_of[piece]);
        used += layout.problem.pieces[piece].length;
      }
      const auto cuts = static_cast<double>(strip.pieces.size()) - 1;
      step.left_over = std::max(0.0, stock.length - used - cuts * job.saw.kerf);
      if (job.kit.board && run.plan.feasible) {
        const double stuck_on = run.ripped_first ? ripped : width;
        auto& setting = stops[{strip.kind, stuck_on}];
        if (setting.empty()) setting = stop_settings(run.plan, stuck_on, *job.kit.board);
        step.stops = setting;
      }
      width = step.width_after;
      blank.strips.push_back(std::move(step));
    }
    out.push_back(std::move(blank));
  }
  return out;
}

}  // namespace arrisline
