// The lines of a drawing drawn anew with figures of the kit.
#pragma once

#include <deque>
#include <optional>
#include <vector>

#include "plan/redrawn_figures.h"
#include "plan/redrawn_line.h"

namespace arrisline {

/// An element that gets another figure than its own.
struct Chosen {
  std::size_t chain = 0;
  std::size_t stroke = 0;
  bool arc = false;
  OtherFigure figure;
};

/// One way to draw all chains.
struct Way {
  std::vector<FlatsAndArcs> lines;  // of each chain
  std::vector<Held> held;           // what each keeps to
  double departure = 0;             // the greatest of any point, either way round, mm
  bool between_ends = false;        // all joints are where they are drawn
  bool corners = false;             // it has some where the drawn line is smooth
};

class RedrawnWays {
 public:
  RedrawnWays(const Drawing& drawing, double width, double thickness);

  /// The ways with these figures that depart by no more than some three times `near`, at most these: joints
  /// moved by the weights of Lawson (redrawn_line) with what is smooth kept so, that moved on until it
  /// departs least either way round; and arcs between the ends that they have, smooth or not, that moved on
  /// too.
  std::deque<Way> ways(const std::vector<Chosen>& chosen, double near) const;

  /// Joints go back to where they were drawn, one figure after another, where the line departs no more for
  /// it.
  Way tidied(const Way& way, double near) const;

  /// The way whose joints lie at this share of the way from those of the one to those of the other, put to
  /// what the one keeps to, arcs as long in between as well. REQUIRES: both of the same figures.
  std::optional<Way> between(const Way& one, const Way& other, double share, double near) const;

  const std::vector<ChainLine>& chains() const { return chains_; }

 private:
  std::optional<Way> drawn(const std::vector<Chosen>& chosen, double near, int rounds) const;
  std::optional<Way> drawn_between_ends(const std::vector<Chosen>& chosen) const;
  std::optional<Way> nearer(const Way& way, double near) const;
  double departure(const std::vector<FlatsAndArcs>& lines) const;

  std::vector<ChainLine> chains_;
  double width_;
  double thickness_;
};

}  // namespace arrisline
