// The sheet of a job and its JSON: fit for a terminal, true to the plan.
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>

#include "arrisline/job_report.h"
#include "arrisline/replay.h"
#include "job/jobs.h"
#include "report/page.h"
#include "report/pages.h"

using namespace arrisline;
using namespace arrisline::test;
using Json = nlohmann::json;

namespace {

Job example() {
  Job out = job(pair_of_sixes(), {stock(5.5, 96, 2), stock(4, 60, std::nullopt)},
                {mould("edge", kRoundOver, 1, 40, 3), mould("frame", kCavetto, 1.5, 20, 2),
                 mould("frame", kCavetto, 1.5, 30, 2), mould("lip", kRebate, 1, 20)});
  out.moulds[1].name = "rail";
  out.moulds[1].mitre = Ends::both;
  out.moulds[1].inside = true;
  out.moulds[2].name = "stile";
  out.moulds[2].mitre = Ends::both;
  out.moulds[2].inside = true;
  out.saw = {2, 1};
  out.spare = Spare{300, 1};
  Board board;
  board.stops = {12.7, 25.4, 38.1, 50.8};
  out.kit.board = board;
  return out;
}

}  // namespace

TEST_CASE("a sheet is at most 80 columns wide, whatever the names are", "[job_sheet]") {
  Job it = example();
  it.name = std::string(200, 'j');
  it.moulds[0].name = std::string(300, 'm') + "\x1b[31m";
  it.stocks[0].species = std::string(100, 's') + "\n\x07";
  it.kit.name = "k\xff";
  const std::string sheet = job_sheet(it, plan_job(it, {}), {it.unit, false, 0.2, 0.4});
  std::size_t longest = 0;
  std::istringstream lines(sheet);
  for (std::string line; std::getline(lines, line);) longest = std::max(longest, columns(line));
  CHECK(longest <= kPageColumns);
  CHECK(longest > kPageColumns - 10);
  for (const char c : sheet) CHECK((c == '\n' || (static_cast<unsigned char>(c) >= 0x20 && c != 0x7f)));
}

TEST_CASE("a sheet says what is mitred, ripped, sawn and set", "[job_sheet]") {
  const Job it = example();
  const std::string sheet = running(job_sheet(it, plan_job(it, {}), {it.unit, false, 0.2, 0.4}));
  for (const char* words :
       {"edge: 3 pieces of test, 40 in long, 1 in wide, square ends.",
        "rail: 2 pieces of test, 20 in long, 1 1/2 in wide, both ends mitred, inside corners.",
        "rip off 1 1/2 in.",
        "the saw swung 45 degrees off square and upright; the long point is on "
        "the back edge. Long 20 in, short 17 in.",
        "Stops of the board, from the fence", "Cautions"}) {
    INFO(words);
    CHECK(sheet.find(words) != std::string::npos);
  }
}

TEST_CASE("a sole is placed from the edge while the strip is still part of its blank", "[job_sheet]") {
  // The cavetto lies nearer the back edge of its strip, which is not there yet.
  const Job it = job(pair_of_sixes(), {stock(5.5, 96)},
                     {mould("lip", "start face 3/4\ncavetto 3/8\nfillet out 3/8", 0.8, 40)});
  const std::string sheet = running(job_sheet(it, plan_job(it, {}), {it.unit, false, 0.2, 0.4}));
  CHECK(sheet.find("in from the edge and about") != std::string::npos);
  CHECK(sheet.find("from the back edge") == std::string::npos);
}

TEST_CASE("a strip too narrow to be held once it is ripped off is told by the job's own figure",
          "[job_sheet]") {
  const std::string both =
      "start face 1/2\nstep down 1/4\nfillet out 1/2\nside back\nstart face 1/2\nstep down "
      "1/4\nfillet out 1/2";
  Job it = job(kit("rebate 3/4\n"), {stock(5.5, 40)}, {mould("rail", both, 2, 30)});
  it.ripping.hold = 2.5 * kMmPerInch;
  const JobPlan plan = plan_job(it, {});
  CHECK(running(job_sheet(it, plan, {it.unit, false, 0.2, 0.4}))
            .find("Holding: rail: the strip is ripped off before it is stuck, and is then 2 in wide, less "
                  "than the "
                  "2 1/2 in that 'rip hold' asks for") != std::string::npos);
  const Json short_of = Json::parse(job_to_json(it, plan)).at("short");
  REQUIRE(short_of.size() == 1);
  CHECK(short_of[0].at("kind") == "holding");
  CHECK(short_of[0].at("hold").get<double>() == Approx(63.5));
}

TEST_CASE("the plans in a job's JSON pass the replay", "[job_json]") {
  const Job it = example();
  const Json json = Json::parse(job_to_json(it, plan_job(it, {})));
  CHECK(json["format"] == "arrisline-job");
  REQUIRE(json["plans"].size() == 4);
  for (const auto& [name, plan] : json["plans"].items()) {
    INFO(name);
    const StatedPlan stated = plan_from_json(plan.dump());
    REQUIRE(stated.faults.empty());
    CHECK(replay(stated.plan, {}).findings.empty());
  }
}

TEST_CASE("a job's JSON has every piece once, and every cut of every moulding in its order", "[job_json]") {
  const Job it = example();
  const Json json = Json::parse(job_to_json(it, plan_job(it, {})));
  std::map<std::string, int> pieces;
  int spares = 0;
  for (const Json& blank : json["blanks"]) {
    std::map<int, double> used;
    for (const Json& cut : blank["cuts"]) {
      const bool spare = cut.contains("spare_for");
      if (spare) ++spares;
      if (!spare) ++pieces[cut["mould"]];
      used[cut["strip"]] += cut["length"].get<double>() + (spare ? 0 : 2 * it.saw.allowance) + it.saw.kerf;
    }
    for (const auto& [strip, length] : used)
      CHECK(length <= blank["stock"]["length"].get<double>() + it.saw.kerf + 1e-6);
  }
  CHECK(pieces == std::map<std::string, int>{{"edge", 3}, {"rail", 2}, {"stile", 2}, {"lip", 1}});
  CHECK(spares == 3);  // edge, frame and lip
  CHECK(json["blanks_needed"] == json["blanks"].size());
  CHECK(json["bound"] <= json["blanks_needed"]);

  std::map<std::string, int> next;
  int changes = 0;
  const Json* before = nullptr;
  for (const Json& step : json["order"]) {
    CHECK(step["cut"] == ++next[step["mould"]]);
    if (before != nullptr && (*before)["plane"] != step["plane"]) ++changes;
    before = &step;
  }
  for (const auto& [name, plan] : json["plans"].items())
    CHECK(next[name] == static_cast<int>(plan["cuts"].size()));
  CHECK(changes == json["plane_changes"]);
  CHECK(json["plane_changes"] <= json["plane_changes_one_by_one"]);
}
