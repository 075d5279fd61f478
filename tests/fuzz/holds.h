// What the fuzzers hold of whatever was read. A broken promise ends the fuzzer, which keeps the input.
#pragma once

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/read.h"
#include "wording/source.h"

namespace arrisline::fuzz {

inline void hold(bool held, const char* promise, std::string_view seen = {}) {
  if (held) return;
  std::fprintf(stderr, "broken: %s\n%.*s\n", promise, static_cast<int>(seen.size()), seen.data());
  std::abort();
}

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

/// Nothing that a terminal would act on, and no byte that is not UTF-8.
inline void hold_shown(std::string_view text) {
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t size = utf8_length(rest);
    const auto byte = static_cast<unsigned char>(rest.front());
    hold(size > 0, "what is shown is UTF-8", text);
    hold(rest.front() == '\n' || (byte >= 0x20 && byte != 0x7F), "no control byte is shown", text);
    const bool c1 = size == 2 && byte == 0xC2 && static_cast<unsigned char>(rest[1]) < 0xA0;
    hold(!c1, "no control character is shown", text);
    rest.remove_prefix(size);
  }
}

/// The lines of a text, split here by other means than the reader's.
inline std::vector<std::string> lines_of(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  std::vector<std::string> lines(1);
  char before = 0;
  for (const char c : text) {
    if (c == '\r' || (c == '\n' && before != '\r')) {
      lines.emplace_back();
    } else if (c != '\n') {
      lines.back() += c;
    }
    before = c;
  }
  return lines;
}

/// A mistake stands inside the text, or right after the end of a line, and can be shown.
template <class T>
void hold_diagnostics(const Reading<T>& reading, std::string_view text) {
  const std::vector<std::string> lines = lines_of(text);
  bool wrong = false;
  const Diagnostic* before = nullptr;
  hold(reading.diagnostics.size() <= kMaxMistakes + 1, "mistakes are bounded");
  for (const Diagnostic& one : reading.diagnostics) {
    const std::string shown = format(one);
    hold_shown(shown);
    wrong = wrong || one.severity == Severity::error;
    hold(!one.message.empty(), "a mistake has a message", shown);
    hold(one.line >= 1 && static_cast<std::size_t>(one.line) <= lines.size(), "a line of the text", shown);
    // A byte is at least as many characters as one; a mistake about what is missing is right after the last.
    const std::string& line = lines[static_cast<std::size_t>(one.line - 1)];
    hold(one.column >= 1 && static_cast<std::size_t>(one.column) <= line.size() + 1, "a column of the line",
         shown);
    hold(one.length >= 1 && static_cast<std::size_t>(one.column + one.length) <= line.size() + 2,
         "the carets are under the line", shown);
    const bool in_order = before == nullptr || before->line < one.line ||
                          (before->line == one.line && before->column <= one.column);
    hold(in_order, "mistakes come in the order of the file", shown);
    before = &one;
  }
  hold(reading.value.has_value() != wrong, "something is read exactly when no mistake is an error");
}

}  // namespace arrisline::fuzz
