// What --help prints.
#pragma once

#include <string>
#include <string_view>

namespace arrisline {

/// Of the program for an empty command, else of that command. REQUIRES: empty, or in the table of options.
std::string help_text(std::string_view command);
/// The first command line that this text shows as an example.
std::string example_of(std::string_view command);

}  // namespace arrisline
