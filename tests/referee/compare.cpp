#include "referee/compare.h"

#include <algorithm>

namespace arrisline::referee {

// The pieces linked into outlines, ends a hair apart made one; nothing where they do not link.
static std::vector<std::vector<Edge>> linked(std::vector<Edge> pieces) {
  constexpr double kLink = 1e-6;
  std::erase_if(pieces, [](const Edge& edge) { return length(edge) < kLink; });
  std::vector<std::vector<Edge>> out;
  while (!pieces.empty()) {
    std::vector<Edge> loop{pieces.back()};
    pieces.pop_back();
    while (distance(loop.back().to, loop.front().from) > kLink) {
      const auto next = std::min_element(pieces.begin(), pieces.end(), [&](const Edge& a, const Edge& b) {
        return distance(a.from, loop.back().to) < distance(b.from, loop.back().to);
      });
      if (next == pieces.end() || distance(next->from, loop.back().to) > kLink) return {};
      loop.push_back(*next);
      loop.back().from = loop[loop.size() - 2].to;
      pieces.erase(next);
    }
    loop.back().to = loop.front().from;
    if (loop.size() > 1) out.push_back(std::move(loop));
  }
  return out;
}

double symmetric_difference(const Region& exact, const Wood& wood) {
  const std::vector<std::vector<Edge>> loops = linked(wood.edges());
  double both = 0, own = 0;
  for (const std::vector<Edge>& loop : loops) {
    const double signed_area = area(loop);
    if (std::abs(signed_area) < 1e-6) continue;
    const auto inside = Region::inside(loop);
    if (!inside) return -1;
    const double sign = signed_area > 0 ? 1 : -1;  // a hole
    both += sign * exact.common(*inside).area();
    own += sign * inside->area();
  }
  if (loops.empty() && !wood.edges().empty()) return -1;
  return exact.area() + own - 2 * both;
}

std::vector<Edge> edges_of(const Region& region) {
  std::vector<Edge> out;
  for (const auto& loop : region.loops()) out.insert(out.end(), loop.begin(), loop.end());
  return out;
}

bool parts_wood_from_air(const Region& region, const Edge& edge, double t, double beside) {
  const double within = 3 * beside / length(edge);
  if (within > 0.5) return false;
  const double here = std::clamp(t, within, 1 - within);
  const Point along = direction_at(edge, here);
  const Point aside = beside * Point{-along.y, along.x};
  return region.holds(point_at(edge, here) + aside) != region.holds(point_at(edge, here) - aside);
}

double apart(const Region& exact, const Wood& wood) {
  const std::vector<Edge> bound = edges_of(exact);
  if (bound.empty()) return 0;
  double worst = 0;
  for (const double t : {0.1, 0.5, 0.9}) {
    for (const Edge& edge : wood.edges()) worst = std::max(worst, off_outline(point_at(edge, t), bound));
    for (const Edge& edge : bound) {
      if (parts_wood_from_air(exact, edge, t))
        worst = std::max(worst, distance(point_at(edge, t), wood.edges()));
    }
  }
  return worst;
}

}  // namespace arrisline::referee
