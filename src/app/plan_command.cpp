// `arrisline plan`: read, plan, judge, show. Shown by tests/cli.
#include "app/commands.h"
#include "app/inputs.h"
#include "app/same_file.h"
#include "app/sheets.h"
#include "app/verify.h"
#include "arrisline/plan_json.h"
#include "arrisline/report.h"
#include "arrisline/substitute.h"
#include "report/redrawn_words.h"

namespace arrisline {

Outcome plan_command(const PlanArguments& arguments) {
  Outcome outcome;
  const std::optional<Section> section =
      take(read_input<Section>(arguments.profile, read_profile), outcome.err);
  const std::optional<Kit> kit = take(read_kit_file(arguments.kit), outcome.err);
  const Unit kit_unit = kit ? kit->unit : Unit::inch;
  const std::optional<Unit> unit = unit_option(arguments.unit, kit_unit, "plan", outcome.err);
  const Unit of_lengths = unit.value_or(kit_unit);
  PlanOptions options;
  const std::optional<double> tolerance =
      length_option("--tolerance", arguments.tolerance, of_lengths, options.tolerance, "plan", outcome.err);
  const std::optional<double> scrape =
      length_option("--scrape", arguments.scrape, of_lengths, options.scrape, "plan", outcome.err);
  const std::optional<double> off =
      length_option("--gauge-error", arguments.gauge_error, of_lengths, 0, "plan", outcome.err);
  const std::optional<double> allow =
      length_option("--allow", arguments.allow, of_lengths, 0, "plan", outcome.err);
  const std::optional<double> limit = limit_option(arguments.limit, "plan", outcome.err);
  const std::optional<Prefer> prefer = prefer_option(arguments.prefer, "plan", outcome.err);
  const bool writable = output_option(arguments.output, "plan", outcome.err);
  const std::optional<std::vector<SheetFile>> files =
      sheet_option(arguments.sheets, arguments.output, "plan", outcome.err);
  const std::optional<Paper> paper = paper_option(arguments.paper, "plan", outcome.err);
  std::vector<ToWrite> written = to_write(arguments.output, files);
  written.push_back({"--redrawn", arguments.redrawn});
  const bool redrawn_writable = output_option(arguments.redrawn, "plan", outcome.err, "--redrawn") &&
                                writable &&
                                kept_apart({arguments.profile, arguments.kit}, written, "plan", outcome.err);
  const bool allows_nothing = arguments.allow && allow && *allow == 0;
  if (allows_nothing)
    outcome.err += usage_error(
        "plan", "--allow is a length of more than 0, such as 1/64in; leave it out for the drawing as it is");
  if (arguments.redrawn && !arguments.allow)
    outcome.err += usage_error("plan", "--redrawn goes with --allow; add it, such as --allow 1/64in");
  if (!section || !kit || !unit || !tolerance || !scrape || !off || !limit || !prefer || !writable ||
      !files || !paper || !allow || allows_nothing || !redrawn_writable ||
      (arguments.redrawn && !arguments.allow)) {
    outcome.code = kBadInput;
    return outcome;
  }
  options.tolerance = *tolerance;
  options.scrape = *scrape;
  options.unit = *unit;
  options.prefer = *prefer;
  bound_search(*limit, arguments.outside, options);

  const PlanOptions bounded = from_now(options);
  Plan plan = make_plan(*section, *kit, bounded);
  Redrawing redrawing;
  const std::optional<Substitute>& redrawn = redrawing.nearest;
  if (arguments.allow && !plan.feasible && !plan.undecided) {
    redrawing = nearest_profile(plan, *kit, bounded, *allow);
    if (redrawn) {
      plan = make_plan(redrawn->section, *kit, bounded);
      if (!plan.feasible) plan = redrawn->plan;  // left off before one was found again
    }
  }
  find_remedies(plan, *kit, bounded);
  const std::vector<Finding> findings = judge(plan, {options.tolerance, options.scrape});
  if (!findings.empty()) {
    Outcome fault = refused(plan, findings, ".");
    fault.err.insert(0, outcome.err);
    return fault;
  }
  std::optional<GaugeError> slips;
  if (arguments.gauge_error && plan.feasible) slips = gauge_error(plan, *off);
  const GaugeError* slipped = slips ? &*slips : nullptr;
  const ReportOptions report{*unit, arguments.colour, options.tolerance, options.scrape, arguments.plain};
  if (arguments.picture)
    outcome.out = drawn_in_characters(plan, {arguments.ascii, arguments.steps, kPageColumns, *unit}) + "\n";
  if (arguments.json) {
    outcome.out += plan_to_json(plan, {&*kit, slipped, &*section, &redrawing});
  } else {
    if (redrawn) outcome.out.insert(0, redrawn_words(*section, redrawing, report));
    outcome.out += cut_list(plan, *kit, report, slipped);
    if (arguments.allow && !plan.feasible)
      outcome.out +=
          plan.undecided ? not_redrawn_words(report) : none_redrawn_words(*allow, redrawing.left_off, report);
  }
  outcome.file = arguments.output;
  outcome.sheets = sheets(*files, {report, *paper, slipped}, plan, *kit);
  if (arguments.redrawn && plan.feasible && !redrawn)
    outcome.err += "arrisline plan: note: it can be cut as it is drawn, so " + visible(*arguments.redrawn) +
                   " is not written: leave --allow out\n";
  if (redrawn && arguments.redrawn) outcome.sheets.push_back({*arguments.redrawn, redrawn->profile});
  outcome.code = code_after(arguments.outside, plan.feasible ? kDone : kNo);
  return outcome;
}

}  // namespace arrisline
