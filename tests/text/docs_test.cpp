// Every example in docs/files.md reads as it says.
#include <fstream>
#include <sstream>

#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

TEST_CASE("the examples of the description of the files", "[text][docs]") {
  std::ifstream stream(std::string(ARRISLINE_SOURCE_DIR) + "/docs/files.md");
  REQUIRE(stream);
  std::string line;
  std::string block;
  bool inside = false;
  int profiles = 0;
  int kits = 0;
  int mistakes = 0;
  while (std::getline(stream, line)) {
    if (line.substr(0, 3) != "```") {
      if (inside) block += line + "\n";
      continue;
    }
    inside = !inside;
    if (inside) continue;
    CAPTURE(block);
    if (block.find("error: ") != std::string::npos) {
      ++mistakes;
      CHECK(
          shown(read_profile(
              "profile p\n\n\nstock 2 wide, 3/4 thick\nstart face 1\nstep down 1/8\nbead out 3/8 dwon 3/8\n",
              "table.profile")) == block);
    } else if (block.find("stock") != std::string::npos) {
      ++profiles;
      CHECK(messages(read_profile(block, "p")).empty());
    } else {
      ++kits;
      CHECK(messages(read_kit(block, "k")).empty());
    }
    block.clear();
  }
  CHECK(profiles == 2);
  CHECK(kits == 2);
  CHECK(mistakes == 1);
}
