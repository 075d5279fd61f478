// A profile, kit or job in tidy form. What a statement says, the way a figure is written, comments and the
// order of lines stay as the maker has them; only blanks, empty lines and capitals change.
#pragma once

#include <string>
#include <string_view>

#include "text/vocabulary.h"

namespace arrisline {

/// The text in tidy form:
///  1. the first word of a statement is in small letters and fills nine columns; so are the other words where
///  the
///     statement can hold no name;
///  2. one blank stands between words, none before a comma; what the maker set apart by two blanks or more,
///  or by a
///     tab, stays apart by two, and lies beneath its like in the line above that begins with the same word;
///  3. comments after statements begin in one column, the thirtieth where there is room, from one empty or
///  whole-line comment to the next;
///  4. lines end in LF and hold no blanks at their ends; one empty line stands for several, none at either
///  end of
///     the file; there is no byte order mark.
/// Tidy text is left alone: tidied(tidied(x)) == tidied(x). REQUIRES: `text` reads without an error.
std::string tidied(std::string_view text, FileKind kind);

}  // namespace arrisline
