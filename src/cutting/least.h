// The least of one sum over the boards, proved.
#pragma once

#include <atomic>
#include <chrono>
#include <limits>
#include <vector>

#include "cutting/master.h"
#include "cutting/model.h"

namespace arrisline::cutting {

/// When to leave off.
class Deadline {
 public:
  explicit Deadline(const CuttingOptions& options)
      : begun_(std::chrono::steady_clock::now()), limit_(options.limit), interrupt_(options.interrupt) {}

  /// Seconds left, at most so many.
  double left(double most) const {
    if (interrupt_ != nullptr && interrupt_->load()) return 0;
    const std::chrono::duration<double> gone = std::chrono::steady_clock::now() - begun_;
    return std::max(0.0, std::min(most, limit_ - gone.count()));
  }
  bool over() const { return left(1) <= 0; }
  /// Half of what is left, for what comes first of two.
  Deadline half() const {
    Deadline out = *this;
    const std::chrono::duration<double> gone = std::chrono::steady_clock::now() - begun_;
    out.limit_ = gone.count() + std::max(0.0, limit_ - gone.count()) / 2;
    return out;
  }
  /// For a search that may be left off without harm; it takes less work, counted and not timed, so that the
  /// same job is always cut the same way.
  Deadline spare() const {
    Deadline out = *this;
    out.spare_ = true;
    return out;
  }
  bool is_spare() const { return spare_; }

 private:
  std::chrono::steady_clock::time_point begun_;
  double limit_;
  bool spare_ = false;
  const std::atomic<bool>* interrupt_;
};

double cost_of(const Solution& solution, const Cost& cost);

struct Least {
  Solution solution;
  double value = 0;
  double bound = 0;  // proved: no solution that keeps to the goals has less
  bool proved = false;
};

/// The least cost of the solutions that keep to the goals, starting from one that does. `whole`: every cost
/// is a whole number, so that the bound is one too.
///
/// Columns are generated until the relaxation is solved over all patterns. What its value is short of a
/// target, a pattern of a greater reduced cost cannot be in any solution that meets the target; so all
/// patterns up to that are found, and the question is put over them in whole numbers: for the bound, and for
/// the next where the answer is no. Where they are too many, some of the least reduced cost may do.
Least least_cost(const Model& model, const Cost& cost, bool whole, const std::vector<Goal>& goals,
                 const Solution& start, const Deadline& deadline);

}  // namespace arrisline::cutting
