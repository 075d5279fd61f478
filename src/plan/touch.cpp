// Where a sole bears on the wood. Shown by tests/plan/touch_test.cpp.
#include "plan/touch.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/crossing.h"

namespace arrisline {

namespace {

constexpr double kNothing = -std::numeric_limits<double>::infinity();

double height_at(const Sweep& sweep, Point p) {
  return sweep.v(p) - sole_height(sweep.plane(), sweep.u(p));
}

/// Places on the edge where v − f(u) may peak between its ends.
void peaks(const Measured& measured, const Sweep& sweep, std::vector<double>& ts) {
  const Edge& edge = measured.edge();
  const Plane& plane = sweep.plane();
  if (plane.kind == PlaneKind::shaped) {
    // No closed form over a chain: close enough steps for a peak that is then at an end of a step.
    for (int i = 1; i < 64; ++i) ts.push_back(i / 64.0);
    return;
  }
  extremes_along(measured, sweep.a(), ts);
  if (!plane.is_curved()) return;
  const bool round = plane.kind == PlaneKind::round;
  const Point centre = sweep.pose().at + (round ? plane.radius : -plane.radius) * sweep.a();
  if (!edge.is_arc()) {
    // A straight edge bears where the sole runs parallel to it, on the spoke square to the edge.
    const Point d = direction_at(edge, 0);
    const double len = length(edge);
    if (len == 0) return;
    const Point n = {-d.y, d.x};
    for (const double side : {1.0, -1.0}) {
      const Point p = centre + side * plane.radius * n;
      const double along = dot(sweep.a(), n);
      if (std::abs(along) < 1e-12) continue;
      // The point of the edge with the same u as p: travel from p along a until the edge's line is met.
      const Point q = p + (dot(edge.from - p, n) / along) * sweep.a();
      const double t = dot(q - edge.from, d) / len;
      if (t > 0 && t < 1) ts.push_back(t);
    }
    return;
  }
  // Two arcs bear where their spokes run parallel: at direction s from either centre, with u equal.
  const double r = measured.r();
  const double offset = sweep.u(edge.centre) - sweep.u(centre);
  for (const double same : {1.0, -1.0}) {
    const double denominator = same * plane.radius - r;
    if (std::abs(denominator) < 1e-12) continue;
    const double across_spoke = offset / denominator;  // sine of the spoke's lean from a
    if (std::abs(across_spoke) >= 1) continue;
    const double along_spoke = std::sqrt(1 - across_spoke * across_spoke);
    for (const double up : {1.0, -1.0})
      extremes_along(measured, across_spoke * sweep.e() + up * along_spoke * sweep.a(), ts);
  }
}

/// mm: places this near in height to the highest of a contact are as high. Wood left by a sole of the same
/// radius lies level under this one over a whole stretch, and rounding must not choose a place in it.
constexpr double kLevel = 1e-6;

struct Stretch {
  double from, to;  // u, from ≤ to
  double height = kNothing;
  double first = 0, last = 0;  // u, first ≤ last: the outermost of the places that are highest
  bool clipped = false;        // one of them is where the edge of the sole stands on wood that runs on
  bool broken = false;

  double peak() const { return (first + last) / 2; }

  void rises(double u, double h, bool cut_by_edge) {
    if (h > height + kLevel) {
      first = last = u;
      clipped = cut_by_edge;
    } else if (h >= height - kLevel) {
      first = std::min(first, u);
      last = std::max(last, u);
      clipped = clipped || cut_by_edge;
    }
    height = std::max(height, h);
  }
};

}  // namespace

namespace {

/// The greatest v − f(u) found so far of wood under the stretch [from, to] of the sole, in its own frame.
class Highest {
 public:
  Highest(const Sweep& sweep, double from, double to)
      : sweep_(sweep), plane_(sweep.plane()), from_(from), to_(to) {
    if (plane_.kind == PlaneKind::round) bend_ = plane_.radius;
    if (plane_.kind == PlaneKind::hollow) {
      bend_ = -plane_.radius;
      lowest_ = sole_height(plane_, sweep.half());
    }
  }

  void edge(const Edge& edge) {
    const Point a = {sweep_.u(edge.from), sweep_.v(edge.from)};
    const Point b = {sweep_.u(edge.to), sweep_.v(edge.to)};
    if (!edge.is_arc()) {
      if (std::max(a.x, b.x) < from_ - kBeside || std::min(a.x, b.x) > to_ + kBeside) return;
      if (std::max(a.y, b.y) - lowest_ <= best) return;
      point(a);
      point(b);
      line(a, b);
      return;
    }
    const double r = radius(edge);
    const Point c = {sweep_.u(edge.centre), sweep_.v(edge.centre)};
    if (c.x + r < from_ || c.x - r > to_ || c.y + r - lowest_ <= best) return;
    point(a);
    point(b);
    arc(edge, c, r);
  }

  double best = kNothing;

 private:
  static constexpr double kBeside = 1e-9;  // mm by which an end may lie beside the stretch and count

  void point(Point uv) {
    if (uv.x < from_ - kBeside || uv.x > to_ + kBeside) return;
    best = std::max(best, uv.y - sole_height(plane_, uv.x));
  }

  /// Where the stretch ends, and where the sole runs parallel to the line.
  void line(Point a, Point b) {
    const double low = std::max(from_, std::min(a.x, b.x));
    const double high = std::min(to_, std::max(a.x, b.x));
    if (high - low < kBeside) return;
    const double slope = (b.y - a.y) / (b.x - a.x);
    auto at = [&](double u) { point({u, a.y + slope * (u - a.x)}); };
    at(low);
    at(high);
    if (bend_ == 0) return;
    const double u = bend_ * slope / std::sqrt(1 + slope * slope);
    if (u > low && u < high) at(u);
  }

  /// Where the stretch ends, and where the sole runs parallel to the arc: there the spokes of both do too.
  void arc(const Edge& edge, Point c, double r) {
    auto at = [&](double u) {
      if (u < from_ || u > to_ || std::abs(u - c.x) > r) return;
      const double rise = std::sqrt(std::max(0.0, r * r - (u - c.x) * (u - c.x)));
      for (const double up : {1.0, -1.0}) {
        if (spoke_meets(edge, (u - c.x) * sweep_.e() + up * rise * sweep_.a())) point({u, c.y + up * rise});
      }
    };
    at(from_);
    at(to_);
    if (bend_ == 0) {
      at(c.x);
      return;
    }
    for (const double same : {1.0, -1.0}) {
      const double gap = bend_ - same * r;
      if (std::abs(gap) > 1e-12) at(c.x * bend_ / gap);
    }
  }

  const Sweep& sweep_;
  const Plane& plane_;
  double from_, to_;
  double bend_ = 0;    // radius of the sole, of a hollow below 0; 0 of a flat
  double lowest_ = 0;  // no part of the sole is lower
};

/// As Highest, for a sole that is a chain: no closed form, so its peaks are looked for step by step.
double highest_on_chain(std::span<const Edge> edges, const Sweep& sweep, double from, double to) {
  double best = kNothing;
  std::vector<double> ts;
  for (const Edge& whole : edges) {
    const Measured edge(whole);
    ts = {0, 1};
    peaks(edge, sweep, ts);
    cross_line(edge, sweep.pose().at + from * sweep.e(), sweep.a(), ts);
    cross_line(edge, sweep.pose().at + to * sweep.e(), sweep.a(), ts);
    for (const double t : ts) {
      const Point p = edge.at(t);
      const double u = sweep.u(p);
      if (u >= from - 1e-9 && u <= to + 1e-9) best = std::max(best, height_at(sweep, p));
    }
  }
  return best;
}

}  // namespace

double rest_height_between(std::span<const Edge> edges, const Sweep& sweep, double from, double to) {
  if (sweep.plane().kind == PlaneKind::shaped) return highest_on_chain(edges, sweep, from, to);
  Highest highest(sweep, from, to);
  for (const Edge& edge : edges) highest.edge(edge);
  return highest.best;
}

double rest_height(std::span<const Edge> edges, const Sweep& sweep) {
  constexpr double kBeside = 1e-7;  // mm from the side within which a corner may belong to a wall
  constexpr double kNoWall =
      0.02;  // mm: the end of an arc that runs up tangent to the side rises no more there
  const double inner = sweep.half() - kBeside;
  double best = rest_height_between(edges, sweep, -inner, inner);
  for (const Edge& edge : edges) {
    for (const Point p : {edge.from, edge.to}) {
      if (std::abs(std::abs(sweep.u(p)) - sweep.half()) > kBeside) continue;
      const double h = height_at(sweep, p);
      if (h > best && h < best + kNoWall) best = h;
    }
  }
  return best;
}

namespace {

constexpr double kAtEnd = 1e-3;  // mm from the end of a contact within which its hardest place may be a tip

/// Of the width: contacts with no more than this between them are one, whatever a hair more or less would
/// make of them.
constexpr double kOneContact = 0.01;

/// mm between two contacts that are not merely two pieces of the boundary end to end.
constexpr double kNick = 1e-7;

/// Of the width: a tip that bears on more than this stands firm all the same.
constexpr double kSolidTip = 0.005;

/// Of the width: an arris under a sole bears on less, an arc of nearly the sole's radius on more. Under a
/// narrow sole an arris may bear on more than that, and it is still plain where.
constexpr double kLongPatch = 0.05;
constexpr double kArrisPatch = 0.5;  // mm

bool is_long(const Contact& contact, const Plane& plane) {
  return contact.to - contact.from > kLongPatch * plane.width;
}

/// The wood under the sole ends at this place in a lip that is undercut: within a hair of its tip it is no
/// thicker than a shaving.
bool is_tip(std::span<const Edge> edges, const Sweep& sweep, Point tip) {
  constexpr double kThickens = 10;  // mm of thickness along the plane for each mm across it
  constexpr double kSamePlace = 1e-6;
  constexpr double kAlongPlane = 1e-4;
  double steepest = -std::numeric_limits<double>::infinity();
  double flattest = std::numeric_limits<double>::infinity();
  int left = 0, right = 0;
  bool firm = false;
  auto consider = [&](Point way) {
    const double across = dot(way, sweep.e());
    const double along = dot(way, sweep.a());
    if (std::abs(across) < kAlongPlane) {
      firm = true;  // runs down along the plane
      return;
    }
    ++(across < 0 ? left : right);
    steepest = std::max(steepest, along / std::abs(across));
    flattest = std::min(flattest, along / std::abs(across));
  };
  for (const Edge& edge : edges) {
    if (distance(edge.from, tip) < kSamePlace) consider(direction_at(edge, 0));
    if (distance(edge.to, tip) < kSamePlace) consider(-1 * direction_at(edge, 1));
  }
  return !firm && left + right >= 2 && (left == 0 || right == 0) && steepest - flattest < kThickens;
}

/// Pieces of the boundary meet here and run on in one direction: no arris, and no corner.
bool runs_on(std::span<const Edge> edges, Point place) {
  constexpr double kSamePlace = 1e-6;
  constexpr double kSmooth = 1e-4;  // sine of the angle
  for (const Edge& to : edges) {
    if (distance(to.to, place) >= kSamePlace || distance(to.from, to.to) < kSamePlace) continue;
    const Point way = direction_at(to, 1);
    for (const Edge& on : edges) {
      if (distance(on.from, place) >= kSamePlace || distance(on.from, on.to) < kSamePlace) continue;
      const Point next = direction_at(on, 0);
      if (std::abs(cross(way, next)) < kSmooth && dot(way, next) > 0) return true;
    }
  }
  return false;
}

/// The boundary turns at this place.
bool is_corner(std::span<const Edge> edges, Point place) {
  constexpr double kSamePlace = 1e-6;
  const bool ends = std::any_of(edges.begin(), edges.end(), [&](const Edge& edge) {
    return distance(edge.from, place) < kSamePlace || distance(edge.to, place) < kSamePlace;
  });
  return ends && !runs_on(edges, place);
}

}  // namespace

Touch touch(std::span<const Edge> edges, const Sweep& sweep, double within) {
  Touch out;
  out.height = rest_height(edges, sweep);
  if (out.height == kNothing) return out;
  out.any = true;

  const double half = sweep.half();
  const Sweep resting = sweep.lifted(out.height - within);
  std::vector<Stretch> stretches;
  std::vector<double> ts;
  std::vector<double> inner;
  for (const Edge& whole : edges) {
    const Measured edge(whole);
    ts.clear();
    inner.clear();
    resting.crossings(edge, 0, ts);
    peaks(edge, sweep, inner);
    std::sort(ts.begin(), ts.end());
    ts.push_back(1);
    double from = 0;
    for (const double to : ts) {
      if (to - from > 1e-12 && resting.depth(edge.at((from + to) / 2)) > kSame) {
        Stretch s{half, -half};
        auto consider = [&](double t) {
          const Point p = edge.at(t);
          const double u = std::clamp(sweep.u(p), -half, half);
          const double h = height_at(sweep, p);
          s.from = std::min(s.from, u);
          s.to = std::max(s.to, u);
          const bool at_edge = std::abs(std::abs(u) - half) < 1e-6;
          s.rises(u, h, at_edge && ((t > 0 && t < 1) || runs_on(edges, p)));
        };
        consider(from);
        consider(to);
        for (const double t : inner) {
          if (t > from && t < to) consider(t);
        }
        stretches.push_back(s);
      }
      from = to;
    }
  }
  std::sort(stretches.begin(), stretches.end(),
            [](const Stretch& a, const Stretch& b) { return a.from < b.from; });

  std::vector<Stretch> merged;
  for (const Stretch& s : stretches) {
    if (!merged.empty() && s.from <= merged.back().to + kOneContact * sweep.plane().width) {
      Stretch& last = merged.back();
      last.broken = last.broken || s.from > last.to + kNick;
      last.to = std::max(last.to, s.to);
      if (s.height > kNothing) {
        last.rises(s.first, s.height, s.clipped);
        last.rises(s.last, s.height, s.clipped);
      }
    } else {
      merged.push_back(s);
    }
  }
  for (const Stretch& s : merged) {
    const double peak = s.peak();
    Contact contact{s.from, s.to, peak};
    contact.broken = s.broken;
    const Point hardest = from_sole_frame(sweep.pose(), {peak, s.height + sole_height(sweep.plane(), peak)});
    contact.arris = is_long(contact, sweep.plane()) && is_corner(edges, hardest);
    if (s.clipped && std::abs(peak) > half - kTouch) {
      // A wall beside the sole, standing above where it bears, holds it there all the same.
      const double side = peak > 0 ? 1 : -1;
      const double wall_from = side * (half + 1e-6);
      const double wall_to = side * (half + kTouch);
      const double beside =
          rest_height_between(edges, sweep, std::min(wall_from, wall_to), std::max(wall_from, wall_to));
      contact.plain_edge = beside < s.height + 10 * kTouch;
    } else if (std::min(peak - s.from, s.to - peak) < kAtEnd &&
               s.to - s.from < kSolidTip * sweep.plane().width) {
      contact.tip = is_tip(edges, sweep, hardest);
    }
    out.contacts.push_back(contact);
  }
  return out;
}

Guidance guidance(const Touch& touch, const Plane& plane) {
  Guidance out;
  // A little more than the rule asks, for what rounding and the width of a contact may take from it.
  const double off_middle = (kOffMiddle + 0.005) * plane.width;
  double left = 0;
  double right = 0;
  auto count = [&](double u) {
    if (u < -off_middle) left = std::min(left, u);
    if (u > off_middle) right = std::max(right, u);
  };
  for (const Contact& contact : touch.contacts) {
    // A sole that bears on its edge as well would dig in there, and a knife edge gives way: such a ride is
    // not laid out at all.
    if (contact.plain_edge || contact.tip) return {};
    const double r = plane.radius;
    const double arc =
        std::asin(std::clamp(contact.to / r, -1.0, 1.0)) - std::asin(std::clamp(contact.from / r, -1.0, 1.0));
    if (to_degrees(arc) >= kPatchArc) {
      // Whether so long a patch guides must not hang on a nick that a shaving less would not leave.
      if (contact.broken) return {};
      count(contact.from);
      count(contact.to);
    } else {
      count(contact.peak);
      const bool plain = contact.arris && contact.to - contact.from <= kArrisPatch;
      out.narrow = out.narrow || plain;
      out.vague = out.vague || (is_long(contact, plane) && !plain);
    }
  }
  out.two_arrises = left < 0 && right > 0;
  out.left = left;
  out.right = right;
  if (out.two_arrises) out.imbalance = std::abs(left + right) / plane.width;
  return out;
}

}  // namespace arrisline
