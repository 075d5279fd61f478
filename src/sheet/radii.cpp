// Where the figure of a radius may stand. Shown by tests/sheet/full_size_test.cpp.
#include "sheet/radii.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {
namespace {

// mm of paper.
constexpr double kType = 3;
constexpr double kArm = 1.5;    // of a cross, from its middle
constexpr double kApart = 0.7;  // between a figure and another
constexpr double kFirst = 4;    // nearest that a figure's middle is tried
constexpr double kStep = 1.5;   // and so on
constexpr int kDirections = 24;
// What it costs to stand on a line or to lead across one, in mm that it could be farther away instead.
constexpr double kOnLine = 14;
constexpr double kAcross = 3;
constexpr double kThrough = 60;  // to lead across another figure

Box grown(const Box& box, double by) {
  return {box.x0 - by, box.y0 - by, box.x1 + by, box.y1 + by};
}

bool meet(const Box& a, const Box& b) {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

/// The part of a straight edge within the box is not empty (cut down side by side).
bool meets(const Box& box, Point a, Point b) {
  double t0 = 0, t1 = 1;
  const auto keep = [&](double p, double q) {  // p·t ≤ q
    if (p == 0) return q >= 0;
    if (p < 0) {
      t0 = std::max(t0, q / p);
    } else {
      t1 = std::min(t1, q / p);
    }
    return t0 <= t1;
  };
  const Point d = b - a;
  return keep(-d.x, a.x - box.x0) && keep(d.x, box.x1 - a.x) && keep(-d.y, a.y - box.y0) &&
         keep(d.y, box.y1 - a.y);
}

bool cross_over(Point a, Point b, Point c, Point d) {
  const auto side = [](Point p, Point q, Point r) { return cross(q - p, r - p); };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

struct Segment {
  Point a, b;
};

/// Every line of the picture as short straight pieces: enough to tell what stands on what.
std::vector<Segment> lines_of(const Picture& picture) {
  std::vector<Segment> out;
  for (const DrawnShape& shape : picture.shapes) {
    if (shape.role == Role::wood) continue;
    for (const auto& chain : shape.chains) {
      for (const Edge& edge : chain) {
        const int n = edge.is_arc() ? 8 : 1;
        for (int i = 0; i < n; ++i)
          out.push_back({point_at(edge, double(i) / n), point_at(edge, double(i + 1) / n)});
      }
    }
  }
  return out;
}

/// The point of the box that is nearest to p.
Point nearest(const Box& box, Point p) {
  return {std::clamp(p.x, box.x0, box.x1), std::clamp(p.y, box.y0, box.y1)};
}

/// Adds the label of one radius and its leader; it stands on none of the places kept.
void place(Picture& picture, const Radius& radius, const std::vector<Box>& kept) {
  std::vector<Box> taken;
  for (const Label& label : picture.labels) taken.push_back(grown(box_of(label), kApart));
  const std::size_t labels = taken.size();
  taken.insert(taken.end(), kept.begin(), kept.end());
  const std::vector<Segment> lines = lines_of(picture);
  const Point foot = point_at(radius.arc, 0.5);
  Label label{{0, 0}, radius.words, kType, Anchor::middle, false};
  const Box own = box_of(label);
  const Point middle = {(own.x0 + own.x1) / 2, (own.y0 + own.y1) / 2};

  double best = std::numeric_limits<double>::infinity();
  Label chosen = label;
  // Beyond the farthest label nothing is in the way of the figure, so that some place is found.
  for (double off = kFirst; off < best; off += kStep) {
    for (int k = 0; k < kDirections; ++k) {
      const double turn = 2 * kPi * k / kDirections;
      const Point to =
          foot + Point{off * std::cos(turn) + own.width() / 2 * std::cos(turn), off * std::sin(turn)};
      label.at = to - middle;
      const Box box = grown(box_of(label), 0.2);
      const Point end = nearest(box, foot);
      const auto in_the_way = [&](const Box& other) { return meet(other, box); };
      if (distance(foot, end) < 1 || std::any_of(taken.begin(), taken.end(), in_the_way)) continue;
      double cost = off;
      for (std::size_t i = 0; i < labels; ++i)
        if (meets(taken[i], foot, end)) cost += kThrough;
      for (const Segment& s : lines) {
        if (meets(box, s.a, s.b)) cost += kOnLine;
        if (cross_over(foot, end, s.a, s.b)) cost += kAcross;
      }
      if (cost >= best) continue;
      best = cost;
      chosen = label;
    }
  }
  const Point end = nearest(grown(box_of(chosen), 0.2), foot);
  picture.labels.push_back(chosen);
  picture.shapes.push_back({Role::leader, {{line(foot, end)}}, false, false});
}

}  // namespace

void add_radii(Picture& picture, const std::vector<Radius>& radii) {
  for (const Radius& radius : radii) {
    if (!radius.centred) continue;
    const Point c = radius.arc.centre;
    picture.shapes.push_back({Role::leader, {{line(c, point_at(radius.arc, 0.5))}}, false, false});
    picture.shapes.push_back(
        {Role::centre,
         {{line(c - Point{kArm, 0}, c + Point{kArm, 0})}, {line(c - Point{0, kArm}, c + Point{0, kArm})}},
         false,
         false});
  }
  // Crosses, and the places that leaders start from.
  std::vector<Box> kept;
  const auto keep = [&kept](Point p, double by) { kept.push_back(grown({p.x, p.y, p.x, p.y}, by)); };
  for (const Radius& radius : radii) {
    keep(point_at(radius.arc, 0.5), kApart);
    if (radius.centred) keep(radius.arc.centre, kArm);
  }
  for (const Radius& radius : radii) place(picture, radius, kept);
}

}  // namespace arrisline
