// One line on standard error, written over itself and wiped in the end. Shown by tests/app/stream_test.cpp.
#include "app/patient.h"

#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <csignal>
#include <utility>

#include "app/output.h"

namespace arrisline {
namespace {

constexpr double kLong = 0.5;  // seconds from which a search is worth a word
constexpr std::size_t kWidth = 60;

std::atomic<bool> flag{false};  // constant from the start, so that a handler may set it

}  // namespace

std::atomic<bool>& interrupted() {
  return flag;
}

Patient::Patient() {
  struct sigaction action = {};
  action.sa_handler = [](int) { interrupted().store(true); };
  action.sa_flags = static_cast<int>(SA_RESETHAND);  // a second Ctrl-C ends the program
  sigaction(SIGINT, &action, nullptr);
}
Patient::~Patient() {
  if (told_) static_cast<void>(write_all(STDERR_FILENO, "\r" + std::string(kWidth, ' ') + "\r"));
}

Outside Patient::outside() {
  Outside out;
  out.interrupt = &interrupted();
  if (::isatty(STDERR_FILENO) == 1) out.progress = [this](double seconds) { tell(seconds); };
  return out;
}

std::function<void(std::size_t, std::size_t)> Patient::counting(std::string what, std::string next) {
  if (::isatty(STDERR_FILENO) != 1) return nullptr;
  return [this, what = std::move(what), next = std::move(next), begun = std::chrono::steady_clock::now()](
             std::size_t done, std::size_t of) {
    const std::chrono::duration<double> gone = std::chrono::steady_clock::now() - begun;
    if (done == of && !next.empty()) {
      show(next);
      return;
    }
    if (gone.count() < kLong) return;
    const double rest = gone.count() / static_cast<double>(done) * static_cast<double>(of - done);
    show(std::to_string(done) + " of " + std::to_string(of) + " " + what + ", about " +
         std::to_string(static_cast<int>(std::ceil(rest))) + " s to go");
  };
}

std::function<void(std::size_t, std::size_t)> Patient::counting_records() {
  if (::isatty(STDERR_FILENO) != 1 || ::isatty(STDOUT_FILENO) == 1) return nullptr;
  return [this, told = std::chrono::steady_clock::now()](std::size_t answered, std::size_t errors) mutable {
    const std::chrono::steady_clock::time_point now = std::chrono::steady_clock::now();
    if (std::chrono::duration<double>(now - told).count() < kLong) return;
    told = now;
    show(std::to_string(answered) + " records answered, " + std::to_string(errors) + " of them errors");
  };
}

std::function<void(std::size_t)> Patient::counting_points() {
  if (::isatty(STDERR_FILENO) != 1) return nullptr;
  return [this, told = std::chrono::steady_clock::now()](std::size_t points) mutable {
    const std::chrono::steady_clock::time_point now = std::chrono::steady_clock::now();
    if (std::chrono::duration<double>(now - told).count() < kLong) return;
    told = now;
    show(std::to_string(points) + " points read");
  };
}

void Patient::tell(double seconds) {
  if (seconds < kLong) return;
  show("still searching, " + std::to_string(static_cast<int>(seconds)) + " s; Ctrl-C takes the best so far");
}

void Patient::show(std::string line) {
  told_ = true;
  line.resize(std::max(line.size(), kWidth), ' ');  // over what stood there
  static_cast<void>(write_all(STDERR_FILENO, "\r" + line));
}

}  // namespace arrisline
