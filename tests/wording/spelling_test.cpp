// Lengths as books, word processors and other lands write them.
#include "wording/spelling.h"

#include "catch.h"

using namespace arrisline;

TEST_CASE("what was meant for a length is written as the files take it", "[text][spelling]") {
  CHECK(as_written_here("½") == "; write '1/2'");
  CHECK(as_written_here("1½") == "; write '1-1/2'");
  CHECK(as_written_here("1-½") == "; write '1-1/2'");
  CHECK(as_written_here("¾″") == "; write '3/4in'");
  CHECK(as_written_here("3⁄8") == "; write '3/8'");
  CHECK(as_written_here("1–1/2") == "; write '1-1/2'");
  CHECK(as_written_here("3/4in.") == "; write '3/4in'");
  CHECK(as_written_here("3/4;") == "; write '3/4'");
  CHECK(as_written_here("“3/8”") == "; write '3/8'");
  CHECK(as_written_here("3/8''") == "; write '3/8in'");
  CHECK(as_written_here("3/8'") == "; write '3/8in'");
  CHECK(as_written_here("2'") == "; write '2ft'");
  CHECK(as_written_here("2inches") == "; write '2in'");
  CHECK(as_written_here("1.2cm") == "; write '12mm'");
  CHECK(as_written_here("1/2cm") == "; write '5mm'");
}

TEST_CASE("nothing is made of what is a length already, or of what is none", "[text][spelling]") {
  for (const char* word : {"", "3/8", "1-1/2", "9.5mm", "3/8\"", "2ft", "wide", "–", "½½", "cm", "1/½",
                           "-3/8", "\xC2", "..", "3/8furlong"}) {
    CAPTURE(word);
    CHECK(as_written_here(word).empty());
  }
  CHECK(as_written_here(std::string(41, '1') + "½").empty());
}

TEST_CASE("a decimal comma is written as a full stop, and a thousand without its comma", "[text][spelling]") {
  CHECK(without_comma("9", "5") == "; write the decimal mark as a full stop: '9.5'");
  CHECK(without_comma("0", "125") == "; write the decimal mark as a full stop: '0.125'");
  CHECK(without_comma("1", "000") == "; write it without a comma: '1.000' or '1000'");
  CHECK(without_comma("1200", "125") == "; write the decimal mark as a full stop: '1200.125'");
}
