// Linking the pieces of a boundary. Shown by tests/sheet/outline_test.cpp.
#include "sheet/outline.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace arrisline {
namespace {

constexpr double kMeets = 1e-7;     // mm; ends as close as this are one point
constexpr double kOneCurve = 1e-6;  // mm; the same of centres and of points off a line
constexpr double kNoArea = 1e-6;    // mm²

/// b goes on where a ends, along the same line or circle, and both together are one edge.
bool runs_on(const Edge& a, const Edge& b) {
  if (a.turn != b.turn) return false;
  if (a.is_arc())
    return distance(a.centre, b.centre) < kOneCurve && std::fabs(radius(a) - radius(b)) < kOneCurve &&
           std::fabs(sweep(a) + sweep(b)) < 2 * kPi - 0.01;
  const Point whole = b.to - a.from;
  const double long_way = norm(whole);
  return long_way > 0 && std::fabs(cross(whole, a.to - a.from)) / long_way < kOneCurve &&
         dot(whole, a.to - a.from) > 0 && dot(whole, b.to - b.from) > 0;
}

void append(Loop& loop, const Edge& edge) {
  if (!loop.empty() && runs_on(loop.back(), edge)) {
    loop.back().to = edge.to;
  } else {
    loop.push_back(edge);
  }
}

/// Closes the outline bit for bit and merges across its beginning.
void close(Loop& loop) {
  if (loop.back().to != loop.front().from) {
    if (distance(loop.back().to, loop.front().from) < kMeets) {
      loop.back().to = loop.front().from;
    } else {
      loop.push_back({loop.back().to, loop.front().from, {}, Turn::straight});
    }
  }
  if (loop.size() > 2 && runs_on(loop.back(), loop.front())) {
    loop.front().from = loop.back().from;
    loop.pop_back();
  }
}

}  // namespace

Region linked(std::span<const Edge> pieces) {
  Region out;
  std::vector<bool> used(pieces.size(), false);
  for (std::size_t first = 0; first < pieces.size(); ++first) {
    if (used[first]) continue;
    used[first] = true;
    Loop loop = {pieces[first]};
    for (;;) {
      const Point end = loop.back().to;
      const double home = distance(end, pieces[first].from);
      std::size_t next = pieces.size();
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (used[i]) continue;
        const double off = distance(end, pieces[i].from);
        if (off < least) {
          least = off;
          next = i;
        }
      }
      if (next == pieces.size() || home <= least) break;
      used[next] = true;
      Edge edge = pieces[next];
      if (least < kMeets) {
        edge.from = end;
      } else {
        append(loop, {end, edge.from, {}, Turn::straight});
      }
      append(loop, edge);
    }
    close(loop);
    if (std::fabs(area(std::span<const Edge>(loop))) >= kNoArea) out.push_back(std::move(loop));
  }
  return out;
}

double area(const Region& region) {
  double out = 0;
  for (const Loop& loop : region) out += area(std::span<const Edge>(loop));
  return out;
}

bool contains(const Region& region, Point p) {
  bool out = false;
  for (const Loop& loop : region) out ^= contains(loop, p);
  return out;
}

}  // namespace arrisline
