// Choosing a plane for each arc and rails to guide it, on top of a choice of flats, and judging the result.
#pragma once

#include <map>
#include <tuple>
#include <vector>

#include "plan/compose.h"
#include "plan/rails.h"

namespace arrisline {

/// Depth-first over the arcs; each complete choice is put in its cheapest order and, where that is the best
/// so far, kept in `out`. Arcs that no plane can finish where they stand are named in out.no_plane.
class Chooser {
 public:
  /// `done`: surfaces that need no plane of their own.
  Chooser(const Problem& problem, const std::vector<int>& done, Composition& out);

  /// Goes through the arcs on top of these flats.
  void run(std::vector<Draft> flats);

  /// Orders the drafts, judges what they leave and keeps the sequence if it is the best so far. `thorough`:
  /// every order.
  void judge(const std::vector<Draft>& drafts, bool thorough);

  /// Arcs that planes fit but that nothing was found to guide in any run.
  std::vector<int> unguided() const;

 private:
  struct Arc {
    int surface;
    std::vector<std::vector<Draft>> options;
    bool guided = false;
  };

  void keep_likely_planes();
  bool better(const Sequence& a, const Sequence& b) const;
  double estimate(const std::vector<Draft>& way, const Setup& setup, const Wood& wood) const;
  void choose(std::size_t k, std::vector<Draft>& flats, std::vector<Draft>& curved, const Wood& wood,
              double cost);
  const std::vector<Setup>& rails_for(const Draft& draft, const Wood& wood);

  const Problem& problem_;
  Composition& out_;
  std::map<std::tuple<int, int, double, long long, std::size_t>, std::vector<Setup>> rails_;
  std::vector<Arc> arcs_;
  bool forward_ = true;
  bool one_by_one_ = false;  // each arc is finished before rails are laid for the next
  int leaves_ = 0;
};

}  // namespace arrisline
