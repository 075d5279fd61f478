// The segments were found one by one, each free to end where it liked; joined in one line some of them turn
// out to be chance's. Shown by tests/trace/round_trip_test.cpp.
#include "trace/simplify.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "trace/left_out.h"

namespace arrisline {
namespace {

constexpr double kCornerWide =
    20;  // standard deviations that points put in a wrong order reach from a corner

/// Whether the simpler line will do, which has so many figures less.
bool will_do(const Samples& samples, const Fitted& simpler, const Fitted& fitted, double figures,
             const Allowed& allowed) {
  return simpler.worst <= std::max(1.0, fitted.worst) &&
         (joints_stay(samples, simpler, allowed) || !joints_stay(samples, fitted, allowed)) &&
         simpler.squares - fitted.squares <= chance_of(figures, samples.points.size(), allowed);
}

/// The tangent of a quarter of the sweep of the arc through three points, from the first to the last.
double bulge_through(Point from, Point by, Point to) {
  const Point a = from - by;
  const Point b = to - by;
  // The angle at `by` stands over the rest of the circle: the sweep is a whole turn less twice that.
  const double angle = std::atan2(cross(b, a), dot(b, a));
  const double sweep = angle > 0 ? 2 * (kPi - angle) : -2 * (kPi + angle);
  return std::tan(std::clamp(sweep, -1.9 * kPi, 1.9 * kPi) / 4);
}

/// The line with the links on both sides of a joint made one; an arc as the middle one of the samples has it,
/// since a joint beside a short link says little of the whole.
Fitted without_joint(const Samples& samples, const Fitted& fitted, std::size_t joint, bool flat) {
  Fitted out = fitted;
  const auto at = static_cast<std::ptrdiff_t>(joint);
  const std::vector<Point>& joints = fitted.line.joints;
  const Point middle = samples.points[(fitted.from[joint - 1] + fitted.from[joint + 1]) / 2];
  out.line.bulges.erase(out.line.bulges.begin() + at);
  out.line.bulges[joint - 1] = flat ? 0 : bulge_through(joints[joint - 1], middle, joints[joint + 1]);
  out.line.joints.erase(out.line.joints.begin() + at);
  out.from.erase(out.from.begin() + at);
  return out;
}

/// The line without a link, its samples left to the two beside it: what a corner is in which points that
/// scatter were put in a wrong order.
Fitted without_link(const Fitted& fitted, std::size_t link) {
  Fitted out = fitted;
  const auto at = static_cast<std::ptrdiff_t>(link);
  out.line.joints[link] = 0.5 * (fitted.line.joints[link] + fitted.line.joints[link + 1]);
  out.line.joints.erase(out.line.joints.begin() + at + 1);
  out.line.bulges.erase(out.line.bulges.begin() + at);
  out.from[link] = (fitted.from[link] + fitted.from[link + 1]) / 2;
  out.from.erase(out.from.begin() + at + 1);
  return out;
}

bool drop_one(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  std::vector<std::pair<double, std::size_t>> links;
  for (std::size_t i = 1; i + 1 < fitted.line.size(); ++i)
    links.emplace_back(length(edge_of(fitted.line, i)), i);
  std::sort(links.begin(), links.end());
  for (const auto& [long_, i] : links) {
    if (long_ > kCornerWide * allowed.scatter) break;
    Fitted next = without_link(fitted, i);
    next = fit(samples, next, Held(next.line.size()), allowed);
    if (!will_do(samples, next, fitted, fitted.line.bulges[i] == 0 ? 2 : 3, allowed)) continue;
    fitted = next;
    return true;
  }
  return false;
}

bool merge_one(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  for (std::size_t joint = 1; joint < fitted.line.size(); ++joint) {
    const double first = fitted.line.bulges[joint - 1];
    const double second = fitted.line.bulges[joint];
    const int arcs = (first != 0) + (second != 0);
    for (const bool flat : {true, false}) {
      Fitted next = without_joint(samples, fitted, joint, flat);
      if (!flat && next.line.bulges[joint - 1] == 0) continue;
      next = fit(samples, next, Held(next.line.size()), allowed);
      const double figures = 2 + arcs - (flat ? 0 : 1);
      if (!will_do(samples, next, fitted, figures, allowed)) continue;
      fitted = next;
      return true;
    }
  }
  return false;
}

/// Whether an arc is one that nobody could see or plane.
bool hardly_rises(const Edge& edge) {
  constexpr double kLeast = 0.005;         // mm over its chord
  constexpr double kLargestRadius = 5000;  // mm
  const double chord = distance(edge.from, edge.to);
  return std::abs(bulge_of(edge)) * chord / 2 < kLeast || radius(edge) > kLargestRadius;
}

/// False where no arc was made flat.
bool straighten(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  constexpr double kFlattest = 0.2;  // a bulge: a rise of a tenth of the chord
  std::vector<std::pair<double, std::size_t>> arcs;
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    const double bulge = std::abs(fitted.line.bulges[i]);
    if (bulge > 0 && bulge < kFlattest) arcs.emplace_back(bulge, i);
  }
  std::sort(arcs.begin(), arcs.end());
  bool any = false;
  for (const auto& [bulge, i] : arcs) {
    Fitted next = fitted;
    next.line.bulges[i] = 0;
    next = fit(samples, next, Held(next.line.size()), allowed);
    if (!hardly_rises(edge_of(fitted.line, i)) && !will_do(samples, next, fitted, 2, allowed)) continue;
    fitted = next;
    any = true;
  }
  return any;
}

}  // namespace

void simplify(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  straighten(samples, fitted, allowed);
  do {
    while (fitted.line.size() > 1 &&
           (drop_one(samples, fitted, allowed) || merge_one(samples, fitted, allowed))) {
    }
  } while (straighten(samples, fitted, allowed));
}

void simplify_arcs(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  while (straighten(samples, fitted, allowed))
    while (fitted.line.size() > 1 && merge_one(samples, fitted, allowed)) {
    }
}

}  // namespace arrisline
