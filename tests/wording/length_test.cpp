// Lengths in every form that docs/files.md allows, and the reasons given for the rest.
#include "arrisline/length.h"

#include <vector>

#include "catch.h"

using namespace arrisline;

namespace {

std::string refusal(const std::string& text) {
  std::string why;
  CHECK_FALSE(parse_length(text, Unit::inch, &why).has_value());
  return why;
}

}  // namespace

TEST_CASE("lengths in inches", "[text][length]") {
  const std::vector<std::pair<std::string, double>> cases = {
      {"3/8", 9.525},       {"1 1/2", 38.1},    {"1-1/2", 38.1},
      {".375", 9.525},      {"0.375in", 9.525}, {"9.5mm", 9.5},
      {"2ft", 609.6},       {"5", 127},         {"3/8\"", 9.525},
      {"1 1/2in", 38.1},    {"1-1/2\"", 38.1},  {"5/4", 31.75},
      {"1 5/4", 57.15},     {"3/8IN", 9.525},   {"  3/8  ", 9.525},
      {"1/2ft", 152.4},     {"1 1/2ft", 457.2}, {"3/8\u2033", 9.525},
      {"3/8\u201D", 9.525}, {"2.", 50.8},       {"1 1/2mm", 1.5},
      {"10000mm", 10000},   {"0", 0},           {"03/08", 9.525}};
  for (const auto& [text, mm] : cases) {
    CAPTURE(text);
    std::string why;
    const auto length = parse_length(text, Unit::inch, &why);
    CAPTURE(why);
    REQUIRE(length.has_value());
    CHECK(*length == Approx(mm).epsilon(1e-15));
  }
}

TEST_CASE("a bare number has the file's unit, a unit written against it has the last word",
          "[text][length]") {
  CHECK(parse_length("9.5", Unit::mm, nullptr) == 9.5);
  CHECK(parse_length("1/2", Unit::mm, nullptr) == 0.5);
  CHECK(parse_length("1in", Unit::mm, nullptr) == 25.4);
  CHECK(parse_length("393 177/254in", Unit::inch, nullptr).has_value());  // 10 m
}

TEST_CASE("what is no length, and why", "[text][length]") {
  CHECK(refusal("") == "expected a length, such as 3/8, 1 1/2, .375 or 9.5mm");
  CHECK(refusal("1/2 1/2") == "expected one length, such as 3/8, 1 1/2, .375 or 9.5mm");
  CHECK(refusal("1 1/2 1/4") == "expected one length, such as 3/8, 1 1/2, .375 or 9.5mm");
  CHECK(refusal("1.5 1/2") == "expected one length, such as 3/8, 1 1/2, .375 or 9.5mm");
  CHECK(refusal("1,2") == "a comma parts the number; write the decimal mark as a full stop: '1.2'");
  CHECK(refusal("1, 2") == "expected one length, such as 3/8, 1 1/2, .375 or 9.5mm");
  CHECK(refusal("3/8 in") == "write a unit against its number: 3/8in");
  CHECK(refusal("9.5 mm") == "write a unit against its number: 9.5mm");
  CHECK(refusal("1/0") == "'1/0': a fraction cannot have 0 below the line; write one such as 3/8");
  CHECK(refusal("1 1/0") == "expected one length, such as 3/8, 1 1/2, .375 or 9.5mm");
  CHECK(refusal("1-1/0") == "'1-1/0': a fraction cannot have 0 below the line; write one such as 3/8");
  CHECK(refusal("1e999") == "'1e999' is short for a longer number; write it out in full, as 0.005");
  CHECK(refusal("1e-3") == "'1e-3' is short for a longer number; write it out in full, as 0.005");
  CHECK(refusal("nan") == "'nan' is not a number; write one such as 3/8 or 9.5");
  CHECK(refusal("inf") == "'inf' is not a number; write one such as 3/8 or 9.5");
  CHECK(refusal("-1") == "'-1' has a sign, and numbers here have none; leave it out");
  CHECK(refusal("+1") == "'+1' has a sign, and numbers here have none; leave it out");
  CHECK(refusal("\u22121") == "'\u22121' has a sign, and numbers here have none; leave it out");
  CHECK(refusal("10001mm") ==
        "'10001mm' is over 10 m, the longest that is read; check the figure and its unit");
  CHECK(refusal("393 3/4") ==
        "'393 3/4' is over 10 m, the longest that is read; check the figure and its unit");
  CHECK(refusal("3/8cm") == "'3/8cm': 'cm' is not a unit; expected in, mm or ft; write '3.75mm'");
  CHECK(refusal("0x10") == "'0x10': 'x10' is not a unit; expected in, mm or ft");
  CHECK(refusal("1/2/3") == "'1/2/3': '/3' is not a unit; expected in, mm or ft");
  CHECK(refusal("3/") == "'3/': write a fraction without blanks, as 3/8");
  CHECK(refusal("/8") == "'/8': write a fraction without blanks, as 3/8");
  CHECK(refusal("1.5/8") == "'1.5/8': a fraction is of two whole numbers, as 3/8");
  CHECK(refusal("1/8.5") == "'1/8.5': a fraction is of two whole numbers, as 3/8");
  CHECK(refusal("1-2") == "'1-2': after the hyphen a fraction is expected, as 1-1/2");
  CHECK(refusal("1.5-1/2") == "'1.5-1/2': only a whole number has a fraction joined to it, as 1-1/2");
  CHECK(refusal("1..2") == "'1..2' has more than one decimal point; leave one, as in 1.5");
  CHECK(refusal(".") == "'.' is not a number; write one such as 3/8 or 9.5");
  CHECK(refusal(std::string(41, '1')) == "'" + std::string(40, '1') + "…' has more than 40 digits; round it");
  CHECK(refusal("1/" + std::string(41, '1')) ==
        "'1/" + std::string(38, '1') + "…' has more than 40 digits; round it");
}
