// Which kit cuts which profile: the same answers as one by one, and what is no survey.
#include <filesystem>
#include <fstream>

#include "app/commands.h"
#include "app/folder.h"
#include "catch.h"
#include "report/json_text.h"

using namespace arrisline;
using test::Folder;
namespace fs = std::filesystem;

namespace {

const std::string kExamples = ARRISLINE_SOURCE_DIR "/examples";

/// A few of the examples, so that it takes no time.
void lay_out(const fs::path& folder) {
  for (const char* name : {"bookcase-stile.profile", "hall-cyma.profile", "bookcase-rail.profile"})
    fs::copy_file(fs::path(kExamples) / name, folder / name);
  for (const char* name : {"pair-of-sixes.kit", "half-set.kit"})
    fs::copy_file(fs::path(kExamples) / name, folder / name);
}

Outcome survey(const fs::path& folder, bool json = false) {
  SurveyArguments arguments;
  arguments.profiles = arguments.kits = folder.string();
  arguments.json = json;
  return survey_command(arguments);
}

}  // namespace

TEST_CASE("a survey answers as check does, one by one", "[app][survey]") {
  const Folder folder;
  lay_out(folder.path);
  const Outcome whole = survey(folder.path, true);
  CHECK(whole.code == kDone);
  CHECK(whole.err.empty());
  const Json answers = Json::parse(whole.out);
  REQUIRE(answers.size() == 6);
  int yes = 0;
  for (std::size_t i = 0; i < 6; ++i) {
    const Json& answer = answers[i];
    const std::string profile = answer.at("file"), kit = answer.at("kit_file");
    CAPTURE(profile, kit);
    // Profiles in the order of their names, and for each the kits.
    const char* const kProfiles[] = {"bookcase-rail.profile", "bookcase-stile.profile", "hall-cyma.profile"};
    CHECK(fs::path(profile).filename() == kProfiles[i / 2]);
    CHECK(fs::path(kit).filename() == (i % 2 == 0 ? "half-set.kit" : "pair-of-sixes.kit"));
    CheckArguments check;
    check.profiles = {profile};
    check.kit = kit;
    check.limit = "5";
    check.json = true;
    const Json alone = Json::parse(check_command(check).out).at(0);
    CHECK(answer.at("cuts") == alone.at("cuts"));
    CHECK(answer.at("reasons") == alone.at("reasons"));
    yes += answer.at("cuts") == true ? 1 : 0;
  }
  CHECK(yes == 5);
}

TEST_CASE("a no is no fault", "[app][survey]") {
  const Folder folder;
  lay_out(folder.path);
  const Outcome outcome = survey(folder.path);
  CHECK(outcome.code == kDone);
  CHECK(outcome.out.find("  hall-cyma.profile       yes  no\n") != std::string::npos);
}

TEST_CASE("only files with the ending count, and folders do not", "[app][survey]") {
  const Folder folder;
  lay_out(folder.path);
  std::ofstream(folder.path / "notes.txt") << "nothing of ours";
  std::ofstream(folder.path / ".profile") << "nor this";
  fs::create_directory(folder.path / "old.profile");
  CHECK(survey(folder.path).code == kDone);
}

TEST_CASE("faults in files come all together", "[app][survey]") {
  const Folder folder;
  lay_out(folder.path);
  std::ofstream(folder.path / "a.profile") << "stock 2 wide\n";
  std::ofstream(folder.path / "z.kit") << "round six\n";
  fs::create_symlink("nowhere", folder.path / "gone.profile");
  const Outcome outcome = survey(folder.path);
  CHECK(outcome.code == kBadInput);
  CHECK(outcome.out.empty());
  for (const char* words : {"a.profile:1:", "z.kit:1:", "gone.profile:1:1: error: there is no such file"}) {
    CAPTURE(words);
    CHECK(outcome.err.find(words) != std::string::npos);
  }
}

TEST_CASE("no folder, and nothing in it", "[app][survey]") {
  const Folder folder;
  SurveyArguments arguments;
  arguments.profiles = (folder.path / "nowhere").string();
  arguments.kits = folder.path.string();
  const Outcome outcome = survey_command(arguments);
  CHECK(outcome.code == kBadInput);
  CHECK(outcome.err.find("cannot be read as a folder: there is no such file or folder; name the folder that "
                         "the files are in\n") != std::string::npos);
  CHECK(outcome.err.find("has a name that ends in .kit; name the folder that they are in\n") !=
        std::string::npos);
}

TEST_CASE("more answers than a survey gives", "[app][survey]") {
  const Folder folder;
  for (int i = 0; i < 400; ++i) std::ofstream(folder.path / (std::to_string(i) + ".profile"));
  for (int i = 0; i < 251; ++i) std::ofstream(folder.path / (std::to_string(i) + ".kit"));
  const Outcome outcome = survey(folder.path);
  CHECK(outcome.code == kBadInput);
  CHECK(
      outcome.err ==
      "arrisline survey: error: 400 profiles and 251 kits are more than 100000 answers; name smaller "
      "folders; to raise this limit, make kMaxSurvey larger in include/arrisline/limits.h and build again\n");
}

TEST_CASE("a survey that is interrupted says what it has", "[app][survey]") {
  const Folder folder;
  lay_out(folder.path);
  const std::atomic<bool> interrupted{true};
  SurveyArguments arguments;
  arguments.profiles = arguments.kits = folder.path.string();
  arguments.outside.interrupt = &interrupted;
  const Outcome outcome = survey_command(arguments);
  CHECK(outcome.code == kInterrupted);
  CHECK(outcome.out.find("?") != std::string::npos);
}
