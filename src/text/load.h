// Files from disk.
#pragma once

#include <string>
#include <utility>

#include "text/source.h"

namespace arrisline {

struct Loaded {
  std::string text;
  std::string trouble;  // empty when the file was read
};

/// A whole file, up to one byte past the limit.
Loaded load(const std::string& path);

/// What `read` makes of a file's text; one that cannot be loaded is a diagnostic at 1:1.
template <class T, class Read>
Reading<T> read_from(const std::string& path, const Read& read) {
  const Loaded loaded = load(path);
  if (loaded.trouble.empty()) return read(loaded.text, path);
  Diagnostic diagnostic;
  diagnostic.file = path;
  diagnostic.message = loaded.trouble;
  return {std::nullopt, {diagnostic}};
}

}  // namespace arrisline
