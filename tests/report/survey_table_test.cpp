// The table of a survey, its width and what it comes to.
#include "report/survey_table.h"

#include <algorithm>
#include <sstream>

#include "arrisline/report.h"
#include "catch.h"

using namespace arrisline;

namespace {

std::vector<std::string> numbered(const std::string& stem, int count) {
  std::vector<std::string> out;
  for (int i = 1; i <= count; ++i) out.push_back(stem + std::to_string(i));
  return out;
}

std::size_t widest(const std::string& text) {
  std::istringstream stream(text);
  std::size_t out = 0;
  for (std::string line; std::getline(stream, line);) out = std::max(out, line.size());
  return out;
}

std::size_t times(const std::string& text, const std::string& words) {
  std::size_t out = 0;
  for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) ++out;
  return out;
}

}  // namespace

TEST_CASE("a survey as a table", "[report][survey]") {
  const Survey survey{{"a.profile", "long name.profile", "never.profile"},
                      {"half set.kit", "two.kit"},
                      {Cuts::yes, Cuts::no, Cuts::undecided, Cuts::no, Cuts::no, Cuts::no}};
  CHECK(survey_table(survey) ==
        "Which kit cuts which profile\n"
        "\n"
        "  1  half set.kit\n"
        "  2  two.kit\n"
        "\n"
        "                     1    2\n"
        "  a.profile          yes  no\n"
        "  long name.profile  ?    no\n"
        "  never.profile      no   no\n"
        "\n"
        "Cut by none of the kits: never.profile.\n"
        "Not known to be cut by any: long name.profile.\n"
        "?: the search reached its limit before it found a plan; --limit makes it longer.\n");
}

TEST_CASE("a survey in which all is well", "[report][survey]") {
  const std::string table = survey_table({{"a"}, {"k", "l"}, {Cuts::no, Cuts::yes}});
  CHECK(table.find("\nEach of the profiles is cut by at least one of the kits.\n") != std::string::npos);
  CHECK(table.find("?") == std::string::npos);
}

TEST_CASE("many kits make several tables, none wider than the page", "[report][survey]") {
  for (const std::size_t kits : {1U, 7U, 12U, 13U, 99U, 120U, 300U}) {
    for (const std::string& stem : {std::string("p"), std::string(60, 'p')}) {
      CAPTURE(kits, stem);
      Survey survey{
          numbered(stem, 3), numbered(std::string(kits == 7 ? 100 : 3, 'k'), static_cast<int>(kits)), {}};
      survey.cuts.assign(3 * kits, Cuts::yes);
      const std::string table = survey_table(survey);
      CHECK(widest(table) <= kPageColumns);
      CHECK(times(table, "yes") == 3 * kits);  // every answer once
      // In the list and at the head of a column.
      std::size_t named = 0;
      for (std::size_t k = 1; k <= kits; ++k) {
        const std::string number = " " + std::to_string(k);
        named += times(table, number + " ") + times(table, number + "\n") >= 2 ? 1 : 0;
      }
      CHECK(named == kits);
    }
  }
}

TEST_CASE("names in a survey are fit for a terminal", "[report][survey]") {
  const std::string table = survey_table({{"a\x1b[31m\n.profile"}, {"k\x07.kit"}, {Cuts::no}});
  CHECK(table.find('\x1b') == std::string::npos);
  CHECK(table.find('\x07') == std::string::npos);
  CHECK(table.find("a\\x1b[31m") != std::string::npos);
}
