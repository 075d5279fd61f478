// Shown by tests/cli.
#include "app/answer_json.h"

namespace arrisline {

Json answer_as_json(const Plan& plan, const Kit& kit, const std::string& file) {
  Json answer = {{"profile", plan.section.name}, {"file", file}, {"kit", kit.name}, {"cuts", plan.feasible}};
  // The reasons are written in one place only, so that they read alike in a plan and here.
  const Json whole = plan_as_json(plan);
  answer["reasons"] = whole.contains("reasons") ? whole["reasons"] : Json::array();
  if (whole.contains("remedies")) answer["remedies"] = whole["remedies"];
  if (whole.contains("left_off")) answer["left_off"] = whole["left_off"];
  if (plan.undecided) answer["undecided"] = true;
  return answer;
}

}  // namespace arrisline
