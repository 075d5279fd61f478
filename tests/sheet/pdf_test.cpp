// PDF sheets read back by poppler: pages, words, true size.
#include "sheet/pdf.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "app/folder.h"
#include "arrisline/sheet.h"
#include "catch.h"
#include "sheet/plans.h"

using namespace arrisline;
using test::Folder;

namespace {

/// What a shell command in the folder writes, a.pdf being there. A tool that is missing fails the test.
std::string after(const Folder& folder, const std::string& command, const std::string& file) {
  const int code = std::system(("cd '" + folder.path.string() + "' && " + command + " 2>said").c_str());
  INFO(command << "\n" << test::contents(folder.path / "said"));
  REQUIRE(code == 0);
  return test::contents(folder.path / file);
}

void put(const Folder& folder, const std::string& pdf) {
  std::ofstream(folder.path / "a.pdf", std::ios::binary) << pdf;
}

std::string sheet(const test::Drawable& one, Paper paper) {
  SheetOptions options;
  options.paper = paper;
  options.report.unit = one.kit.unit;
  return pdf_sheet(one.plan, one.kit, options);
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

double number_after(const std::string& text, const std::string& key, std::size_t from = 0) {
  const std::size_t at = text.find(key, from);
  REQUIRE(at != std::string::npos);
  const std::size_t figure = text.find_first_not_of(' ', at + key.size());
  REQUIRE(figure != std::string::npos);
  double out = 0;
  REQUIRE(std::from_chars(text.data() + figure, text.data() + text.size(), out).ec == std::errc());
  return out;
}

constexpr double kMm = 25.4 / 72;  // of a point

/// The points along the strokes of one width (mm) on a page, as pdftocairo draws them: one list a path.
std::vector<std::vector<Point>> strokes(const std::string& svg, double width) {
  std::vector<std::vector<Point>> out;
  for (std::size_t at = svg.find("stroke-width:"); at != std::string::npos;
       at = svg.find("stroke-width:", at + 1)) {
    const std::string path = svg.substr(at, svg.find("/>", at) - at);
    if (std::fabs(number_after(path, "stroke-width:") * kMm - width) > 0.005) continue;
    REQUIRE_FALSE(contains(path, "transform"));  // else these were not the page's own points
    const std::size_t from = path.find(" d=\"") + 4;
    std::vector<double> figures;
    std::vector<Point> points;
    char command = 'M';
    const auto take = [&] {
      const auto p = [&](std::size_t i) { return Point{figures[2 * i] * kMm, figures[2 * i + 1] * kMm}; };
      if (command == 'C' && figures.size() == 6) {
        const Point a = points.back();
        for (int k = 1; k <= 32; ++k) {
          const double t = k / 32.0, s = 1 - t;
          points.push_back(s * s * s * a + 3 * s * s * t * p(0) + 3 * s * t * t * p(1) + t * t * t * p(2));
        }
        figures.clear();
      } else if (command != 'C' && figures.size() == 2) {
        if (command == 'M' && !points.empty()) {
          out.push_back(points);
          points.clear();
        }
        points.push_back(p(0));
        figures.clear();
      }
    };
    const char* c = path.data() + from;
    const char* end = path.data() + path.find('"', from);
    while (c < end) {
      if (std::isalpha(static_cast<unsigned char>(*c)) != 0) {
        command = *c++;
      } else if (*c == ' ') {
        ++c;
      } else {
        double figure = 0;
        c = std::from_chars(c, end, figure).ptr;
        figures.push_back(figure);
        take();
      }
    }
    out.push_back(points);
  }
  return out;
}

std::string page_as_svg(const Folder& folder, int page) {
  const std::string n = std::to_string(page);
  // As it is: neither made to fit a paper nor moved to the middle of one.
  return after(folder,
               "pdftocairo -svg -noshrink -nocenter -origpagesizes -f " + n + " -l " + n + " a.pdf a.svg",
               "a.svg");
}

/// How far the points of a line lie off the target, mm.
double off_target(const std::vector<Point>& line, const Section& section, Point shift) {
  double out = 0;
  for (const Point p : line) out = std::max(out, distance(p - shift, section.target));
  return out;
}

/// Where the blank's corner at the face and the working edge lies on the page, the blank being as large as it
/// is.
Point place_of_blank(const std::string& svg, const Section& section) {
  // Its outline is the first dotted one, 0.13 mm wide.
  std::vector<Point> blank;
  for (const auto& line : strokes(svg, 0.13))
    if (line.size() >= 4 && blank.empty()) blank = line;
  REQUIRE(blank.size() >= 4);
  CHECK(blank[2].x - blank[0].x == Approx(section.width).margin(0.01));
  CHECK(blank[2].y - blank[0].y == Approx(section.thickness).margin(0.01));
  return blank[0];
}

}  // namespace

TEST_CASE("pages of A4 and Letter, with title, subject, program and date", "[sheet][pdf]") {
  const test::Drawable& one = test::drawn_examples().front();
  const Folder folder;
  put(folder, sheet(one, Paper::a4));
  std::string info = after(folder, "pdfinfo a.pdf >out", "out");
  // ISO 216: 210 by 297 mm.
  CHECK(number_after(info, "Page size:") * kMm == Approx(210).margin(0.01));
  CHECK(number_after(info, " x ") * kMm == Approx(297).margin(0.01));
  CHECK(contains(info, "Title:           Moulding: " + one.plan.section.name));
  CHECK(contains(info, "Subject:         The section at full size"));
  CHECK(contains(info, "Creator:         arrisline "));
  CHECK(contains(info, "JavaScript:      no"));
  put(folder, sheet(one, Paper::letter));
  info = after(folder, "pdfinfo a.pdf >out", "out");
  // ANSI/ASME Y14.1, size A: 8 1/2 by 11 in.
  CHECK(number_after(info, "Page size:") == Approx(612).margin(0.01));
  CHECK(number_after(info, " x ") == Approx(792).margin(0.01));
}

TEST_CASE("the date of a document is that of SOURCE_DATE_EPOCH, or always the same", "[sheet][pdf]") {
  // From `date -u -d @1700000000`.
  CHECK(document_date("1700000000") == "2023-11-14T22:13:20Z");
  CHECK(document_date("0") == "1970-01-01T00:00:00Z");
  for (const char* no_date : {static_cast<const char*>(nullptr), "", "now", "-5", "12x", "99999999999999"})
    CHECK(document_date(no_date) == "2000-01-01T00:00:00Z");
}

TEST_CASE("the same plan gives the same bytes", "[sheet][pdf]") {
  for (const test::Drawable& one : test::drawn_extremes())
    CHECK(sheet(one, Paper::a4) == sheet(one, Paper::a4));
}

TEST_CASE("the finished line is true to size, and so are the rules", "[sheet][pdf]") {
  std::size_t tried = 0;
  for (const test::Drawable& one : test::drawn_examples()) {
    INFO(one.name);
    const Section& section = one.plan.section;
    if (section.width > 150) continue;  // those go over several pages
    const Folder folder;
    put(folder, sheet(one, Paper::a4));
    const std::string svg = page_as_svg(folder, 1);
    const Point shift = place_of_blank(svg, section);
    const auto finished = strokes(svg, 0.5);
    REQUIRE_FALSE(finished.empty());
    const std::vector<Point>& line = finished.front();
    CHECK(off_target(line, section, shift) < 0.05);
    // And the other way round: all that has to be cut is drawn (by one of the lines there).
    for (std::size_t i = 0; i < section.target.size(); ++i) {
      if (section.source[i] < 0) continue;
      for (double t = 0; t <= 1; t += 0.125) {
        const Point p = point_at(section.target[i], t) + shift;
        double least = 1e9;
        for (const auto& chain : finished) {
          for (std::size_t k = 0; k + 1 < chain.size(); ++k)
            least = std::min(least, distance(p, Edge{chain[k], chain[k + 1], {}, Turn::straight}));
        }
        CHECK(least < 0.05);
      }
    }
    std::vector<double> longest;
    for (const auto& rule : strokes(svg, 0.15))
      if (rule.size() == 2) longest.push_back(std::fabs(rule[1].x - rule[0].x));
    REQUIRE(longest.size() > 2);
    std::sort(longest.rbegin(), longest.rend());
    CHECK(longest[0] == Approx(101.6).margin(0.005));
    CHECK(longest[1] == Approx(100).margin(0.005));
    ++tried;
  }
  CHECK(tried >= 6);
}

TEST_CASE("words are words, and none stands on another", "[sheet][pdf]") {
  for (const std::vector<test::Drawable>* drawables : {&test::drawn_examples(), &test::drawn_extremes()}) {
    for (const test::Drawable& one : *drawables) {
      for (const Paper paper : {Paper::a4, Paper::letter}) {
        INFO(one.name);
        const Folder folder;
        put(folder, sheet(one, paper));
        const std::string text = after(folder, "pdftotext -layout a.pdf out", "out");
        for (const char* words : {"Print at 100 %, no fit to page.", "100 mm", "4 in", "The irons are sharp"})
          CHECK(contains(text, words));
        if (one.plan.feasible) CHECK(contains(text, "Planes to get out"));
        const std::string boxes = after(folder, "pdftotext -bbox a.pdf out", "out");
        std::vector<Box> page;
        std::size_t words = 0;
        for (std::size_t at = boxes.find('<'); at != std::string::npos; at = boxes.find('<', at + 1)) {
          if (boxes.compare(at, 6, "<page ") == 0) page.clear();
          if (boxes.compare(at, 6, "<word ") != 0) continue;
          const Box box{number_after(boxes, "xMin=\"", at), number_after(boxes, "yMin=\"", at),
                        number_after(boxes, "xMax=\"", at), number_after(boxes, "yMax=\"", at)};
          // Boxes are those of the type, not of the letters; a hair of them is nothing.
          for (const Box& other : page) {
            const bool on = box.x0 < other.x1 - 0.3 && other.x0 < box.x1 - 0.3 && box.y0 < other.y1 - 0.3 &&
                            other.y0 < box.y1 - 0.3;
            INFO(boxes.substr(at, 140));
            if (on) CHECK_FALSE(on);
          }
          page.push_back(box);
          ++words;
        }
        CHECK(words > 60);
      }
    }
  }
}

TEST_CASE("names of any length and script make a sheet", "[sheet][pdf]") {
  test::Drawable one = test::drawn_examples().front();
  for (const std::string& name :
       {std::string(10000, 'W'), std::string("карниз 大きな蛇腹 كورنيش"), std::string("\x1b[31m\xff <&>")}) {
    one.plan.section.name = name;
    const Folder folder;
    put(folder, sheet(one, Paper::a4));
    CHECK(contains(after(folder, "pdfinfo a.pdf >out", "out"), "Pages:"));
    CHECK(contains(after(folder, "pdftotext a.pdf out", "out"), "Print at 100 %"));
  }
}

TEST_CASE("a section larger than a page goes over parts with their places", "[sheet][pdf]") {
  const test::Drawable wide =
      test::drawable("wide", "units mm\nstock 400 wide, 400 thick\nstart face 9.5\nbead out 9.5 down 9.5\n",
                     "units mm\nrebate 20\n");
  const Folder folder;
  put(folder, sheet(wide, Paper::a4));
  std::string text = after(folder, "pdftotext a.pdf out", "out");
  std::replace(text.begin(), text.end(), '\n', ' ');
  for (const char* words : {"part A, row 1 of 2, column 1 of 3", "part F, row 2 of 2, column 3 of 3",
                            "It follows at full size as parts A to F"})
    CHECK(contains(text, words));
  // Each part is drawn at true size, a piece of the same whole.
  Point before;
  for (int page = 2; page <= 7; ++page) {
    INFO("page " << page);
    const std::string svg = page_as_svg(folder, page);
    const Point shift = place_of_blank(svg, wide.plan.section);
    // The bead lies on the first part alone; the other heavy line of a page is a box of the map.
    std::size_t beads = 0;
    for (const auto& line : strokes(svg, 0.5)) {
      if (line.size() < 10) continue;
      ++beads;
      CHECK(off_target(line, wide.plan.section, shift) < 0.05);
    }
    CHECK(beads == (page == 2 ? 1U : 0U));
    CHECK(distance(shift, before) > 50);
    before = shift;
  }
}
