// Sections made in code, without the readers: a chain from the face to the working edge on a blank.
#pragma once

#include <cmath>

#include "arrisline/kit.h"
#include "arrisline/section.h"

namespace arrisline::test {

inline constexpr double kInch = kMmPerInch;

/// Builds the face chain of a section. Moves are in mm: positive `out` toward the working edge, `down`
/// deeper.
class ChainBuilder {
 public:
  ChainBuilder(double width, double thickness, double start)
      : width_(width), thickness_(thickness), at_{start, 0} {
    edges_.reserve(16);
  }

  ChainBuilder& line(double out, double down) { return add({at_.x - out, at_.y + down}, {}, Turn::straight); }
  /// An arc about a centre given by its move from the start; `turn` as travelled from the face on.
  ChainBuilder& arc(double out, double down, Point centre, Turn turn) {
    return add({at_.x - out, at_.y + down}, centre, turn);
  }
  /// Quadrant beads and coves, `first_out`: the tangent at the start runs out (bead) or down (cove).
  ChainBuilder& bead(double r) { return arc(r, r, {at_.x, at_.y + r}, Turn::right); }
  ChainBuilder& cove(double r) { return arc(r, r, {at_.x - r, at_.y}, Turn::left); }
  /// A bead whose start runs down and whose end runs out, and a cove whose start runs out… the other
  /// quadrants.
  ChainBuilder& cove_down(double r) { return arc(r, r, {at_.x - r, at_.y}, Turn::left); }
  /// An arc of radius r under 180°, bead or cove.
  ChainBuilder& arc_of(double out, double down, double r, bool is_bead) {
    const Point to = {at_.x - out, at_.y + down};
    const Point chord = to - at_;
    const double len = norm(chord);
    const Point middle = 0.5 * (at_ + to);
    const double off = std::sqrt(std::max(0.0, r * r - len * len / 4));
    // Wood lies to the left of the reversed chain, that is, to the right of the chain as travelled... in
    // plain numbers.
    const Point left = {-chord.y / len, chord.x / len};
    const Point wood = -1 * left;
    const Point centre = is_bead ? middle + off * wood : middle - off * wood;
    return add(to, centre, is_bead ? Turn::right : Turn::left);
  }

  Section section(const char* name) const {
    Section s;
    s.name = name;
    s.width = width_;
    s.thickness = thickness_;
    // From the end of the chain (on the working edge) back to the face, round the blank.
    int number = static_cast<int>(edges_.size());
    for (auto it = edges_.rbegin(); it != edges_.rend(); ++it, --number) {
      s.target.push_back(reversed(*it));
      s.source.push_back(number - 1);
    }
    for (std::size_t i = 0; i < edges_.size(); ++i) {
      Element element;
      element.number = static_cast<int>(i) + 1;
      element.name = edges_[i].is_arc() ? (edges_[i].turn == Turn::right ? "bead" : "cove") : "flat";
      s.elements.push_back(element);
    }
    Point at = s.target.back().to;
    auto side = [&](Point to) {
      if (distance(at, to) < 1e-9) return;
      s.target.push_back({at, to, {}, Turn::straight});
      s.source.push_back(-1);
      at = to;
    };
    side({width_, 0});
    side({width_, thickness_});
    const Point end = s.target.front().from;
    if (end.x < 1e-9) side({0, thickness_});
    side(end);
    return s;
  }

 private:
  ChainBuilder& add(Point to, Point centre, Turn turn) {
    edges_.push_back({at_, to, centre, turn});
    at_ = to;
    return *this;
  }

  double width_;
  double thickness_;
  Point at_;
  std::vector<Edge> edges_;
};

inline Plane flat_plane(double width, const char* label) {
  Plane plane;
  plane.kind = PlaneKind::rebate;
  plane.width = width;
  plane.label = label;
  return plane;
}

inline Plane curved_plane(PlaneKind kind, int number) {
  Plane plane;
  plane.kind = kind;
  plane.number = number;
  plane.radius = plane.width = number * kInch / 16;
  plane.label = std::string(word(kind)) + " " + std::to_string(number);
  return plane;
}

/// A pair of sixes, a 3/4 in rebate plane and a scraper.
inline Kit pair_of_sixes() {
  Kit kit;
  kit.name = "a pair of sixes";
  kit.planes = {curved_plane(PlaneKind::hollow, 6), curved_plane(PlaneKind::round, 6),
                flat_plane(0.75 * kInch, "rebate 3/4")};
  kit.scraper = true;
  return kit;
}

}  // namespace arrisline::test
