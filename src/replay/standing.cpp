// Nothing is ever cut here: a point is wood when it is in the blank and no pose has taken it, and a line
// through the wood is what is left of its stretch in the blank. Shown by tests/replay.
#include "replay/standing.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "arrisline/section.h"

namespace arrisline::replaying {

static constexpr double kEndless = std::numeric_limits<double>::infinity();
// Two cuts that share a wall leave nothing between them, though their figures differ in the last digits.
static constexpr double kSliver = 1e-6;
// A corner point computed from two edges lies off either by no more than this.
static constexpr double kOnSurface = 1e-6;
// The surface round a point is looked at on a circle this large: a quarter of the 0.02 mm that counts as
// touching.
static constexpr double kLook = 0.005;
static constexpr int kLooks = 72;  // every 5 degrees
// A smooth surface has wood on half of that circle; 20 degrees of turning change it by a ninth of a half.
static constexpr double kTurned = 20.0 / 360;

Standing::Standing(double width, double thickness) : width_(width), thickness_(thickness) {
  edges_ = blank_outline(width, thickness);
  for (const Edge& edge : edges_) corners_.push_back(edge.from);
}

void Standing::take(Swept swept) {
  // What is taken stays taken.
  std::erase_if(corners_, [&](Point p) { return takes(swept, p, kOnSurface); });
  const auto keep = [&](Point p) {
    const auto gone = [&](const Swept& s) { return takes(s, p, kOnSurface); };
    if (off_blank(p) < kOnSurface && std::none_of(taken_.begin(), taken_.end(), gone)) corners_.push_back(p);
  };
  for (const Edge& fresh : swept.bounds) {
    keep(fresh.from);
    for (const Edge& edge : edges_)
      for (const Point p : crossings(fresh, edge)) keep(p);
  }
  for (const Edge& fresh : swept.bounds) edges_.push_back(fresh);
  taken_.push_back(std::move(swept));
}

double Standing::off_blank(Point p) const {
  return std::max({-p.x, p.x - width_, -p.y, p.y - thickness_});
}

bool Standing::solid(Point p) const {
  if (off_blank(p) >= 0) return false;
  return std::none_of(taken_.begin(), taken_.end(), [&](const Swept& s) { return takes(s, p); });
}

// Narrows [low, high] to where low_side ≤ from + v·rate ≤ high_side.
static void clip_line(double from, double rate, double low_side, double high_side, double& low,
                      double& high) {
  if (std::abs(rate) < 1e-12) {
    if (from > low_side && from < high_side) return;
    low = kEndless;
    high = -kEndless;
    return;
  }
  const double a = (low_side - from) / rate, b = (high_side - from) / rate;
  low = std::max(low, std::min(a, b));
  high = std::min(high, std::max(a, b));
}

// Where the line origin + v·direction, both in the frame of the sole, meets the sole's own edges.
static void meet_sole(const Swept& swept, Point origin, Point direction, std::vector<double>& at) {
  for (const Edge& edge : swept.sole) {
    if (!edge.is_arc()) {
      const Point d = edge.to - edge.from;
      const double turn = cross(direction, d);
      if (turn != 0) at.push_back(cross(edge.from - origin, d) / turn);
      continue;
    }
    const double along = dot(edge.centre - origin, direction);
    const double off = cross(direction, edge.centre - origin);
    const double r = radius(edge);
    const double square = r * r - off * off;
    if (square < 0) continue;
    at.push_back(along - std::sqrt(square));
    at.push_back(along + std::sqrt(square));
  }
}

std::optional<double> Standing::top(const Pose& pose, double u) const {
  const Point origin = from_sole_frame(pose, {u, 0});
  const Point up = outward(pose.tilt);
  double low = -kEndless, high = kEndless;
  clip_line(origin.x, up.x, 0, width_, low, high);
  clip_line(origin.y, up.y, 0, thickness_, low, high);
  if (high - low <= kSliver) return std::nullopt;

  struct Gone {
    double from, to;
  };
  std::vector<Gone> gone;
  std::vector<double> marks;
  for (const Swept& swept : taken_) {
    const Point o = swept.local(origin);
    const Point d = {dot(up, swept.e), dot(up, swept.a)};
    double first = low, last = high;
    clip_line(o.x, d.x, -swept.plane->width / 2, swept.plane->width / 2, first, last);
    if (last <= first) continue;
    marks.assign({first, last});
    meet_sole(swept, o, d, marks);
    std::sort(marks.begin(), marks.end());
    double from = marks.front();
    for (const double to : marks) {
      const Point middle = o + ((from + to) / 2) * d;
      if (from >= first && to <= last && middle.y > sole_height(*swept.plane, middle.x))
        gone.push_back({from, to});
      from = to;
    }
  }
  std::sort(gone.begin(), gone.end(), [](const Gone& a, const Gone& b) { return a.to > b.to; });
  double top = high;
  for (const Gone& one : gone) {
    if (one.to < top - kSliver) break;
    top = std::min(top, one.from);
  }
  if (top - low <= kSliver) return std::nullopt;
  return top;
}

bool Standing::is_corner(Point p) const {
  int wood = 0;
  for (int i = 0; i < kLooks; ++i) {
    const double angle = 2 * kPi * (i + 0.5) / kLooks;
    if (solid(p + kLook * Point{std::cos(angle), std::sin(angle)})) ++wood;
  }
  if (wood == 0 || wood == kLooks) return false;
  return std::abs(static_cast<double>(wood) / kLooks - 0.5) > kTurned;
}

}  // namespace arrisline::replaying
