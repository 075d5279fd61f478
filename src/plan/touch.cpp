// Where a sole bears on the wood. Shown by tests/plan/touch_test.cpp.
#include "plan/touch.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/crossing.h"
#include "plan/rest.h"

namespace arrisline {

namespace {

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
