// The tilts at which a hollow or a round finishes what it can of an arc.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// Later poses of a cut must overlap an earlier one by 10° of arc; a little more keeps clear of the limit.
inline constexpr double kOverlap = 10.5;
/// With another radius the tilts of one cut lie within 30° of each other.
inline constexpr double kMostTurn = 29.5;
/// A sole this close to the arc's radius lies along it.
inline constexpr double kSameRadius = 0.04;

struct TiltRange {
  double from, to;
};

/// The ranges of tilts, along the arc, at which the plane stands on it clear of the rest of the target.
std::vector<TiltRange> standing_ranges(const Problem& problem, const Surface& arc, const Plane& plane);

/// The tilts at which the plane finishes what it can of the arc within the range, in order; none where it
/// leaves more than may be left.
std::vector<double> finishing_tilts(const Problem& problem, const Surface& arc, const Plane& plane,
                                    const TiltRange& range);

/// Appends tilts from the one to the other, alike and no farther apart than `widest`.
void spread(double from, double to, double widest, std::vector<double>& tilts);

/// How a hollow on a bead, or a round in a cove, bears on it.
enum class Bearing { along, in_middle, at_edges };
Bearing bearing_of(const Problem& problem, const Surface& arc, const Plane& plane);

/// How far the middle of a sole that bears at its edges stays off the arc at one tilt, in mm; 0 of any other,
/// infinity of one so wide that it bears nowhere.
double stands_off(const Problem& problem, const Surface& arc, const Plane& plane);

/// The plane on the arc at each tilt.
std::vector<Pose> poses_at(const Problem& problem, const Surface& arc, const Plane& plane,
                           const std::vector<double>& tilts);

/// Thicknesses that the planes may leave: what may stay, and then what the scraper takes. A little is kept
/// for what is found only when the whole is judged.
std::vector<double> allowances(const Problem& problem);

/// What flats tangent to a bead where it ends leave of it at this place.
double left_by_end_flats(const Problem& problem, const Surface& arc, double at);

/// What the sole in these poses leaves there, or such flats where they leave less.
double left_with_end_flats(const Problem& problem, const Surface& arc, const Plane& plane,
                           const std::vector<Pose>& poses, double at);

/// What the sole at these tilts, and the flats at the ends of a bead, leave of the arc at worst between two
/// places.
double worst_between(const Problem& problem, const Surface& arc, const Plane& plane,
                     const std::vector<double>& tilts, double from, double to);

}  // namespace arrisline
