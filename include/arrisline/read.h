// Reading the text files a maker writes. The grammar is in docs/files.md.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/kit.h"
#include "arrisline/section.h"

namespace arrisline {

enum class Severity { error, warning };

/// One mistake in a file. Line and column count from 1, columns in characters (code points); `length` is how
/// many the caret underlines, at least 1.
struct Diagnostic {
  Severity severity = Severity::error;
  std::string file;
  int line = 1;
  int column = 1;
  int length = 1;
  std::string message;      // what is wrong, what was expected, the nearest known word
  std::string source_line;  // the line itself, shortened around the fault when very long
  int source_column = 1;    // of the fault within source_line
};

/// "file:line:col: error: message", the line and a caret range beneath it; control bytes made visible.
std::string format(const Diagnostic& diagnostic);

/// What a reader found. `value` is present exactly when no diagnostic is an error; warnings may come with it.
template <class T>
struct Reading {
  std::optional<T> value;
  std::vector<Diagnostic> diagnostics;
};

/// Reads a profile from text; `file` is its name in the messages.
Reading<Section> read_profile(std::string_view text, const std::string& file);
/// Reads a kit from text.
Reading<Kit> read_kit(std::string_view text, const std::string& file);

/// As above, from a path. A file that is missing, a directory, unreadable, too large or not text is a
/// diagnostic at 1:1.
Reading<Section> read_profile_file(const std::string& path);
Reading<Kit> read_kit_file(const std::string& path);

/// A length in mm, as the files write it ("3/8", "1 1/2", "9.5mm"), or nothing and the reason in `why`.
std::optional<double> parse_length(std::string_view text, Unit unit, std::string* why);

}  // namespace arrisline
