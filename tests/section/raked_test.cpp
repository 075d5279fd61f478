// The raked moulding against the level one in space: both are run along their walls, cut by the mitre plane,
// and must give one line there.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "catch.h"
#include "section/drawing_of.h"
#include "section/reshaped.h"
#include "section/sections.h"
#include "section/walk.h"
#include "text/write_profile.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

using Vector = std::array<double, 3>;  // along the front wall, up, out of the front wall

Vector operator+(const Vector& a, const Vector& b) {
  return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}
Vector operator*(double s, const Vector& a) {
  return {s * a[0], s * a[1], s * a[2]};
}
double dot(const Vector& a, const Vector& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
Vector cross(const Vector& a, const Vector& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

/// Where the line from p along d meets the plane through the origin with this normal.
Vector met(const Vector& p, const Vector& d, const Vector& normal) {
  return p + (-dot(p, normal) / dot(d, normal)) * d;
}

/// The points of a chain, from its start: out and deep. Straight or arc, `parts` of each stroke.
std::vector<Edge> edges_of_chain(const DrawnChain& chain) {
  std::vector<Edge> out;
  Point at;
  for (const Stroke& stroke : chain.strokes) {
    out.push_back(edge_between(at, at + stroke.move, stroke.turn, stroke.radius, stroke.large));
    at = at + stroke.move;
  }
  return out;
}

const char* const kCornice =
    "units mm\nstock 60 wide, 40 thick\nstart face 30\nstep down 2\ncove out 12 down 9 radius 10\nfillet out "
    "2\n"
    "step down 1.5\nogee out 10 down 14\nfillet out 2\nstep down 3\nbead out 4 down 4\n";

double worst_at_mitre(const Drawing& level, const Raked& raked, const RakeOptions& options) {
  // The front wall is z = 0 with the corner at the origin, wood behind it; the moulding runs from the corner
  // toward −x. At its foot it rises on the way, at its head it falls.
  const double slope = to_radians(options.slope) * (options.at == ReturnAt::foot ? 1 : -1);
  const Vector along{-std::cos(slope), std::sin(slope), 0};
  const Vector square{std::sin(slope), std::cos(slope), 0};
  // The return wall: the front wall's direction turned about the upright by the corner.
  const double corner = to_radians(options.corner);
  const Vector away{-std::cos(corner), 0, -std::sin(corner)};
  const Vector up{0, 1, 0};
  Vector outward = cross(up, away);  // square to the return wall, and away from the wood in the corner
  if (dot(outward, Vector{-1, 0, 0} + away) > 1e-9 || outward[2] < -1e-9) outward = -1.0 * outward;
  // The mitre halves the corner: it holds the upright and the middle of both ways along the walls.
  Vector halving = Vector{-1, 0, 0} + away;
  if (dot(halving, halving) < 1e-12) halving = {0, 0, 1};  // one wall: square across
  const Vector normal = cross(halving, up);
  const double deep_is_up = options.face == Face::down ? 1 : -1;

  const std::vector<Edge> own = edges_of_chain(raked.drawing.chains.front());
  double worst = 0;
  for (const Edge& edge : edges_of_chain(level.chains.front())) {
    for (int i = 0; i <= 50; ++i) {
      const Point p = point_at(edge, i / 50.0);
      const Vector of_return = (-p.x) * outward + (deep_is_up * p.y) * up;
      const Vector at = met(of_return, away, normal);
      // Seen along the rake: how far out of the front wall, and how high square to the rake.
      const Point seen{-dot(at, {0, 0, 1}), deep_is_up * dot(at, square)};
      CHECK(std::abs(dot(cross(along, square), {0, 0, 1})) == Approx(1));
      worst = std::max(worst, distance({seen.x, seen.y + raked.step}, own));
    }
  }
  return worst;
}

}  // namespace

TEST_CASE("a raked moulding meets the level one all along the mitre", "[section][rake]") {
  const Drawing level = drawing_of(section_of(kCornice), Unit::mm);
  int stepped = 0;
  for (const double slope : {5.0, 22.5, 40.0}) {
    for (const double corner : {90.0, 120.0, 135.0, 180.0}) {
      for (const ReturnAt at : {ReturnAt::foot, ReturnAt::head}) {
        for (const Face face : {Face::down, Face::up}) {
          for (const double tolerance : {0.1, 0.005}) {
            CAPTURE(slope, corner, at == ReturnAt::foot, face == Face::down, tolerance);
            RakeOptions options{slope, corner, at, face, tolerance};
            std::string why;
            const auto result = raked(level, options, &why);
            REQUIRE(result);
            CHECK(result->greatest <= tolerance);
            CHECK(worst_at_mitre(level, *result, options) <= tolerance * 1.01);
            stepped += result->step > 0;
          }
        }
      }
    }
  }
  CHECK(stepped > 0);
}

TEST_CASE("what the test of the mitre would see", "[section][rake]") {
  const Drawing level = drawing_of(section_of(kCornice), Unit::mm);
  std::string why;
  RakeOptions options{22.5, 90, ReturnAt::foot, Face::down, 0.01};
  const auto result = raked(level, options, &why);
  REQUIRE(result);
  RakeOptions other = options;
  other.slope = 23;
  CHECK(worst_at_mitre(level, *result, other) > 0.1);
  other = options;
  other.corner = 95;
  CHECK(worst_at_mitre(level, *result, other) > 0.1);
  other = options;
  other.at = ReturnAt::head;
  CHECK(worst_at_mitre(level, *result, other) > 1);
}

TEST_CASE("a raked profile reads, keeps its projection, and stays smooth where it was", "[section][rake]") {
  const Drawing level = drawing_of(section_of(kCornice), Unit::mm);
  std::string why;
  const auto result = raked(level, {22.5, 90, ReturnAt::foot, Face::down, 0.1}, &why);
  REQUIRE(result);
  const Section section = section_of(profile_text(result->drawing));
  check_promises(section);
  CHECK(section.width == 60);
  // Out 30, deep 33.5: raked, 33.5 cos s + 30 sin s deep; 6.5 below it shorten alike, to the next usual size.
  double deep = 0;
  for (const Stroke& stroke : result->drawing.chains.front().strokes) deep += stroke.move.y;
  const double s = to_radians(22.5);
  CHECK(deep == Approx(33.5 * std::cos(s) + 30 * std::sin(s)).epsilon(1e-12));
  CHECK(section.thickness == 50);
  // The two arcs of the ogee meet smoothly, and so do all that stand for them.
  const std::vector<Edge> edges = edges_of_chain(result->drawing.chains.front());
  int joints = 0;
  for (std::size_t i = 1; i < edges.size(); ++i) {
    if (!edges[i - 1].is_arc() || !edges[i].is_arc()) continue;
    ++joints;
    CHECK(distance(direction_at(edges[i - 1], 1), direction_at(edges[i], 0)) < 1e-7);
  }
  CHECK(joints >= 4);
}

TEST_CASE("on a slope of nothing but a hair the moulding stays what it is", "[section][rake]") {
  const Drawing level = drawing_of(section_of(kCornice), Unit::mm);
  std::string why;
  const auto result = raked(level, {0.01, 90, ReturnAt::foot, Face::down, 0.1}, &why);
  REQUIRE(result);
  const std::vector<Edge> edges = edges_of_chain(result->drawing.chains.front());
  for (const Edge& edge : edges_of_chain(level.chains.front()))
    for (int i = 0; i <= 10; ++i) CHECK(distance(point_at(edge, i / 10.0), edges) < 0.01);
}

TEST_CASE("an arc between corners stays one where one is near enough", "[section][rake]") {
  const Drawing level =
      drawing_of(section_of("units mm\nstock 60 wide, 40 thick\nstart face 30\nstep down 4\novolo 9.525\n"
                            "fillet out 4\nstep down 2\ncavetto 9.525\nfillet out 6.95\n"),
                 Unit::mm);
  const auto arcs = [&](double slope, double tolerance) {
    const RakeOptions options{slope, 90, ReturnAt::foot, Face::down, tolerance};
    std::string why;
    const auto result = raked(level, options, &why);
    REQUIRE(result);
    CHECK(result->greatest <= tolerance);
    CHECK(worst_at_mitre(level, *result, options) <= tolerance * 1.01);
    check_promises(section_of(profile_text(result->drawing)));
    std::pair<int, int> out;  // of the ovolo, of the cavetto
    for (const Stroke& stroke : result->drawing.chains.front().strokes) {
      out.first += stroke.turn == Turn::right ? 1 : 0;
      out.second += stroke.turn == Turn::left ? 1 : 0;
    }
    return out;
  };
  // The cavetto runs smooth into step and fillet, and goes on doing so.
  CHECK(arcs(15, 0.1) == std::pair(1, 2));
  CHECK(arcs(15, 0.05).first > 1);
  CHECK(arcs(30, 0.1).first > 1);
}

TEST_CASE("one arc goes no farther out than the stock", "[section][rake]") {
  // All but upright where it ends on the working edge.
  for (const double slope : {2.0, 5.0, 10.0, 15.0}) {
    CAPTURE(slope);
    const Drawing level = drawing_of(
        section_of("units mm\nstock 60 wide, 40 thick\nstart face 10\nstep down 4\nbead out 10 down 10 "
                   "radius 10.01\n"),
        Unit::mm);
    std::string why;
    const auto result = raked(level, {slope, 90, ReturnAt::foot, Face::down, 0.1}, &why);
    REQUIRE(result);
    check_promises(section_of(profile_text(result->drawing)));
  }
}

TEST_CASE("work on other sides is not raked", "[section][rake]") {
  std::string why;
  const Drawing flute = drawing_of(
      section_of("units mm\nstock 60 wide, 20 thick\nstart face 30\ncove out 10 radius 5\n"), Unit::mm);
  CHECK_FALSE(raked(flute, {20, 90, ReturnAt::foot, Face::down, 0.1}, &why));
  CHECK(why ==
        "only work that is one chain, from the face to the working edge or the underside, is raked; give a "
        "profile that runs so");
}
