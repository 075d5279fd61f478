// What --help prints.
#pragma once

#include <string>
#include <string_view>

namespace arrisline {

/// Of the program for an empty command, else of that command. REQUIRES: empty, "plan", "check", "job",
/// "survey", "stream" or "replay".
std::string help_text(std::string_view command);

}  // namespace arrisline
