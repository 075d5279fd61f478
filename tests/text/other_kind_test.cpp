// Words and files that belong elsewhere.
#include "text/other_kind.h"

#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

TEST_CASE("what an unknown word is told", "[text][words]") {
  const std::vector<std::string_view> known = {"stock", "start", "step"};
  CHECK(known_words("hollow", known, FileKind::profile) ==
        "; it belongs in a kit, and this is a profile: move it there, or write 'bead', which is what a "
        "hollow makes");
  CHECK(known_words("stpe", known, FileKind::profile) == "; did you mean 'step'?");
  CHECK(known_words("//", known, FileKind::profile) == "; begin a remark with #");
  CHECK(known_words("wibble", known, FileKind::job) == "; see the words of a job with: arrisline words");
}

TEST_CASE("a whole file of another kind is one mistake", "[text][words]") {
  CHECK(profile_messages("kit k\nunits inch\nrebate 3/4\nhollow 6\n") ==
        "1:1: this file is a kit, and a profile is expected here; name a profile here, and the kit after "
        "--kit\n");
  CHECK(kit_messages("# remark\nprofile p\nstock 2 wide, 3/4 thick\nstart face 3/8\nchamfer 3/8\n") ==
        "2:1: this file is a profile, and a kit is expected here; name the profile first, and a kit after "
        "--kit\n");
  CHECK(profile_messages("job j\nblank poplar 3/4 thick 5 wide 96 long\nmould a b.profile length 42\n")
            .rfind("1:1: this file is a job, and a profile is expected here; plan it with: arrisline job ",
                   0) == 0);
}

TEST_CASE("one line from elsewhere does not make it another file", "[text][words]") {
  CHECK(profile_messages("profile p\nstock 2 wide, 3/4 thick\nhollow 6\nstart face 3/8\nchamfer 3/8\n") ==
        "3:1: unknown word 'hollow'; it belongs in a kit, and this is a profile: move it there, or write "
        "'bead', which is what a hollow makes\n");
}
