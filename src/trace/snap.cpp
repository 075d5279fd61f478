// Each simplification is tried by fitting anew with it held. Shown by tests/trace/round_trip_test.cpp.
#include "trace/snap.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "trace/left_out.h"

namespace arrisline {
namespace {

constexpr double kMostTurn =
    25;  // degrees between two links from which nobody would call the joint smooth, or a cusp

// Degrees that a joint may be off smooth, and yet be no corner but what scatter makes of it.
constexpr double kLeastCorner = 2.5;

/// By how much a joint is off smooth, in degrees.
double off_smooth(const FlatsAndArcs& line, std::size_t joint) {
  // A cusp turns by all but 180 degrees; a little less than that, and its two sides cross.
  const double turn = turn_at(line, joint);
  return std::min(turn, 180 - turn);
}

class Snapper {
 public:
  /// The joints `corners` are not made smooth.
  Snapper(const Samples& samples, Fitted& fitted, Held& held, const SnapOptions& options,
          const Allowed& allowed, const std::vector<std::size_t>& corners)
      : samples_(samples),
        fitted_(fitted),
        held_(held),
        options_(options),
        allowed_(allowed),
        corners_(corners) {}

  void run() {
    refit();
    by_figures_ = drawn_by_figures(fitted_, allowed_);
    if (by_figures_)
      most_ = std::min(1.0, fitted_.worst + (kOffExact + allowed_.rounded) / allowed_.tolerance);
    flats_square();
    joints_smooth();
    widths();
    levels(true);
    radii();
    levels(false);
  }

  /// Joints that are smooth now and had a corner before, as far as the line then told.
  const std::vector<std::size_t>& smoothed() const { return smoothed_; }

  /// Whether the line is a drawing's, and followed it by figures before any was made whole.
  bool is_exactly_drawn() const { return by_figures_ && allowed_.scatter == 0; }

  /// The whole divisions about a joint, where it lies now and where it lay at first, itself where it lies at
  /// them both ways.
  std::vector<Point> whole_places(std::size_t joint, Point at_first) const {
    const Point p = fitted_.line.joints[joint];
    const bool both = !is_whole(p.x) && !is_whole(p.y);
    const auto about = [&](double value, double first) {
      if (is_whole(value)) return std::vector{nearest(value)};
      const double division = options_.division;
      std::vector<double> out;
      for (const double one : {value, first}) {
        const double below = division * std::floor(one / division);
        for (const int more : both ? std::vector{0, 1} : std::vector{-1, 0, 1, 2})
          out.push_back(below + more * division);
      }
      std::sort(out.begin(), out.end());
      out.erase(std::unique(out.begin(), out.end()), out.end());
      return out;
    };
    std::vector<Point> out;
    for (const double x : about(p.x, at_first.x))
      for (const double y : about(p.y, at_first.y)) out.push_back({x, y});
    return out;
  }

  /// Levels and radii of the line that are whole, each once.
  int whole_figures() const {
    if (options_.division <= 0) return 0;
    int out = 0;
    for (std::size_t j = 0; j <= links(); ++j) {
      const Point p = fitted_.line.joints[j];
      const Held::Axis along = j > 0 ? held_.axis[j - 1] : Held::Axis::free;
      out += along != Held::Axis::upright && is_whole(p.x) ? 1 : 0;
      out += along != Held::Axis::level && is_whole(p.y) ? 1 : 0;
    }
    for (std::size_t i = 0; i < links(); ++i) out += held_.radius[i] ? 1 : 0;
    return out;
  }

 private:
  std::size_t links() const { return fitted_.line.size(); }

  void refit() { fitted_ = fit(samples_, fitted_, held_, allowed_); }

  /// Keeps the change where the line goes on following the samples about as nearly; where it was asked for of
  /// some links, as nearly as is allowed.
  bool keeps(const std::function<void(Held&)>& change, const std::vector<std::size_t>& asked_for = {}) {
    Held tried = held_;
    change(tried);
    const Fitted next = fit(samples_, fitted_, tried, allowed_);
    const double more = next.squares - fitted_.squares;
    double chance = 2 * figure_cost(samples_.points.size()) * variance_of(allowed_);
    for (const std::size_t link : asked_for) {
      // An arc of another radius departs to one side in its middle and to the other at its ends, on the whole
      // by some half of what it does where it departs most.
      const double on_the_whole = allowed_.tolerance / 2;
      chance += static_cast<double>(distances_of(samples_, next, link).size()) * on_the_whole * on_the_whole;
    }
    if (next.worst > std::max(asked_for.empty() ? most_ : 1.0, fitted_.worst) || more > chance ||
        !sound(next))
      return false;
    held_ = tried;
    fitted_ = next;
    return true;
  }

  /// No link turned about or shrank to nothing.
  bool sound(const Fitted& next) const {
    for (std::size_t i = 0; i < links(); ++i) {
      const Edge now = edge_of(fitted_.line, i);
      const Edge then = edge_of(next.line, i);
      if (distance(then.from, then.to) < 0.2 * distance(now.from, now.to)) return false;
      if (now.turn != then.turn || dot(now.to - now.from, then.to - then.from) <= 0) return false;
    }
    return true;
  }

  void flats_square() {
    for (std::size_t i = 0; i < links(); ++i) {
      const Edge edge = edge_of(fitted_.line, i);
      if (edge.is_arc() || held_.axis[i] != Held::Axis::free) continue;
      const Point along = edge.to - edge.from;
      const bool level = std::abs(along.y) < std::abs(along.x);
      const double off = level ? std::abs(along.y) : std::abs(along.x);
      const std::size_t count = distances_of(samples_, fitted_, i).size();
      // A flat that no samples lie on but at its ends is only as sure as the gap it bridges.
      const double play =
          count < 3 ? 4 * samples_.spacing + 6 * allowed_.scatter
                    : allowed_.tolerance + 6 * allowed_.scatter / std::sqrt(static_cast<double>(count));
      if (off > 2 * play || off > 0.6 * norm(along)) continue;
      keeps([&](Held& held) { held.axis[i] = level ? Held::Axis::level : Held::Axis::upright; });
    }
  }

  void joints_smooth() {
    std::vector<std::pair<double, std::size_t>> turns;
    for (std::size_t j = 1; j < links(); ++j) {
      const Edge before = edge_of(fitted_.line, j - 1);
      const Edge after = edge_of(fitted_.line, j);
      if (!before.is_arc() && !after.is_arc()) continue;
      const double off = off_smooth(fitted_.line, j);
      const bool corner = std::find(corners_.begin(), corners_.end(), j) != corners_.end();
      if (off < kMostTurn && !corner) turns.emplace_back(off, j);
    }
    std::sort(turns.begin(), turns.end());
    for (const auto& [turn, j] : turns) {
      if (keeps([joint = j](Held& held) { held.smooth[joint] = true; }) &&
          (turn > kLeastCorner || is_exactly_drawn()))
        smoothed_.push_back(j);
    }
  }

  bool is_whole(double value) const {
    constexpr double kWhole = 1e-6;  // mm
    return options_.division > 0 && std::abs(value - nearest(value)) < kWhole;
  }
  double nearest(double value) const { return options_.division * std::round(value / options_.division); }

  /// Another joint's level is held, and by the flats between, level or upright or as wide as an iron, this
  /// one.
  bool is_settled(std::size_t joint, bool upright) const {
    const Held::Axis along = upright ? Held::Axis::upright : Held::Axis::level;
    const Held::Axis across = upright ? Held::Axis::level : Held::Axis::upright;
    const auto& at = upright ? held_.x : held_.y;
    const auto ties = [&](std::size_t link) {
      return held_.axis[link] == along || (held_.axis[link] == across && held_.chord[link]);
    };
    for (std::size_t j = joint; j > 0 && ties(j - 1); --j)
      if (at[j - 1]) return true;
    for (std::size_t j = joint; j < links() && ties(j); ++j)
      if (at[j + 1]) return true;
    return false;
  }

  /// Whether a flat is the floor of a groove: the line comes from out of the wood and goes back there.
  bool is_floor(std::size_t link) const {
    if (link == 0 || link + 1 >= links() || held_.axis[link] == Held::Axis::free) return false;
    const bool level = held_.axis[link] == Held::Axis::level;
    const auto deep = [&](std::size_t joint) {
      const Point p = fitted_.line.joints[joint];
      return level ? p.y : p.x;
    };
    return deep(link - 1) < deep(link) - allowed_.tolerance &&
           deep(link + 2) < deep(link + 1) - allowed_.tolerance;
  }

  void widths() {
    for (std::size_t i = 1; i + 1 < links(); ++i) {
      if (!is_floor(i) || held_.chord[i]) continue;
      const double wide = distance(fitted_.line.joints[i], fitted_.line.joints[i + 1]);
      const auto nearest =
          std::min_element(options_.widths.begin(), options_.widths.end(),
                           [wide](double a, double b) { return std::abs(a - wide) < std::abs(b - wide); });
      if (nearest == options_.widths.end() || std::abs(*nearest - wide) > allowed_.tolerance) continue;
      // It is the walls that move.
      keeps([&, i](Held& held) { held.chord[i] = *nearest; }, {i - 1, i + 1});
    }
  }

  void levels(bool of_flats) {
    if (options_.division <= 0) return;
    struct Level {
      double away = 0;
      std::size_t joint = 0;
      bool upright = false;
    };
    std::vector<Level> list;
    for (std::size_t j = 0; j <= links(); ++j) {
      const Point p = fitted_.line.joints[j];
      auto wanted = [&](Held::Axis axis) {
        return !of_flats || (j > 0 && held_.axis[j - 1] == axis) || (j < links() && held_.axis[j] == axis);
      };
      if (!held_.x[j] && wanted(Held::Axis::upright)) list.push_back({std::abs(p.x - nearest(p.x)), j, true});
      if (!held_.y[j] && wanted(Held::Axis::level)) list.push_back({std::abs(p.y - nearest(p.y)), j, false});
    }
    std::sort(list.begin(), list.end(), [](const Level& a, const Level& b) { return a.away < b.away; });
    for (const Level& level : list) {
      if (is_settled(level.joint, level.upright)) continue;
      const Point p = fitted_.line.joints[level.joint];
      keeps([&](Held& held) {
        if (level.upright) {
          held.x[level.joint] = nearest(p.x);
        } else {
          held.y[level.joint] = nearest(p.y);
        }
      });
    }
  }

  void radii() {
    for (std::size_t i = 0; i < links(); ++i) {
      const Edge edge = edge_of(fitted_.line, i);
      if (!edge.is_arc() || held_.radius[i]) continue;
      const double r = radius(edge);
      std::vector<double> asked_for = options_.preferred;
      std::sort(asked_for.begin(), asked_for.end(),
                [r](double a, double b) { return std::abs(a - r) < std::abs(b - r); });
      const auto takes = [&](double candidate, bool as_allowed) {
        constexpr double kNear = 1.25;  // a radius further off than this is another moulding's
        if (candidate > kNear * r || r > kNear * candidate) return false;
        return keeps([&](Held& held) { held.radius[i] = candidate; },
                     as_allowed ? std::vector{i} : std::vector<std::size_t>{});
      };
      const bool found = std::any_of(asked_for.begin(), asked_for.end(),
                                     [&](double candidate) { return takes(candidate, true); });
      if (!found && options_.division > 0 && nearest(r) > 0) takes(nearest(r), false);
    }
  }

  const Samples& samples_;
  Fitted& fitted_;
  Held& held_;
  const SnapOptions& options_;
  Allowed allowed_;
  const std::vector<std::size_t>& corners_;
  std::vector<std::size_t> smoothed_;
  double most_ = 1;  // share of what is allowed that a link may take up
  bool by_figures_ = false;
};

/// Of the squared distances of a drawing so many are left where its own figures are found.
constexpr double kLeft = 0.25;

/// Whether a drawing's line lies off it beside the joint by more than what its curves are off their chords.
bool lies_off(const Samples& samples, const Fitted& fitted, std::size_t joint) {
  constexpr double kOn = 0.0001;  // mm
  for (const std::size_t link : {joint - 1, joint})
    for (const double d : distances_of(samples, fitted, link))
      if (std::abs(d) > kOn) return true;
  return false;
}

/// Holds the joint of a drawing at that one of the places where the line lies nearest to it; false where that
/// is not much nearer than the smooth one lies.
bool begin_at_whole(const Samples& samples, Fitted& line, Held& held, std::size_t joint,
                    const std::vector<Point>& places, const Fitted& smooth, const Allowed& allowed) {
  constexpr double kOn = 0.002;  // mm off the drawing, as nearly as its samples show
  const Fitted start = line;
  const Held free = held;
  double least = smooth.squares;
  bool found = false;
  for (const Point& place : places) {
    if (distance_from(samples, place) >= kOn) continue;
    Held tried = free;
    tried.x[joint] = place.x;
    tried.y[joint] = place.y;
    const Fitted next = fit(samples, start, tried, allowed);
    if (next.squares >= least) continue;
    least = next.squares;
    line = next;
    held = tried;
    found = true;
  }
  return found;
}

}  // namespace

bool drawn_by_figures(const Fitted& fitted, const Allowed& allowed) {
  return allowed.scatter <= kFollowsExactly && fitted.worst * allowed.tolerance <= kFollowsExactly;
}

void snap(const Samples& samples, Fitted& fitted, Held& held, const SnapOptions& options,
          const Allowed& allowed) {
  // Beside a corner of a few degrees no figure comes out whole where it is taken for none.
  constexpr int kTells = 2;  // whole figures more, that make it one
  const Fitted before = fitted;
  const Held free = held;
  std::vector<std::size_t> corners;
  Snapper first(samples, fitted, held, options, allowed, corners);
  first.run();
  int whole = first.whole_figures();
  const bool exactly = first.is_exactly_drawn();
  // Whether figures are whole with a corner there that are not without.
  const auto takes = [&](std::size_t joint, Fitted line, Held its) {
    corners.push_back(joint);
    Snapper with_corner(samples, line, its, options, allowed, corners);
    with_corner.run();
    const int more = with_corner.whole_figures() - whole;
    if (more < kTells && !(exactly && more > 0 && line.squares < kLeft * fitted.squares)) {
      corners.pop_back();
      return false;
    }
    whole += more;
    fitted = std::move(line);
    held = std::move(its);
    return true;
  };
  for (const std::size_t joint : first.smoothed()) {
    if ((!exactly || off_smooth(before.line, joint) > kLeastCorner) && takes(joint, before, free)) continue;
    if (!exactly || !lies_off(samples, fitted, joint)) continue;
    // A joint of a drawing that is smooth but for a degree moves far along the line to become so, and the
    // line hardly off the drawing.
    const std::vector<Point> places = first.whole_places(joint, before.line.joints[joint]);
    Fitted begun = before;
    Held its = free;
    if (places.size() < 2) continue;
    if (begin_at_whole(samples, begun, its, joint, places, fitted, allowed) && takes(joint, begun, its))
      continue;
    if (before.squares < kLeft * fitted.squares) takes(joint, before, free);
  }
}

}  // namespace arrisline
