// Covers: choices of flat cuts that between them finish every flat surface.
#pragma once

#include <optional>
#include <set>
#include <vector>

#include "plan/patience.h"
#include "plan/problem.h"

namespace arrisline {

/// The covers one after another, by what their cuts must cost at the least whatever else is done.
class Covers {
 public:
  struct Cover {
    std::vector<int> drafts;  // indices into the drafts, rising
    double least = 0;
  };

  /// What `given` finishes counts as done. The arguments must outlive this.
  Covers(const Problem& problem, const std::vector<Draft>& drafts, const std::vector<Draft>& given);

  /// The next cover; nothing where there are no more, or where there are too many to be looked through or
  /// patience ends, and then exhausted() is false.
  std::optional<Cover> next(Patience& patience);
  bool exhausted() const { return exhausted_; }
  /// No cover still to come costs less than this.
  double least_to_come() const;

  /// Flat surfaces that all drafts together leave partly bare: they are left to the final judgement.
  const std::vector<int>& uncoverable() const { return uncoverable_; }

 private:
  struct Open {
    int surface = -1;
    double at = 0;  // middle of its first bare stretch, as a fraction
  };
  std::optional<double> first_bare(int surface, const std::vector<int>& chosen) const;
  std::optional<Open> first_open(const std::vector<int>& chosen) const;
  double least(const std::vector<int>& chosen) const;

  const Problem& problem_;
  const std::vector<Draft>& drafts_;
  const std::vector<Draft>& given_;
  std::vector<std::vector<int>> by_surface_;
  std::vector<int> uncoverable_;
  std::set<std::pair<double, std::vector<int>>> open_;  // choices still to be looked at, cheapest first
  std::set<std::vector<int>> seen_;
  bool exhausted_ = true;
};

}  // namespace arrisline
