// Work on the back edge is the mirror image of work on the working edge: so are the cuts to choose from.
#include <algorithm>
#include <cmath>

#include "plan/planning.h"
#include "plan/rails.h"

using namespace arrisline;
using test::kit;
using test::profile;

namespace {

constexpr double kSame = 1e-4;  // mm or degrees: rails are solved to less

const char* const kMouldings[] = {
    "start face 3/4\nreverse-ogee out 3/4 down 3/4",
    "start face 3/4\nogee out 3/4 down 9/16",
    "start face 1/2\nstep down 1/8\nbead out 3/8 down 3/8\nfillet out 1/8",
    "start face 3/4\nstep down 1/8\ncove out 1/2 down 3/8 radius 3/8\nfillet out 1/4",
    "start face 11/16\nstep down 1/16\ncove out 5/8 down 1/8 radius 3/8\nfillet out 1/16",
    "start face 3/8\nbead out 3/8 down 3/8 radius 1/2",
};

const char* const kKit =
    "units inch\nrebate 3/4\nrebate 1/4\nplough 1/8 1/4\nhollow 6\nround 6\nhollow 8\nround 5\n";

Pose mirrored(const Pose& pose, double width) {
  return {{width - pose.at.x, pose.at.y}, -pose.tilt};
}

bool same(const Pose& a, const Pose& b) {
  return distance(a.at, b.at) < kSame && std::abs(wrap_degrees(a.tilt - b.tilt)) < kSame;
}

/// The one draft is the other in the mirror.
bool mirrors(const Draft& a, const Draft& b, double width) {
  return a.plane == b.plane && a.poses.size() == b.poses.size() &&
         std::all_of(a.poses.begin(), a.poses.end(), [&](const Pose& pose) {
           return std::any_of(b.poses.begin(), b.poses.end(),
                              [&](const Pose& other) { return same(mirrored(pose, width), other); });
         });
}

bool mirrors(const std::vector<Draft>& a, const std::vector<Draft>& b, double width) {
  return a.size() == b.size() && std::all_of(a.begin(), a.end(), [&](const Draft& draft) {
           return std::any_of(b.begin(), b.end(),
                              [&](const Draft& other) { return mirrors(draft, other, width); });
         });
}

/// How many of `a` have no mirror image in `b`.
template <class T, class Mirrors>
int alone(const std::vector<T>& a, const std::vector<T>& b, Mirrors mirror) {
  return static_cast<int>(std::count_if(a.begin(), a.end(), [&](const T& one) {
    return std::none_of(b.begin(), b.end(), [&](const T& other) { return mirror(one, other); });
  }));
}

}  // namespace

TEST_CASE("the cuts to choose from are mirror images on the back edge", "[reach][property]") {
  const Kit with = kit(kKit);
  const PlanOptions options;
  int setups = 0;
  for (const char* chain : kMouldings) {
    INFO(chain);
    const Section edge_section = profile("3 wide, 3/4 thick", chain);
    const Section back_section = profile("3 wide, 3/4 thick", std::string("side back\n") + chain);
    const Problem edge = make_problem(edge_section, with, options);
    const Problem back = make_problem(back_section, with, options);
    const double width = edge_section.width;
    const auto flats_mirror = [&](const Draft& a, const Draft& b) { return mirrors(a, b, width); };
    CHECK(alone(flat_drafts(edge), flat_drafts(back), flats_mirror) == 0);
    CHECK(alone(flat_drafts(back), flat_drafts(edge), flats_mirror) == 0);
    REQUIRE(edge.surfaces.size() == back.surfaces.size());
    for (std::size_t i = 0; i < edge.surfaces.size(); ++i) {
      if (!edge.surfaces[i].arc) continue;
      const std::size_t j = edge.surfaces.size() - 1 - i;
      REQUIRE(back.surfaces[j].arc);
      const auto ways = arc_drafts(edge, static_cast<int>(i));
      const auto back_ways = arc_drafts(back, static_cast<int>(j));
      const auto ways_mirror = [&](const std::vector<Draft>& a, const std::vector<Draft>& b) {
        return mirrors(a, b, width) && mirrors(a.front(), b.front(), width);
      };
      CHECK(ways.size() == back_ways.size());
      CHECK(alone(ways, back_ways, ways_mirror) == 0);
      for (const std::vector<Draft>& way : ways) {
        const auto twin =
            std::find_if(back_ways.begin(), back_ways.end(),
                         [&](const std::vector<Draft>& other) { return ways_mirror(way, other); });
        if (twin == back_ways.end()) continue;
        const std::vector<Setup> here = lay_rails(edge, way.front(), Wood(edge.blank));
        const std::vector<Setup> there = lay_rails(back, twin->front(), Wood(back.blank));
        INFO(with.planes[static_cast<std::size_t>(way.front().plane)].label
             << " tilts " << way.front().poses.front().tilt);
        CHECK(here.size() == there.size());
        CHECK(alone(here, there, [&](const Setup& a, const Setup& b) {
                return std::abs(a.start + b.start) < kSame && mirrors(a.cuts, b.cuts, width);
              }) == 0);
        setups += static_cast<int>(here.size());
      }
    }
  }
  CHECK(setups > 50);
}
