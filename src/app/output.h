// Writing to file descriptors, with every failure seen.
#pragma once

#include <string>
#include <string_view>

namespace arrisline {

enum class Written { all, pipe_closed, failed };

/// Writes all of `text`; where it fails, errno says why. REQUIRES: SIGPIPE is ignored.
Written write_all(int descriptor, std::string_view text);

enum class Created { yes, exists, failed };

/// Makes a new file; one that exists already is left alone.
Created create_file(const std::string& path, std::string_view text);

/// Colour is welcome: standard output is a terminal that can, and NO_COLOR is not set.
bool colour_welcome();

}  // namespace arrisline
