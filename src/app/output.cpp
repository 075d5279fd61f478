// Output that notices a full disk and a closed pipe, and files that are whole or not there. Shown by
// tests/cli.
#include "app/output.h"

#include <fcntl.h>
#include <langinfo.h>
#include <locale.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <system_error>

#include "text/load.h"

namespace arrisline {

Written write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written >= 0) {
      text.remove_prefix(static_cast<std::size_t>(written));
    } else if (errno == EPIPE) {
      return Written::pipe_closed;
    } else if (errno != EINTR) {
      return Written::failed;
    }
  }
  return Written::all;
}

namespace {

namespace fs = std::filesystem;

// A file of no known name beside another, gone again unless it is given a name.
class Beside {
 public:
  Beside(const fs::path& path, std::string_view text, std::optional<mode_t> mode) {
    const std::string stem = ".arrisline-" + std::to_string(::getpid()) + "-";
    int file = -1;
    for (int i = 0; i < 100 && file < 0 && (i == 0 || errno == EEXIST); ++i) {
      name_ = path.parent_path() / (stem + std::to_string(i));
      file = ::open(name_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    }
    if (file < 0) {
      trouble_ = errno;
      return;
    }
    made_ = true;
    const bool good =
        (!mode || ::fchmod(file, *mode) == 0) && write_all(file, text) == Written::all && ::fsync(file) == 0;
    if (!good) trouble_ = errno;
    if (::close(file) != 0 && good) trouble_ = errno;
  }
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;
  ~Beside() {
    if (made_) ::unlink(name_.c_str());
  }

  int trouble() const { return trouble_; }

  // Takes the name, from the file that has it if there is one.
  int become(const fs::path& path) {
    if (::rename(name_.c_str(), path.c_str()) != 0) return errno;
    made_ = false;
    return 0;
  }
  // Takes the name if it is free: EEXIST where it is not.
  int become_new(const fs::path& path) {
    if (::link(name_.c_str(), path.c_str()) == 0) return 0;
    if (errno == EEXIST || fs::exists(fs::symlink_status(path))) return EEXIST;
    return become(path);  // a file system without links
  }

 private:
  fs::path name_;
  bool made_ = false;
  int trouble_ = 0;
};

// Where the name leads in the end; a link to a file that is not there yet too.
fs::path followed(const std::string& path) {
  constexpr int kMostLinks = 40;  // as many as Linux follows
  fs::path out = fs::absolute(path);
  std::error_code code;
  for (int i = 0; i < kMostLinks && fs::is_symlink(fs::symlink_status(out, code)); ++i)
    out = out.parent_path() / fs::read_symlink(out, code);  // an absolute one takes the place of all of it
  return out;
}

std::string words(int trouble) {
  return system_words(trouble);
}

}  // namespace

Created create_file(const std::string& path, std::string_view text) {
  const fs::path whole = fs::absolute(path);
  if (fs::exists(fs::symlink_status(whole))) return Created::exists;
  Beside beside(whole, text, std::nullopt);
  if (beside.trouble() != 0) return Created::failed;
  const int trouble = beside.become_new(whole);
  return trouble == 0 ? Created::yes : trouble == EEXIST ? Created::exists : Created::failed;
}

std::optional<std::string> replace_file(const std::string& path, std::string_view text) {
  struct stat old = {};
  const bool there = ::stat(path.c_str(), &old) == 0;
  if (there && !S_ISREG(old.st_mode)) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) return words(errno);
    const Written written = write_all(file, text);
    int trouble = written == Written::all ? 0 : errno;
    if (::close(file) != 0 && trouble == 0) trouble = errno;
    return trouble == 0 ? std::nullopt : std::optional(words(trouble));
  }
  const fs::path whole = followed(path);
  Beside beside(whole, text, there ? std::optional<mode_t>(old.st_mode & 07777) : std::nullopt);
  int trouble = beside.trouble();
  if (trouble == 0) trouble = beside.become(whole);
  return trouble == 0 ? std::nullopt : std::optional(words(trouble));
}

bool is_there(const std::string& path) {
  struct stat status = {};
  return ::lstat(path.c_str(), &status) == 0;
}

std::optional<std::string> unwritable(const std::string& path) {
  struct stat old = {};
  const bool there = ::stat(path.c_str(), &old) == 0;
  if (path.empty()) return "this is no name of a file; give one";
  if (path.back() == '/' || (there && S_ISDIR(old.st_mode))) return "this is a folder; name a file in it";
  const auto refused = [] { return words(errno) + "; name another place"; };
  if (there) {
    if (::access(path.c_str(), W_OK) != 0) return refused();
    if (!S_ISREG(old.st_mode)) return std::nullopt;
  }
  const fs::path folder = followed(path).parent_path();
  std::error_code code;
  if (!fs::is_directory(folder, code)) return "there is no such folder; make it first, or name another";
  if (::access(folder.c_str(), W_OK | X_OK) != 0) return refused();
  return std::nullopt;
}

bool colour_welcome() {
  const char* no_colour = std::getenv("NO_COLOR");
  if (no_colour != nullptr && *no_colour != '\0') return false;
  return picture_welcome();
}

bool picture_welcome() {
  const char* terminal = std::getenv("TERM");
  if (terminal == nullptr || std::string_view(terminal) == "dumb") return false;
  return ::isatty(STDOUT_FILENO) == 1;
}

bool utf8_welcome() {
  const locale_t environment = ::newlocale(LC_CTYPE_MASK, "", nullptr);
  if (environment == nullptr) return false;  // no such locale on this machine
  const bool out = std::string_view(::nl_langinfo_l(CODESET, environment)) == "UTF-8";
  ::freelocale(environment);
  return out;
}

}  // namespace arrisline
