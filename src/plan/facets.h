// What soles leave of an arc, and flats that finish it where the shop allows facets.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// Places along an arc, as the tilts of its normal, close enough together to judge what a sole leaves of it.
std::vector<double> arc_looks(const Surface& arc);

/// What poses of the plane leave above the arc at the place `at`, mm square to the arc; infinite where no
/// sole lies over it. REQUIRES: a hollow or round or a flat sole.
double left_at(const Problem& problem, const Surface& arc, const Plane& plane, const std::vector<Pose>& poses,
               double at);

/// Whether hollows or rounds of the drafts come within `limit` mm of at least half of the arc.
bool curves_finish(const Problem& problem, const Surface& arc, const std::vector<Draft>& drafts,
                   double limit);

/// Whether they do so of every arc, or no more flats than the
/// shop allows to an arc, waste cuts among them. True for arcs under a shaped sole.
bool arcs_are_finished(const Problem& problem, const std::vector<Draft>& drafts, double limit);

/// Ways to finish the arc with flats, the fewest first, where the shop allows any: tangents outside a bead,
/// chords in a cove. No more flats than it allows, and none of the ways leaves more than may be left.
std::vector<std::vector<Draft>> facet_drafts(const Problem& problem, int surface);

}  // namespace arrisline
