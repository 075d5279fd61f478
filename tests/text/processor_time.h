// Processor time of a piece of work, and how much large inputs may take.
#pragma once

#include <ctime>

namespace arrisline::testing {

/// Seconds, other work on the machine not counted.
template <class Work>
double seconds(Work work) {
  const std::clock_t begin = std::clock();
  work();
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

// Sanitized builds are several times slower, and say nothing about speed.
#if defined(__SANITIZE_ADDRESS__)
inline constexpr double kAllowed = 20;
#else
inline constexpr double kAllowed = 1;
#endif

}  // namespace arrisline::testing
