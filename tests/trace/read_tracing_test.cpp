// Which reader a file goes to, by its name and its first bytes, and what none of them reads.
#include <filesystem>
#include <fstream>

#include "app/folder.h"
#include "arrisline/limits.h"
#include "catch.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;
using test::Folder;

namespace {

const std::string kSvg = "<svg width='10mm' viewBox='0 0 10 10'><path d='M0 0H5'/></svg>";
const std::string kDxf = "0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n0\n20\n0\n11\n5\n21\n0\n0\nENDSEC\n0\nEOF\n";
const std::string kPoints = "0 0\n5 0\n";

}  // namespace

TEST_CASE("content goes before the name where it is plain", "[trace]") {
  for (const char* name : {"a.svg", "a.dxf", "a.csv", "a.txt", "a"}) {
    CAPTURE(name);
    CHECK(traced(kSvg, name).upward == Upward::y_down);
    CHECK(traced("\xEF\xBB\xBF<?xml version='1.0'?>" + kSvg, "a.csv").upward == Upward::y_down);
    CHECK(traced(kDxf, name).upward == Upward::y_up);
    CHECK(traced("  999\r\nremark\r\n" + kDxf, name).upward == Upward::y_up);
  }
  CHECK(traced("  0 \r\n" + kDxf.substr(2), "a.csv").upward == Upward::y_up);
  CHECK(traced("\n\n" + kSvg, "a.csv").upward == Upward::y_down);
  CHECK(traced(kPoints, "a.csv").points.size() == 2);
  CHECK(traced(kPoints, "a.SVG").points.size() == 2);
  CHECK(said("M0 0", "A.SVG") ==
        "1:1: the drawing is broken here (syntax error); save the drawing again, as plain SVG\n");
  CHECK(said("x", "A.DXF") ==
        "1:1: 'x' is no group code; expected a whole number, with its value on the line after it; save the "
        "drawing again, as DXF R12\n");
}

TEST_CASE("pictures and the like are refused with what to do", "[trace]") {
  const auto picture = [](const std::string& kind) {
    return "1:1: this is a picture (" + kind +
           "), and pictures are not read; draw the line over it in a drawing program, and save that as SVG "
           "or "
           "DXF\n";
  };
  // First bytes as the specification of each format has them.
  CHECK(said("\x89PNG\r\n\x1A\n", "a.png") == picture("PNG"));
  CHECK(said("\xFF\xD8\xFF\xE0..JFIF", "a.svg") == picture("JPEG"));
  CHECK(said("GIF89a", "a") == picture("GIF"));
  CHECK(said(std::string("II*\0abcd", 8), "a") == picture("TIFF"));
  CHECK(said(std::string("MM\0*abcd", 8), "a") == picture("TIFF"));
  CHECK(said("RIFF....WEBPVP8 ", "a") == picture("WebP"));
  CHECK(said(std::string("\0\0\0\x18"
                         "ftypheic",
                         12),
             "a") == picture("HEIC"));
  CHECK(said(std::string("BM\x36\0\0\0\0\0", 8), "a") == picture("BMP"));
  CHECK(said("%PDF-1.4", "a") == "1:1: this is a PDF, and PDF is not read; save the drawing as SVG or DXF\n");
  CHECK(
      said(std::string("AutoCAD Binary DXF\r\n\x1A\0", 22), "a.dxf") ==
      "1:1: this is a DXF in another form than the usual one (binary); save it again as DXF R12 in ASCII\n");
  CHECK(said(std::string("AC1015\0\0\0\0", 10), "a.dwg") ==
        "1:1: this is a DWG drawing, and DWG is not read; save the drawing as DXF R12 in ASCII\n");
  CHECK(said("\x1F\x8B\x08", "a.svgz") == "1:1: this file is compressed (gzip, .svgz); unpack it first\n");
  CHECK(said("PK\x03\x04", "a.xlsx") ==
        "1:1: this is a document of a spreadsheet or a word processor; save the points there as CSV\n");
  for (const char* mark : {"\xFF\xFE"
                           "1",
                           "\xFE\xFF"
                           "1"})
    CHECK(said(mark, "a.csv") ==
          "1:1: this text is saved in a way that is not read (UTF-16); save it again with the encoding "
          "UTF-8\n");
  CHECK(said(std::string("<svg>\n\0</svg>", 13), "a.svg") ==
        "2:1: this is no plain text; check that it is the file you meant\n");
}

TEST_CASE("files are read as their text is", "[trace]") {
  const Folder folder;
  const auto path = [&](const char* name, const std::string& text) {
    const std::string full = (folder.path / name).string();
    std::ofstream(full, std::ios::binary) << text;
    return full;
  };
  for (const auto& [name, text] :
       {std::pair{"a.svg", kSvg}, std::pair{"a.dxf", kDxf}, std::pair{"a.csv", kPoints}}) {
    const Reading<Tracing> reading = read_tracing_file(path(name, text));
    REQUIRE(reading.value.has_value());
    CHECK(reading.value->points == traced(text, name).points);
  }
  // More than one reading of the disk.
  std::string many;
  for (int i = 0; i < 4800; ++i)
    many += std::to_string(i) + ".250000000000 " + std::to_string(i % 10) + "\r\n";
  const Reading<Tracing> long_one = read_tracing_file(path("b.csv", many));
  REQUIRE(long_one.value.has_value());
  CHECK(long_one.value->points == traced(many, "b.csv").points);
  CHECK(long_one.value->points.size() == 4800);

  CHECK(shown(read_tracing_file(path("b.png", "\x89PNG"))).find("this is a picture (PNG)") !=
        std::string::npos);
  CHECK(messages(read_tracing_file(path("c.svg", "<svg>" + std::string(kMaxDrawingBytes, ' ')))) ==
        "1:1: the drawing is larger than 16 MB, the most that is read of one; draw the line alone" +
            to_raise("kMaxDrawingBytes") + "\n");
  CHECK(messages(read_tracing_file((folder.path / "none").string())) ==
        "1:1: there is no such file; check its name, and that it is in this folder\n");
  CHECK(messages(read_tracing_file(folder.path.string())) ==
        "1:1: this is a folder; name a file of points in it, or an SVG or DXF drawing\n");
  CHECK(messages(read_tracing_file(path("empty", ""))) ==
        "1:1: the file holds no point; expected two numbers a line, x and y, such as 12.5 3.1\n");
}
