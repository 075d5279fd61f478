// Shown by tests/trace/few_points_test.cpp.
#include "trace/figures.h"

#include <algorithm>
#include <cmath>

namespace arrisline {
namespace {

/// By how much the direction of a link at its end may be off, in degrees: what it may lie off at its ends,
/// and an arc in its middle too, over its length.
double play_of(const Fitted& fitted, std::size_t link, const Allowed& allowed) {
  constexpr double kOfFlat = 2;
  constexpr double kOfArc = 6;
  constexpr double kSure = 3;  // standard deviations
  const Edge edge = edge_of(fitted.line, link);
  const auto count = static_cast<double>(fitted.from[link + 1] - fitted.from[link]);
  const double off = allowed.tolerance / 2 + kSure * allowed.scatter / std::sqrt(count);
  return to_degrees((edge.is_arc() ? kOfArc : kOfFlat) * off / length(edge));
}

/// Whether one of the two links at an inner joint is flat, and they run on there or stand square, but for so
/// many degrees.
bool is_ruled_within(const Fitted& fitted, std::size_t joint, double play) {
  if (edge_of(fitted.line, joint - 1).is_arc() && edge_of(fitted.line, joint).is_arc()) return false;
  const double turn = turn_at(fitted.line, joint);
  return std::min(turn, std::abs(turn - 90)) < play;
}

constexpr double kSame = 15;  // degrees: three standard deviations of a dozen points over as many of theirs

}  // namespace

bool is_ruled(const Fitted& fitted, std::size_t joint, const Allowed& allowed) {
  const double play = play_of(fitted, joint - 1, allowed) + play_of(fitted, joint, allowed);
  return is_ruled_within(fitted, joint, std::min(kSame, play));
}

double figures_of_link(const Fitted& fitted, std::size_t link) {
  double out = edge_of(fitted.line, link).is_arc() ? kFiguresOfFlat + 1 : kFiguresOfFlat;
  if (link > 0 && is_ruled_within(fitted, link, kSame)) --out;
  if (link + 1 < fitted.line.size() && is_ruled_within(fitted, link + 1, kSame)) --out;
  return out;
}

double figures_of(const Fitted& fitted, const Allowed& allowed) {
  double out = 0;
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    out += edge_of(fitted.line, i).is_arc() ? kFiguresOfFlat + 1 : kFiguresOfFlat;
    if (i > 0 && is_ruled(fitted, i, allowed)) --out;
  }
  return out;
}

int odd_figures(const FittedProfile& profile, const FitOptions& options) {
  constexpr double kWhole = 1e-6;  // mm
  const auto is_odd = [&](double figure) {
    return std::abs(figure - options.division * std::round(figure / options.division)) > kWhole;
  };
  const auto is_plane = [&](double r) {
    return std::any_of(options.preferred.begin(), options.preferred.end(),
                       [r](double plane) { return std::abs(plane - r) < kWhole; });
  };
  int out = 0;
  for (std::size_t i = 0; i < profile.section.target.size(); ++i) {
    if (profile.section.source[i] < 0) continue;
    const Edge& edge = profile.section.target[i];
    const Point along = edge.to - edge.from;
    out += (is_odd(along.x) ? 1 : 0) + (is_odd(along.y) ? 1 : 0);
    if (edge.is_arc() && !is_plane(radius(edge))) out += is_odd(radius(edge)) ? 1 : 0;
  }
  return out;
}

}  // namespace arrisline
