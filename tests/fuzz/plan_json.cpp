// Any bytes as a plan in JSON: faults that can be shown, or a plan that is judged in bounded time without an
// accident, and that is the same plan when it is written and read again.
#include "arrisline/plan_json.h"

#include "app/verify.h"
#include "arrisline/replay.h"
#include "fuzz/holds.h"

using namespace arrisline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const StatedPlan stated = plan_from_json(text);
  for (const std::string& fault : stated.faults) {
    fuzz::hold(!fault.empty(), "a fault is said");
    fuzz::hold_shown(show(Finding{0, 0, fault}));
  }
  if (!stated.faults.empty()) return 0;

  const std::string json = plan_to_json(stated.plan);
  const StatedPlan again = plan_from_json(json);
  fuzz::hold(again.faults.empty(), "a plan that was read is read again",
             again.faults.empty() ? "" : again.faults.front());
  fuzz::hold(plan_to_json(again.plan) == json, "a plan is the same when it is read again", json);

  const ReplayResult judged = replay(stated.plan, {});
  fuzz::hold(std::isfinite(judged.max_height) && std::isfinite(judged.left_area) &&
                 std::isfinite(judged.deepest_gouge),
             "the replay has figures");
  for (const Finding& finding : judged.findings) fuzz::hold_shown(show(finding));
  for (const Finding& finding : second_opinion(stated.plan)) fuzz::hold_shown(show(finding));
  return 0;
}
