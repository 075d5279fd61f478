// Lines, tokens and places. A token is a view into the text, so every later message can point back at it.
// Shown by tests/wording/source_test.cpp.
#include "wording/source.h"

#include <algorithm>

#include "wording/foreign.h"

namespace arrisline {

static constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
static constexpr std::string_view kNoBreakSpace = "\xC2\xA0";

Source split_lines(std::string_view text, const std::string& file) {
  Source source{file, {}};
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  while (!text.empty()) {
    const std::size_t end = text.find_first_of("\r\n");
    source.lines.push_back(text.substr(0, end));
    if (end == std::string_view::npos) break;
    const bool both = text[end] == '\r' && end + 1 < text.size() && text[end + 1] == '\n';
    text.remove_prefix(end + (both ? 2 : 1));
  }
  return source;
}

std::size_t utf8_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < size) return 0;
  for (std::size_t i = 1; i < size; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return 0;
  }
  // Overlong forms, surrogates and anything past U+10FFFF show in the second byte.
  const unsigned second = byte(1);
  if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F)) return 0;
  if ((lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F)) return 0;
  return size;
}

/// Bytes of the blank that `text` starts with, 0 if it is none.
static std::size_t blank_length(std::string_view text) {
  const char c = text.front();
  if (c == ' ' || c == '\t' || c == '\v' || c == '\f') return 1;
  return text.substr(0, kNoBreakSpace.size()) == kNoBreakSpace ? kNoBreakSpace.size() : 0;
}

/// Bytes of the quoted word that `text` starts with, 0 if it starts with none.
static std::size_t quotation_length(std::string_view text) {
  if (text.front() != '"') return 0;
  const std::size_t end = text.find('"', 1);
  return end == std::string_view::npos ? text.size() : end + 1;
}

static int characters(std::string_view text) {
  int count = 0;
  for (; !text.empty(); ++count) text.remove_prefix(std::max<std::size_t>(1, utf8_length(text)));
  return count;
}

/// Bytes of the word that `text` starts with, up to a blank, a comma or `#`; a comma is one by itself.
static std::size_t word_length(std::string_view text) {
  std::size_t size = 0;
  while (size < text.size()) {
    const std::string_view rest = text.substr(size);
    const bool comma = rest.front() == ',';
    if (size > 0 && (comma || rest.front() == '#' || blank_length(rest))) break;
    size += std::max<std::size_t>(1, utf8_length(rest));
    if (comma) break;
  }
  return size;
}

static std::vector<Token> tokens_of(std::string_view line, int number, bool quotes) {
  std::vector<Token> tokens;
  int column = 1;
  while (!line.empty() && line.front() != '#') {
    if (const std::size_t blank = blank_length(line)) {
      line.remove_prefix(blank);
      ++column;
      continue;
    }
    const std::size_t quotation = quotes ? quotation_length(line) : 0;
    const std::size_t size = quotation > 0 ? quotation : word_length(line);
    const std::string_view text = line.substr(0, size);
    tokens.push_back({text, {number, column, characters(text)}});
    line.remove_prefix(size);
    column += tokens.back().place.length;
  }
  return tokens;
}

std::vector<Token> tokenise(std::string_view line, int number) {
  return tokens_of(line, number, false);
}

std::vector<Token> tokenise_quoted(std::string_view line, int number) {
  return tokens_of(line, number, true);
}

Place spanning(const Token& first, const Token& last) {
  return {first.place.line, first.place.column, last.place.column + last.place.length - first.place.column};
}

static void add(Mistakes& mistakes, Severity severity, Place place, std::string message) {
  if (mistakes.full()) return;
  Diagnostic diagnostic;
  diagnostic.severity = severity;
  diagnostic.file = mistakes.source.file;
  diagnostic.line = place.line;
  diagnostic.column = place.column;
  diagnostic.length = std::max(1, place.length);
  diagnostic.message = std::move(message);
  const std::size_t index = static_cast<std::size_t>(place.line - 1);
  if (index < mistakes.source.lines.size()) show_line(diagnostic, mistakes.source.lines[index]);
  mistakes.list.push_back(std::move(diagnostic));
}

void Mistakes::error(Place place, std::string message) {
  ++errors;
  add(*this, Severity::error, place, std::move(message));
}

void Mistakes::warn(Place place, std::string message) {
  add(*this, Severity::warning, place, std::move(message));
}

std::vector<Diagnostic> in_order(Mistakes&& mistakes) {
  std::vector<Diagnostic> list = std::move(mistakes.list);
  const bool stopped = list.size() >= kMaxMistakes;
  std::stable_sort(list.begin(), list.end(), [](const Diagnostic& a, const Diagnostic& b) {
    return a.line != b.line ? a.line < b.line : a.column < b.column;
  });
  if (stopped) {
    Diagnostic last = list.back();
    last.severity = Severity::error;
    last.message =
        "more than " + std::to_string(kMaxMistakes) + " mistakes: reading stopped here; mend these first";
    list.push_back(std::move(last));
  }
  return list;
}

bool check_text(std::string_view text, Mistakes& mistakes) {
  if (text.size() > kMaxFileBytes) {
    mistakes.error({}, "the file is larger than " + std::to_string(kMaxFileBytes >> 20) +
                           " MB, the most that is read; check that it is the file you meant" +
                           to_raise("kMaxFileBytes"));
    return false;
  }
  const std::string foreign = foreign_file(text, mistakes.source.file);
  if (!foreign.empty()) {
    mistakes.error({}, foreign);
    return false;
  }
  for (std::size_t i = 0; i < mistakes.source.lines.size(); ++i) {
    if (mistakes.source.lines[i].size() <= kMaxLineBytes) continue;
    mistakes.error({static_cast<int>(i) + 1, 1, 1},
                   "the line is longer than " + std::to_string(kMaxLineBytes >> 20) +
                       " MB, the most that is read; write it as several" + to_raise("kMaxLineBytes"));
    return false;
  }
  const auto blank = [](std::string_view line) { return tokenise(line, 1).empty(); };
  if (std::all_of(mistakes.source.lines.begin(), mistakes.source.lines.end(), blank)) {
    mistakes.error({}, "the file is empty; to begin one, see: arrisline new --help");
    return false;
  }
  int number = 0;
  for (std::string_view line : mistakes.source.lines) {
    ++number;
    int column = 1;
    while (!line.empty()) {
      const std::size_t size = utf8_length(line);
      if (size == 0) {
        mistakes.error(
            {number, column, 1},
            "this letter is saved in a way that is not read; save the file with the encoding UTF-8");
        break;
      }
      line.remove_prefix(size);
      ++column;
    }
    if (mistakes.full()) return false;
  }
  return true;
}

std::string stem(const std::string& file) {
  const std::size_t slash = file.find_last_of('/');
  std::string name = slash == std::string::npos ? file : file.substr(slash + 1);
  const std::size_t dot = name.find_last_of('.');
  if (dot != std::string::npos && dot > 0) name.resize(dot);
  return name;
}

}  // namespace arrisline
