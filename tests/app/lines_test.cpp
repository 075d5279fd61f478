// Lines from a descriptor, whatever pieces they come in.
#include "app/lines.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <thread>
#include <vector>

#include "app/pipe.h"
#include "catch.h"

using namespace arrisline;
using test::Pipe;
using Got = LineReader::Got;

namespace {

/// What is read of a text that comes in pieces of so many bytes: each line, or "<too long>".
std::vector<std::string> lines_of(const std::string& text, std::size_t piece, std::size_t most) {
  Pipe pipe;
  std::thread writing([&] {
    for (std::size_t at = 0; at < text.size(); at += piece) pipe.write(text.substr(at, piece));
    pipe.close_in();
  });
  const std::atomic<bool> leave_off{false};
  LineReader reader(pipe.out(), most, leave_off);
  std::vector<std::string> out;
  std::string line;
  for (Got got = reader.next(line); got != Got::end; got = reader.next(line)) {
    CHECK((got == Got::line || got == Got::too_long));
    out.push_back(got == Got::line ? line : "<too long>");
  }
  CHECK(reader.next(line) == Got::end);
  writing.join();
  return out;
}

}  // namespace

TEST_CASE("lines are the same whatever pieces they come in", "[app][stream]") {
  const std::string text = "one\n\ntwo\r\n" + std::string(10, 'x') + "\n" + std::string(11, 'y') + "\nlast";
  const std::vector<std::string> expected = {"one", "", "two\r", std::string(10, 'x'), "<too long>", "last"};
  for (const std::size_t piece : {std::size_t{1}, std::size_t{3}, std::size_t{7}, text.size()}) {
    CAPTURE(piece);
    CHECK(lines_of(text, piece, 10) == expected);
  }
}

TEST_CASE("a last line needs no end, and an end makes no line more", "[app][stream]") {
  CHECK(lines_of("", 1, 10).empty());
  CHECK(lines_of("\n", 1, 10) == std::vector<std::string>{""});
  CHECK(lines_of("a", 1, 10) == std::vector<std::string>{"a"});
  CHECK(lines_of("a\n", 1, 10) == std::vector<std::string>{"a"});
  CHECK(lines_of(std::string(11, 'a'), 4, 10) == std::vector<std::string>{"<too long>"});
}

TEST_CASE("lines longer than what is read at once", "[app][stream]") {
  const std::string longer(200'000, 'a'), longest(300'000, 'b');
  const std::vector<std::string> lines = lines_of(longest + "\n" + longer + "\nc\n", 50'000, 250'000);
  CHECK((lines == std::vector<std::string>{"<too long>", longer, "c"}));
}

TEST_CASE("reading ends at an interruption though nothing more comes", "[app][stream]") {
  Pipe pipe;
  pipe.write("a\nhalf a li");
  std::atomic<bool> leave_off{false};
  LineReader reader(pipe.out(), 10, leave_off);
  std::string line;
  CHECK(reader.next(line) == Got::line);
  CHECK(line == "a");
  leave_off.store(true);
  CHECK(reader.next(line) == Got::left_off);
}

TEST_CASE("a folder is no input", "[app][stream]") {
  const int folder = ::open("/", O_RDONLY);
  REQUIRE(folder >= 0);
  const std::atomic<bool> leave_off{false};
  LineReader reader(folder, 10, leave_off);
  std::string line;
  const Got got = reader.next(line);
  const int why = errno;
  CHECK(got == Got::failed);
  CHECK(why == EISDIR);
  ::close(folder);
}
