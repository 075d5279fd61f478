// Is this text JSON at all, and within the limits? Asked before a plan is read from it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace arrisline {

/// What keeps a text from being read as JSON.
struct JsonFault {
  std::string text;
  bool unread = false;  // it is not JSON, or more of it than is read
};

/// The first fault of the text as JSON, with line and column (code points, from 1), or nothing. Besides
/// syntax it refuses what is over the limits of arrisline/limits.h, and a name given twice in one object.
std::optional<JsonFault> json_fault(std::string_view text);

/// "larger than 16 MiB", and how to raise that.
std::string too_large_a_plan();

}  // namespace arrisline
