// Points as two figures a line, read in one pass and in memory that does not grow with the file. Shown by
// tests/trace/points_test.cpp; any bytes: tests/fuzz/points.cpp.
#include "trace/points.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "arrisline/limits.h"
#include "trace/rounding.h"
#include "wording/figures.h"

namespace arrisline {

/// Points between two calls of the progress callback.
static constexpr std::size_t kProgressEvery = 100'000;

PointsReader::PointsReader(const std::string& file, const TracingOptions& options)
    : options_(options), faults_({}, file), kept_(kMaxKeptPoints) {}

void PointsReader::feed(std::string_view bytes) {
  bytes_ += bytes.size();
  if (bytes_ > kMaxPointsBytes && !given_up_) {
    given_up_ = true;
    Diagnostic large;
    large.file = faults_.file;
    large.message = "the file is larger than " + std::to_string(kMaxPointsBytes >> 20) +
                    " MB, the most that is read of points; measure fewer" + to_raise("kMaxPointsBytes");
    faults_.add(std::move(large));
  }
  while (!bytes.empty() && !done()) {
    if (after_return_ && bytes.front() == '\n') bytes.remove_prefix(1);
    after_return_ = false;
    std::size_t end = 0;
    while (end < bytes.size() && bytes[end] != '\n' && bytes[end] != '\r') ++end;
    if (carried_.size() + end > kMaxLineBytes) {
      ++number_;
      given_up_ = true;
      return fault({}, {},
                   "the line is longer than " + std::to_string(kMaxLineBytes >> 20) +
                       " MB, the most that is read; expected two numbers a line" + to_raise("kMaxLineBytes"));
    }
    if (end == bytes.size()) {
      carried_ += bytes;
      return;
    }
    if (carried_.empty()) {
      line(bytes.substr(0, end));
    } else {
      carried_ += bytes.substr(0, end);
      line(carried_);
      carried_.clear();
    }
    after_return_ = bytes[end] == '\r';
    bytes.remove_prefix(end + 1);
  }
}

void PointsReader::fault(std::string_view whole, Span span, std::string message) {
  faults_.add(mistake_in_line(faults_.file, whole, number_, span, std::move(message)));
}

void PointsReader::line(std::string_view line) {
  if (number_ < std::numeric_limits<int>::max()) ++number_;
  if (at_start_ && line.substr(0, 3) == "\xEF\xBB\xBF") line.remove_prefix(3);
  at_start_ = false;
  // Bytes that are characters by themselves, nearly all lines, need no closer look.
  bool plain = true;
  for (const char c : line) plain = plain && static_cast<signed char>(c) > 0;
  std::size_t size = 0;
  for (std::size_t at = 0; !plain && at < line.size(); at += size) {
    size = static_cast<unsigned char>(line[at]) < 0x80 ? 1 : utf8_length(line.substr(at));
    if (line[at] == '\0') {
      given_up_ = true;
      return fault(line, {at, 1}, "this is no plain text; check that it is the file you meant");
    }
    if (size == 0)
      return fault(line, {at, 1},
                   "this letter is saved in a way that is not read; save the file with the encoding UTF-8");
  }
  const std::string_view said = line.substr(0, line.find('#'));
  if (said.find_first_not_of(" \t\v\f;,") == std::string_view::npos) return;
  content(said, line);
}

/// A line that is not empty.
void PointsReader::content(std::string_view line, std::string_view whole) {
  if (!prepared_ && heads(line, whole)) return;
  if (!prepared_ && !prepare(line)) {
    given_up_ = true;
    return;
  }
  take(line, whole);
}

/// Whether a line before the figures is a heading, or a title over one, or units under it.
bool PointsReader::heads(std::string_view line, std::string_view whole) {
  constexpr std::size_t kMostTitles = 9;
  if (heading_.empty() && is_separator_line(line)) return true;
  if (std::optional<std::string> both = with_units(heading_, line)) {
    heading_ = *std::move(both);
    return true;
  }
  if (!is_heading(line)) return false;
  if (!heading_.empty() && !names_axes(line)) {
    if (names_axes(heading_) || titles_.size() == kMostTitles) return false;
    titles_.emplace_back(whole, number_);
    return true;
  }
  if (!heading_.empty() && names_axes(heading_)) return false;
  heading_ = line;
  heading_number_ = number_;
  titles_.clear();
  return true;
}

/// Of several lines of words none of which names the columns, all but the first hold no figures where some
/// ought to be.
void PointsReader::say_of_titles() {
  const int here = number_;
  for (const auto& [title, number] : std::exchange(titles_, {})) {
    number_ = number;
    separator_ = separator_of(title);
    take(title, title);
  }
  number_ = here;
}

/// Learns from the first line of figures, and the heading before it, what parts the columns and which they
/// are.
bool PointsReader::prepare(std::string_view line) {
  prepared_ = true;
  say_of_titles();
  separator_ = separator_of(line);
  if (heading_.empty()) return true;
  std::string why;
  const std::optional<FigureColumns> columns = columns_of(heading_, separator_, why);
  if (columns) {
    columns_ = *columns;
    return true;
  }
  faults_.add(mistake_in_line(faults_.file, heading_, heading_number_, {0, heading_.size()}, why));
  return false;
}

void PointsReader::take(std::string_view line, std::string_view whole) {
  split_columns(line, separator_, fields_);
  const std::size_t needed = std::max(columns_.x, columns_.y) + 1;
  if (fields_.size() < needed) {
    const std::string has = fields_.size() == 1 ? "there is one column"
                                                : "there are " + std::to_string(fields_.size()) + " columns";
    return fault(whole, {fields_.empty() ? 0 : fields_.back().at + fields_.back().text.size(), 1},
                 columns_.named
                     ? has + " here; by the heading x is column " + std::to_string(columns_.x + 1) +
                           " and y is column " + std::to_string(columns_.y + 1) + "; write a figure in each"
                     : has + " here; expected two numbers, x and y");
  }
  if (!columns_.named && fields_.size() > 2) {
    std::string message =
        "there are " + std::to_string(fields_.size()) +
        " columns here; expected two numbers, x and y, or a heading that names the columns x and y";
    if (separator_ == Separator::comma && fields_.size() == 4)
      message =
          "there are 4 columns here; expected two numbers, x and y; where commas are decimal marks, part "
          "them by "
          "a semicolon, a tab or blanks";
    const Field& last = fields_.back();
    return fault(whole, {fields_[2].at, last.at + last.text.size() - fields_[2].at}, std::move(message));
  }
  double figures[2] = {0, 0};
  bool sound = true;
  std::size_t at = 0;
  for (const std::size_t column : {columns_.x, columns_.y}) {
    const Field& field = fields_[column];
    std::string why;
    const std::optional<double> figure = figure_of(field.text, separator_ != Separator::comma, why);
    if (!figure) fault(whole, {field.at, std::max<std::size_t>(1, field.text.size())}, std::move(why));
    sound = sound && figure;
    figures[at++] = figure.value_or(0);
  }
  if (!sound) return;
  if (kept_.count() == 0) {
    first_line_ = whole;
    first_number_ = number_;
  }
  kept_.add({figures[0], figures[1]});
  if (options_.progress && kept_.count() % kProgressEvery == 0) options_.progress(kept_.count());
}

/// What only the whole file tells.
void PointsReader::check_whole() {
  const Point extent = kept_.greatest() - kept_.least();
  const auto at_first = [&](std::string message) {
    faults_.add(mistake_in_line(faults_.file, first_line_, first_number_, {0, first_line_.size()},
                                std::move(message)));
  };
  if (kept_.count() == 0) {
    Diagnostic none;
    none.file = faults_.file;
    none.message = "the file holds no point; expected two numbers a line, x and y, such as 12.5 3.1";
    faults_.add(std::move(none));
  } else if (kept_.count() == 1) {
    at_first("this is the only point; measure some hundred along the line");
  } else if (extent == Point{}) {
    at_first("all " + std::to_string(kept_.count()) + " points are the same, " +
             spoken(kept_.least().x, kept_.least().y) + "; measure along the line");
  } else if (options_.width && extent.x <= kLeastWidth) {
    at_first("every x is " + plain(kept_.least().x, 3) +
             ", so that the width given says nothing; leave --width out");
  }
}

Reading<Tracing> PointsReader::finish() {
  if (!done() && !carried_.empty()) {
    line(carried_);
    carried_.clear();
  }
  say_of_titles();
  if (faults_.errors == 0) check_whole();
  Reading<Tracing> reading;
  if (faults_.errors == 0) {
    Tracing tracing;
    tracing.points = kept_.points();
    tracing.mm_per_unit = columns_.mm_per_unit;
    tracing.step = step_of(tracing.points);
    if (options_.width) tracing.mm_per_unit = *options_.width / (kept_.greatest().x - kept_.least().x);
    reading.value = std::move(tracing);
  }
  reading.diagnostics = std::move(faults_).in_order();
  return reading;
}

}  // namespace arrisline
