// `arrisline check`: yes or no for each profile. Shown by tests/cli.
#include "app/answer_json.h"
#include "app/commands.h"
#include "app/inputs.h"
#include "app/same_file.h"
#include "app/verify.h"
#include "arrisline/report.h"

namespace arrisline {

Outcome check_command(const CheckArguments& arguments) {
  Outcome outcome;
  const std::optional<Kit> kit = take(read_kit_file(arguments.kit), outcome.err);
  std::vector<Section> sections;
  for (const std::string& file : arguments.profiles) {
    std::optional<Section> section = take(read_profile_file(file), outcome.err);
    if (section) sections.push_back(*std::move(section));
  }
  const std::optional<double> limit = limit_option(arguments.limit, "check", outcome.err);
  std::vector<std::string> read = arguments.profiles;
  read.push_back(arguments.kit);
  const bool writable = output_option(arguments.output, "check", outcome.err) &&
                        kept_apart(read, {{"--output", arguments.output}}, "check", outcome.err);
  if (!kit || !limit || !writable || sections.size() != arguments.profiles.size()) {
    outcome.code = kBadInput;
    return outcome;
  }

  PlanOptions options;
  options.unit = kit->unit;
  bound_search(*limit, arguments.outside, options);
  Json answers = Json::array();
  for (std::size_t i = 0; i < sections.size(); ++i) {
    const PlanOptions bounded = from_now(options);
    Plan plan = make_plan(sections[i], *kit, bounded);
    find_remedies(plan, *kit, bounded);
    const std::vector<Finding> findings = judge(plan, {options.tolerance, options.scrape});
    if (!findings.empty()) {
      const Outcome fault = refused(plan, findings, ".");
      outcome.err += fault.err;
      outcome.code = fault.code;
      continue;
    }
    if (!plan.feasible && outcome.code == kDone) outcome.code = kNo;
    if (arguments.json) {
      answers.push_back(answer_as_json(plan, *kit, arguments.profiles[i]));
    } else {
      outcome.out +=
          check_answer(plan, {kit->unit, false, options.tolerance, options.scrape, arguments.plain});
    }
  }
  outcome.code = code_after(arguments.outside, outcome.code);
  outcome.file = arguments.output;
  if (arguments.json) outcome.out = answers.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
  return outcome;
}

}  // namespace arrisline
