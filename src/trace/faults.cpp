// Places and mistakes by byte, for texts too large to be kept as lines. Shown by tests/trace/faults_test.cpp.
#include "trace/faults.h"

#include <algorithm>
#include <utility>

#include "wording/figures.h"

namespace arrisline {

static int characters(std::string_view text) {
  int count = 0;
  for (; !text.empty(); ++count) text.remove_prefix(std::max<std::size_t>(1, utf8_length(text)));
  return count;
}

static bool starts_with_mark(std::string_view text) {
  return text.substr(0, 3) == "\xEF\xBB\xBF";
}

Diagnostic mistake_in_line(const std::string& file, std::string_view line, int number, Span span,
                           std::string message) {
  Diagnostic diagnostic;
  diagnostic.file = file;
  diagnostic.line = number;
  const std::size_t at = std::min(span.at, line.size());
  diagnostic.column = characters(line.substr(0, at)) + 1;
  diagnostic.length = std::max(1, characters(line.substr(at, span.bytes)));
  diagnostic.message = std::move(message);
  show_line(diagnostic, line);
  return diagnostic;
}

void Faults::add(Diagnostic diagnostic) {
  std::size_t& count = diagnostic.severity == Severity::error ? errors : warnings;
  if (++count <= kMaxTraceMistakes) list.push_back(std::move(diagnostic));
}

namespace {

/// The line that a byte is on: its number, its first byte and the byte after its last.
struct LineAt {
  int number = 1;
  std::size_t begin = 0;
  std::size_t end = 0;
};

LineAt line_at(std::string_view text, std::size_t at) {
  LineAt line;
  line.begin = starts_with_mark(text) ? 3 : 0;
  at = std::clamp(at, line.begin, text.size());
  for (std::size_t i = line.begin; i < at; ++i) {
    const bool ends = text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.size() || text[i + 1] != '\n'));
    if (!ends) continue;
    ++line.number;
    line.begin = i + 1;
  }
  line.end = std::min(text.find_first_of("\r\n", line.begin), text.size());
  return line;
}

}  // namespace

void Faults::error(Span span, std::string message) {
  if (full()) return;
  const LineAt line = line_at(text, span.at);
  const std::size_t at = std::max(span.at, line.begin) - line.begin;
  add(mistake_in_line(file, text.substr(line.begin, line.end - line.begin), line.number, {at, span.bytes},
                      std::move(message)));
}

void Faults::warn(Span span, std::string message) {
  if (warnings > kMaxTraceMistakes) return;
  const LineAt line = line_at(text, span.at);
  const std::size_t at = std::max(span.at, line.begin) - line.begin;
  Diagnostic diagnostic = mistake_in_line(file, text.substr(line.begin, line.end - line.begin), line.number,
                                          {at, span.bytes}, std::move(message));
  diagnostic.severity = Severity::warning;
  add(std::move(diagnostic));
}

Place Faults::place(std::size_t at) const {
  const LineAt line = line_at(text, at);
  const std::size_t to = std::clamp(at, line.begin, line.end);
  return {line.number, characters(text.substr(line.begin, to - line.begin)) + 1, 1};
}

std::vector<Diagnostic> Faults::in_order() && {
  std::stable_sort(list.begin(), list.end(), [](const Diagnostic& a, const Diagnostic& b) {
    return a.line != b.line ? a.line < b.line : a.column < b.column;
  });
  if (errors > kMaxTraceMistakes) {
    Diagnostic last = list.back();
    last.severity = Severity::error;
    last.message = "more than " + std::to_string(kMaxTraceMistakes) +
                   " mistakes: the first of them are shown; mend these first";
    list.push_back(std::move(last));
  }
  return std::move(list);
}

std::string spoken(Place place) {
  return "line " + std::to_string(place.line) + ", column " + std::to_string(place.column);
}

std::string spoken(double x, double y) {
  return "(" + plain(x, 3) + ", " + plain(y, 3) + ")";
}

}  // namespace arrisline
