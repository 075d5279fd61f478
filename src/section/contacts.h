// Where an outline meets itself other than at the joints of its edges.
#pragma once

#include <cstddef>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// Points nearer than this are the same, in mm. Far above the rounding of coordinates up to 10 m (2e-12 mm),
/// far below anything a plane can tell.
inline constexpr double kSamePoint = 1e-6;

enum class Meeting {
  crosses,      // one part runs through the other, or along it
  pinches_in,   // they touch, with what lies to the left between them: a piece of wood hangs by a point
  pinches_out,  // they touch, with what lies to the right between them: a closed pocket
};

/// Edges `first` < `second` of the outline meet at `at`.
struct SelfContact {
  std::size_t first = 0;
  std::size_t second = 0;
  Point at;
  Meeting meeting = Meeting::crosses;
};

/// The contacts of a chain of edges with itself, each place once, at most about `most`. Where `closed` is set
/// the last edge joins the first. Joints of neighbouring edges are none, except where a joint turns back on
/// itself and the two edges run over one another. Near-linear in the number of edges where boxes around
/// stretches of the chain seldom overlap, as in any chain that does not cross itself much; gives up after
/// `budget` pairs and says so in `complete`.
struct Contacts {
  std::vector<SelfContact> list;
  bool complete = true;
  std::size_t looked_at = 0;  // pairs of stretches whose boxes overlap, the measure of the work done
};
Contacts find_contacts(const std::vector<Edge>& edges, bool closed, std::size_t most);

/// The points where two edges come within kSamePoint of one another; for a stretch run over together, its
/// ends.
std::vector<Point> common_points(const Edge& a, const Edge& b);

}  // namespace arrisline
