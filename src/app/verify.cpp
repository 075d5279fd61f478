// The check before printing, and the file left behind when it fails. Shown by tests/cli/verify_test.cpp.
#include "app/verify.h"

#include <cstdlib>

#include "app/output.h"
#include "arrisline/plan_json.h"
#include "arrisline/report.h"

namespace arrisline {
namespace {

// A new file of that name or of the next number that is free; empty where none can be written.
std::string write_new_file(const std::string& folder, const std::string& text) {
  for (int number = 1; number <= 1000; ++number) {
    std::string path = folder + "/arrisline-fault-" + std::to_string(number) + ".json";
    switch (create_file(path, text)) {
      case Created::yes:
        return path;
      case Created::exists:
        continue;
      case Created::failed:
        return "";
    }
  }
  return "";
}

}  // namespace

std::vector<Finding> judge(const Plan& plan, const ReplayOptions& options) {
  if (!plan.feasible) return {};
  std::vector<Finding> findings = replay(plan, options).findings;
  const std::vector<Finding> more = second_opinion(plan);
  findings.insert(findings.end(), more.begin(), more.end());
  return findings;
}

std::string show(const Finding& finding) {
  std::string out = "plan";
  if (finding.cut > 0) {
    out = "cut ";
    out += std::to_string(finding.cut);
  }
  if (finding.rule > 0) {
    out += ", rule ";
    out += std::to_string(finding.rule);
  }
  return out + ": " + visible(finding.text);
}

Outcome refused(const Plan& plan, const std::vector<Finding>& findings, const std::string& folder) {
  Outcome outcome;
  outcome.code = kOurFault;
  outcome.err = "arrisline: fault: the plan made for '" + visible(plan.section.name) +
                "' does not pass its own replay, so it is not shown\n";
  for (const Finding& finding : findings) outcome.err += "  " + show(finding) + "\n";
  const std::string text = plan_to_json(plan);
  std::string path = write_new_file(folder, text);
  const char* temporary = std::getenv("TMPDIR");
  if (path.empty() && temporary != nullptr && *temporary != '\0') path = write_new_file(temporary, text);
  outcome.err += path.empty()
                     ? "  it could not be written to a file either; report it with the profile and the kit\n"
                     : "  it is kept in " + visible(path) + "; report it with that file\n";
  return outcome;
}

}  // namespace arrisline
