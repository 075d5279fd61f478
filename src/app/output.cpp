// Output that notices a full disk and a closed pipe. Shown by tests/cli.
#include "app/output.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>

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

Created create_file(const std::string& path, std::string_view text) {
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (file < 0) return errno == EEXIST ? Created::exists : Created::failed;
  const bool good = write_all(file, text) == Written::all;
  if (::close(file) == 0 && good) return Created::yes;
  ::unlink(path.c_str());
  return Created::failed;
}

bool colour_welcome() {
  const char* no_colour = std::getenv("NO_COLOR");
  if (no_colour != nullptr && *no_colour != '\0') return false;
  const char* terminal = std::getenv("TERM");
  if (terminal == nullptr || std::string_view(terminal) == "dumb") return false;
  return ::isatty(STDOUT_FILENO) == 1;
}

}  // namespace arrisline
