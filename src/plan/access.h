// What the planes of a kit can get at, one by one and whatever the order of the cuts, and what keeps them
// out.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// For each surface of a problem, what of it some sole or side can finish.
struct Access {
  std::vector<bool> arcs;                                     // a curved or shaped plane can stand on it
  std::vector<std::vector<std::pair<double, double>>> flats;  // stretches, as fractions along the edge
};

Access access(const Problem& problem);

/// What two sets of planes can get at together. REQUIRES: of the same surfaces.
Access both(Access a, const Access& b);

/// The surfaces that are not got at, or not the whole of them.
std::vector<int> out_of_reach(const Problem& problem, const Access& access);

/// Wood stays, whatever is chosen, that is thicker than may be left: some flat is out of reach, and all cuts
/// that any choice could have do not come near it together.
bool is_hopeless(const Problem& problem, const std::vector<Draft>& flats);

/// What keeps a plane out of a place.
struct Obstacle {
  enum class Part { sole, side, body };
  Part part = Part::sole;  // of the plane
  int edge = 0;            // index into Section::target, which it meets
};

/// Of the poses, the one least in the way is judged, and of equals the one that meets the earlier element;
/// nothing where one of them is free.
std::optional<Obstacle> obstacle(const Section& section, const Plane& plane, const std::vector<Pose>& poses);

/// Whether the one edge's element stands before the other's in the profile; the blank's own edges come last.
bool comes_before(const Section& section, int edge, int other);

/// "element 2 (step)", or "the wood left at the face" for an edge of the blank.
std::string named(const Section& section, int edge);

}  // namespace arrisline
