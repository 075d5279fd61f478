// Files from disk.
#pragma once

#include <iosfwd>
#include <string>
#include <utility>

#include "wording/source.h"

namespace arrisline {

struct Loaded {
  std::string text;
  std::string trouble;  // empty when the file was read
};

/// A whole file, or all that comes from a stream, up to one byte past the limit.
Loaded load(const std::string& path);
Loaded load(std::istream& stream);

/// "; did you mean 'x.profile'?" of the files of the same folder: the same name with an ending of ours, or
/// the nearest of the same ending; or nothing. Names are given with `folder` before them.
std::string nearest_file(const std::string& path, const std::string& folder);
/// That there is no such file, and what to do: the name that was meant, or where to look.
std::string no_such_file(const std::string& path);
/// Why the system would not, by the number of its error, in plain words where it is a usual one.
std::string system_words(int reason);
/// That it could not be opened, by the number of the system's error.
std::string not_opened(int reason);

/// What `read` makes of what was loaded, called `name`; what could not be is a diagnostic at 1:1.
template <class T, class Read>
Reading<T> read_loaded(const Loaded& loaded, const std::string& name, const Read& read) {
  if (loaded.trouble.empty()) return read(loaded.text, name);
  Diagnostic diagnostic;
  diagnostic.file = name;
  diagnostic.message = loaded.trouble;
  return {std::nullopt, {diagnostic}};
}

template <class T, class Read>
Reading<T> read_from(const std::string& path, const Read& read) {
  return read_loaded<T>(load(path), path, read);
}

}  // namespace arrisline
