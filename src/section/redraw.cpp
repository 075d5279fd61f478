// Another radius between the same ends: heights and projections stay, so nothing else of the drawing moves.
// Shown by tests/section/redraw_test.cpp.
#include "section/redraw.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <utility>

#include "section/contacts.h"
#include "section/walk.h"

namespace arrisline {

namespace {

bool is_of(const Section& section, std::size_t edge, const std::vector<int>& elements) {
  return section.target[edge].is_arc() &&
         std::find(elements.begin(), elements.end(), section.source[edge]) != elements.end();
}

/// Greatest distance from points of the edge to the other edge, or the nearest of others. It is smooth but
/// for some corners, so the best of some points spread along it is bettered between its neighbours, and so is
/// any that is better than those.
double departure(const Edge& from, std::span<const Edge> to) {
  constexpr int kPoints = 64;  // even, so that the middle, where two flat arcs lie farthest apart, is one
  auto at = [&](double t) { return distance(point_at(from, t), to); };
  std::array<double, kPoints + 1> far = {};
  for (int i = 0; i <= kPoints; ++i) far[static_cast<std::size_t>(i)] = at(static_cast<double>(i) / kPoints);
  double most = 0;
  for (int i = 0; i <= kPoints; ++i) {
    const auto here = static_cast<std::size_t>(i);
    most = std::max(most, far[here]);
    if ((i > 0 && far[here - 1] > far[here]) || (i < kPoints && far[here + 1] > far[here])) continue;
    double low = std::max(0, i - 1) / static_cast<double>(kPoints);
    double high = std::min(kPoints, i + 1) / static_cast<double>(kPoints);
    for (int k = 0; k < 40; ++k) {
      const double third = (high - low) / 3;
      if (at(low + third) < at(high - third)) {
        low += third;
      } else {
        high -= third;
      }
    }
    most = std::max(most, at((low + high) / 2));
  }
  return most;
}

}  // namespace

double least_radius(const Section& section, const std::vector<int>& elements) {
  double least = 0;
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (is_of(section, i, elements))
      least = std::max(least, distance(section.target[i].from, section.target[i].to) / 2);
  }
  return least;
}

std::optional<Section> with_radius(const Section& section, const std::vector<int>& elements, double r) {
  if (r < least_radius(section, elements) - 1e-9) return std::nullopt;
  Section out = section;
  bool changed = false;
  for (std::size_t i = 0; i < out.target.size(); ++i) {
    if (!is_of(section, i, elements)) continue;
    Edge& edge = out.target[i];
    edge = edge_between(edge.from, edge.to, edge.turn, r, std::abs(sweep(edge)) > kPi + 1e-9);
    const Reach reach = reach_of(edge);
    if (reach.low.x < -kSamePoint || reach.low.y < -kSamePoint || reach.high.x > out.width + kSamePoint ||
        reach.high.y > out.thickness + kSamePoint)
      return std::nullopt;
    changed = true;
  }
  if (!changed) return std::nullopt;
  const Contacts contacts = find_contacts(out.target, true, 1);
  if (!contacts.complete || !contacts.list.empty()) return std::nullopt;
  return out;
}

double largest_departure(const Section& a, const Section& b) {
  double most = 0;
  for (std::size_t i = 0; i < a.target.size(); ++i) {
    if (a.target[i].is_arc() != b.target[i].is_arc() || distance(a.target[i].centre, b.target[i].centre) > 0)
      most = std::max(
          {most, departure(a.target[i], {&b.target[i], 1}), departure(b.target[i], {&a.target[i], 1})});
  }
  return most;
}

double apart(const Section& a, const Section& b) {
  double most = 0;
  for (const auto& [from, to] : {std::pair(&a, &b), std::pair(&b, &a)}) {
    for (std::size_t i = 0; i < from->target.size(); ++i)
      if (from->source[i] >= 0) most = std::max(most, departure(from->target[i], to->target));
  }
  return most;
}

}  // namespace arrisline
