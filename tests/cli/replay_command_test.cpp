// The command replay, by what it makes of a file.
#include <fstream>

#include "app/commands.h"
#include "app/folder.h"
#include "arrisline/plan_json.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

TEST_CASE("replay takes areas stated within one percent and 0.05 mm², and no worse", "[app]") {
  const test::Folder folder;
  const std::string path = folder.path / "plan.json";
  const auto code_with = [&](double off) {
    Plan plan = plans::round_over();
    plan.cuts[0].removed += off;
    std::ofstream(path) << plan_to_json(plan);
    return replay_command({path, std::nullopt, std::nullopt}).code;
  };
  const double allowed = 0.05 + 0.01 * plans::round_over().cuts[0].removed;
  CHECK(code_with(0) == kDone);
  CHECK(code_with(0.9 * allowed) == kDone);
  CHECK(code_with(-0.9 * allowed) == kDone);
  CHECK(code_with(1.1 * allowed) == kNo);
  CHECK(code_with(-1.1 * allowed) == kNo);
}
