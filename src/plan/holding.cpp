// The stops that hold the blank. Shown by tests/plan/gauge_test.cpp and lies_test.cpp.
#include "plan/holding.h"

#include <algorithm>

#include "plan/gouge.h"
#include "plan/sweep.h"

namespace arrisline {

double stop_under(double stop, double blank_width, Lies lies) {
  return back_edge_free(lies) ? stop : blank_width - stop;
}

bool bears(const Wood& wood, double x, double half, double thickness, bool underside_up) {
  const auto at_height = [&](double h) { return underside_up ? h : thickness - h; };
  for (int i = 0; i <= 8; ++i) {
    for (int j = 0; j <= 4; ++j) {
      if (!wood.contains({x + half * (i / 4.0 - 1), at_height(0.01 + (kLeastHold - 0.01) * j / 4)}))
        return false;
    }
  }
  return true;
}

namespace {

bool can_be_held(const Problem& problem, const Board& board, const Plane& plane,
                 const std::vector<Pose>& poses, const Wood& after, Lies lies) {
  const double w = problem.section.width;
  const double t = problem.section.thickness;
  const bool flipped = is_underside_up(lies);
  const double half = half_column(board);
  for (const double stop : board.stops) {
    const double x = stop_under(stop, w, lies);
    if (x - half < 0 || x + half > w || !bears(after, x, half, t, flipped)) continue;
    // The column and its clearance must stay below everything the plane passes over.
    Loop placed = blank_outline(2 * half, kLeastHold + board.clear);
    for (Edge& edge : placed) {
      const Point shift{x - half, flipped ? 0 : t - kLeastHold - board.clear};
      edge.from = edge.from + shift;
      edge.to = edge.to + shift;
    }
    const bool in_the_way = std::any_of(poses.begin(), poses.end(), [&](const Pose& pose) {
      return gouges(placed, Sweep(plane, pose), 1e-4);
    });
    if (!in_the_way) return true;
  }
  return false;
}

}  // namespace

LieSet held(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses, const Wood& after,
            LieSet lies) {
  if (!problem.kit.board) return lies;
  LieSet out;
  for (const Lies one : kWaysToLie) {
    if (lies.has(one) && can_be_held(problem, *problem.kit.board, plane, poses, after, one)) out.add(one);
  }
  return out;
}

}  // namespace arrisline
