// What is tried to make a "no" a "yes": a plan is made with each change, within what may be spent on its
// kind. The number of plans is fixed beforehand, by the size of the task; the clock only ends the search
// where a limit counts from before.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "plan/access.h"
#include "plan/patience.h"

namespace arrisline {

inline constexpr std::uint64_t kRemedyWork = 3000000;  // pieces of wood cut: about a second

/// What may still be spent on one kind of remedy: so many plans and, once a few are made, so much work.
struct Budget {
  int plans = 0;
  int sure = 2;  // plans made whatever they cost, of which half is counted
  std::uint64_t work = 0;
  std::uint64_t share = 1;  // one plan after these may cost no more than such a part of what is left

  bool spent() const { return plans <= 0 || (sure <= 0 && work == 0); }
};

/// The plan that is none, and what is tried for it.
class Trials {
 public:
  /// All are borrowed.
  Trials(Plan& plan, const Kit& kit, const PlanOptions& options);

  /// A plan with the change, any that serves; nothing where the budget or the time is spent.
  std::optional<Plan> plan_with(const Section& section, const Kit& kit, const PlanOptions& options,
                                Budget& budget);

  /// The kit with planes added; a scraper counts as one.
  Kit with(const std::vector<Plane>& added) const;

  /// The surfaces out of reach that this plane gets at, a bit for each of `failing`.
  std::uint64_t gets_at(const Plane& plane) const;

  Plan& plan;
  const Kit& kit;
  const PlanOptions& options;
  const Problem problem;  // refers to the plan's section
  const Access own;
  const std::vector<int> failing;  // surfaces that nothing in the kit gets at
  bool left_off = false;           // for want of time

 private:
  const PlanOptions for_all_;
  Patience clock_;
};

// Each adds a remedy of its kind to the plan where it finds one.
void find_planes(Trials& trials);
void find_radius(Trials& trials);
/// More of the tolerance, or of what the scraper takes.
void find_allowance(Trials& trials, bool scraped);

}  // namespace arrisline
