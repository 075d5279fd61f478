// Cutting wood away, piece by piece of its boundary. Shown by tests/plan/wood_test.cpp.
#include "plan/wood.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/crossing.h"

namespace arrisline {

namespace {

thread_local std::uint64_t work_done = 0;

/// How far to the side a point is tried where a piece lies along an outline: well above kSame, and below
/// anything a plane iron could show.
constexpr double kAside = 1e-6;

bool is_upright_rectangle(const Loop& loop) {
  return loop.size() == 4 && std::all_of(loop.begin(), loop.end(), [](const Edge& edge) {
           return !edge.is_arc() && (edge.from.x == edge.to.x || edge.from.y == edge.to.y);
         });
}

/// Ends that ought to meet are no farther apart than this, mm: some hairs, at the angles at which pieces
/// part.
constexpr double kOpen = 1e-5;

/// Pieces shorter than this are crumbs of rounding and are dropped: they bound no area that counts.
constexpr double kCrumb = 1e-9;

/// Calls `keep` with the middle and the length of each stretch between the sorted cuts ts and appends the
/// kept stretches, joined.
template <class Keep>
bool split(const Measured& edge, std::vector<double>& ts, std::vector<Edge>& out, Keep keep) {
  std::sort(ts.begin(), ts.end());
  ts.push_back(1);
  double from = 0;
  double kept_from = -1;
  bool dropped = false;
  const double len = edge.short_length();
  auto put = [&](double to) {
    if (kept_from >= 0 && (to - kept_from) * len > kCrumb) out.push_back(edge.piece(kept_from, to));
    kept_from = -1;
  };
  for (double to : ts) {
    if ((to - from) * len < kCrumb && to < 1) continue;
    if (keep((from + to) / 2, (to - from) * len)) {
      if (kept_from < 0) kept_from = from;
    } else {
      dropped = true;
      put(from);
    }
    from = to;
  }
  put(1);
  return dropped;
}

/// Where circles all but touch, a crumb of one may stay behind in the air: it joins nothing and bounds
/// nothing.
void erase_stray(std::vector<Edge>& edges) {
  const auto is_crumb = [](const Edge& edge) {
    const Point along = edge.to - edge.from;
    return dot(along, along) < kAside * kAside;
  };
  const auto joins = [&](const Edge& crumb, const Edge& other) {
    return !is_crumb(other) &&
           std::min(std::min(distance(crumb.from, other.from), distance(crumb.from, other.to)),
                    std::min(distance(crumb.to, other.from), distance(crumb.to, other.to))) < kOpen;
  };
  for (std::size_t i = edges.size(); i-- > 0;) {
    const Edge crumb = edges[i];
    if (!is_crumb(crumb)) continue;
    const bool joined =
        std::any_of(edges.begin(), edges.end(), [&](const Edge& other) { return joins(crumb, other); });
    if (!joined) edges.erase(edges.begin() + static_cast<std::ptrdiff_t>(i));
  }
}

/// Whether every piece ends where another begins, as far as sums tell that come to nothing round any closed
/// outline.
bool closes(const std::vector<Edge>& edges) {
  constexpr double kClosed = 1e-9;  // mm, and mm² of the squares
  Point along;
  double squares = 0;
  for (const Edge& edge : edges) {
    along = along + (edge.to - edge.from);
    squares += dot(edge.to - edge.from, edge.to + edge.from);
  }
  return std::abs(along.x) + std::abs(along.y) + std::abs(squares) < kClosed;
}

/// What straight pieces between open ends add to the area. Of all ends and beginnings the two nearest are
/// joined first, then the nearest of the rest; two that are each the other's nearest are joined in any case.
double area_between_ends(const std::vector<Edge>& edges) {
  std::vector<Point> ends, begins;
  for (const Edge& edge : edges) {
    ends.push_back(edge.to);
    begins.push_back(edge.from);
  }
  const auto nearest = [](Point to, const std::vector<Point>& among) {
    std::size_t out = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < among.size(); ++i) {
      const Point gap = among[i] - to;
      if (dot(gap, gap) >= least) continue;
      least = dot(gap, gap);
      out = i;
    }
    return out;
  };
  double twice = 0;
  while (!ends.empty()) {
    const std::size_t left = ends.size();
    for (std::size_t i = ends.size(); i-- > 0;) {
      const std::size_t j = nearest(ends[i], begins);
      if (nearest(begins[j], ends) != i) continue;
      twice += cross(ends[i], begins[j]);
      ends[i] = ends.back();
      ends.pop_back();
      begins[j] = begins.back();
      begins.pop_back();
    }
    if (ends.size() == left) break;
  }
  return twice / 2;
}

/// Where outlines part by less than kSame, or a crumb is dropped, ends stay open. The gap is a hair, but its
/// share of the area is as long as it is far from the origin.
double enclosed_area(const std::vector<Edge>& edges) {
  return arrisline::area(edges) + (closes(edges) ? 0 : area_between_ends(edges));
}

/// Appends the parts of `edge` outside the sweep; a part that lies along the sweep's outline is kept when
/// the wood to its left is outside. ts: where the edge meets the outline. Returns whether anything was
/// dropped.
bool keep_outside(const Measured& whole, const Sweep& sweep, std::vector<double>& ts,
                  std::vector<Edge>& out) {
  return split(whole, ts, out, [&](double t, double) {
    const Point p = whole.at(t);
    const double depth = sweep.depth(p);
    if (std::abs(depth) > kSame) return depth < 0;
    return sweep.depth(p + kAside * whole.left_of(p)) < 0;
  });
}

/// What one cut works with.
struct Scratch {
  std::vector<Measured> near;  // pieces of the wood that the sweep may meet
  std::vector<Edge> left;      // pieces of what it leaves
  std::vector<double> ts;
  std::vector<Point> places;  // where the outline of the sweep may come into the wood or go out of it
  std::vector<Edge> outline;  // of the sweep

  void clear() {
    near.clear();
    left.clear();
    places.clear();
    outline.clear();
  }
};

}  // namespace

Wood::Wood(Loop outline) : edges_(outline), area_(arrisline::area(edges_)) {
  Base base;
  for (const Edge& edge : outline) base.far = std::max(base.far, norm(edge.from));
  base.far = 4 * base.far + 100;
  base.rectangle = is_upright_rectangle(outline);
  if (base.rectangle) {
    const Point a = outline[0].from, b = outline[2].from;
    base.low = {std::min(a.x, b.x), std::min(a.y, b.y)};
    base.high = {std::max(a.x, b.x), std::max(a.y, b.y)};
  }
  base.outline = std::move(outline);
  base_ = std::make_shared<const Base>(std::move(base));
}

bool Wood::contains(Point p) const {
  return depth(p) >= 0;
}

double Wood::depth(Point p) const {
  constexpr double kOut = -std::numeric_limits<double>::infinity();
  double least = 0;
  if (base_->rectangle) {
    const Point low = base_->low, high = base_->high;
    least = std::min(std::min(p.x - low.x, high.x - p.x), std::min(p.y - low.y, high.y - p.y));
    if (least < 0) return kOut;
  } else if (!arrisline::contains(base_->outline, p)) {
    return kOut;
  }
  for (const Sweep& cut : cuts_) {
    const double depth = cut.depth(p);
    if (depth > 0) return kOut;
    least = std::min(least, -depth);
  }
  return least;
}

bool Wood::Strip::beside(const Edge& edge) const {
  return lies_beside(edge, at, e, reach);
}

Wood Wood::strip(const Sweep& sole) const {
  Wood out = *this;
  out.strip_ = Strip{sole.pose().at, sole.e(), sole.half() + kBesideSole};
  std::erase_if(out.edges_, [&](const Edge& edge) { return out.strip_->beside(edge); });
  return out;
}

std::uint64_t wood_work() {
  return work_done;
}

void count_work(std::uint64_t pieces) {
  work_done += pieces;
}

double Wood::cut(const Sweep& sweep) {
  work_done += edges_.size();
  // Asking for room anew at every cut would take a tenth of its time.
  static thread_local Scratch scratch;
  scratch.clear();
  std::vector<Measured>& near = scratch.near;
  std::vector<Edge>& left = scratch.left;
  std::vector<double>& ts = scratch.ts;
  std::vector<Point>& places = scratch.places;
  const auto add_if_on_outline = [&](Point p, double depth) {
    const bool on = std::abs(depth) < 2 * kOpen;
    if (on) places.push_back(p);
    return on;
  };
  bool touched = false;
  for (const Edge& edge : edges_) {
    const Measured old(edge);
    if (sweep.clear_of(old, kOpen)) {
      left.push_back(edge);
      continue;
    }
    const double from = sweep.depth(edge.from), to = sweep.depth(edge.to);
    if (!edge.is_arc() && from > kOpen && to > kOpen && sweep.is_convex()) {
      touched = true;
      continue;
    }
    ts.clear();
    sweep.crossings(old, 0, ts);
    sweep.partings(old, ts);
    // Where two ends do not quite meet, the outline may slip out of the wood between them.
    add_if_on_outline(edge.from, from);
    add_if_on_outline(edge.to, to);
    std::erase_if(ts, [&](double t) {
      const Point p = old.at(t);
      return !add_if_on_outline(p, sweep.depth(p));
    });
    touched = keep_outside(old, sweep, ts, left) || touched;
    near.push_back(old);
  }
  // A strip's sole may lie within the wood, all of what lies over it being left out.
  if (!touched && near.empty() && !strip_) return 0;
  sweep.add_boundary(base_->far, scratch.outline);
  for (const Edge& sides : scratch.outline) {
    if (strip_ && strip_->beside(sides)) continue;
    ts.clear();
    const Measured edge(sides);
    for (const Point place : places) cross_at(edge, place, ts, kOpen);
    if (strip_) {
      // Beyond the strip nothing is known of the old pieces, so the new one ends there.
      const Point along = {-strip_->e.y, strip_->e.x};
      cross_line(edge, strip_->at + strip_->reach * strip_->e, along, ts);
      cross_line(edge, strip_->at - strip_->reach * strip_->e, along, ts);
    }
    const std::size_t before = left.size();
    split(edge, ts, left, [&](double t, double stretch) {
      const Point p = edge.at(t);
      if (strip_ && std::abs(dot(p - strip_->at, strip_->e)) > strip_->reach) return false;
      // Between two earlier poses side by side, or one and the end of the stick, there is a line that lies in
      // neither, and yet is no wood. The new piece may run along it or meet it just here: the wood has to be
      // there on the left and ahead as well.
      const double deep = depth(p);
      if (deep < 0) return false;
      if (deep > 2 * kAside) return true;
      const Point left_side = edge.left_of(p), ahead = {left_side.y, -left_side.x};
      if (!contains(p + kAside * left_side)) return false;
      if (!contains(p + std::min(kAside, stretch / 4) * ahead)) return false;
      return std::none_of(near.begin(), near.end(),
                          [&](const Measured& old) { return distance(p, old.edge()) <= kSame; });
    });
    touched = touched || left.size() > before;
  }
  if (!touched) return 0;
  erase_stray(left);
  edges_.swap(left);
  cuts_.push_back(sweep);
  if (strip_) return 0;
  const double before = area_;
  area_ = enclosed_area(edges_);
  return before - area_;
}

}  // namespace arrisline
