// What write_profile promises: the text reads back as the same section, whatever unit it is written in.
#include "text/write_profile.h"

#include <filesystem>
#include <random>

#include "arrisline/read.h"
#include "catch.h"
#include "plan/grammar.h"
#include "section/drawing_of.h"
#include "section/sections.h"
#include "text/reading.h"

namespace arrisline::testing {
namespace {

std::string written(const Section& section, Unit unit) {
  return profile_text(drawing_of(section, unit));
}

/// Both are the same outline, edge by edge.
void check_same(const Section& read, const Section& section) {
  CHECK(std::abs(read.width - section.width) < 1e-6);
  CHECK(std::abs(read.thickness - section.thickness) < 1e-6);
  REQUIRE(read.target.size() == section.target.size());
  // The outline may begin with another edge.
  std::size_t shift = 0;
  while (shift < read.target.size() && distance(read.target[shift].from, section.target[0].from) > 1e-5)
    ++shift;
  REQUIRE(shift < read.target.size());
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& a = section.target[i];
    const Edge& b = read.target[(i + shift) % read.target.size()];
    CHECK(distance(a.to, b.to) < 2e-6);
    CHECK(a.turn == b.turn);
    if (a.is_arc() && b.is_arc()) {
      CHECK(std::abs(radius(a) - radius(b)) < 2e-6);
      CHECK(std::abs(sweep(a) - sweep(b)) < 1e-3);
    }
  }
}

TEST_CASE("a profile written from an example reads back as the example", "[write]") {
  int seen = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(ARRISLINE_SOURCE_DIR) + "/examples")) {
    if (entry.path().extension() != ".profile") continue;
    INFO(entry.path());
    const Reading<Section> reading = read_profile_file(entry.path().string());
    REQUIRE(reading.value);
    for (const Unit unit : {Unit::inch, Unit::mm}) {
      const std::string text = written(*reading.value, unit);
      INFO(text);
      const Reading<Section> again = read_profile(text, "written.profile");
      INFO(shown(again));
      REQUIRE(again.value);
      check_same(*again.value, *reading.value);
    }
    ++seen;
  }
  CHECK(seen >= 10);
}

TEST_CASE("a profile of any form reads back as it was written", "[write]") {
  std::mt19937 bytes(20261127);
  int seen = 0, several = 0;
  for (int i = 0; i < 3000; ++i) {
    std::string stream;
    for (int k = 0; k < 200; ++k) stream += static_cast<char>(bytes() & 0xff);
    test::Choices choices(stream);
    const std::string profile = test::make_profile(choices);
    const Reading<Section> reading = read_profile(profile, "made.profile");
    if (!reading.value) continue;
    ++seen;
    const Unit unit = i % 2 == 0 ? Unit::inch : Unit::mm;
    const Drawing drawing = drawing_of(*reading.value, unit);
    if (drawing.chains.size() > 1) ++several;
    const std::string text = profile_text(drawing);
    INFO(profile);
    INFO(text);
    const Reading<Section> again = read_profile(text, "written.profile");
    INFO(shown(again));
    REQUIRE(again.value);
    check_same(*again.value, *reading.value);
    CHECK(written(*again.value, unit) == text);
  }
  CHECK(seen > 1500);
  CHECK(several > 100);
}

TEST_CASE("a written profile looks as a maker would write it", "[write]") {
  const std::string text =
      "profile  table edge\nunits    inch\nstock    2 wide, 3/4 thick\n\nstart    face 1/2\nstep     down "
      "1/8\n"
      "bead     out 3/8 down 3/8\nfillet   out 1/8\n";
  const Reading<Section> reading = read_profile(text, "table.profile");
  REQUIRE(reading.value);
  CHECK(written(*reading.value, Unit::inch) == text);
  CHECK(profile_text(drawing_of(*reading.value, Unit::inch), {"One line.", "", "Another\nend."}) ==
        "# One line.\n#\n# Another end.\n" + text);
  CHECK(written(*reading.value, Unit::mm) ==
        "profile  table edge\nunits    mm\nstock    50.8 wide, 19.05 thick\n\nstart    face 12.7\n"
        "step     down 3.175\nbead     out 9.525 down 9.525\nfillet   out 3.175\n");
}

TEST_CASE("one length is written alike wherever it stands", "[write]") {
  // Sixths and twelfths of an inch have no end of decimals.
  std::string text = "profile  stair\nunits    inch\nstock    2 wide, 1 thick\n\nstart    face 0.83333333\n";
  for (int i = 0; i < 5; ++i) text += "step     down 0.08333333\nfillet   out 0.16666667\n";
  const Reading<Section> reading = read_profile(text, "stair.profile");
  INFO(shown(reading));
  REQUIRE(reading.value);
  Drawing drawing = drawing_of(*reading.value, Unit::inch);
  for (Stroke& stroke : drawing.chains.front().strokes)
    stroke.move = stroke.move.x == 0 ? Point{0, kMmPerInch / 12} : Point{-kMmPerInch / 6, 0};
  drawing.chains.front().start = kMmPerInch * 5 / 6;
  CHECK(profile_text(drawing) == text);
}

TEST_CASE("a flat at the end stays level or upright, whatever was rounded away before it", "[write]") {
  const Section section = section_of(
      "units mm\nstock 30 wide, 20 thick\nstart face 5\nstep down 2\nfillet out 3\nstep down 2\nfillet out "
      "2\n");
  Drawing drawing = drawing_of(section, Unit::mm);
  for (Stroke& stroke : drawing.chains.front().strokes)
    if (stroke.move.y != 0) stroke.move.y = 2.0000004;
  CHECK(
      profile_text(drawing).ends_with("step     down 2\nfillet   out 3\nstep     down 2\nfillet   out 2\n"));
}

TEST_CASE("what figures are rounded by does not add up", "[write]") {
  std::string text = "units mm\nstock 400 wide, 300 thick\nstart face 200\n";
  for (int i = 0; i < 200; ++i) text += "step down 1\nfillet out 1\n";
  Drawing drawing = drawing_of(section_of(text), Unit::mm);
  double deep = 0;
  for (Stroke& stroke : drawing.chains.front().strokes) {
    stroke.move = (1 + 1.0 / 3) * stroke.move;
    deep += stroke.move.y;
  }
  drawing.chains.front().start *= 1 + 1.0 / 3;
  const Reading<Section> again = read_profile(profile_text(drawing), "written.profile");
  INFO(shown(again));
  REQUIRE(again.value);
  bool seen = false;
  for (const Edge& edge : again.value->target) {
    if (edge.to.x != 0 || edge.to.y == 300) continue;
    seen = true;
    CHECK(std::abs(edge.to.y - deep) < 2e-6);
  }
  CHECK(seen);
}

TEST_CASE("work on other sides is written on its own side", "[write]") {
  const std::string text =
      "profile  glass\nunits    inch\nstock    2 wide, 3/4 thick\n\nstart    face 1/2\nbead     out 1/2 down "
      "1/2\n"
      "\nside     underside\nstart    back 1/4\nfillet   out 3/8\nstep     up 1/4\n";
  CHECK(written(section_of(text), Unit::inch) == text);
}

TEST_CASE("half-rounds and arcs over 180 degrees keep their sense", "[write]") {
  const std::string text =
      "profile  round\nunits    inch\nstock    2 wide, 1 thick\n\nstart    face 1/2\nbead     down 3/8 "
      "radius 3/16\n"
      "fillet   in 1/8\nstep     down 1/8\nbead     down 1/4 radius 9/64 large\n"
      "step     down 1/4\n";
  const Reading<Section> reading = read_profile(text, "round.profile");
  INFO(shown(reading));
  REQUIRE(reading.value);
  CHECK(written(*reading.value, Unit::inch) == text);
}

}  // namespace
}  // namespace arrisline::testing
