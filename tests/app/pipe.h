// A pipe of a test's own.
#pragma once

#include <unistd.h>

#include <string_view>

#include "app/output.h"
#include "catch.h"

namespace arrisline::test {

class Pipe {
 public:
  Pipe() { REQUIRE(::pipe(ends_) == 0); }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;
  ~Pipe() {
    close_in();
    ::close(ends_[0]);
  }

  int out() const { return ends_[0]; }
  // Blocks where the pipe is full.
  void write(std::string_view text) { static_cast<void>(write_all(ends_[1], text)); }
  void close_in() {
    if (ends_[1] >= 0) ::close(ends_[1]);
    ends_[1] = -1;
  }

 private:
  int ends_[2] = {-1, -1};
};

}  // namespace arrisline::test
