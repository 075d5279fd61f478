// The table of words against the readers: every example reads; no word of it can be misspelt without a
// mistake; and no word is written in the readers that the table lacks.
#include "text/vocabulary.h"

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "catch.h"
#include "text/elements.h"
#include "text/job_files.h"
#include "text/reading.h"
#include "wording/words.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

std::string lines_of(std::string_view statements) {
  std::string out;
  for (const char c : statements) out += c == ';' ? '\n' : c;
  return out + "\n";
}

bool begins_with(const std::string& statements, const std::string& word) {
  return std::regex_search(statements, std::regex("(^|\n) *" + word + "\\b"));
}

/// The errors in a file of the kind that has these statements, filled up to a whole file.
std::string mistakes_in(FileKind kind, const std::string& statements) {
  std::vector<Diagnostic> list;
  if (kind == FileKind::profile) {
    std::string text = statements;
    if (!begins_with(text, "stock")) text += "stock 2in wide, 3/4in thick\n";
    if (!begins_with(text, "start")) text += "start face 3/8in\nchamfer 3/8in\n";
    list = read_profile(text, "t.profile").diagnostics;
  } else if (kind == FileKind::kit) {
    list = read_kit(statements + "rebate 3/4in\n", "t.kit").diagnostics;
  } else {
    std::string text = statements;
    if (!begins_with(text, "kit")) text += "kit chest.kit\n";
    if (!begins_with(text, "mould")) text += "mould edge edge.profile length 10in\n";
    if (!begins_with(text, "blank")) text += "blank poplar 3/4in thick 5in wide 96in long\n";
    JobFiles files;
    files.missing = [](const std::string& name) -> std::optional<std::string> {
      if (name == "chest.kit" || name == "edge.profile") return std::nullopt;
      return "";
    };
    files.kit = [](const std::string&) { return read_kit("rebate 3/4\n", "chest.kit"); };
    files.profile = [](const std::string&) {
      return read_profile("stock 2 wide, 3/4 thick\nstart face 3/8\nchamfer 3/8\n", "edge.profile");
    };
    list = read_job(text, "t.job", files).diagnostics;
  }
  std::string out;
  for (const Diagnostic& diagnostic : list)
    if (diagnostic.severity == Severity::error) out += diagnostic.message + "\n";
  return out;
}

}  // namespace

TEST_CASE("every word of the table reads in its example, and misspelt it is a mistake", "[text][words]") {
  for (const Word& word : vocabulary()) {
    CAPTURE(std::string(word.word), std::string(word.within));
    CHECK(word.meaning.size() <= kMeaningColumns);
    REQUIRE_FALSE(word.in.empty());
    const std::string example = lines_of(word.example);
    CHECK(mistakes_in(word.in.front(), example).empty());

    const std::regex whole("(^|[ \n])" + std::string(word.word) + "(?=[ ,\n])");
    std::smatch found;
    REQUIRE(std::regex_search(example, found, whole));
    std::string misspelt = example;
    misspelt.replace(static_cast<std::size_t>(found.position(0)) + static_cast<std::size_t>(found.length(1)),
                     word.word.size(), "zzyx");
    CHECK_FALSE(mistakes_in(word.in.front(), misspelt).empty());
  }
}

TEST_CASE("every picture of the table is a profile without a mistake", "[text][words]") {
  int pictures = 0;
  for (const Word& word : vocabulary()) {
    if (word.picture.empty()) continue;
    CAPTURE(std::string(word.word));
    const std::string said = profile_messages(lines_of(word.picture));
    if (word.word == "curve")  // told how near its arcs lie, and nothing else
      CHECK(std::regex_match(said, std::regex("[^\n]*warning: the ellipse is drawn as [^\n]*\n")));
    else
      CHECK(said.empty());
    ++pictures;
  }
  CHECK(pictures == 22);  // 16 elements and trade shapes, 6 planes with a sole
}

TEST_CASE("every element, and every word that a reader asks for, is in the table", "[text][words]") {
  std::set<std::string> known;
  for (const Word& word : vocabulary()) known.insert(std::string(word.word));
  for (const std::string_view element : element_words()) CHECK(known.count(std::string(element)) == 1);

  // Literals in lists of words, and those that the next word is compared with.
  const std::regex list(R"((?:Words|string_view>)(?:&)? (?:k?\w+) = \{([^}]*)\})");
  const std::regex asked(
      R"((?:at_word|accept)\([^"()]*, "([a-z-]+)\"\)|(?:word|field|measure) == "([a-z-]+)\")");
  const std::regex any_of(R"(at_any\(statement, \{([^}]*)\}\))");
  const std::regex literal("\"([a-z-]+)\"");
  std::set<std::string> written;
  for (const auto& file :
       std::filesystem::directory_iterator(std::string(ARRISLINE_SOURCE_DIR) + "/src/text")) {
    const std::string name = file.path().filename().string();
    if (file.path().extension() != ".cpp" || name == "vocabulary.cpp" || name == "tidy.cpp") continue;
    std::ostringstream text;
    text << std::ifstream(file.path()).rdbuf();
    const std::string source = text.str();
    const auto add_all = [&](const std::string& part) {
      for (std::sregex_iterator it(part.begin(), part.end(), literal), none; it != none; ++it)
        written.insert((*it)[1]);
    };
    for (std::sregex_iterator it(source.begin(), source.end(), list), none; it != none; ++it)
      add_all((*it)[1]);
    for (std::sregex_iterator it(source.begin(), source.end(), any_of), none; it != none; ++it)
      add_all((*it)[1]);
    for (std::sregex_iterator it(source.begin(), source.end(), asked), none; it != none; ++it) {
      if ((*it)[1].matched) written.insert((*it)[1]);
      if ((*it)[2].matched) written.insert((*it)[2]);
    }
  }
  // A change of style in the readers must not make this test look at nothing.
  CHECK(written.size() >= 75);
  for (const std::string& word : written) {
    CAPTURE(word);
    CHECK(known.count(word) == 1);
  }
}

TEST_CASE("a file of one kind read as another is told so", "[text][words]") {
  CHECK(kit_messages("rebate 3/4\nstock 2 wide, 3/4 thick\n") ==
        "2:1: unknown word 'stock'; it belongs in a profile, and this is a kit: move it there\n");
  CHECK(profile_messages("Hollow 6\n") ==
        "1:1: this file is a kit, and a profile is expected here; name a profile here, and the kit after "
        "--kit\n");
  CHECK(mistakes_in(FileKind::job, "plough 1/4\n") ==
        "unknown word 'plough'; it belongs in a kit, and this is a job: move it there\n");
}

TEST_CASE("a decimal comma is told of", "[text][words]") {
  const std::string rest = "step down 1\nfillet out 9.5mm\n";
  CHECK(profile_messages("stock 50mm wide, 20mm thick\nstart face 9,5\n" + rest) ==
        "2:13: the line is complete before ','; write the decimal mark as a full stop: '9.5'\n");
  CHECK(profile_messages("stock 50mm wide, 20mm thick\nstart face 9, 5\n" + rest) ==
        "2:13: the line is complete before ','; leave it out, or put # before it if it is a remark\n");
}
