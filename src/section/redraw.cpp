// Another radius between the same ends: heights and projections stay, so nothing else of the drawing moves.
// Shown by tests/section/redraw_test.cpp.
#include "section/redraw.h"

#include <algorithm>
#include <cmath>

#include "section/contacts.h"
#include "section/walk.h"

namespace arrisline {

namespace {

bool is_of(const Section& section, std::size_t edge, const std::vector<int>& elements) {
  return section.target[edge].is_arc() &&
         std::find(elements.begin(), elements.end(), section.source[edge]) != elements.end();
}

/// Greatest distance from points of the one edge to the other. The distance is smooth but for a corner or
/// two, so the best of some points spread along it is bettered between its neighbours.
double departure(const Edge& from, const Edge& to) {
  constexpr int kPoints = 64;  // even, so that the middle, where two flat arcs lie farthest apart, is one
  auto at = [&](double t) { return distance(point_at(from, t), to); };
  int best = 0;
  for (int i = 1; i <= kPoints; ++i) {
    if (at(static_cast<double>(i) / kPoints) > at(static_cast<double>(best) / kPoints)) best = i;
  }
  double low = std::max(0, best - 1) / static_cast<double>(kPoints);
  double high = std::min(kPoints, best + 1) / static_cast<double>(kPoints);
  const double found = at(static_cast<double>(best) / kPoints);
  for (int i = 0; i < 40; ++i) {
    const double third = (high - low) / 3;
    if (at(low + third) < at(high - third)) {
      low += third;
    } else {
      high -= third;
    }
  }
  return std::max(found, at((low + high) / 2));
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
      most = std::max({most, departure(a.target[i], b.target[i]), departure(b.target[i], a.target[i])});
  }
  return most;
}

}  // namespace arrisline
