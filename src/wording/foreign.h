// What a file is that is no plain text, or text of another use.
#pragma once

#include <string>
#include <string_view>

namespace arrisline {

/// "JPEG", "PNG", … where the file begins as a picture does; or nothing.
std::string_view kind_of_picture(std::string_view text);

/// What the file is, and what to do instead, where it is no profile, kit or job as plain text: "this is a
/// picture (JPEG), …". Nothing where it may be one. `file` is its name, for what is to be run.
std::string foreign_file(std::string_view text, const std::string& file);

/// Text that takes two bytes for each letter, as some editors save; with its mark or without.
bool is_utf16(std::string_view text);

inline constexpr std::string_view kSaveAsUtf8 =
    "this text is saved in a way that is not read (UTF-16); save it again with the encoding UTF-8";

}  // namespace arrisline
