// Places by byte: the line, the column in characters, the carets.
#include "trace/faults.h"

#include "catch.h"
#include "text/reading.h"

using namespace arrisline;

TEST_CASE("a byte of a text has its line and column", "[trace][faults]") {
  const std::string text =
      "\xEF\xBB\xBF"
      "ab\r\n\u00e9c\rd\n\ne";
  const Faults faults(text, "f");
  const auto at = [&](std::string_view what) {
    const Place place = faults.place(text.find(what));
    return std::pair(place.line, place.column);
  };
  CHECK(at("a") == std::pair(1, 1));
  CHECK(at("b") == std::pair(1, 2));
  CHECK(at("\r\n") == std::pair(1, 3));
  CHECK(at("\n\u00e9") == std::pair(1, 3));
  CHECK(at("c") == std::pair(2, 2));
  CHECK(at("d") == std::pair(3, 1));
  CHECK(at("\ne") == std::pair(4, 1));
  CHECK(at("e") == std::pair(5, 1));
  CHECK(faults.place(text.size()).column == 2);
  CHECK(faults.place(0).column == 1);
  CHECK(spoken(faults.place(text.find("c"))) == "line 2, column 2");
  CHECK(spoken(1.5, -2) == "(1.5, -2)");
}

TEST_CASE("errors are kept though there are many warnings", "[trace][faults]") {
  Faults faults("one\ntwo\n", "f");
  for (int i = 0; i < 100; ++i) faults.warn({4, 3}, "odd");
  CHECK_FALSE(faults.full());
  faults.error({0, 3}, "wrong");
  CHECK(faults.errors == 1);
  const std::vector<Diagnostic> list = std::move(faults).in_order();
  REQUIRE(list.size() == kMaxTraceMistakes + 1);
  CHECK(format(list[0]) == "f:1:1: error: wrong\n  one\n  ^^^\n");
  CHECK(format(list[1]) == "f:2:1: warning: odd\n  two\n  ^^^\n");
}
