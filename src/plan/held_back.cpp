// Shown by tests/plan/held_back_test.cpp.
#include "plan/held_back.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include "plan/gouge.h"

namespace arrisline {

namespace {

/// How far short of its place such a flat stops, as shares of the radius of the arc.
constexpr std::array kShort = {0.1, 0.2, 0.35, 0.6};

bool is_beside_arc(const Draft& flat, const Draft& curve) {
  return std::any_of(flat.finishes.begin(), flat.finishes.end(),
                     [&](const Stretch& part) { return std::abs(part.surface - curve.arc) == 1; });
}

/// The first pose of the draft moved by one, the last by the other, and those between as their neighbours;
/// nothing where it would then cut what has to stay.
std::optional<Draft> moved(const Problem& problem, const Draft& flat, Point first, Point last) {
  Draft out;
  out.plane = flat.plane;
  const Plane& plane = problem.plane(flat.plane);
  for (std::size_t i = 0; i < flat.poses.size(); ++i) {
    Pose pose = flat.poses[i];
    pose.at = pose.at + (2 * i < flat.poses.size() ? first : last);
    if (gouges(problem.section.target, Sweep(plane, pose), kExact)) return std::nullopt;
    out.poses.push_back(pose);
  }
  find_other_poses(problem, out);
  return out;
}

}  // namespace

std::vector<HeldBack> held_back(const Problem& problem, const Draft& curve, const std::vector<Draft>& flats) {
  const double r = radius(problem.edge(surface_of(problem, curve.arc)));
  std::vector<HeldBack> out;
  for (const Draft& flat : flats) {
    if (!problem.plane(flat.plane).is_flat() || !is_beside_arc(flat, curve)) continue;
    Wood others(problem.blank);
    for (const Draft& other : flats) {
      if (&other != &flat) cut_all(problem, {other}, others);
    }
    Draft late = flat;
    late.late = true;
    out.push_back({late, std::nullopt, others});
    const double tilt = flat.poses.front().tilt;
    const Point up = outward(tilt), side = across(tilt);
    // Between two walls it is made narrower at both.
    const double apart = flat.poses.size() > 1 ? -1 : 1;
    for (const auto& [first, last] :
         {std::pair(up, up), std::pair(side, apart * side), std::pair(-1 * side, -apart * side)}) {
      for (const double share : kShort) {
        std::optional<Draft> meanwhile = moved(problem, flat, share * r * first, share * r * last);
        if (!meanwhile) continue;
        Wood wood = others;
        cut_all(problem, {*meanwhile}, wood);
        if (others.area() - wood.area() > kLeastCut) out.push_back({late, std::move(meanwhile), wood});
      }
    }
  }
  return out;
}

}  // namespace arrisline
