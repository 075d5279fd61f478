// Gauge lines of flat cuts and their rounding.
// Shown by tests/plan/gauge_test.cpp.
#include "plan/gauge.h"

#include <algorithm>
#include <cmath>

#include "geometry/crossing.h"
#include "plan/gouge.h"

namespace arrisline {

double gauged(const Section& section, Side side, Point p) {
  switch (side) {
    case Side::edge:
      return p.x;
    case Side::back:
      return section.width - p.x;
    case Side::face:
      return p.y;
    case Side::underside:
      return section.thickness - p.y;
  }
  return 0;
}

Point growth(Side side) {
  switch (side) {
    case Side::edge:
      return {1, 0};
    case Side::back:
      return {-1, 0};
    case Side::face:
      return {0, 1};
    case Side::underside:
      return {0, -1};
  }
  return {};
}

namespace {

double gauged(const Problem& problem, Side side, Point p) {
  return gauged(problem.section, side, p);
}

Side floor_side(double tilt) {
  const double t = wrap_degrees(tilt);
  if (std::abs(t) < 45) return Side::face;
  if (std::abs(t) > 135) return Side::underside;
  return t > 0 ? Side::edge : Side::back;
}

/// Which side a wall across the sole is gauged from: the one the cut opens to, the edge or face by default.
Side wall_side(const Problem& problem, double tilt, const std::vector<Pose>& poses, double half) {
  double low = 1e300, high = -1e300;
  const bool upright = floor_side(tilt) == Side::face || floor_side(tilt) == Side::underside;
  const Point e = across(tilt);
  for (const Pose& pose : poses) {
    for (const double end : {-half, half}) {
      const Point p = pose.at + end * e;
      low = std::min(low, upright ? p.x : p.y);
      high = std::max(high, upright ? p.x : p.y);
    }
  }
  const double size = upright ? problem.section.width : problem.section.thickness;
  const bool opens_far = high > size - kLine && low > kLine;
  if (upright) return opens_far ? Side::back : Side::edge;
  return opens_far ? Side::underside : Side::face;
}

}  // namespace

std::optional<Side> side_along(Point d, double tilt) {
  if (std::abs(d.x) < kAlong) return std::abs(wrap_degrees(tilt)) > 90 ? Side::underside : Side::face;
  if (std::abs(d.y) < kAlong) return wrap_degrees(tilt) < 0 ? Side::back : Side::edge;
  return std::nullopt;
}

double along_side(const Wood& wood, const Sweep& sweep, double at, double floor, Point* top) {
  double sum = 0;
  double best = -1e300;
  for (const Edge& edge : wood.edges()) {
    if (edge.is_arc() || std::abs(sweep.u(edge.from) - at) > kLine || std::abs(sweep.u(edge.to) - at) > kLine)
      continue;
    const double low = std::max(floor, std::min(sweep.v(edge.from), sweep.v(edge.to)));
    const double high = std::max(sweep.v(edge.from), sweep.v(edge.to));
    if (high <= low + kLine) continue;
    sum += high - low;
    if (top != nullptr && high > best) {
      best = high;
      *top = sweep.v(edge.from) > sweep.v(edge.to) ? edge.from : edge.to;
    }
  }
  return sum;
}

/// Whether wood stands beyond the side at u, outward of the sole, with a face along it: a wall to bear
/// against. What ends there within the sole bears nothing.
static bool has_wall(const Wood& wood, const Sweep& sweep, double u, double outward_way) {
  double sum = 0;
  for (const Edge& edge : wood.edges()) {
    if (edge.is_arc() || std::abs(sweep.u(edge.from) - u) > kLine || std::abs(sweep.u(edge.to) - u) > kLine)
      continue;
    // The wood lies to the left of the edge.
    const Point d = edge.to - edge.from;
    if (outward_way * dot({-d.y, d.x}, sweep.e()) <= 0) continue;
    sum += std::max(0.0, std::max(sweep.v(edge.from), sweep.v(edge.to)) -
                             std::max(0.0, std::min(sweep.v(edge.from), sweep.v(edge.to))));
  }
  return sum > 0.02;
}

namespace {

/// The side that a line through p is gauged from; the edge where nothing upright or level is there.
Side side_through(const Wood& before, Point p, double tilt) {
  for (const Edge& edge : before.edges()) {
    if (edge.is_arc() || distance(p, edge) > kLine) continue;
    if (const std::optional<Side> side = side_along(direction_at(edge, 0), tilt)) return *side;
  }
  return Side::edge;
}

void lay_out_slanted(const Plane& plane, const std::vector<Pose>& poses, const Wood& before,
                     const Wood& after, LaidOut& out, const Problem& problem) {
  const Sweep sweep(plane, poses.front());
  double low = 1e300, high = -1e300;
  for (const Edge& edge : after.edges()) {
    if (edge.is_arc() || std::abs(sweep.v(edge.from)) > kLine || std::abs(sweep.v(edge.to)) > kLine) continue;
    for (const Point p : {edge.from, edge.to}) {
      const double u = sweep.u(p);
      if (std::abs(u) > plane.width * static_cast<double>(poses.size()) + kLine) continue;
      low = std::min(low, u);
      high = std::max(high, u);
    }
  }
  if (high < low) return;
  for (const double u : {low, high}) {
    Point p = sweep.pose().at + u * sweep.e();
    Point top;
    const bool plunged = along_side(after, sweep, u, kLine, &top) > 0.02;  // the corner stands in the wood
    if (plunged) p = top;
    const Side side = side_through(before, p, sweep.pose().tilt);
    out.lines.push_back({side, gauged(problem, side, p), 0});
    out.ends.push_back(plunged ? (u > 0 ? 1 : -1) : 0);
  }
}

double rounded(double value, double division, bool up) {
  const double steps = value / division;
  const double near = std::round(steps);
  if (std::abs(steps - near) * division < 1e-6) return near * division;
  return (up ? std::ceil(steps) : std::floor(steps)) * division;
}

}  // namespace

LaidOut lay_out(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses,
                const Wood& before, const Wood& after) {
  LaidOut out;
  const double tilt = poses.front().tilt;
  if (!is_square(tilt)) {
    lay_out_slanted(plane, poses, before, after, out, problem);
    return out;
  }
  const Sweep sweep(plane, poses.front());
  const Side floor = floor_side(tilt);
  out.lines.push_back({floor, gauged(problem, floor, poses.front().at), 0});
  double low = 1e300, high = -1e300;
  for (const Pose& pose : poses) {
    low = std::min(low, sweep.u(pose.at) - sweep.half());
    high = std::max(high, sweep.u(pose.at) + sweep.half());
  }
  const Side wall = wall_side(problem, tilt, poses, sweep.half());
  for (const double u : {low, high}) {
    const double walled = along_side(after, sweep, u, 0, nullptr);
    if (walled < 0.02) continue;
    if (has_wall(before, sweep, u, u == low ? -1 : 1)) {
      out.on_wall = true;
      continue;
    }
    const Point p = sweep.pose().at + u * sweep.e();
    out.lines.push_back({wall, gauged(problem, wall, p), 0});
  }
  if (out.lines.size() == 3 && poses.size() == 1) {
    // A groove as wide as the sole: one side is set, the sole gives the other. The nearer one is gauged.
    if (out.lines[1].at > out.lines[2].at) std::swap(out.lines[1], out.lines[2]);
    out.lines.pop_back();
  }
  return out;
}

bool same_figure(const GaugeLine& a, const GaugeLine& b) {
  return a.from == b.from && std::abs(a.at - b.at) < kOneFigure;
}

std::vector<GaugeLine> certain_lines(const Problem& problem, const Plane& plane,
                                     const std::vector<Pose>& poses, const Wood* finished) {
  const double tilt = poses.front().tilt;
  const Sweep sweep(plane, poses.front());
  const Side floor = floor_side(tilt);
  std::vector<GaugeLine> out = {{floor, gauged(problem, floor, poses.front().at), 0}};
  if (finished == nullptr) return out;
  double low = 1e300, high = -1e300;
  for (const Pose& pose : poses) {
    low = std::min(low, sweep.u(pose.at) - sweep.half());
    high = std::max(high, sweep.u(pose.at) + sweep.half());
  }
  const Side wall = wall_side(problem, tilt, poses, sweep.half());
  const bool upright = wall == Side::edge || wall == Side::back;
  const double size = upright ? problem.section.width : problem.section.thickness;
  std::vector<GaugeLine> walls;
  double nearest = 1e300;
  for (const double u : {low, high}) {
    const double at = gauged(problem, wall, sweep.pose().at + u * sweep.e());
    // Beyond the blank there is no wall.
    if (at > -kLine && at < size + kLine) nearest = std::min(nearest, at);
    if (along_side(*finished, sweep, u, 0, nullptr) > 0.02 + kLine) walls.push_back({wall, at, 0});
  }
  // Of a groove as wide as the sole only the nearer wall is gauged, so the farther one is never certain.
  for (const GaugeLine& line : walls) {
    if (poses.size() > 1 || line.at < nearest + kLine) out.push_back(line);
  }
  return out;
}

Divisions divisions(const Kit& kit, const PlanOptions& options) {
  const bool inch = options.unit == Unit::inch;
  Divisions out;
  out.coarse = kit.shop.gauge.value_or(inch ? kMmPerInch / 32 : 0.5);
  out.fine = std::min(out.coarse, inch ? kMmPerInch / 128 : 0.1);
  return out;
}

namespace {

void leave_exact(std::vector<GaugeLine>& lines) {
  for (GaugeLine& line : lines) line.set = line.at;
}

/// Rounds a line so that a point on it moves along `out_of_wood`, or not at all; returns that move.
Point round_toward_wood(LaidOut& laid_out, std::size_t i, Point out_of_wood, const Divisions& divisions) {
  GaugeLine& line = laid_out.lines[i];
  const Point g = growth(line.from);
  if (!laid_out.exactly.empty() && laid_out.exactly[i]) {
    line.set = line.at;
    return {};
  }
  line.set = rounded(line.at, line.fine ? divisions.fine : divisions.coarse, dot(g, out_of_wood) > 0);
  if (line.set <= 0) line.set = line.at;
  return (line.set - line.at) * g;
}

std::vector<Pose> set_square(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses,
                             LaidOut& laid_out, const Divisions& divisions) {
  std::vector<GaugeLine>& lines = laid_out.lines;
  const Point a = outward(poses.front().tilt);
  const Point e = across(poses.front().tilt);
  const double half = plane.width / 2;
  const auto is_wall = [&](const GaugeLine& line) { return std::abs(dot(growth(line.from), a)) < 0.5; };
  // Between two walls each line moves the pass that stands against it, and the passes lap over one another.
  const bool each = std::count_if(lines.begin(), lines.end(), is_wall) > 1;
  std::vector<Pose> set = poses;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    GaugeLine& line = lines[k];
    Point out_of_wood = a;
    std::vector<std::size_t> against;
    if (is_wall(line)) {
      double wall = 0;
      for (std::size_t i = 0; i < poses.size(); ++i) {
        for (const double end : {-half, half}) {
          if (std::abs(gauged(problem, line.from, poses[i].at + end * e) - line.at) >= kLine) continue;
          wall = end;
          against.push_back(i);
        }
      }
      out_of_wood = wall > 0 ? -1 * e : e;
    }
    const Point move = round_toward_wood(laid_out, k, out_of_wood, divisions);
    std::vector<Pose> trial = set;
    for (std::size_t i = 0; i < trial.size(); ++i) {
      const bool moves =
          !each || against.empty() || std::find(against.begin(), against.end(), i) != against.end();
      if (moves) trial[i].at = trial[i].at + move;
    }
    // A groove as wide as its plane has no side to give way to: it keeps the drawn figure.
    const bool clear = std::none_of(trial.begin(), trial.end(), [&](const Pose& pose) {
      return gouges(problem.section.target, Sweep(plane, pose), 0.005);
    });
    if (clear) {
      set = trial;
    } else {
      line.set = line.at;
    }
  }
  return set;
}

/// A corner let into the wood: the sole moves with the one line, the side with the other, the lean stays.
std::vector<Pose> set_plunged(const std::vector<Pose>& poses, LaidOut& laid_out, const Divisions& divisions) {
  const Point a = outward(poses.front().tilt);
  const Point e = across(poses.front().tilt);
  Point shift;
  for (std::size_t i = 0; i < laid_out.lines.size(); ++i) {
    const int end = laid_out.ends[i];
    const Point way = end == 0 ? a : -end * e;
    const Point move = round_toward_wood(laid_out, i, way, divisions);
    shift = shift + dot(move, way) * way;
  }
  std::vector<Pose> set = poses;
  for (Pose& pose : set) pose.at = pose.at + shift;
  return set;
}

/// The sole through both rounded lines, which changes its lean a little.
std::vector<Pose> set_slanted(const Problem& problem, const std::vector<Pose>& poses, LaidOut& laid_out,
                              const Divisions& divisions) {
  const double tilt = poses.front().tilt;
  const Point a = outward(tilt);
  const Point e = across(tilt);
  Point on_sole[2];
  for (std::size_t i = 0; i < 2; ++i) {
    const GaugeLine& line = laid_out.lines[i];
    const double per_u = dot(growth(line.from), e);
    if (std::abs(per_u) < 1e-6) return {};
    const double u = (line.at - gauged(problem, line.from, poses.front().at)) / per_u;
    on_sole[i] = poses.front().at + u * e + round_toward_wood(laid_out, i, a, divisions);
  }
  constexpr double kLeastSlant = 0.05;  // mm between the lines, below which they give no direction
  constexpr double kMostTurn = 20;      // degrees
  if (distance(on_sole[0], on_sole[1]) < kLeastSlant) return {};
  Point along = on_sole[1] - on_sole[0];
  if (dot(along, e) < 0) along = -1 * along;
  const double turned = tilt_of(Point{along.y, -along.x});
  if (std::abs(wrap_degrees(turned - tilt)) > kMostTurn) return {};
  std::vector<Pose> set = poses;
  for (Pose& pose : set)
    pose = {on_sole[0] + dot(pose.at - on_sole[0], across(turned)) * across(turned), turned};
  return set;
}

}  // namespace

std::vector<Pose> set_to_lines(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses,
                               LaidOut& laid_out, const Divisions& divisions) {
  if (is_square(poses.front().tilt)) return set_square(problem, plane, poses, laid_out, divisions);
  std::vector<Pose> set;
  if (laid_out.lines.size() == 2) {
    const bool plunged = laid_out.ends[0] != 0 || laid_out.ends[1] != 0;
    set =
        plunged ? set_plunged(poses, laid_out, divisions) : set_slanted(problem, poses, laid_out, divisions);
  }
  const bool clear = !set.empty() && std::none_of(set.begin(), set.end(), [&](const Pose& pose) {
    return gouges(problem.section.target, Sweep(plane, pose), 0.005);
  });
  if (clear) return set;
  leave_exact(laid_out.lines);
  return poses;
}

}  // namespace arrisline
