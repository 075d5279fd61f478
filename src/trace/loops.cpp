// Shown by tests/trace/loops_test.cpp.
#include "trace/loops.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "section/contacts.h"

namespace arrisline {
namespace {

/// The sample of a link that lies nearest to a place.
std::size_t nearest_of(const Samples& samples, const Fitted& fitted, std::size_t link, Point place) {
  std::size_t best = fitted.from[link];
  for (std::size_t s = best; s < fitted.from[link + 1]; ++s)
    if (distance(samples.points[s], place) < distance(samples.points[best], place)) best = s;
  return best;
}

/// How wide the loop of these points is on the whole: of a long one from side to side, of a circle its
/// radius.
double width_of(const std::vector<Point>& loop) {
  double area = 0;
  double round = 0;
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const Point from = loop[i];
    const Point to = loop[(i + 1) % loop.size()];
    area += cross(from, to) / 2;
    round += distance(from, to);
  }
  return round > 0 ? 2 * std::abs(area) / round : 0;
}

}  // namespace

std::optional<Point> crossing_of(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  constexpr std::size_t kMost = 50;
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < fitted.line.size(); ++i) edges.push_back(edge_of(fitted.line, i));
  const double beside = 4 * samples.spacing + 6 * samples.scatter;
  for (const SelfContact& contact : find_contacts(edges, false, kMost).list) {
    if (contact.meeting != Meeting::crosses) continue;
    const std::size_t first = nearest_of(samples, fitted, contact.first, contact.at);
    const std::size_t second = nearest_of(samples, fitted, contact.second, contact.at);
    const std::vector<Point>& points = samples.points;
    if (distance(points[first], contact.at) > beside || distance(points[second], contact.at) > beside)
      continue;
    const auto begin = points.begin() + static_cast<std::ptrdiff_t>(first);
    const auto end = points.begin() + static_cast<std::ptrdiff_t>(second);
    // A closed line, where it begins before it ends, has nothing of its own on the other side.
    std::vector<Point> rest(end, points.end());
    rest.insert(rest.end(), points.begin(), begin);
    const bool closed = distance(points.front(), points.back()) <= beside;
    const double within = width_of({begin, end});
    const double width = closed ? std::min(within, width_of(rest)) : within;
    if (width > 2 * allowed.single()) return contact.at;
  }
  return std::nullopt;
}

bool is_sound(const Section& section) {
  constexpr std::size_t kMost = 50;
  for (const Edge& edge : section.target) {
    const Reach reach = reach_of(edge);
    if (reach.low.x < -kSamePoint || reach.low.y < -kSamePoint || reach.high.x > section.width + kSamePoint ||
        reach.high.y > section.thickness + kSamePoint)
      return false;
  }
  const Contacts contacts = find_contacts(section.target, true, kMost);
  return contacts.complete &&
         std::all_of(contacts.list.begin(), contacts.list.end(),
                     [](const SelfContact& contact) { return contact.meeting == Meeting::pinches_out; });
}

}  // namespace arrisline
