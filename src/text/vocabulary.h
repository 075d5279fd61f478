// Every word of the file formats, with what it means in one line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace arrisline {

/// What a file is, by its ending.
enum class FileKind { profile, kit, job };
/// "profile", "kit" or "job".
std::string_view word(FileKind kind);

/// A word as it stands in one place of one or more kinds of file. A word that means several things has a row
/// for each.
struct Word {
  std::string_view word;
  std::string_view within;   // the statement that it belongs to; empty for the word that begins one
  std::vector<FileKind> in;  // the kinds of file, the first of which `example` is of
  std::string_view meaning;  // at most kMeaningColumns wide
  std::string_view example;  // a statement, or several apart by semicolons, that has it
  // A profile drawn to show it, statements apart by semicolons: of elements and trade shapes the section, of
  // planes the sole, the plane standing on it; empty where there is nothing to draw.
  std::string_view picture = {};
};

inline constexpr std::size_t kMeaningColumns = 58;

/// Statement by statement, each followed by the words within it. tests/text/vocabulary_test.cpp compares it
/// with the readers.
const std::vector<Word>& vocabulary();

}  // namespace arrisline
