// Contacts of a chain with itself: known cases, and random chains against a search over all pairs.
#include "section/contacts.h"

#include <random>
#include <set>

#include "catch.h"

using namespace arrisline;

namespace {

std::vector<Edge> polygon(const std::vector<Point>& points, bool closed) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    edges.push_back({points[i], points[i + 1], {}, Turn::straight});
  if (closed) edges.push_back({points.back(), points.front(), {}, Turn::straight});
  return edges;
}

/// A chain of straight edges and quadrants that wanders over a square.
std::vector<Edge> wander(std::mt19937& random, int count) {
  std::uniform_real_distribution<double> at(0, 10);
  std::vector<Edge> edges;
  Point here{at(random), at(random)};
  for (int i = 0; i < count; ++i) {
    const Point next{at(random), at(random)};
    Edge edge{here, next, {}, Turn::straight};
    if (random() % 2 == 0) {
      const Point half = 0.5 * (next - here);
      const bool left = random() % 2 == 0;
      const Point off = left ? Point{-half.y, half.x} : Point{half.y, -half.x};
      edge.centre = here + half + off;
      edge.turn = left ? Turn::left : Turn::right;
    }
    edges.push_back(edge);
    here = next;
  }
  return edges;
}

}  // namespace

TEST_CASE("an outline that does not meet itself", "[section][contacts]") {
  CHECK(find_contacts(polygon({{0, 0}, {4, 0}, {4, 3}, {0, 3}}, true), true, 20).list.empty());
  CHECK(find_contacts({}, true, 20).list.empty());
}

TEST_CASE("a crossing, and touches on either side", "[section][contacts]") {
  const auto crossing = find_contacts(polygon({{0, 0}, {4, 4}, {4, 0}, {0, 4}}, true), true, 20);
  REQUIRE(crossing.list.size() == 1);
  CHECK(crossing.list[0].meeting == Meeting::crosses);
  CHECK(distance(crossing.list[0].at, Point{2, 2}) < 1e-12);
  CHECK(crossing.list[0].first == 0);
  CHECK(crossing.list[0].second == 2);
  // Counter-clockwise, so the inside is on the left: a tooth of air from above reaches the lower side.
  const auto in = find_contacts(polygon({{0, 0}, {4, 0}, {4, 3}, {2, 0}, {0, 3}}, true), true, 20);
  REQUIRE(in.list.size() == 1);
  CHECK(in.list[0].meeting == Meeting::pinches_in);
  // Two teeth of the inside meet tip to side above a pocket of air.
  const auto out = find_contacts(
      polygon({{0, 0}, {6, 0}, {6, 3}, {3, 3}, {5, 1}, {1, 1}, {2, 4}, {4, 2}, {3, 4}, {0, 4}}, true), true,
      20);
  REQUIRE_FALSE(out.list.empty());
}

TEST_CASE("an arc that touches a straight edge touches it once", "[section][contacts]") {
  // A half-round bulging in from above down to the lower side.
  std::vector<Edge> edges = polygon({{0, 0}, {6, 0}, {6, 2}, {5, 2}}, false);
  edges.push_back({{5, 2}, {1, 2}, {3, 2}, Turn::right});
  edges.push_back({{1, 2}, {0, 2}, {}, Turn::straight});
  edges.push_back({{0, 2}, {0, 0}, {}, Turn::straight});
  const auto contacts = find_contacts(edges, true, 20);
  REQUIRE(contacts.list.size() == 1);
  CHECK(contacts.list[0].meeting == Meeting::pinches_in);
  CHECK(distance(contacts.list[0].at, Point{3, 0}) < 1e-9);
}

TEST_CASE("edges that run along one another cross", "[section][contacts]") {
  const auto back = find_contacts(polygon({{0, 0}, {4, 0}, {4, 2}, {4, 1}, {3, 1}, {0, 3}}, true), true, 20);
  REQUIRE_FALSE(back.list.empty());
  CHECK(back.list[0].meeting == Meeting::crosses);
  // A slot of no width.
  const auto slot =
      find_contacts(polygon({{0, 0}, {4, 0}, {4, 3}, {2, 3}, {2, 1}, {2, 3.5}, {0, 3}}, true), true, 20);
  REQUIRE_FALSE(slot.list.empty());
}

TEST_CASE("common points of two edges", "[section][contacts]") {
  const Edge line{{-2, 1}, {2, 1}, {}, Turn::straight};
  const Edge upper{{1, 0}, {-1, 0}, {0, 0}, Turn::left};
  const Edge lower{{1, 0}, {-1, 0}, {0, 0}, Turn::right};
  CHECK(common_points(line, upper).size() == 1);  // tangent
  CHECK(common_points(line, lower).empty());
  CHECK(common_points(upper, lower).size() == 2);  // their ends
  const Edge through{{-2, 0.5}, {2, 0.5}, {}, Turn::straight};
  CHECK(common_points(through, upper).size() == 2);
  const Edge beside{{1.5, 0}, {-0.5, 0}, {0.5, 0}, Turn::left};
  CHECK(common_points(beside, upper).size() == 1);
}

TEST_CASE("random chains agree with a search over all pairs", "[section][contacts]") {
  const unsigned seed = 20240607;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  int crossings = 0;
  for (int round = 0; round < 200; ++round) {
    const auto edges = wander(random, 2 + static_cast<int>(random() % 12));
    std::set<std::pair<std::size_t, std::size_t>> slow;
    for (std::size_t i = 0; i < edges.size(); ++i) {
      for (std::size_t j = i + 1; j < edges.size(); ++j) {
        for (const Point p : common_points(edges[i], edges[j])) {
          if (j == i + 1 && distance(p, edges[i].to) < 1e-5) continue;
          slow.insert({i, j});
        }
      }
    }
    std::set<std::pair<std::size_t, std::size_t>> fast;
    const Contacts contacts = find_contacts(edges, false, 100000);
    for (const SelfContact& contact : contacts.list) {
      fast.insert({contact.first, contact.second});
      CHECK(contact.meeting == Meeting::crosses);
    }
    CHECK(contacts.complete);
    CHECK(fast == slow);
    crossings += static_cast<int>(slow.size());
  }
  CHECK(crossings > 1000);
}

TEST_CASE("the work on a long chain grows with its length, not with its square", "[section][contacts]") {
  // A comb of slanting teeth, each a hundred times as long as it is wide.
  std::size_t before = 0;
  for (const int teeth : {6250, 12500, 25000}) {
    INFO(teeth << " teeth");
    std::vector<Point> points;
    for (int i = 0; i < teeth; ++i) {
      const double x = 0.02 * i;
      points.push_back({x, 0});
      points.push_back({x + 50, 50});
      points.push_back({x + 50.01, 50});
      points.push_back({x + 0.01, 0});
    }
    const Contacts contacts = find_contacts(polygon(points, false), false, 20);
    CHECK(contacts.complete);
    CHECK(contacts.list.empty());
    CHECK(contacts.looked_at > 0);
    // Twice the teeth take little more than twice the work; all pairs would take four times.
    if (before > 0) CHECK(static_cast<double>(contacts.looked_at) < 2.5 * static_cast<double>(before));
    before = contacts.looked_at;
  }
}
