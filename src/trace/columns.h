// One line of a file of points as columns and figures.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace arrisline {

/// What parts the figures of a line. A decimal comma is read beside all but `comma`.
enum class Separator { semicolon, tab, blank, comma };

/// What stands in one column, without blanks around it, and where it begins in the line.
struct Field {
  std::string_view text;
  std::size_t at = 0;
};

/// The columns of a line. Empty ones at its end are left out, and so, between blanks, are all.
void split_columns(std::string_view line, Separator separator, std::vector<Field>& fields);

/// What parts the figures of this line, the first that holds any.
Separator separator_of(std::string_view line);

/// A figure with an exponent or without; nothing, and why, where the text is none.
std::optional<double> figure_of(std::string_view text, bool decimal_comma, std::string& why);

/// Whether a line is a heading and no figures: its first column is a word.
bool is_heading(std::string_view line);

/// Whether it is what spreadsheets write over the columns to say what parts them: "sep=;".
bool is_separator_line(std::string_view line);

/// Whether a heading names an x and a y, whatever parts them.
bool names_axes(std::string_view heading);

/// The heading with the units that a line of its own gives under the names, as one that names both; nothing
/// where the line is no row of units.
std::optional<std::string> with_units(std::string_view heading, std::string_view units);

/// Which columns hold x and y, counted from 0, and how many there are at the least.
struct FigureColumns {
  std::size_t x = 0;
  std::size_t y = 1;
  bool named = false;  // by a heading with an x and a y: columns besides these are passed over
  std::optional<double> mm_per_unit;
};

/// What a heading says; nothing, and why, where it does not tell which columns are meant.
std::optional<FigureColumns> columns_of(std::string_view heading, Separator separator, std::string& why);

}  // namespace arrisline
