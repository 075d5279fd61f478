// Shown by tests/trace/round_trip_test.cpp.
#include "trace/overlooked.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include "trace/figures.h"
#include "trace/left_out.h"
#include "trace/snap.h"

namespace arrisline {
namespace {

// Smaller ones follow what chance makes of a few points.
constexpr double kShortestFlat = 6;  // standard deviations
constexpr double kLeastRadius = 10;

/// The tangent of a quarter of the sweep of an arc over a chord that runs on from `along` at one end.
double bulge_along(Point along, Point chord, bool at_end) {
  // The angle between chord and tangent is half the sweep.
  const double half = at_end ? std::atan2(cross(chord, along), dot(chord, along))
                             : std::atan2(cross(along, chord), dot(along, chord));
  return std::tan(half / 2);
}

/// The line with one link as it is in another line of as many links.
Fitted with_link_of(const Fitted& other, const Fitted& fitted, std::size_t link) {
  Fitted out = fitted;
  for (const std::size_t j : {link, link + 1}) {
    out.line.joints[j] = other.line.joints[j];
    out.from[j] = other.from[j];
  }
  out.line.bulges[link] = other.line.bulges[link];
  return out;
}

/// The line with a short flat at a joint, over the samples from `first` up to `end`.
Fitted with_flat(const Samples& samples, const Fitted& fitted, std::size_t joint, std::size_t first,
                 std::size_t end) {
  Fitted out = fitted;
  const auto at = static_cast<std::ptrdiff_t>(joint);
  out.line.joints[joint] = samples.points[first];
  out.line.joints.insert(out.line.joints.begin() + at + 1, samples.points[end]);
  out.line.bulges.insert(out.line.bulges.begin() + at, 0);
  out.from[joint] = first;
  out.from.insert(out.from.begin() + at + 1, end);
  return out;
}

/// Of the samples so many to either side of a joint, by how many of their standard deviations the sum of
/// their squared distances is more than chance makes it.
double beyond_chance(const Samples& samples, const Fitted& fitted, std::size_t joint, std::size_t reach,
                     const Allowed& allowed) {
  double squares = 0;
  double count = 0;
  for (const std::size_t link : {joint - 1, joint}) {
    const Edge edge = edge_of(fitted.line, link);
    const std::size_t at = fitted.from[joint];
    const std::size_t first = link < joint ? std::max(fitted.from[link], at - std::min(at, reach)) : at;
    const std::size_t end = link < joint ? at : std::min(fitted.from[link + 1], at + reach);
    for (std::size_t s = first; s < end; ++s) {
      if (samples.filled[s]) continue;
      const double off = offset_from(edge, samples.points[s]);
      squares += off * off;
      ++count;
    }
  }
  return count > 0 ? (squares / variance_of(allowed) - count) / std::sqrt(2 * count) : 0;
}

/// Sum of squares and what the figures cost, mm²: where points tell as much, the line that a maker would say
/// in fewer figures is the better one.
double cost_of(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  return fitted.squares + chance_of(figures_of(fitted, allowed), samples.points.size(), allowed);
}

enum class Looked { for_nearest, for_fewest_figures };

/// The best line with a flat of about `reach` samples at the joint: the nearest to the samples; or, with ones
/// made to run on from an arc beside it too, the one that its figures make the best.
Fitted best_with_flat(const Samples& samples, const Fitted& fitted, std::size_t joint, std::size_t reach,
                      Looked looked, const Allowed& allowed) {
  Fitted best = fitted;
  const auto is_better = [&](const Fitted& next) {
    if (looked == Looked::for_nearest || best.line.size() == fitted.line.size())
      return next.squares < best.squares;
    return next.squares < fitted.squares && cost_of(samples, next, allowed) < cost_of(samples, best, allowed);
  };
  const auto at = static_cast<std::ptrdiff_t>(fitted.from[joint]);
  const auto low = static_cast<std::ptrdiff_t>(fitted.from[joint - 1]) + 2;
  const auto high = static_cast<std::ptrdiff_t>(fitted.from[joint + 1]) - 2;
  const auto half = static_cast<std::ptrdiff_t>(reach / 2);
  // Where another joint has run away before, that is no fault of a flat.
  const auto stays = [&](const Fitted& next) {
    if (looked == Looked::for_nearest) return joints_stay(samples, next, allowed);
    return joint_stays(samples, next, joint, allowed) && joint_stays(samples, next, joint + 1, allowed);
  };
  for (const std::ptrdiff_t middle : {at - half, at, at + half}) {
    const std::ptrdiff_t first = std::max(low, middle - half);
    const std::ptrdiff_t end = std::min(high, middle + half);
    if (end - first < 3) continue;
    const Fitted begun =
        with_flat(samples, fitted, joint, static_cast<std::size_t>(first), static_cast<std::size_t>(end));
    const auto take = [&](const Held& held) {
      const Fitted next = fit(samples, begun, held, allowed);
      const bool long_enough = length(edge_of(next.line, joint)) >= kShortestFlat * allowed.scatter;
      if (long_enough && is_better(next) && stays(next)) best = next;
    };
    const Held free(begun.line.size());
    take(free);
    if (looked == Looked::for_nearest) continue;
    for (const std::size_t end_of_flat : {joint, joint + 1}) {
      if (begun.line.bulges[end_of_flat == joint ? joint - 1 : joint + 1] == 0) continue;
      Held held = free;
      held.smooth[end_of_flat] = true;
      take(held);
    }
  }
  return best;
}

/// The line with a link made flat, or an arc that runs on from the flat before it or behind it, begun there
/// or farther back. An arc keeps its hand.
std::vector<Fitted> other_starts(const Fitted& fitted, std::size_t link) {
  std::vector<Fitted> out;
  if (fitted.line.bulges[link] != 0) {
    out.push_back(fitted);
    out.back().line.bulges[link] = 0;
  }
  const std::vector<Point>& joints = fitted.line.joints;
  const std::vector<double>& bulges = fitted.line.bulges;
  for (const bool at_end : {false, true}) {
    const bool flat =
        at_end ? link + 1 < fitted.line.size() && bulges[link + 1] == 0 : link > 0 && bulges[link - 1] == 0;
    if (!flat) continue;
    const std::size_t joint = at_end ? link + 1 : link;
    const Point back = joints[at_end ? joint + 1 : joint - 1] - joints[joint];
    const double room = norm(back);
    if (room == 0) continue;
    for (const double share : {0.0, 0.5, 1.0}) {
      Fitted next = fitted;
      const double by = std::min(share * length(edge_of(fitted.line, link)), 0.8 * room);
      next.line.joints[joint] = joints[joint] + (by / room) * back;
      const Point chord = next.line.joints[link + 1] - next.line.joints[link];
      next.line.bulges[link] = bulge_along(at_end ? back : -1 * back, chord, at_end);
      const bool other_hand = next.line.bulges[link] * bulges[link] < 0;
      if (next.line.bulges[link] != 0 && !other_hand) out.push_back(std::move(next));
    }
  }
  return out;
}

/// What a line costs that takes no more figures to say than another, and one element more. The points alone
/// tell between such two: by what they scatter, which short elements make look more than it is, and no
/// tolerance besides.
double cost_of_break(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  const auto count = static_cast<double>(samples.points.size());
  const double left = std::max(1.0, count - figures_of(fitted, allowed));
  const double variance = std::min(samples.scatter * samples.scatter, fitted.squares / left);
  return figure_cost(samples.points.size()) * (variance + kFollowsExactly * kFollowsExactly);
}

/// Whether an arc may run on past its end there, over what is a short flat that runs on from it to a square
/// corner: it meets a flat neither running on nor square, and the points of the two could lie nearer.
bool may_hide_flat(const Samples& samples, const Fitted& fitted, std::size_t joint, const Allowed& allowed) {
  constexpr double kLeast = 45;     // degrees
  constexpr std::size_t kTold = 3;  // samples: a wall that a pin or two of a gauge touch tells of no corner
  if ((fitted.line.bulges[joint - 1] != 0) == (fitted.line.bulges[joint] != 0)) return false;
  for (const std::size_t link : {joint - 1, joint})
    if (fitted.from[link + 1] - fitted.from[link] < kTold) return false;
  const double turn = turn_at(fitted.line, joint);
  if (is_ruled(fitted, joint, allowed) || turn < kLeast || turn > 180 - kLeast) return false;
  double squares = 0;
  for (const std::size_t link : {joint - 1, joint})
    for (const double d : distances_of(samples, fitted, link)) squares += d * d;
  return squares > cost_of_break(samples, fitted, allowed);
}

/// Whether points tell of the flat that was put in at a joint: they lie on it and on both sides of it, and in
/// no gap between them.
bool is_told(const Samples& samples, const Fitted& next, std::size_t link) {
  constexpr std::size_t kFewest = 2;
  constexpr std::size_t kBeside = 3;
  const std::size_t first = next.from[link];
  const std::size_t end = next.from[link + 1];
  if (end - first < kFewest) return false;
  for (std::size_t s = first - std::min(first, kBeside); s < std::min(end + kBeside, samples.filled.size());
       ++s)
    if (samples.filled[s]) return false;
  return true;
}

/// Whether it runs on from the arc beside it to a square corner, and shows the joint to have been off by what
/// a maker would see; by half as much where the points tell so of it that two figures more would be taken.
bool makes_corner(const Samples& samples, const Fitted& fitted, const Fitted& next, std::size_t joint,
                  const Allowed& allowed) {
  constexpr double kToldFor = 3;  // figures, the break among them
  const bool told = fitted.squares - next.squares > kToldFor * cost_of_break(samples, fitted, allowed);
  const double seen = told ? 1 : 2;  // times the tolerance
  constexpr double kOn = 45;         // degrees: it is one or the other
  const bool arc_before = next.line.bulges[joint - 1] != 0;
  const std::size_t smooth = arc_before ? joint : joint + 1;
  const std::size_t corner = arc_before ? joint + 1 : joint;
  if (turn_at(next.line, smooth) > kOn || turn_at(next.line, corner) < kOn) return false;
  double off = std::numeric_limits<double>::infinity();
  for (const std::size_t link : {joint - 1, joint, joint + 1})
    off = std::min(off, distance(fitted.line.joints[joint], edge_of(next.line, link)));
  return off > seen * allowed.tolerance;
}

bool put_one_in(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  constexpr double kBeyond = 3;           // standard deviations from which a joint is looked at
  constexpr std::size_t kReachOfFew = 8;  // samples: a longer flat strays by more than chance
  const auto takes = [&](const Fitted& next, double chance) {
    if (next.worst > std::max(1.0, fitted.worst) || fitted.squares - next.squares < chance) return false;
    fitted = next;
    return true;
  };
  for (std::size_t joint = 1; joint < fitted.line.size(); ++joint) {
    const bool may_hide = may_hide_flat(samples, fitted, joint, allowed);
    for (const std::size_t reach : std::initializer_list<std::size_t>{4, 8, 16, 32}) {
      if (beyond_chance(samples, fitted, joint, reach, allowed) >= kBeyond) {
        const Fitted next = best_with_flat(samples, fitted, joint, reach, Looked::for_nearest, allowed);
        const double figures = figures_of_link(next, joint) + 1;  // and its break
        if (next.line.size() > fitted.line.size() &&
            takes(next, chance_of(figures, samples.points.size(), allowed)))
          return true;
      }
      if (!may_hide || reach > kReachOfFew) continue;
      const Fitted next = best_with_flat(samples, fitted, joint, reach, Looked::for_fewest_figures, allowed);
      if (next.line.size() > fitted.line.size() && figures_of(next, allowed) <= figures_of(fitted, allowed) &&
          is_told(samples, next, joint) && makes_corner(samples, fitted, next, joint, allowed) &&
          takes(next, cost_of_break(samples, fitted, allowed)))
        return true;
    }
  }
  return false;
}

/// The line with two flats in the place of an arc, that meet where the samples lie farthest from its chord.
Fitted with_corner(const Samples& samples, const Fitted& fitted, std::size_t link) {
  const std::vector<Point>& joints = fitted.line.joints;
  const Edge chord{joints[link], joints[link + 1], {}, Turn::straight};
  std::size_t corner = fitted.from[link] + 1;
  for (std::size_t s = corner; s < fitted.from[link + 1]; ++s)
    if (std::abs(offset_from(chord, samples.points[s])) >
        std::abs(offset_from(chord, samples.points[corner])))
      corner = s;
  Fitted out = fitted;
  const auto at = static_cast<std::ptrdiff_t>(link) + 1;
  out.line.bulges[link] = 0;
  out.line.bulges.insert(out.line.bulges.begin() + at, 0);
  out.line.joints.insert(out.line.joints.begin() + at, samples.points[corner]);
  out.from.insert(out.from.begin() + at, corner);
  return out;
}

}  // namespace

void make_corners(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  if (samples.scatter == 0) return;
  constexpr double kWide = 0.5;  // a bulge: a sweep of somewhat over a quarter turn
  constexpr std::size_t kFew = 20;
  const auto told_by_few = [&](std::size_t link) {
    const std::size_t first = fitted.from[link];
    const std::size_t end = fitted.from[link + 1];
    return std::abs(fitted.line.bulges[link]) > kWide && end - first >= 4 && end - first <= kFew &&
           !samples.filled[first > 0 ? first - 1 : 0] &&
           !samples.filled[std::min(end, samples.points.size() - 1)] &&
           distances_of(samples, fitted, link).size() == end - first;
  };
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    if (!told_by_few(i)) continue;
    const Fitted begun = with_corner(samples, fitted, i);
    const Fitted next = fit(samples, begun, Held(begun.line.size()), allowed);
    // Where no corner is square they are no step and fillet but chords of an arc.
    const bool square =
        is_ruled(next, i + 1, allowed) && ((i > 0 && is_ruled(next, i, allowed)) ||
                                           (i + 2 < next.line.size() && is_ruled(next, i + 2, allowed)));
    if (square && next.worst <= std::max(1.0, fitted.worst) && joints_stay(samples, next, allowed) &&
        cost_of(samples, next, allowed) < cost_of(samples, fitted, allowed))
      fitted = next;
  }
}

void round_out(const Samples& samples, const Fitted& start, Fitted& fitted, const Allowed& allowed) {
  if (samples.scatter == 0) return;
  constexpr double kShort = 60;  // standard deviations; a longer link has one place to rest
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    if (length(edge_of(start.line, i)) > kShort * allowed.scatter) continue;
    // A flat that stands square to its neighbour, or runs on from it, is what it looks like.
    if (start.line.bulges[i] == 0 && figures_of_link(fitted, i) < kFiguresOfFlat) continue;
    const bool strayed = !joints_stay(samples, fitted, allowed);
    const Fitted begun = strayed ? with_link_of(start, fitted, i) : fitted;
    const auto cost = [&](const Fitted& one) {
      return one.squares + chance_of(figures_of_link(one, i), samples.points.size(), allowed);
    };
    std::optional<Fitted> best;
    if (!strayed) best = fitted;
    for (const Fitted& other : other_starts(begun, i)) {
      const Fitted next = fit(samples, other, Held(other.line.size()), allowed);
      const Edge made = edge_of(next.line, i);
      const bool as_meant = other.line.bulges[i] == 0 || (next.line.bulges[i] * other.line.bulges[i] > 0 &&
                                                          radius(made) >= kLeastRadius * allowed.scatter);
      if (as_meant && next.worst <= std::max(1.0, fitted.worst) && joints_stay(samples, next, allowed) &&
          (!best || cost(next) < cost(*best)))
        best = next;
    }
    if (best) fitted = *best;
  }
}

void put_in(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  if (samples.scatter == 0) return;
  while (fitted.line.size() < samples.points.size() / 4 && put_one_in(samples, fitted, allowed)) {
  }
}

}  // namespace arrisline
