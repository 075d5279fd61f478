// Files far larger than any maker writes are read or refused, and never a crash. How long they take is for
// tests/bench.
#include <random>

#include "arrisline/limits.h"
#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

std::string repeated(const std::string& text, int count) {
  std::string out;
  for (int i = 0; i < count; ++i) out += text;
  return out;
}

}  // namespace

TEST_CASE("a profile of 100 000 elements is read", "[text][sizes]") {
  const std::string start = "units mm\nstock 2000 wide 2000 thick\nstart face 1000\n";
  const std::string stairs = start + repeated("step down .01\nfillet out .02\n", 50000);
  const Reading<Section> reading = read_profile(stairs, "p");
  REQUIRE(reading.value.has_value());
  CHECK(reading.value->elements.size() == 100000);
  CHECK(reading.value->target.size() == 100004);
  CHECK(messages(read_profile(stairs + "step down .01\n", "p")) ==
        "100004:1: a profile has at most 100000 elements; draw it as several" + to_raise("kMaxElements") +
            "\n");
}

TEST_CASE("100 000 arcs that do not cross, and that do", "[text][sizes]") {
  std::string reeds = "units mm\nstock 2000 wide 200 thick\nstart face 1999.96\nstep down 100\n";
  for (int i = 0; i < 49999; ++i) reeds += "bead out .02 radius .01\ncove out .02 radius .01\n";
  CHECK(read_profile(reeds, "p").value.has_value());

  std::mt19937 random(5);
  std::string tangle = "units mm\nstock 2000 wide 2000 thick\nstart face 1000\nstep down 1000\n";
  for (int i = 0; i < 49998; ++i) {
    tangle += "bead " + std::string(i % 2 == 0 ? "out " : "in ") + std::to_string(1 + random() % 20) +
              " radius 12\n";
    tangle +=
        "step " + std::string(random() % 2 == 0 ? "down " : "up ") + std::to_string(1 + random() % 3) + "\n";
  }
  CHECK_FALSE(read_profile(tangle, "p").value.has_value());
}

TEST_CASE("a line of a megabyte", "[text][sizes]") {
  const std::string million(1000000, 'a');
  for (const std::string& text :
       {"profile " + million, "stock " + million, million, "start face " + repeated("1", 1000000),
        "bead " + repeated("out 1 ", 170000), "bead " + repeated(", ", 500000), repeated("# ", 500000)}) {
    CHECK_FALSE(read_profile("stock 2 wide 1 thick\n" + text, "p").value.has_value());
  }
  CHECK(messages(read_kit("plough " + repeated("1/8, ", 200000) + "1", "k")) ==
        "1:1: a kit has at most 1000 planes; leave some out" + to_raise("kMaxPlanes") + "\n");
  CHECK(messages(read_kit("rebate 1\nboard stops at " + repeated("1, ", 300000) + "1", "k")) ==
        "2:3016: a board has at most 1000 stops; leave some out" + to_raise("kMaxStops") + "\n");
  CHECK(read_kit("kit " + std::string(kMaxName, 'a') + "\nrebate 1\n", "k").value.has_value());
  for (const std::string& text : {"kit " + million, "rebate 1\nshaped " + million + "\nfillet out 1\nend\n"})
    CHECK(messages(read_kit(text, "k"))
              .find("the name is longer than 1000 letters; shorten it" + to_raise("kMaxName")) !=
          std::string::npos);
}

TEST_CASE("a line over a megabyte is refused", "[text][sizes]") {
  const std::string start = "stock 2 wide 1 thick\n";
  CHECK(profile_messages(start + std::string(kMaxLineBytes, ' ')).find("MB, the most") == std::string::npos);
  CHECK(profile_messages(start + std::string(kMaxLineBytes + 1, ' ') + "\nfoo") ==
        "2:1: the line is longer than 1 MB, the most that is read; write it as several" +
            to_raise("kMaxLineBytes") + "\n");
}

TEST_CASE("of one line twenty mistakes are reported", "[text][sizes]") {
  const auto reading =
      read_profile("stock 2 wide 1 thick\nstart face 1\nbead " + repeated("oot 1 ", 1000), "p");
  CHECK(reading.diagnostics.size() == 20);
}

TEST_CASE("a kit of too many planes", "[text][sizes]") {
  CHECK(read_kit(repeated("hollow 6\n", 1000), "k").value->planes.back().label == "hollow 6 (1000)");
  CHECK(kit_messages(repeated("hollow 6\n", 1001)) ==
        "1001:1: a kit has at most 1000 planes; leave some out" + to_raise("kMaxPlanes") + "\n");
  CHECK(kit_messages("shaped s\n" + repeated("fillet out 1mm\n", 1001) + "end\n")
            .find("the sole of a shaped plane has at most 1000 elements; leave some out" +
                  to_raise("kMaxSole")) != std::string::npos);
}

TEST_CASE("text put together at random never breaks a reader", "[text][sizes]") {
  const std::vector<std::string> words = {
      "profile",  "units",   "inch",  "mm",     "stock",  "2",      "wide",  "3/4",      "thick", "start",
      "face",     "back",    "side",  "bead",   "cove",   "out",    "in",    "down",     "up",    "radius",
      "large",    "ogee",    "torus", "1/0",    "0",      "1e9",    "-1",    ",",        "\n",    "\n",
      "\n",       "#",       "\xFF",  "\"",     "hollow", "6",      "round", "plough",   "body",  "above",
      "shaped",   "end",     "shop",  "weight", "board",  "stops",  "at",    "number",   "arc",   "1-1/2",
      ".0000001", "scotia",  "quirk", "step",   "fillet", "9999mm", "bevel", "astragal", "é",     "kit",
      "rebate",   "scraper", "reach", "deep",   "width",  "fence"};
  const unsigned seed = 99;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  int sound_kits = 0;
  for (int round = 0; round < 20000; ++round) {
    std::string text;
    const int count = static_cast<int>(random() % (round % 4 == 0 ? 5 : 25));
    for (int i = 0; i < count; ++i) {
      text += words[random() % words.size()];
      text += random() % 8 == 0 ? "" : " ";
    }
    const auto profile =
        read_profile((round % 2 == 0 ? "stock 2 wide, 1 thick\nstart face 1\n" : "") + text, "p");
    const auto kit = read_kit((round % 3 == 0 ? "hollow 6\n" : "") + text, "k");
    CHECK(profile.value.has_value() == (shown(profile).find(": error: ") == std::string::npos));
    CHECK(kit.value.has_value() == (shown(kit).find(": error: ") == std::string::npos));
    for (const Diagnostic& diagnostic : profile.diagnostics) {
      CHECK(diagnostic.line >= 1);
      CHECK(diagnostic.column >= 1);
      CHECK(diagnostic.length >= 1);
    }
    sound_kits += kit.value.has_value() ? 1 : 0;
  }
  CHECK(sound_kits > 20);
}
