// The wood as it stands between two cuts, exact: the blank less what each pose so far has taken.
#pragma once

#include <optional>
#include <vector>

#include "replay/swept.h"

namespace arrisline::replaying {

class Standing {
 public:
  Standing(double width, double thickness);

  void take(Swept swept);
  const std::vector<Swept>& taken() const { return taken_; }
  /// The edges of the blank and of every pose, whole, whether they bound wood or air.
  const std::vector<Edge>& edges() const { return edges_; }

  /// How far p lies outside the blank, across or down, whichever is more; negative inside it.
  double off_blank(Point p) const;

  /// In the blank and not taken by any pose; on the surface itself it may be called either.
  bool solid(Point p) const;

  /// The height v of the topmost wood on the line u of a pose's frame; nothing where the line meets no wood.
  /// Wood thinner than 1e-6 mm along the line is none.
  std::optional<double> top(const Pose& pose, double u) const;

  /// Where the surface may have an arris or an inner corner: every crossing and end of the edges that bound
  /// it, those inside wood already taken left out.
  const std::vector<Point>& corners() const { return corners_; }

  /// Whether the surface turns by more than about 20° at p, outward (an arris) or inward (a corner).
  bool is_corner(Point p) const;

 private:
  double width_, thickness_;
  std::vector<Swept> taken_;
  std::vector<Edge> edges_;
  std::vector<Point> corners_;
};

}  // namespace arrisline::replaying
