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
