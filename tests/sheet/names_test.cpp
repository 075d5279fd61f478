// Whatever a name is made of, a sheet holds it as text.
#include <random>
#include <set>
#include <string>

#include "arrisline/sheet.h"
#include "catch.h"
#include "sheet/plans.h"

using namespace arrisline;

namespace {

/// What opens each tag: "svg", "/svg", "?xml", …
std::set<std::string> tags(const std::string& text) {
  std::set<std::string> out;
  for (std::size_t at = text.find('<'); at != std::string::npos; at = text.find('<', at + 1))
    out.insert(text.substr(at + 1, text.find_first_of(" >/\n", at + 2) - at - 1));
  return out;
}

bool has_control_bytes(const std::string& text) {
  return std::any_of(text.begin(), text.end(),
                     [](char c) { return (static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == 0x7f; });
}

/// Bytes that markup, terminals and readers of UTF-8 mind more than others.
std::string any_name(std::mt19937& random) {
  static const std::vector<std::string> kPieces = {"<",
                                                   ">",
                                                   "\"",
                                                   "'",
                                                   "&",
                                                   "</text>",
                                                   "</svg>",
                                                   "<script>",
                                                   "]]>",
                                                   "<!--",
                                                   "--",
                                                   "&#x3c;",
                                                   "\\",
                                                   "%",
                                                   "{",
                                                   "}",
                                                   "\x1b[2J",
                                                   "\x01",
                                                   "\x7f",
                                                   "\x80",
                                                   "\xc0\xaf",
                                                   "\xed\xa0\x80",
                                                   "\xf4\x90\x80\x80",
                                                   "\u202e",
                                                   "\ufeff",
                                                   "\uffff",
                                                   "\u00e9",
                                                   "\u9762",
                                                   "\U0001f600",
                                                   " ",
                                                   "a",
                                                   "javascript:",
                                                   "onload=",
                                                   "url(#"};
  std::string out;
  const int pieces = static_cast<int>(random() % 12);
  for (int i = 0; i < pieces; ++i) {
    if (random() % 4 == 0) {
      out += static_cast<char>(random() % 256);
    } else {
      out += kPieces[random() % kPieces.size()];
    }
  }
  return out;
}

}  // namespace

TEST_CASE("names of any bytes bring no tag, and no control byte, into a sheet", "[sheet][names]") {
  test::Drawable one = test::drawn_examples().front();
  const SheetOptions options{{Unit::mm}};
  const std::set<std::string> svg_tags = tags(svg_sheet(one.plan, one.kit, options));
  const std::set<std::string> html_tags = tags(html_sheet(one.plan, one.kit, options));
  CHECK(svg_tags.contains("svg"));
  std::mt19937 random(7);
  for (int i = 0; i < 200; ++i) {
    one.plan.section.name = any_name(random);
    one.kit.name = any_name(random);
    for (Cut& cut : one.plan.cuts) {
      cut.plane.label = any_name(random);
      cut.reason = any_name(random);
    }
    for (Element& element : one.plan.section.elements) element.name = any_name(random);
    const std::string svg = svg_sheet(one.plan, one.kit, options);
    const std::string html = html_sheet(one.plan, one.kit, options);
    CHECK(tags(svg) == svg_tags);
    CHECK(tags(html) == html_tags);
    CHECK_FALSE(has_control_bytes(svg));
    CHECK_FALSE(has_control_bytes(html));
  }
}
