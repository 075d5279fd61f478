// The exact words said of a mistaken element, and the columns pointed at.
#include <vector>

#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

struct Case {
  std::string statement;
  std::string said;  // "column+length: message" a line
};

}  // namespace

TEST_CASE("each mistake in an element is named, with what was expected", "[text][mistakes]") {
  const std::vector<Case> cases = {
      {"step", "5+1: step needs 'down' or 'up' and a length, as in 'step down 1/8'\n"},
      {"step down", "10+1: expected a length after 'down', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"step out 3/8", "6+3: 'out' does not belong to step; expected down or up\n"},
      {"step dwn 1/8", "6+3: unknown word 'dwn'; expected down or up; did you mean 'down'?\n"},
      {"step down x", "11+1: expected a length after 'down', such as 3/8in or 9.5mm, found 'x'\n"},
      {"step down 1/0", "11+3: '1/0': a fraction cannot have 0 below the line; write one such as 3/8\n"},
      {"step down 1e999", "11+5: '1e999' is short for a longer number; write it out in full, as 0.005\n"},
      {"step down nan", "11+3: expected a length after 'down', such as 3/8in or 9.5mm, found 'nan'\n"},
      {"step down -1/8", "11+4: '-1/8' has a sign, and numbers here have none; leave it out\n"},
      {"step down +1/8", "11+4: '+1/8' has a sign, and numbers here have none; leave it out\n"},
      {"step down 0", "11+1: a length after 'down' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"step down 0/4", "11+3: a length after 'down' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"step down 11000mm",
       "11+7: '11000mm' is over 10 m, the longest that is read; check the figure and its unit\n"},
      {"step down 400in",
       "11+5: '400in' is over 10 m, the longest that is read; check the figure and its unit\n"},
      {"step down 1/8 1/8", "15+3: the length '1/8' has no word before it; expected down or up\n"},
      {"step down 3/8 in",
       "15+2: 'in' standing alone is the direction; write it against its number where it is a unit: "
       "'3/8in'\n"},
      {"step down 3/8 mm", "11+6: write a unit against its number: '3/8mm'\n"},
      {"step down 3/8cm", "11+5: '3/8cm': 'cm' is not a unit; expected in, mm or ft; write '3.75mm'\n"},
      {"step down 3/8 cm",
       "11+6: 'cm' is not a unit; expected in, mm or ft, written against the number; write '3.75mm'\n"},
      {"step down 3/8mn", "11+5: '3/8mn': 'mn' is not a unit; expected in, mm or ft\n"},
      {"step down 1/8,", "14+1: nothing follows this comma; leave it out\n"},
      {"step down 1/8,,", "14+1: nothing follows this comma; leave it out\n"},
      {"step down 1 / 8", "13+1: the length '/' has no word before it; expected down or up\n"},
      {"step down 1.5/8", "11+5: '1.5/8': a fraction is of two whole numbers, as 3/8\n"},
      {"step down 1.5-1/8", "11+7: '1.5-1/8': only a whole number has a fraction joined to it, as 1-1/2\n"},
      {"step down 1-8", "11+3: '1-8': after the hyphen a fraction is expected, as 1-1/2\n"},
      {"step down 1.2.3", "11+5: '1.2.3' has more than one decimal point; leave one, as in 1.5\n"},
      {"step down .", "11+1: expected a length after 'down', such as 3/8in or 9.5mm, found '.'\n"},
      {"step down 12345678901234567890123456789012345678901",
       "11+41: '1234567890123456789012345678901234567890…' has more than 40 digits; round it\n"},
      {"step down 1/8 down 1/4", "15+4: 'down' (or 'up') is given twice; leave one of them out\n"},
      {"step down 1/8 up 1/4", "15+2: 'up' (or 'down') is given twice; leave one of them out\n"},
      {"step up 1/8 foo 3", "13+3: unknown word 'foo'; expected down or up\n"},
      {"fillet", "7+1: fillet needs 'out' or 'in' and a length, as in 'fillet out 1/8'\n"},
      {"fillet out 1/8 in",
       "16+2: 'in' standing alone is the direction; write it against its number where it is a unit: "
       "'1/8in'\n"},
      {"fillet uot 1/8", "8+3: unknown word 'uot'; expected out or in; did you mean 'out'?\n"},
      {"bevel out 3/8", "14+1: bevel needs 'down' or 'up' and a length, as in 'bevel out 1/4 down 1/8'\n"},
      {"bevel down 1/2", "15+1: bevel needs 'out' or 'in' and a length, as in 'bevel out 1/4 down 1/8'\n"},
      {"bead",
       "5+1: bead needs a move 'out' or 'in', 'down' or 'up', or both, as in 'bead out 3/8 down 3/8'\n"},
      {"bead out 3/8", "13+1: bead in one direction needs a radius, as in 'bead down 3/8 radius 1/4'\n"},
      {"bead out 3/8 down 1/2",
       "1+21: bead without a radius is a quadrant, and its two moves must be equal; expected equal moves, or "
       "a radius of at least 0.3125in\n"},
      {"bead out 3/8 down 3/8 radius 1/8",
       "30+3: a radius of 0.125in does not reach; write 0.2652in or more\n"},
      {"bead out 3/8 down 3/8 radius .2651",
       "30+5: a radius of 0.2651in does not reach; write 0.2652in or more\n"},
      {"bead out 3/8 in down 3/8 in",
       "14+2: 'in' standing alone is the direction; write it against its number where it is a unit: "
       "'3/8in'\n26+2: "
       "'in' standing alone is the direction; write it against its number where it is a unit: '3/8in'\n"},
      {"bead out 3/8 down 3/8 large large", "29+5: 'large' is given twice; leave one of them out\n"},
      {"bead out 3/8 dwon 3/8 radios 3/8",
       "14+4: unknown word 'dwon'; expected out, in, down, up, radius or large; did you mean 'down'?\n"
       "23+6: unknown word 'radios'; expected out, in, down, up, radius or large; did you mean 'radius'?\n"},
      {"bead outt 3/8 dwn 3/8",
       "6+4: unknown word 'outt'; expected out, in, down, up, radius or large; did you mean 'out'?\n"
       "15+3: unknown word 'dwn'; expected out, in, down, up, radius or large; did you mean 'down'?\n"},
      {"bead 3/8",
       "6+3: the length '3/8' has no word before it; expected out, in, down, up, radius or large\n"},
      {"ovolo", "6+1: expected a length after 'ovolo', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"ovolo x", "7+1: expected a length after 'ovolo', such as 3/8in or 9.5mm, found 'x'\n"},
      {"ovolo out 3/8 down 1/2",
       "7+3: ovolo has one size, as in 'ovolo 3/8'; where it goes farther one way than the other, write "
       "'bead "
       "out 3/8 down 1/2 radius 1/2'\n"},
      {"scotia down 3/8", "8+4: scotia has one size, as in 'scotia 1/2'\n"},
      {"ovolo 3/8 down 3/8",
       "11+4: 'down' does not belong to ovolo; expected only a length, as in 'ovolo 3/8'\n"},
      {"ovolo 3/8 3/8",
       "11+3: the length '3/8' has no word before it; expected only a length, as in 'ovolo 3/8'\n"},
      {"ogee out 3/4", "13+1: ogee needs 'down' or 'up' and a length, as in 'ogee out 3/4 down 3/4'\n"},
      {"ogee out 3/4 down 3/4 radius 1/8",
       "30+3: a radius of 0.125in does not reach; write 0.2652in or more\n"},
      {"ogee out 3/4 down 3/4 large",
       "23+5: 'large' does not belong to ogee; expected out, in, down, up or radius\n"},
      {"reverse-ogee",
       "13+1: reverse-ogee needs 'out' or 'in' and a length, as in 'reverse-ogee out 3/4 down 3/4'\n"
       "13+1: reverse-ogee needs 'down' or 'up' and a length, as in 'reverse-ogee out 3/4 down 3/4'\n"},
      {"quirk", "6+1: quirk needs a length, as in 'quirk 1/8'\n"},
      {"quirk 1/8 down 1/4",
       "1+18: quirk takes one length or 'out' and 'down', not both; leave one of them out\n"},
      {"quirk out 1/8", "14+1: quirk needs 'down' and a length, as in 'quirk 1/8'\n"},
      {"thumbnail out 1/4 down 1",
       "1+24: thumbnail must go out at least four fifths as far as it goes down; make 'out' longer or 'down' "
       "shorter\n"},
      {"thumbnail in 1/4 down 1", "11+2: 'in' does not belong to thumbnail; expected out or down\n"},
      {"astragal x", "10+1: expected a length after 'astragal', such as 3/8in or 9.5mm, found 'x'\n"},
      {"filet out 1/8", "1+5: unknown word 'filet'; did you mean 'fillet'?\n"},
      {"reverse ogee out 1 down 1", "1+7: unknown word 'reverse'; did you mean 'reverse-ogee'?\n"},
      {"foo", "1+3: unknown word 'foo'; see the words of a profile with: arrisline words\n"},
      {"step down ½", "11+1: expected a length after 'down', found '½'; write '1/2'\n"},
      {"step down −1", "11+2: '−1' has a sign, and numbers here have none; leave it out\n"},
      {"start face 1/4",
       "1+5: a second 'start' in one chain; begin another chain with 'side face', 'side underside' or 'side "
       "back'\n"},
  };
  for (const Case& mistaken : cases) {
    CAPTURE(mistaken.statement);
    CHECK(element_messages(mistaken.statement) == mistaken.said);
  }
}
