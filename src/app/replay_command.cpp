// `arrisline replay`: judge a plan somebody hands in. Shown by tests/cli.
#include <cerrno>
#include <cstdio>
#include <memory>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/verify.h"
#include "arrisline/limits.h"
#include "arrisline/plan_json.h"
#include "arrisline/report.h"
#include "report/plan_json_syntax.h"
#include "text/load.h"

namespace arrisline {
namespace {

constexpr const char* kAskForPlan = "; make one with: arrisline plan PROFILE --kit KIT --json";

// The text of a file or of standard input, or nothing and the reason in `why`.
std::optional<std::string> read_text(const std::string& path, std::string& why) {
  struct Close {
    void operator()(std::FILE* file) const {
      if (file != stdin) std::fclose(file);
    }
  };
  const std::unique_ptr<std::FILE, Close> file(path == "-" ? stdin : std::fopen(path.c_str(), "rb"));
  if (!file) {
    why = system_words(errno);
    return std::nullopt;
  }
  std::string text;
  char buffer[65536];
  while (const std::size_t got = std::fread(buffer, 1, sizeof buffer, file.get())) {
    text.append(buffer, got);
    if (text.size() > kMaxPlanBytes) {
      why = too_large_a_plan();
      return std::nullopt;
    }
  }
  if (std::ferror(file.get()) != 0) {
    why = system_words(errno);
    return std::nullopt;
  }
  return text;
}

}  // namespace

Outcome replay_command(const ReplayArguments& arguments) {
  Outcome outcome;
  ReplayOptions options;
  const std::optional<double> tolerance =
      length_option("--tolerance", arguments.tolerance, Unit::mm, options.tolerance, "replay", outcome.err);
  const std::optional<double> scrape =
      length_option("--scrape", arguments.scrape, Unit::mm, options.scrape, "replay", outcome.err);
  const std::string name = input_name(arguments.plan);
  std::string why;
  const std::optional<std::string> text = read_text(arguments.plan, why);
  if (!text) outcome.err += usage_error("replay", "cannot read " + name + ": " + why + kAskForPlan);
  if (!tolerance || !scrape || !text) {
    outcome.code = kBadInput;
    return outcome;
  }
  options.tolerance = *tolerance;
  options.scrape = *scrape;

  const StatedPlan stated = plan_from_json(*text);
  if (!stated.faults.empty()) {
    if (stated.unread) {
      outcome.code = kBadInput;
      for (const std::string& fault : stated.faults)
        outcome.err += usage_error("replay", name + ": " + fault + kAskForPlan);
      return outcome;
    }
    outcome.code = kNo;
    for (const std::string& fault : stated.faults) outcome.out += visible(fault) + "\n";
    outcome.err += "the plan is not complete" + std::string(kAskForPlan) + "\n";
    return outcome;
  }
  const std::vector<Finding> findings = replay(stated.plan, options).findings;
  for (const Finding& finding : findings) outcome.out += show(finding) + "\n";
  if (!findings.empty()) {
    outcome.code = kNo;
    outcome.err += "the plan does not hold" + std::string(kAskForPlan) + "\n";
  } else {
    const std::size_t cuts = stated.plan.cuts.size();
    outcome.err += "the plan holds: " + std::to_string(cuts) + (cuts == 1 ? " cut" : " cuts") + " replayed\n";
  }
  return outcome;
}

}  // namespace arrisline
