// The search for rails for one curved draft on one wood.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "plan/rail_cuts.h"
#include "plan/rails.h"

namespace arrisline {

/// mm or degrees within which two cuts, or two starts, are one.
inline constexpr double kSameFigure = 1e-6;

class RailFinder {
 public:
  RailFinder(const Problem& problem, const Draft& draft, const Wood& wood, bool trenches,
             const std::function<bool()>& stop);

  /// The well laid-out ways, and where there are none, or only such as are by little, the least unbalanced.
  std::vector<Setup> find();

 private:
  /// The cuts that a figure makes of a pattern; none where they cannot be made.
  using Pattern = std::function<std::vector<Draft>(double)>;

  std::vector<double> starts() const;
  void find_all();
  void any_flats();

  // Patterns (rail_patterns.cpp).
  void bead();
  void tangents_all_round();
  std::vector<double> quarters() const;
  void cove();
  void slots();

  // Trying and solving.
  Sweep sole_at(double start) const;
  std::optional<double> difference(const Wood& wood, const Sweep& sole) const;
  bool accept(const std::vector<Draft>& cuts, double start);
  bool solve(double from, double to, const Pattern& pattern, bool start_follows = false);
  bool solve_with(const std::vector<Draft>& fixed, double from, double to, const Pattern& pattern);
  bool solve_after(const std::vector<Draft>& fixed, double from, double to, const Pattern& pattern,
                   bool start_follows);

  const Problem& problem_;
  const Draft& draft_;
  const Wood& wood_;
  const Plane& sole_;
  const Surface& arc_;
  const Point centre_;
  const double radius_;
  const std::vector<int> rebates_;  // as indices into Kit::planes
  std::vector<int> ploughs_;
  const bool trenches_;
  const std::function<bool()>& stop_;
  RailCuts cuts_;
  double start_ = 0;
  Wood under_{Loop{}};  // the wood under the sole at start_
  std::vector<Setup> found_;
  std::vector<Setup> lesser_;  // not well laid out
};

}  // namespace arrisline
