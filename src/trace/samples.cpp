// How many points, in which order, and how far they scatter. Shown by tests/trace/round_trip_test.cpp.
#include "trace/samples.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "arrisline/limits.h"
#include "trace/one_line.h"
#include "trace/order.h"
#include "trace/spread.h"

namespace arrisline {
namespace {

constexpr std::size_t kMost = 2400;               // samples: more say nothing more, and cost time
constexpr std::size_t kDrawn = 900;               // samples along a drawn line
constexpr std::size_t kToOrder = kMaxKeptPoints;  // points of which the order is looked for

/// So many means of neighbours at most, which scatter the less the more each is the mean of; the two ends as
/// they are, or the line would be shorter than it is.
std::vector<Point> thinned(const std::vector<Point>& points, std::size_t most) {
  const std::size_t group = (points.size() + most - 1) / most;
  if (group <= 1) return points;
  std::vector<Point> out;
  for (std::size_t i = 0; i < points.size(); i += group) {
    const std::size_t end = std::min(points.size(), i + group);
    Point sum;
    for (std::size_t j = i; j < end; ++j) sum = sum + points[j];
    out.push_back((1 / static_cast<double>(end - i)) * sum);
  }
  out.front() = points.front();
  out.back() = points.back();
  return out;
}

/// The length of the line by means of so many neighbours, in mm a point.
double spacing_of(const std::vector<Point>& points, std::size_t group) {
  std::vector<double> steps;
  Point before;
  for (std::size_t i = 0; i + group <= points.size(); i += group) {
    Point sum;
    for (std::size_t j = i; j < i + group; ++j) sum = sum + points[j];
    const Point mean = (1 / static_cast<double>(group)) * sum;
    if (i > 0) steps.push_back(distance(before, mean) / static_cast<double>(group));
    before = mean;
  }
  return median(steps);
}

/// The same by means of so many that scatter adds nothing to it; of few points by each.
double spacing_on_line(const std::vector<Point>& points) {
  constexpr std::size_t kParts = 100;
  return spacing_of(points, std::max<std::size_t>(1, points.size() / kParts));
}

/// Scatter by stretches so short that of a few points to each flat and arc a quarter of them still hold no
/// corner.
double scatter_of_few(const std::vector<Point>& points) {
  constexpr std::size_t kWidth = 5;
  std::vector<double> variances;
  for (std::size_t i = 0; i + kWidth <= points.size(); ++i)
    variances.push_back(variance_about_parabola(points.data() + i, kWidth));
  if (variances.empty()) return std::numeric_limits<double>::infinity();
  const auto quarter = variances.begin() + static_cast<std::ptrdiff_t>(variances.size() / 4);
  std::nth_element(variances.begin(), quarter, variances.end());
  // Of two degrees of freedom: a quarter of such variances lie below ln(4/3) of the mean.
  return std::sqrt(*quarter / std::log(4.0 / 3));
}

/// Scatter of points in their order. The stretches looked at are long against the scatter, or it would look
/// smaller than it is; few of them hold a corner, so the median passes those over.
double scatter_of(const std::vector<Point>& points) {
  constexpr double kLong = 12;
  constexpr double kNoMatter = 0.02;       // mm: so little scatter gives no corner away
  constexpr double kShareOfCorners = 0.5;  // of what the long stretches say: more of it are corners
  double out = 0;
  for (std::size_t width = 9; width <= points.size() / 4 || width == 9; width = width * 3 / 2) {
    if (points.size() < width) break;
    std::vector<double> variances;
    for (std::size_t i = 0; i + width <= points.size(); i += std::max<std::size_t>(1, width / 3))
      variances.push_back(variance_about_parabola(points.data() + i, width));
    // The median of a variance of n degrees of freedom lies below its mean (Wilson and Hilferty, 1931).
    const double degrees = static_cast<double>(width - 3);
    const double low = std::pow(1 - 2 / (9 * degrees), 3);
    out = std::sqrt(median(variances) / low);
    if (spacing_of(points, std::max<std::size_t>(1, width / 2)) * static_cast<double>(width) >= kLong * out)
      break;
  }
  if (out < kNoMatter) return out;
  // Short stretches of points that lie closer than they scatter are clouds, and seem to scatter less.
  const double by_few = scatter_of_few(points);
  return by_few < kShareOfCorners * out && kLong * by_few <= 5 * spacing_on_line(points) ? by_few : out;
}

/// Where the points lie much farther apart than they do elsewhere, the straight line between is filled in.
Samples with_gaps_filled(const std::vector<Point>& points, double spacing, double scatter) {
  Samples out;
  out.scatter = scatter;
  out.spacing = spacing;
  double gap = 4 * spacing + 6 * scatter;
  // A line has a few gaps; many are no gaps but points out of order.
  constexpr int kMostGaps = 20;
  int gaps = 0;
  for (std::size_t i = 1; i < points.size(); ++i) gaps += distance(points[i - 1], points[i]) > gap ? 1 : 0;
  if (gaps > kMostGaps) gap = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i > 0 && distance(points[i - 1], points[i]) > gap) {
      const auto parts =
          static_cast<int>(std::min(200.0, std::ceil(distance(points[i - 1], points[i]) / spacing)));
      for (int k = 1; k < parts; ++k) {
        const double t = static_cast<double>(k) / parts;
        out.points.push_back((1 - t) * points[i - 1] + t * points[i]);
        out.filled.push_back(true);
      }
    }
    out.points.push_back(points[i]);
    out.filled.push_back(false);
  }
  return out;
}

constexpr int kOfShort = 6;  // samples of a flat between two corners, at the least

/// Whether a drawn line has a corner at points[i]; its ends are none.
bool corner_at(const std::vector<Point>& points, std::size_t i) {
  if (i == 0 || i + 1 >= points.size()) return false;
  const Point in = points[i] - points[i - 1];
  const Point on = points[i + 1] - points[i];
  return std::abs(std::atan2(cross(in, on), dot(in, on))) > kDrawnCorner;
}

/// How far from the middle of the chord that begins at points[i] the curve lies that it was drawn for, to the
/// left of it: nothing where it is no chord of a curve.
double rise_of_chord(const std::vector<Point>& points, std::size_t i) {
  // Chords of curves lie within kChord of them; in a drawing of unknown size somewhat more or less.
  constexpr double kMostRise = 3 * kChord;
  constexpr double kMostLonger = 2;  // times
  const double length = distance(points[i], points[i + 1]);
  double most = 0;  // curvature, by the turn at either end
  for (const std::size_t at : {i, i + 1}) {
    if (at == 0 || at + 1 == points.size()) continue;
    const Point in = points[at] - points[at - 1];
    const Point on = points[at + 1] - points[at];
    const double turn = std::atan2(cross(in, on), dot(in, on));
    // Chords of one curve are about as long; a flat that a curve runs on from, or all but on, is none of it.
    const double shorter = std::min(norm(in), norm(on));
    if (std::abs(turn) > kDrawnCorner || norm(in) + norm(on) > (1 + kMostLonger) * shorter) continue;
    const double curvature = 2 * turn / (norm(in) + norm(on));
    if (std::abs(curvature) > std::abs(most)) most = curvature;
  }
  const double rise = most * length * length / 8;
  return std::abs(rise) < kMostRise ? -rise : 0;
}

}  // namespace

Samples samples_of_drawn(const std::vector<Point>& points) {
  constexpr std::size_t kEnough = 60;   // points of a curve by which scatter can be told
  constexpr double kScattered = 0.005;  // mm: curves drawn by points on them have none
  if (points.size() >= kEnough) {
    const std::vector<Point> fewer = thinned(points, kMost);
    const double scatter = scatter_of(fewer);
    if (scatter > kScattered) return with_gaps_filled(fewer, spacing_of(fewer, 1), scatter);
  }
  return samples_of_joined(points);
}

Samples samples_of_joined(const std::vector<Point>& points) {
  double whole = 0;
  for (std::size_t i = 1; i < points.size(); ++i) whole += distance(points[i - 1], points[i]);
  Samples out;
  out.spacing = whole / static_cast<double>(kDrawn);
  double gone = 0;
  double next = 0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Point from = points[i - 1];
    const double length = distance(from, points[i]);
    const Point on = points[i] - from;
    const bool corner = corner_at(points, i - 1);
    const double rise = rise_of_chord(points, i - 1);
    const Point left = (1 / length) * Point{-on.y, on.x};
    if (corner && (out.points.empty() || !(out.points.back() == from))) out.points.push_back(from);
    // However short, a flat between two corners is one of the line: with few samples it would be passed over.
    if (corner && corner_at(points, i) && length < kOfShort * out.spacing) {
      for (int k = 1; k < kOfShort; ++k) out.points.push_back(from + (1.0 * k / kOfShort) * on);
      while (next <= gone + length) next += out.spacing;
    }
    for (; next <= gone + length; next += out.spacing) {
      if (corner && next == gone) continue;
      const double share = (next - gone) / length;
      out.points.push_back(from + share * on + 4 * share * (1 - share) * rise * left);
    }
    gone += length;
  }
  if (!(out.points.back() == points.back())) out.points.push_back(points.back());
  out.filled.assign(out.points.size(), false);
  return out;
}

Samples samples_of_measured(std::vector<Point> points) {
  bool put_in_order = false;
  points = thinned(in_line(thinned(points, kToOrder), put_in_order), kMost);
  const double scatter = std::max(scatter_of(points), 1e-6 * size_of(points));
  const double spacing = std::max(spacing_on_line(points), 1e-9);
  Samples out = with_gaps_filled(points, spacing, scatter);
  out.put_in_order = put_in_order;
  return out;
}

}  // namespace arrisline
