// How the stop screws of the sticking board may stand while a profile is stuck. Shown by
// tests/job/stops_test.cpp.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "arrisline/job_plan.h"
#include "plan/gouge.h"
#include "plan/holding.h"
#include "plan/sweep.h"
#include "plan/wood.h"

namespace arrisline {
namespace {

/// Farther than any plane or blank reaches, mm.
constexpr double kFar = 1e5;

/// Depths below the face over a column x0 ≤ x ≤ x1, the farthest toward the board: down while the blank lies
/// face up (`way` 1), up while it lies on its face (−1).
class Farthest {
 public:
  Farthest(double x0, double x1, double way) : x0_(x0), x1_(x1), way_(way) {}

  void add(const Edge& edge) {
    add_point(edge.from);
    add_point(edge.to);
    for (const double x : {x0_, x1_}) add_crossing(edge, x);
    if (!edge.is_arc()) return;
    const Point spoke{0, way_ * radius(edge)};
    if (spoke_meets(edge, spoke)) add_point(edge.centre + spoke);
  }
  /// Nothing where no edge comes over the column.
  std::optional<double> depth() const { return far_ ? std::optional(way_ * *far_) : std::nullopt; }

 private:
  void add_point(Point p) {
    if (p.x < x0_ || p.x > x1_) return;
    far_ = std::max(far_.value_or(-std::numeric_limits<double>::infinity()), way_ * p.y);
  }
  void add_crossing(const Edge& edge, double x) {
    if (!edge.is_arc()) {
      const double across = edge.to.x - edge.from.x;
      if (across == 0) return;  // its ends are counted
      const double t = (x - edge.from.x) / across;
      if (t >= 0 && t <= 1) add_point({x, edge.from.y + t * (edge.to.y - edge.from.y)});
      return;
    }
    const double aside = x - edge.centre.x;
    const double square = radius(edge) * radius(edge) - aside * aside;
    if (square < 0) return;
    for (const double up : {-1.0, 1.0}) {
      const Point spoke{aside, up * std::sqrt(square)};
      if (spoke_meets(edge, spoke)) add_point({x, edge.centre.y + spoke.y});
    }
  }

  double x0_, x1_, way_;
  std::optional<double> far_;
};

void add_sweep(const Plane& plane, const Pose& pose, Farthest& farthest) {
  for (const Edge& edge : Sweep(plane, pose).boundary(kFar)) farthest.add(edge);
}

/// What one cut leaves room for at one stop.
struct Room {
  double height = 0;
  bool clear = true;
  bool bears = false;
};

Room room_at(const Cut& cut, const Wood& after, double stop, double width, double thickness,
             const Board& board) {
  const double x = stop_under(stop, width, cut.lies);
  const double half = half_column(board);
  const bool flipped = is_underside_up(cut.lies);
  Farthest farthest(x - half, x + half, flipped ? -1 : 1);
  for (const Pose& pose : cut.poses) {
    add_sweep(cut.plane, pose, farthest);
    if (!cut.plane.body) continue;
    const PlacedBody body = body_at(cut.plane, pose);
    add_sweep(body.sole, body.pose, farthest);
  }
  Room room;
  room.height = thickness;
  if (const std::optional<double> depth = farthest.depth()) {
    const double above_board = flipped ? *depth : thickness - *depth;
    room.height = std::clamp(above_board - board.clear, 0.0, thickness);
    room.clear = room.height >= thickness;
  }
  room.bears =
      x - half >= -kSameWidth && x + half <= width + kSameWidth && bears(after, x, half, thickness, flipped);
  return room;
}

}  // namespace

std::vector<StopSetting> stop_settings(const Plan& plan, double blank_width, const Board& board) {
  const double thickness = plan.section.thickness;
  Wood wood(blank_outline(blank_width, thickness));
  std::vector<StopSetting> out;
  for (std::size_t c = 0; c < plan.cuts.size(); ++c) {
    const Cut& cut = plan.cuts[c];
    if (cut.poses.empty()) continue;  // a scraper: the blank stays as it was held last
    for (const Pose& pose : cut.poses) wood.cut(Sweep(cut.plane, pose));
    StopSetting alone{c, c, {}, false};
    for (const double at : board.stops) {
      const Room room = room_at(cut, wood, at, blank_width, thickness, board);
      alone.stops.push_back({at, room.height, room.clear, room.bears && room.height >= kLeastHold});
    }
    const auto held = [](const StopSetting& setting) {
      return std::any_of(setting.stops.begin(), setting.stops.end(), [](const Stop& s) { return s.holds; });
    };
    alone.held = held(alone);
    if (!out.empty() && out.back().held == alone.held) {
      // As far as one stop holds all the while, nothing has to be set anew; unheld cuts are told as one.
      StopSetting both = out.back();
      both.last = c;
      for (std::size_t i = 0; i < both.stops.size(); ++i) {
        Stop& stop = both.stops[i];
        stop.height = std::min(stop.height, alone.stops[i].height);
        stop.clear = stop.clear && alone.stops[i].clear;
        stop.holds = stop.holds && alone.stops[i].holds;
      }
      if (!alone.held || held(both)) {
        out.back() = std::move(both);
        continue;
      }
    }
    out.push_back(std::move(alone));
  }
  return out;
}

bool all_held(const std::vector<StopSetting>& settings) {
  return std::all_of(settings.begin(), settings.end(), [](const StopSetting& s) { return s.held; });
}

std::optional<double> narrowest_held(const Plan& plan, double from, double to, const Board& board) {
  constexpr double kStep = kMmPerInch / 64;
  for (int i = 0; from + i * kStep <= to + kSameWidth; ++i) {
    const double width = from + i * kStep;
    if (all_held(stop_settings(plan, width, board))) return width;
  }
  // A blank is seldom a whole number of steps wider.
  if (all_held(stop_settings(plan, to, board))) return to;
  return std::nullopt;
}

}  // namespace arrisline
