// Where a line meets itself: pairs of its pieces, found by the squares of a grid they both pass. Shown by
// tests/trace/crossings_test.cpp, which compares with every pair.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <set>
#include <string>
#include <utility>

#include "trace/one_line.h"

namespace arrisline {

namespace {

/// Pairs looked at, at most: seconds. Lines of a section are far from it; a hatching of lines that all but
/// touch is not.
constexpr std::size_t kMostPairs = 200'000'000;
/// Squares along the drawing, and along the line, at most: what they take in memory.
constexpr double kMostAcross = 1024;
constexpr double kMostAlong = 1e6;
/// Cross products below this share of what they are made of are nothing but rounding.
constexpr double kStraight = 1e-12;

enum class Meeting { none, crosses, touches, along };

int side(Point from, Point to, Point p) {
  const double left = cross(to - from, p - from);
  return left > 0 ? 1 : left < 0 ? -1 : 0;
}

Meeting meeting(Point a, Point b, Point c, Point d) {
  if (std::max(a.x, b.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(a.x, b.x))
    return Meeting::none;
  if (std::max(a.y, b.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(a.y, b.y))
    return Meeting::none;
  const int c_side = side(a, b, c);
  const int d_side = side(a, b, d);
  const int a_side = side(c, d, a);
  const int b_side = side(c, d, b);
  if (c_side * d_side > 0 || a_side * b_side > 0) return Meeting::none;
  if (c_side == 0 && d_side == 0 && a_side == 0 && b_side == 0) return Meeting::along;
  return c_side * d_side * a_side * b_side != 0 ? Meeting::crosses : Meeting::touches;
}

/// Where two pieces that meet do so; of pieces along one another, an end of one on the other.
Point meeting_place(Point a, Point b, Point c, Point d) {
  const Point first = b - a;
  const Point second = d - c;
  const double turn = cross(first, second);
  if (turn == 0) {
    const double length = dot(first, first);
    const double t = length > 0 ? std::clamp(dot(c - a, first) / length, 0.0, 1.0) : 0;
    return a + t * first;
  }
  return a + std::clamp(cross(c - a, second) / turn, 0.0, 1.0) * first;
}

struct Pieces {
  const DrawnLine& line;
  std::size_t count;

  explicit Pieces(const DrawnLine& of) : line(of), count(of.points.size() - (of.closed ? 0 : 1)) {}
  Point from(std::size_t i) const { return line.points[i]; }
  Point to(std::size_t i) const { return line.points[i + 1 < line.points.size() ? i + 1 : 0]; }
};

/// Piece j comes after piece i: it may turn any way but back over it.
bool turns_back(const Pieces& pieces, std::size_t i, std::size_t j) {
  const Point back = pieces.from(i) - pieces.to(i);
  const Point on = pieces.to(j) - pieces.from(j);
  return dot(back, on) > 0 && std::fabs(cross(back, on)) <= kStraight * norm(back) * norm(on);
}

struct Hit {
  std::size_t i = 0;
  std::size_t j = 0;
  Meeting how = Meeting::none;
};

Hit look_at(const Pieces& pieces, std::size_t i, std::size_t j) {
  if (i > j) std::swap(i, j);
  if (j == i + 1) return {i, j, turns_back(pieces, i, j) ? Meeting::along : Meeting::none};
  if (pieces.line.closed && i == 0 && j + 1 == pieces.count)
    return {i, j, turns_back(pieces, j, i) ? Meeting::along : Meeting::none};
  return {i, j, meeting(pieces.from(i), pieces.to(i), pieces.from(j), pieces.to(j))};
}

struct InSquare {
  std::uint64_t square = 0;
  std::size_t piece = 0;
  friend bool operator<(const InSquare& a, const InSquare& b) {
    return a.square != b.square ? a.square < b.square : a.piece < b.piece;
  }
};

/// Every square that a piece passes, and a little more, so that rounding leaves none out.
std::vector<InSquare> squares_of(const Pieces& pieces) {
  Extents extents;
  double length = 0;
  for (std::size_t i = 0; i < pieces.count; ++i) {
    extents.add(pieces.from(i));
    extents.add(pieces.to(i));
    length += distance(pieces.from(i), pieces.to(i));
  }
  const double side = std::max(length / kMostAlong, extents.size() / kMostAcross);
  const double slack = 1e-6;  // of a square
  std::vector<InSquare> squares;
  for (std::size_t i = 0; i < pieces.count; ++i) {
    Point from = (1 / side) * (pieces.from(i) - extents.least);
    Point to = (1 / side) * (pieces.to(i) - extents.least);
    if (from.x > to.x) std::swap(from, to);
    const double steep = to.x > from.x ? (to.y - from.y) / (to.x - from.x) : 0;
    const double last = std::floor(to.x + slack);
    for (double x = std::floor(std::max(0.0, from.x - slack)); x <= last; ++x) {
      // The stretch of the piece within this column of squares.
      const double left = std::clamp(x - slack, from.x, to.x);
      const double right = std::clamp(x + 1 + slack, from.x, to.x);
      double low = to.x > from.x ? from.y + steep * (left - from.x) : from.y;
      double high = to.x > from.x ? from.y + steep * (right - from.x) : to.y;
      if (low > high) std::swap(low, high);
      low = std::max(low, std::min(from.y, to.y));
      high = std::min(high, std::max(from.y, to.y));
      const double top = std::floor(high + slack);
      for (double y = std::floor(std::max(0.0, low - slack)); y <= top; ++y)
        squares.push_back({static_cast<std::uint64_t>(x) << 32 | static_cast<std::uint64_t>(y), i});
    }
  }
  std::sort(squares.begin(), squares.end());
  return squares;
}

void report(const Pieces& pieces, const Hit& hit, Faults& faults) {
  std::size_t here = pieces.line.at[hit.j];
  std::size_t there = pieces.line.at[hit.i];
  if (here < there) std::swap(here, there);
  const Point place =
      meeting_place(pieces.from(hit.i), pieces.to(hit.i), pieces.from(hit.j), pieces.to(hit.j));
  const std::string word = hit.how == Meeting::crosses   ? "crosses"
                           : hit.how == Meeting::touches ? "touches"
                                                         : "runs back along";
  const std::string what = here == there
                               ? "this " + word + " itself at " + spoken(place.x, place.y)
                               : "this " + word + " what is drawn at " + spoken(faults.place(there)) +
                                     ", at " + spoken(place.x, place.y);
  faults.error({here, 1}, what + (hit.how == Meeting::along ? "; draw every stretch of it once"
                                                            : "; draw one that nowhere meets itself"));
}

/// Where a line runs along itself, what it does on to both sides comes of the same, as a line drawn twice
/// does at each of its members: keeps the first of them that runs along. In order of i and j, as they are
/// left.
void drop_echoes(const DrawnLine& line, std::vector<Hit>& hits) {
  // Numbers of what draws each piece.
  std::vector<std::size_t> number(line.at.size(), 0);
  for (std::size_t k = 1; k < number.size(); ++k)
    number[k] = number[k - 1] + (line.at[k] == line.at[k - 1] ? 0 : 1);
  const auto near = [&](std::size_t a, std::size_t b) {
    const std::size_t low = std::min(number[a], number[b]);
    return std::max(number[a], number[b]) - low <= 1;
  };
  std::vector<std::size_t> group(hits.size());
  for (std::size_t k = 0; k < hits.size(); ++k) group[k] = k;
  // A hit joins the group of each hit along the line that is next to it.
  for (std::size_t a = 0; a < hits.size(); ++a) {
    for (std::size_t b = 0; b < hits.size(); ++b) {
      const bool echoes =
          a != b && hits[a].how == Meeting::along && near(hits[a].i, hits[b].i) && near(hits[a].j, hits[b].j);
      if (!echoes || group[a] == group[b]) continue;
      const std::size_t first = std::min(group[a], group[b]);
      const std::size_t second = std::max(group[a], group[b]);
      std::replace(group.begin(), group.end(), second, first);
    }
  }
  std::vector<Hit> kept;
  std::vector<bool> told(hits.size(), false);
  for (std::size_t k = 0; k < hits.size(); ++k) {
    const bool alone = std::count(group.begin(), group.end(), group[k]) == 1;
    if (told[group[k]] || (!alone && hits[k].how != Meeting::along)) continue;
    told[group[k]] = true;
    kept.push_back(hits[k]);
  }
  hits = std::move(kept);
}

}  // namespace

void find_crossings(const DrawnLine& line, Faults& faults) {
  if (line.points.size() < 2) return;
  const Pieces pieces(line);
  const std::vector<InSquare> squares = squares_of(pieces);
  std::vector<Hit> hits;
  std::set<std::pair<std::size_t, std::size_t>> known;  // by what draws them: one mistake each
  std::size_t looked = 0;
  for (std::size_t from = 0; from < squares.size() && known.size() <= kMaxTraceMistakes;) {
    std::size_t to = from;
    while (to < squares.size() && squares[to].square == squares[from].square) ++to;
    for (std::size_t a = from; a < to && known.size() <= kMaxTraceMistakes; ++a) {
      looked += to - a;
      if (looked > kMostPairs) {
        faults.error({line.at.front(), 1},
                     "the line lies so closely folded that where it crosses itself cannot be found; draw it "
                     "more simply");
        return;
      }
      for (std::size_t b = a + 1; b < to && known.size() <= kMaxTraceMistakes; ++b) {
        const Hit hit = look_at(pieces, squares[a].piece, squares[b].piece);
        if (hit.how != Meeting::none && known.emplace(line.at[hit.i], line.at[hit.j]).second)
          hits.push_back(hit);
      }
    }
    from = to;
  }
  std::sort(hits.begin(), hits.end(),
            [](const Hit& a, const Hit& b) { return a.i != b.i ? a.i < b.i : a.j < b.j; });
  drop_echoes(line, hits);
  for (const Hit& hit : hits) report(pieces, hit, faults);
}

}  // namespace arrisline
