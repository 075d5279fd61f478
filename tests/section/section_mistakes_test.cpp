// The exact words said of chains that make no section. Each error names both elements.
#include <vector>

#include "section/sections.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

struct Case {
  std::string profile;
  std::string said;  // "line:column: message" a line
};

}  // namespace

TEST_CASE("each chain that makes no section is refused, with the elements named", "[section][mistakes]") {
  const std::vector<Case> cases = {
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1 1/8\n",
       "4:1: element 2 (fillet) leaves the stock over the working edge, by 0.125in, after element 1 (step); "
       "shorten a move, or take a larger stock\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1\n"
       "fillet out 1\n",
       "3:1: element 1 (step) leaves the stock over the underside, by 0.25in; shorten a move, or take a "
       "larger stock\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "step up 1/2\n"
       "fillet out 1/2\n"
       "step down 1/2\n"
       "fillet out 1/2\n",
       "4:1: element 2 (step) leaves the stock over the face, by 0.25in, after element 1 (step); shorten a "
       "move, or take a larger stock\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet in 1 1/8\n"
       "fillet out 2\n",
       "4:1: element 2 (fillet) leaves the stock over the back edge, by 0.125in, after element 1 (step); "
       "shorten a move, or take a larger stock\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 3\n"
       "step down 1/4\n"
       "fillet out 3\n",
       "2:1: the chain starts off the stock, which is 2in wide; start it within that\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start back 1\n"
       "fillet out 2\n",
       "2:1: the chain starts off the stock, which is 0.75in thick; start it within that\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1/2\n",
       "4:1: the chain ends inside the stock with element 2 (fillet), 0.5in from the working edge and 0.25in "
       "from the face; expected an end on the working edge, the underside or the face\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet in 1/2\n"
       "step up 1/4\n",
       "5:1: the chain ends on the face, on the wrong side of its start, with element 3 (step); expected an "
       "end on the working edge, the underside or the face, farther out than its start\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet in 1\n",
       "4:1: the chain ends on the back edge, on the wrong side of its start, with element 2 (fillet); "
       "expected an end on the working edge, the underside or the face, farther out than its start\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "fillet out 1\n"
       "step down 1/4\n",
       "2:1: the chain runs along the outside of the stock and cuts nothing; start it farther in\n"},
      {"stock 2 wide, 2 thick\n"
       "start face 1\n"
       "step down 1\n"
       "fillet out 1/2\n"
       "step up 1/2\n"
       "fillet in 1\n"
       "step down 1/4\n"
       "fillet out 1 1/2\n",
       "6:1: the chain crosses itself: element 4 (fillet) runs through or along element 1 (step); check "
       "their lengths and directions\n8:1: the chain crosses itself: element 6 (fillet) runs through or "
       "along element 3 (step); check their lengths and directions\n8:1: the chain crosses itself: element 6 "
       "(fillet) runs through or along element 1 (step); check their lengths and directions\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "step up 1/8\n"
       "fillet out 1\n",
       "4:1: the chain crosses itself: element 2 (step) runs through or along element 1 (step); check their "
       "lengths and directions\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1/2\n"
       "fillet in 1/4\n"
       "step down 1/4\n"
       "fillet out 3/4\n",
       "5:1: the chain crosses itself: element 3 (fillet) runs through or along element 2 (fillet); check "
       "their lengths and directions\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "bevel out 1/4 down 3/4\n"
       "bevel out 1/4 up 1/2\n"
       "fillet out 1/2\n",
       "4:1: a piece of wood is left unattached where element 1 (bevel) and element 2 (bevel) meet the "
       "underside; make one shorter\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 3/4\n"
       "fillet out 1/4\n"
       "step up 1/4\n"
       "fillet out 1/2\n",
       "6:1: the chain ends inside the stock with element 4 (fillet), 0.25in from the working edge and 0.5in "
       "from the face; expected an end on the working edge, the underside or the face\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "bead down 1/2 out 1/2\n"
       "fillet out 1/2\n"
       "side back\n"
       "start face 1 1/4\n"
       "step down 1/8\n"
       "fillet out 1 1/4\n",
       "7:1: chains overlap: element 1 (step) on the back and element 1 (bead) of line 3 take away the same "
       "wood; start one farther off\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/2\n"
       "fillet out 1\n"
       "side underside\n"
       "start face 1/2\n"
       "step down 1/2\n"
       "fillet out 1/2\n",
       "7:1: chains overlap: element 1 (step) on the underside and element 2 (fillet) of line 4 take away "
       "the same wood; start one farther off\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1\n"
       "step down 1/2\n"
       "fillet out 1\n"
       "side face\n"
       "start face 3/4\n"
       "cove out 1/2 radius 1/4\n",
       "7:1: chains overlap: element 1 (cove) and element 2 (fillet) of line 4 take away the same wood; "
       "start one farther off\n"},
      // Each comes before the other, but it is one mistake.
      {"units mm\n"
       "stock 32 wide, 35 thick\n"
       "start face 25\n"
       "bevel out 25 down 35\n"
       "side underside\n"
       "start face 8\n"
       "fillet out 8\n"
       "bevel in 20.5 down 30\n"
       "fillet out 20.5\n",
       "8:1: chains overlap: element 2 (bevel) on the underside and element 1 (bevel) of line 4 take away "
       "the "
       "same wood; start one farther off\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1 1/2\n"
       "step down 1/2\n"
       "fillet out 1\n"
       "step up 1/2\n"
       "side underside\n"
       "start face 1\n"
       "step down 1/4\n"
       "fillet out 1/4\n"
       "step up 1/4\n",
       "8:1: chains cross: element 1 (step) on the underside runs through or along element 2 (fillet) of "
       "line 4; check their lengths and directions\n9:1: chains cross: element 2 (fillet) on the underside "
       "runs through or along element 2 (fillet) of line 4; check their lengths and directions\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1 1/2\n"
       "step down 1/2\n"
       "fillet out 1\n"
       "step up 1/2\n"
       "side underside\n"
       "start face 1\n"
       "step down 3/8\n"
       "fillet out 1/4\n"
       "step up 3/8\n",
       "8:1: chains cross: element 1 (step) on the underside runs through or along element 2 (fillet) of "
       "line 4; check their lengths and directions\n10:1: chains cross: element 3 (step) on the underside "
       "runs through or along element 2 (fillet) of line 4; check their lengths and directions\n"},
      {"stock 2 wide, 3/4 thick\n"
       "start face 1 1/2\n"
       "step down 1/2\n"
       "fillet out 1\n"
       "step up 1/2\n"
       "side underside\n"
       "start face 1\n"
       "bevel down 1/4 out 1/8\n"
       "bevel out 1/4 up 1/4\n",
       "8:1: a piece of wood is left unattached where element 1 (bevel) on the underside meets element 2 "
       "(fillet) of line 4; make one shorter\n"},
      {"units mm\n"
       "stock 60 wide 40 thick\n"
       "start face 40\n"
       "step down 5\n"
       "fillet in 10\n"
       "step down 10\n"
       "fillet out 20\n"
       "bevel up 10 in 10\n"
       "fillet out 1\n"
       "bevel down 20 out 15\n"
       "fillet out 24\n",
       "9:1: warning: element 6 (fillet) touches element 2 (fillet) and closes off a pocket that no plane "
       "can reach; move them apart\n10:1: the chain crosses itself: element 7 (bevel) runs through or along "
       "element 5 (bevel); check their lengths and directions\n10:1: the chain crosses itself: element 7 "
       "(bevel) runs through or along element 4 (fillet); check their lengths and directions\n"},
      {"units mm\n"
       "stock 60 wide 40 thick\n"
       "start face 20\n"
       "step down .0000001\n"
       "fillet out 20\n",
       "4:1: element 1 (step) is too short to be drawn; leave it out\n"},
      {"units mm\n"
       "stock 60 wide 40 thick\n"
       "start face 20\n"
       "step down 10\n"
       "fillet out .00000000001\n"
       "fillet out 20\n",
       "5:1: element 2 (fillet) is too short to be drawn; leave it out\n"},
  };
  for (const Case& mistaken : cases) {
    CAPTURE(mistaken.profile);
    CHECK(profile_messages(mistaken.profile) == mistaken.said);
    CHECK_FALSE(read_profile(mistaken.profile, "p").value.has_value());
  }
}
