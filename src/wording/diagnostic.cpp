// How a mistake is shown: the place, the message, the line and a caret range beneath it. Every character
// shown takes one column, so tabs become blanks and control bytes become visible signs. Shown by
// tests/wording/source_test.cpp.
#include <algorithm>

#include "wording/source.h"

namespace arrisline {

/// Longest line shown whole, and how much of a longer one is shown on each side of the fault.
static constexpr int kShownWhole = 100;
static constexpr int kShownBefore = 40;
static constexpr int kShownAfter = 60;

static std::size_t character_length(std::string_view text) {
  return std::max<std::size_t>(1, utf8_length(text));
}

void show_line(Diagnostic& diagnostic, std::string_view line) {
  const int first = std::max(1, diagnostic.column - kShownBefore);
  const int last = diagnostic.column + kShownAfter;
  std::size_t from = 0;
  std::size_t to = line.size();
  int column = 1;
  std::size_t at = 0;
  for (; at < line.size() && column <= last; ++column) {
    if (column == first) from = at;
    at += character_length(line.substr(at));
    to = at;
  }
  const bool cut_after = to < line.size();
  if (!cut_after && column - 1 <= kShownWhole) from = 0;
  const bool cut_before = from > 0;
  diagnostic.source_column = diagnostic.column;
  if (cut_before) diagnostic.source_column = diagnostic.column - first + 2;
  diagnostic.source_line = (cut_before ? "…" : "") + std::string(line.substr(from, to - from));
  if (cut_after) diagnostic.source_line += "…";
}

/// Characters that would move the caret, turn the writing direction or speak to the terminal.
static bool is_unseen(std::string_view character) {
  if (character.size() == 2) return character[0] == '\xC2' && static_cast<unsigned char>(character[1]) < 0xA0;
  if (character.size() != 3 || character[0] != '\xE2') return false;
  const unsigned low = (static_cast<unsigned char>(character[1]) & 0x3Fu) << 6 |
                       (static_cast<unsigned char>(character[2]) & 0x3Fu);
  const unsigned code = 0x2000u | low;
  return (code >= 0x200B && code <= 0x200F) || (code >= 0x2028 && code <= 0x202E) ||
         (code >= 0x2060 && code <= 0x206F);
}

static std::string visible(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::size_t size = utf8_length(text);
    const auto byte = static_cast<unsigned char>(text.front());
    if (size == 0 || is_unseen(text.substr(0, size))) {
      out += "\uFFFD";
    } else if (byte == '\t') {
      out += ' ';
    } else if (byte < 0x20) {
      out += {'\xE2', '\x90', static_cast<char>(0x80 + byte)};  // U+2400 and on: the signs for controls
    } else if (byte == 0x7F) {
      out += "\u2421";
    } else {
      out += text.substr(0, size);
    }
    text.remove_prefix(std::max<std::size_t>(1, size));
  }
  return out;
}

static int characters(std::string_view text) {
  int count = 0;
  for (; !text.empty(); text.remove_prefix(character_length(text))) ++count;
  return count;
}

std::string format(const Diagnostic& diagnostic) {
  std::string out = visible(diagnostic.file) + ":" + std::to_string(diagnostic.line) + ":" +
                    std::to_string(diagnostic.column) +
                    (diagnostic.severity == Severity::error ? ": error: " : ": warning: ") +
                    visible(diagnostic.message) + "\n";
  if (diagnostic.source_line.empty()) return out;
  const int room = std::max(1, characters(diagnostic.source_line) - diagnostic.source_column + 1);
  const int carets = std::clamp(diagnostic.length, 1, room);
  out += "  " + visible(diagnostic.source_line) + "\n";
  out += "  " + std::string(static_cast<std::size_t>(std::max(0, diagnostic.source_column - 1)), ' ') +
         std::string(static_cast<std::size_t>(carets), '^') + "\n";
  return out;
}

}  // namespace arrisline
