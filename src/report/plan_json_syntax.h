// Is this text JSON at all, and within the limits? Asked before a plan is read from it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace arrisline {

/// The first fault of the text as JSON, with line and column (code points, from 1), or nothing. Besides
/// syntax it refuses text larger than 64 MiB, values nested deeper than 32, and a name given twice in one
/// object.
std::optional<std::string> json_fault(std::string_view text);

}  // namespace arrisline
