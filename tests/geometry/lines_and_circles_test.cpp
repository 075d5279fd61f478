// Where edges cross and touch lines and circles: all the places, none beyond the edge, none twice, and how
// near counts as touching.
#include <algorithm>
#include <cmath>

#include "catch.h"
#include "geometry/by_hand.h"
#include "geometry/crossing.h"

using namespace arrisline;
using by_hand::kCentre;
using by_hand::line;

namespace {

/// Of radius 5.
Edge arc(double degrees) {
  return by_hand::arc(5, degrees);
}

/// The places found, as shares of the length of the edge.
template <class Find>
std::vector<double> found(const Edge& edge, Find find) {
  std::vector<double> ts;
  find(ts);
  for (double& t : ts) t = by_hand::share_of_length(edge, t);
  std::sort(ts.begin(), ts.end());
  return ts;
}

std::vector<double> by_line(const Edge& edge, Point p, Point d) {
  return found(edge, [&](std::vector<double>& ts) { cross_line(edge, p, d, ts); });
}
std::vector<double> by_circle(const Edge& edge, Point centre, double r) {
  return found(edge, [&](std::vector<double>& ts) { cross_circle(edge, centre, r, ts); });
}
std::vector<double> parted_by_line(const Edge& edge, Point p, Point d) {
  return found(edge, [&](std::vector<double>& ts) { part_line(edge, p, d, ts); });
}
std::vector<double> parted_by_circle(const Edge& edge, Point centre, double r) {
  return found(edge, [&](std::vector<double>& ts) { part_circle(edge, centre, r, ts); });
}

void check_equal(const std::vector<double>& ts, const std::vector<double>& expected, double margin = 1e-12) {
  REQUIRE(ts.size() == expected.size());
  for (std::size_t i = 0; i < ts.size(); ++i) CHECK(ts[i] == Approx(expected[i]).epsilon(0).margin(margin));
}

const double kThree = to_degrees(std::atan2(3, 4)), kFour = 90 - kThree;  // of the 3-4-5 triangle

}  // namespace

TEST_CASE("a line crosses a straight edge once, between its ends", "[geometry]") {
  const Edge edge = line({1, 1}, {11, 6});
  check_equal(by_line(edge, {3, 0}, {0, 1}), {0.2});
  check_equal(by_line(edge, {0, 5}, {-1, 0}), {0.8});
  check_equal(by_line(edge, {3, 2}, {0.6, -0.8}), {0.2});
  CHECK(by_line(edge, {0.9, 0}, {0, 1}).empty());
  CHECK(by_line(edge, {11.1, 0}, {0, 1}).empty());
  CHECK(by_line(edge, {1, 0}, {0, 1}).empty());  // an end is no place between
  CHECK(by_line(edge, {11, 0}, {0, 1}).empty());
  const Point along = (1 / std::sqrt(5.0)) * Point{2, 1};
  CHECK(by_line(line({0, 0}, {8, 4}), {0, 0}, along).empty());   // along it
  CHECK(by_line(line({0, 1}, {8, 1}), {0, 0}, {1, 0}).empty());  // beside it
}

TEST_CASE("a line crosses an arc where the circle and the sweep say", "[geometry]") {
  // At a height of 3 over the centre, 4 to either side.
  check_equal(by_line(arc(180), {0, 7}, {1, 0}), {kThree / 180, 1 - kThree / 180});
  check_equal(by_line(arc(180), {0, 7}, {-1, 0}), {kThree / 180, 1 - kThree / 180});
  check_equal(by_line(arc(90), {0, 7}, {1, 0}), {kThree / 90});
  check_equal(by_line(arc(-180), {0, 1}, {1, 0}), {kThree / 180, 1 - kThree / 180});
  check_equal(by_line(arc(-300), {6, 0}, {0, 1}), {kFour / 300});
  check_equal(by_line(arc(330), {6, 0}, {0, 1}), {kFour / 330, 1 - (kFour - 30) / 330});
  check_equal(by_line(arc(300), {0, 1}, {1, 0}), {(180 + kThree) / 300});
  CHECK(by_line(arc(-90), {0, 7}, {1, 0}).empty());
  for (const double past : {9.1, -1.1}) CHECK(by_line(arc(350), {0, past}, {1, 0}).empty());
  // Less than 1 between the two.
  const double near_top = to_degrees(std::asin(0.05));
  check_equal(by_line(arc(180), {0, 4 + 5 * std::cos(std::asin(0.05))}, {1, 0}),
              {0.5 - near_top / 180, 0.5 + near_top / 180});
}

TEST_CASE("a line that touches an arc, within a ten-thousandth of a micron, meets it once", "[geometry]") {
  for (const double sign : {1.0, -1.0}) {
    const Edge edge = arc(sign * 180);
    check_equal(by_line(edge, {0, 4 + sign * 5}, {1, 0}), {0.5});
    check_equal(by_line(edge, {0, 4 + sign * (5 + 0.7 * kSame)}, {1, 0}), {0.5});
    CHECK(by_line(edge, {0, 4 + sign * (5 + 1.5 * kSame)}, {1, 0}).empty());
  }
}

TEST_CASE("a circle crosses a straight edge where it is as far from the centre", "[geometry]") {
  // The line passes the centre at a distance of 3, its foot at x 3.
  for (const double y : {1.0, 7.0}) {
    check_equal(by_circle(line({-3, y}, {9, y}), kCentre, 5), {2.0 / 12, 10.0 / 12});
    check_equal(by_circle(line({9, y}, {-3, y}), kCentre, 5), {2.0 / 12, 10.0 / 12});
    check_equal(by_circle(line({0, y}, {16, y}), kCentre, 5), {7.0 / 16});
    check_equal(by_circle(line({-6, y}, {4, y}), kCentre, 5), {0.5});
    CHECK(by_circle(line({0, y}, {6, y}), kCentre, 5).empty());
    CHECK(by_circle(line({-9, y}, {9, y}), kCentre, 2.9).empty());
    check_equal(by_circle(line({1, y}, {5, y}), kCentre, std::hypot(3, 0.4)), {0.4, 0.6});
  }
  CHECK(by_circle(line({3, 9}, {3, 9}), kCentre, 5).empty());
  check_equal(by_circle(line({1, 9}, {5, 9}), kCentre, 5), {0.5});
  check_equal(by_circle(line({1, 9 + 0.7 * kSame}, {5, 9 + 0.7 * kSame}), kCentre, 5), {0.5});
  CHECK(by_circle(line({1, 9 + 1.5 * kSame}, {5, 9 + 1.5 * kSame}), kCentre, 5).empty());
}

TEST_CASE("a circle crosses an arc where both are as far from their centres", "[geometry]") {
  // Circles of 5 with centres 6 apart cross 3 along and 4 to either side; of 5 and √17 with centres 4 apart
  // too.
  check_equal(by_circle(arc(180), {9, 4}, 5), {kFour / 180});
  check_equal(by_circle(arc(-180), {9, 4}, 5), {kFour / 180});
  check_equal(by_circle(arc(330), {9, 4}, 5), {kFour / 330, 1 - (kFour - 30) / 330});
  check_equal(by_circle(arc(180), {7, 4}, std::sqrt(17)), {kFour / 180});
  check_equal(by_circle(arc(180), {3, 10}, 5),
              {(90 - kThree - 0.0 - (kFour - kThree)) / 180, 1 - kThree / 180});
  const double half = to_degrees(std::acos(0.1));  // of centres 1 apart
  check_equal(by_circle(arc(350), {4, 4}, 5), {half / 350, (360 - half) / 350});
  CHECK(by_circle(arc(90), {-3, 4}, 5).empty());
  CHECK(by_circle(arc(350), {14, 4}, 5).empty());    // beside it
  CHECK(by_circle(arc(350), {3.5, 4}, 2).empty());   // within it
  CHECK(by_circle(arc(350), {3.5, 4}, 12).empty());  // round it
  CHECK(by_circle(arc(350), kCentre, 5).empty());    // the same
  CHECK(by_circle(arc(350), kCentre + Point{0.5 * kSame, 0}, 5).empty());
  check_equal(by_circle(arc(350), kCentre + Point{4 * kSame, 0}, 5), {90.0 / 350, 270.0 / 350}, 1e-6);
}

TEST_CASE("circles that touch, within a ten-thousandth of a micron, meet once", "[geometry]") {
  for (const double sign : {1.0, -1.0}) {
    const Edge edge = arc(sign * 180);
    const auto above = [&](double y) { return Point{3, 4 + sign * y}; };
    // Outside, within, and round it.
    check_equal(by_circle(edge, above(8), 3), {0.5});
    check_equal(by_circle(edge, above(2), 3), {0.5});
    check_equal(by_circle(edge, above(-3), 8), {0.5});
    for (const double off : {0.7 * kSame, 1.5 * kSame}) {
      const std::size_t count = off < kSame ? 1 : 0;
      CHECK(by_circle(edge, above(8 + off), 3).size() == count);
      CHECK(by_circle(edge, above(2 - off), 3).size() == count);
      CHECK(by_circle(edge, above(-3 + off), 8).size() == count);
    }
  }
}

TEST_CASE("a place on an edge, or near enough, is a fraction of it", "[geometry]") {
  const auto of = [](const Edge& edge, Point place, double reach) {
    return found(edge, [&](std::vector<double>& ts) { cross_at(edge, place, ts, reach); });
  };
  const Edge level = line({0, 0}, {10, 0});
  check_equal(of(level, {4, 0}, kSame), {0.4});
  check_equal(of(level, {4, 1e-5}, 2e-5), {0.4});
  CHECK(of(level, {4, 1e-5}, 0.5e-5).empty());
  CHECK(of(level, {12, 0}, 2e-5).empty());  // beyond the edge's own end
  CHECK(of(level, {0, 0}, 2e-5).empty());   // and the end itself

  check_equal(of(arc(180), {3, 9 + 1e-5}, 2e-5), {0.5});
  check_equal(of(arc(180), {3, 9 - 1e-5}, 2e-5), {0.5});
  CHECK(of(arc(180), {3, 9 + 1e-5}, 0.5e-5).empty());
  CHECK(of(arc(180), {3, -1}, 2e-5).empty());  // of the circle, and not of the arc
}

TEST_CASE("a straight edge all but along a line is parted where it leaves it", "[geometry]") {
  // 10 long, through the line in its middle: kSame off it at kSame / slope from there.
  for (const double slope : {5e-4, -5e-4, 9e-4}) {
    const double off = kSame / std::abs(slope) / 10;
    check_equal(parted_by_line(line({-5, -5 * slope}, {5, 5 * slope}), {7, 0}, {1, 0}),
                {0.5 - off, 0.5 + off}, 1e-8);
  }
  for (const double slope : {1.2e-3, -1.2e-3, 5e-3})
    CHECK(parted_by_line(line({-5, -5 * slope}, {5, 5 * slope}), {7, 0}, {1, 0}).empty());
}

TEST_CASE("an arc all but touching a line is parted where it is as near as counts", "[geometry]") {
  // Of a circle the places at a depth d below its top are sqrt(2 r d) to either side.
  const auto expected = [](double deep) {
    std::vector<double> out;
    for (const double d : {deep + kSame, deep - kSame}) {
      const double aside = to_degrees(std::acos(1 - d / 5)) / 180;
      out.push_back(0.5 - aside);
      out.push_back(0.5 + aside);
    }
    std::sort(out.begin(), out.end());
    return out;
  };
  for (const double sign : {1.0, -1.0}) {
    const auto across = [&](double deep) {
      return parted_by_line(arc(sign * 180), {0, 4 + sign * (5 - deep)}, {1, 0});
    };
    check_equal(across(5e-6), expected(5e-6), 1e-9);
    check_equal(across(9e-6), expected(9e-6), 1e-9);
    CHECK(across(1.2e-5).empty());
    CHECK(across(5e-5).empty());
    CHECK(across(-5e-7).empty());  // never as near as counts
  }
}

TEST_CASE("a straight edge all but touching a circle is parted where it is as near as counts", "[geometry]") {
  for (const double y : {9.0, -1.0}) {
    const auto deep = [&](double mm) {
      const double level = y > 0 ? y - mm : y + mm;
      return parted_by_circle(line({-7, level}, {13, level}), kCentre, 5);
    };
    for (const double mm : {5e-6, 9e-6}) {
      std::vector<double> expected;
      for (const double d : {mm + kSame, mm - kSame})
        for (const double side : {-1.0, 1.0}) expected.push_back(0.5 + side * std::sqrt(d * (10 - d)) / 20);
      std::sort(expected.begin(), expected.end());
      check_equal(deep(mm), expected, 1e-8);
    }
    CHECK(deep(1.2e-5).empty());
    CHECK(deep(5e-5).empty());
  }
}

TEST_CASE("an arc all but along a circle is parted where it leaves it", "[geometry]") {
  // Of one radius, centres `off` apart along x: at an angle the distance from the other centre is by the law
  // of cosines, and has to be 5 and kSame more or less.
  for (const double off : {1e-6, 9e-4}) {
    const auto place = [&](double distance) {
      return to_degrees(std::acos((25 + off * off - distance * distance) / (10 * off))) / 180;
    };
    check_equal(parted_by_circle(arc(180), kCentre + Point{off, 0}, 5), {place(5 - kSame), place(5 + kSame)},
                off < 1e-5 ? 1e-6 : 1e-9);
  }
  CHECK(parted_by_circle(arc(180), kCentre + Point{1.2e-3, 0}, 5).empty());
  CHECK(parted_by_circle(arc(180), kCentre + Point{5e-3, 0}, 5).empty());
  // Radii that differ by `off` and centres as far apart but a little: at the far side they all but touch.
  for (const double off : {9e-4, -9e-4})
    CHECK(parted_by_circle(arc(180), kCentre + Point{9.5e-4, 0}, 5 + off).size() == 2);
  CHECK(parted_by_circle(arc(180), kCentre + Point{5e-4, 0}, 5 + 9e-4).empty());  // apart all round
  CHECK(parted_by_circle(arc(180), kCentre, 5).empty());
}

TEST_CASE("an arc all but touching a circle is parted where it is as near as counts", "[geometry]") {
  for (const double sign : {1.0, -1.0}) {
    const Edge edge = arc(sign * 180);
    const auto parts = [&](double y, double r) {
      return parted_by_circle(edge, {3, 4 + sign * y}, r).size();
    };
    for (const double in : {5e-6, 9e-6}) {
      CHECK(parts(8 - in, 3) == 4);
      CHECK(parts(2 + in, 3) == 4);
      CHECK(parts(-3 - in, 8) == 4);
    }
    for (const double in : {1.2e-5, 5e-5}) {
      CHECK(parts(8 - in, 3) == 0);
      CHECK(parts(2 + in, 3) == 0);
      CHECK(parts(-3 - in, 8) == 0);
    }
    CHECK(parts(6, 5) == 0);  // crosses plainly
    // Touching: two places where it comes as near as counts, and none where it never does.
    CHECK(parts(8 + 0.5 * kSame, 3) == 2);
    CHECK(parts(8 + 5 * kSame, 3) == 0);
  }
  // Where: outside by circles of 5 and 3 a depth d is shared by sqrt(2 d · 5·3/8) to either side.
  const double aside = to_degrees(std::sqrt(kSame * 15 / 8) / 5) / 180;
  check_equal(parted_by_circle(arc(180), {3, 12 + 0.5 * kSame}, 3), {0.5 - aside, 0.5 + aside}, 1e-8);
}

TEST_CASE("the carrier of an arc parts another as its circle does", "[geometry]") {
  const Edge quarter{{6, 12 + 0.5 * kSame},
                     {3, 15 + 0.5 * kSame},
                     {3, 12 + 0.5 * kSame},
                     Turn::left};  // away from where its circle touches
  std::vector<double> ts, expected;
  part_carrier(arc(180), quarter, ts);
  part_circle(arc(180), quarter.centre, 3, expected);
  CHECK(ts.size() == 2);
  CHECK(ts == expected);
  ts.clear();
  part_carrier(arc(180), line({1, 9}, {1, 9}), ts);
  CHECK(ts.empty());
  part_carrier(arc(180), line({70, 9 + 0.5 * kSame}, {30, 9 + 0.5 * kSame}), ts);
  CHECK(ts.size() == 2);
}

TEST_CASE("a point is on an edge as far off it as is asked", "[geometry]") {
  const auto at = [](const Edge& edge, Point p, double reach) {
    return found(edge, [&](std::vector<double>& ts) { cross_at(edge, p, ts, reach); });
  };
  const Edge edge = line({1, 1}, {9, 7});  // 10 long
  const Point across{-0.6, 0.8};
  for (const double side : {1.0, -1.0}) {
    check_equal(at(edge, Point{3, 2.5} + side * 0.09 * across, 0.1), {0.25});
    CHECK(at(edge, Point{3, 2.5} + side * 0.11 * across, 0.1).empty());
    check_equal(
        at(arc(90), kCentre + Point{3.96, 2.97} + side * 0.09 * Point{0.8, 0.6} + Point{0.04, 0.03}, 0.1),
        {kThree / 90});
    CHECK(at(arc(90), kCentre + Point{4, 3} + side * 0.11 * Point{0.8, 0.6}, 0.1).empty());
  }
  CHECK(at(edge, {1, 1}, 0.1).empty());
  CHECK(at(edge, {9, 7}, 0.1).empty());
  CHECK(at(line({1, 1}, {1, 1}), {1, 1}, 0.1).empty());
  CHECK(at(arc(90), kCentre + Point{4, -3}, 0.1).empty());
  std::vector<double> ts;  // where nothing is asked, as near as counts as one
  cross_at(edge, Point{3, 2.5} + 0.9 * kSame * across, ts);
  CHECK(ts.size() == 1);
  cross_at(edge, Point{3, 2.5} + 1.1 * kSame * across, ts);
  CHECK(ts.size() == 1);
}

TEST_CASE("an arc's normal points along a direction and against it where its spoke does", "[geometry]") {
  const auto along = [](const Edge& edge, Point d) {
    return found(edge, [&](std::vector<double>& ts) { extremes_along(edge, d, ts); });
  };
  check_equal(along(arc(300), {0, 1}), {90.0 / 300, 270.0 / 300});
  check_equal(along(arc(-300), {0, 1}), {90.0 / 300, 270.0 / 300});
  check_equal(along(arc(120), {-0.6, -0.8}), {kFour / 120});
  CHECK(along(arc(60), {0, 1}).empty());
  CHECK(along(line({0, 0}, {1, 1}), {0, 1}).empty());
}
