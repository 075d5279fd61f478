// Joins of least cost first, then 2-opt (G. A. Croes, Operations Research 6, 1958) and or-opt (I. Or, 1976)
// over near neighbours, with turns counted. Shown by tests/trace/tour_test.cpp.
#include "trace/tour.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>

#include "trace/near_points.h"

namespace arrisline {
namespace {

constexpr std::size_t kNeighbours = 10;
constexpr std::size_t kLongestMoved = 3;    // places of a stretch that is moved elsewhere
constexpr std::size_t kShortestRemade = 4;  // places of a stretch that is taken out and put back
constexpr int kMostPasses = 60;             // some five are usual
constexpr double kTurn = 1;                 // what a turn costs beside length

double turn_cost(Point a, Point b, Point c) {
  const Point in = b - a;
  const Point out = c - b;
  const double one = norm(in);
  const double other = norm(out);
  if (one == 0 || other == 0) return 0;
  return kTurn * std::min(one, other) * (1 - dot(in, out) / (one * other));
}

/// Sets of places joined so far.
class Sets {
 public:
  explicit Sets(std::size_t count) : to_(count) { std::iota(to_.begin(), to_.end(), std::size_t{0}); }
  std::size_t of(std::size_t i) {
    while (to_[i] != i) i = to_[i] = to_[to_[i]];
    return i;
  }
  void join(std::size_t a, std::size_t b) { to_[of(a)] = of(b); }

 private:
  std::vector<std::size_t> to_;
};

struct Join {
  double cost = 0;
  std::size_t a = 0, b = 0;
};

/// A way made of the joins of least cost, of those between near neighbours and then of those between ends.
class FirstWay {
 public:
  FirstWay(const std::vector<Point>& places, const std::vector<Point>& along)
      : places_(places), along_(along), sets_(places.size()), joined_(places.size()) {}

  std::vector<std::size_t> found(const std::vector<std::vector<std::size_t>>& near) {
    std::vector<Join> joins;
    for (std::size_t i = 0; i < places_.size(); ++i)
      for (const std::size_t j : near[i])
        if (i < j || std::find(near[j].begin(), near[j].end(), i) == near[j].end())
          joins.push_back(join(i, j));
    take(joins);
    // Pairs of ends are as many as the square of their number: the nearest of each are enough, again and
    // again, since each round joins at least the nearest pair.
    for (std::vector<std::size_t> ends = ends_now(); ends.size() > 2; ends = ends_now()) {
      std::vector<Point> at;
      for (const std::size_t i : ends) at.push_back(places_[i]);
      const NearPoints near_ends(at, 0);
      joins.clear();
      for (std::size_t k = 0; k < ends.size(); ++k) {
        for (const std::size_t other : near_ends.nearest(at[k], kNeighbours))
          if (other != k && sets_.of(ends[k]) != sets_.of(ends[other]))
            joins.push_back(join(ends[k], ends[other]));
      }
      if (joins.empty()) {
        for (std::size_t k = 1; k < ends.size(); ++k)
          if (sets_.of(ends[0]) != sets_.of(ends[k])) joins.push_back(join(ends[0], ends[k]));
      }
      if (!take(joins)) break;
    }
    return walked();
  }

 private:
  struct Joined {
    std::array<std::size_t, 2> to{};
    std::size_t count = 0;
  };

  Join join(std::size_t a, std::size_t b) const {
    const Point step = places_[b] - places_[a];
    const double long_ = norm(step);
    if (long_ == 0) return {0, a, b};
    const double across_a = cross(along_[a], step) / long_;
    const double across_b = cross(along_[b], step) / long_;
    return {long_ * (1 + 2 * (across_a * across_a + across_b * across_b)), a, b};
  }

  bool take(std::vector<Join>& joins) {
    std::sort(joins.begin(), joins.end(), [](const Join& one, const Join& other) {
      return one.cost != other.cost ? one.cost < other.cost
             : one.a != other.a     ? one.a < other.a
                                    : one.b < other.b;
    });
    bool any = false;
    for (const Join& j : joins) {
      if (joined_[j.a].count == 2 || joined_[j.b].count == 2 || sets_.of(j.a) == sets_.of(j.b)) continue;
      joined_[j.a].to[joined_[j.a].count++] = j.b;
      joined_[j.b].to[joined_[j.b].count++] = j.a;
      sets_.join(j.a, j.b);
      any = true;
    }
    return any;
  }

  /// A place not joined at all is an end twice over, and stands here once.
  std::vector<std::size_t> ends_now() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < joined_.size(); ++i)
      if (joined_[i].count < 2) out.push_back(i);
    return out;
  }

  std::vector<std::size_t> walked() const {
    std::vector<std::size_t> out;
    std::size_t at = 0;
    while (at + 1 < joined_.size() && joined_[at].count == 2) ++at;
    std::size_t before = at;
    while (true) {
      out.push_back(at);
      std::size_t next = at;
      for (std::size_t k = 0; k < joined_[at].count; ++k)
        if (joined_[at].to[k] != before) next = joined_[at].to[k];
      if (next == at) break;
      before = at;
      at = next;
    }
    return out;
  }

  const std::vector<Point>& places_;
  const std::vector<Point>& along_;
  Sets sets_;
  std::vector<Joined> joined_;
};

class Bettering {
 public:
  Bettering(const std::vector<Point>& places, std::vector<std::size_t> way,
            const std::vector<std::vector<std::size_t>>& near)
      : places_(places), way_(std::move(way)), near_(near), at_(way_.size()) {
    renumber(0, way_.size());
  }

  std::vector<std::size_t> run() {
    do {
      settle();
    } while (remakes_any());
    return std::move(way_);
  }

 private:
  using Index = std::ptrdiff_t;
  static constexpr double kBetter = 1e-9;  // mm: less is rounding

  void settle() {
    for (int pass = 0; pass < kMostPasses; ++pass) {
      bool any = false;
      for (std::size_t place = 0; place < way_.size(); ++place) {
        while (reverses_one(place)) any = true;
        while (moves_one(place)) any = true;
      }
      if (!any) break;
    }
  }

  /// Takes a stretch out of the way and puts its places back one by one where each costs least. That undoes
  /// what no small change does: a way that goes up a line by every other place and comes back by the rest.
  bool remakes_any() {
    bool any = false;
    for (std::size_t count = kShortestRemade; count < way_.size(); count *= 2) {
      for (std::size_t first = 0; first < way_.size(); first += count / 2) {
        std::vector<std::size_t> tried = remade(first, std::min(count, way_.size() - first));
        if (cost_of_way(places_, tried) > cost_of_way(places_, way_) - kBetter) continue;
        way_ = std::move(tried);
        renumber(0, way_.size());
        any = true;
      }
    }
    return any;
  }

  std::vector<std::size_t> remade(std::size_t first, std::size_t count) const {
    std::vector<std::size_t> out;
    const std::size_t end = first + count;
    for (std::size_t i = 0; i < way_.size(); ++i)
      if (i < first || i >= end) out.push_back(way_[i]);
    constexpr std::size_t kOut = std::numeric_limits<std::size_t>::max();
    std::vector<std::size_t> at(way_.size(), kOut);
    for (std::size_t i = 0; i < out.size(); ++i) at[out[i]] = i;
    std::size_t last = first;  // where the one before was put: the next may always be put there
    for (std::size_t k = first; k < end; ++k) {
      const std::size_t place = way_[k];
      double least = std::numeric_limits<double>::infinity();
      std::size_t best = 0;
      auto look = [&](std::size_t before) {
        const double more = cost_put_in(out, place, before);
        if (more < least) least = more, best = before;
      };
      look(std::min(last, out.size()));
      for (const std::size_t other : near_[place])
        if (at[other] != kOut) look(at[other]), look(at[other] + 1);
      out.insert(out.begin() + static_cast<Index>(best), place);
      for (std::size_t i = best; i < out.size(); ++i) at[out[i]] = i;
      last = best + 1;
    }
    return out;
  }

  /// What `place` costs more between way[before - 1] and way[before].
  double cost_put_in(const std::vector<std::size_t>& way, std::size_t place, std::size_t before) const {
    std::array<std::size_t, 5> window{};
    std::size_t count = 0;
    std::size_t middle = 0;
    for (std::size_t i = before < 2 ? 0 : before - 2; i < std::min(way.size(), before + 2); ++i) {
      if (i == before) middle = count++;
      window[count++] = way[i];
    }
    if (before == way.size()) middle = count++;
    double out = 0;
    for (const bool with : {true, false}) {
      std::array<std::size_t, 5> now{};
      std::size_t n = 0;
      for (std::size_t i = 0; i < count; ++i) {
        if (i == middle && !with) continue;
        now[n++] = i == middle ? place : window[i];
      }
      double sum = 0;
      for (std::size_t i = 1; i < n; ++i) {
        sum += distance(places_[now[i - 1]], places_[now[i]]);
        if (i > 1) sum += turn_cost(places_[now[i - 2]], places_[now[i - 1]], places_[now[i]]);
      }
      out += with ? sum : -sum;
    }
    return out;
  }

  Index size() const { return static_cast<Index>(way_.size()); }
  bool is_on(Index i) const { return i >= 0 && i < size(); }
  Point point(Index i) const { return places_[way_[static_cast<std::size_t>(i)]]; }
  void renumber(std::size_t first, std::size_t end) {
    for (std::size_t i = first; i < end; ++i) at_[way_[i]] = i;
  }

  // Steps and turns between places of the way as it is; nothing where one of them is beyond its ends.
  double step(Index a, Index b) const { return is_on(a) && is_on(b) ? distance(point(a), point(b)) : 0; }
  double turn(Index a, Index b, Index c) const {
    return is_on(a) && is_on(b) && is_on(c) ? turn_cost(point(a), point(b), point(c)) : 0;
  }

  /// What is gained by turning the stretch from `first` to `last` about.
  double gain_of_reversal(Index first, Index last) const {
    const Index a = first - 1;
    const Index b = last + 1;
    const double now = turn(a - 1, a, first) + step(a, first) + turn(a, first, first + 1) +
                       turn(last - 1, last, b) + step(last, b) + turn(last, b, b + 1);
    const double then = turn(a - 1, a, last) + step(a, last) + turn(a, last, last - 1) +
                        turn(first + 1, first, b) + step(first, b) + turn(first, b, b + 1);
    return now - then;
  }

  bool reverse_if_better(Index first, Index last) {
    if (first >= last || (first == 0 && last == size() - 1)) return false;
    if (gain_of_reversal(first, last) < kBetter) return false;
    std::reverse(way_.begin() + first, way_.begin() + last + 1);
    renumber(static_cast<std::size_t>(first), static_cast<std::size_t>(last + 1));
    return true;
  }

  bool reverses_one(std::size_t place) {
    const auto i = static_cast<Index>(at_[place]);
    // An end of the way may be brought anywhere: the stretch from this place to the end is turned about.
    if (reverse_if_better(i, size() - 1) || reverse_if_better(0, i)) return true;
    for (const std::size_t other : near_[place]) {
      const auto j = static_cast<Index>(at_[other]);
      const Index low = std::min(i, j);
      const Index high = std::max(i, j);
      // Makes the two neighbours in the way, on this side and on that.
      if (reverse_if_better(low + 1, high) || reverse_if_better(low, high - 1)) return true;
    }
    return false;
  }

  /// Puts places [first, first + count) after the place that now stands at `after`, turned about or not.
  bool move_if_better(Index first, Index count, Index after) {
    const Index last = first + count - 1;
    if (after >= first - 1 && after <= last) return false;
    // What changes are the surroundings of the gap left and of the gap filled. Two windows where they are far
    // apart, one where they are near.
    constexpr Index kNear = 8;
    const bool forth = after > last;
    const Index low = forth ? first : after + 1;
    const Index high = forth ? after : last;
    std::vector<std::size_t>& now = now_;
    std::vector<std::size_t>& then = then_;
    auto at = [&](Index i) { return way_[static_cast<std::size_t>(i)]; };
    for (const bool turned : {false, true}) {
      if (turned && count == 1) break;
      auto put_moved = [&] {
        for (Index k = 0; k < count; ++k) then.push_back(at(turned ? last - k : first + k));
      };
      double gain = 0;
      if (high - low < 2 * kNear) {
        now.clear(), then.clear();
        const Index from = std::max<Index>(0, low - 2);
        const Index to = std::min(size() - 1, high + 2);
        for (Index i = from; i <= to; ++i) now.push_back(at(i));
        for (Index i = from; i < low; ++i) then.push_back(at(i));
        if (!forth) put_moved();
        for (Index i = low; i <= high; ++i)
          if (i < first || i > last) then.push_back(at(i));
        if (forth) put_moved();
        for (Index i = high + 1; i <= to; ++i) then.push_back(at(i));
        gain = cost_of_way(places_, now) - cost_of_way(places_, then);
      } else {
        now.clear(), then.clear();
        for (Index i = std::max<Index>(0, first - 2); i <= std::min(size() - 1, last + 2); ++i) {
          now.push_back(at(i));
          if (i < first || i > last) then.push_back(at(i));
        }
        gain = cost_of_way(places_, now) - cost_of_way(places_, then);
        now.clear(), then.clear();
        for (Index i = std::max<Index>(0, after - 1); i <= std::min(size() - 1, after + 2); ++i)
          now.push_back(at(i));
        for (Index i = std::max<Index>(0, after - 1); i <= after; ++i) then.push_back(at(i));
        put_moved();
        for (Index i = after + 1; i <= std::min(size() - 1, after + 2); ++i) then.push_back(at(i));
        gain += cost_of_way(places_, now) - cost_of_way(places_, then);
      }
      if (gain < kBetter) continue;
      if (turned) std::reverse(way_.begin() + first, way_.begin() + last + 1);
      if (forth) {
        std::rotate(way_.begin() + first, way_.begin() + last + 1, way_.begin() + after + 1);
      } else {
        std::rotate(way_.begin() + after + 1, way_.begin() + first, way_.begin() + last + 1);
      }
      renumber(static_cast<std::size_t>(low), static_cast<std::size_t>(high + 1));
      return true;
    }
    return false;
  }

  bool moves_one(std::size_t place) {
    const auto i = static_cast<Index>(at_[place]);
    for (Index count = 1; count <= static_cast<Index>(kLongestMoved); ++count) {
      for (const Index first : {i, i - count + 1}) {
        if (!is_on(first) || !is_on(first + count - 1) || count >= size() - 1) continue;
        for (const std::size_t other : near_[place]) {
          const auto j = static_cast<Index>(at_[other]);
          if (move_if_better(first, count, j) || move_if_better(first, count, j - 1)) return true;
        }
        if (count == 1) break;
      }
    }
    return false;
  }

  const std::vector<Point>& places_;
  std::vector<std::size_t> way_;
  const std::vector<std::vector<std::size_t>>& near_;
  std::vector<std::size_t> at_;  // of each place: where in the way it stands
  std::vector<std::size_t> now_, then_;
};

}  // namespace

double cost_of_way(const std::vector<Point>& places, const std::vector<std::size_t>& way) {
  double out = 0;
  for (std::size_t i = 1; i < way.size(); ++i) {
    out += distance(places[way[i - 1]], places[way[i]]);
    if (i > 1) out += turn_cost(places[way[i - 2]], places[way[i - 1]], places[way[i]]);
  }
  return out;
}

std::vector<std::size_t> shortest_way(const std::vector<Point>& places, const std::vector<Point>& along) {
  if (places.size() < 3) {
    std::vector<std::size_t> out(places.size());
    std::iota(out.begin(), out.end(), std::size_t{0});
    return out;
  }
  const NearPoints grid(places, 0);
  std::vector<std::vector<std::size_t>> near(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) {
    near[i] = grid.nearest(places[i], kNeighbours + 1);
    near[i].erase(std::remove(near[i].begin(), near[i].end(), i), near[i].end());
  }
  return Bettering(places, FirstWay(places, along).found(near), near).run();
}

}  // namespace arrisline
