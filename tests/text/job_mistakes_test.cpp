// The exact words said of a mistaken statement in a job.
#include <string>
#include <vector>

#include "catch.h"
#include "text/jobs.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

struct Case {
  std::string statement;  // the fourth line of a sound job
  std::string said;       // "line:column: message" a line
};

const std::string kSound =
    "kit sixes.kit\nblank poplar 3/4 thick 5 1/2 wide 96 long\nmould shelf shelf.profile width 1 length 42\n";

}  // namespace

TEST_CASE("each mistake in a job is named, with what was expected", "[job][mistakes]") {
  const std::vector<Case> cases = {
      {"mold top shelf.profile length 42", "4:1: unknown word 'mold'; did you mean 'mould'?\n"},
      {"mould", "4:6: expected a name after 'mould', but the line ends here\n"},
      {"mould top",
       "4:10: expected the file of its profile after the name of the moulding, but the line ends here\n"},
      {"mould top shelf.profile", "4:24: a moulding needs its length, as in 'length 44'\n"},
      {"mould top shelf.profile length",
       "4:31: expected a length after 'length', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"mould top shelf.profile length 0",
       "4:32: a length after 'length' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"mould top shelf.profile length -4",
       "4:32: '-4' has a sign, and numbers here have none; leave it out\n"},
      {"mould top shelf.profile length 42 count 0",
       "4:41: expected how many after 'count', a whole number from 1 to 10000, found '0'\n"},
      {"mould top shelf.profile length 42 count 1.5",
       "4:41: expected how many after 'count', a whole number from 1 to 10000, found '1.5'\n"},
      {"mould top shelf.profile length 42 count -1",
       "4:41: expected how many after 'count', a whole number from 1 to 10000, found '-1'\n"},
      {"mould top shelf.profile length 42 lenght 3",
       "4:35: expected width, length, count, mitre, spring, corner, of or across, found 'lenght'; did you "
       "mean 'length'?\n"},
      {"mould top shelf.profile length 42 length 43",
       "4:35: 'length' is given twice; leave one of them out\n"},
      {"mould top shelf.profile length 42 mitre",
       "4:40: expected left, right or both after 'mitre', but the line ends here\n"},
      {"mould top shelf.profile length 42 mitre lefft",
       "4:41: expected left, right or both after 'mitre', found 'lefft'; did you mean 'left'?\n"},
      {"mould top shelf.profile length 42 width 1 mitre both spring 91",
       "4:61: degrees after 'spring' is at most 90; write a smaller one\n"},
      {"mould top shelf.profile length 42 width 1 mitre both spring 90 1/2",
       "4:61: degrees after 'spring' is at most 90; write a smaller one\n"},
      {"mould top shelf.profile length 42 width 1 mitre both spring 22 1/2in",
       "4:61: expected degrees after 'spring', a plain number, found '22 1/2in'\n"},
      {"mould top shelf.profile length 42 width 1 mitre both spring x",
       "4:61: expected degrees after 'spring', found 'x'\n"},
      {"mould top shelf.profile length 42 width 1 mitre both corner 0",
       "4:61: a corner is more than 0 and less than 180 degrees, such as 90\n"},
      {"mould top shelf.profile length 42 width 1 mitre both corner 180",
       "4:61: a corner is more than 0 and less than 180 degrees, such as 90\n"},
      {"mould top shelf.profile length 42 width 1 spring 38 corner 90",
       "4:50: warning: no mitre uses this angle; expected 'mitre left', 'right' or 'both'\n4:60: warning: no "
       "mitre uses this angle; expected 'mitre left', 'right' or 'both'\n"},
      {"mould top shelf.profile width 1 length 2 mitre both",
       "4:42: the length is too short for this mitre: it runs back 2in, and the moulding is 2in long; check "
       "the length and the angles\n"},
      {"mould top shelf.profile width 1 length 1 mitre left corner 60",
       "4:42: the length is too short for this mitre: it runs back 1.7321in, and the moulding is 1in long; "
       "check the length and the angles\n"},
      {"mould top shelf.profile length 42 of",
       "4:37: expected the species after 'of', but the line ends here\n"},
      {"mould top shelf.profile length 42 of popler",
       "4:38: no blank is of 'popler'; did you mean 'poplar'?\n"},
      {"mould top shelf.profile length 42 across 0",
       "4:42: the width of the side after 'across' must be more than 0, such as 3/8in or 9.5mm\n"},
      {"mould \"top shelf.profile length 42",
       "4:7: the quotation marks are not closed; put another \" behind the name\n"},
      {"mould \"\" shelf.profile length 42",
       "4:7: expected a name after 'mould', found nothing between the quotation marks\n"},
      {"mould shelf shelf.profile width 1 length 42",
       "4:7: there is a moulding 'shelf' already, on line 3; give it another name\n"},
      {"mould top shlf.profile length 42",
       "4:11: there is no profile 'shlf.profile'; check its name: it is looked for from the folder of the "
       "job\n"},
      {"mould top back.profile width 1 length 42",
       "4:30: 'back.profile' works the back edge of a blank 2in wide; leave 'width' out, or write that "
       "one\n"},
      {"mould top shelf.profile width 1/4 length 42",
       "4:31: 'shelf.profile' reaches 0.375in in from the working edge; write at least that width\n"},
      {"mould top shelf.profile length 42",
       "4:11: no blank of its thickness is 9in wide; the widest is 5.5in: add a wider one\n"},
      {"mould top shelf.profile width 6 length 42",
       "4:31: no blank of its thickness is 6in wide; the widest is 5.5in: add a wider one\n"},
      {"mould top shelf.profile width 1 length 97",
       "4:40: no blank that would do is 97in long; the longest is 96in: add a longer one\n"},
      {"mould top bad.profile width 1 length 42", "3:1: unknown word 'baed'; did you mean 'bead'?\n"},
      {"blank",
       "4:6: a blank needs its thickness, width and length, as in 'poplar 3/4 thick 5 1/2 wide 96 long'\n"},
      {"blank poplar",
       "4:13: a blank needs its thickness, width and length, as in 'poplar 3/4 thick 5 1/2 wide 96 long'\n"},
      {"blank poplar 3/4", "4:17: expected thick, wide or long after the length, but the line ends here\n"},
      {"blank poplar 3/4 thick",
       "4:23: a blank needs its thickness, width and length, as in 'poplar 3/4 thick 5 1/2 wide 96 long'\n"},
      {"blank poplar 3/4 thick 5 wide",
       "4:30: a blank needs its thickness, width and length, as in 'poplar 3/4 thick 5 1/2 wide 96 long'\n"},
      {"blank poplar 3/4 thik 5 wide 96 long",
       "4:18: expected thick, wide or long after the length, found 'thik'; did you mean 'thick'?\n"},
      {"blank poplar 3/4 thick 5 wide 96 long 3/4 thick",
       "4:43: 'thick' is given twice; leave one of them out\n"},
      {"blank poplar 3/4 thick 5 wide 96 long count 0",
       "4:45: expected how many after 'count', a whole number from 1 to 10000, found '0'\n"},
      {"blank poplar 3/4 thick 5 wide 96 long count 2 count 3",
       "4:47: 'count' is given twice; leave one of them out\n"},
      {"blank poplar 1 thick 5 wide 96 long",
       "4:1: warning: no moulding of this job can come from this blank; check its measures, or leave it "
       "out\n"},
      {"buy poplar 3/4 thick 0 wide 96 long",
       "4:22: a length before 'thick', 'wide' or 'long', or 'count' must be more than 0, such as 3/8in or "
       "9.5mm\n"},
      {"saw", "4:4: expected kerf, allowance, spring or corner after 'saw', but the line ends here\n"},
      {"saw kerf", "4:9: expected a length after 'kerf', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"saw kerf -1/16", "4:10: '-1/16' has a sign, and numbers here have none; leave it out\n"},
      {"saw kerf 1/16 kerf 1/8", "4:15: 'kerf' is given twice; leave one of them out\n"},
      {"saw kerf 1/16 alowance 1/32",
       "4:15: expected kerf, allowance, spring or corner, found 'alowance'; did you mean 'allowance'?\n"},
      {"rip", "4:4: expected kerf, true or hold after 'rip', but the line ends here\n"},
      {"rip hold 6", "4:10: no blank is so wide; write at most 5.5in, the width of the widest\n"},
      {"rip kerf x true 1/32", "4:10: expected a length after 'kerf', such as 3/8in or 9.5mm, found 'x'\n"},
      {"spare", "4:6: expected a length after 'spare', such as 3/8in or 9.5mm, but the line ends here\n"},
      {"spare 12 count 0",
       "4:16: expected how many after 'count', a whole number from 1 to 10000, found '0'\n"},
      {"spare 12 13",
       "4:10: the line is complete before '13'; leave it out, or put # before it if it is a remark\n"},
      {"moisture 12 7", "4:10: the driest comes first, and is less, as in 'moisture 7 12'\n"},
      {"moisture 6", "4:11: expected per cent of moisture at the dampest, but the line ends here\n"},
      {"moisture 6 31", "4:12: per cent of moisture at the dampest is at most 30; write a smaller one\n"},
      {"board screw 3/8", "4:16: board needs its stops, as in 'board stops at 1/2, 1, 2'\n"},
      {"shop strokes 0", "4:14: strokes a minute must be more than 0, such as 20\n"},
      {"kit other.kit", "4:1: a second 'kit'; the first is on line 1: leave one of them out\n"},
      {"units inch", "4:1: 'units' must come before the first length; put it above line 2\n"},
      {"job", "4:4: expected a name after 'job', but the line ends here\n"},
      {"jobb hall", "4:1: unknown word 'jobb'; did you mean 'job'?\n"},
  };
  for (const Case& mistaken : cases) {
    CAPTURE(mistaken.statement);
    CHECK(job_messages(kSound + mistaken.statement + "\n") == mistaken.said);
  }
}

TEST_CASE("what a whole job lacks is reported at its top", "[job][mistakes]") {
  CHECK(job_messages("job nothing\n") ==
        "1:1: no kit; expected a line such as 'kit chest.kit'\n"
        "1:1: no mouldings; expected lines such as 'mould shelf shelf.profile length 42'\n"
        "1:1: no blanks; expected lines such as 'blank poplar 3/4 thick 5 1/2 wide 96 long'\n");
  CHECK(job_messages("") == "1:1: the file is empty; to begin one, see: arrisline new --help\n");
}

TEST_CASE("the mistakes of all files come together, the job's own first, each file's once",
          "[job][mistakes]") {
  const Reading<Job> reading = job_of(
      "kit bad.kit\nblank 3/4 thick 5 wide 96 long\nmould a bad.profile length 4\nmould b bad.profile length "
      "5\n"
      "mould a shelf.profile width 1 length 97\n");
  CHECK_FALSE(reading.value);
  REQUIRE(reading.diagnostics.size() == 5);
  CHECK(reading.diagnostics[0].file == "test.job");
  CHECK(reading.diagnostics[0].message == "there is a moulding 'a' already, on line 3; give it another name");
  CHECK(reading.diagnostics[1].message ==
        "no blank that would do is 97in long; the longest is 96in: add a longer one");
  CHECK(reading.diagnostics[2].file == "bad.kit");
  CHECK(reading.diagnostics[3].file == "bad.kit");
  CHECK(reading.diagnostics[4].file == "bad.profile");
}

TEST_CASE("a length to set up by that no blank of some profile has is told where it stands",
          "[job][mistakes]") {
  const std::string two =
      "kit sixes.kit\nblank pine 3/4 thick 5 wide 60 long\nbuy oak 3/4 thick 5 wide 80 long\n"
      "mould a shelf.profile width 1 length 40 of pine\nmould b shelf.profile width 2 length 40 of oak\n";
  CHECK(job_messages(two + "spare 70 count 2\n") ==
        "6:7: no blank that 'a' may come from is so long; write at most 60in, or add a longer one\n");
  CHECK(job_messages(two + "spare 60\n").empty());
  // One of the same profile and width comes from the longer.
  CHECK(job_messages(two + "mould c shelf.profile width 1 length 40 of oak\nspare 70\n").empty());
}

TEST_CASE("a thickness that no blank has is told with the nearest", "[job][mistakes]") {
  CHECK(job_messages("kit sixes.kit\nblank pine 1 thick 5 wide 96 long\nblank oak 7/8 thick 5 wide 96 long\n"
                     "mould a shelf.profile width 1 length 4\n") ==
        "4:9: no blank is 0.75in thick, as this profile is; the nearest is 0.875in: add one of its own\n");
  CHECK(job_messages("kit sixes.kit\nblank pine 1 thick 5 wide 96 long\nblank oak 3/4 thick 5 wide 96 long\n"
                     "mould a shelf.profile width 1 length 4 of pine\n") ==
        "4:9: no blank of 'pine' is 0.75in thick, as this profile is; the nearest is 1in: add one of its "
        "own\n");
}

TEST_CASE("a job has its limits", "[job][mistakes]") {
  std::string many = kSound;
  for (int i = 0; i < 200; ++i) many += "mould m" + std::to_string(i) + " shelf.profile width 1 length 4\n";
  CHECK(job_messages(many).find("a job has at most 200 mouldings; make two jobs of it; to raise this limit, "
                                "make kMaxMoulds larger") != std::string::npos);
  std::string stocks = kSound;
  for (int i = 0; i < 100; ++i) stocks += "blank 3/4 thick 5 wide 96 long\n";
  CHECK(job_messages(stocks).find("a job has at most 100 lines of blanks; make two jobs of it; to raise this "
                                  "limit, make kMaxStocks") != std::string::npos);
  CHECK(job_messages(kSound + "mould b shelf.profile width 1 length 4 count 6000\n"
                              "mould c shelf.profile width 1 length 4 count 6000\n")
            .find("5:1: a job has at most 10000 pieces") == 0);
}
