// A word, or a whole file, that belongs elsewhere.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "text/vocabulary.h"
#include "wording/source.h"

namespace arrisline {

/// What to do about a word that begins no line of a file of this kind: where it belongs, which of the `known`
/// was most likely meant, how a remark is written, or where all are shown. Begins with "; ".
std::string known_words(const std::string& word, const std::vector<std::string_view>& known, FileKind kind);

/// Whether more lines begin with words of another kind of file than of this one: a single mistake says so.
bool is_of_another_kind(Mistakes& mistakes, FileKind read_as);

}  // namespace arrisline
