// No file that a run reads or has written already is written over. Shown by tests/app/same_file_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace arrisline {

/// Whether two paths lead to one file that is no device or pipe, whether it is there yet or not; "-" is what
/// standard input comes from.
bool same_file(const std::string& one, const std::string& other);

/// A file that is to be written, and the option that names it.
struct ToWrite {
  std::string option;
  std::optional<std::string> path;
};

/// Whether every file to be written is another than those read and than the ones before it; one that is not
/// adds to `messages`.
bool kept_apart(const std::vector<std::string>& read, const std::vector<ToWrite>& written,
                const std::string& command, std::string& messages);

}  // namespace arrisline
