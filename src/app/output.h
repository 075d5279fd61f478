// Writing to file descriptors, with every failure seen.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace arrisline {

enum class Written { all, pipe_closed, failed };

/// Writes all of `text`; where it fails, errno says why. REQUIRES: SIGPIPE is ignored.
Written write_all(int descriptor, std::string_view text);

enum class Created { yes, exists, failed };

/// Makes a new file, whole or not at all; one that exists already is left alone.
Created create_file(const std::string& path, std::string_view text);

/// Gives a file this text, whole or not at all: it is written to a new file in the same folder, which then
/// takes the name, so that whatever interrupts it the old file is still there. A symbolic link goes on
/// pointing where it did, and what is no plain file (a device, a pipe) is written to as it is. Returns why it
/// could not be, or nothing.
std::optional<std::string> replace_file(const std::string& path, std::string_view text);

/// Whether there is a file or folder of that name, or a link.
bool is_there(const std::string& path);

/// Why replace_file() is bound to fail, as far as can be seen before there is a text, or nothing.
std::optional<std::string> unwritable(const std::string& path);

/// Colour is welcome: standard output is a terminal that can, and NO_COLOR is not set.
bool colour_welcome();

/// A picture of characters is welcome unasked: standard output is a terminal that can place them.
bool picture_welcome();

/// Text is to be UTF-8, by the locale of the environment. The program's own locale stays as it is.
bool utf8_welcome();

}  // namespace arrisline
