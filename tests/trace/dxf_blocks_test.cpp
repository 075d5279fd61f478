// Blocks of a DXF drawing, by the published reference of the format: BLOCK with its base point, INSERT with
// its place, scales, turn, rows and columns.
#include "arrisline/limits.h"
#include "catch.h"
#include "trace/tracing.h"

namespace arrisline::testing {
namespace {

using Points = std::vector<Point>;

/// A drawing with these blocks and entities, in mm.
std::string with_blocks(const std::string& blocks, const std::string& entities) {
  return dxf_groups("0 SECTION 2 HEADER 9 $INSUNITS 70 4 0 ENDSEC 0 SECTION 2 BLOCKS " + blocks +
                    "0 ENDSEC 0 SECTION 2 ENTITIES " + entities + " 0 ENDSEC 0 EOF");
}

std::string block(const std::string& name, const std::string& entities, const std::string& head = "70 0") {
  return "0 BLOCK 8 0 2 " + name + " " + head + " 3 " + name + (entities.empty() ? "" : " ") + entities +
         " 0 ENDBLK ";
}

/// A step of 4 by 2 from (0, 0), up first.
const std::string kStep =
    block("STEP", "0 LWPOLYLINE 8 0 90 3 10 0 20 0 10 0 20 2 10 4 20 2", "70 0 10 0 20 0 30 0");

Points placed(const std::string& insert, const std::string& blocks = kStep) {
  return traced(with_blocks(blocks, insert), "a.dxf").points;
}

std::string said_of(const std::string& blocks, const std::string& entities) {
  return said(with_blocks(blocks, entities), "a.dxf");
}

const std::string kLine = "0 LINE 8 0 10 0 20 0 11 10 21 5";
const std::string kInsert = "0 INSERT 8 0 2 STEP 10 10 20 20";

TEST_CASE("a block is drawn where it is put", "[trace][dxf]") {
  CHECK(placed(kInsert) == Points{{10, 20}, {10, 22}, {14, 22}});
  CHECK(placed("0 INSERT 2 step") == Points{{0, 0}, {0, 2}, {4, 2}});
  // The base point of the block comes to lie at the insertion point.
  const std::string based = block("B", "0 LINE 10 3 20 5 11 7 21 5", "70 0 10 3 20 4");
  CHECK(placed("0 INSERT 2 B 10 10 20 20", based) == Points{{10, 21}, {14, 21}});
  CHECK(placed("0 INSERT 2 B 10 10 20 20 41 2 42 3", based) == Points{{10, 23}, {18, 23}});
}

TEST_CASE("a block is scaled, then turned, then moved", "[trace][dxf]") {
  CHECK(alike(placed(kInsert + " 41 2 42 3"), {{10, 20}, {10, 26}, {18, 26}}));
  CHECK(alike(placed(kInsert + " 41 -1"), {{10, 20}, {10, 22}, {6, 22}}));
  CHECK(alike(placed(kInsert + " 50 90"), {{10, 20}, {8, 20}, {8, 24}}));
  CHECK(alike(placed(kInsert + " 41 2 42 -1 50 90"), {{10, 20}, {12, 20}, {12, 28}}));
  // Seen from behind, x runs the other way.
  CHECK(alike(placed(kInsert + " 230 -1"), {{-10, 20}, {-10, 22}, {-14, 22}}));
}

TEST_CASE("arcs and bulges of a block stay what they are", "[trace][dxf]") {
  // A quarter to the left of the way, from (0, 0) to (5, 5): about (0, 5).
  const std::string bulged = block("B", "0 LWPOLYLINE 8 0 90 2 10 0 20 0 42 0.41421356237309503 10 5 20 5");
  const auto about = [&](const std::string& insert, Point centre, double r) {
    CAPTURE(insert);
    const Points points = placed(insert, bulged);
    CHECK(points.size() > 20);
    for (const Point p : points) CHECK(distance(p, centre) == Approx(r));
    return points;
  };
  CHECK(alike({about("0 INSERT 2 B 41 2 42 2", {0, 10}, 10).back()}, {{10, 10}}));
  CHECK(alike({about("0 INSERT 2 B 41 -1", {0, 5}, 5).back()}, {{-5, 5}}));
  CHECK(alike({about("0 INSERT 2 B 42 -1 50 90", {5, 0}, 5).back()}, {{5, 5}}));
  // Under two scales an arc is that of an ellipse.
  const Points ellipse = placed("0 INSERT 2 B 41 3 42 2", block("B", "0 ARC 10 0 20 0 40 5 50 0 51 90"));
  CHECK(ellipse.size() > 20);
  for (const Point p : ellipse) CHECK(p.x * p.x / 225 + p.y * p.y / 100 == Approx(1));
  const std::string old =
      block("B", "0 POLYLINE 66 1 0 VERTEX 10 0 20 0 42 0.41421356237309503 0 VERTEX 10 5 20 5 0 SEQEND");
  CHECK(placed("0 INSERT 2 B 41 2 42 2", old) == placed("0 INSERT 2 B 41 2 42 2", bulged));
}

TEST_CASE("rows and columns of a block", "[trace][dxf]") {
  // A flight of steps; the distances are those of the insert, whatever its scale.
  CHECK(placed("0 INSERT 2 STEP 70 3 44 4 41 1", block("STEP", "0 LINE 10 0 20 0 11 4 21 0")) ==
        Points{{0, 0}, {4, 0}, {8, 0}, {12, 0}});
  CHECK(placed("0 INSERT 2 STEP 71 2 45 8 42 2", block("STEP", "0 LINE 10 0 20 0 11 0 21 4")) ==
        Points{{0, 0}, {0, 8}, {0, 16}});
  // They turn with it.
  CHECK(alike(placed("0 INSERT 2 STEP 70 2 44 4 50 90", block("STEP", "0 LINE 10 0 20 0 11 4 21 0")),
              {{0, 0}, {0, 4}, {0, 8}}));
  CHECK(placed("0 INSERT 2 STEP 70 0 71 -3") == Points{{0, 0}, {0, 2}, {4, 2}});
}

TEST_CASE("blocks within blocks", "[trace][dxf]") {
  // Whichever of them is defined first.
  const std::string pair = block("PAIR", "0 INSERT 2 STEP 10 1 20 1 0 INSERT 2 STEP 10 5 20 3");
  const Points steps{{11, 21}, {11, 23}, {15, 23}, {15, 25}, {19, 25}};
  CHECK(placed("0 INSERT 2 PAIR 10 10 20 20", kStep + pair) == steps);
  CHECK(placed("0 INSERT 2 PAIR 10 10 20 20", pair + kStep) == steps);
  CHECK(alike(placed("0 INSERT 2 PAIR 41 2 42 2 50 90", pair + kStep),
              {{-2, 2}, {-6, 2}, {-6, 10}, {-10, 10}, {-10, 18}}));
  // The strokes of a block and those beside it are one line.
  CHECK(placed("0 LINE 10 14 20 22 11 20 21 22 " + kInsert) ==
        Points{{10, 20}, {10, 22}, {14, 22}, {20, 22}});
}

TEST_CASE("a block that is put into itself is refused", "[trace][dxf]") {
  CHECK(said_of(block("A", "0 INSERT 2 A"), "0 INSERT 2 a " + kLine) ==
        "26:1: block 'A' is put into itself here; take this INSERT out of it\n");
  CHECK(said_of(block("A", "0 INSERT 2 B") + block("B", "0 INSERT 2 A"), "0 INSERT 2 B " + kLine) ==
        "26:1: block 'B' is put into itself here; take this INSERT out of it\n");
  // One that is nowhere does no harm.
  CHECK(said_of(block("A", "0 INSERT 2 A"), kLine).empty());
}

TEST_CASE("mistakes in blocks and inserts are said where they stand", "[trace][dxf]") {
  CHECK(said_of(kStep, "0 INSERT 10 4 " + kLine) ==
        "58:1: this INSERT has no group 2, the name of its block; save the drawing again, as DXF R12\n");
  CHECK(said_of(kStep, "0 INSERT 2 STEP 41 0 " + kLine) ==
        "62:1: a scale of 0 leaves nothing of the block; leave this INSERT out\n");
  CHECK(said_of(kStep, "0 INSERT 2 STEP 50 x 210 1 " + kLine) ==
        "58:1: this INSERT lies askew in space; draw the line flat, seen from above\n62:1: 'x' is not a "
        "number; group 50 is one; save the drawing again, as DXF R12\n");
  CHECK(said_of(kStep, "0 INSERT 2 STAIR 0 INSERT 2 STAIR " + kLine) ==
        "58:1: warning: there is no block 'STAIR' in this drawing; save the drawing again, as DXF R12\n");
  // Said once, however often the block is put somewhere.
  const std::string broken = block("B", "0 LINE 10 x 20 0 11 1 21 0");
  CHECK(said_of(broken, "0 INSERT 2 B 0 INSERT 2 B") ==
        "28:1: 'x' is not a number; group 10 is one; save the drawing again, as DXF R12\n");
  CHECK(said_of(broken, kLine).empty());
  CHECK(said_of(block("B", "0 POLYLINE 0 VERTEX 10 0 20 0"), "0 INSERT 2 B") ==
        "34:1: here is 'ENDBLK'; expected VERTEX or SEQEND, since a POLYLINE goes on; save the drawing "
        "again, as DXF R12\n");
  CHECK(said_of(block("B", "", "70 4"), "0 INSERT 2 B " + kLine) ==
        "16:1: warning: block 'B' lies in another drawing, which is not read; take it into this one where it "
        "is part of the line\n");
}

TEST_CASE("a copy that does not join the line is told from the first by where it begins", "[trace][dxf]") {
  CHECK(
      said_of(block("B", "0 LINE 10 0 20 0 11 5 21 0"), "0 INSERT 2 B 0 INSERT 2 B 10 20") ==
      "26:1: another line begins here, at (20, 0); expected one line, and the first, of which it is a copy, "
      "begins at (0, 0); nearest to another one is its end at (20, 0), 15 from (5, 0); to read one of them "
      "alone, give its layer or id: --layer NAME\n");
}

TEST_CASE("what is not read in a block is named once", "[trace][dxf]") {
  const std::string other = block("B", "0 ATTDEF 1 a 0 CIRCLE 10 0 20 0 40 5 0 LINE 10 0 20 0 11 5 21 0");
  CHECK(said_of(other, "0 INSERT 2 B 70 2 44 5") ==
        "30:1: warning: 'CIRCLE' is not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them; draw "
        "it with these where it is part of the line\n");
  CHECK(said_of(other, kLine).empty());
  // What is written into an insert, up to its SEQEND, is words.
  CHECK(said_of(kStep, "0 INSERT 2 STEP 66 1 0 ATTRIB 1 a 0 SEQEND 8 0") ==
        "64:1: warning: 'ATTRIB' is not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them; draw "
        "it with these where it is part of the line\n");
}

TEST_CASE("what is on layer 0 of a block is on the layer of its insert", "[trace][dxf][layers]") {
  const std::string blocks = block("B", "0 LINE 8 0 10 0 20 0 11 5 21 0 0 LINE 8 marks 10 0 20 9 11 5 21 9") +
                             block("OUTER", "0 INSERT 8 0 2 B 10 10 20 10");
  const std::string drawing = with_blocks(blocks, "0 INSERT 8 Moulding 2 OUTER " + kLine);
  CHECK(traced(drawing, "a.dxf", layer("moulding")).points == Points{{10, 10}, {15, 10}});
  CHECK(traced(drawing, "a.dxf", layer("marks")).points == Points{{10, 19}, {15, 19}});
  CHECK(traced(drawing, "a.dxf", layer("0")).points == Points{{0, 0}, {10, 5}});
  CHECK(said(drawing, "a.dxf", layer("mould")) ==
        "1:1: no layer of the drawing is called 'mould'; it has 'marks', 'Moulding', '0'\n");
}

TEST_CASE("a block on a frozen layer is not drawn, on one that is off only what has another layer",
          "[trace][dxf][layers]") {
  const auto drawing = [](const std::string& state) {
    return dxf_groups("0 SECTION 2 TABLES 0 TABLE 2 LAYER 0 LAYER 2 frame " + state +
                      " 0 ENDTAB 0 ENDSEC 0 SECTION 2 BLOCKS " +
                      block("B", "0 LINE 8 0 10 0 20 0 11 90 21 0 0 LINE 8 line 10 10 20 10 11 20 21 10") +
                      "0 ENDSEC 0 SECTION 2 ENTITIES 0 INSERT 8 frame 2 B 10 1 20 1 0 ENDSEC 0 EOF");
  };
  CHECK(traced(drawing("70 0 62 -7"), "a.dxf").points == Points{{11, 11}, {21, 11}});
  CHECK(said(drawing("70 1 62 7"), "a.dxf") ==
        "1:1: there is no line in the drawing; draw that of the section, in one piece\n");
  CHECK(traced(drawing("70 1 62 7"), "a.dxf", layer("line")).points == Points{{11, 11}, {21, 11}});
  CHECK(said_of(kStep, "0 INSERT 2 STEP 60 1 " + kLine).empty());
}

TEST_CASE("limits of blocks", "[trace][dxf]") {
  // Each block puts two of the one before it: far more lines than there is room for, from a few bytes.
  std::string doubled = block("B0", "0 LINE 10 0 20 0 11 1 21 0");
  for (int i = 1; i < 30; ++i) {
    const std::string insert = "0 INSERT 2 B" + std::to_string(i - 1);
    doubled += block("B" + std::to_string(i), insert + " " + insert);
  }
  CHECK(said_of(doubled, "0 INSERT 2 B29") ==
        "26:1: with this entity the drawing has more than 100000 lines and arcs; draw the line with fewer" +
            to_raise("kMaxDrawnPoints") + "\n");
  // Nothing drawn, and as much work.
  const std::string hidden = "0 SECTION 2 TABLES 0 LAYER 2 off 62 -1 0 ENDSEC ";
  CHECK(said(dxf_groups(hidden + "0 SECTION 2 BLOCKS " +
                        block("B", "0 LINE 8 0 10 0 20 0 11 1 21 0 0 INSERT 2 C") + block("C", "") +
                        "0 ENDSEC 0 SECTION 2 ENTITIES 0 INSERT 8 off 2 B 70 32767 71 32767 0 ENDSEC 0 EOF"),
             "a.dxf") ==
        "64:1: with this INSERT the blocks of the drawing come to more than 1000000 lines and arcs; draw the "
        "line without blocks" +
            to_raise("kMaxPlacedItems") + "\n");
  const auto nested = [](std::size_t depth) {
    std::string blocks = block("B1", "0 LINE 10 0 20 0 11 1 21 0");
    for (std::size_t i = 2; i <= depth; ++i)
      blocks += block("B" + std::to_string(i), "0 INSERT 2 B" + std::to_string(i - 1));
    return said_of(blocks, "0 INSERT 2 B" + std::to_string(depth));
  };
  CHECK(nested(kMaxBlockDepth).empty());
  CHECK(nested(kMaxBlockDepth + 1) ==
        "48:1: blocks lie more than 32 deep within one another here; take them apart" +
            to_raise("kMaxBlockDepth") + "\n");
  std::string blocks;
  for (std::size_t i = 0; i < kMaxDxfBlocks; ++i) blocks += "0 BLOCK 2 B" + std::to_string(i) + " ";
  CHECK(said_of(blocks, kLine).empty());
  CHECK(said_of(blocks + "0 BLOCK 2 more ", kLine) ==
        "80018:1: the drawing has more than 20000 blocks; draw the line in a drawing of its own" +
            to_raise("kMaxDxfBlocks") + "\n");
  std::string lines;
  for (std::size_t i = 0; i <= kMaxDrawnPoints; ++i) lines += " 0 LINE 10 0 20 0 11 1 21 0";
  lines.erase(0, 1);
  CHECK(said_of(block("B", lines), "0 INSERT 2 B").find("the drawing has more than 100000 lines and arcs") !=
        std::string::npos);
  CHECK(said_of(block("B", lines), kLine).empty());
}

}  // namespace
}  // namespace arrisline::testing
