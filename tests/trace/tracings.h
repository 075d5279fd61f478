// Sections sampled as a digitiser would, for the tests of tracing.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include "arrisline/trace.h"
#include "catch.h"

namespace arrisline::testing {

/// The worked edges of a section with one chain from the face on, in the order a maker draws them.
inline std::vector<Edge> worked_line(const Section& section) {
  const std::size_t n = section.target.size();
  std::vector<Edge> best;
  for (std::size_t i = 0; i < n; ++i) {
    if (section.source[i] < 0 || section.source[(i + n - 1) % n] >= 0) continue;
    std::vector<Edge> run;
    for (std::size_t k = i; section.source[k % n] >= 0 && run.size() < n; ++k)
      run.push_back(section.target[k % n]);
    if (run.size() > best.size()) best = run;
  }
  std::reverse(best.begin(), best.end());
  for (Edge& edge : best) edge = reversed(edge);
  return best;
}

/// With so much of the face before it, and of the working edge (or the face again) behind it, mm.
inline std::vector<Edge> with_sides(std::vector<Edge> line, double more) {
  const Point from = line.front().from;
  const Point to = line.back().to;
  if (from.y == 0) line.insert(line.begin(), Edge{{from.x + more, 0}, from, {}, Turn::straight});
  if (to.x == 0)
    line.push_back(Edge{to, {0, to.y + more}, {}, Turn::straight});
  else if (to.y == 0)
    line.push_back(Edge{to, {to.x - more, 0}, {}, Turn::straight});
  return line;
}

/// The profile that is found, its levels and radii on halves of a millimetre where that lies near.
inline FittedProfile on_halves(const Tracing& tracing) {
  FitOptions options;
  options.division = 0.5;
  std::string why;
  const auto found = fit_tracing(tracing, options, &why);
  INFO(why);
  REQUIRE(found);
  return *found;
}

struct Digitiser {
  std::size_t points = 500;
  double scatter = 0;      // mm, each way
  double askew = 0;        // degrees
  bool any_order = false;  // not along the line
  bool backward = false;
  bool y_up = false;
  bool from_right = false;  // the working edge at the right, which only y_up or y_down tells
};

inline Tracing digitised(const std::vector<Edge>& line, const Digitiser& by, unsigned seed) {
  std::mt19937 random(seed);
  std::normal_distribution<double> off(0, by.scatter > 0 ? by.scatter : 1);
  const double whole = std::accumulate(line.begin(), line.end(), 0.0,
                                       [](double sum, const Edge& edge) { return sum + length(edge); });
  Tracing out;
  const double c = std::cos(to_radians(by.askew));
  const double s = std::sin(to_radians(by.askew));
  for (std::size_t i = 0; i < by.points; ++i) {
    double at = whole * (static_cast<double>(i) + 0.5) / static_cast<double>(by.points);
    for (const Edge& edge : line) {
      if (at > length(edge)) {
        at -= length(edge);
        continue;
      }
      Point p = point_at(edge, at / length(edge));
      if (by.scatter > 0) {
        p.x += off(random);
        p.y += off(random);
      }
      p = {c * p.x - s * p.y, s * p.x + c * p.y};
      out.points.push_back({by.from_right ? -p.x : p.x, by.y_up ? -p.y : p.y});
      break;
    }
  }
  if (by.backward) std::reverse(out.points.begin(), out.points.end());
  if (by.any_order) std::shuffle(out.points.begin(), out.points.end(), random);
  if (by.from_right) out.upward = by.y_up ? Upward::y_up : Upward::y_down;
  return out;
}

/// "step fillet bead cove …", what the line is made of.
inline std::string kinds(const std::vector<Edge>& line) {
  std::string out;
  for (const Edge& edge : line) {
    const Point along = edge.to - edge.from;
    if (edge.is_arc())
      out += edge.turn == Turn::right ? "bead " : "cove ";
    else if (std::abs(along.x) < 1e-6)
      out += "step ";
    else if (std::abs(along.y) < 1e-6)
      out += "fillet ";
    else
      out += "bevel ";
  }
  return out;
}

}  // namespace arrisline::testing
