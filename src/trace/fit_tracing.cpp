// samples -> fewest segments -> one line without gaps -> face and edge -> what a maker would have drawn ->
// section. Shown by tests/trace/round_trip_test.cpp.
#include <algorithm>
#include <cmath>
#include <limits>

#include "arrisline/limits.h"
#include "arrisline/trace.h"
#include "section/walk.h"
#include "trace/chain.h"
#include "trace/clefts.h"
#include "trace/frame.h"
#include "trace/overlooked.h"
#include "trace/segments.h"
#include "trace/simplify.h"
#include "trace/snap.h"
#include "trace/to_section.h"

namespace arrisline {
namespace {

// From which gap on the two sides of a cleft are told apart by points in no order: as many times their
// scatter, and as the points are apart.
constexpr double kTold = 6;
constexpr double kToldSpacings = 1.5;

constexpr const char* kTraceInOrder =
    "; its points are in no order, which a cleft about as narrow as they scatter does not let them be put "
    "in: "
    "trace them one after the other along the line";

/// A closed line begins again at its sharpest square corner, which is one of the blank's.
void begin_at_corner(std::vector<Point>& points) {
  const std::size_t count = points.size();
  const std::size_t arm = std::max<std::size_t>(2, count / 40);
  std::size_t best = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < count; ++i) {
    const Point in = points[i] - points[(i + count - arm) % count];
    const Point out = points[(i + arm) % count] - points[i];
    const double scale = norm(in) * norm(out);
    if (scale == 0) continue;
    // Square, with straight arms: the middle of each lies on it.
    const Point half_in = points[i] - points[(i + count - arm / 2) % count];
    const Point half_out = points[(i + arm / 2) % count] - points[i];
    const double bent =
        std::abs(cross(in, half_in)) / dot(in, in) + std::abs(cross(out, half_out)) / dot(out, out);
    const double askew = std::abs(dot(in, out)) / scale;
    if (bent + askew < least) least = bent + askew, best = i;
  }
  std::rotate(points.begin(), points.begin() + static_cast<std::ptrdiff_t>(best), points.end());
  points.push_back(points.front());
}

std::vector<Point> scaled(const std::vector<Point>& points, double by) {
  std::vector<Point> out;
  out.reserve(points.size());
  for (const Point& p : points) out.push_back(by * p);
  return out;
}

}  // namespace

std::optional<FittedProfile> fit_tracing(const Tracing& tracing, const FitOptions& options,
                                         std::string* why) {
  std::vector<Point> points = scaled(tracing.points, options.mm_per_unit);
  Samples samples;
  if (tracing.drawn) {
    if (tracing.closed) {
      points.push_back(points.front());
      samples = samples_of_drawn(points);
      samples.points.pop_back();
      begin_at_corner(samples.points);
      samples.filled.assign(samples.points.size(), false);
    } else {
      samples = samples_of_drawn(points);
    }
  } else {
    if (points.size() < 4) {
      *why = "so few points tell no line; measure at least 4, and better some hundred";
      return std::nullopt;
    }
    samples = samples_of_measured(points);
  }
  bool closed = tracing.closed;
  if (!tracing.drawn) {
    double whole = 0;
    for (std::size_t i = 1; i < samples.points.size(); ++i)
      whole += distance(samples.points[i - 1], samples.points[i]);
    const double gap = distance(samples.points.front(), samples.points.back());
    closed = closed || (gap < 4 * samples.spacing + 6 * samples.scatter && whole > 40 * gap);
    if (closed) {
      begin_at_corner(samples.points);
      samples.filled.assign(samples.points.size(), false);
    }
  }
  const std::size_t corners = samples.scatter == 0 ? corners_of(samples) : 0;
  if (corners > kMaxTracedCorners) {
    *why = "the line has " + std::to_string(corners) + " corners, more than the " +
           std::to_string(kMaxTracedCorners) +
           " that are looked at; draw the line of the section alone, and once" +
           to_raise("kMaxTracedCorners");
    return std::nullopt;
  }
  const Allowed allowed{options.tolerance, samples.scatter};
  const std::vector<Segment> segments = fewest_segments(samples, allowed);
  if (segments.empty() || segments.size() > kMaxTracedElements) {
    *why =
        segments.empty()
            ? std::string(
                  "no flats and arcs follow the line within the tolerance; measure more points, and closer, "
                  "or give a larger --tolerance")
            : "it takes " + std::to_string(segments.size()) +
                  " flats and arcs to follow the line, more than " + std::to_string(kMaxTracedElements) +
                  "; give a larger --tolerance" + to_raise("kMaxTracedElements");
    if (samples.put_in_order) *why += kTraceInOrder;
    return std::nullopt;
  }
  const Fitted start = joined(samples, segments);
  Fitted fitted = fit(samples, start, Held(start.line.size()), allowed);
  round_out(samples, start, fitted, allowed);
  simplify(samples, fitted, allowed);
  put_in(samples, fitted, allowed);

  FittedProfile out;
  const Laid laid = lay(samples, fitted, closed, tracing.upward, allowed);
  out.turned = laid.turned;
  out.mirrored = laid.mirrored;
  out.scatter = samples.scatter;
  const Reached reached = closed ? Reached::start : laid.flute ? Reached::face : Reached::edge_or_underside;
  const SnapOptions snapping{options.division, options.preferred};
  out.put_in_order = samples.put_in_order;
  const double told = std::max(kTold * samples.scatter, kToldSpacings * samples.spacing);
  std::optional<FittedProfile> profile = to_section(std::move(samples), std::move(fitted), reached, snapping,
                                                    options, allowed, std::move(out), why);
  if (profile && profile->put_in_order) profile->unclear = clefts_of(profile->section, told);
  return profile;
}

}  // namespace arrisline
