// Mitres, estimate, movement and what falls short on the sheet of a job. Shown by
// tests/report/job_sheet_test.cpp.
#include <algorithm>
#include <cmath>

#include "arrisline/job_report.h"
#include "report/cut_words.h"
#include "report/figures.h"
#include "report/job_words.h"
#include "report/reasons.h"

namespace arrisline {
namespace {

bool flat(const Mitre& mitre) {
  return mitre.spring > 90 - 1e-9;
}
bool standing(const Mitre& mitre) {
  return mitre.spring < 1e-9;
}

std::string saw_words(const Mitre& mitre, const Mould& mould) {
  const std::string in_box = degrees(90 - mitre.corner / 2);
  if (flat(mitre))
    return "lying flat on its back, the saw swung " + degrees(mitre.mitre) +
           " off square and upright; the long point is on the " +
           (mould.inside ? "back edge" : "working edge");
  const std::string longest = mould.inside ? "back" : "face";
  if (standing(mitre))
    return "standing in the box with its back to the fence, the saw swung " + in_box +
           " off square and upright; or lying flat on its back, the saw square and leaned " +
           degrees(mitre.bevel) + "; the long point is on the " + longest;
  return "lying flat on its back, the saw swung " + degrees(mitre.mitre) + " off square and leaned " +
         degrees(mitre.bevel) + "; or held in the box at its spring, bottom up, the saw swung " + in_box +
         " and upright; the long point is on the " + longest;
}

/// A span that does not promise more than strokes by the minute can: from three quarters of it to one and a
/// half, in whole five minutes. The project's own choice.
std::string time_words(double minutes) {
  const auto fives = [](double m) { return std::max(5.0, 5 * std::round(m / 5)); };
  const double low = fives(0.75 * minutes);
  const double high = std::max(low + 5, fives(1.5 * minutes));
  if (high < 120) return plain(low, 0) + " to " + plain(high, 0) + " minutes";
  const auto halves = [](double m) { return std::round(m / 30) / 2; };
  return plain(halves(low), 1) + " to " + plain(std::max(halves(low) + 0.5, halves(high)), 1) + " hours";
}

std::string round_figure(double value) {
  if (value < 10) return plain(value, 1);
  return plain(std::round(value), 0);
}

void write_shortage(Page& page, const Job& job, const JobPlan& plan, const Shortage& shortage,
                    const ReportOptions& options) {
  switch (shortage.kind) {
    case Shortage::Kind::blanks:
      page.line(2, "Blanks: " + std::to_string(shortage.count) + " more of " +
                       stock_words(job.stocks[*shortage.stock], job.unit) + ".");
      return;
    case Shortage::Kind::holding:
      page.line(
          2, "Holding: " + run_words(job, plan.runs[*shortage.run]) +
                 " cannot be held on every strip it is to come from; leave it on a wider blank, or set other "
                 "stops.");
      return;
    case Shortage::Kind::too_narrow:
      page.line(2, "Holding: " + run_words(job, plan.runs[*shortage.run]) +
                       ": the strip is ripped off before it is stuck, and is then " +
                       exact(plan.runs[*shortage.run].plan.section.width, job.unit) +
                       " wide, less than the " + exact(job.ripping.hold, job.unit) +
                       " that 'rip hold' asks for; a smaller 'hold' allows it, if you can hold that.");
      return;
    case Shortage::Kind::undecided:
      page.line(2, "Planes: for " + run_words(job, plan.runs[*shortage.run]) +
                       " the search reached its limit before it found a plan; --limit gives it longer.");
      return;
    case Shortage::Kind::planes:
      page.line(2, "Planes: this kit cannot cut " + run_words(job, plan.runs[*shortage.run]) + ".");
      write_reasons(page, plan.runs[*shortage.run].plan, options);
      return;
  }
}

}  // namespace

void write_mitres(Page& page, const Job& job, const JobPlan& plan) {
  if (plan.mitres.empty()) return;
  page.heading("Mitres");
  for (std::size_t i = 0; i < plan.mitres.size();) {
    const Mitre& mitre = plan.mitres[i];
    const Mould& mould = job.moulds[mitre.mould];
    const bool both = mould.mitre == Ends::both;
    page.line(2, shorten(mould.name, 40) + ", " +
                     (both         ? "both ends"
                      : mitre.left ? "left end"
                                   : "right end") +
                     ", corner " + degrees(mitre.corner) + ": " + saw_words(mitre, mould) + ".");
    page.line(
        4, "Long " + exact(mould.length, job.unit) + ", short " + about(mitre.short_point, job.unit) + ".");
    i += both ? 2 : 1;
  }
}

void write_estimate(Page& page, const Job& job, const JobPlan& plan) {
  const Estimate& estimate = plan.estimate;
  page.heading("Estimate");
  std::string words = "About " + round_figure(estimate.metres) + " m of strips to stick, " +
                      round_figure(estimate.strokes) + " strokes the length of a strip";
  if (estimate.minutes > 0)
    words += ", " + time_words(estimate.minutes) + " of planing at " +
             plain(job.kit.shop.strokes_per_minute, 1) + " strokes a minute";
  page.line(2, words + ".");
  page.line(2, "About " + round_figure(estimate.shavings_litres) +
                   (round_figure(estimate.shavings_litres) == "1" ? " litre" : " litres") +
                   " of wood planed away, more as shavings.");
}

void write_movements(Page& page, const Job& job, const JobPlan& plan) {
  if (plan.movements.empty()) return;
  page.heading("Wood movement");
  for (const Movement& movement : plan.movements) {
    page.line(2, shorten(job.moulds[movement.mould].name, 40) + " is fixed across the grain of a side " +
                     exact(movement.across, job.unit) + " wide: of " + shorten(movement.species, 40) +
                     " it moves about " + thickness(movement.radial, job.unit) + " quarter-sawn and " +
                     thickness(movement.tangential, job.unit) + " flat-sawn between " +
                     plain(job.moisture->driest, 1) + " and " + plain(job.moisture->dampest, 1) +
                     " % moisture. Fix it so that the side can move.");
  }
}

void write_shortages(Page& page, const Job& job, const JobPlan& plan, const ReportOptions& options) {
  if (plan.shortages.empty()) return;
  page.heading("What falls short");
  for (const Shortage& shortage : plan.shortages) write_shortage(page, job, plan, shortage, options);
  if (plan.buying.planes.empty()) return;
  page.heading("The fewest planes to add");
  for (std::size_t i = 0; i < plan.buying.planes.size(); ++i) {
    std::vector<std::string> names;
    for (const std::size_t r : plan.buying.unlocks[i]) names.push_back(run_words(job, plan.runs[r]));
    page.line(2, shorten(plan.buying.planes[i].label, 60) + ", for " + listed(names) + ".");
  }
  if (!plan.buying.complete) page.line(2, "With these some profiles still cannot be cut.");
}

}  // namespace arrisline
