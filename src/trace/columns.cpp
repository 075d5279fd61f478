// Columns, figures and headings of files of points, as instruments and spreadsheets write them. Shown
// by tests/trace/points_test.cpp.
#include "trace/columns.h"

#include <array>
#include <charconv>
#include <cmath>
#include <system_error>

#include "arrisline/geometry.h"
#include "trace/faults.h"
#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {

static constexpr std::string_view kMinus = "\u2212";  // as typesetters write it

static bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\v' || c == '\f';
}

static bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

static bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// Adds line[from, to) without the blanks around it.
static void add_field(std::string_view line, std::size_t from, std::size_t to, std::vector<Field>& fields) {
  while (from < to && is_blank(line[from])) ++from;
  while (to > from && is_blank(line[to - 1])) --to;
  fields.push_back({line.substr(from, to - from), from});
}

static char mark_of(Separator separator) {
  switch (separator) {
    case Separator::semicolon:
      return ';';
    case Separator::tab:
      return '\t';
    case Separator::comma:
      return ',';
    case Separator::blank:
      break;
  }
  return ' ';
}

void split_columns(std::string_view line, Separator separator, std::vector<Field>& fields) {
  fields.clear();
  if (separator == Separator::blank) {
    for (std::size_t at = 0; at < line.size();) {
      while (at < line.size() && is_blank(line[at])) ++at;
      const std::size_t from = at;
      while (at < line.size() && !is_blank(line[at])) ++at;
      if (at > from) fields.push_back({line.substr(from, at - from), from});
    }
    return;
  }
  const char mark = mark_of(separator);
  for (std::size_t from = 0; from <= line.size();) {
    const std::size_t to = std::min(line.find(mark, from), line.size());
    add_field(line, from, to, fields);
    from = to + 1;
  }
  while (!fields.empty() && fields.back().text.empty()) fields.pop_back();
}

/// Without the quotation marks that spreadsheets put around a column.
static std::string_view unquoted(std::string_view text) {
  if (text.size() < 2 || text.front() != '"' || text.back() != '"') return text;
  text = text.substr(1, text.size() - 2);
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

static bool is_not_a_place(std::string_view figure) {
  const std::string word = lower(figure);
  for (const std::string_view known : {"nan", "inf", "infinity", "#n/a"}) {
    if (word == known) return true;
  }
  return word.substr(0, 4) == "nan(";
}

std::optional<double> figure_of(std::string_view text, bool decimal_comma, std::string& why) {
  const std::string_view shown = text;
  const auto refuse = [&](const char* reason) {
    why = quoted(shown) + reason;
    return std::nullopt;
  };
  text = unquoted(text);
  if (text.empty()) {
    why = "a number is missing here; expected two a line, such as 12.5 3.1";
    return std::nullopt;
  }
  const bool minus = text.front() == '-' || text.substr(0, kMinus.size()) == kMinus;
  if (minus) {
    text.remove_prefix(text.front() == '-' ? 1 : kMinus.size());
  } else if (text.front() == '+') {
    text.remove_prefix(1);
  }
  if (is_not_a_place(text)) return refuse(" is no place for a point; expected a number such as 12.5");
  const bool starts =
      !text.empty() && (is_digit(text[0]) || (text[0] == '.' && text.size() > 1 && is_digit(text[1])));
  if (!starts) return refuse(" is not a number; expected two a line, such as 12.5 3.1");
  std::array<char, 64> buffer;
  const std::size_t comma = decimal_comma ? text.find(',') : std::string_view::npos;
  if (comma != std::string_view::npos) {
    if (text.size() > buffer.size()) return refuse(" is not a number; expected two a line, such as 12.5 3.1");
    text.copy(buffer.data(), text.size());
    if (text.find('.') != std::string_view::npos)
      return refuse(" has a point and a comma; expected one decimal mark and no others");
    buffer[comma] = '.';
    text = {buffer.data(), text.size()};
  }
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto [rest, error] = std::from_chars(text.data(), end, value);
  if (rest != end) {
    const std::string_view after(rest, static_cast<std::size_t>(end - rest));
    const bool unit = unit_length(after) || is_unit_word(after);
    return refuse(unit ? " is not a number alone; write the unit in a heading, as x (mm), y (mm)"
                       : " is not a number; expected two a line, such as 12.5 3.1");
  }
  if (error != std::errc() || std::fabs(value) > kLargestFigure)
    return refuse(" is too large or too small; expected a number up to 1000000000");
  return minus ? -value : value;
}

Separator separator_of(std::string_view line) {
  std::vector<Field> fields;
  std::string why;
  const auto figures = [&](Separator separator, std::size_t count) {
    split_columns(line, separator, fields);
    if (fields.size() < 2) return false;
    for (std::size_t i = 0; i < count; ++i) {
      if (!figure_of(fields[i].text, separator != Separator::comma, why)) return false;
    }
    return true;
  };
  if (figures(Separator::semicolon, 1)) return Separator::semicolon;
  if (figures(Separator::tab, 2)) return Separator::tab;
  if (figures(Separator::blank, 2)) return Separator::blank;
  if (line.find(';') != std::string_view::npos) return Separator::semicolon;
  if (line.find(',') != std::string_view::npos) return Separator::comma;
  return line.find('\t') != std::string_view::npos ? Separator::tab : Separator::blank;
}

bool is_heading(std::string_view line) {
  std::vector<Field> fields;
  split_columns(line, Separator::blank, fields);
  if (fields.empty()) return false;
  std::string_view word = fields.front().text;
  if (word.front() == '"') word.remove_prefix(1);
  const std::size_t part = word.find_first_of(";,\"");
  word = word.substr(0, part);
  return !word.empty() && !looks_like_number(word) && !is_not_a_place(word) && is_letter(word.front());
}

bool is_separator_line(std::string_view line) {
  const std::string small = lower(line);
  constexpr std::string_view kBegins = "sep=";
  const std::size_t end = small.find_last_not_of(" \t\r");
  return small.starts_with(kBegins) && (end == std::string::npos || end <= kBegins.size());
}

namespace {

/// What stands at the head of a column: which axis, and mm in its unit where it names one.
struct Head {
  char axis = 0;  // 'x', 'y', or 0 for anything else
  std::optional<double> unit;
};

Head head_of(std::string_view text) {
  const std::string name = lower(unquoted(text));
  if (name.empty() || (name[0] != 'x' && name[0] != 'y')) return {};
  if (name.size() > 1 && is_letter(name[1])) return {};
  std::string word;  // after the axis, without brackets and the like
  for (const char c : name.substr(1)) {
    if (is_letter(c) || is_digit(c) || c == '"') word += c;
  }
  for (const std::string_view plain : {"", "axis", "coord", "coordinate", "pos", "position", "value"}) {
    if (word == plain) return {name[0], std::nullopt};
  }
  if (word == "mm" || word == "millimetres" || word == "millimeters") return {name[0], 1.0};
  if (word == "cm") return {name[0], 10.0};
  if (word == "m") return {name[0], 1000.0};
  if (word == "in" || word == "inch" || word == "inches" || word == "\"") return {name[0], kMmPerInch};
  return {};
}

}  // namespace

std::optional<FigureColumns> columns_of(std::string_view heading, Separator separator, std::string& why) {
  std::vector<Field> fields;
  split_columns(heading, separator, fields);
  if (separator == Separator::blank) {
    // A unit in brackets belongs to the name before it.
    std::vector<Field> joined;
    for (const Field& field : fields) {
      const bool unit = field.text.front() == '(' || field.text.front() == '[';
      if (unit && !joined.empty()) {
        const std::size_t end = field.at + field.text.size();
        joined.back().text = heading.substr(joined.back().at, end - joined.back().at);
      } else {
        joined.push_back(field);
      }
    }
    fields = joined;
  }
  FigureColumns columns;
  std::size_t xs = 0;
  std::size_t ys = 0;
  std::optional<double> unit_of_x;
  std::optional<double> unit_of_y;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const Head head = head_of(fields[i].text);
    if (head.axis == 'x' && ++xs == 1) {
      columns.x = i;
      unit_of_x = head.unit;
    } else if (head.axis == 'y' && ++ys == 1) {
      columns.y = i;
      unit_of_y = head.unit;
    }
  }
  if (xs > 1 || ys > 1) {
    why = "the heading has two columns " + std::string(xs > 1 ? "x" : "y") + "; leave one of each";
    return std::nullopt;
  }
  if (xs == 1 && ys == 1) {
    if (unit_of_x && unit_of_y && *unit_of_x != *unit_of_y) {
      why = "the heading has x and y in different units; write both in one";
      return std::nullopt;
    }
    columns.named = true;
    columns.mm_per_unit = unit_of_x ? unit_of_x : unit_of_y;
    return columns;
  }
  if (fields.size() <= 2) return FigureColumns{};
  why = "the heading names " + std::to_string(fields.size()) +
        " columns, but not which are x and y; expected two columns, or an x and a y among them";
  return std::nullopt;
}

/// What parts the columns of a heading that names an x and a y.
static std::optional<Separator> separator_of_named(std::string_view heading) {
  for (const Separator separator :
       {Separator::semicolon, Separator::tab, Separator::comma, Separator::blank}) {
    std::string why;
    const std::optional<FigureColumns> columns = columns_of(heading, separator, why);
    if (columns && columns->named) return separator;
  }
  return std::nullopt;
}

bool names_axes(std::string_view heading) {
  return separator_of_named(heading).has_value();
}

std::optional<std::string> with_units(std::string_view heading, std::string_view units) {
  const std::optional<Separator> separator = separator_of_named(heading);
  if (!separator) return std::nullopt;
  std::vector<Field> names, theirs;
  split_columns(heading, *separator, names);
  split_columns(units, *separator, theirs);
  if (names.size() != theirs.size()) return std::nullopt;
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const std::string unit = "_" + std::string(unquoted(theirs[i].text));
    if (!head_of("x" + unit).unit) return std::nullopt;
    if (i > 0) out += mark_of(*separator);
    out += std::string(unquoted(names[i].text)) + unit;
  }
  return out;
}

}  // namespace arrisline
