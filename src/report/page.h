// Laying text out on a page of a fixed number of columns.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace arrisline {

/// Columns that `text` takes on a terminal. REQUIRES: text from visible(). A combining mark counts as a
/// column of its own, so that a heap of them still wraps.
std::size_t columns(std::string_view text);

/// `text` made visible and cut down to `limit` columns, the last three of them "..." where it was longer.
std::string shorten(std::string_view text, std::size_t limit);

/// With a capital where it begins with a letter of a to z.
std::string capital(std::string text);

/// "Job: hall bookcase", the name cut down; what it is alone where it has no name.
std::string named(const std::string& what, std::string_view name);

/// A paragraph of a report, before it is laid out for any kind of page.
struct Block {
  enum class Kind { heading, item, line, blank };
  Kind kind = Kind::line;
  std::size_t indent = 0;
  std::string lead;  // items: "12. ", "A. "
  std::string text;
};

/// A report being written, paragraph by paragraph.
class Page {
 public:
  /// A heading, set off from what comes before it.
  void heading(std::string_view text) { add({Block::Kind::heading, 0, "", std::string(text)}); }
  /// A paragraph: `lead` stands at `indent`, the text follows it and is wrapped under its own beginning.
  void item(std::size_t indent, std::string_view lead, std::string_view text) {
    add({Block::Kind::item, indent, std::string(lead), std::string(text)});
  }
  /// A paragraph at `indent`, its later lines two columns further in.
  void line(std::size_t indent, std::string_view text) {
    add({Block::Kind::line, indent, "", std::string(text)});
  }
  void blank() { add({Block::Kind::blank, 0, "", ""}); }
  void append(const std::vector<Block>& blocks) {
    blocks_.insert(blocks_.end(), blocks.begin(), blocks.end());
  }
  std::vector<Block> take() { return std::move(blocks_); }

 private:
  void add(Block block) { blocks_.push_back(std::move(block)); }

  std::vector<Block> blocks_;
};

/// The blocks as lines of text, none wider than kPageColumns; headings in bold where colour is asked for.
std::string in_columns(const std::vector<Block>& blocks, bool colour);

}  // namespace arrisline
