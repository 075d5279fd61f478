// Tidying line by line. Shown by tests/text/tidy_test.cpp and tests/cli.
#include "text/tidy.h"

#include <algorithm>
#include <vector>

#include "text/elements.h"
#include "wording/length.h"
#include "wording/source.h"
#include "wording/words.h"

namespace arrisline {
namespace {

constexpr std::size_t kWordColumns = 9;
constexpr std::size_t kGap = 2;              // between cells, and before a comment
constexpr std::size_t kCommentColumns = 29;  // before a comment, where the statements leave room

struct Line {
  std::vector<std::string> cells;  // the first is the statement's word
  std::string comment;             // with its #
  std::string shown;               // the statement as it will stand
};

std::size_t width_of(std::string_view text) {
  std::size_t count = 0;
  for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  return count;
}

void pad_to(std::string& text, std::size_t columns) {
  text.append(columns - std::min(columns, width_of(text)), ' ');
}

/// Words and figures follow, and nothing that the maker named.
bool holds_no_name(const std::string& word) {
  static const std::vector<std::string_view> others = {"units", "stock", "side",  "start",   "number",
                                                       "body",  "shop",  "board", "scraper", "end",
                                                       "saw",   "rip",   "spare", "moisture"};
  const auto& elements = element_words();
  return std::find(others.begin(), others.end(), word) != others.end() ||
         std::find(elements.begin(), elements.end(), word) != elements.end();
}

/// The rest of the line is one name, kept to the letter.
bool names(const std::string& word) {
  return word == "profile" || word == "kit" || word == "job" || word == "shaped";
}

std::string_view between(const Token& a, const Token& b) {
  const char* from = a.text.data() + a.text.size();
  return {from, static_cast<std::size_t>(b.text.data() - from)};
}

bool set_apart(std::string_view blanks) {
  return width_of(blanks) > 1 || blanks.find('\t') != std::string_view::npos;
}

/// What stands behind the last word, without the blanks about it: a comment, or nothing.
std::string comment_of(std::string_view line, const std::vector<Token>& tokens) {
  std::size_t from = 0;
  if (!tokens.empty())
    from = static_cast<std::size_t>(tokens.back().text.data() + tokens.back().text.size() - line.data());
  const std::size_t sign = line.find('#', from);
  if (sign == std::string_view::npos) return "";
  std::string comment(line.substr(sign));
  comment.erase(comment.find_last_not_of(" \t\v\f") + 1);
  return comment;
}

Line line_of(std::string_view text, FileKind kind) {
  const std::vector<Token> tokens = kind == FileKind::job ? tokenise_quoted(text, 1) : tokenise(text, 1);
  Line line;
  line.comment = comment_of(text, tokens);
  if (tokens.empty()) return line;
  const std::string word = lower(tokens.front().text);
  line.cells.push_back(word);
  if (tokens.size() == 1) return line;
  if (names(word)) {
    const char* from = tokens[1].text.data();
    const char* to = tokens.back().text.data() + tokens.back().text.size();
    line.cells.emplace_back(from, static_cast<std::size_t>(to - from));
    return line;
  }
  const bool small = holds_no_name(word);
  for (std::size_t i = 1; i < tokens.size(); ++i) {
    const std::string_view as_written = tokens[i].text;
    const std::string shown =
        small && !looks_like_number(as_written) ? lower(as_written) : std::string(as_written);
    const std::string_view blanks = between(tokens[i - 1], tokens[i]);
    const std::string_view before = tokens[i - 1].text;
    const bool comma = as_written == ",";
    if (i == 1 || (!comma && before != "," && set_apart(blanks))) {
      line.cells.push_back(shown);
      continue;
    }
    if (!comma && (!blanks.empty() || before == ",")) line.cells.back() += ' ';
    line.cells.back() += shown;
  }
  return line;
}

/// Lines of one word, one below the other: their cells lie in columns.
void align_cells(std::vector<Line>& lines, std::size_t first, std::size_t last) {
  std::vector<std::size_t> widths;
  for (std::size_t i = first; i < last; ++i) {
    const auto& cells = lines[i].cells;
    for (std::size_t k = 0; k + 1 < cells.size(); ++k) {
      if (widths.size() <= k) widths.push_back(0);
      widths[k] = std::max(widths[k], width_of(cells[k]));
    }
  }
  for (std::size_t i = first; i < last; ++i) {
    Line& line = lines[i];
    std::size_t column = 0;
    for (std::size_t k = 0; k < line.cells.size(); ++k) {
      pad_to(line.shown, column);
      line.shown += line.cells[k];
      if (k + 1 == line.cells.size()) break;
      if (k == 0) {
        column = std::max(kWordColumns, widths[0] + 1);
      } else {
        column += widths[k] + kGap;
      }
    }
  }
}

bool is_statement(const Line& line) {
  return !line.cells.empty();
}

void align(std::vector<Line>& lines) {
  std::size_t first = 0;
  while (first < lines.size()) {
    std::size_t last = first + 1;
    const auto alike = [&](const Line& line) {
      return is_statement(line) && line.cells.front() == lines[first].cells.front();
    };
    while (is_statement(lines[first]) && last < lines.size() && alike(lines[last])) ++last;
    align_cells(lines, first, last);
    first = last;
  }
  first = 0;
  while (first < lines.size()) {
    std::size_t last = first;
    std::size_t column = kCommentColumns;
    for (; last < lines.size() && is_statement(lines[last]); ++last)
      if (!lines[last].comment.empty()) column = std::max(column, width_of(lines[last].shown) + kGap);
    for (std::size_t i = first; i < last; ++i)
      if (!lines[i].comment.empty()) pad_to(lines[i].shown, column);
    first = last + 1;
  }
}

}  // namespace

std::string tidied(std::string_view text, FileKind kind) {
  std::vector<Line> lines;
  for (const std::string_view line : split_lines(text, "").lines) lines.push_back(line_of(line, kind));
  align(lines);
  std::string out;
  bool empty_before = false;
  for (const Line& line : lines) {
    const bool empty = line.shown.empty() && line.comment.empty();
    if (!empty) {
      if (empty_before && !out.empty()) out += '\n';
      out += line.shown + line.comment + "\n";
    }
    empty_before = empty;
  }
  return out;
}

}  // namespace arrisline
