// Lines, tokens, places, and how a mistake is shown.
#include "wording/source.h"

#include "arrisline/limits.h"
#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

const std::string kSound =
    "profile p\nstock 2 wide, 3/4 thick\nstart face 1/2\nstep down 1/8\nbead out 3/8 down 3/8\nfillet out "
    "1/8";

}  // namespace

TEST_CASE("columns count characters, not bytes", "[text][source]") {
  const auto tokens = tokenise("  é½ bead,\tout 3/8#x", 7);
  REQUIRE(tokens.size() == 5);
  CHECK(tokens[0].text == "é½");
  CHECK(tokens[0].place.column == 3);
  CHECK(tokens[0].place.length == 2);
  CHECK(tokens[1].text == "bead");
  CHECK(tokens[1].place.column == 6);
  CHECK(tokens[2].text == ",");
  CHECK(tokens[4].text == "3/8");
  CHECK(tokens[4].place.column == 16);
  CHECK(tokens[4].place.line == 7);
}

TEST_CASE("a mistake is shown with its line and a caret range", "[text][mistakes]") {
  CHECK(shown(read_profile("stock 2 wide, 3/4 thick\nstart face 1/2\nbead out 3/8 dwon 3/8\n",
                           "hall.profile")) ==
        "hall.profile:3:14: error: unknown word 'dwon'; expected out, in, down, up, radius or large; did you "
        "mean "
        "'down'?\n"
        "  bead out 3/8 dwon 3/8\n"
        "               ^^^^\n");
}

TEST_CASE("characters before the mistake do not shift the caret", "[text][mistakes]") {
  CHECK(shown(read_kit("rebate 3/4\n\té½ 6\n", "k")) ==
        "k:2:2: error: unknown word 'é½'; see the words of a kit with: arrisline words\n   é½ 6\n   ^^\n");
}

TEST_CASE("control bytes are made visible", "[text][mistakes]") {
  CHECK(shown(read_kit("rebate 3/4\nhol\x1b[31m\x7f\n", "k\x1b")) ==
        "k\u241b:2:1: error: unknown word 'hol\u241b[31m\u2421'; see the words of a kit with: "
        "arrisline words\n"
        "  hol\u241b[31m\u2421\n"
        "  ^^^^^^^^^\n");
  // A right-to-left override would turn the message round.
  CHECK(shown(read_kit("rebate 3/4\nx\u202ey\n", "k")).find("'x\uFFFDy'") != std::string::npos);
}

TEST_CASE("a very long line is shown around the mistake", "[text][mistakes]") {
  const std::string text = "plough " + std::string(500000, ' ') + "x " + std::string(500000, 'y');
  const auto reading = read_kit(text, "k");
  REQUIRE(reading.diagnostics.size() >= 1);
  const Diagnostic& first = reading.diagnostics.front();
  CHECK(first.column == 500008);
  CHECK(first.source_line == "…" + std::string(40, ' ') + "x " + std::string(59, 'y') + "…");
  CHECK(first.source_column == 42);
}

TEST_CASE("line ends and the byte order mark make no difference", "[text][source]") {
  const auto plain = read_profile(kSound, "p");
  REQUIRE(plain.value.has_value());
  std::string dos = "\xEF\xBB\xBF";
  std::string mac;
  for (const char c : kSound) {
    dos += c == '\n' ? "\r\n" : std::string(1, c);
    mac += c == '\n' ? '\r' : c;
  }
  for (const std::string& text :
       {dos, mac, kSound + "\n", kSound + "\r\n\r\n", "# note\n" + kSound + " # note"}) {
    const auto reading = read_profile(text, "p");
    CHECK(messages(reading).empty());
    REQUIRE(reading.value.has_value());
    CHECK(area(reading.value->target) == area(plain.value->target));
    CHECK(reading.value->name == "p");
  }
  // A byte order mark takes no column, and CRLF no line of its own.
  CHECK(profile_messages("\xEF\xBB\xBFxyz\r\nstock 2 wide, 1 thick\r\nstart fase 1\r\n")
            .find("3:7: expected face") != std::string::npos);
}

TEST_CASE("words may be written large or small and wide apart", "[text][source]") {
  CHECK(profile_messages(
            "PROFILE x\nUnits INCH\nStock  2IN wide,3/4\"\tTHICK\nStart\u00A0FACE 1/2\nStep Down 1/8\n"
            "Bead Down 3/8,  OUT 3/8\nFillet out 1/8\n")
            .empty());
}

TEST_CASE("what is not text", "[text][source]") {
  CHECK(profile_messages("") == "1:1: the file is empty; to begin one, see: arrisline new --help\n");
  CHECK(profile_messages(" \n\n# only a note\n") ==
        "1:1: the file is empty; to begin one, see: arrisline new --help\n");
  CHECK(kit_messages(std::string("kit\0x", 5)) ==
        "1:1: this is no plain text; check that it is the file you meant; to begin a file, see: arrisline "
        "new --help\n");
  CHECK(kit_messages("rebate 3/4\nkit caf\xE9\n") ==
        "2:8: this letter is saved in a way that is not read; save the file with the encoding UTF-8\n");
  CHECK(kit_messages("rebate 3/4 # \xC0\x80\n") ==
        "1:14: this letter is saved in a way that is not read; save the file with the encoding UTF-8\n");
  CHECK(kit_messages("rebate 3/4 # \xED\xA0\x80\n") ==
        "1:14: this letter is saved in a way that is not read; save the file with the encoding UTF-8\n");
  CHECK(kit_messages("rebate 3/4 # \xF4\x90\x80\x80\n") ==
        "1:14: this letter is saved in a way that is not read; save the file with the encoding UTF-8\n");
  CHECK(kit_messages("rebate 3/4 # \xE2\x82") ==
        "1:14: this letter is saved in a way that is not read; save the file with the encoding UTF-8\n");
  CHECK(profile_messages(std::string(kMaxFileBytes + 1, '\n')) ==
        "1:1: the file is larger than 4 MB, the most that is read; check that it is the file you meant" +
            to_raise("kMaxFileBytes") + "\n");
}

TEST_CASE("a file of nothing but mistakes", "[text][mistakes]") {
  std::string text;
  for (int i = 0; i < 20000; ++i) text += "xyz\n";
  const auto reading = read_profile(text, "p");
  CHECK_FALSE(reading.value.has_value());
  REQUIRE(reading.diagnostics.size() == kMaxMistakes + 1);
  CHECK(reading.diagnostics.back().message ==
        "more than 10000 mistakes: reading stopped here; mend these first");
}

TEST_CASE("what a file without a name is called", "[text][source]") {
  CHECK(stem("a/b/hall.profile") == "hall");
  CHECK(stem("hall") == "hall");
  CHECK(stem(".kit") == ".kit");
}
