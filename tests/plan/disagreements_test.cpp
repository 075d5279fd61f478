// Inputs of the grammar on which plan and replay once did not agree: the program said so instead of showing
// the plan (exit code 3).
#include "catch.h"
#include "plan/whole_way.h"

using namespace arrisline;
using namespace arrisline::test;

namespace {

std::string disagreement(const std::string& profile, const std::string& kit, std::uint64_t work) {
  PlanOptions options;
  options.most_work = work;
  const WholeWay way = whole_way(profile, kit, options);
  REQUIRE(way.drawn);
  return way.broken;
}

}  // namespace

TEST_CASE("facets are counted alike on a thumbnail that needs more than the shop allows", "[plan]") {
  CHECK(disagreement(
            "stock 2 wide, 9/16 thick\nstart face 1 3/16\nthumbnail out 5/8 down 3/8\nfillet out 9/16\n",
            "rebate 25/32\nshop facets 4\n", 20000) == "");
}

TEST_CASE("a round turns on about the centre of its sole in a cove of a wider radius", "[plan]") {
  CHECK(disagreement(
            "stock 15/16 wide, 3/4 thick\nstart face 3/32\ncove down 7/16 radius 3/8\nfillet out 3/32\n",
            "round radius 7/32\nplough 1/16, 5/32, 5/16\n"
            "shop weight stroke .9 setting 3.5 deep 1/4 shaving rebate 1/128in gauge 1/32 strokes 6.25\n",
            20000) == "");
  // Mirrored to the back edge, and with a sole of a little more.
  CHECK(disagreement("stock 15/16 wide, 3/4 thick\nside back\nstart face 3/32\n"
                     "cove down 7/16 radius 3/8\nfillet out 3/32\n",
                     "round radius 15/64\nplough 1/16, 5/32, 5/16\n", 20000) == "");
}

TEST_CASE("what a six leaves in a cove of 1/2 is stated as the replay finds it", "[plan]") {
  CHECK(disagreement("stock 43/32 wide, .5 thick\nstart face 17/32\ncove out 1/2 down 1/2\n",
                     "units mm\nrebate 115/254in body 5/762ft above 20mm\nround 6\n", 200000) == "");
}

TEST_CASE("the imbalance of a round in a cove of its own radius is stated as the replay finds it", "[plan]") {
  CHECK(
      disagreement("stock 17.4625mm wide, 1 1/32 thick\nside back\nstart face 15/32\nstep down 5/32\n"
                   "cove radius 15/32 down 13/32\nfillet out 3/32\nbevel down 5/32 out 1/4\nfillet out 1/8\n",
                   "units mm\nrebate 30/127in\nhollow 6\nround 6\nhollow 11 radius 95/3048ft arc 80deg\n"
                   "plough 2.5 deep 12\nround 4\nhollow 12 width 95/3048ft radius 9 1/2 arc 60\n"
                   "round 2 body 2mm above 0\nshop strokes 9.25 weight slow 9.5 slant 7 gauge 1/2\n",
                   200000) == "");
}

TEST_CASE("a fin too narrow for a scraper to take anything of is not left for it", "[plan]") {
  // The best plan within this much work once left 0.23 mm of a fin of 0.0075 mm² to the scraper.
  CHECK(disagreement("stock 1 1/8 wide, .65625in thick\nstart face 3/8\nogee down .375 out .375\n",
                     "units mm\nrebate 13 1/2\nhollow 6\nround 6\n"
                     "hollow radius 3mm body 5/762ft above 20mm\n"
                     "shaped 3/8 ovolo\nbead out 4mm up 4\ncove out 6 up 5/254ft\nend\n"
                     "hollow 3\nplough 5/762ft\nround width 3 1/2 arc 43deg\nscraper\n"
                     "shop strokes 5.5 gauge .5 shaving rebate .006in shaving curved .1mm\n"
                     "shop weight setting 6.25 stroke .7 slow 3 slant 7.25\n",
                     20000) == "");
}

TEST_CASE("where two passes end at one line the wood runs on, and is no arris", "[plan]") {
  CHECK(disagreement("stock 7/8 wide, 1/2in thick\nstart face 3/32\nstep down 3/32\nfillet in 3/8\n"
                     "bead radius 3/8 down 3/8\nfillet out 15/32\n",
                     "rebate .40625in\nbody 1/8 above 1/2in\nhollow 6\nround 6\n"
                     "hollow 11 width .3125 arc 78\nround 4 radius 3/4, arc 69\n"
                     "round 6 width 1/8 radius 17.4625mm\nbench 2-19/32\nscraper\n",
                     20000) == "");
}
