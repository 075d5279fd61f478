// Files from disk, read whole up to a limit. Shown by tests/text/file_test.cpp.
#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "arrisline/read.h"
#include "text/load.h"
#include "wording/words.h"

namespace arrisline {

namespace fs = std::filesystem;

std::string nearest_file(const std::string& of, const std::string& before) {
  const fs::path path(of);
  const fs::path folder(before);
  // Of a folder with more files than this the rest are not looked at.
  constexpr int kMostLookedAt = 10000;
  // Nor is a longer name compared: none so long is a slip of the keyboard.
  constexpr std::size_t kLongestName = 100;
  const std::string name = path.filename().string();
  if (name.size() > kLongestName) return "";
  // The ending, which is the same, must not make names look alike.
  const std::string stem = path.stem().string();
  const auto near_enough = [&stem](const std::string& other) {
    const int apart = edit_distance(lower(stem), lower(other));
    const int size = static_cast<int>(stem.size());
    return apart < size && apart <= std::max(2, size / 3);
  };
  std::vector<std::string> alike;
  std::string meant;  // a profile before a kit before a job
  std::error_code code;
  int looked_at = 0;
  const fs::path where = path.has_parent_path() ? path.parent_path() : fs::path(".");
  for (fs::directory_iterator it(where, code), end; !code && it != end && looked_at < kMostLookedAt;
       it.increment(code), ++looked_at) {
    const fs::path& other = it->path();
    const std::string ending = other.extension().string();
    const bool ours = ending == ".profile" || ending == ".kit" || ending == ".job";
    const bool same_stem = ours && (other.stem() == path.filename() || other.stem() == path.stem());
    if (other.extension() == path.extension() && near_enough(other.stem().string()))
      alike.push_back(other.filename().string());
    if (same_stem) meant = std::max(meant, other.filename().string());
  }
  if (!meant.empty()) return "; did you mean " + arrisline::quoted((folder / meant).string()) + "?";
  std::sort(alike.begin(), alike.end());
  const std::string_view near = nearest_word(name, {alike.begin(), alike.end()});
  return near.empty() ? "" : "; did you mean " + arrisline::quoted((folder / near).string()) + "?";
}

std::string no_such_file(const std::string& path) {
  std::error_code code;
  const fs::path folder = fs::path(path).parent_path();
  if (!folder.empty() && !fs::is_directory(folder, code))
    return "there is no folder " + arrisline::quoted(folder.string()) + "; check its name";
  const std::string near = nearest_file(path, folder.string());
  return "there is no such file" + (near.empty() ? "; check its name, and that it is in this folder" : near);
}

std::string system_words(int reason) {
  switch (reason) {
    case ENOENT:
      return "there is no such file or folder";
    case EISDIR:
      return "this is a folder";
    case ENOTDIR:
      return "this is no folder";
    case EACCES:
    case EPERM:
      return "this is not allowed";
    case EROFS:
      return "nothing can be written there";
    case EBADF:
      return "there is nothing to write to";
    case EFBIG:
      return "the file would be too large";
    case ENOSPC:
    case EDQUOT:
      return "the disk is full";
    default:
      return std::generic_category().message(reason);
  }
}

std::string not_opened(int reason) {
  const std::string why = reason != 0 ? ": " + system_words(reason) : "";
  return "the file cannot be opened" + why + "; check that you may read it";
}

Loaded load(const std::string& path) {
  std::error_code code;
  const auto status = std::filesystem::status(path, code);
  if (status.type() == std::filesystem::file_type::not_found) return {"", no_such_file(path)};
  if (std::filesystem::is_directory(status)) return {"", "this is a folder; name a file in it"};
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    const int reason = errno;
    return {"", not_opened(reason)};
  }
  return load(stream);
}

Loaded load(std::istream& stream) {
  Loaded loaded;
  // One byte past the limit is enough to know that there is more.
  std::string chunk(std::size_t{1} << 16, '\0');
  while (loaded.text.size() <= kMaxFileBytes && stream.read(chunk.data(), std::ssize(chunk)).gcount() > 0) {
    loaded.text.append(chunk, 0, static_cast<std::size_t>(stream.gcount()));
  }
  if (stream.bad()) loaded.trouble = "the file cannot be read to its end; copy it anew";
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
