// The sheet of a job. Shown by tests/report/job_sheet_test.cpp and tests/cli.
#include "arrisline/job_report.h"
#include "report/figures.h"
#include "report/job_words.h"
#include "report/plain.h"

namespace arrisline {
namespace {

void write_cautions(Page& page) {
  page.heading("Cautions");
  page.line(
      2,
      "The irons are sharp: keep both hands behind the cutting edge, and see that the work is held before "
      "each cut.");
  page.line(
      2,
      "Saw with both hands clear of the line. A narrow strip is ripped with a push stick, or by hand; one "
      "that cannot be held is left on a wider blank.");
  page.line(
      2,
      "The tool maker's advice, your shop's rules and the law where you work come before this sheet. More: "
      "docs/care.md.");
}

}  // namespace

std::vector<Block> job_blocks(const Job& job, const JobPlan& plan, const ReportOptions& options) {
  Page page;
  page.heading("Job: " + shorten(job.name, 150));
  if (!job.kit.name.empty()) page.line(2, "Kit: " + shorten(job.kit.name, 150) + ".");
  if (!plan.shortages.empty()) page.line(2, "It cannot be done as it stands: see \"What falls short\".");
  write_mouldings(page, job, plan);
  write_blanks(page, job, plan);
  write_order(page, job, plan, options.unit);
  write_stops(page, job, plan);
  write_mitres(page, job, plan);
  write_estimate(page, job, plan);
  write_movements(page, job, plan);
  write_shortages(page, job, plan, options);
  write_cautions(page);
  return page.take();
}

std::string job_sheet(const Job& job, const JobPlan& plan, const ReportOptions& options) {
  return laid_out(job_blocks(job, plan, options), options.plain, options.colour);
}

}  // namespace arrisline
