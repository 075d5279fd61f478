// What the hollows and rounds of a kit come to on an arc, one by one, and in a maker's words what hinders
// them.
#pragma once

#include <optional>
#include <string>

#include "plan/problem.h"

namespace arrisline {

/// mm by which a sole's radius may differ from the arc's and still be called its.
inline constexpr double kFits = 0.05;

/// Whether this plane stands on the arc, and alone, however often it is turned, finishes it from end to end.
/// It need not be of the kit, whose scraper counts.
bool makes_arc(const Problem& problem, int surface, const Plane& plane);

/// Why no plane of the kit stands on the arc. REQUIRES: none does.
std::string why_no_plane(const Problem& problem, int surface);

/// What keeps the kit's plane of the arc's radius from it, or from its ends; where there is no such plane and
/// none of another makes the arc, the nearest that goes in. Nothing where none of these is kept out.
std::optional<std::string> what_keeps_out(const Problem& problem, int surface);

/// Where this plane, by its index, bears on the arc at its edges and stands off by too much at one tilt, the
/// kit's nearest in size that does, in the same words; nothing where another goes in.
std::optional<std::string> what_bears_on_edges(const Problem& problem, int surface, int plane);

}  // namespace arrisline
