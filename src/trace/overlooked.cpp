// Shown by tests/trace/round_trip_test.cpp.
#include "trace/overlooked.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <utility>
#include <vector>

#include "trace/left_out.h"

namespace arrisline {
namespace {

constexpr double kFiguresOfFlat = 2;
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

/// How many figures a link takes: two, one more for an arc, one less for each end at which it runs on from
/// its neighbour or stands square to it, as links of mouldings do where one of the two is flat.
double figures_of_link(const Fitted& fitted, std::size_t link) {
  constexpr double kSame = 15;  // degrees: three standard deviations of a dozen points over as many of theirs
  const Edge edge = edge_of(fitted.line, link);
  double out = edge.is_arc() ? kFiguresOfFlat + 1 : kFiguresOfFlat;
  const auto ruled = [&](std::size_t before, std::size_t after) {
    const Edge from = edge_of(fitted.line, before);
    const Edge to = edge_of(fitted.line, after);
    if (from.is_arc() && to.is_arc()) return false;
    const Point in = direction_at(from, 1);
    const Point on = direction_at(to, 0);
    const double turn = std::abs(to_degrees(std::atan2(cross(in, on), dot(in, on))));
    return turn < kSame || std::abs(turn - 90) < kSame;
  };
  if (link > 0 && ruled(link - 1, link)) --out;
  if (link + 1 < fitted.line.size() && ruled(link, link + 1)) --out;
  return out;
}

/// The best line with a flat of about `reach` samples at the joint.
Fitted best_with_flat(const Samples& samples, const Fitted& fitted, std::size_t joint, std::size_t reach,
                      const Allowed& allowed) {
  Fitted best = fitted;
  const auto at = static_cast<std::ptrdiff_t>(fitted.from[joint]);
  const auto low = static_cast<std::ptrdiff_t>(fitted.from[joint - 1]) + 2;
  const auto high = static_cast<std::ptrdiff_t>(fitted.from[joint + 1]) - 2;
  const auto half = static_cast<std::ptrdiff_t>(reach / 2);
  for (const std::ptrdiff_t middle : {at - half, at, at + half}) {
    const std::ptrdiff_t first = std::max(low, middle - half);
    const std::ptrdiff_t end = std::min(high, middle + half);
    if (end - first < 3) continue;
    Fitted next =
        with_flat(samples, fitted, joint, static_cast<std::size_t>(first), static_cast<std::size_t>(end));
    next = fit(samples, next, Held(next.line.size()), allowed);
    const bool long_enough = length(edge_of(next.line, joint)) >= kShortestFlat * allowed.scatter;
    if (long_enough && next.squares < best.squares && joints_stay(samples, next, allowed)) best = next;
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

bool put_one_in(const Samples& samples, Fitted& fitted, const Allowed& allowed) {
  constexpr double kBeyond = 3;  // standard deviations from which a joint is looked at
  for (std::size_t joint = 1; joint < fitted.line.size(); ++joint) {
    for (const std::size_t reach : std::initializer_list<std::size_t>{4, 8, 16, 32}) {
      if (beyond_chance(samples, fitted, joint, reach, allowed) < kBeyond) continue;
      const Fitted next = best_with_flat(samples, fitted, joint, reach, allowed);
      if (next.line.size() == fitted.line.size() || next.worst > std::max(1.0, fitted.worst)) continue;
      const double figures = figures_of_link(next, joint) + 1;  // and its break
      if (fitted.squares - next.squares < chance_of(figures, samples.points.size(), allowed)) continue;
      fitted = next;
      return true;
    }
  }
  return false;
}

}  // namespace

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
