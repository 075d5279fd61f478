// What the statements of a job mean.
#include "catch.h"
#include "text/jobs.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

Job read(const std::string& text) {
  Reading<Job> reading = job_of(text);
  INFO(shown(reading));
  REQUIRE(reading.value);
  return std::move(*reading.value);
}

const std::string kBlank = "blank poplar 3/4 thick 11 wide 96 long\n";
const std::string kLeast = "kit sixes.kit\n" + kBlank + "mould shelf shelf.profile length 42\n";

}  // namespace

TEST_CASE("the least job: a kit, a blank and a moulding", "[job]") {
  const Job job = read(kLeast);
  CHECK(job.name == "test");
  CHECK(job.kit.name == "sixes");
  CHECK(job.kit_file == "sixes.kit");
  REQUIRE(job.stocks.size() == 1);
  CHECK(job.stocks[0].species == "poplar");
  CHECK(job.stocks[0].thickness == Approx(19.05));
  CHECK(job.stocks[0].width == Approx(279.4));
  CHECK(job.stocks[0].length == Approx(2438.4));
  CHECK(job.stocks[0].count == 1);
  CHECK_FALSE(job.stocks[0].to_buy);
  REQUIRE(job.moulds.size() == 1);
  CHECK(job.moulds[0].name == "shelf");
  CHECK(job.moulds[0].section.name == "shelf edge");
  CHECK(job.moulds[0].width == Approx(9 * 25.4));  // the profile's own
  CHECK(job.moulds[0].count == 1);
  CHECK(job.moulds[0].mitre == Ends::none);
  CHECK(job.saw.kerf == 0);
  CHECK(job.ripping.hold == 0);
  CHECK_FALSE(job.spare);
}

TEST_CASE("every statement and every option", "[job]") {
  const Job job = read(R"(
job     the hall
units   mm
kit     "sixes.kit"
blank   white oak  20 wide 19.05 thick, 2ft long, count 3   # in any order, commas or none
blank   19.05 thick 100 wide 1000 long
buy     white oak  19.05 thick 120 wide 2400 long
buy     white oak  19.05 thick 140 wide 2400 long count 4
mould   "top shelf" shelf.profile  length 900 count 2 width 15 mitre both inside spring 38 corner 135
mould   lower "shelf.profile" width 18, length 800, of white oak, across 250
mould   end shelf.profile width 18 length 300 mitre left
saw     kerf 2 allowance 1 spring 0 corner 120
rip     kerf 3 true 0.5 hold 15
spare   300 count 2
board   stops at 12, 20  screw 8  clear 1.5
shop    strokes 30
shop    shaving rebate .2
moisture 6.5 11
)");
  CHECK(job.name == "the hall");
  CHECK(job.unit == Unit::mm);
  REQUIRE(job.stocks.size() == 4);
  CHECK(job.stocks[0].species == "white oak");
  CHECK(job.stocks[0].count == 3);
  CHECK(job.stocks[0].length == Approx(609.6));
  CHECK(job.stocks[1].species.empty());
  CHECK(job.stocks[2].to_buy);
  CHECK_FALSE(job.stocks[2].count);
  CHECK(job.stocks[3].count == 4);
  REQUIRE(job.moulds.size() == 3);
  const Mould& top = job.moulds[0];
  CHECK(top.name == "top shelf");
  CHECK(top.count == 2);
  CHECK(top.mitre == Ends::both);
  CHECK(top.inside);
  CHECK(top.spring == 38);
  CHECK(top.corner == 135);
  CHECK(top.width == 15);
  CHECK(top.section.width == 15);
  const Mould& lower = job.moulds[1];
  CHECK(lower.species == "white oak");
  CHECK(lower.across == 250);
  CHECK(lower.mitre == Ends::none);
  const Mould& end = job.moulds[2];
  CHECK(end.mitre == Ends::left);
  CHECK_FALSE(end.inside);
  CHECK(end.spring == 0);  // the saw line's
  CHECK(end.corner == 120);
  CHECK(job.saw.kerf == 2);
  CHECK(job.saw.allowance == 1);
  CHECK(job.ripping.kerf == 3);
  CHECK(job.ripping.trued == 0.5);
  CHECK(job.ripping.hold == 15);
  REQUIRE(job.spare);
  CHECK(job.spare->length == 300);
  CHECK(job.spare->count == 2);
  REQUIRE(job.kit.board);
  CHECK(job.kit.board->stops.size() == 2);
  CHECK(job.kit.shop.strokes_per_minute == 30);
  CHECK(job.kit.shop.shaving_rebate == Approx(0.2));
  CHECK(job.kit.shop.shaving_curved == Approx(0.1016));  // the kit's own, untouched
  REQUIRE(job.moisture);
  CHECK(job.moisture->driest == 6.5);
  CHECK(job.moisture->dampest == 11);
}

TEST_CASE("degrees and per cents may be mixed numbers, as lengths may", "[job]") {
  const Job job = read(
      "units mm\nkit sixes.kit\nblank 19.05 thick 100 wide 1000 long\n"
      "mould end shelf.profile width 18 length 300 mitre left spring 22 1/2 corner 112-1/2\n"
      "mould other shelf.profile width 18 length 300 mitre left\n"
      "saw kerf 2 spring 37 1/2 corner 100\nmoisture 6 1/2 9 1/4\n");
  REQUIRE(job.moulds.size() == 2);
  CHECK(job.moulds[0].spring == 22.5);
  CHECK(job.moulds[0].corner == 112.5);
  CHECK(job.moulds[1].spring == 37.5);
  REQUIRE(job.moisture);
  CHECK(job.moisture->driest == 6.5);
  CHECK(job.moisture->dampest == 9.25);
}

TEST_CASE("ripping takes the saw's kerf where it says nothing of its own", "[job]") {
  CHECK(read(kLeast + "saw kerf 1/16\n").ripping.kerf == Approx(25.4 / 16));
  CHECK(read(kLeast + "saw kerf 1/16\nrip true 1/32\n").ripping.kerf == Approx(25.4 / 16));
  CHECK(read(kLeast + "saw kerf 1/16\nrip kerf 0\n").ripping.kerf == 0);
}

TEST_CASE("a name in quotation marks may hold blanks, commas and signs of comment", "[job]") {
  const Job job =
      read("kit sixes.kit\n" + kBlank + "mould \"top, #2\" shelf.profile length 42 # a comment\n");
  CHECK(job.moulds[0].name == "top, #2");
  // An inch mark is none: it stands against its number.
  CHECK(
      read("kit sixes.kit\n" + kBlank + "mould a shelf.profile length 1 1/2\" count 2\n").moulds[0].length ==
      Approx(38.1));
}

TEST_CASE("a stock serves a moulding of its thickness that is no wider and no longer", "[job]") {
  const Job job = read(kLeast + "saw kerf 1/16 allowance 1/2\n");
  Mould mould = job.moulds[0];
  Stock stock = job.stocks[0];
  CHECK(serves(stock, mould, job));
  mould.length = 95 * 25.4;
  CHECK(serves(stock, mould, job));  // with both allowances right to the end
  mould.length += 0.01;
  CHECK_FALSE(serves(stock, mould, job));
  mould.length = 100;
  stock.thickness += 0.09;
  CHECK(serves(stock, mould, job));
  stock.thickness += 0.02;
  CHECK_FALSE(serves(stock, mould, job));
  stock.thickness = 19.05;
  mould.species = "Poplar";
  CHECK(serves(stock, mould, job));
  mould.species = "cherry";
  CHECK_FALSE(serves(stock, mould, job));
  mould.species = "";
  mould.width = stock.width + 0.01;
  CHECK_FALSE(serves(stock, mould, job));
}
