// Words measured without a font: wrapped, cut down, boxed.
#include "catch.h"
#include "sheet/drawing.h"

using namespace arrisline;

TEST_CASE("wrapped words keep to the width and lose nothing", "[sheet]") {
  const std::string words =
      "Hold it leaning 57.5 degrees toward the edge, the middle of the sole about 7/32 in from the edge";
  for (const double width : {200.0, 60.0, 30.0, 20.0}) {
    std::string joined;
    for (const std::string& line : wrapped(words, 3, width)) {
      CHECK(text_width(line, 3) <= width);
      joined += (joined.empty() ? "" : " ") + line;
    }
    CHECK(joined == words);
  }
}

TEST_CASE("a word too long for a line is broken between characters, never inside one", "[sheet]") {
  std::string word;
  for (int i = 0; i < 500; ++i) word += "ü";
  std::string joined;
  for (const std::string& line : wrapped(word, 3, 40)) {
    CHECK(text_width(line, 3) <= 40);
    CHECK(line.size() % 2 == 0);
    joined += line;
  }
  CHECK(joined == word);
  CHECK(wrapped("", 3, 40).empty());
  CHECK(wrapped("wide", 3, 0.1).size() == 4);
}

TEST_CASE("words cut down end in three dots and keep to the width", "[sheet]") {
  CHECK(fitted("short", 3, 100) == "short");
  const std::string cut = fitted(std::string(10000, 'w'), 3, 50);
  CHECK(cut.ends_with("..."));
  CHECK(text_width(cut, 3) <= 50);
}

TEST_CASE("a label's box follows its anchor", "[sheet]") {
  const double width = text_width("1/2 in", 3);
  const Label start{{10, 20}, "1/2 in", 3, Anchor::start, false};
  Label other = start;
  CHECK(box_of(start).x0 == 10);
  CHECK(box_of(start).x1 == 10 + width);
  other.anchor = Anchor::end;
  CHECK(box_of(other).x1 == 10);
  other.anchor = Anchor::middle;
  CHECK(box_of(other).x0 == 10 - width / 2);
  CHECK(box_of(start).y0 < 20);
  CHECK(box_of(start).y1 > 20);
  CHECK(text_width("bold", 3, true) > text_width("bold", 3));
}
