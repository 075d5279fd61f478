#include "app/same_file.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "app/inputs.h"
#include "wording/words.h"

namespace arrisline {

namespace fs = std::filesystem;

bool same_file(const std::string& one, const std::string& other) {
  const auto path = [](const std::string& name) { return fs::path(name == "-" ? "/dev/stdin" : name); };
  std::error_code code;
  const fs::file_type kind = fs::status(path(one), code).type();
  if (kind == fs::file_type::regular) return fs::equivalent(path(one), path(other), code);
  if (kind != fs::file_type::not_found || one.empty() || other.empty()) return false;
  return fs::weakly_canonical(fs::absolute(path(one)), code) ==
         fs::weakly_canonical(fs::absolute(path(other)), code);
}

bool kept_apart(const std::vector<std::string>& read, const std::vector<ToWrite>& written,
                const std::string& command, std::string& messages) {
  bool good = true;
  const auto refuse = [&](const ToWrite& file, const std::string& why) {
    messages += usage_error(command, file.option + " " + arrisline::quoted(*file.path) + why);
    good = false;
  };
  for (auto file = written.begin(); file != written.end(); ++file) {
    if (!file->path) continue;
    const auto is_this = [&](const std::string& path) { return same_file(path, *file->path); };
    if (std::any_of(read.begin(), read.end(), is_this)) {
      refuse(*file, " is read in the same run, and what it holds would be lost; name another");
    } else if (std::any_of(written.begin(), file,
                           [&](const ToWrite& before) { return before.path && is_this(*before.path); })) {
      refuse(*file, ": this file is named twice; name another");
    }
  }
  return good;
}

}  // namespace arrisline
