// Bytes as choices: which profile and which kit of the grammar in docs/files.md. Both are read, planned
// within little work, written, read back and replayed. FUZZ_SHOW in the environment prints the two texts.
#include "fuzz/holds.h"
#include "plan/grammar.h"
#include "plan/whole_way.h"

using namespace arrisline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  test::Choices choices(fuzz::text_of(data, size));
  const std::string kit = test::make_kit(choices);
  const std::string profile = test::make_profile(choices);
  if (std::getenv("FUZZ_SHOW") != nullptr)
    std::fprintf(stderr, "--- profile\n%s\n--- kit\n%s\n", profile.c_str(), kit.c_str());
  PlanOptions options;
  options.most_work = 2000;
  const test::WholeWay way = test::whole_way(profile, kit, options);
  fuzz::hold(way.broken.empty(), "what was written holds",
             way.broken + "\n--- profile\n" + profile + "\n--- kit\n" + kit);
  return 0;
}
