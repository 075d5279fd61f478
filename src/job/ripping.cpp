// From the job to strips and lengths, and back to the bench. Shown by tests/job/plan_job_test.cpp.
#include "job/ripping.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>
#include <utility>

#include "job/runs.h"

namespace arrisline {
namespace {

/// How many times the mitred pieces of a run go together: two cornices with four returns are two sets.
int sets_of(const Job& job, const Run& run) {
  int sets = 0;
  for (const std::size_t i : run.moulds)
    if (job.moulds[i].mitre != Ends::none) sets = std::gcd(sets, job.moulds[i].count);
  return sets;
}

/// How the stops stand for a run on a blank so wide; the same blanks come again and again.
class Stops {
 public:
  Stops(const Job& job, const std::vector<Run>& runs) : job_(job), runs_(runs) {}

  const std::vector<StopSetting>& of(std::size_t run, double blank_width) {
    const Run& of_run = runs_[run];
    const double stuck_on = of_run.ripped_first ? width_of(run) : blank_width;
    auto [slot, fresh] = known_.try_emplace({run, stuck_on});
    if (fresh && job_.kit.board && of_run.plan.feasible)
      slot->second = stop_settings(of_run.plan, stuck_on, *job_.kit.board);
    return slot->second;
  }
  double width_of(std::size_t run) const { return job_.moulds[runs_[run].moulds.front()].width; }

 private:
  const Job& job_;
  const std::vector<Run>& runs_;
  std::map<std::pair<std::size_t, double>, std::vector<StopSetting>> known_;
};

/// What the board has left for the next strip.
double left_of(double width, double ripped, const Ripping& ripping) {
  const double left = std::max(0.0, width - ripped - ripping.kerf - ripping.trued);
  return left < kSameWidth ? 0 : left;
}

/// How many strips are held in this order; nothing where the board is too narrow for one when its turn comes.
std::optional<int> held_in_order(const Job& job, double board_width, const std::vector<CutStrip>& strips,
                                 Stops& stops) {
  int held = 0;
  double width = board_width;
  for (const CutStrip& strip : strips) {
    if (width < std::max(stops.width_of(strip.kind), job.ripping.hold) - kSameWidth) return std::nullopt;
    held += all_held(stops.of(strip.kind, width)) ? 1 : 0;
    width = left_of(width, stops.width_of(strip.kind), job.ripping);
  }
  return held;
}

/// The strips in the order in which most of them are held: as they are cut, the widest last, or first those
/// that the stops hold only on a blank much wider than what they take. Of two such neighbours either order
/// asks for the most of what each is held on and that of the other with what the one takes: the one first
/// whose need is more above what it takes.
std::vector<CutStrip> as_stuck(const Job& job, const std::vector<Run>& runs, double board_width,
                               const std::vector<CutStrip>& strips, Stops& stops) {
  std::vector<CutStrip> needy = strips;
  const auto spare = [&](const CutStrip& strip) {
    const Run& run = runs[strip.kind];
    const double own = stops.width_of(strip.kind);
    const double held_on = run.ripped_first ? own : run.narrowest.value_or(own);
    return std::max({own, held_on, job.ripping.hold}) - own;
  };
  std::stable_sort(needy.begin(), needy.end(),
                   [&](const CutStrip& a, const CutStrip& b) { return spare(a) > spare(b); });
  const int as_cut = held_in_order(job, board_width, strips, stops).value_or(0);
  return held_in_order(job, board_width, needy, stops).value_or(-1) > as_cut ? needy : strips;
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
    std::set<std::size_t> stocks;
    for (const std::size_t i : run.moulds) {
      const std::vector<std::size_t> its = stocks_for(job, job.moulds[i]);
      stocks.insert(its.begin(), its.end());
    }
    out.problem.kinds.push_back({job.moulds[run.moulds.front()].width, {stocks.begin(), stocks.end()}});
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
        out.problem.pieces.push_back({r, length, meets ? mould.count / sets : mould.count,
                                      meets ? meeting + set : -1, stocks_for(job, mould)});
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
  Stops stops(job, runs);
  for (const CutBoard& board : cutting.boards) {
    const Stock& stock = job.stocks[board.size];
    BlankWork blank;
    blank.stock = board.size;
    blank.missing = here[board.size]-- <= 0;
    double width = stock.width;
    for (const CutStrip& strip : as_stuck(job, runs, width, board.strips, stops)) {
      const double ripped = stops.width_of(strip.kind);
      RipStep step;
      step.run = strip.kind;
      step.width_before = width;
      step.ripped = width - ripped > kSameWidth;
      step.width_after = left_of(width, ripped, job.ripping);
      double used = 0;
      for (const std::size_t piece : strip.pieces) {
        step.pieces.push_back(layout.mould_of[piece]);
        used += layout.problem.pieces[piece].length;
      }
      const auto cuts = static_cast<double>(strip.pieces.size()) - 1;
      step.left_over = std::max(0.0, stock.length - used - cuts * job.saw.kerf);
      step.stops = stops.of(strip.kind, width);
      width = step.width_after;
      blank.strips.push_back(std::move(step));
    }
    out.push_back(std::move(blank));
  }
  return out;
}

}  // namespace arrisline
