// Many records at once: order, errors, threads, and leaving off.
#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <thread>

#include "app/commands.h"
#include "app/folder.h"
#include "app/stream_answer.h"
#include "app/terminal.h"
#include "app/verify.h"
#include "arrisline/limits.h"
#include "arrisline/plan_json.h"
#include "catch.h"
#include "report/json_text.h"

using namespace arrisline;
using test::Folder;
namespace fs = std::filesystem;

namespace {

const std::string kExamples = ARRISLINE_SOURCE_DIR "/examples/";
const std::string kSixes = kExamples + "pair-of-sixes.kit";
const std::string kTexts = "hollow 6\nround 6\nrebate 3/4\n";

struct Run {
  Outcome outcome;
  std::vector<std::string> lines;  // without their ends
};

struct Set {
  std::optional<std::string> kit = kSixes;
  std::string threads = "2";
  std::string limit = "100";  // of work, so far off that nothing here comes near it
};

/// Has the records answered; `write` may take the place of what keeps the lines.
Run stream(const std::string& records, const Set& set = {}, const Sink& write = nullptr,
           std::atomic<bool>* leave_off = nullptr) {
  const Folder folder;
  std::ofstream(folder.path / "in", std::ios::binary) << records;
  Run run;
  std::atomic<bool> never{false};
  StreamArguments arguments;
  arguments.kit = set.kit;
  arguments.threads = set.threads;
  arguments.limit = set.limit;
  arguments.input = ::open((folder.path / "in").c_str(), O_RDONLY);
  REQUIRE(arguments.input >= 0);
  arguments.leave_off = leave_off != nullptr ? leave_off : &never;
  arguments.write = [&](std::string_view line) {
    const Written written = write ? write(line) : Written::all;
    if (written == Written::all) run.lines.emplace_back(line.substr(0, line.size() - 1));
    return written;
  };
  run.outcome = stream_command(arguments);
  ::close(arguments.input);
  return run;
}

std::string record(const Json& id, const std::string& profile, const std::string& kit = "") {
  Json out = {{"id", id}, {"profile", profile}};
  if (!kit.empty()) out["kit"] = kit;
  return out.dump() + "\n";
}

std::string chamfered(int sixteenths) {
  return "profile chamfer\nstock 2 wide 3/4 thick\nstart face " + std::to_string(sixteenths) +
         "/16\nchamfer " + std::to_string(sixteenths) + "/16\n";
}

std::string rounded(int sixteenths) {
  return "profile bead\nstock 2 wide 3/4 thick\nstart face " + std::to_string(sixteenths) + "/16\nbead out " +
         std::to_string(sixteenths) + "/16 down " + std::to_string(sixteenths) + "/16\n";
}

}  // namespace

TEST_CASE("a record is answered with the plan that its profile gets", "[app][stream]") {
  const Run run = stream(record("top", kExamples + "bookcase-top.profile"));
  CHECK(run.outcome.code == kDone);
  CHECK(run.outcome.err.empty());
  CHECK(run.outcome.out.empty());
  REQUIRE(run.lines.size() == 1);
  const Json answer = Json::parse(run.lines.front());
  CHECK(answer.at("id") == "top");
  CHECK(answer.size() == 2);

  const Reading<Section> section = read_profile_file(kExamples + "bookcase-top.profile");
  const Reading<Kit> kit = read_kit_file(kSixes);
  REQUIRE((section.value && kit.value));
  PlanOptions options;
  options.unit = kit.value->unit;
  const Plan plan = make_plan(*section.value, *kit.value, options);
  REQUIRE(plan.feasible);
  CHECK(answer.at("plan") == Json::parse(plan_to_json(plan)));
  CHECK(plan_from_json(answer.at("plan").dump()).faults.empty());
}

TEST_CASE("a no is a plan too, with its reasons", "[app][stream]") {
  const Run run = stream(record(1, kExamples + "hall-cyma.profile") + record(2, chamfered(3)));
  CHECK(run.outcome.code == kDone);
  REQUIRE(run.lines.size() == 2);
  const Json no = Json::parse(run.lines[0]), yes = Json::parse(run.lines[1]);
  CHECK(no.at("plan").at("feasible") == false);
  CHECK_FALSE(no.at("plan").at("reasons").empty());
  CHECK_FALSE(no.at("plan").at("remedies").empty());
  CHECK(yes.at("plan").at("feasible") == true);
}

TEST_CASE("answers come in the order of the records, whatever each of them takes", "[app][stream]") {
  std::string records;
  std::vector<int> expected;
  // Every seventh takes some hundred times as long as the others.
  for (int i = 0; i < 70; ++i) {
    records += i % 7 == 0 ? record(i, kExamples + "bookcase-base.profile") : record(i, chamfered(1 + i % 8));
    expected.push_back(i);
  }
  const Run run = stream(records);
  CHECK(run.outcome.code == kDone);
  std::vector<int> ids;
  for (const std::string& line : run.lines) ids.push_back(Json::parse(line).at("id"));
  CHECK(ids == expected);
}

TEST_CASE("the lines are the same whatever the number of threads", "[app][stream]") {
  std::string records;
  for (int i = 0; i < 200; ++i) {
    switch (i % 6) {
      case 0:
        records +=
            record(i, "stock 2 wide 3/4 thick\nstart face 1/2\nfillet out 1/" + std::to_string(i + 2) + "\n");
        break;
      case 1:
        records += record(i, rounded(1 + i % 9), kTexts);
        break;
      case 2:
        records += record(i, chamfered(1 + i % 9), kExamples + "metric-bench.kit");
        break;
      case 3:
        records += record(i, kExamples + "bookcase-stile.profile");
        break;
      case 4:
        records += record(i, rounded(6));
        break;
      default:
        records += record(i, chamfered(1 + i % 9), kExamples + "half-set.kit");
    }
  }
  const Run one = stream(records, {kSixes, "1", "100"});
  REQUIRE(one.lines.size() == 200);
  int plans = 0;
  for (const std::string& line : one.lines)
    plans += line.find("\"feasible\": true") != std::string::npos ? 1 : 0;
  CHECK(plans > 100);  // it was not all errors
  for (const char* threads : {"2", "5"}) {
    const Run more = stream(records, {kSixes, threads, "100"});
    CHECK(more.outcome.code == one.outcome.code);
    CHECK((more.lines == one.lines));
  }
}

TEST_CASE("what cannot be answered is an error in its place", "[app][stream]") {
  const Run run =
      stream(record(1, chamfered(2)) + "\n{oops\n" + record(3, "stock 2 wide, 3/4 thick\nstrat face 1\n") +
             record(4, "nowhere.profile", "round six\n") + record(5, chamfered(2), "round six\n") +
             record(6, chamfered(2)));
  CHECK(run.outcome.code == kNo);
  CHECK(run.outcome.err.empty());
  REQUIRE(run.lines.size() == 6);
  CHECK(Json::parse(run.lines[0]).contains("plan"));
  CHECK(
      run.lines[1] ==
      R"({ "id": null, "error": { "message": "column 2: this is not JSON, near '{o'; expected an object, such as {\"id\": 1, \"profile\": \"table-edge.profile\"}", "line": 3, "diagnostics": [] } })");
  const Json profile = Json::parse(run.lines[2]);
  CHECK(profile.at("id") == 3);
  CHECK(profile.at("error").at("message") == "the profile cannot be read; mend what 'diagnostics' names");
  CHECK(profile.at("error").at("line") == 4);
  REQUIRE(profile.at("error").at("diagnostics").size() == 2);
  CHECK(profile.at("error").at("diagnostics").at(1).at("file") == "profile");
  CHECK(profile.at("error").at("diagnostics").at(1).at("line") == 2);
  CHECK(profile.at("error").at("diagnostics").at(1).at("column") == 1);
  CHECK(profile.at("error")
            .at("diagnostics")
            .at(1)
            .at("message")
            .get<std::string>()
            .find("did you mean 'start'?") != std::string::npos);
  const Json both = Json::parse(run.lines[3]);
  CHECK(both.at("error").at("message") ==
        "neither the profile nor the kit can be read; mend what 'diagnostics' names");
  CHECK(both.at("error").at("diagnostics").at(0).at("file") == "nowhere.profile");
  CHECK(both.at("error").at("diagnostics").at(1).at("file") == "kit");
  CHECK(Json::parse(run.lines[4]).at("error").at("message") ==
        "the kit cannot be read; mend what 'diagnostics' names");
  CHECK(Json::parse(run.lines[5]).contains("plan"));
}

TEST_CASE("a record's own kit comes before the one of the command line", "[app][stream]") {
  const std::string records =
      record(1, rounded(6)) + record(2, rounded(6), "rebate 3/4\n") + record(3, rounded(6), kSixes);
  const Run sixes = stream(records);
  CHECK(sixes.outcome.code == kDone);
  REQUIRE(sixes.lines.size() == 3);
  CHECK(Json::parse(sixes.lines[0]).at("plan").at("feasible") == true);
  CHECK(Json::parse(sixes.lines[1]).at("plan").at("feasible") == false);
  CHECK(Json::parse(sixes.lines[2]).at("plan") == Json::parse(sixes.lines[0]).at("plan"));

  const Run none = stream(records, {std::nullopt});
  CHECK(none.outcome.code == kNo);
  REQUIRE(none.lines.size() == 3);
  CHECK(Json::parse(none.lines[0]).at("error").at("message") ==
        "\"kit\" is missing, and there is no --kit; give one of them");
  CHECK(none.lines[1] == sixes.lines[1]);
  CHECK(none.lines[2] == sixes.lines[2]);
}

TEST_CASE("warnings come beside the plan", "[app][stream]") {
  const std::string cleft =
      "stock 2 wide, 3/4 thick\nstart face 1/2\nfillet out 1/8\nbead down 1/4 radius 1/8\nfillet out 3/8\n";
  const Reading<Section> section = read_profile(cleft, "profile");
  const Run run = stream(record(1, cleft), {kSixes, "1", "0.1"});
  REQUIRE(run.lines.size() == 1);
  const Json answer = Json::parse(run.lines.front());
  REQUIRE(section.value);
  REQUIRE_FALSE(section.diagnostics.empty());
  REQUIRE(answer.contains("warnings"));
  CHECK(answer.at("warnings").size() == section.diagnostics.size());
  CHECK(answer.at("warnings").at(0).at("message") == section.diagnostics.front().message);
}

TEST_CASE("a line that is too long is an error, and reading goes on behind it", "[app][stream]") {
  std::string longest = record(1, chamfered(2));
  longest.insert(longest.size() - 1, kMaxStreamLine - (longest.size() - 1), ' ');
  std::string longer = longest;
  longer.insert(longer.size() - 1, 1, ' ');
  const Run run = stream(longest + longer + record(3, chamfered(2)));
  CHECK(run.outcome.code == kNo);
  REQUIRE(run.lines.size() == 3);
  CHECK(Json::parse(run.lines[0]).contains("plan"));
  CHECK(Json::parse(run.lines[1]).at("id").is_null());
  CHECK(Json::parse(run.lines[1]).at("error").at("message") ==
        "longer than 1048576 bytes; name files instead of their texts; to raise this limit, make "
        "kMaxStreamLine larger in include/arrisline/limits.h and build again");
  CHECK(Json::parse(run.lines[2]).contains("plan"));
}

TEST_CASE("few records are held at a time", "[app][stream]") {
  // Wide records, so that what is read at once counts for little.
  std::string one = record(1, "no such file");
  one.insert(one.size() - 1, 20'000 - one.size(), ' ');
  std::string records;
  constexpr std::size_t kRecords = 400;
  for (std::size_t i = 0; i < kRecords; ++i) records += one;
  const Folder folder;
  std::ofstream(folder.path / "in", std::ios::binary) << records;
  const int input = ::open((folder.path / "in").c_str(), O_RDONLY);
  REQUIRE(input >= 0);
  std::atomic<bool> never{false};
  std::size_t answered = 0, most_ahead = 0;
  StreamArguments arguments;
  arguments.kit = kSixes;
  arguments.threads = "2";
  arguments.input = input;
  arguments.leave_off = &never;
  arguments.write = [&](std::string_view) {
    const auto at = static_cast<std::size_t>(::lseek(input, 0, SEEK_CUR)) / one.size();
    most_ahead = std::max(most_ahead, at - answered++);
    return Written::all;
  };
  CHECK(stream_command(arguments).code == kNo);
  ::close(input);
  CHECK(answered == kRecords);
  CHECK(most_ahead >= 1);
  CHECK(most_ahead <= 2 * 16 + 4);  // sixteen a thread, and what one reading takes
}

TEST_CASE("nothing to answer", "[app][stream]") {
  for (const std::string nothing : {"", "\n", " \n\t\r\n"}) {
    const Run run = stream(nothing);
    CHECK(run.outcome.code == kDone);
    CHECK(run.lines.empty());
  }
}

TEST_CASE("it stops where nobody reads on", "[app][stream]") {
  std::string records;
  for (int i = 0; i < 200; ++i) records += record(i, chamfered(2));
  int calls = 0;
  const Run run = stream(records, {},
                         [&](std::string_view) { return ++calls < 3 ? Written::all : Written::pipe_closed; });
  CHECK(run.outcome.code == kDone);
  CHECK(run.outcome.err.empty());
  CHECK(calls == 3);
  CHECK(run.lines.size() == 2);
}

TEST_CASE("output that cannot be written is said", "[app][stream]") {
  const Run run = stream(record(1, chamfered(2)) + record(2, chamfered(2)), {}, [](std::string_view) {
    errno = ENOSPC;
    return Written::failed;
  });
  CHECK(run.outcome.code == kOurFault);
  CHECK(
      run.outcome.err ==
      "arrisline: error: cannot write the output: the disk is full; make room, or write to another place\n");
}

TEST_CASE("an interruption leaves whole lines, the first so many", "[app][stream]") {
  std::string records;
  for (int i = 0; i < 200; ++i) records += record(i, chamfered(1 + i % 8));
  const Run whole = stream(records);
  REQUIRE(whole.lines.size() == 200);
  std::atomic<bool> leave_off{false};
  int calls = 0;
  const Run run = stream(
      records, {},
      [&](std::string_view) {
        if (++calls == 5) leave_off.store(true);
        return Written::all;
      },
      &leave_off);
  CHECK(run.outcome.code == kInterrupted);
  REQUIRE(run.lines.size() == 5);
  CHECK(std::equal(run.lines.begin(), run.lines.end(), whole.lines.begin()));
}

TEST_CASE("a search that is under way is left off too", "[app][stream]") {
  // With so long a limit this one would go on for minutes; when it is interrupted is no matter.
  std::atomic<bool> leave_off{false};
  std::thread other([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(300));
    leave_off.store(true);
  });
  const Run run = stream(record(1, kExamples + "mirror-shelf.profile", kExamples + "metric-bench.kit"),
                         {kSixes, "1", "100000"}, nullptr, &leave_off);
  other.join();
  CHECK(run.outcome.code == kInterrupted);
  CHECK(run.lines.empty());
}

TEST_CASE("bad options and a bad kit end it before a record is read", "[app][stream]") {
  for (const Set& set : {Set{kSixes, "0", "1"}, Set{kSixes, "257", "1"}, Set{kSixes, "two", "1"},
                         Set{kSixes, "1", "-1"}, Set{"nowhere.kit", "1", "1"}}) {
    const Run run = stream(record(1, chamfered(2)), set);
    CHECK(run.outcome.code == kBadInput);
    CHECK_FALSE(run.outcome.err.empty());
    CHECK(run.lines.empty());
  }
}

TEST_CASE("a plan that its replay refuses is not shown", "[app][stream]") {
  const Folder folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder.path);  // where the plan is kept
  KitShelf shelf;
  const Reading<Kit> kit = read_kit_file(kSixes);
  REQUIRE(kit.value);
  Answering how;
  how.kit = &*kit.value;
  how.shelf = &shelf;
  how.judge = [](const Plan&, const ReplayOptions&) { return std::vector<Finding>{{1, 1, "a gouge"}}; };
  const std::string line = record(9, chamfered(2));
  const Answer answer = answer_line(line, 4, how);
  fs::current_path(before);
  CHECK(answer.error);
  CHECK(answer.line ==
        "{ \"id\": 9, \"error\": { \"message\": \"a fault of ours: the plan made does not pass its own "
        "replay\", \"line\": 4, \"diagnostics\": [] } }\n");
  CHECK(answer.fault.find("cut 1, rule 1: a gouge") != std::string::npos);
  CHECK(plan_from_json(test::contents(folder.path / "arrisline-fault-1.json")).faults.empty());

  how.judge = [](const Plan&, const ReplayOptions&) -> std::vector<Finding> { throw std::bad_alloc(); };
  const Answer thrown = answer_line(line, 4, how);
  CHECK(thrown.error);
  CHECK(thrown.line.find("a fault of ours") != std::string::npos);
  CHECK(thrown.fault == "arrisline: fault: line 4: std::bad_alloc\n");
}

TEST_CASE("a kit is read once while it is among the last few", "[app][stream]") {
  const Folder folder;
  KitShelf shelf;
  const auto path = [&](int i) { return (folder.path / (std::to_string(i) + ".kit")).string(); };
  for (int i = 0; i < 70; ++i) std::ofstream(path(i)) << "round " << i % 9 + 1 << "\n";
  const auto first = shelf.at(path(0));
  REQUIRE(first->value);
  for (int i = 1; i < 64; ++i) CHECK(shelf.at(path(i))->value);
  CHECK(shelf.at(path(0)) == first);  // and is now the last taken
  for (int i = 64; i < 70; ++i) CHECK(shelf.at(path(i))->value);
  CHECK(shelf.at(path(0)) == first);
  const auto last = shelf.at(path(69));
  for (int i = 1; i < 64; ++i) static_cast<void>(shelf.at(path(i)));
  CHECK(shelf.at(path(69)) == last);
  CHECK(shelf.at(path(0)) != first);
}

TEST_CASE("records typed at a terminal are asked for, those of a file are not", "[app][stream]") {
  const std::string stream = "'" ARRISLINE_PROGRAM "' stream --kit '" + kSixes + "' 2>&1";
  // The end of the input is what Ctrl-D makes of an empty line.
  const std::string typed = test::shell_writes(stream, true, "\x04");
  CHECK(typed.find("waits for records") != std::string::npos);
  CHECK(typed.find("Ctrl-D") != std::string::npos);
  CHECK(test::shell_writes(stream + " < /dev/null", true).empty());
}
