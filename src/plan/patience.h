// How long a search may go on: its limit, the maker's interruption, and word of it now and then.
#pragma once

#include <chrono>

#include "arrisline/plan.h"
#include "plan/wood.h"

namespace arrisline {

class Patience {
 public:
  explicit Patience(const PlanOptions& options)
      : options_(options), began_(options.since.value_or(Clock::now())), work_(wood_work()) {}

  /// Whether to leave off; once true, always true. Looks at the clock at each call: some tens of nanoseconds.
  bool over() {
    if (over_) return true;
    const double gone = std::chrono::duration<double>(Clock::now() - began_).count();
    over_ = gone >= options_.limit || wood_work() - work_ >= options_.most_work ||
            (options_.interrupt != nullptr && options_.interrupt->load());
    if (options_.progress && gone >= told_ + kEvery) {
      told_ = gone;
      options_.progress(gone);
    }
    return over_;
  }

 private:
  using Clock = std::chrono::steady_clock;
  static constexpr double kEvery = 0.1;  // seconds between two words of progress

  const PlanOptions& options_;
  Clock::time_point began_;
  std::uint64_t work_;
  double told_ = 0;
  bool over_ = false;
};

}  // namespace arrisline
