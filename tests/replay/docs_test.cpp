// The example in docs/plan-json.md is read and holds.
#include <fstream>
#include <sstream>

#include "arrisline/plan_json.h"
#include "arrisline/replay.h"
#include "catch.h"

using namespace arrisline;

TEST_CASE("the example of the plan's JSON is read and holds", "[docs]") {
  std::ifstream file(ARRISLINE_SOURCE_DIR "/docs/plan-json.md");
  std::stringstream text;
  text << file.rdbuf();
  const std::string page = text.str(), fence = "```json\n";
  const std::size_t start = page.find(fence);
  REQUIRE(start != std::string::npos);
  const std::size_t first = start + fence.size();
  const StatedPlan stated =
      plan_from_json(std::string_view(page).substr(first, page.find("```", first) - first));
  CHECK(stated.faults == std::vector<std::string>{});
  CHECK(replay(stated.plan, {}).findings.empty());
  CHECK(second_opinion(stated.plan).empty());
}
