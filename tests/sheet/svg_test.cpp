// SVG sheets: read by a real XML reader, drawn by librsvg and Chromium, and held against the replay's own
// wood.
#include "sheet/svg.h"

#include <cairo.h>
#include <unistd.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>

#include "app/folder.h"
#include "arrisline/sheet.h"
#include "catch.h"
#include "replay/standing.h"
#include "sheet/picture.h"
#include "sheet/plans.h"

using namespace arrisline;
using test::Folder;

namespace {

void write(const std::filesystem::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

/// The exit code of a shell command, what it says in the file `said` of the folder.
int shell(const Folder& folder, const std::string& command) {
  const std::string whole = "cd '" + folder.path.string() + "' && { " + command + "; } >said 2>&1";
  return std::system(whole.c_str());  // NOLINT(cert-env33-c): the tests' own words
}

void check_well_formed(const std::string& svg) {
  const Folder folder;
  write(folder.path / "a.svg", svg);
  const int code = shell(folder, "xmllint --noout --nonet a.svg");
  INFO(test::contents(folder.path / "said"));
  CHECK(code == 0);
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
    ++out;
  return out;
}

/// Black where the shapes of one role are, white elsewhere; no lines.
std::string only(const std::string& role, std::string svg) {
  const std::size_t from = svg.find("<style>"), to = svg.find("</style>");
  REQUIRE(from != std::string::npos);
  svg.replace(from, to - from,
              "<style>text,path{display:none}.ground{fill:#ffffff}path." + role +
                  "{display:inline;stroke:none;fill:#000000}");
  return svg;
}

class Image {
 public:
  explicit Image(const std::filesystem::path& path)
      : surface_(cairo_image_surface_create_from_png(path.c_str()), cairo_surface_destroy) {
    INFO(path);
    REQUIRE(cairo_surface_status(surface_.get()) == CAIRO_STATUS_SUCCESS);
  }
  int width() const { return cairo_image_surface_get_width(surface_.get()); }
  int height() const { return cairo_image_surface_get_height(surface_.get()); }
  /// From 0, black, to 1.
  double grey(int x, int y) const {
    const unsigned char* data = cairo_image_surface_get_data(surface_.get());
    return data[y * cairo_image_surface_get_stride(surface_.get()) + 4 * x + 1] / 255.0;
  }

 private:
  std::unique_ptr<cairo_surface_t, void (*)(cairo_surface_t*)> surface_;
};

constexpr int kPerMm = 8;  // pixels of the picture

struct Ink {
  double wanted = 0;  // pixels
  double drawn = 0;   // the same, mixed ones by their share
  double wrong = 0;   // wholly so
};

/// Holds each pixel of a picture against the wood as the replay keeps it after so many cuts.
Ink compare(const Image& image, int top, const Frame& frame, const Plan& plan, std::size_t cuts) {
  replaying::Standing wood(plan.section.width, plan.section.thickness);
  const double far = 2 * (plan.section.width + plan.section.thickness);
  for (std::size_t i = 0; i < cuts; ++i)
    for (const Pose& pose : plan.cuts[i].poses) wood.take(replaying::sweep_of(plan.cuts[i].plane, pose, far));
  const double right = frame.cut_off ? frame.shown.x1 : plan.section.width;
  Ink out;
  for (int y = 0; y < static_cast<int>(frame.height * kPerMm); ++y) {
    for (int x = 0; x < static_cast<int>(frame.width * kPerMm); ++x) {
      const Point paper = {(x + 0.5) / kPerMm, (y + 0.5) / kPerMm};
      const Point p = (1 / frame.placing.scale) * (paper - frame.placing.origin);
      const double wanted = p.x < right && wood.off_blank(p) < 0 && wood.solid(p) ? 1 : 0;
      const double drawn = 1 - image.grey(x, top + y);
      out.wanted += wanted;
      out.drawn += drawn;
      if (std::fabs(wanted - drawn) > 0.9) out.wrong += 1;
    }
  }
  return out;
}

/// Every picture of the plan in a column, drawn by the command, held against the wood of the replay: that
/// which stays after the cut, and that which stood before it.
void check_drawn(const test::Drawable& one, const std::string& command) {
  INFO(one.name);
  const std::vector<StepView> steps = steps_of(one.plan);
  Frame frame = frame_of(one.plan, steps, Unit::mm, 92, 68);
  frame.height = std::ceil(frame.height);  // whole pixels from picture to picture
  Sheet sheet;
  sheet.width = 92;
  for (const StepView& step : steps) {
    sheet.pictures.push_back({{0, sheet.height}, step_picture(one.plan, step, frame)});
    sheet.height += frame.height;
  }
  for (const bool after : {false, true}) {
    const Folder folder;
    std::string svg = only(after ? "wood" : "taken", svg_document(sheet, "", ""));
    // In pixels, so that a browser's idea of a millimetre does not come into it.
    const std::string w = std::to_string(92 * kPerMm);
    const std::string h = std::to_string(static_cast<int>(sheet.height) * kPerMm);
    svg.replace(svg.find("width=\""), svg.find("viewBox") - svg.find("width=\""),
                "width=\"" + w + "\" height=\"" + h + "\" ");
    write(folder.path / "a.svg", svg);
    const int code = shell(folder, "W=" + w + " H=" + h + "; " + command);
    INFO(test::contents(folder.path / "said"));
    REQUIRE(code == 0);
    const Image image(folder.path / "a.png");
    REQUIRE(image.width() == 92 * kPerMm);
    REQUIRE(image.height() == static_cast<int>(sheet.height) * kPerMm);
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (one.plan.cuts[i].poses.empty()) continue;
      INFO((after ? "after" : "before") << " cut " << i + 1);
      const int top = static_cast<int>(i) * static_cast<int>(frame.height) * kPerMm;
      const Ink ink = compare(image, top, frame, one.plan, i + (after ? 1 : 0));
      CHECK(ink.wanted > 1000);
      CHECK(std::fabs(ink.drawn - ink.wanted) <= 0.005 * ink.wanted);
      CHECK(ink.wrong <= 0.005 * ink.wanted);
    }
  }
}

}  // namespace

TEST_CASE("an SVG sheet is sound XML with a title, and its arcs are arcs", "[sheet][svg]") {
  for (const test::Drawable& one : test::drawn_examples()) {
    INFO(one.name);
    const std::string svg = svg_sheet(one.plan, one.kit, {{one.kit.unit}});
    check_well_formed(svg);
    CHECK(svg.find("<title id=\"sheet-title\">Moulding: " + one.plan.section.name) != std::string::npos);
    bool arcs = false;
    for (const Edge& edge : one.plan.section.target) arcs = arcs || edge.is_arc();
    const std::size_t line = svg.rfind("class=\"finished\" d=\"M ");
    CHECK((svg.substr(line, svg.find("/>", line) - line).find(" A ") != std::string::npos) == arcs);
    CHECK(count(svg, "class=\"taken\"") == one.plan.cuts.size() + 1);  // and one in the key
    CHECK(svg == svg_sheet(one.plan, one.kit, {{one.kit.unit}}));
  }
}

TEST_CASE("names stay inert in a sheet", "[sheet][svg]") {
  test::Drawable one = test::drawn_examples().front();
  for (const std::string& name :
       {std::string("<script>alert(1)</script>"), std::string("\"'&]]>--><!--"),
        std::string("a\x1b[31m\x01\x02 b"), std::string("\xff\xfe broken"), std::string(10000, 'x'),
        std::string("\u202eright to left"), std::string("面取り鉋 ½ Größe")}) {
    one.plan.section.name = name;
    one.kit.name = name;
    for (Cut& cut : one.plan.cuts) cut.plane.label = name;
    const std::string svg = svg_sheet(one.plan, one.kit, {{Unit::mm}});
    check_well_formed(svg);
    CHECK(svg.find("<script") == std::string::npos);
    CHECK(svg.find('\x1b') == std::string::npos);
    CHECK(svg.find("\u202e") == std::string::npos);
  }
}

TEST_CASE("librsvg draws the wood that the replay keeps, at each step", "[sheet][svg]") {
  for (const test::Drawable& one : test::drawn_examples())
    check_drawn(one, "rsvg-convert -w $W -h $H -o a.png a.svg");
  for (const test::Drawable& one : test::drawn_extremes()) {
    if (one.plan.cuts.size() > 20) continue;  // higher than the images of librsvg may be
    check_drawn(one, "rsvg-convert -w $W -h $H -o a.png a.svg");
  }
}

TEST_CASE("Chromium draws the wood that the replay keeps, at each step", "[sheet][svg]") {
  check_drawn(test::drawn_examples().front(),
              "chromium --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking "
              "--disable-component-update --disable-sync --user-data-dir=profile --hide-scrollbars "
              "--window-size=$W,$H --screenshot=a.png file://$(pwd | sed 's/ /%20/g')/a.svg");
}

TEST_CASE("a plan that cannot be still has a sheet, with its reasons", "[sheet][svg]") {
  const Kit kit = test::kit("units inch\nrebate 3/4\n");
  const Plan plan =
      test::quick_plan(test::profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"), kit);
  REQUIRE_FALSE(plan.feasible);
  const std::string svg = svg_sheet(plan, kit, {{Unit::inch}});
  check_well_formed(svg);
  CHECK(svg.find("No: these planes cannot cut it") != std::string::npos);
  CHECK(count(svg, "class=\"taken\"") == 0);
}

TEST_CASE("SVG of sheets of many cuts keep every line of words apart", "[sheet][svg]") {
  // Measured by the widths that the layout itself counts with; pdf_test and browser.py measure what is drawn.
  for (const test::Drawable& one : test::drawn_extremes()) {
    const std::string svg = svg_sheet(one.plan, one.kit, {{one.kit.unit}});
    check_well_formed(svg);
    CHECK(count(svg, "<title>Cut ") == one.plan.cuts.size());
  }
}
