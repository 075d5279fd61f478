// Each point is held against the points before and behind it in the list, without it: a parabola through them
// where they follow one, else their chords, and the two ways on to a corner. Shown by
// tests/trace/beside_line_test.cpp.
#include "trace/beside_line.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>

#include "section/walk.h"
#include "trace/spread.h"

namespace arrisline {
namespace {

constexpr std::size_t kFewest = 100;  // points by which it can be told
constexpr double kInOrder = 0.1;      // of the size of it all, that a step of points in order is at most
constexpr std::size_t kOnASide = 4;   // points that tell which way the line runs there
constexpr double kLong = 12;          // times as long as it scatters wide a stretch tells that
constexpr double kScatters = 6;       // standard deviations that a slip is off by besides the tolerance
constexpr double kPlain = 4;          // times as far as the farthest of those beside it,
constexpr double kOnSides = 0.6;   // and of that, within which of the ways on to a corner it may be its tip
constexpr double kBetween = 0.4;   // of how long those beside it lie, that the gap is it stands in
constexpr double kSpacings = 0.8;  // of the distance from point to point, beside a corner
constexpr double kSharp = 75;      // degrees between the ways to both neighbours, at most, beside a corner
constexpr double kMostTurn = 125;  // degrees of that corner
constexpr double kShare = 0.02;    // of all points that are slips, at most
constexpr std::size_t kFew = 3;    // and so many of some hundred
constexpr double kNone = std::numeric_limits<double>::infinity();

/// What remains of a list, and how it lies.
struct List {
  std::vector<Point> points;
  std::vector<std::size_t> of;  // of each, its place in the list as it was
  bool ring = false;            // the first comes behind the last
  std::size_t side = kOnASide;  // points on either side that are looked at
  double scatter = 0;           // mm
  double spacing = 0;           // mm
};

/// The points before and behind one, the nearest first.
struct Sides {
  std::vector<Point> before;
  std::vector<Point> behind;
};

/// One point, or two one after the other.
struct Run {
  std::size_t first = 0;
  std::size_t count = 1;
};

/// `without`: a place that is passed over besides; the first of the run where there is none.
Sides sides_of(const List& list, Run run, std::size_t count, std::size_t without) {
  const std::size_t n = list.points.size();
  const std::size_t i = run.first;
  const std::size_t last = i + run.count - 1;
  Sides out;
  for (std::size_t k = 1; out.before.size() < count && k < n && (list.ring || k <= i); ++k)
    if (const std::size_t at = (i + n - k) % n; at != without) out.before.push_back(list.points[at]);
  for (std::size_t k = 1; out.behind.size() < count && k < n && (list.ring || last + k < n); ++k)
    if (const std::size_t at = (last + k) % n; at != without) out.behind.push_back(list.points[at]);
  return out;
}

Point mean_of(const std::vector<Point>& points) {
  Point sum;
  for (const Point& p : points) sum = sum + p;
  return (1 / static_cast<double>(points.size())) * sum;
}

double angle_between(Point a, Point b) {
  return std::abs(to_degrees(std::atan2(cross(a, b), dot(a, b))));
}

/// A point from the parabola through those beside it: how far it lies from it, and the farthest of those.
struct Departure {
  double own = 0;
  double others = 0;
  bool abreast = false;  // it lies between their ends, and the parabola tells
};

std::optional<Departure> from_parabola(Point p, const Sides& sides) {
  if (std::min(sides.before.size(), sides.behind.size()) < 2) return std::nullopt;
  const Point from = mean_of(sides.before);
  const Point to = mean_of(sides.behind);
  const double length = distance(from, to);
  if (length == 0) return std::nullopt;
  const Point along = (1 / length) * (to - from);
  const Point middle = 0.5 * (from + to);
  const auto row_of = [&](Point q) {
    const double u = dot(q - middle, along) / length;
    return Eigen::Vector3d(1, u, u * u);
  };
  const auto height = [&](Point q) { return cross(along, q - middle); };
  Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
  Eigen::Vector3d right = Eigen::Vector3d::Zero();
  for (const std::vector<Point>* side : {&sides.before, &sides.behind}) {
    for (const Point& q : *side) {
      const Eigen::Vector3d row = row_of(q);
      normal += row * row.transpose();
      right += height(q) * row;
    }
  }
  const Eigen::Vector3d solution = normal.ldlt().solve(right);
  const auto off = [&](Point q) { return std::abs(height(q) - row_of(q).dot(solution)); };
  Departure out;
  out.own = off(p);
  out.abreast = std::abs(row_of(p)(1)) <= 1;
  for (const std::vector<Point>* side : {&sides.before, &sides.behind})
    for (const Point& q : *side) out.others = std::max(out.others, off(q));
  return out;
}

double from_chord(Point p, Point a, Point b) {
  return distance(p, Edge{a, b, {}, Turn::straight});
}

/// How far p lies from the way through the points on one side, run on to where it meets that of the others,
/// or for some chords.
double from_way_on(Point p, const std::vector<Point>& side, double reach) {
  const Point from = mean_of({side.begin() + static_cast<std::ptrdiff_t>(side.size() / 2), side.end()});
  const Point end = side.front();
  const double length = distance(from, end);
  return length == 0 ? kNone : from_chord(p, end, end + (reach / length) * (end - from));
}

/// How far p lies from the chords of those beside it, and from their ways on.
double from_chords(Point p, const Sides& sides) {
  constexpr double kOn =
      2;  // times as long as the chord across: past the tip of any corner that is looked at
  double least = from_chord(p, sides.before.front(), sides.behind.front());
  const double reach = kOn * distance(sides.before.front(), sides.behind.front());
  for (const std::vector<Point>* side : {&sides.before, &sides.behind}) {
    for (std::size_t k = 1; k < side->size(); ++k)
      least = std::min(least, from_chord(p, (*side)[k - 1], (*side)[k]));
    least = std::min(least, from_way_on(p, *side, reach));
  }
  return least;
}

/// Whether a point stands where the pin between its neighbours would.
bool in_place(const List& list, std::size_t i, Point step) {
  constexpr double kOff = 0.35;  // of a step
  const std::size_t n = list.points.size();
  for (const Point way :
       {list.points[i] - list.points[(i + n - 1) % n], list.points[(i + 1) % n] - list.points[i]})
    if (std::abs(dot(way, step) / dot(step, step) - 1) > kOff) return false;
  return true;
}

/// By how much a run is off at least; two points together by what no feature is that has no more points.
double least_off(const List& list, Run run, double by) {
  constexpr double kOfTwo = 2;  // spacings
  return run.count == 1 ? by : std::max(by, kOfTwo * list.spacing);
}

/// How many times as far as it might a run lies from the smooth line of those beside it; 0 where it does not,
/// nothing where they follow none.
std::optional<double> off_smooth(const List& list, Run run, double tolerance) {
  const double most = least_off(list, run, tolerance + kScatters * list.scatter);
  for (const std::size_t count : {list.side, list.side * 3 / 4, list.side * 2}) {
    const Sides sides = sides_of(list, run, count, run.first);
    if (std::min(sides.before.size(), sides.behind.size()) < 2) return std::nullopt;
    // In a wide gap those few beside it say little.
    if (distance(sides.before.front(), sides.behind.front()) >
        kBetween * distance(sides.before.back(), sides.behind.back()))
      continue;
    double least = kNone;
    bool followed = true;
    for (std::size_t i = run.first; i < run.first + run.count; ++i) {
      const Point p = list.points[i];
      const std::optional<Departure> away = from_parabola(p, sides);
      followed = away && away->others <= tolerance / 2 + 3 * list.scatter;
      if (!followed) break;
      const double chords = from_chords(p, sides);
      const double by = away->abreast ? std::min(away->own, chords / kOnSides) : chords;
      least = std::min(least, away->own > kPlain * away->others || !away->abreast ? by / most : 0);
    }
    if (followed) return least > 1 ? least : 0;
  }
  return std::nullopt;
}

/// The same of a run beside a corner, or where the points lie too far apart to tell.
double off_corner(const List& list, Run run, double tolerance) {
  const Sides sides = sides_of(list, run, list.side, run.first);
  if (std::min(sides.before.size(), sides.behind.size()) < 2) return 0;
  const Point a = sides.before.front();
  const Point b = sides.behind.front();
  if (angle_between(a - sides.before.back(), sides.behind.back() - b) > kMostTurn) return 0;
  const double most =
      least_off(list, run, std::max(2 * tolerance + kScatters * list.scatter, kSpacings * list.spacing));
  double least = kNone;
  for (std::size_t i = run.first; i < run.first + run.count; ++i) {
    const Point p = list.points[i];
    if (angle_between(a - p, b - p) > kSharp) return 0;
    least = std::min(least, from_chords(p, sides) / most);
  }
  if (least <= 1) return 0;
  if (run.count > 1) return least;
  // It is this one that is off, and neither of its neighbours.
  const std::size_t n = list.points.size();
  for (const std::size_t beside : {(run.first + n - 1) % n, (run.first + 1) % n}) {
    const Sides others = sides_of(list, {beside, 1}, list.side, run.first);
    if (std::min(others.before.size(), others.behind.size()) < 1) continue;
    if (from_chords(list.points[beside], others) > most / 2) return 0;
  }
  return least;
}

/// How many times as far as it might a run lies beside the line; 0 where it does not.
double off_line(const List& list, Run run, const std::optional<Point>& pins, double tolerance) {
  for (std::size_t i = run.first; i < run.first + run.count; ++i)
    if (pins && in_place(list, i, *pins)) return 0;
  const std::optional<double> smooth = off_smooth(list, run, tolerance);
  return smooth ? *smooth : off_corner(list, run, tolerance);
}

/// Measures the scatter over stretches that are long against it.
void look_over(List& list) {
  const std::size_t n = list.points.size();
  for (list.side = kOnASide;; list.side = list.side * 3 / 2) {
    std::vector<double> away, lengths;
    for (std::size_t i = 0; i < n; ++i) {
      const Sides sides = sides_of(list, {i, 1}, list.side, i);
      if (std::min(sides.before.size(), sides.behind.size()) < list.side) continue;
      const auto found = from_parabola(list.points[i], sides);
      if (found) away.push_back(found->own);
      lengths.push_back(distance(sides.before.back(), sides.behind.back()));
    }
    constexpr double kOfMedian = 0.76;  // the median of what chance puts a point off such a parabola
    list.scatter = median(away) / kOfMedian;
    const double length = median(lengths);
    list.spacing = length / static_cast<double>(2 * list.side);
    if (length >= kLong * list.scatter || list.side * 3 > n / 8) return;
  }
}

bool is_in_order(const std::vector<Point>& points) {
  std::vector<double> steps;
  for (std::size_t i = 1; i < points.size(); ++i) steps.push_back(distance(points[i - 1], points[i]));
  return median(steps) < kInOrder * size_of(points);
}

/// The steps of the pins of a profile gauge, where the points stand as those do: alike along one way, which
/// lies up to some degrees askew. Nothing where they do not.
std::optional<Point> step_of_pins(const std::vector<Point>& points) {
  constexpr double kMostAskew = 12;  // degrees
  constexpr double kAlike = 0.25;    // of a step
  constexpr double kShareAlike = 0.9;
  std::size_t most = 0;
  Point out;
  for (double degrees = -kMostAskew; degrees <= 90 + kMostAskew; degrees += 1) {
    if (degrees > kMostAskew && degrees < 90 - kMostAskew) continue;
    const Point along{std::cos(to_radians(degrees)), std::sin(to_radians(degrees))};
    std::vector<double> steps;
    for (std::size_t i = 1; i < points.size(); ++i) steps.push_back(dot(points[i] - points[i - 1], along));
    const double usual = median(steps);
    std::size_t alike = 0;
    for (const double step : steps) alike += std::abs(step - usual) <= kAlike * std::abs(usual) ? 1 : 0;
    if (alike <= most) continue;
    most = alike;
    out = usual * along;
  }
  if (static_cast<double>(most) < kShareAlike * static_cast<double>(points.size() - 1)) return std::nullopt;
  return out;
}

}  // namespace

std::vector<bool> beside_line(const std::vector<Point>& points, double tolerance, double step) {
  std::vector<bool> none(points.size(), false);
  if (points.size() < kFewest || !is_in_order(points)) return none;
  List list;
  list.points = points;
  for (std::size_t i = 0; i < points.size(); ++i) list.of.push_back(i);
  look_over(list);
  list.scatter = std::max(list.scatter, step / std::sqrt(12.0));
  list.ring = distance(points.front(), points.back()) < 3 * list.spacing;
  const std::optional<Point> pins = step_of_pins(points);
  const std::size_t most =
      std::max(kFew, static_cast<std::size_t>(kShare * static_cast<double>(points.size())));
  std::vector<bool> out = none;
  std::size_t count = 0;
  while (true) {
    std::vector<double> off(list.points.size(), 0);
    for (std::size_t i = 0; i < off.size(); ++i) off[i] = off_line(list, {i, 1}, pins, tolerance);
    for (std::size_t i = 0; i + 1 < off.size(); ++i) {
      if (std::max(off[i], off[i + 1]) > 0) continue;
      const double both = off_line(list, {i, 2}, pins, tolerance);
      off[i] = std::max(off[i], both);
      off[i + 1] = std::max(off[i + 1], both);
    }
    // Of those near each other the farthest goes first: it may be what puts the others off.
    std::vector<std::size_t> taken;
    for (std::size_t i = 0; i < off.size(); ++i) {
      const std::size_t first = i - std::min(i, 2 * list.side);
      const std::size_t last = std::min(off.size(), i + 2 * list.side + 1);
      if (off[i] > 0 && off[i] >= *std::max_element(off.begin() + static_cast<std::ptrdiff_t>(first),
                                                    off.begin() + static_cast<std::ptrdiff_t>(last)))
        taken.push_back(i);
    }
    if (taken.empty()) return out;
    count += taken.size();
    if (count > most) return none;
    for (auto at = taken.rbegin(); at != taken.rend(); ++at) {
      out[list.of[*at]] = true;
      list.points.erase(list.points.begin() + static_cast<std::ptrdiff_t>(*at));
      list.of.erase(list.of.begin() + static_cast<std::ptrdiff_t>(*at));
    }
  }
}

}  // namespace arrisline
