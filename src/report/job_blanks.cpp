// Mouldings and blanks on the sheet of a job. Shown by tests/report/job_sheet_test.cpp.
#include <algorithm>
#include <cmath>

#include "report/cut_words.h"
#include "report/figures.h"
#include "report/job_words.h"

namespace arrisline {
namespace {

std::string ends_words(const Mould& mould) {
  const std::string turn = mould.inside ? ", inside corners" : ", outside corners";
  switch (mould.mitre) {
    case Ends::none:
      return "square ends";
    case Ends::left:
      return "left end mitred" + turn;
    case Ends::right:
      return "right end mitred" + turn;
    case Ends::both:
      return "both ends mitred" + turn;
  }
  return "";
}

/// "44 in", "2 of 9 1/2 in": pieces alike one after the other told as one.
std::string pieces_words(const Job& job, const RipStep& step) {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < step.pieces.size();) {
    std::size_t end = i;
    while (end < step.pieces.size() && step.pieces[end] == step.pieces[i]) ++end;
    const bool spare = step.pieces[i] == kSparePiece;
    const double length = spare ? job.spare->length : job.moulds[step.pieces[i]].length;
    std::string words = end - i > 1 ? std::to_string(end - i) + " of " : "";
    words += exact(length, job.unit);
    words += spare ? " to set up by" : " (" + shorten(job.moulds[step.pieces[i]].name, 40) + ")";
    out.push_back(words);
    i = end;
  }
  return listed(out);
}

std::string left_over(double mm, const Job& job) {
  const double division = gauge_division(job.kit.shop, job.unit);
  const double whole = std::floor(mm / division + kSameLength) * division;
  return whole <= 0 ? "nothing over" : exact(whole, job.unit) + " over";
}

std::string strip_words(const Job& job, const JobPlan& plan, const RipStep& step) {
  const Run& run = plan.runs[step.run];
  const std::string width = exact(job.moulds[run.moulds.front()].width, job.unit);
  std::string out;
  if (run.ripped_first) {
    out = step.ripped ? "Rip off " + width + ", then stick" : "Stick";
  } else {
    out = "Stick";
  }
  out += " " + run_words(job, run);
  if (!run.ripped_first && step.ripped) out += ", rip off " + width;
  if (!step.ripped) out += ", " + width + " wide as it is";
  out += ". Saw it into " + pieces_words(job, step) + "; " + left_over(step.left_over, job) + ".";
  return out;
}

bool alike(const BlankWork& a, const BlankWork& b) {
  return a.stock == b.stock && a.missing == b.missing &&
         std::equal(
             a.strips.begin(), a.strips.end(), b.strips.begin(), b.strips.end(),
             [](const RipStep& x, const RipStep& y) { return x.run == y.run && x.pieces == y.pieces; });
}

void write_blank(Page& page, const Job& job, const JobPlan& plan, std::size_t first, std::size_t last) {
  const BlankWork& blank = plan.blanks[first];
  std::string name = "Blank " + std::to_string(first + 1);
  if (last > first) name = "Blanks " + std::to_string(first + 1) + " to " + std::to_string(last + 1);
  const Stock& stock = job.stocks[blank.stock];
  page.line(2, name + (last > first ? ", each " : ": ") + stock_words(stock, job.unit) +
                   (blank.missing  ? "; not on hand"
                    : stock.to_buy ? "; to buy"
                                   : "") +
                   ".");
  for (std::size_t i = 0; i < blank.strips.size(); ++i) {
    const RipStep& step = blank.strips[i];
    page.item(4, number_lead(i + 1), strip_words(job, plan, step));
    if (step.width_after > 0)
      page.line(8, "The blank is now " + about(step.width_after, job.unit) + " wide" +
                       (job.ripping.trued > 0 ? ", its new edge trued." : "."));
  }
}

}  // namespace

std::string stock_words(const Stock& stock, Unit unit) {
  return (stock.species.empty() ? "" : shorten(stock.species, 60) + ", ") + exact(stock.thickness, unit) +
         " thick, " + exact(stock.width, unit) + " wide, " + exact(stock.length, unit) + " long";
}

std::string run_words(const Job& job, const Run& run) {
  std::vector<std::string> names;
  for (const std::size_t i : run.moulds) names.push_back(shorten(job.moulds[i].name, 40));
  return listed(names);
}

void write_mouldings(Page& page, const Job& job, const JobPlan& plan) {
  page.heading("Mouldings");
  for (std::size_t i = 0; i < job.moulds.size(); ++i) {
    const Mould& mould = job.moulds[i];
    page.line(2, shorten(mould.name, 40) + ": " +
                     counted(static_cast<std::size_t>(mould.count), "piece", "pieces") + " of " +
                     shorten(mould.section.name, 60) + ", " + exact(mould.length, job.unit) + " long, " +
                     exact(mould.width, job.unit) + " wide, " + ends_words(mould) + ".");
  }
  if (job.spare)
    page.line(2, "To set up by: " + counted(static_cast<std::size_t>(job.spare->count), "length", "lengths") +
                     " of " + exact(job.spare->length, job.unit) + " of each profile (" +
                     counted(plan.runs.size(), "profile", "profiles") + ").");
}

void write_blanks(Page& page, const Job& job, const JobPlan& plan) {
  page.heading("Blanks, strip by strip");
  const std::size_t needed = plan.blanks.size();
  std::string least = ", the fewest possible";
  if (!plan.cutting.optimal)
    least = needed == plan.cutting.bound
                ? ", the fewest possible"
                : "; the search was left off, and it may be done with " + std::to_string(plan.cutting.bound);
  page.line(
      2, counted(needed, "blank", "blanks") + least + ". Each cut takes " + exact(job.saw.kerf, job.unit) +
             (job.saw.allowance > 0
                  ? ", and " + exact(job.saw.allowance, job.unit) + " is left at each end to plane to length."
                  : "."));
  for (std::size_t i = 0; i < plan.blanks.size();) {
    std::size_t last = i;
    while (last + 1 < plan.blanks.size() && alike(plan.blanks[last + 1], plan.blanks[i])) ++last;
    page.blank();
    write_blank(page, job, plan, i, last);
    i = last + 1;
  }
}

}  // namespace arrisline
