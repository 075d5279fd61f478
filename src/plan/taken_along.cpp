// Shown by tests/plan/taken_along_test.cpp.
#include "plan/taken_along.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "geometry/crossing.h"
#include "plan/rest.h"

namespace arrisline {

namespace {

/// mm beside the end of a piece at which the wood there is measured: beyond the hairs by which ends may miss
/// each other, and nothing to a shaving.
constexpr double kBeside = 1e-4;

/// mm above the sole from which on air between two layers of wood counts: less is rounding.
constexpr double kAir = 1e-3;

/// Some wood above the sole has a lower side there.
bool has_air_under(std::span<const Edge> edges, const Sweep& sweep) {
  const double half = sweep.half() - kBeside;
  const auto is_above = [&](const Measured& edge, double t) {
    const Point p = edge.at(t);
    return std::abs(sweep.u(p)) < half && height_at(sweep, p) > kAir;
  };
  const double lowest = std::min(0.0, sole_height(sweep.plane(), half));
  std::vector<double> ts;
  for (const Edge& edge : edges) {
    // Wood lies to the left: over what runs against e.
    const Point e = sweep.e();
    const bool with_e = dot(edge.to - edge.from, e) > -kBeside;
    const bool turns = edge.is_arc() && (spoke_meets(edge, e) || spoke_meets(edge, -1 * e));
    if (with_e && !turns) continue;
    const double top =
        std::max(sweep.v(edge.from), sweep.v(edge.to)) + (edge.is_arc() ? 2 * radius(edge) : 0);
    if (top < lowest) continue;
    const Measured measured(edge);
    ts = {0, 1};
    cross_line(measured, sweep.pose().at - half * sweep.e(), sweep.a(), ts);
    cross_line(measured, sweep.pose().at + half * sweep.e(), sweep.a(), ts);
    if (turns) extremes_along(measured, e, ts);
    std::sort(ts.begin(), ts.end());
    for (std::size_t i = 1; i < ts.size(); ++i) {
      const double low = ts[i - 1], high = ts[i];
      if (high - low < 1e-9) continue;
      const Point from = measured.at(low), to = measured.at(high);
      if (dot(to - from, e) > -kBeside) continue;
      for (const double share : {0.1, 0.5, 0.9}) {
        if (is_above(measured, low + share * (high - low))) return true;
      }
    }
  }
  return false;
}

/// mm of wood over one place of the sole.
double wood_over(std::span<const Edge> edges, const Sweep& sweep, double u) {
  const double sole = sole_height(sweep.plane(), u);
  double sum = 0;
  const auto count = [&](double v, double along_e) {
    sum += (along_e > 0 ? 1 : -1) * std::max(0.0, v - sole);
  };
  for (const Edge& edge : edges) {
    if (!edge.is_arc()) {
      const double a = sweep.u(edge.from), b = sweep.u(edge.to);
      if ((a < u) == (b < u)) continue;
      const double share = (u - a) / (b - a);
      count(sweep.v(edge.from) + share * (sweep.v(edge.to) - sweep.v(edge.from)), b - a);
      continue;
    }
    const double r = radius(edge), aside = u - sweep.u(edge.centre);
    if (std::abs(aside) >= r) continue;
    const double rise = std::sqrt(r * r - aside * aside);
    for (const double up : {1.0, -1.0}) {
      const Point spoke = aside * sweep.e() + up * rise * sweep.a();
      if (!spoke_meets(edge, spoke)) continue;
      const Point along = edge.turn == Turn::left ? Point{-spoke.y, spoke.x} : Point{spoke.y, -spoke.x};
      count(sweep.v(edge.centre) + up * rise, dot(along, sweep.e()));
    }
  }
  return sum;
}

/// Places across the sole between which the wood over it changes smoothly, and some between.
std::vector<double> places(std::span<const Edge> edges, const Sweep& sweep) {
  const double most = sweep.half() - kBeside;
  std::vector<double> out = {-most, most};
  const auto add = [&](double u) {
    for (const double beside : {u - kBeside, u + kBeside}) {
      if (std::abs(beside) < most) out.push_back(beside);
    }
  };
  std::vector<double> ts;
  for (const Edge& edge : edges) {
    const Measured measured(edge);
    ts.clear();
    peaks(measured, sweep, ts);
    if (edge.is_arc()) extremes_along(measured, sweep.e(), ts);
    for (const double t : ts) add(sweep.u(measured.at(t)));
    add(sweep.u(edge.from));
    add(sweep.u(edge.to));
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace

double thickest_taken(std::span<const Edge> edges, const Sweep& sweep) {
  const double height = std::max(0.0, rest_height(edges, sweep));
  if (height < kAir || !has_air_under(edges, sweep)) return height;
  const auto over = [&](double u) { return wood_over(edges, sweep, u); };
  const std::vector<double> us = places(edges, sweep);
  double best = 0;
  for (const double u : us) best = std::max(best, over(u));
  // Between two places the sum of several layers may be greater than at either.
  constexpr double kGolden = 0.6180339887498949;
  constexpr int kSteps = 12;
  for (std::size_t i = 1; i < us.size(); ++i) {
    double low = us[i - 1], high = us[i];
    if (high - low < 4 * kBeside) continue;
    for (int step = 0; step < kSteps; ++step) {
      const double left = high - kGolden * (high - low), right = low + kGolden * (high - low);
      const double at_left = over(left), at_right = over(right);
      best = std::max({best, at_left, at_right});
      (at_left < at_right ? low : high) = at_left < at_right ? left : right;
    }
  }
  return std::min(best, height);
}

}  // namespace arrisline
