// A file of points, line by line, however long.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "arrisline/trace.h"
#include "trace/columns.h"
#include "trace/faults.h"
#include "trace/kept_points.h"

namespace arrisline {

/// Takes the bytes of a file as they come, cut anywhere.
class PointsReader {
 public:
  PointsReader(const std::string& file, const TracingOptions& options);
  void feed(std::string_view bytes);
  /// Whether the rest can change nothing.
  bool done() const { return given_up_ || faults_.full(); }
  /// What was found. To be called once, at the end.
  Reading<Tracing> finish();

 private:
  void line(std::string_view line);
  void content(std::string_view line, std::string_view whole);
  bool heads(std::string_view line, std::string_view whole);
  bool prepare(std::string_view line);
  void say_of_titles();
  void take(std::string_view line, std::string_view whole);
  void fault(std::string_view whole, Span span, std::string message);
  void check_whole();

  TracingOptions options_;
  Faults faults_;
  std::string carried_;        // the beginning of a line of which the end has not come
  bool after_return_ = false;  // a line feed that comes next belongs to the line's end before it
  bool at_start_ = true;
  bool given_up_ = false;
  std::size_t bytes_ = 0;
  int number_ = 0;       // of the line
  std::string heading_;  // the first line, where it is one, or the one under titles; empty otherwise
  int heading_number_ = 0;
  // Such lines after the first, as long as none names the columns, and which they are.
  std::vector<std::pair<std::string, int>> titles_;
  bool prepared_ = false;  // separator and columns are known
  Separator separator_ = Separator::blank;
  FigureColumns columns_;
  std::vector<Field> fields_;
  std::string first_line_;  // that holds a point
  int first_number_ = 1;
  KeptPoints kept_;
};

}  // namespace arrisline
