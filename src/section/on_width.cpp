// A profile on a blank of another width. Shown by tests/section/on_width_test.cpp.
#include <algorithm>
#include <cmath>

#include "arrisline/section.h"

namespace arrisline {
namespace {

/// Places closer than this are one, mm: far below any saw, far above the noise of the arithmetic.
constexpr double kSamePlace = 1e-6;

double farthest(const Edge& edge) {
  double out = std::max(edge.from.x, edge.to.x);
  if (edge.is_arc() && spoke_meets(edge, {1, 0})) out = std::max(out, edge.centre.x + radius(edge));
  return out;
}

}  // namespace

double reach(const Section& section) {
  double out = 0;
  for (std::size_t i = 0; i < section.target.size(); ++i)
    if (section.source[i] >= 0) out = std::max(out, farthest(section.target[i]));
  return out;
}

bool works_back_edge(const Section& section) {
  const bool from_there = std::any_of(section.elements.begin(), section.elements.end(),
                                      [](const Element& element) { return element.chain == Chain::back; });
  return from_there || reach(section) > section.width - kSamePlace;
}

std::optional<Section> on_width(const Section& section, double width) {
  if (std::abs(width - section.width) < kSamePlace) return section;
  if (works_back_edge(section) || reach(section) > width + kSamePlace) return std::nullopt;
  Section out = section;
  out.width = width;
  out.target.clear();
  out.source.clear();
  const auto moved = [&](Point p) { return p.x > section.width - kSamePlace ? Point{width, p.y} : p; };
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    Edge edge = section.target[i];
    if (section.source[i] < 0) {
      edge.from = moved(edge.from);
      edge.to = moved(edge.to);
      // Work that begins right at the new back edge leaves none of the face there.
      if (distance(edge.from, edge.to) < kSamePlace) continue;
    } else if (!edge.is_arc() && std::min(edge.from.x, edge.to.x) > width - kSamePlace) {
      return std::nullopt;  // it would run down the back edge itself
    }
    out.target.push_back(edge);
    out.source.push_back(section.source[i]);
  }
  close_outline(out.target);
  return out;
}

}  // namespace arrisline
