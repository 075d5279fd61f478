// The pages of a plan, and of a job. Shown by tests/sheet/pdf_test.cpp.
#include "arrisline/sheet.h"
#include "report/job_words.h"
#include "report/listing.h"
#include "sheet/full_size_pages.h"
#include "sheet/pdf.h"
#include "sheet/step_pages.h"

namespace arrisline {
namespace {

constexpr double kWorthBeginning = 100;  // mm of a page

/// All pages of one plan; `of` comes before the names of its parts where a reader jumps to them.
void write_plan(Pages& pages, std::vector<Bookmark>& bookmarks, const std::string& of, const Plan& plan,
                const Kit& kit, const SheetOptions& options, bool sawing) {
  const Listing listing = listing_of(plan, kit, options.report, options.gauge_error);
  pages.start_page();
  bookmarks.push_back({of + "The section at full size", pages.index()});
  write_full_size(pages, plan, kit, options.report.unit, sawing);
  if (!plan.cuts.empty()) {
    pages.start_page();
    bookmarks.push_back({of + "Pictures of the cuts", pages.index()});
    write_steps(pages, plan, listing, options.report.unit);
  }
  // Reasons may stand below the section, and the list below the last of the pictures.
  const bool has_room = plan.cuts.empty() ? depth_of(paragraphs(listing.before, pages.width())) < pages.room()
                                          : pages.room() > kWorthBeginning;
  if (!has_room) pages.start_page();
  bookmarks.push_back({of + (plan.feasible ? "Cut list" : "Why it cannot be cut"), pages.index()});
  write_list(pages, listing);
}

}  // namespace

std::string pdf_sheet(const Plan& plan, const Kit& kit, const SheetOptions& options) {
  Pages pages(options.paper);
  pages.name(named("Moulding", plan.section.name));
  std::vector<Bookmark> bookmarks;
  write_plan(pages, bookmarks, "", plan, kit, options, false);
  return pdf_document(
      pages.take(),
      {named("Moulding", plan.section.name), "The section at full size, a picture of each cut, the cut list"},
      bookmarks);
}

std::string pdf_sheet(const Job& job, const JobPlan& plan, const SheetOptions& options) {
  Pages pages(options.paper);
  std::vector<Bookmark> bookmarks;
  SheetOptions each = options;
  each.gauge_error = nullptr;
  for (const Run& run : plan.runs) {
    const std::string moulds = run_words(job, run);
    pages.name(named("Job", job.name) + ", for " + moulds);
    write_plan(pages, bookmarks, shorten(moulds, 60) + ": ", run.plan, job.kit, each, true);
  }
  pages.name(named("Job", job.name));
  pages.start_page();
  bookmarks.push_back({"The job", pages.index()});
  pages.blocks(job_blocks(job, plan, options.report));
  return pdf_document(pages.take(),
                      {named("Job", job.name),
                       "For each profile the section at full size, a picture of each cut and the cut list; "
                       "then the sheet of the job"},
                      bookmarks);
}

}  // namespace arrisline
