// Shown by tests/text/job_mistakes_test.cpp.
#include "text/job_files.h"

#include <filesystem>
#include <system_error>

#include "text/load.h"

namespace arrisline {

namespace fs = std::filesystem;

std::string folder_of(const std::string& path) {
  return fs::path(path).parent_path().string();
}

JobFiles files_in(const std::string& folder) {
  const auto beside = [folder](const std::string& name) { return (fs::path(folder) / name).string(); };
  JobFiles out;
  out.missing = [beside](const std::string& name) -> std::optional<std::string> {
    std::error_code code;
    if (fs::status(beside(name), code).type() != fs::file_type::not_found) return std::nullopt;
    return nearest_file(beside(name), "");
  };
  out.profile = [beside](const std::string& name) { return read_profile_file(beside(name)); };
  out.kit = [beside](const std::string& name) { return read_kit_file(beside(name)); };
  return out;
}

}  // namespace arrisline
