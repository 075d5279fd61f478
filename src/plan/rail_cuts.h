// The flat cuts of which rails are made, placed about one arc.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// A cut with a flat sole at these poses. REQUIRES: there is one.
std::vector<Draft> flat_draft(int plane, std::vector<Pose> poses);

/// Both; nothing where either is nothing.
std::vector<Draft> both(std::vector<Draft> a, std::vector<Draft> b);

/// Flat cuts about an arc, square ones to a frame that is upright on the blank either way up. Each gives one
/// draft, or nothing where no plane that may be used has room.
class RailCuts {
 public:
  /// `square`: planes that may make the square cuts, as indices into Kit::planes, in the order to be tried.
  RailCuts(const Problem& problem, const Surface& arc, std::vector<int> square);

  void may_square(const std::vector<int>& planes) {
    square_.insert(square_.end(), planes.begin(), planes.end());
  }
  /// The same of ploughs, which then set groove beside groove, as wide as there is room.
  void may_trench(const std::vector<int>& ploughs) {
    may_square(ploughs);
    trenches_ = true;
  }

  /// Takes the frame for a plane that leans at `tilt`: square cuts come from the face, or from the underside.
  void turn_to(double tilt);
  /// The side on which square cuts are open, −1: toward −u.
  void open_to(int side) { open_ = side; }
  int open() const { return open_; }
  double frame() const { return frame_; }

  /// Across and outward of the frame, mm.
  double u(Point p) const { return dot(p, e_); }
  double v(Point p) const { return dot(p, a_); }

  /// On the arc's circle where its normal leans so, or at a share of the radius from the centre.
  Point on_circle(double lean, double share) const;

  /// A square cut with its wall at `wall_u` and its floor through `floor_v` (or as low as it goes).
  std::vector<Draft> step(double wall_u, double floor_v) const;

  /// A square cut whose floor is at `floor_v` and whose wall stands as far in as the target allows: at the
  /// nearest point of it, going in from `near_u`, that rises above the floor.
  std::vector<Draft> floor_step(double near_u, double floor_v) const;

  /// A step whose corner lies on_circle().
  std::vector<Draft> corner(double lean, double share) const;

  /// A slanted flat at `lean`, `off` mm outside the circle of the arc.
  std::vector<Draft> chamfer(double lean, double off) const;

 private:
  const Problem& problem_;
  const Surface& arc_;
  const Point centre_;
  const double radius_;
  const std::vector<int> flats_;  // rebate planes
  std::vector<int> square_;
  bool trenches_ = false;
  double frame_ = 0;
  Point e_, a_;  // across and outward of frame_
  int open_ = -1;
};

}  // namespace arrisline
