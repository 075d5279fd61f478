// Lines joined end to end. Shown by tests/trace/one_line_test.cpp.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <string>
#include <utility>

#include "trace/one_line.h"
#include "wording/figures.h"

namespace arrisline {

namespace {

/// End 2 i is where line i begins, 2 i + 1 where it ends.
using End = std::size_t;

Point place_of(const std::vector<DrawnLine>& lines, End end) {
  const std::vector<Point>& points = lines[end / 2].points;
  return end % 2 == 0 ? points.front() : points.back();
}

/// Byte of the text that draws the line at one of its ends.
std::size_t drawn_at(const std::vector<DrawnLine>& lines, End end) {
  return end % 2 == 0 ? lines[end / 2].begins : lines[end / 2].at.back();
}

using Square = std::pair<std::int64_t, std::int64_t>;

/// Ends by squares so small that all in one are within reach of one another.
std::map<Square, std::vector<End>> squares_of(const std::vector<DrawnLine>& lines, double reach) {
  std::map<Square, std::vector<End>> squares;
  for (End end = 0; end < 2 * lines.size(); ++end) {
    const Point at = (2 / reach) * place_of(lines, end);
    squares[{static_cast<std::int64_t>(std::floor(at.x)), static_cast<std::int64_t>(std::floor(at.y))}]
        .push_back(end);
  }
  return squares;
}

/// Each end's partner, or itself where it has none.
struct Partners {
  std::vector<End> of;
  bool branches = false;
};

void report_branch(const std::vector<DrawnLine>& lines, End end, Faults& faults) {
  const Point at = place_of(lines, end);
  faults.error({drawn_at(lines, end), 1}, "here the line branches: more than two lines meet at " +
                                              spoken(at.x, at.y) +
                                              "; expected a single line, without a fork");
}

Partners partners_of(const std::vector<DrawnLine>& lines, double reach, Faults& faults) {
  Partners partners;
  for (End end = 0; end < 2 * lines.size(); ++end) partners.of.push_back(end);
  const std::map<Square, std::vector<End>> squares = squares_of(lines, reach);
  for (const auto& [square, ends] : squares) {
    if (ends.size() < 3) continue;
    report_branch(lines, ends[2], faults);
    partners.branches = true;
  }
  if (partners.branches) return partners;
  std::vector<bool> reported(2 * lines.size(), false);
  for (const auto& [square, ends] : squares) {
    for (const End end : ends) {
      std::vector<End> near;
      for (std::int64_t x = square.first - 2; x <= square.first + 2; ++x) {
        for (auto other = squares.lower_bound({x, square.second - 2});
             other != squares.end() && other->first <= Square{x, square.second + 2}; ++other) {
          for (const End one : other->second) {
            if (one != end && distance(place_of(lines, one), place_of(lines, end)) <= reach)
              near.push_back(one);
          }
        }
      }
      if (near.size() == 1) partners.of[end] = near.front();
      if (near.size() < 2) continue;
      partners.branches = true;
      near.push_back(end);
      if (std::none_of(near.begin(), near.end(), [&](End one) { return reported[one]; }))
        report_branch(lines, *std::max_element(near.begin(), near.end()), faults);
      for (const End one : near) reported[one] = true;
    }
  }
  return partners;
}

DrawnLine reversed(DrawnLine line) {
  std::reverse(line.points.begin(), line.points.end());
  // What begins at a point now is what ended there before.
  line.at.pop_back();
  std::reverse(line.at.begin(), line.at.end());
  line.at.push_back(line.at.back());
  return line;
}

/// Goes on with `next`, whose first point is where this one ends.
void append(DrawnLine& line, const DrawnLine& next) {
  if (line.points.empty()) {
    line = next;
    return;
  }
  line.at.back() = next.at.front();
  line.points.insert(line.points.end(), next.points.begin() + 1, next.points.end());
  line.at.insert(line.at.end(), next.at.begin() + 1, next.at.end());
}

/// Says of a line by itself where it begins and how far it is from the others.
void report_separate(const std::vector<DrawnLine>& lines, const std::vector<End>& ends,
                     const std::vector<std::size_t>& chain_of, const std::vector<End>& begins,
                     std::size_t chain, Faults& faults) {
  double least = HUGE_VAL;
  std::size_t to = 0;
  End from = begins[chain];
  for (const End own : ends) {
    if (chain_of[own / 2] != chain) continue;
    for (const End other : ends) {
      if (chain_of[other / 2] == chain) continue;
      const double apart = distance(place_of(lines, own), place_of(lines, other));
      if (apart >= least) continue;
      least = apart;
      from = own;
      to = other;
    }
  }
  const Point begin = place_of(lines, begins[chain]);
  const Point first = place_of(lines, begins[0]);
  // Copies are drawn by the same bytes.
  const bool copy = drawn_at(lines, begins[0]) == drawn_at(lines, begins[chain]);
  std::string message = "another line begins here, at " + spoken(begin.x, begin.y) +
                        "; expected one line, and the first" +
                        (copy ? ", of which it is a copy, begins at " + spoken(first.x, first.y)
                              : " begins at " + spoken(faults.place(drawn_at(lines, begins[0]))));
  if (least < HUGE_VAL) {
    const Point one = place_of(lines, from);
    const Point two = place_of(lines, to);
    message += "; nearest to another one is its end at " + spoken(one.x, one.y) + ", " +
               plain(least, least < 0.001 ? 6 : 3) + " from " + spoken(two.x, two.y);
  }
  if (chain == 1) message += "; to read one of them alone, give its layer or id: --layer NAME";
  faults.error({drawn_at(lines, begins[chain]), 1}, std::move(message));
}

}  // namespace

std::optional<DrawnLine> join(std::vector<DrawnLine> lines, double reach, Faults& faults) {
  // What is shorter than the reach would join its neighbours to itself and to one another.
  const auto is_speck = [&](const DrawnLine& line) {
    return std::all_of(line.points.begin(), line.points.end(),
                       [&](Point p) { return distance(p, line.points.front()) <= reach; });
  };
  lines.erase(std::remove_if(lines.begin(), lines.end(), is_speck), lines.end());
  if (lines.empty()) {
    faults.error({}, "there is no line in the drawing; draw that of the section, in one piece");
    return std::nullopt;
  }
  const Partners partners = partners_of(lines, reach, faults);
  if (partners.branches) return std::nullopt;

  // Chains, each from the first of its lines on, which keeps its direction.
  constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  std::vector<std::size_t> chain_of(lines.size(), kNone);
  std::vector<End> begins;
  std::vector<End> free;
  DrawnLine whole;
  for (std::size_t first = 0; first < lines.size(); ++first) {
    if (chain_of[first] != kNone) continue;
    const std::size_t chain = begins.size();
    End begin = 2 * first;
    while (partners.of[begin] != begin) {
      begin = partners.of[begin] ^ 1;
      if (begin == 2 * first) break;  // round a closed line
    }
    begins.push_back(begin);
    const bool closed = partners.of[begin] != begin;
    if (!closed) free.push_back(begin);
    for (End at = begin;;) {
      chain_of[at / 2] = chain;
      if (chain == 0) append(whole, at % 2 == 0 ? lines[at / 2] : reversed(lines[at / 2]));
      const End far = at ^ 1;
      at = partners.of[far];
      if (at == far) free.push_back(far);
      if (at == far || at == begin) break;
    }
    if (chain != 0 || !closed) continue;
    whole.closed = true;
    whole.points.pop_back();
    whole.at.pop_back();
  }
  if (begins.size() == 1) return whole;
  for (std::size_t chain = 1; chain < begins.size() && !faults.full(); ++chain)
    report_separate(lines, free, chain_of, begins, chain, faults);
  return std::nullopt;
}

}  // namespace arrisline
