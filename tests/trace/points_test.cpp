// Files of points, as instruments and spreadsheets write them: RFC 4180 for CSV; that a decimal comma goes
// with a semicolon is common practice of spreadsheets in Europe, no source.
#include "trace/points.h"

#include <random>

#include "arrisline/limits.h"
#include "catch.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

using Points = std::vector<Point>;

Points points_of(const std::string& text) {
  return traced(text, "a.csv").points;
}

/// Of one line after a sound one with the same separator.
std::string said_of(const std::string& line, const std::string& first = "0;0") {
  return said(first + "\n" + line + "\n1;1\n", "a.csv");
}

}  // namespace

TEST_CASE("two figures a line, however they are parted", "[trace][points]") {
  const Points expected{{0.5, -1}, {1.25, 2}, {3, 4}};
  CHECK(points_of("0.5,-1\n1.25,2\n3,4\n") == expected);
  CHECK(points_of("0.5, -1\n1.25 ,2\n 3 , 4 \n") == expected);
  CHECK(points_of("0.5;-1\n1.25;2\n3;4\n") == expected);
  CHECK(points_of("0.5\t-1\n1.25\t2\n3\t4\n") == expected);
  CHECK(points_of("0.5 -1\n  1.25   2\n3 \t 4\n") == expected);
  CHECK(points_of("0,5;-1\n1,25;2\n3;4\n") == expected);
  CHECK(points_of("0,5\t-1\n1,25\t2,0\n3\t4\n") == expected);
  CHECK(points_of("0,5 -1,0\n1,25 2\n3 4\n") == expected);
  CHECK(points_of("5e-1,-1E0\n+125e-2,.2e+1\n3.,4\n") == expected);
  CHECK(points_of("0.5,\u22121\n1.25,2\n3,4\n") == expected);
  CHECK(points_of("\"0.5\",\"-1\"\n\"1.25\",\"2\"\n\" 3 \",4\n") == expected);
  CHECK(points_of("0.5,-1,,\n1.25,2,,\n3,4,,\n") == expected);
}

TEST_CASE("line ends, the byte order mark, comments and empty lines", "[trace][points]") {
  const Points expected{{1, 2}, {3, 4}};
  for (const char* text : {"1,2\n3,4", "1,2\r\n3,4\r\n", "1,2\r3,4\r",
                           "\xEF\xBB\xBF"
                           "1,2\n3,4\n",
                           "# chest, left foot\n\n1,2 # first\n;;\n , \n3,4\n\n", "1,2\n\n\n3,4\n#"}) {
    CAPTURE(text);
    CHECK(points_of(text) == expected);
  }
  CHECK(said("1,2\r\n3,x\r\n", "a.csv") ==
        "2:3: 'x' is not a number; expected two a line, such as 12.5 3.1\n");
  CHECK(said("\xEF\xBB\xBFx,y\r1,2\r3,z", "a.csv") ==
        "3:3: 'z' is not a number; expected two a line, such as 12.5 3.1\n");
}

TEST_CASE("bytes may be cut anywhere", "[trace][points]") {
  const std::string text = "\xEF\xBB\xBFx (mm);y (mm)\r\n1,5;2\r\n# \u00e9\r\r\n3;\u22124\r\n5;6";
  const Reading<Tracing> whole = read_tracing(text, "a.csv");
  REQUIRE(whole.value.has_value());
  CHECK(whole.value->points == Points{{1.5, 2}, {3, -4}, {5, 6}});
  for (std::size_t size = 1; size <= text.size(); ++size) {
    PointsReader reader("a.csv", {});
    for (std::size_t at = 0; at < text.size(); at += size)
      reader.feed(std::string_view(text).substr(at, size));
    const Reading<Tracing> cut = reader.finish();
    REQUIRE(cut.value.has_value());
    CHECK(cut.value->points == whole.value->points);
    CHECK(cut.value->mm_per_unit == 1.0);
  }
}

TEST_CASE("a heading names the columns and the unit", "[trace][points]") {
  const Points expected{{1, 2}, {3, 4}};
  for (const char* text :
       {"x,y\n1,2\n3,4\n", "along;depth\n1;2\n3;4\n", "y;x\n2;1\n4;3\n", "No.,X,Y,Z\n1,1,2,0\n2,3,4,0\n",
        "\"X\",\"Y\"\n1,2\n3,4\n", "point x y note\nA 1 2 -\nB 3 4 -\n", "x axis,y-axis\n1,2\n3,4\n",
        "name\tx\ty\nA\t1\t2\nB\t3\t4\n"}) {
    CAPTURE(text);
    const Tracing tracing = traced(text, "a.csv");
    CHECK(tracing.points == expected);
    CHECK_FALSE(tracing.mm_per_unit.has_value());
    CHECK_FALSE(tracing.drawn);
    CHECK_FALSE(tracing.closed);
    CHECK(tracing.upward == Upward::unknown);
  }
  CHECK(traced("x (mm),y (mm)\n1,2\n3,4\n", "a.csv").mm_per_unit == 1.0);
  CHECK(traced("x [mm] y [mm]\n1 2\n3 4\n", "a.csv").mm_per_unit == 1.0);
  CHECK(traced("X_inch;Y_inch\n1;2\n3;4\n", "a.csv").mm_per_unit == 25.4);
  CHECK(traced("x/in,y/in\n1,2\n3,4\n", "a.csv").mm_per_unit == 25.4);
  CHECK(traced("x (cm),y\n1,2\n3,4\n", "a.csv").mm_per_unit == 10.0);
  CHECK(traced("x (m),y (m)\n1,2\n3,4\n", "a.csv").mm_per_unit == 1000.0);

  CHECK(said("n,a,b\n1,2,3\n4,5,6\n", "a.csv") ==
        "1:1: the heading names 3 columns, but not which are x and y; expected two columns, or an x and a y "
        "among "
        "them\n");
  CHECK(said("x,x\n1,2\n", "a.csv") == "1:1: the heading has two columns x; leave one of each\n");
  CHECK(said("x,y,y\n1,2,3\n", "a.csv") == "1:1: the heading has two columns y; leave one of each\n");
  CHECK(said("x (mm),y (in)\n1,2\n", "a.csv") ==
        "1:1: the heading has x and y in different units; write both in one\n");
  CHECK(said("n,x,y\n1,2\n", "a.csv") ==
        "2:4: there are 2 columns here; by the heading x is column 2 and y is column 3; write a figure in "
        "each\n");
}

TEST_CASE("titles stand over a heading that names the columns", "[trace][points]") {
  const Points expected{{1, 2}, {3, 4}};
  for (const char* text : {"Cornice, old house\nx,y\n1,2\n3,4\n",
                           "Cornice\nmeasured by hand; in May\ny;x\n2;1\n4;3\n", "sep=;\nx;y\n1;2\n3;4\n",
                           "\xEF\xBB\xBFSEP=,\r\nalong,depth\r\n1,2\r\n3,4\r\n", "sep=;\n1;2\n3;4\n"}) {
    CAPTURE(text);
    CHECK(traced(text, "a.csv").points == expected);
  }
  CHECK(traced("Cornice\nx (in),y (in)\n1,2\n3,4\n", "a.csv").mm_per_unit == 25.4);
  // Units in a line of their own.
  CHECK(traced("x;y\nmm;mm\n1;2\n3;4\n", "a.csv").mm_per_unit == 1);
  CHECK(traced("Cornice\ny,x\n(in),[in]\n1,2\n3,4\n", "a.csv").mm_per_unit == 25.4);
  CHECK(traced("x y\ncm cm\n1 2\n3 4\n", "a.csv").mm_per_unit == 10);
  CHECK(said("x;y\nmm;in\n1;2\n3;4\n", "a.csv") ==
        "1:1: the heading has x and y in different units; write both in one\n");
  // Without such a heading, and after it, words stand where figures ought to.
  const std::string no_number = "'b' is not a number; expected two a line, such as 12.5 3.1\n";
  CHECK(said("a,c\nb,5\n1,2\n", "a.csv") == "2:1: " + no_number);
  CHECK(said("a,c\nb,5\n", "a.csv") == "2:1: " + no_number);
  CHECK(said("x,y\nb,5\n1,2\n", "a.csv") == "2:1: " + no_number);
  CHECK(said("Cornice\nx,y\nb,5\n1,2\n", "a.csv") == "3:1: " + no_number);
}

TEST_CASE("a width says how large the points are", "[trace][points]") {
  TracingOptions options;
  options.width = 50;
  CHECK(traced("x (in),y (in)\n-1,0\n3,0\n0,9\n", "a.csv", options).mm_per_unit == 12.5);
  CHECK(said("2,0\n2,3\n", "a.csv", options) ==
        "1:1: every x is 2, so that the width given says nothing; leave --width out\n");
}

TEST_CASE("what is no point is said, line by line", "[trace][points]") {
  CHECK(said_of("nan;1") == "2:1: 'nan' is no place for a point; expected a number such as 12.5\n");
  CHECK(said_of("1;-Inf") == "2:3: '-Inf' is no place for a point; expected a number such as 12.5\n");
  CHECK(said_of("1;nan(7)") == "2:3: 'nan(7)' is no place for a point; expected a number such as 12.5\n");
  CHECK(said_of("1;2;3") ==
        "2:5: there are 3 columns here; expected two numbers, x and y, or a heading that names the columns x "
        "and "
        "y\n");
  CHECK(said("1,5,2,5\n", "a.csv") ==
        "1:5: there are 4 columns here; expected two numbers, x and y; where commas are decimal marks, part "
        "them by a semicolon, a tab or blanks\n");
  CHECK(said_of("1") == "2:2: there is one column here; expected two numbers, x and y\n");
  CHECK(said_of(";1") == "2:1: a number is missing here; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("1;\"\"") == "2:3: a number is missing here; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("1,2,3;1") == "2:1: '1,2,3' is not a number; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("1.000,5;1") ==
        "2:1: '1.000,5' has a point and a comma; expected one decimal mark and no others\n");
  CHECK(said_of("12mm;1") ==
        "2:1: '12mm' is not a number alone; write the unit in a heading, as x (mm), y (mm)\n");
  CHECK(said_of("3/8;1") == "2:1: '3/8' is not a number; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("0x10;1") == "2:1: '0x10' is not a number; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("--1;1") == "2:1: '--1' is not a number; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("1e;1") == "2:1: '1e' is not a number; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("1e10;1") == "2:1: '1e10' is too large or too small; expected a number up to 1000000000\n");
  CHECK(said_of("1e999;1e-999") ==
        "2:1: '1e999' is too large or too small; expected a number up to 1000000000\n"
        "2:7: '1e-999' is too large or too small; expected a number up to 1000000000\n");
  CHECK(said_of("\u00e9\u00e9;x") ==
        "2:1: '\u00e9\u00e9' is not a number; expected two a line, such as 12.5 3.1\n2:4: 'x' is not a "
        "number; expected two a line, such as 12.5 3.1\n");
  CHECK(said_of("1;\xE9") ==
        "2:3: this letter is saved in a way that is not read; save the file with the encoding UTF-8\n");
  CHECK(said(std::string("1;2\n3;\0\n", 8), "a.csv") ==
        "2:3: this is no plain text; check that it is the file you meant\n");
  CHECK(shown(read_tracing("0 0\n1 x2 # here\n", "a.csv")) ==
        "a.csv:2:3: error: 'x2' is not a number; expected two a line, such as 12.5 3.1\n  1 x2 # here\n    "
        "^^\n");
}

TEST_CASE("too few points to be a line", "[trace][points]") {
  for (const char* text : {"", "\n\n", "# nothing\n", "x,y\n", "\xEF\xBB\xBF"})
    CHECK(said(text, "a.csv") ==
          "1:1: the file holds no point; expected two numbers a line, x and y, such as 12.5 3.1\n");
  CHECK(said("x,y\n3,4\n", "a.csv") == "2:1: this is the only point; measure some hundred along the line\n");
  CHECK(said("\n1,2\n1.0,2\n1,2e0\n", "a.csv") ==
        "2:1: all 3 points are the same, (1, 2); measure along the line\n");
}

TEST_CASE("the first twenty mistakes are said", "[trace][points]") {
  std::string text = "0,0\n";
  for (int i = 0; i < 20; ++i) text += "x\n";
  const std::string twenty = said(text, "a.csv");
  CHECK(std::count(twenty.begin(), twenty.end(), '\n') == 20);
  const std::string more = said(text + "y\ny\n", "a.csv");
  CHECK(more == twenty + "21:2: more than 20 mistakes: the first of them are shown; mend these first\n");
}

TEST_CASE("limits of a file of points", "[trace][points]") {
  CHECK(said("1,2\n" + std::string(kMaxLineBytes + 1, ' ') + "\n", "a.csv") ==
        "2:1: the line is longer than 1 MB, the most that is read; expected two numbers a line" +
            to_raise("kMaxLineBytes") + "\n");
  CHECK(points_of("1,2\n" + std::string(kMaxLineBytes, ' ') + "\n2,3").size() == 2);
  // A gigabyte in pieces of a megabyte, none of it kept.
  PointsReader reader("a.csv", {});
  reader.feed("1,2\n3,4\n");
  std::string comment(std::size_t{1} << 20, ' ');
  comment.front() = '#';
  comment.back() = '\n';
  for (std::size_t fed = 8; fed + comment.size() <= kMaxPointsBytes; fed += comment.size())
    reader.feed(comment);
  CHECK_FALSE(reader.done());
  reader.feed(comment);
  CHECK(reader.done());
  CHECK(messages(reader.finish()) ==
        "1:1: the file is larger than 1024 MB, the most that is read of points; measure fewer" +
            to_raise("kMaxPointsBytes") + "\n");
}

TEST_CASE("progress is told every 100 000 points", "[trace][points]") {
  std::string text;
  for (int i = 0; i < 250000; ++i) text += std::to_string(i) + " " + std::to_string(i % 7) + "\n";
  std::vector<std::size_t> told;
  TracingOptions options;
  options.progress = [&](std::size_t count) { told.push_back(count); };
  const Tracing tracing = traced(text, "a.txt", options);
  CHECK(told == std::vector<std::size_t>{100000, 200000});
  CHECK(tracing.points.size() == kMaxKeptPoints);
}
