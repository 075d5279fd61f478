// The answers of `check`, and the reasons where the answer is no. Shown by tests/report.
#include <vector>

#include "arrisline/report.h"
#include "report/figures.h"
#include "report/reasons.h"

namespace arrisline {
namespace {

std::string nearest_size(const Reason::Nearest& nearest, Unit unit) {
  std::string out;
  if (!nearest.kind)
    return "Nearest that would do: draw it with a radius of " + exact(nearest.radius, unit) + ".";
  out = std::string("Nearest that would do: a ") + word(*nearest.kind);
  if (nearest.number) {
    out += ' ';
    out += std::to_string(*nearest.number);
  }
  std::vector<std::string> sizes;
  if (nearest.radius > 0) sizes.push_back("radius " + exact(nearest.radius, unit));
  if (nearest.width > 0) sizes.push_back("sole " + exact(nearest.width, unit) + " wide");
  for (const std::string& size : sizes) out += ", " + size;
  return out + ".";
}

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

void write_reasons(Page& page, const Plan& plan, const ReportOptions& options) {
  for (const Reason& reason : plan.reasons) {
    const auto index = static_cast<std::size_t>(reason.element);
    const bool known = reason.element >= 0 && index < plan.section.elements.size();
    const std::string lead = known ? shorten(describe(plan.section.elements[index]), 80) : "the whole";
    page.line(5, lead + ": " + visible(reason.why));
    if (reason.nearest) page.line(7, nearest_size(*reason.nearest, options.unit));
  }
}

std::string check_answer(const Plan& plan, const ReportOptions& options) {
  Page page(false);
  const std::string name = profile_name(plan);
  if (plan.feasible) {
    const std::string cuts = std::to_string(plan.cuts.size()) + (plan.cuts.size() == 1 ? " cut" : " cuts");
    page.item(0, "yes  ",
              name + ": " + cuts + (plan.cuts.empty() ? "." : " with " + planes_in_order(plan) + "."));
  } else if (plan.undecided) {
    page.item(0, "not decided  ", name + ": the search reached its limit before it found a plan.");
  } else {
    page.item(0, "no   ", name);
    write_reasons(page, plan, options);
  }
  return page.take();
}

}  // namespace arrisline
