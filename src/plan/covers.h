// Covers: choices of flat cuts that between them finish every flat surface.
#pragma once

#include <optional>
#include <set>
#include <tuple>
#include <vector>

#include "plan/patience.h"
#include "plan/problem.h"

namespace arrisline {

/// The covers one after another, by what their cuts must cost at the least whatever else is done. Of many
/// flats one comes first that is soon found.
class Covers {
 public:
  struct Cover {
    std::vector<int> drafts;  // indices into the drafts, rising
    double least = 0;
  };

  /// What `given` finishes counts as done, and all that is done beside the flats costs at least `besides`.
  /// The arguments must outlive this.
  Covers(const Problem& problem, const std::vector<Draft>& drafts, const std::vector<Draft>& given,
         double besides);

  /// The next cover; nothing where there are no more, where there are too many to be looked through, or where
  /// patience ends.
  std::optional<Cover> next(Patience& patience);
  /// No cover still to come costs less than this; infinity where there are no more.
  double least_to_come() const;
  bool too_many() const { return too_many_; }

  /// Flat surfaces that all drafts together leave partly bare: they are left to the final judgement.
  const std::vector<int>& uncoverable() const { return uncoverable_; }

 private:
  struct Open {
    int surface = -1;
    double at = 0;  // middle of its first bare stretch, as a fraction
  };
  struct Node {
    double least = 0;
    std::vector<int> chosen;  // indices into the drafts, rising
    std::vector<Open> open;   // flats still bare in part

    friend bool operator<(const Node& a, const Node& b) {
      return std::tie(a.least, a.chosen) < std::tie(b.least, b.chosen);
    }
  };
  std::optional<double> first_bare(int surface, const std::vector<int>& chosen) const;
  double least(const Node& node) const;
  std::vector<Node> with_one_more(const Node& node) const;
  void work_out(Node& node, const std::vector<Open>& open_before) const;
  Cover soon_found() const;

  const Problem& problem_;
  const std::vector<Draft>& drafts_;
  const std::vector<Draft>& given_;
  double besides_;
  std::vector<std::vector<int>> by_surface_;
  std::vector<double> share_;  // of each surface: what finishing it must add to a plan's cost
  std::vector<int> uncoverable_;
  std::set<Node> open_;  // choices still to be looked at, cheapest first
  std::set<std::vector<int>> seen_;
  std::optional<Cover> first_;  // of many flats, given out before its turn
  bool begun_ = false;
  bool too_many_ = false;
};

}  // namespace arrisline
