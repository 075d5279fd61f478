// What is drawn on a sheet, in mm of paper, before it becomes SVG or PDF. x runs right, y down, as in a
// section.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

inline Edge line(Point from, Point to) {
  return {from, to, {}, Turn::straight};
}

/// What a shape stands for; style.h says how it looks, so that every kind of sheet looks alike.
enum class Role {
  wood,      // as it stands
  taken,     // by this cut
  blank,     // outline of the blank, where wood is gone
  finished,  // the finished line
  plane,     // sides of the plane above its sole
  sole,      // at its last place
  turn,      // the sole at the earlier places of the same cut
  gauge,     // a gauge line
  leader,    // from a figure to what it measures; frames and marks to join pages at
  rail,      // where the sole bears
  centre,    // of an arc
  measure,   // the rules to check a printer with
};
inline constexpr Role kRoles[] = {Role::wood,   Role::taken, Role::blank,  Role::finished,
                                  Role::plane,  Role::sole,  Role::turn,   Role::gauge,
                                  Role::leader, Role::rail,  Role::centre, Role::measure};

/// A shape of one role. Each chain of edges is closed on itself where `closed` is set.
struct DrawnShape {
  Role role = Role::leader;
  std::vector<std::vector<Edge>> chains;
  bool closed = false;
  bool clipped = true;  // to the window of its picture
};

enum class Anchor { start, middle, end };

struct Label {
  Point at;           // on the baseline
  std::string words;  // visible(), one line
  double size = 3;    // of the type, mm from line to line of type set solid
  Anchor anchor = Anchor::start;
  bool bold = false;
};

struct Box {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;

  double width() const { return x1 - x0; }
  double height() const { return y1 - y0; }
  friend bool operator==(const Box&, const Box&) = default;
};

/// A little more than the words take in any of the usual sans-serif types, mm.
double text_width(const std::string& words, double size, bool bold = false);
/// The words broken at spaces into lines no wider than this; a word that is wider by itself is broken.
std::vector<std::string> wrapped(const std::string& words, double size, double width);
/// The words cut down to this width, the last three of them "..." where they were longer.
std::string fitted(const std::string& words, double size, double width);
/// What the label takes, mm of paper.
Box box_of(const Label& label);

struct Picture {
  double width = 0;
  double height = 0;
  std::string title;               // for screen readers, and for whoever asks what it is
  std::string description;         // what can be seen, in words
  Box window;                      // of the shapes that are clipped
  std::vector<DrawnShape> shapes;  // in the order of painting
  std::vector<Label> labels;       // over all shapes
};

/// A page, or a picture with many parts.
struct Sheet {
  struct Placed {
    Point at;  // of the picture's upper left corner
    Picture picture;
  };
  double width = 0;
  double height = 0;
  std::vector<Placed> pictures;
  std::vector<DrawnShape> shapes;  // not clipped
  std::vector<Label> labels;
};

/// Where a section comes to lie on paper: p goes to origin + scale·p.
struct Placing {
  Point origin;
  double scale = 1;

  Point point(Point p) const { return origin + scale * p; }
  Edge edge(const Edge& e) const { return {point(e.from), point(e.to), point(e.centre), e.turn}; }
  std::vector<Edge> chain(const std::vector<Edge>& edges) const;
};

}  // namespace arrisline
