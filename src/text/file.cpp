// Files from disk, read whole up to a limit. Shown by tests/text/file_test.cpp.
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "text/load.h"

namespace arrisline {

Loaded load(const std::string& path) {
  std::error_code code;
  const auto status = std::filesystem::status(path, code);
  if (status.type() == std::filesystem::file_type::not_found) return {"", "there is no such file"};
  if (std::filesystem::is_directory(status)) return {"", "this is a folder; expected a text file"};
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    const int reason = errno;
    const std::string why = reason != 0 ? std::generic_category().message(reason) : "no reason given";
    return {"", "the file cannot be opened: " + why};
  }
  Loaded loaded;
  // One byte past the limit is enough to know that there is more.
  std::string chunk(std::size_t{1} << 16, '\0');
  while (loaded.text.size() <= kMaxFileBytes && stream.read(chunk.data(), std::ssize(chunk)).gcount() > 0) {
    loaded.text.append(chunk, 0, static_cast<std::size_t>(stream.gcount()));
  }
  if (stream.bad()) loaded.trouble = "the file cannot be read to its end";
  return loaded;
}

Reading<Section> read_profile_file(const std::string& path) {
  return read_from<Section>(
      path, [](std::string_view text, const std::string& file) { return read_profile(text, file); });
}

Reading<Kit> read_kit_file(const std::string& path) {
  return read_from<Kit>(path,
                        [](std::string_view text, const std::string& file) { return read_kit(text, file); });
}

}  // namespace arrisline
