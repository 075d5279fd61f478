// What a cut has to work on the wood it finds, whichever order its poses come in.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "plan/figures.h"
#include "plan/problem.h"

namespace arrisline {

/// What a cut, or the cuts of one arc together, have to work.
struct Worked {
  double strokes = 0;  // weighed
  double taken = 0;    // mm², by soles that are not flat
  double width = 0;    // of such a sole, the widest; 0 where all are flat
};

/// The poses of a draft in every order in which they may come, each worked out once.
struct Turns {
  Turns(const Problem& problem, const Draft& draft);

  bool flat = false;
  LieSet may_lie;                        // ways_by_poses()
  std::vector<Sweep> own;                // its poses
  std::vector<Sweep> all;                // and the places that it may start at besides
  std::vector<std::vector<Sweep>> from;  // its orders, or ways; none where there are many of a curved draft
  Flanks flanks;                         // of its poses
  std::vector<MaybeFigure> figures;      // of a slanted flat, whatever else is cut
  /// Of a flat: how much of the blank it reaches, mm², and what a mm² of it costs at the least. A stroke
  /// takes no more than a shaving as wide as the sole is in the blank.
  double area_in_blank = 0, cost_in_blank = 0;

 private:
  void reach(const Problem& problem, const std::vector<Sweep>& either);
};
using SharedTurns = std::shared_ptr<const Turns>;

/// Those of the drafts of one problem, each worked out when it is first asked for.
class KnownTurns {
 public:
  explicit KnownTurns(const Problem& problem) : problem_(problem) {}
  const Problem& problem() const { return problem_; }
  SharedTurns of(const Draft& draft);

 private:
  const Problem& problem_;
  std::map<std::vector<long long>, SharedTurns> known_;
};

/// Takes all that the draft may take, wherever it starts. Returns how much, mm².
double cut_whole(const Turns& turns, Wood& wood);

/// Least strokes and wear of one draft on this wood, over the tilts it may start at. Where it starts and
/// turns at many, somewhat less than that. `taken`: what it takes of the wood, where that is known.
Worked worked_alone(const Problem& problem, const Turns& turns, const Wood& wood,
                    std::optional<double> taken = std::nullopt);

/// Strokes and wear of the drafts of one arc, whatever their order: the wear of all that they take, and the
/// strokes of whichever pose comes first, or all in full shavings of the widest.
Worked worked_together(const Problem& problem, const std::vector<SharedTurns>& drafts, const Wood& wood);

}  // namespace arrisline
