// Shown by tests/text/job_mistakes_test.cpp.
#include "text/job_files.h"

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <vector>

#include "text/words.h"

namespace arrisline {
namespace {

namespace fs = std::filesystem;

/// The file of the same folder and ending whose name was most likely meant.
std::string nearest_file(const fs::path& path) {
  std::vector<std::string> names;
  std::error_code code;
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  for (fs::directory_iterator it(folder, code), end; !code && it != end; it.increment(code)) {
    if (it->path().extension() == path.extension()) names.push_back(it->path().filename().string());
  }
  std::sort(names.begin(), names.end());
  const std::vector<std::string_view> known(names.begin(), names.end());
  return suggestion(path.filename().string(), known);
}

}  // namespace

std::string folder_of(const std::string& path) {
  return fs::path(path).parent_path().string();
}

JobFiles files_in(const std::string& folder) {
  const auto beside = [folder](const std::string& name) { return (fs::path(folder) / name).string(); };
  JobFiles out;
  out.missing = [beside](const std::string& name) -> std::optional<std::string> {
    std::error_code code;
    if (fs::status(beside(name), code).type() != fs::file_type::not_found) return std::nullopt;
    return nearest_file(beside(name));
  };
  out.profile = [beside](const std::string& name) { return read_profile_file(beside(name)); };
  out.kit = [beside](const std::string& name) { return read_kit_file(beside(name)); };
  return out;
}

}  // namespace arrisline
