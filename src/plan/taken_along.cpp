// Shown by tests/plan/taken_along_test.cpp.
#include "plan/taken_along.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "geometry/crossing.h"
#include "plan/rest.h"

namespace arrisline {

namespace {

/// mm beside the end of a piece at which the wood there is measured: beyond the hairs by which ends may miss
/// each other, and nothing to a shaving.
constexpr double kBeside = 1e-4;

/// mm above the sole from which on air between two layers of wood counts: less is rounding.
constexpr double kAir = 1e-3;

/// A piece of the boundary in the sole's own frame.
struct Strand {
  const Edge* edge;
  Point from, to;    // u, v
  Point centre;      // of an arc
  double r = 0;      // of an arc
  double low, high;  // u between which it lies
};

/// The wood over a sole, place by place across it.
class Over {
 public:
  Over(std::span<const Edge> edges, const Sweep& sweep) : sweep_(sweep), most_(sweep.half() - kBeside) {
    strands_.clear();
    const double lowest = std::min(0.0, sole_height(sweep.plane(), most_));
    for (const Edge& edge : edges) {
      Strand s{
          &edge, {sweep.u(edge.from), sweep.v(edge.from)}, {sweep.u(edge.to), sweep.v(edge.to)}, {}, 0, 0, 0};
      s.low = std::min(s.from.x, s.to.x);
      s.high = std::max(s.from.x, s.to.x);
      double top = std::max(s.from.y, s.to.y);
      if (edge.is_arc()) {
        s.centre = {sweep.u(edge.centre), sweep.v(edge.centre)};
        s.r = radius(edge);
        s.low = s.centre.x - s.r;
        s.high = s.centre.x + s.r;
        top = s.centre.y + s.r;
      }
      if (s.high < -most_ || s.low > most_ || top < lowest) continue;
      strands_.push_back(s);
    }
  }

  /// Some wood above the sole has a lower side there.
  bool has_air_under() const {
    return std::any_of(strands_.begin(), strands_.end(), [&](const Strand& s) {
      // Wood lies to the left: over what runs against e.
      if (s.r == 0 && s.to.x > s.from.x - kBeside) return false;
      const double from = std::max(s.low, -most_), to = std::min(s.high, most_);
      const int places = s.r > 0 ? 8 : 3;
      for (int i = 0; i < places; ++i) {
        if (lower_side_above(from + (to - from) * (i + 0.5) / places, s)) return true;
      }
      return false;
    });
  }

  /// mm of wood over one place.
  double at(double u) const {
    const double sole = sole_height(sweep_.plane(), u);
    double sum = 0;
    for (const Strand& s : strands_) {
      meet(s, u, sole, [&](double height, bool upper) { sum += upper ? height : -height; });
    }
    return sum;
  }

  /// Places between which the wood changes smoothly, first those where it stands highest.
  std::vector<double> places() const {
    struct Place {
      double height, u;
    };
    static thread_local std::vector<Place> all;
    all.clear();
    const auto add = [&](double u, double v) {
      const double height = v - sole_height(sweep_.plane(), std::clamp(u, -most_, most_));
      for (const double beside : {u - kBeside, u + kBeside}) {
        if (std::abs(beside) <= most_) all.push_back({height, beside});
      }
    };
    for (const Strand& s : strands_) {
      ts_.clear();
      const Measured measured(*s.edge);
      peaks(measured, sweep_, ts_);
      if (s.r > 0) extremes_along(measured, sweep_.e(), ts_);
      for (const double t : ts_) {
        const Point p = measured.at(t);
        add(sweep_.u(p), sweep_.v(p));
      }
      add(s.from.x, s.from.y);
      add(s.to.x, s.to.y);
      for (const double side : {-most_, most_}) {
        meet(s, side, sole_height(sweep_.plane(), side), [&](double height, bool) {
          all.push_back({height, side});
        });
      }
    }
    std::sort(all.begin(), all.end(), [](const Place& a, const Place& b) {
      return a.height != b.height ? a.height > b.height : a.u < b.u;
    });
    std::vector<double> out;
    out.reserve(all.size());
    for (const Place& place : all) out.push_back(place.u);
    return out;
  }

 private:
  /// Calls `with` with the height over the sole of each place of the strand above it at u, and whether wood
  /// ends there upward.
  template <class With>
  void meet(const Strand& s, double u, double sole, const With& with) const {
    if (u < s.low || u > s.high) return;
    if (s.r == 0) {
      if ((s.from.x < u) == (s.to.x < u)) return;
      const double v = s.from.y + (u - s.from.x) / (s.to.x - s.from.x) * (s.to.y - s.from.y);
      if (v > sole) with(v - sole, s.to.x > s.from.x);
      return;
    }
    const double aside = u - s.centre.x;
    const double rise = std::sqrt(std::max(0.0, s.r * s.r - aside * aside));
    for (const double up : {1.0, -1.0}) {
      const double v = s.centre.y + up * rise;
      if (v <= sole || !spoke_meets(*s.edge, aside * sweep_.e() + up * rise * sweep_.a())) continue;
      // What turns left runs with e where it is over its centre.
      with(v - sole, (up > 0) == (s.edge->turn == Turn::left));
    }
  }

  bool lower_side_above(double u, const Strand& s) const {
    bool out = false;
    meet(s, u, sole_height(sweep_.plane(), u),
         [&](double height, bool upper) { out = out || (!upper && height > kAir); });
    return out;
  }

  const Sweep& sweep_;
  double most_;
  // Asked so often that room made anew each time would count.
  static thread_local std::vector<Strand> strands_;
  static thread_local std::vector<double> ts_;
};

thread_local std::vector<Strand> Over::strands_;
thread_local std::vector<double> Over::ts_;

}  // namespace

double thickest_taken(std::span<const Edge> edges, const Sweep& sweep) {
  const double height = std::max(0.0, rest_height(edges, sweep));
  if (height < kAir) return height;
  const Over over(edges, sweep);
  if (!over.has_air_under()) return height;
  struct Known {
    double u, thick;
  };
  std::vector<Known> known;
  double best = 0;
  for (const double u : over.places()) {
    known.push_back({u, over.at(u)});
    best = std::max(best, known.back().thick);
    if (best > height - kAir) return height;
  }
  // Between two places the sum of several layers may be greater than at either.
  std::sort(known.begin(), known.end(), [](const Known& a, const Known& b) { return a.u < b.u; });
  for (std::size_t i = 1; i < known.size(); ++i) {
    double low = known[i - 1].u, high = known[i].u;
    if (high - low < 4 * kBeside) continue;
    const double middle = over.at((low + high) / 2);
    if (middle <= std::max(known[i - 1].thick, known[i].thick)) continue;
    best = std::max(best, middle);
    constexpr double kGolden = 0.6180339887498949;
    constexpr int kSteps = 12;
    for (int step = 0; step < kSteps; ++step) {
      const double left = high - kGolden * (high - low), right = low + kGolden * (high - low);
      const double at_left = over.at(left), at_right = over.at(right);
      best = std::max({best, at_left, at_right});
      (at_left < at_right ? low : high) = at_left < at_right ? left : right;
    }
  }
  return std::min(best, height);
}

}  // namespace arrisline
