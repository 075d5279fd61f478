// What is wrong with a file, and where.
#pragma once

#include <optional>
#include <string>
#include <vector>

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

}  // namespace arrisline
