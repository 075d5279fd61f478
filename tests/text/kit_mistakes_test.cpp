// The exact words said of a mistaken statement in a kit.
#include <vector>

#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

struct Case {
  std::string statement;
  std::string said;  // "line:column: message" a line
};

}  // namespace

TEST_CASE("each mistake in a kit is named, with what was expected", "[text][mistakes]") {
  const std::vector<Case> cases = {
      {"hollow", "1:7: hollow needs a number or a radius, as in 'hollow 6' or 'hollow radius 3/8'\n"},
      {"hollow 1/2", "1:8: expected the number of the plane, a whole number from 1 to 999, found '1/2'\n"},
      {"hollow 0", "1:8: expected the number of the plane, a whole number from 1 to 999, found '0'\n"},
      {"hollow 1000", "1:8: expected the number of the plane, a whole number from 1 to 999, found '1000'\n"},
      {"hollow radius",
       "1:14: expected a length after 'radius', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"hollow width 3/8",
       "1:17: hollow needs a number or a radius, as in 'hollow 6' or 'hollow radius 3/8'\n"},
      {"hollow arc 60", "1:14: hollow needs a number or a radius, as in 'hollow 6' or 'hollow radius 3/8'\n"},
      {"hollow 6 arc 0", "1:14: the arc of a sole is more than 0 and at most 180 degrees, such as 60\n"},
      {"hollow 6 arc 181", "1:14: the arc of a sole is more than 0 and at most 180 degrees, such as 60\n"},
      {"hollow 6 arc 60x", "1:14: expected degrees after 'arc', found '60x'\n"},
      {"hollow 6 width 1",
       "1:1: a sole 1in wide is wider than its whole circle, 0.75in; measure both again\n"},
      {"hollow radius 3/8 width 3/8 arc 70",
       "1:1: radius, width and arc disagree: this radius and arc make a width of 0.4302in; leave one of them "
       "out\n"},
      {"hollow 6 radius 3/8 radius 1/2", "1:21: 'radius' is given twice; leave one of them out\n"},
      {"hollow 6 raduis 3/8",
       "1:10: unknown word 'raduis'; expected radius, width, arc or body; did you mean 'radius'?\n"},
      {"hollow 6 body 1/8",
       "1:18: expected 'above' and the height that the body begins at, but the line ends here\n"},
      {"round 6 foo", "1:9: unknown word 'foo'; expected radius, width, arc or body\n"},
      {"rebate",
       "1:7: expected the width of the sole after 'rebate', such as 3/8in or 9.5mm, but the line ends "
       "here\n"},
      {"rebate 3/4 1/2", "1:12: a rebate plane has one width; write each plane on a line of its own\n"},
      {"hollow 4 6 8", "1:10: a hollow plane has one number; write each plane on a line of its own\n"},
      {"round 4, 6 width 3/8", "1:10: a round plane has one number; write each plane on a line of its own\n"},
      {"rebate 3/4, 1/2", "1:13: a rebate plane has one width; write each plane on a line of its own\n"},
      {"rebate 3/4 wide", "1:12: unknown word 'wide'; expected body\n"},
      {"plough", "1:7: expected the width of an iron after 'plough', but the line ends here\n"},
      {"plough reach 5", "1:8: expected the width of an iron after 'plough', found 'reach'\n"},
      {"plough 1/8, deep",
       "1:17: expected a length after 'deep', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"plough 1/8 foo 1/4", "1:12: unknown word 'foo'; expected reach, deep or body\n"},
      {"plough 1/8 0", "1:12: the width of an iron must be more than 0, such as 3/8in or 9.5mm\n"},
      {"bench",
       "1:6: expected the width of the sole after 'bench', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"number 6", "1:9: expected 'radius' after the number, but the line ends here\n"},
      {"number 6 radius",
       "1:16: expected a length after 'radius', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"number x radius 3/8",
       "1:8: expected the number of a plane, a whole number from 1 to 999, found 'x'\n"},
      {"body 1/8 above 1", "1:1: 'body' comes after the plane it belongs to; put it below one\n"},
      {"scraper 3",
       "1:9: the line is complete before '3'; leave it out, or put # before it if it is a remark\n"},
      {"shop",
       "1:5: expected shaving, weight, deep, strokes, gauge or facets after 'shop', but the line ends "
       "here\n"},
      {"shop foo", "1:6: expected shaving, weight, deep, strokes, gauge or facets, found 'foo'\n"},
      {"shop shaving", "1:13: expected rebate or curved after 'shaving', but the line ends here\n"},
      {"shop shaving rebat .006",
       "1:14: expected rebate or curved after 'shaving', found 'rebat'; did you mean 'rebate'?\n"},
      {"shop shaving rebate 0",
       "1:21: a thickness after 'shaving rebate' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"shop shaving rebate .006 shaving rebate .004",
       "1:34: 'shaving rebate' is given twice; leave one of them out\n"},
      {"shop weight 2",
       "1:13: expected change, cut, setting, stroke, wear, slow, slant or uneven after 'weight', found "
       "'2'\n"},
      {"shop weight change x", "1:20: expected a number after 'weight change', found 'x'\n"},
      {"shop weight change -1", "1:20: '-1' has a sign, and numbers here have none; leave it out\n"},
      {"shop weight cut 1e3", "1:17: expected a number after 'weight cut', a plain number, found '1e3'\n"},
      {"shop weight slow .9", "1:18: 'weight slow' must be at least 1, such as 2\n"},
      {"shop weight slant 0 cut 1", "1:19: 'weight slant' must be at least 1, such as 2\n"},
      {"shop deep",
       "1:10: expected a thickness of wood after 'deep', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"shop strokes 0", "1:14: strokes a minute must be more than 0, such as 20\n"},
      {"shop facets 1.5",
       "1:13: expected the most flats to an arc, a whole number from 0 to 1000, found '1.5'\n"},
      {"board", "1:6: board needs its stops, as in 'board stops at 1/2, 1, 2'\n"},
      {"board stops 1", "1:13: expected at after 'stops', found '1'\n"},
      {"board stops at",
       "1:15: expected a distance from the fence after 'stops at', but the line ends here\n"},
      {"board stops at x", "1:16: expected a distance from the fence, such as 3/8in or 9.5mm, found 'x'\n"},
      {"board stops at 1/2, 1, 1 1/2 screw 0",
       "1:36: a length after 'screw' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"board stops at 1/2, 1, 1 1/2 screw 3/8 clear 0 foo",
       "1:48: expected stops, screw or clear, found 'foo'\n"},
      {"board screw 3/8", "1:16: board needs its stops, as in 'board stops at 1/2, 1, 2'\n"},
      {"end", "1:1: unknown word 'end'; 'end' closes a shaped plane, and none is open: leave it out\n"},
      {"kit", "1:4: expected a name after 'kit', but the line ends here\n"},
      {"holow 6", "1:1: unknown word 'holow'; did you mean 'hollow'?\n"},
      {"units cm", "1:7: expected inch or mm after 'units', found 'cm'; did you mean 'mm'?\n"},
  };
  for (const Case& mistaken : cases) {
    CAPTURE(mistaken.statement);
    // A sound plane follows, so that nothing is said of the kit as a whole.
    CHECK(kit_messages(mistaken.statement + "\nbench 2\n") == mistaken.said);
  }
}

TEST_CASE("a kit without planes is reported at the top of the file", "[text][mistakes]") {
  CHECK(kit_messages("kit empty shelf\nscraper\n") ==
        "1:1: no planes; expected lines such as 'hollow 6', 'round 6' or 'rebate 3/4'\n");
}

TEST_CASE("statements that may stand once only", "[text][mistakes]") {
  CHECK(kit_messages("units mm\nunits mm\nrebate 19\n") ==
        "2:1: a second 'units'; the first is on line 1: leave one of them out\n");
  CHECK(kit_messages("kit a\nkit b\nrebate 19\n") ==
        "2:1: a second 'kit'; the first is on line 1: leave one of them out\n");
  CHECK(kit_messages("rebate 1\nboard stops at 1\nboard stops at 2\n") ==
        "3:1: a second 'board'; the first is on line 2: leave one of them out\n");
  CHECK(kit_messages("rebate 19\nunits mm\n") ==
        "2:1: 'units' must come before the first length; put it above line 1\n");
  CHECK(kit_messages("hollow 6\nnumber 6 radius 3/8\nnumber 6 radius 1/2\n") ==
        "3:8: number 6 is in the numbering table twice; leave one of them out\n");
}

TEST_CASE("shaped planes that cannot be", "[text][mistakes]") {
  CHECK(kit_messages("shaped ovolo\nbead out 3/8 down 3/8\n") ==
        "1:1: this shaped plane is not closed; expected 'end' after its elements\n");
  CHECK(kit_messages("shaped ovolo\nend\n") ==
        "1:1: this shaped plane has no elements; put one below it, such as 'cavetto 3/8'\n");
  CHECK(kit_messages("shaped\nend\n") == "1:7: expected a name after 'shaped', but the line ends here\n");
  CHECK(kit_messages("shaped ovolo\nfillet out 1/8\nstep down 1/8\nbead out 3/8 down 3/8\nend\n") ==
        "3:1: a shaped plane cannot have an upright part in its sole; let it lean, or leave it out\n");
  const std::string under = "a shaped plane's sole must go out all the way; write each element with 'out'\n";
  CHECK(kit_messages("shaped s\nfillet out 1\nfillet in 1/8\nend\n") == "3:1: " + under);
  CHECK(kit_messages("shaped s\nfillet out 1\nbead out 3/8 down 3/8 large\nend\n") == "3:1: " + under);
  CHECK(kit_messages("shaped s\nfilet out 1\nend\n") ==
        "2:1: unknown word 'filet'; expected an element or 'end'; did you mean 'fillet'?\n");
  CHECK(kit_messages("shaped s\nfillet out 1\nhollow 6\nend\n") ==
        "3:1: 'hollow' inside a shaped plane; expected an element or 'end'\n");
  CHECK(kit_messages("shaped s\nfillet out 1\nstart face 1\nend\n") ==
        "3:1: 'start' comes before the elements; put it above them\n");
  CHECK(kit_messages("shaped s\nstart back 1\nfillet out 1\nend\n") ==
        "2:7: expected 'face' after 'start', found 'back'\n");
}

TEST_CASE("soles too small for a plan to be written with them", "[text][mistakes]") {
  for (const char* plane : {"rebate .0000009mm", "bench .0000009mm", "hollow radius .0000009mm",
                            "round 6 width .0000009mm", "round 6 arc .0000001"}) {
    CAPTURE(plane);
    CHECK(kit_messages(plane) ==
          "1:1: a sole must be wider than 0.000001mm; check the figure and its unit\n");
  }
  CHECK(kit_messages("plough 1/8 .0000009mm") ==
        "1:12: a sole must be wider than 0.000001mm; check the figure and its unit\n");
  CHECK(kit_messages("shaped s\nfillet out 1\nfillet out .0000009mm\nend\n") ==
        "3:1: this element is shorter than 0.000001mm; leave it out\n");
}

TEST_CASE("a body given twice", "[text][mistakes]") {
  CHECK(kit_messages("rebate 1 body 1/8 above 1\nbody 1/8 above 1\n") ==
        "2:1: this plane has a body already; leave one of them out\n");
  CHECK(kit_messages("rebate 1 body 1/8 above 1 body 1/8 above 1\n") ==
        "1:27: 'body' is given twice; leave one of them out\n");
}

TEST_CASE("all mistakes of a kit come in one run", "[text][mistakes]") {
  CHECK(kit_messages("holow 6\nrebate 0\nshop gauge\nhollow 6 width 1\n") ==
        "1:1: unknown word 'holow'; did you mean 'hollow'?\n2:8: the width of the sole after 'rebate' must "
        "be more than 0, such as 3/8in or 9.5mm\n3:11: expected the smallest division after 'gauge', such as "
        "3/8in or 9.5mm, but the line ends here\n4:1: a sole 1in wide is wider than its whole circle, "
        "0.75in; measure both again\n");
}
