#include "referee/random_cuts.h"

#include <algorithm>
#include <cmath>

namespace arrisline::referee {

double Chance::hair(double low, double high) {
  return (of(2) == 0 ? -1 : 1) * std::pow(10.0, in(low, high));
}

// The arc from a to b whose sagitta is `bulge` times half the chord; to the left where it is positive.
static Edge bulged(Point a, Point b, double bulge) {
  const Point half = 0.5 * (b - a);
  const Point left{-half.y, half.x};
  const double away = (1 - bulge * bulge) / (2 * bulge);
  return {a, b, a + half + away * left, bulge > 0 ? Turn::left : Turn::right};
}

std::vector<Edge> random_section(Chance& chance, double wide, double thick) {
  const int corners = 10 + chance.of(31);
  const Point middle{wide / 2, thick / 2};
  std::vector<Point> at;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * kPi * (i + chance.in(-0.3, 0.3)) / corners;
    const double out = chance.in(0.45, 0.9);
    Point p = middle + Point{out * wide / 2 * std::cos(angle), out * thick / 2 * std::sin(angle)};
    if (chance.one_in(3)) p = {std::round(p.x), std::round(p.y)};
    at.push_back(p);
  }
  std::vector<Edge> out;
  for (int i = 0; i < corners; ++i) {
    const Point a = at[static_cast<std::size_t>(i)], b = at[static_cast<std::size_t>((i + 1) % corners)];
    const int shape = chance.of(10);
    if (shape < 4) {
      out.push_back({a, b, {}, Turn::straight});
    } else {
      // Over 1 the arc is of more than 180 degrees; near 0 it is nearly straight.
      const double bulge = shape < 8   ? chance.in(0.1, 0.6) * (chance.of(2) == 0 ? -1 : 1)
                           : shape < 9 ? chance.hair(-3, -1)
                                       : chance.in(1.05, 2);
      out.push_back(bulged(a, b, bulge));
    }
  }
  return out;
}

std::vector<Edge> outline_of(const Plane& plane, const Pose& pose, double far) {
  const double t = pose.tilt * kPi / 180;
  const Point e{std::cos(t), -std::sin(t)}, a{-std::sin(t), -std::cos(t)};
  const auto put = [&](double u, double v) { return pose.at + u * e + v * a; };
  const double half = plane.width / 2;
  // (u, v) is left-handed in the section: turns change sides.
  std::vector<Edge> out;
  double low = 0, high = 0;
  if (plane.kind == PlaneKind::shaped) {
    for (const Edge& edge : plane.sole) {
      Edge put_edge{put(edge.from.x, edge.from.y), put(edge.to.x, edge.to.y), {}, edge.turn};
      if (edge.is_arc()) {
        put_edge.centre = put(edge.centre.x, edge.centre.y);
        put_edge.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
      }
      out.push_back(put_edge);
    }
    for (std::size_t i = 1; i < out.size(); ++i) out[i].from = out[i - 1].to;
    low = plane.sole.front().from.y;
    high = plane.sole.back().to.y;
  } else {
    const double r = plane.radius, sagitta = plane.is_curved() ? r - std::sqrt(r * r - half * half) : 0;
    low = high = plane.kind == PlaneKind::hollow ? -sagitta : sagitta;
    Edge sole{put(-half, low), put(half, low), {}, Turn::straight};
    if (plane.kind == PlaneKind::round) sole = {sole.from, sole.to, put(0, r), Turn::right};
    if (plane.kind == PlaneKind::hollow) sole = {sole.from, sole.to, put(0, -r), Turn::left};
    out.push_back(sole);
  }
  const Point left = put(-half, low + far), right = put(half, high + far);
  out.push_back({out.back().to, right, {}, Turn::straight});
  out.push_back({right, left, {}, Turn::straight});
  out.push_back({left, out.front().from, {}, Turn::straight});
  return out;
}

static Plane random_plane(Chance& chance) {
  Plane plane;
  plane.width = chance.one_in(3) ? 1 + chance.of(14) : chance.in(1, 15);
  const int kind = chance.of(8);
  if (kind < 3) return plane;
  if (kind == 7) {
    plane.kind = PlaneKind::shaped;
    const double w = plane.width / 2;
    // A quarter-round down to the middle, a flat, and a slope up.
    plane.sole = {{{-w, w}, {0, 0}, {0, w}, Turn::left},
                  {{0, 0}, {w / 2, 0}, {}, Turn::straight},
                  {{w / 2, 0}, {w, w / 3}, {}, Turn::straight}};
    return plane;
  }
  plane.kind = kind % 2 == 0 ? PlaneKind::hollow : PlaneKind::round;
  plane.radius = plane.width * (chance.one_in(3) ? 1 : chance.in(0.501, 3));
  return plane;
}

static double random_tilt(Chance& chance) {
  return chance.of(3) == 0 ? 45.0 * (chance.of(8) - 3) : chance.in(-180, 180);
}

// The piece of the boundary that a cut is laid to, and where along it.
struct Laid {
  Edge edge;
  Point at;
  Point outward;  // out of the wood
};

static Laid some_piece(Chance& chance, std::span<const Edge> wood) {
  Laid out;
  out.edge = wood[static_cast<std::size_t>(chance.of(static_cast<int>(wood.size())))];
  out.at = point_at(out.edge, chance.in(0.05, 0.95));
  const double t = out.edge.is_arc() ? 0.5 : 0;
  if (out.edge.is_arc()) out.at = point_at(out.edge, t);
  const Point along = direction_at(out.edge, t);
  out.outward = {along.y, -along.x};  // the wood is to the left
  return out;
}

// A hollow or a round whose circle is that of the arc, its sole somewhere along it.
static RandomCut on_circle(Chance& chance, const Edge& arc) {
  RandomCut cut;
  const bool wood_outside = arc.turn == Turn::right;
  cut.plane.kind = wood_outside ? PlaneKind::round : PlaneKind::hollow;
  cut.plane.radius = distance(arc.from, arc.centre);
  cut.plane.width = cut.plane.radius * chance.in(0.3, 1.9);
  const Point spoke = point_at(arc, chance.in(0, 1)) - arc.centre;
  cut.pose.tilt = tilt_of((wood_outside ? -1.0 : 1.0) * spoke);
  const Point a = outward(cut.pose.tilt);
  cut.pose.at = arc.centre + (wood_outside ? -1 : 1) * cut.plane.radius * a;
  return cut;
}

static RandomCut lay(Chance& chance, CutKind kind, std::span<const Edge> wood,
                     const std::vector<RandomCut>& done, double wide, double thick) {
  RandomCut cut;
  cut.plane = random_plane(chance);
  // Some way into the wood from where it points out.
  cut.pose.tilt = random_tilt(chance);
  const Point edge{chance.in(0, wide), chance.in(0, thick)};
  cut.pose.at = edge + chance.in(-3, 8) * outward(cut.pose.tilt);
  if (wood.empty()) return cut;
  const Laid laid = some_piece(chance, wood);
  switch (kind) {
    case CutKind::random:
      break;
    case CutKind::grid:
      cut.pose = {{std::round(cut.pose.at.x), std::round(cut.pose.at.y)},
                  45 * std::round(cut.pose.tilt / 45)};
      break;
    case CutKind::shared_edge: {
      // Its sole along the piece, or one of its sides.
      cut.plane = Plane{};
      cut.plane.width = chance.in(1, 15);
      const Point along{-laid.outward.y, laid.outward.x};
      if (chance.of(2) == 0) {
        cut.pose.tilt = tilt_of(laid.outward);
        cut.pose.at = laid.at;
      } else {
        cut.pose.tilt = tilt_of(chance.of(2) == 0 ? along : -1 * along);
        cut.pose.at = laid.at + (chance.of(2) == 0 ? 0.5 : -0.5) * cut.plane.width * laid.outward;
      }
      break;
    }
    case CutKind::same_circle:
    case CutKind::near_circle: {
      std::vector<Edge> arcs;
      for (const Edge& piece : wood)
        if (piece.is_arc() && radius(piece) < 40) arcs.push_back(piece);
      if (arcs.empty()) break;
      cut = on_circle(chance, chance.one_of(arcs));
      if (kind == CutKind::near_circle) {
        if (chance.of(2) == 0) cut.plane.radius += std::abs(chance.hair(-12, -3));
        cut.pose.at = cut.pose.at + Point{chance.hair(-12, -3), chance.hair(-12, -3)};
      }
      break;
    }
    case CutKind::tangent: {
      // The middle of the sole on the piece, in its direction: circles of other radii touch within.
      cut.pose.tilt = tilt_of(laid.outward);
      cut.pose.at = laid.at + (chance.of(2) == 0 ? 0 : chance.hair(-12, -4)) * laid.outward;
      break;
    }
    case CutKind::touching: {
      // Down to where the sole meets the first corner, and not farther.
      const Point a = outward(cut.pose.tilt);
      double top = -1e9;
      Point at;
      for (const Edge& piece : wood)
        if (dot(piece.from, a) > top) top = dot(piece.from, a), at = piece.from;
      cut.pose.at = at;
      if (cut.plane.kind == PlaneKind::hollow || cut.plane.kind == PlaneKind::shaped) cut.plane = Plane{};
      if (cut.plane.kind == PlaneKind::rebate) cut.plane.width = chance.in(1, 15);
      break;
    }
    case CutKind::repeat:
    case CutKind::sliver: {
      if (done.empty()) break;
      cut = chance.one_of(done);
      const bool sliver = kind == CutKind::sliver;
      if (sliver || chance.of(2) == 0) {
        const double low = sliver ? -6 : -13, high = sliver ? -3 : -7;
        cut.pose.at = cut.pose.at + Point{chance.hair(low, high), chance.hair(low, high)};
        if (sliver && chance.of(2) == 0) cut.pose.tilt += chance.hair(-6, -3);
      }
      break;
    }
    case CutKind::corner: {
      // An end of the sole, or a side, in a corner of the wood.
      const double t = cut.pose.tilt * kPi / 180;
      const Point e{std::cos(t), -std::sin(t)};
      const double edge_of_sole = (chance.of(2) == 0 ? 0.5 : -0.5) * cut.plane.width;
      const double up = chance.of(2) == 0 ? 0 : chance.in(0, 5);
      cut.pose.at = laid.edge.from - edge_of_sole * e - up * outward(cut.pose.tilt);
      break;
    }
  }
  return cut;
}

RandomCut random_cut(Chance& chance, std::span<const Edge> wood, const std::vector<RandomCut>& done,
                     double wide, double thick) {
  const CutKind kind = static_cast<CutKind>(chance.of(static_cast<int>(kCutKinds.size())));
  RandomCut cut = lay(chance, kind, wood, done, wide, thick);
  cut.kind = kind;
  return cut;
}

}  // namespace arrisline::referee
