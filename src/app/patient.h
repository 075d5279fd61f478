// What a terminal is told while something takes long, and Ctrl-C meanwhile.
#pragma once

#include <atomic>
#include <cstddef>
#include <functional>
#include <string>

#include "app/commands.h"

namespace arrisline {

/// Set at a Ctrl-C while a Patient lives.
std::atomic<bool>& interrupted();

/// Minds Ctrl-C while a search goes on, and tells the terminal when it takes long.
class Patient {
 public:
  Patient();
  Patient(const Patient&) = delete;
  Patient& operator=(const Patient&) = delete;
  ~Patient();

  Outside outside();

  /// Tells how many of how many things are done, and about how long the rest takes.
  /// `next` is what comes once all of them are.
  std::function<void(std::size_t, std::size_t)> counting(std::string what, std::string next = "");
  /// Tells how many records are answered, now and then.
  std::function<void(std::size_t, std::size_t)> counting_records();
  /// Tells how many points of a large file are read, now and then.
  std::function<void(std::size_t)> counting_points();

 private:
  void tell(double seconds);
  void show(std::string line);

  bool told_ = false;
};

}  // namespace arrisline
