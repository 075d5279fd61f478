// The section as polygons, for areas: arcs become chords, and the polygon clipper does the rest.
#pragma once

#include <polyclipping/clipper.hpp>
#include <span>
#include <vector>

#include "arrisline/section.h"
#include "replay/swept.h"

namespace arrisline::replaying {

/// Edges become chords no farther than 0.0005 mm from their arcs. Chords of one circle end on a grid of
/// angles that depends on its radius alone, so that two arcs of one circle flatten alike where they overlap.
ClipperLib::Path flatten(std::span<const Edge> edges);
ClipperLib::Path flatten(const Swept& swept);
Point unflatten(ClipperLib::IntPoint p);

/// In mm².
double area_of(const ClipperLib::Paths& paths);
ClipperLib::Paths less(const ClipperLib::Paths& from, const ClipperLib::Paths& what);
ClipperLib::Paths common(const ClipperLib::Paths& a, const ClipperLib::Paths& b);

}  // namespace arrisline::replaying
