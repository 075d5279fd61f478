// What holds each plane in place is found once on the exact poses; then each cut in turn is moved by what its
// lines, walls and rails have moved. Shown by tests/slips/layout_test.cpp.
#include "slips/layout.h"

#include <algorithm>
#include <cmath>

#include "plan/gauge.h"

namespace arrisline {

namespace {

constexpr double kMostTurn = 20;  // degrees that two lines turn a sole by; beyond it they are not followed
constexpr double kThere = 1e-4;   // mm within which a line, wall or surface is taken to be at a point
constexpr double kWall = 0.02;    // mm of wall beside a sole, below which it is none
constexpr double kParallel = 1e-6;
constexpr double kGap = 1e-9;          // mm between soles that leaves nothing standing
constexpr double kLeastSlant = 0.05;   // mm between two lines, below which they give no lean
constexpr double kSpanOfPoses = 1e-5;  // mm

Point axis(Side from) {
  return from == Side::edge || from == Side::back ? Point{1, 0} : Point{0, 1};
}

/// The place on the straight line that carries `edge` that is gauged at `figure`; nothing where the line runs
/// along the gauge's own.
std::optional<Point> where(const Section& section, const Edge& edge, Side from, double figure) {
  const Point d = direction_at(edge, 0);
  const double per = dot(d, growth(from));
  if (std::abs(per) < kParallel) return std::nullopt;
  return edge.from + ((figure - gauged(section, from, edge.from)) / per) * d;
}

double least_u(const Plane& plane, const std::vector<Pose>& poses, Point e) {
  double out = 1e300;
  for (const Pose& pose : poses) out = std::min(out, dot(pose.at, e) - plane.width / 2);
  return out;
}

double greatest_u(const Plane& plane, const std::vector<Pose>& poses, Point e) {
  double out = -1e300;
  for (const Pose& pose : poses) out = std::max(out, dot(pose.at, e) + plane.width / 2);
  return out;
}

/// Where the soles of the cut end on either side, across from the middle of its first pose.
std::array<double, 2> ends_of(const Cut& cut) {
  const Point e = across(cut.poses.front().tilt);
  const double middle = dot(cut.poses.front().at, e);
  return {least_u(cut.plane, cut.poses, e) - middle, greatest_u(cut.plane, cut.poses, e) - middle};
}

/// Whether wood stands beside the cut's soles there.
bool has_wall(const Cut& cut, double u, const Wood& wood) {
  return along_side(wood, Sweep(cut.plane, cut.poses.front()), u, 0, nullptr) > kWall;
}

void take_all(const Plane& plane, const std::vector<Pose>& poses, Wood& wood) {
  for (const Pose& pose : poses) wood.cut(Sweep(plane, pose));
}

}  // namespace

Layout::Layout(const Plan& plan) : plan_(plan), places_(plan.cuts.size()) {
  find_settings();
  const Loop blank = blank_outline(plan.section.width, plan.section.thickness);
  Wood finished(blank);
  for (const Cut& cut : plan.cuts) take_all(cut.plane, cut.poses, finished);
  Wood exact(blank);
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
    const Cut& cut = plan.cuts[i];
    if (cut.poses.empty()) continue;
    const Wood before = exact;
    take_all(cut.plane, cut.poses, exact);
    if (cut.plane.is_flat()) {
      const bool upright = is_square(cut.poses.front().tilt);
      upright ? find_square(i, before, exact) : find_slanted(i, before, exact, finished);
    }
  }
  for (const Cut& cut : plan.cuts) as_set_.push_back(cut.set);
}

void Layout::find_settings() {
  for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
    std::vector<std::size_t> mine;
    for (const GaugeLine& line : plan_.cuts[i].lines) {
      std::size_t found = settings_.size();
      for (std::size_t k = 0; i > 0 && k < setting_of_[i - 1].size(); ++k) {
        const GaugeLine& other = plan_.cuts[i - 1].lines[k];
        if (same_figure(other, line)) found = setting_of_[i - 1][k];
      }
      if (found == settings_.size()) settings_.push_back({line.from, line.at, line.set, {}});
      std::vector<std::size_t>& cuts = settings_[found].cuts;
      if (cuts.empty() || cuts.back() != i) cuts.push_back(i);
      mine.push_back(found);
    }
    setting_of_.push_back(std::move(mine));
  }
}

/// An upright sole or side of an earlier flat cut that runs along the line through p.
std::optional<Layout::Feature> Layout::wall_beside(std::size_t cut, Point p, Point along) const {
  for (std::size_t i = cut; i-- > 0;) {
    const Cut& earlier = plan_.cuts[i];
    if (!earlier.plane.is_flat()) continue;
    for (std::size_t k = 0; k < earlier.poses.size(); ++k) {
      for (const int side : {0, -1, 1}) {
        const Pose& pose = earlier.poses[k];
        const Point e = across(pose.tilt);
        const Point d = side == 0 ? e : outward(pose.tilt);
        const Point from = pose.at + (side * earlier.plane.width / 2) * e;
        if (std::abs(cross(d, along)) < kParallel && std::abs(cross(along, from - p)) < kThere)
          return Feature{i, k, side};
      }
    }
  }
  return std::nullopt;
}

/// What p lies on of the blank (nothing) and of the soles and sides of earlier flat cuts: of several the one
/// that lies most across `scan`.
std::optional<Layout::Feature> Layout::surface_under(std::size_t cut, Point p, Point scan) const {
  const Section& s = plan_.section;
  double best = 0.5;
  const bool across_x = std::abs(scan.x) > 0.5;
  const double low = across_x ? p.x : p.y;
  const double high = across_x ? s.width - p.x : s.thickness - p.y;
  if (std::abs(low) < kThere || std::abs(high) < kThere) return std::nullopt;
  std::optional<Feature> out;
  for (std::size_t i = 0; i < cut; ++i) {
    const Cut& earlier = plan_.cuts[i];
    if (!earlier.plane.is_flat()) continue;
    const double half = earlier.plane.width / 2;
    for (std::size_t k = 0; k < earlier.poses.size(); ++k) {
      const Pose& pose = earlier.poses[k];
      const Point uv = to_sole_frame(pose, p);
      for (const int side : {0, -1, 1}) {
        const bool on = side == 0 ? std::abs(uv.y) < kThere && std::abs(uv.x) < half + kThere
                                  : std::abs(uv.x - side * half) < kThere && uv.y > -kThere;
        const Point normal = side == 0 ? outward(pose.tilt) : across(pose.tilt);
        if (!on || std::abs(dot(normal, scan)) <= best) continue;
        best = std::abs(dot(normal, scan));
        out = Feature{i, k, side};
      }
    }
  }
  return out;
}

void Layout::find_square(std::size_t cut, const Wood& before, const Wood& after) {
  const Cut& c = plan_.cuts[cut];
  const Point a = outward(c.poses.front().tilt);
  const Point e = across(c.poses.front().tilt);
  const std::array<double, 2> us = ends_of(c);
  Place& place = places_[cut];
  for (std::size_t k = 0; k < c.lines.size(); ++k) {
    if (std::abs(dot(growth(c.lines[k].from), a)) > 0.5) place.floor = k;
  }
  for (std::size_t end = 0; end < 2; ++end) {
    const Point p = c.poses.front().at + us[end] * e;
    place.ends[end].walled = has_wall(c, us[end], after);
    for (std::size_t k = 0; k < c.lines.size(); ++k) {
      const GaugeLine& line = c.lines[k];
      if (k != place.floor && std::abs(gauged(plan_.section, line.from, p) - line.at) < kSpanOfPoses)
        place.ends[end].line = k;
    }
    if (place.ends[end].line == kNone && place.ends[end].walled && has_wall(c, us[end], before))
      place.ends[end].wall = wall_beside(cut, p, a);
  }
}

void Layout::find_slanted(std::size_t cut, const Wood& before, const Wood& after, const Wood& finished) {
  const Cut& c = plan_.cuts[cut];
  const Kit no_kit;
  const PlanOptions no_options;
  const Problem problem{
      plan_.section, no_kit, no_options, {}, blank_outline(plan_.section.width, plan_.section.thickness), {}};
  const Point e = across(c.poses.front().tilt);
  const std::array<double, 2> us = ends_of(c);
  for (std::size_t end = 0; end < 2; ++end) places_[cut].ends[end].walled = has_wall(c, us[end], finished);
  const LaidOut laid_out = lay_out(problem, c.plane, c.poses, before, after);
  for (std::size_t i = 0; i < laid_out.lines.size(); ++i) {
    const GaugeLine& line = laid_out.lines[i];
    for (std::size_t k = 0; k < c.lines.size(); ++k) {
      if (!same_figure(c.lines[k], line)) continue;
      Mark mark{k, laid_out.ends[i], std::nullopt};
      std::size_t pose = 0;
      for (std::size_t j = 0; j < c.poses.size(); ++j) {
        if (mark.side * dot(c.poses[j].at - c.poses[pose].at, e) > 0) pose = j;
      }
      const Edge part = carrier({cut, pose, mark.side}, Stands(plan_.cuts.size(), c.poses));
      if (const std::optional<Point> p = where(plan_.section, part, line.from, line.at)) {
        const Point other = axis(line.from).x > 0 ? Point{0, 1} : Point{1, 0};
        mark.surface = surface_under(cut, *p, other);
        places_[cut].marks.push_back(mark);
      }
      break;
    }
  }
}

/// The sole or side as a straight edge with its direction; where it ends does not matter.
Edge Layout::carrier(const Feature& feature, const Stands& stands) const {
  const Pose& pose = stands[feature.cut][feature.pose];
  const Point e = across(pose.tilt);
  const Point from = pose.at + (feature.side * plan_.cuts[feature.cut].plane.width / 2) * e;
  return {from, from + (feature.side == 0 ? e : outward(pose.tilt)), {}, Turn::straight};
}

/// How much larger than as set the figure of a cut's line comes out. A gauge is not set below nothing, nor
/// beyond the stock.
double Layout::moved(std::size_t cut, std::size_t line, const std::vector<double>& off) const {
  if (line == kNone) return 0;
  const GaugeLine& l = plan_.cuts[cut].lines[line];
  const double size = axis(l.from).x > 0 ? plan_.section.width : plan_.section.thickness;
  return std::clamp(l.set + off[setting_of_[cut][line]], std::min(0.0, l.set), std::max(size, l.set)) - l.set;
}

std::vector<Pose> Layout::square(std::size_t cut, const std::vector<double>& off,
                                 const Stands& stands) const {
  const Cut& c = plan_.cuts[cut];
  const Place& place = places_[cut];
  const double tilt = c.set.front().tilt;
  const Point a = outward(tilt);
  const Point e = across(tilt);
  std::vector<Pose> poses = c.set;
  if (place.floor != kNone) {
    const double sunk = moved(cut, place.floor, off) * dot(growth(c.lines[place.floor].from), a);
    for (Pose& pose : poses) pose.at = pose.at + sunk * a;
  }
  std::array<double, 2> shift{};
  std::array<bool, 2> guided{};
  for (std::size_t end = 0; end < 2; ++end) {
    const End& here = place.ends[end];
    guided[end] = here.line != kNone || here.wall.has_value();
    if (here.line != kNone) shift[end] = moved(cut, here.line, off) * dot(growth(c.lines[here.line].from), e);
    if (here.wall) shift[end] = dot(carrier(*here.wall, stands).from - carrier(*here.wall, as_set_).from, e);
  }
  const auto move = [&](Pose& pose, double by) { pose.at = pose.at + by * e; };
  const bool fits = poses.size() == 1 && place.ends[0].walled && place.ends[1].walled;
  if (fits || !guided[0] || !guided[1]) {
    // One line, or one wall, places the whole cut; in a groove as wide as the sole the line before the wall.
    const std::size_t by = guided[0] && (!guided[1] || place.ends[0].line != kNone) ? 0 : 1;
    for (Pose& pose : poses) move(pose, shift[by]);
    // What that bares at the open end is taken in one more pass.
    const bool bared = by == 0 ? shift[0] < -kGap : shift[1] > kGap;
    if (!fits && bared) {
      const auto outermost = std::max_element(poses.begin(), poses.end(), [&](const Pose& p, const Pose& q) {
        return (by == 0 ? 1 : -1) * dot(p.at - q.at, e) < 0;
      });
      Pose more = *outermost;
      move(more, -shift[by]);
      poses.push_back(more);
    }
    return poses;
  }
  // Each end by its own line or wall, and passes between them so that nothing stands between two soles.
  std::vector<std::size_t> order(poses.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::sort(order.begin(), order.end(),
            [&](std::size_t i, std::size_t j) { return dot(poses[i].at - poses[j].at, e) < 0; });
  if (poses.size() == 1) poses.push_back(poses.front()), order.push_back(1);
  move(poses[order.front()], shift[0]);
  move(poses[order.back()], shift[1]);
  for (std::size_t i = 1; i < order.size(); ++i) {
    const Pose p = poses[order[i - 1]];
    const double gap = dot(poses[order[i]].at - p.at, e) - c.plane.width;
    const double passes = std::ceil(std::max(0.0, gap - kGap) / c.plane.width);
    for (double k = 1; k <= passes; ++k) {
      Pose more = p;
      move(more, k * (gap + c.plane.width) / (passes + 1));
      poses.push_back(more);
    }
  }
  return poses;
}

std::vector<Pose> Layout::slanted(std::size_t cut, const std::vector<double>& off,
                                  const Stands& stands) const {
  const Cut& c = plan_.cuts[cut];
  const double tilt = c.set.front().tilt;
  const Point a = outward(tilt);
  const Point e = across(tilt);
  std::vector<Pose> poses = c.set;
  struct Moved {
    Point from, to;
    int side;
  };
  std::vector<Moved> points;
  for (const Mark& mark : places_[cut].marks) {
    const GaugeLine& line = c.lines[mark.line];
    std::size_t pose = 0;
    for (std::size_t j = 0; j < c.set.size(); ++j) {
      if (mark.side * dot(c.set[j].at - c.set[pose].at, e) > 0) pose = j;
    }
    const std::optional<Point> from =
        where(plan_.section, carrier({cut, pose, mark.side}, as_set_), line.from, line.set);
    if (!from) continue;
    const double by = moved(cut, mark.line, off);
    Point to = *from + by * growth(line.from);
    if (mark.surface) {
      const auto was = where(plan_.section, carrier(*mark.surface, as_set_), line.from, line.set);
      const auto is = where(plan_.section, carrier(*mark.surface, stands), line.from, line.set + by);
      if (was && is) to = *from + (*is - *was);
    }
    points.push_back({*from, to, mark.side});
  }
  const bool on_sole = points.size() == 2 && points[0].side == 0 && points[1].side == 0;
  if (!on_sole || distance(points[0].to, points[1].to) < kLeastSlant) {
    // The lean stays: the sole goes with its line, a side with its own.
    Point shift;
    int soles = 0;
    for (const Moved& p : points) soles += p.side == 0 ? 1 : 0;
    for (const Moved& p : points) {
      const Point way = p.side == 0 ? a : -p.side * e;
      shift = shift + (dot(p.to - p.from, way) / (p.side == 0 ? soles : 1)) * way;
    }
    for (Pose& pose : poses) pose.at = pose.at + shift;
    // What that leaves standing at an end that comes to lie open is taken in one more pass, as far as the
    // line struck there on the sole.
    for (const int end : {-1, 1}) {
      if (places_[cut].ends[end < 0 ? 0 : 1].walled) continue;
      const auto reach = [&](const std::vector<Pose>& of) {
        return end < 0 ? least_u(c.plane, of, e) : greatest_u(c.plane, of, e);
      };
      double to = reach(c.set);
      for (const Moved& p : points) {
        if (p.side == 0 && std::abs(dot(p.from, e) - to) < kThere) to = dot(p.to, e);
      }
      if (end * (to - reach(poses)) <= kGap) continue;
      Pose more = poses.front();
      more.at = more.at + (to - end * c.plane.width / 2 - dot(more.at, e)) * e;
      poses.push_back(more);
    }
    return poses;
  }
  Point along = points[1].to - points[0].to;
  if (dot(points[1].from - points[0].from, e) < 0) along = -1 * along;
  const double turn = wrap_degrees(tilt_of(Point{along.y, -along.x}) - tilt);
  const double turned = tilt + std::clamp(turn, -kMostTurn, kMostTurn);
  const Point middle = 0.5 * (points[0].from + points[1].from);
  const Point new_middle = 0.5 * (points[0].to + points[1].to);
  const Point new_e = across(turned);
  for (Pose& pose : poses) pose = {new_middle + dot(pose.at - middle, e) * new_e, turned};
  // Where the slant comes out wider than the soles reach, one more pass at that end.
  const double half = c.plane.width / 2;
  const double first = dot(points[0].to, new_e), second = dot(points[1].to, new_e);
  const double low = std::min(first, second), high = std::max(first, second);
  const double covered_low = least_u(c.plane, poses, new_e);
  const double covered_high = greatest_u(c.plane, poses, new_e);
  const Pose any = poses.front();
  const auto pass_at = [&](double u) {
    poses.push_back({any.at + (u - dot(any.at, new_e)) * new_e, turned});
  };
  if (low < covered_low - kGap) pass_at(low + half);
  if (high > covered_high + kGap) pass_at(high - half);
  return poses;
}

std::vector<Pose> Layout::stand(std::size_t cut, const std::vector<double>& off, const Stands& stands) const {
  const Cut& c = plan_.cuts[cut];
  if (c.set.empty() || !c.plane.is_flat()) return c.set;
  return is_square(c.set.front().tilt) ? square(cut, off, stands) : slanted(cut, off, stands);
}

Slipped Layout::slip(const std::vector<double>& off) const {
  Slipped out;
  Wood wood(blank_outline(plan_.section.width, plan_.section.thickness));
  for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
    const Cut& cut = plan_.cuts[i];
    out.poses.push_back(stand(i, off, out.poses));
    out.seats.emplace_back();
    if (cut.rides == Rides::two_arrises) out.seats.back() = seat(wood, cut.plane, out.poses.back().front());
    take_all(cut.plane, out.poses.back(), wood);
  }
  return out;
}

}  // namespace arrisline
