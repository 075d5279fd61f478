// Lines as they come. Shown by tests/app/lines_test.cpp.
#include "app/lines.h"

#include <poll.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>

namespace arrisline {

// Milliseconds between two looks at whether to leave off. A signal may be another thread's to handle, so that
// waiting is not ended by it.
static constexpr int kLook = 100;

LineReader::Got LineReader::next(std::string& line) {
  line.clear();
  bool any = false;
  bool too_long = false;
  while (true) {
    const auto begin = chunk_.begin() + static_cast<std::ptrdiff_t>(at_);
    const auto end = chunk_.begin() + static_cast<std::ptrdiff_t>(held_);
    const auto stop = std::find(begin, end, '\n');
    any = any || begin != end;
    too_long = too_long || line.size() + static_cast<std::size_t>(stop - begin) > most_;
    if (too_long) {
      line.clear();
    } else {
      line.append(begin, stop);
    }
    at_ = static_cast<std::size_t>(stop - chunk_.begin());
    if (stop != end || (ended_ && any)) {
      at_ += stop != end ? 1 : 0;
      return too_long ? Got::too_long : Got::line;
    }
    if (ended_) return Got::end;

    pollfd waiting = {descriptor_, POLLIN, 0};
    int ready = 0;
    while (ready == 0) {
      if (leave_off_.load()) return Got::left_off;
      ready = ::poll(&waiting, 1, kLook);
      if (ready < 0 && errno != EINTR) return Got::failed;
      if (ready < 0) ready = 0;
    }
    const ssize_t got = ::read(descriptor_, chunk_.data(), chunk_.size());
    if (got < 0 && errno != EINTR && errno != EAGAIN) return Got::failed;
    at_ = 0;
    held_ = got > 0 ? static_cast<std::size_t>(got) : 0;
    ended_ = got == 0;
  }
}

}  // namespace arrisline
