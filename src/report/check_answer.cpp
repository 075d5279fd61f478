// The answers of `check`. Shown by tests/report.
#include <vector>

#include "arrisline/report.h"
#include "report/plain.h"
#include "report/reasons.h"

namespace arrisline {
namespace {

std::string planes_in_order(const Plan& plan) {
  std::vector<std::string> labels;
  for (const Cut& cut : plan.cuts) {
    bool known = false;
    for (const std::string& label : labels) known = known || label == cut.plane.label;
    if (!known) labels.push_back(cut.plane.label);
  }
  std::string out;
  for (const std::string& label : labels) out += (out.empty() ? "" : ", ") + shorten(label, 40);
  return out;
}

}  // namespace

std::string profile_name(const Plan& plan) {
  return plan.section.name.empty() ? "this profile" : shorten(plan.section.name, 60);
}

std::string check_answer(const Plan& plan, const ReportOptions& options) {
  Page page;
  const std::string name = profile_name(plan);
  if (plan.feasible) {
    const std::string cuts = std::to_string(plan.cuts.size()) + (plan.cuts.size() == 1 ? " cut" : " cuts");
    page.item(0, "yes  ",
              name + ": " + cuts + (plan.cuts.empty() ? "." : " with " + planes_in_order(plan) + "."));
  } else if (plan.undecided) {
    page.item(0, "not decided  ", name + ": the search reached its limit before it found a plan.");
    write_reasons(page, plan, options);
  } else {
    page.item(0, "no   ", name);
    write_reasons(page, plan, options);
  }
  return laid_out(page.take(), options.plain, false);
}

}  // namespace arrisline
