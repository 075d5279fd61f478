// The wood as it stands after some cuts, kept as the pieces of its boundary.
//
// The pieces are not linked into outlines: areas, heights and distances need only the pieces, and without
// links a crossing that is off by a hair costs a hair, never a lost section.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "arrisline/geometry.h"
#include "plan/sweep.h"

namespace arrisline {

/// mm beside a sole that a strip of wood holds too: more than what counts as a wall there (kTouch).
inline constexpr double kBesideSole = 0.1;

class Wood {
 public:
  /// REQUIRES: `outline` is a closed outline with its interior to the left.
  explicit Wood(Loop outline);

  /// Takes away what the sweep covers. Returns the area taken, mm²; of a strip nothing is measured, and 0 is
  /// returned.
  double cut(const Sweep& sweep);

  /// Only what a sole at this pose can meet: the pieces that lie at least partly under it or up to
  /// kBesideSole beside it. Cuts made in the strip leave there what they would leave in the whole wood.
  Wood strip(const Sweep& sole) const;

  /// Pieces of the boundary, wood to the left of each; in no order.
  const std::vector<Edge>& edges() const { return edges_; }
  double area() const { return area_; }
  bool contains(Point p) const;

 private:
  /// How deep p lies in the wood at least: no place of it ends nearer. Below 0 where it lies outside; where
  /// that is not told, 0.
  double depth(Point p) const;

  /// What every cut begins with: one for all copies of the wood.
  struct Base {
    Loop outline;
    double far = 0;          // mm above the middle of any sole at which its sides are out of the wood
    bool rectangle = false;  // a blank, between these corners: inside is quickly told
    Point low, high;
  };
  struct Strip {
    Point at, e;
    double reach;
    bool beside(const Edge& edge) const;
  };

  std::shared_ptr<const Base> base_;
  std::vector<Sweep> cuts_;
  std::vector<Edge> edges_;
  double area_ = 0;
  std::optional<Strip> strip_;
};

/// Pieces of boundary that this thread has cut so far: a measure of work that, unlike a clock, is the same at
/// every run.
std::uint64_t wood_work();
/// Counts other work as if so many pieces had been cut.
void count_work(std::uint64_t pieces);

}  // namespace arrisline
