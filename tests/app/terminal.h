// The program on a terminal of its own.
#pragma once

#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <string>

#include "catch.h"

namespace arrisline::test {

/// What a shell command that ends with 0 writes to a terminal of its own, which is its input too, or to a
/// pipe.
inline std::string shell_writes(const std::string& command, bool terminal, const std::string& typed = "") {
  int out = -1, ends[2] = {-1, -1};
  if (!terminal) REQUIRE(::pipe(ends) == 0);
  const pid_t child = terminal ? ::forkpty(&out, nullptr, nullptr, nullptr) : ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    if (!terminal) ::dup2(ends[1], STDOUT_FILENO);
    ::execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
    ::_exit(127);
  }
  if (!terminal) {
    ::close(ends[1]);
    out = ends[0];
  }
  if (terminal && !typed.empty())
    REQUIRE(::write(out, typed.data(), typed.size()) == static_cast<ssize_t>(typed.size()));
  std::string text;
  char some[4096];
  // A terminal whose other end is closed fails to be read; a pipe ends.
  for (ssize_t got = 0; (got = ::read(out, some, sizeof some)) > 0;)
    text.append(some, static_cast<std::size_t>(got));
  ::close(out);
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 0);
  return text;
}

}  // namespace arrisline::test
