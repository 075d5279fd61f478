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
#include "trace/corners.h"
#include "trace/faults.h"
#include "trace/figures.h"
#include "trace/frame.h"
#include "trace/left_out.h"
#include "trace/loops.h"
#include "trace/overlooked.h"
#include "trace/repeats.h"
#include "trace/rounding.h"
#include "trace/segments.h"
#include "trace/simplify.h"
#include "trace/snap.h"
#include "trace/spread.h"
#include "trace/strays.h"
#include "trace/to_section.h"
#include "trace/walls.h"

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
void begin_at_corner(Samples& samples) {
  std::vector<Point>& points = samples.points;
  std::vector<bool>& filled = samples.filled;
  filled.resize(points.size());
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
  const auto by = static_cast<std::ptrdiff_t>(best);
  std::rotate(points.begin(), points.begin() + by, points.end());
  std::rotate(filled.begin(), filled.begin() + by, filled.end());
  points.push_back(points.front());
  filled.push_back(filled.front());
}

std::vector<Point> scaled(const std::vector<Point>& points, double by) {
  std::vector<Point> out;
  out.reserve(points.size());
  for (const Point& p : points) out.push_back(by * p);
  return out;
}

/// Whether measured points end beside where they began: hardly farther than they are apart elsewhere; where
/// that is unevenly, some twice as far as the farthest, since the way of those in no order ends where they
/// lie farthest.
bool is_closed(const Samples& samples) {
  constexpr double kUneven = 12;  // spacings: of some thousand points at random no two are farther apart
  constexpr double kShare = 40;   // of the gap the line is so many times as long
  double whole = 0;
  double farthest = 0;
  Point before = samples.points.front();
  for (std::size_t i = 1; i < samples.points.size(); ++i) {
    if (samples.filled[i]) continue;
    const double step = distance(before, samples.points[i]);
    whole += step;
    farthest = std::max(farthest, step);
    before = samples.points[i];
  }
  const double gap = distance(samples.points.front(), samples.points.back());
  const double beside =
      std::max(4 * samples.spacing + 6 * samples.scatter, std::min(2 * farthest, kUneven * samples.spacing));
  return gap < beside && whole > kShare * gap;
}

/// Whether the figures go by steps so large that rounding is what the points are off by.
bool are_rounded(const std::vector<Point>& points, double step, double tolerance) {
  return step >= tolerance && shows_rounding(points);
}

/// Samples along the line; of measured points too few that is nothing, and why.
std::optional<Samples> samples_of(const Tracing& tracing, const FitOptions& options, bool& closed,
                                  FittedProfile& profile, std::string* why) {
  std::vector<Point> points = scaled(tracing.points, options.mm_per_unit);
  closed = tracing.closed;
  if (!tracing.drawn) points = without_repeats(points);
  if (!tracing.drawn && points.size() < 4) {
    *why = "so few points tell no line; measure at least 4, and better some hundred";
    return std::nullopt;
  }
  // Of so many no profile can be made: stairs, then, of figures that were rounded to wide steps.
  const bool too_many = points.size() > kMaxTracedElements + 1 &&
                        are_rounded(points, tracing.step * options.mm_per_unit, options.tolerance);
  if (!tracing.drawn && !too_many && are_corners(points, options.tolerance)) {
    profile.joined = points.size();
    closed = closed || distance(points.front(), points.back()) <= options.tolerance;
    if (closed && !tracing.closed) points.pop_back();
  }
  if (tracing.drawn || profile.joined > 0) {
    const auto along = [&] {
      return profile.joined > 0 ? samples_of_joined(points) : samples_of_drawn(points);
    };
    if (!closed) return along();
    points.push_back(points.front());
    Samples out = along();
    out.points.pop_back();
    begin_at_corner(out);
    return out;
  }
  for (const Point& p : take_out_strays(points, options.tolerance, tracing.step * options.mm_per_unit))
    profile.strays.push_back((1 / options.mm_per_unit) * p);
  Samples out = samples_of_measured(points);
  // What scatters so widely are not the points but the corners between them.
  constexpr double kMostScatter = 0.03;  // of the size of it all
  constexpr double kOfFew = 0.006;       // of so few points that a corner is in most stretches
  constexpr std::size_t kFew = 100;
  if (out.scatter > (points.size() < kFew ? kOfFew : kMostScatter) * size_of(points)) {
    *why =
        "the points lie too far apart, or in too loose a row, to tell a line from how they scatter; measure "
        "more points, and closer, or of flats alone the corners one after the other";
    return std::nullopt;
  }
  closed = closed || is_closed(out);
  if (closed) begin_at_corner(out);
  return out;
}

/// What may be off: of figures rounded to steps of the tolerance and more no less than that makes. No scatter
/// shows it, since on a flat all are rounded alike.
Allowed with_rounding(Samples& samples, double step, double tolerance, FittedProfile& out) {
  const double even = step / std::sqrt(12.0);  // standard deviation of what may be anything within a step
  const double most = step / 2;                // each way
  const Allowed plain{tolerance, samples.scatter, 0};
  if (out.joined > 0 || !are_rounded(samples.points, step, tolerance)) return plain;
  if (samples.scatter >= even && tolerance >= most) return plain;
  out.step = step;
  samples.scatter = std::max(samples.scatter, even);
  return {std::max(tolerance, most), samples.scatter, 0};
}

/// What a tracing is before anything is fitted to it.
struct Traced {
  Samples samples;
  bool closed = false;
  bool drawn = false;
  Upward upward = Upward::unknown;
  FittedProfile profile;  // what is known of it
};

/// What comes of the fewest flats and arcs that follow.
struct Attempt {
  std::optional<FittedProfile> profile;
  Fitted line;               // as it was before what a maker would have drawn
  std::size_t elements = 0;  // of the line
  NoSection no;              // why there is no profile

  bool makes_profile() const { return profile && is_sound(profile->section); }
};

/// The profile of the fewest flats and arcs that follow within `within`, and what a maker would have drawn
/// within `allowed`; none where they are more than `most`.
Attempt profile_of(Traced traced, const FitOptions& options, const Allowed& within, const Allowed& allowed,
                   std::size_t most) {
  Attempt attempt;
  NoSection& no = attempt.no;
  Samples& samples = traced.samples;
  FittedProfile& out = traced.profile;
  const std::vector<Segment> segments = fewest_segments(samples, within);
  if (segments.empty() || segments.size() > most) {
    no.why =
        segments.empty()
            ? std::string(
                  "no flats and arcs follow the line within the tolerance; measure more points, and closer, "
                  "or give a larger --tolerance")
            : "it takes " + std::to_string(segments.size()) +
                  " flats and arcs to follow the line, more than " + std::to_string(kMaxTracedElements) +
                  "; give a larger --tolerance" + to_raise("kMaxTracedElements");
    if (samples.put_in_order) no.why += kTraceInOrder;
    return attempt;
  }
  attempt.elements = segments.size();
  const Fitted start = joined(samples, segments);
  Fitted fitted = fit(samples, start, Held(start.line.size()), within);
  if (const auto at = crossing_of(samples, fitted, within)) {
    no.of_the_fit = !samples.put_in_order;  // else it is their order
    no.why = "the line crosses itself, at " +
             spoken(at->x / options.mm_per_unit, at->y / options.mm_per_unit) +
             (samples.put_in_order ? kTraceInOrder : "; trace one that nowhere meets itself");
    return attempt;
  }
  round_out(samples, start, fitted, within);
  simplify(samples, fitted, within);
  make_corners(samples, fitted, within);
  put_in(samples, fitted, within);
  simplify_arcs(samples, fitted, within);
  attempt.line = fitted;
  attempt.elements = fitted.line.size();

  const Laid laid = lay(samples, fitted, traced.closed, traced.upward, options.edge, allowed);
  if (!traced.drawn) put_in_walls(samples, fitted, allowed);
  out.turned = laid.turned;
  out.mirrored = laid.mirrored;
  out.may_be_mirrored = laid.may_be_mirrored;
  out.scatter = samples.scatter;
  const Reached reached = traced.closed ? Reached::start
                          : laid.flute  ? Reached::face
                                        : Reached::edge_or_underside;
  const SnapOptions snapping{options.division, options.preferred, options.widths};
  out.put_in_order = samples.put_in_order;
  const double told = std::max(kTold * samples.scatter, kToldSpacings * samples.spacing);
  attempt.profile = to_section(std::move(samples), std::move(fitted), reached, snapping, options, allowed,
                               traced.drawn, std::move(out), no);
  if (attempt.profile && attempt.profile->put_in_order)
    attempt.profile->unclear = clefts_of(attempt.profile->section, told);
  return attempt;
}

/// How often an arc goes on from another one the same way round, as those do that stand for a curve which is
/// none.
int compound_joints(const FlatsAndArcs& line) {
  int out = 0;
  for (std::size_t i = 1; i < line.size(); ++i) out += line.bulges[i - 1] * line.bulges[i] > 0 ? 1 : 0;
  return out;
}

/// Whether a drawing was made of the flats and arcs of its line: it leaves none of them by more than the
/// chords and decimals that it is drawn with make it, and none is so short that it may be a slip of the hand.
bool is_drawn_of(const Samples& samples, const Fitted& fitted, const Allowed& allowed) {
  constexpr double kChords = 0.0025;  // mm
  constexpr double kLeast = 10;       // tolerances
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    if (length(edge_of(fitted.line, i)) < kLeast * allowed.tolerance) return false;
    for (const double off : distances_of(samples, fitted, i)) {
      if (std::abs(off) > kChords + allowed.rounded) return false;
    }
  }
  return true;
}

/// Others that are hardly more, in the place of the fewest flats and arcs: where these make no profile; or of
/// a drawing that they follow only within the tolerance, those that it was drawn by, where it plainly was
/// or they are what a maker would have drawn. Of a drawing also where a joint of theirs, or in the end the
/// line, leaves it by more than the tolerance. Else the fewest that follow so closely that none of that is
/// so; of points, last, those that a wider way leads to and that yet lie as near as they are to.
std::optional<FittedProfile> hardly_more(const Traced& traced, const FitOptions& options,
                                         const Allowed& allowed, const Attempt& fewest) {
  constexpr std::size_t kMore = 3;    // elements
  constexpr int kTells = 2;           // whole figures more, or all, that make them what was drawn
  constexpr double kRounding = 1e-5;  // mm
  const bool exactly = traced.drawn && traced.samples.scatter == 0;
  const bool will_do = fewest.makes_profile();
  if (will_do ? !exactly : !fewest.profile && !fewest.no.of_the_fit) return std::nullopt;
  const double exact = kFollowsExactly + allowed.rounded;
  const auto follows = [](const Attempt& one, double tolerance) {
    return std::all_of(one.profile->fits.begin(), one.profile->fits.end(),
                       [&](const FitOfElement& fit) { return fit.greatest <= tolerance; });
  };
  if (will_do && (follows(fewest, exact) || exact >= allowed.tolerance)) return std::nullopt;
  const std::size_t most = std::min(fewest.elements + kMore, kMaxTracedElements);
  const auto no_farther = [&](double tolerance) {
    return Allowed{tolerance, allowed.scatter, allowed.rounded};
  };
  const auto within = [&](double tolerance) {
    return profile_of(traced, options, no_farther(tolerance), allowed, most);
  };
  const auto stays = [&](const Attempt& one) {
    return one.makes_profile() &&
           (!exactly || (farthest_joint(traced.samples, one.line) <= allowed.tolerance &&
                         follows(one, allowed.tolerance + allowed.rounded + kRounding)));
  };
  Attempt drawn_so;
  if (exactly && exact < allowed.tolerance) {
    drawn_so = within(exact);
    if (drawn_so.makes_profile()) {
      if (!will_do) return drawn_so.profile;
      if (compound_joints(drawn_so.line.line) <= compound_joints(fewest.line.line) &&
          is_drawn_of(traced.samples, drawn_so.line, allowed))
        return drawn_so.profile;
      const int odd = odd_figures(*drawn_so.profile, options);
      const int odd_before = odd_figures(*fewest.profile, options);
      if (odd + kTells <= odd_before || (odd == 0 && odd_before > 0)) return drawn_so.profile;
    } else if (!will_do) {
      // What a maker would have drawn may be what makes it none.
      const Attempt as_it_is = profile_of(traced, options, no_farther(exact), no_farther(exact), most);
      if (as_it_is.makes_profile()) return as_it_is.profile;
    }
  }
  if (stays(fewest)) return std::nullopt;
  for (const double share : {0.5, 0.25}) {
    if (exactly && share * allowed.tolerance <= exact) break;
    Attempt closer = within(share * allowed.tolerance);
    if (stays(closer)) return closer.profile;
  }
  if (drawn_so.makes_profile()) return drawn_so.profile;
  if (will_do || exactly) return std::nullopt;
  // Where more is let pass by the way, and in the end nothing lies farther off than it may.
  const Allowed twice = no_farther(2 * allowed.tolerance);
  Attempt looser = profile_of(traced, options, twice, twice, most);
  if (looser.makes_profile() && follows(looser, allowed.tolerance)) return looser.profile;
  return std::nullopt;
}

}  // namespace

std::optional<FittedProfile> fit_tracing(const Tracing& tracing, const FitOptions& options,
                                         std::string* why) {
  Traced traced;
  traced.drawn = tracing.drawn;
  traced.upward = tracing.upward;
  std::optional<Samples> sampled = samples_of(tracing, options, traced.closed, traced.profile, why);
  if (!sampled) return std::nullopt;
  traced.samples = *std::move(sampled);
  Samples& samples = traced.samples;
  const std::size_t corners = samples.scatter == 0 ? corners_of(samples) : 0;
  if (corners > kMaxTracedCorners) {
    *why = "the line has " + std::to_string(corners) + " corners, more than the " +
           std::to_string(kMaxTracedCorners) +
           " that are looked at; draw the line of the section alone, and once" +
           to_raise("kMaxTracedCorners");
    return std::nullopt;
  }
  constexpr double kMostRounded = 0.03;  // mm: in a drawing of still fewer decimals they are all that it has
  const double step = tracing.step * options.mm_per_unit;
  const Allowed allowed = tracing.drawn
                              ? Allowed{options.tolerance, samples.scatter, std::min(step, kMostRounded)}
                              : with_rounding(samples, step, options.tolerance, traced.profile);
  Attempt fewest = profile_of(traced, options, allowed, allowed, kMaxTracedElements);
  if (std::optional<FittedProfile> other = hardly_more(traced, options, allowed, fewest)) return other;
  if (!fewest.profile) *why = fewest.no.why;
  return fewest.profile;
}

}  // namespace arrisline
