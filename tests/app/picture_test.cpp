// A picture is drawn unasked on a terminal, and nowhere else.
#include <algorithm>
#include <string>
#include <vector>

#include "app/terminal.h"
#include "catch.h"

using arrisline::test::shell_writes;

namespace {

constexpr const char* kPicture = "The section of bookcase stile";

/// What `plan` writes to a terminal of its own, or to a pipe.
std::string written(bool terminal, const std::vector<std::string>& settings, const std::string& options) {
  std::string command = "cd '" ARRISLINE_SOURCE_DIR "/examples' && exec env -u NO_COLOR";
  for (const std::string& setting : settings) command += " " + setting;
  command += " '" ARRISLINE_PROGRAM "' plan bookcase-stile.profile --kit half-set.kit " + options;
  const std::string text = shell_writes(command, terminal);
  CHECK(text.find("Cut list: bookcase stile") != std::string::npos);
  return text;
}

bool drawn(const std::string& text) {
  return text.find(kPicture) != std::string::npos;
}

bool only_ascii(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// The picture, up to the list.
std::string picture(const std::string& text) {
  return text.substr(0, text.find("Cut list"));
}

}  // namespace

TEST_CASE("a picture is drawn on a terminal, not in a pipe", "[app][characters]") {
  const std::vector<std::string> usual = {"TERM=xterm", "LC_ALL=C.UTF-8"};
  CHECK(drawn(written(true, usual, "")));
  CHECK_FALSE(drawn(written(true, usual, "--no-picture")));
  CHECK_FALSE(drawn(written(false, usual, "")));
  CHECK(drawn(written(false, usual, "--picture")));
  CHECK(drawn(written(false, usual, "--steps")));
}

TEST_CASE("a dumb terminal has a picture only where it is asked for", "[app][characters]") {
  const std::vector<std::string> dumb = {"TERM=dumb", "LC_ALL=C.UTF-8"};
  CHECK_FALSE(drawn(written(true, dumb, "")));
  CHECK(drawn(written(true, dumb, "--picture")));
}

TEST_CASE("a terminal that is not UTF-8 has a picture in ASCII", "[app][characters]") {
  CHECK_FALSE(only_ascii(picture(written(true, {"TERM=xterm", "LC_ALL=C.UTF-8"}, ""))));
  CHECK(only_ascii(picture(written(true, {"TERM=xterm", "LC_ALL=C.UTF-8"}, "--ascii"))));
  for (const char* locale : {"LC_ALL=C", "LC_ALL=no_SUCH.UTF-8"}) {
    const std::string text = written(true, {"TERM=xterm", locale}, "");
    CHECK(drawn(text));
    CHECK(only_ascii(picture(text)));
  }
}
