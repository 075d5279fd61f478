// `arrisline job`: read, plan every profile and the whole, judge, show. Shown by tests/cli.
#include <filesystem>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/same_file.h"
#include "app/sheets.h"
#include "app/verify.h"
#include "arrisline/job_report.h"
#include "text/job_files.h"

namespace arrisline {
namespace {

/// The job file and the files that it names.
std::vector<std::string> files_read(const std::string& path, const std::optional<Job>& job) {
  std::vector<std::string> out = {path};
  const auto add = [&](const std::string& name) {
    out.push_back((std::filesystem::path(folder_of(path)) / name).string());
  };
  if (!job) return out;
  add(job->kit_file);
  for (const Mould& mould : job->moulds) add(mould.profile);
  return out;
}

}  // namespace

Outcome job_command(const JobArguments& arguments) {
  Outcome outcome;
  const std::optional<Job> job = take(read_job_file(arguments.job), outcome.err);
  const Unit job_unit = job ? job->unit : Unit::inch;
  const std::optional<Unit> unit = unit_option(arguments.unit, job_unit, "job", outcome.err);
  const std::optional<double> limit = limit_option(arguments.limit, "job", outcome.err);
  const bool writable = output_option(arguments.output, "job", outcome.err);
  const std::optional<std::vector<SheetFile>> files =
      sheet_option(arguments.sheets, arguments.output, "job", outcome.err);
  const std::optional<Paper> paper = paper_option(arguments.paper, "job", outcome.err);
  const bool apart =
      kept_apart(files_read(arguments.job, job), to_write(arguments.output, files), "job", outcome.err);
  if (!job || !unit || !limit || !writable || !files || !paper || !apart) {
    outcome.code = kBadInput;
    return outcome;
  }
  JobOptions options;
  options.plan.unit = *unit;
  bound_search(*limit, arguments.outside, options.plan);
  options.progress = arguments.planned;

  const JobPlan plan = plan_job(*job, options);
  for (const Run& run : plan.runs) {
    const std::vector<Finding> findings = judge(run.plan, {options.plan.tolerance, options.plan.scrape});
    if (findings.empty()) continue;
    const Outcome fault = refused(run.plan, findings, ".");
    outcome.err += fault.err;
    outcome.code = fault.code;
  }
  if (outcome.code == kOurFault) return outcome;
  Job shown = *job;
  shown.unit = *unit;
  const ReportOptions report{*unit, arguments.colour, options.plan.tolerance, options.plan.scrape,
                             arguments.plain};
  outcome.out = arguments.json ? job_to_json(shown, plan) : job_sheet(shown, plan, report);
  outcome.file = arguments.output;
  outcome.sheets = sheets(*files, {report, *paper, nullptr}, shown, plan);
  outcome.code = code_after(arguments.outside, plan.shortages.empty() ? kDone : kNo);
  return outcome;
}

}  // namespace arrisline
