// Laying text out on a page of a fixed number of columns.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace arrisline {

/// Columns that `text` takes on a terminal. REQUIRES: text from visible(). A combining mark counts as a
/// column of its own, so that a heap of them still wraps.
std::size_t columns(std::string_view text);

/// `text` made visible and cut down to `limit` columns, the last three of them "..." where it was longer.
std::string shorten(std::string_view text, std::size_t limit);

/// A page being written, never wider than kPageColumns.
class Page {
 public:
  explicit Page(bool colour) : colour_(colour) {}

  /// A heading after a blank line, in bold where colour is asked for.
  void heading(std::string_view text);
  /// A paragraph: `lead` stands at `indent`, the text follows it and is wrapped under its own beginning.
  void item(std::size_t indent, std::string_view lead, std::string_view text);
  /// A paragraph at `indent`, its later lines two columns further in.
  void line(std::size_t indent, std::string_view text);
  void blank();
  std::string take() { return std::move(out_); }

 private:
  void wrap(std::size_t used, std::size_t hang, std::string_view text);

  std::string out_;
  bool colour_;
};

}  // namespace arrisline
