// Reading the text files a maker writes. The grammar is in docs/files.md.
#pragma once

#include <string>
#include <string_view>

#include "arrisline/diagnostic.h"
#include "arrisline/kit.h"
#include "arrisline/length.h"
#include "arrisline/section.h"

namespace arrisline {

/// Reads a profile from text; `file` is its name in the messages.
Reading<Section> read_profile(std::string_view text, const std::string& file);
/// Reads a kit from text.
Reading<Kit> read_kit(std::string_view text, const std::string& file);

/// As above, from a path. A file that is missing, a directory, unreadable, too large or not text is a
/// diagnostic at 1:1.
Reading<Section> read_profile_file(const std::string& path);
Reading<Kit> read_kit_file(const std::string& path);

}  // namespace arrisline
