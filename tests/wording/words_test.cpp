// The nearest known word.
#include "wording/words.h"

#include "catch.h"
#include "wording/source.h"

using namespace arrisline;

TEST_CASE("slips between two words", "[text][words]") {
  CHECK(edit_distance("", "") == 0);
  CHECK(edit_distance("fillet", "fillet") == 0);
  CHECK(edit_distance("filet", "fillet") == 1);
  CHECK(edit_distance("down", "dwon") == 1);  // neighbours swapped
  CHECK(edit_distance("bead", "") == 4);
  // R. W. Hamming's and V. I. Levenshtein's textbook pair, published in many places.
  CHECK(edit_distance("kitten", "sitting") == 3);
}

TEST_CASE("the nearest word, or none", "[text][words]") {
  const std::vector<std::string_view> known = {"out", "in", "down", "up", "radius", "large", "reverse-ogee"};
  CHECK(nearest_word("dwon", known) == "down");
  CHECK(nearest_word("raduis", known) == "radius");
  CHECK(nearest_word("OUTT", known) == "out");
  CHECK(nearest_word("reverse", known) == "reverse-ogee");
  CHECK(nearest_word("lar", known) == "large");
  CHECK(nearest_word("hollow", known).empty());
  CHECK(nearest_word("xyz", known).empty());
  CHECK(nearest_word(std::string(100000, 'a'), known).empty());
  // Of two as near, the one with the same first letter.
  CHECK(nearest_word("bat", {"cat", "bag"}) == "bag");
}

TEST_CASE("other names of the trade lead to the word known here", "[text][words]") {
  // Common practice, no source: American spellings, and the classical name of an ogee.
  CHECK(nearest_word("Rabbet", {"hollow", "rebate"}) == "rebate");
  CHECK(nearest_word("plow", {"plough", "round"}) == "plough");
  CHECK(nearest_word("cyma", {"cove", "ogee"}) == "ogee");
  CHECK(nearest_word("r", {"out", "radius"}) == "radius");
  CHECK(nearest_word("rabbet", {"hollow", "round"}).empty());
}

TEST_CASE("words in messages", "[text][words]") {
  CHECK(quoted("bead") == "'bead'");
  CHECK(quoted(std::string(50, 'x')) == "'" + std::string(40, 'x') + "…'");
  CHECK(either({"a"}) == "a");
  CHECK(either({"a", "b"}) == "a or b");
  CHECK(either({"a", "b", "c"}) == "a, b or c");
}
