// The exact words said of mistaken statements of a profile, other than its elements.
#include <vector>

#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

struct Case {
  std::string profile;
  std::string said;  // "line:column: message" a line
};

}  // namespace

TEST_CASE("each mistake in a profile is named, with what was expected", "[text][mistakes]") {
  const std::vector<Case> cases = {
      {"start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:1: no stock; expected a line such as 'stock 2 wide, 3/4 thick'\n"},
      {"stock 2 wide, 3/4 thick\n",
       "1:1: no chain; expected 'start face …' or 'start back …' and the elements after it\n"},
      {"profile nothing\n",
       "1:1: no stock; expected a line such as 'stock 2 wide, 3/4 thick'\n"
       "1:1: no chain; expected 'start face …' or 'start back …' and the elements after it\n"},
      {"profile\n"
       "stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:8: expected a name after 'profile', but the line ends here\n"},
      {"profile a\n"
       "profile b\n"
       "stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:1: a second 'profile'; the first is on line 1: leave one of them out\n"},
      {"units mm\n"
       "units inch\n"
       "stock 60 wide 20 thick\n"
       "start face 10\n"
       "chamfer 10\n",
       "2:1: a second 'units'; the first is on line 1: leave one of them out\n"},
      {"stock 2 wide, 3/4 thick\n"
       "units mm\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:1: 'units' must come before the first length; put it above line 1\n"},
      {"units\n"
       "stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:6: expected inch or mm after 'units', but the line ends here\n"},
      {"units inchs\n"
       "stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:7: expected inch or mm after 'units', found 'inchs'; did you mean 'inch'?\n"},
      {"units inch mm\n"
       "stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:12: the line is complete before 'mm'; leave it out, or put # before it if it is a remark\n"},
      {"stock 2 wide, 3/4 thick\n"
       "stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:1: a second 'stock'; the first is on line 1: leave one of them out\n"},
      {"stock\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:6: stock needs a width and a thickness, as in 'stock 2 wide, 3/4 thick'\n"},
      {"stock 2\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:8: expected wide or thick after the length, but the line ends here\n"},
      {"stock 2 x 3/4\n"
       "start face 1\n"
       "chamfer 1\n",
       "1:9: 'x' does not say which is the width; expected both named, such as 'stock 2 wide, 3/4 thick'\n"},
      {"stock 2 wide\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:13: stock needs a width and a thickness, as in 'stock 2 wide, 3/4 thick'\n"},
      {"stock 2 wide, 3/4\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:18: expected thick after the length, but the line ends here\n"},
      {"stock 2 wide 3/4 wide\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:18: 'wide' is given twice; leave one of them out\n"},
      {"stock 2 wyde 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:9: expected wide or thick after the length, found 'wyde'; did you mean 'wide'?\n"},
      {"stock 2 wide, 3/4 thick, 96 long\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:24: the line is complete before ','; leave it out, or put # before it if it is a remark\n"},
      {"stock 2 wide, , 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:13: nothing follows this comma; leave it out\n"},
      {"stock 2 in wide 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:9: expected wide or thick after the length, found 'in'; write a unit against its number, as "
       "3/4in\n1:12: expected a thickness before 'thick', such as 3/8in or 9.5mm, found 'wide'\n"},
      {"stock 0 wide 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:7: a width before 'wide' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"stock wide 2 thick 3/4\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:7: expected a width before 'wide', such as 3/8in or 9.5mm, found 'wide'\n"},
      {"stock 2 wide, 3/4 thick,\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "1:24: the line is complete before ','; leave it out, or put # before it if it is a remark\n"},
      {"stock 2 wide, 3/4 thick\n"
       "side\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:5: expected face, underside or back after 'side', but the line ends here\n"},
      {"stock 2 wide, 3/4 thick\n"
       "side bak\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:6: expected face, underside or back after 'side', found 'bak'; did you mean 'back'?\n"},
      {"stock 2 wide, 3/4 thick\n"
       "side top\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:6: expected face, underside or back after 'side', found 'top'\n"},
      {"stock 2 wide, 3/4 thick\n"
       "side back\n"
       "side underside\n"
       "start back 1/4\n"
       "fillet out 3/8\n"
       "step up 1/4\n",
       "2:1: this side has no chain; expected 'start face …' or 'start back …' after it\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n"
       "side back\n",
       "5:1: this side has no chain; expected 'start face …' or 'start back …' after it\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n"
       "side back 2\n"
       "start face 1/4\n"
       "chamfer 1/4\n",
       "5:11: the line is complete before '2'; leave it out, or put # before it if it is a remark\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:6: expected face or back after 'start', but the line ends here\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start fase 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:7: expected face or back after 'start', found 'fase'; did you mean 'face'?\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start edge 1\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:7: expected face or back after 'start', found 'edge'\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:11: expected a distance after 'face', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1 2\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:14: the line is complete before '2'; leave it out, or put # before it if it is a remark\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 0\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:12: a distance after 'face' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n",
       "2:1: the chain has no elements; put one below it, such as 'step down 1/8'\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "side back\n"
       "start face 1/4\n"
       "chamfer 1/4\n",
       "2:1: the chain has no elements; put one below it, such as 'step down 1/8'\n"},
      {"stock 2 wide, 3/4 thick\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "2:1: an element before 'start'; expected 'start face …' or 'start back …' first\n"},
      {"stock 2 wide, 3/4 thick\n"
       "side back\n"
       "step down 1/4\n"
       "fillet out 1\n",
       "3:1: an element before 'start'; expected 'start face …' or 'start back …' first\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1\n"
       "start face 1/2\n",
       "5:1: a second 'start' in one chain; begin another chain with 'side face', 'side underside' or 'side "
       "back'\n"},
      {"profil x\n"
       "units cm\n"
       "stock 2 wide 0 thick\n"
       "start face 1\n"
       "setp down 1/4\n"
       "bead out 3/8 down 1/2\n"
       "ogee out 1\n",
       "1:1: unknown word 'profil'; did you mean 'profile'?\n2:7: expected inch or mm after 'units', found "
       "'cm'; did you mean 'mm'?\n3:14: a thickness before 'thick' must be more than 0, such as 3/8in or "
       "9.5mm\n5:1: unknown word 'setp'; did you mean 'step'?\n6:1: bead without a radius is a quadrant, and "
       "its two moves must be equal; expected equal moves, or a radius of at least 0.3125in\n7:11: ogee "
       "needs 'down' or 'up' and a length, as in 'ogee out 3/4 down 3/4'\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "filet out 1\n"
       "side underside\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1/2\n",
       "4:1: unknown word 'filet'; did you mean 'fillet'?\n8:1: the chain ends inside the stock with element "
       "2 (fillet) on the underside, 0.5in from the working edge and 0.25in from the underside; expected an "
       "end on the working edge, the face or the underside\n"},
  };
  for (const Case& mistaken : cases) {
    CAPTURE(mistaken.profile);
    CHECK(profile_messages(mistaken.profile) == mistaken.said);
    CHECK_FALSE(read_profile(mistaken.profile, "p").value.has_value());
  }
}
