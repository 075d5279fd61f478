// Any bytes as a profile: read or refused with a reason, and a section that was read keeps its promises and
// comes back from JSON as it was.
#include "arrisline/plan_json.h"
#include "fuzz/sections.h"

using namespace arrisline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const Reading<Section> profile = read_profile(text, "fuzz.profile");
  fuzz::hold_diagnostics(profile, text);
  if (!profile.value) return 0;
  const Section& section = *profile.value;
  fuzz::hold_section(section);

  Plan no;
  no.section = section;
  no.reasons.emplace_back().why = "not looked for";
  const StatedPlan back = plan_from_json(plan_to_json(no));
  if (back.unread) return 0;  // more edges than a plan may have
  fuzz::hold(back.faults.empty(), "an outline that was read is one in JSON",
             back.faults.empty() ? "" : back.faults.front());
  const Loop& same = back.plan.section.target;
  fuzz::hold(same.size() == section.target.size(), "an outline keeps its edges in JSON");
  for (std::size_t i = 0; i < same.size(); ++i)
    fuzz::hold(same[i].to == section.target[i].to && same[i].turn == section.target[i].turn,
               "an edge is the same in JSON");
  return 0;
}
