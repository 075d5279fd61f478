// `arrisline survey`: every profile of a folder with every kit of a folder. Shown by
// tests/app/survey_test.cpp and tests/cli.
#include <tbb/parallel_for.h>

#include <algorithm>
#include <filesystem>
#include <mutex>
#include <system_error>

#include "app/answer_json.h"
#include "app/commands.h"
#include "app/inputs.h"
#include "app/same_file.h"
#include "app/verify.h"
#include "arrisline/limits.h"
#include "arrisline/read.h"
#include "report/survey_table.h"
#include "text/load.h"
#include "wording/words.h"

namespace arrisline {
namespace {

namespace fs = std::filesystem;

/// The files of the folder with this ending, by name. None, or no such folder, adds to `messages`.
std::vector<fs::path> files_of(const std::string& folder, const char* option, const char* ending,
                               std::string& messages) {
  std::vector<fs::path> out;
  std::error_code code;
  fs::directory_iterator it(folder, code);
  for (; !code && it != fs::directory_iterator(); it.increment(code)) {
    std::error_code unseen;  // a link that leads nowhere is reported when it is read
    if (it->path().extension() == ending && !it->is_directory(unseen)) out.push_back(it->path());
  }
  std::sort(out.begin(), out.end(),
            [](const fs::path& a, const fs::path& b) { return a.native() < b.native(); });
  if (code) {
    messages += usage_error("survey", std::string(option) + " " + arrisline::quoted(folder) +
                                          " cannot be read as a folder: " + system_words(code.value()) +
                                          "; name the folder that the files are in");
    return {};
  }
  if (out.empty())
    messages +=
        usage_error("survey", "no file in " + arrisline::quoted(folder) + " has a name that ends in " +
                                  ending + "; name the folder that they are in");
  return out;
}

template <class T, class Read>
std::vector<T> read_all(const std::vector<fs::path>& files, const Read& read, std::string& messages) {
  std::vector<T> out;
  for (const fs::path& file : files) {
    std::optional<T> one = take(read(file.string()), messages);
    if (one) out.push_back(std::move(*one));
  }
  return out;
}

Cuts cuts(const Plan& plan) {
  return plan.feasible ? Cuts::yes : plan.undecided ? Cuts::undecided : Cuts::no;
}

std::vector<std::string> names(const std::vector<fs::path>& files) {
  std::vector<std::string> out;
  for (const fs::path& file : files) out.push_back(file.filename().string());
  return out;
}

}  // namespace

Outcome survey_command(const SurveyArguments& arguments) {
  Outcome outcome;
  const std::vector<fs::path> profile_files =
      files_of(arguments.profiles, "--profiles", ".profile", outcome.err);
  const std::vector<fs::path> kit_files = files_of(arguments.kits, "--kits", ".kit", outcome.err);
  const std::size_t pairs = profile_files.size() * kit_files.size();
  if (pairs > kMaxSurvey) {
    outcome.err += usage_error("survey", std::to_string(profile_files.size()) + " profiles and " +
                                             std::to_string(kit_files.size()) + " kits are more than " +
                                             std::to_string(kMaxSurvey) + " answers; name smaller folders" +
                                             to_raise("kMaxSurvey"));
    return {kBadInput, "", outcome.err};
  }
  const std::vector<Section> sections = read_all<Section>(profile_files, read_profile_file, outcome.err);
  const std::vector<Kit> kits = read_all<Kit>(kit_files, read_kit_file, outcome.err);
  const std::optional<double> limit = limit_option(arguments.limit, "survey", outcome.err);
  std::vector<std::string> read;
  for (const auto* files : {&profile_files, &kit_files})
    for (const fs::path& file : *files) read.push_back(file.string());
  const bool writable = output_option(arguments.output, "survey", outcome.err) &&
                        kept_apart(read, {{"--output", arguments.output}}, "survey", outcome.err);
  if (pairs == 0 || sections.size() * kits.size() != pairs || !limit || !writable) {
    outcome.code = kBadInput;
    return outcome;
  }

  Survey survey{names(profile_files), names(kit_files), std::vector<Cuts>(pairs, Cuts::undecided)};
  std::vector<Json> answers(arguments.json ? pairs : 0);
  std::mutex one_at_a_time;
  std::size_t answered = 0;
  std::string faults;
  tbb::parallel_for(std::size_t{0}, pairs, [&](std::size_t pair) {
    const Kit& kit = kits[pair % kits.size()];
    PlanOptions options = from_now({});
    options.unit = kit.unit;
    options.any = true;  // that there is a plan is all that is asked
    bound_search(*limit, {arguments.outside.interrupt, nullptr}, options);
    Plan plan = make_plan(sections[pair / kits.size()], kit, options);
    if (arguments.json) find_remedies(plan, kit, options);
    const std::vector<Finding> findings = judge(plan, {options.tolerance, options.scrape});
    survey.cuts[pair] = cuts(plan);
    if (arguments.json) {
      answers[pair] = answer_as_json(plan, kit, profile_files[pair / kits.size()].string());
      answers[pair]["kit_file"] = kit_files[pair % kits.size()].string();
    }
    const std::lock_guard<std::mutex> lock(one_at_a_time);
    if (!findings.empty()) faults += refused(plan, findings, ".").err;
    ++answered;
    if (arguments.answered) arguments.answered(answered, pairs);
  });
  outcome.err += faults;
  if (!faults.empty()) {
    outcome.code = kOurFault;
    return outcome;
  }
  outcome.file = arguments.output;
  outcome.code = code_after(arguments.outside, kDone);
  outcome.out = arguments.json ? Json(answers).dump(2, ' ', false, Json::error_handler_t::replace) + "\n"
                               : survey_table(survey);
  return outcome;
}

}  // namespace arrisline
