// The JSON of what a kit makes, and of the planes that would add most.
#include "report/reach_list.h"

#include <catch2/catch.hpp>

#include "plan/candidates.h"

using namespace arrisline;

TEST_CASE("of a pair that adds only together the first plane says so", "[reach][report]") {
  Moulding ogee;
  ogee.name = "ogee";
  const std::vector<Addition> planes = {{numbered_plane(PlaneKind::round, 4), {ogee}},
                                        {numbered_plane(PlaneKind::hollow, 8), {}},
                                        {numbered_plane(PlaneKind::round, 8), {ogee}}};
  const std::string text = reach_json({}, &planes);
  const std::size_t said = text.find("\"with_next\": true");
  REQUIRE(said != std::string::npos);
  CHECK(text.find("\"with_next\"", said + 1) == std::string::npos);
  const std::size_t hollow = text.find("\"hollow\"");
  CHECK(text.rfind('{', said) == text.rfind('{', hollow));
}

TEST_CASE("where nothing is made it is said for want of what, and what is not tried", "[reach][report]") {
  const auto said = [](const std::vector<Plane>& planes) {
    Kit kit;
    kit.planes = planes;
    return reach_list({}, {}, kit, 50, 20, {});
  };
  Plane rebate;
  rebate.label = "rebate 3/4";
  Plane shaped;
  shaped.kind = PlaneKind::shaped;
  shaped.label = "my ovolo";
  const Plane hollow = numbered_plane(PlaneKind::hollow, 6);
  const auto has = [](const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
  };
  CHECK(has(said({rebate}), "None: those tried are made by hollows and rounds, and the kit has neither.\n"));
  CHECK_FALSE(has(said({rebate}), "haped"));
  CHECK(has(said({rebate, shaped}),
            "and the kit has neither.\n  Shaped planes are not tried; each sticks the "
            "moulding of its sole: my ovolo.\n"));
  CHECK(has(said({rebate, hollow}), "no hollow or round of the kit finds a moulding on this stock.\n"));
}
