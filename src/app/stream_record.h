// One line that `arrisline stream` reads.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace arrisline {

/// A text of the maker's, or the path of a file that holds one.
struct TextOrPath {
  std::string words;
  bool is_text = false;  // there is the end of a line in it
};

struct StreamRecord {
  std::string id = "null";  // as JSON has it: a string, a whole number or null
  TextOrPath profile;
  std::optional<TextOrPath> kit;
  std::string fault;  // why it cannot be answered, or empty; `id` is kept where it could be read
};

/// Reads a record from a line without its end. Shown by tests/app/stream_record_test.cpp.
StreamRecord read_record(std::string_view line);

/// Only blanks, or nothing at all: no record.
bool is_blank(std::string_view line);

}  // namespace arrisline
