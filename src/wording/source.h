// The text of one file as lines and tokens, and the mistakes found in it.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/diagnostic.h"
#include "arrisline/limits.h"

namespace arrisline {

/// A reader stops after this many mistakes.
inline constexpr std::size_t kMaxMistakes = 10000;

/// A run of characters on one line; line and column from 1, in code points.
struct Place {
  int line = 1;
  int column = 1;
  int length = 1;
};

/// A word, a number or a comma: a view into the text and where it stands.
struct Token {
  std::string_view text;
  Place place;
};

/// The text of a file, cut into lines without their ends (LF, CRLF or CR); a byte order mark is skipped.
/// The views point into the text given, which must outlive it.
struct Source {
  std::string file;
  std::vector<std::string_view> lines;
};

Source split_lines(std::string_view text, const std::string& file);

/// The tokens of a line: runs of anything but blanks, commas and `#`, each comma by itself; a `#` ends the
/// line.
std::vector<Token> tokenise(std::string_view line, int number);
/// As above, but what begins with a quotation mark runs to the next one, whatever lies between, or to the end
/// of the line; the marks are part of the token.
std::vector<Token> tokenise_quoted(std::string_view line, int number);

/// From the first token's start to the last one's end; both on one line.
Place spanning(const Token& first, const Token& last);

/// The diagnostics of one file, in the order found.
struct Mistakes {
  const Source& source;
  std::vector<Diagnostic> list;
  std::size_t errors = 0;

  explicit Mistakes(const Source& of) : source(of) {}
  void error(Place place, std::string message);
  void warn(Place place, std::string message);
  bool full() const { return list.size() >= kMaxMistakes; }
};

/// In order of place, with a last line that says so where the reader stopped early.
std::vector<Diagnostic> in_order(Mistakes&& mistakes);

/// Refuses text that no statement can be read from: too large, holding NUL bytes, or empty. Reports bytes
/// that are not UTF-8 where they stand. False where reading should not go on.
bool check_text(std::string_view text, Mistakes& mistakes);

/// Reads one file with a reader of its statements: `Reader(mistakes).read()` gives what it found, which
/// counts only where there is no error.
template <class Reader, class T>
Reading<T> read_with(std::string_view text, const std::string& file) {
  const Source source = split_lines(text.size() > kMaxFileBytes ? std::string_view{} : text, file);
  Mistakes mistakes(source);
  Reading<T> reading;
  if (check_text(text, mistakes)) reading.value = Reader(mistakes).read();
  if (mistakes.errors > 0) reading.value.reset();
  reading.diagnostics = in_order(std::move(mistakes));
  return reading;
}

/// Bytes of the UTF-8 character that `text` starts with, 0 if it is not well formed. REQUIRES: not empty.
std::size_t utf8_length(std::string_view text);

/// The line as it can be shown: at most about 100 characters around the place.
void show_line(Diagnostic& diagnostic, std::string_view line);

/// The file's name without folders and ending: what a profile or a kit without a name is called.
std::string stem(const std::string& file);

}  // namespace arrisline
