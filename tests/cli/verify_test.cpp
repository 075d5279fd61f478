// A plan that its own replay refuses is never shown, and is kept for whoever mends it.
#include "app/verify.h"

#include <cstdlib>
#include <filesystem>

#include "app/folder.h"
#include "arrisline/plan_json.h"
#include "catch.h"

using namespace arrisline;
using test::contents;
using test::Folder;

namespace {

// A rebate stated to be finished by a single cut that goes 1 mm too deep.
Plan too_deep() {
  Plan plan;
  Section& s = plan.section;
  s.name = "spoilt \x1b[31m rebate";
  s.width = 50;
  s.thickness = 20;
  s.target = {{{10, 0}, {50, 0}, {}, Turn::straight},  {{50, 0}, {50, 20}, {}, Turn::straight},
              {{50, 20}, {0, 20}, {}, Turn::straight}, {{0, 20}, {0, 5}, {}, Turn::straight},
              {{0, 5}, {10, 5}, {}, Turn::straight},   {{10, 5}, {10, 0}, {}, Turn::straight}};
  s.source = {-1, -1, -1, -1, 1, 0};
  s.elements = {{1, 0, Chain::face, "step", 1}, {2, 0, Chain::face, "fillet", 2}};
  plan.feasible = true;
  Cut cut;
  cut.number = 1;
  cut.plane.label = "rebate 10";
  cut.plane.width = 10;
  cut.made_for = "element 1";
  cut.elements = {0, 1};
  cut.poses = cut.set = {{{5, 6}, 0}};
  cut.lines = {{Side::edge, 10, 10, false}, {Side::face, 6, 6, false}};
  cut.removed = 60;
  plan.cuts = {cut};
  plan.waste_area = plan.waste_by_flat = 50;
  return plan;
}

}  // namespace

TEST_CASE("a cut that goes too deep is found before anything is shown", "[app]") {
  const std::vector<Finding> findings = judge(too_deep(), {});
  bool gouge = false;
  for (const Finding& finding : findings) gouge = gouge || (finding.cut == 1 && finding.rule == 1);
  CHECK(gouge);
}

TEST_CASE("a plan that is refused goes to a file and not to the page", "[app]") {
  const Folder folder;
  const std::vector<Finding> findings = {{1, 1, "1 mm too deep"}, {0, 0, "waste does not add up"}};
  const Outcome first = refused(too_deep(), findings, folder.path.string());
  const Outcome second = refused(too_deep(), findings, folder.path.string());
  CHECK(first.code == kOurFault);
  CHECK(first.out.empty());
  CHECK(first.err.find("cut 1, rule 1: 1 mm too deep\n") != std::string::npos);
  CHECK(first.err.find("plan: waste does not add up\n") != std::string::npos);
  CHECK(first.err.find('\x1b') == std::string::npos);
  CHECK(contents(folder.path / "arrisline-fault-1.json") == plan_to_json(too_deep()));
  CHECK(contents(folder.path / "arrisline-fault-2.json") == plan_to_json(too_deep()));
  CHECK(second.err.find("arrisline-fault-2.json") != std::string::npos);
}

TEST_CASE("a refused plan that no folder takes is still refused", "[app]") {
  const Folder folder;
  const char* before = std::getenv("TMPDIR");
  const std::string kept = before == nullptr ? "" : before;
  setenv("TMPDIR", folder.path.c_str(), 1);
  const Outcome elsewhere = refused(too_deep(), {{1, 1, "too deep"}}, (folder.path / "none").string());
  setenv("TMPDIR", (folder.path / "none").c_str(), 1);
  const Outcome nowhere = refused(too_deep(), {{1, 1, "too deep"}}, (folder.path / "none").string());
  if (before == nullptr) {
    unsetenv("TMPDIR");
  } else {
    setenv("TMPDIR", kept.c_str(), 1);
  }
  CHECK(std::filesystem::exists(folder.path / "arrisline-fault-1.json"));
  CHECK(elsewhere.code == kOurFault);
  CHECK(nowhere.code == kOurFault);
  CHECK(nowhere.err.find("could not be written") != std::string::npos);
}
