// HTML sheets as text: sound XML, the list's own words, names that stay names. What a browser makes of them
// is in browser.py.
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>

#include "app/folder.h"
#include "arrisline/sheet.h"
#include "catch.h"
#include "report/job_words.h"
#include "report/listing.h"
#include "sheet/plans.h"
#include "sheet/svg.h"

using namespace arrisline;
using test::Folder;

namespace {

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
    ++out;
  return out;
}

void check_well_formed(const std::string& html) {
  const Folder folder;
  std::ofstream(folder.path / "a.html", std::ios::binary) << html;
  const std::string command =
      "cd '" + folder.path.string() + "' && xmllint --noout --nonet a.html >said 2>&1";
  const int code = std::system(command.c_str());  // NOLINT(cert-env33-c): the tests' own words
  INFO(test::contents(folder.path / "said"));
  CHECK(code == 0);
}

/// The page without its style and its script.
std::string body_of(const std::string& html) {
  const std::size_t from = html.find("<body>"), to = html.find("<script>");
  REQUIRE(from != std::string::npos);
  REQUIRE(to != std::string::npos);
  return html.substr(from, to - from);
}

/// The tags in turn, with the names of their attributes and without the values.
std::string tags(const std::string& html) {
  static const std::regex values("=\"[^\"]*\"");
  std::string out;
  for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1))
    out += html.substr(at, html.find('>', at) - at + 1);
  return std::regex_replace(out, values, "");
}

void check_says(const std::string& html, const std::vector<Block>& blocks) {
  for (const Block& block : blocks) {
    INFO(block.text);
    CHECK(html.find(escaped(block.text)) != std::string::npos);
  }
}

const Job& bookcase() {
  static const Job job =
      test::need(read_job_file(std::string(ARRISLINE_SOURCE_DIR) + "/examples/hall-bookcase.job"));
  return job;
}

const JobPlan& bookcase_plan() {
  static const JobPlan plan = [] {
    JobOptions options;
    options.plan.any = true;
    options.plan.most_work = 400000;
    return plan_job(bookcase(), options);
  }();
  return plan;
}

}  // namespace

TEST_CASE("an HTML sheet is sound XML and says what the list says", "[sheet][html]") {
  for (const test::Drawable& one : test::drawn_examples()) {
    INFO(one.name);
    const SheetOptions options{{one.kit.unit}};
    const std::string html = html_sheet(one.plan, one.kit, options);
    check_well_formed(html);
    CHECK(html == html_sheet(one.plan, one.kit, options));
    const Listing listing = listing_of(one.plan, one.kit, options.report);
    check_says(html, listing.before);
    for (const std::vector<Block>& cut : listing.cuts) check_says(html, cut);
    check_says(html, listing.after);
    CHECK(count(html, "<article class=\"step\"") == one.plan.cuts.size() + 1);
    CHECK(count(html, "class=\"taken\"") == one.plan.cuts.size() + 1);  // and one in the key
  }
}

TEST_CASE("sheets of extreme plans are sound XML too", "[sheet][html]") {
  for (const test::Drawable& one : test::drawn_extremes()) {
    INFO(one.name);
    const std::string html = html_sheet(one.plan, one.kit, {{one.kit.unit}});
    check_well_formed(html);
    CHECK(count(html, "<article class=\"step\"") == one.plan.cuts.size() + 1);
  }
}

TEST_CASE("an HTML sheet fetches nothing and runs nothing but its own", "[sheet][html]") {
  const test::Drawable& one = test::drawn_examples().front();
  for (const std::string& html :
       {html_sheet(one.plan, one.kit, {}), html_sheet(bookcase(), bookcase_plan(), {})}) {
    const std::string space = "xmlns=\"http://www.w3.org/2000/svg\"";
    const std::string policy = "http-equiv=\"Content-Security-Policy\"";
    CHECK(count(html, space) >= 3);
    CHECK(count(html, "http") == count(html, space) + 1);
    CHECK(count(html, policy) == 1);
    CHECK(count(html, "default-src 'none'") == 1);
    CHECK(count(html, "unsafe") == 0);
    CHECK(count(html, "<script") == 1);
    CHECK(count(html, "<style") == 1);
    const std::string page = tags(body_of(html));
    for (const char* what : {" on", " style", " src", "<link", "<img", "<iframe", "<object"}) {
      INFO(what);
      CHECK(count(page, what) == 0);
    }
    // Every link stays on the page, and every id is there once.
    static const std::regex links("href=\"#([^\"]*)\""), ids(" id=\"([^\"]*)\"");
    CHECK(count(html, "href=") == count(html, "href=\"#"));
    for (auto it = std::sregex_iterator(html.begin(), html.end(), links); it != std::sregex_iterator();
         ++it) {
      INFO(it->str(1));
      CHECK(count(html, " id=\"" + it->str(1) + "\"") == 1);
    }
    for (auto it = std::sregex_iterator(html.begin(), html.end(), ids); it != std::sregex_iterator(); ++it) {
      INFO(it->str(1));
      CHECK(count(html, it->str(0)) == 1);
    }
  }
}

TEST_CASE("names stay inert in an HTML sheet", "[sheet][html]") {
  test::Drawable one = test::drawn_examples().front();
  const auto named = [&one](const std::string& name) {
    one.plan.section.name = one.kit.name = name;
    for (Cut& cut : one.plan.cuts) {
      cut.plane.label = name;
      cut.reason = name;
    }
    return html_sheet(one.plan, one.kit, {{Unit::mm}});
  };
  const std::string plain = tags(body_of(named("plain")));
  CHECK(count(plain, "<p>") > 5);
  for (const std::string& name :
       {std::string("<script>alert(1)</script>"), std::string("</title></style></script><h1>"),
        std::string("\" onload=\"alert(1)"), std::string("' onclick='x"), std::string("\"'&]]>--><!--"),
        std::string("&amp;&lt;b&gt;"), std::string("a\x1b[31m\x01\x02\x7f b"), std::string("\xff\xfe broken"),
        std::string(10000, 'x'), std::string(10000, '<'), std::string("\u202eright to left"),
        std::string("https://example.org/"), std::string("面取り鉋 ½ Größe")}) {
    INFO(name.substr(0, 40));
    const std::string html = named(name);
    check_well_formed(html);
    CHECK(tags(body_of(html)) == plain);
    CHECK(count(html, "<script") == 1);
    CHECK(html.find('\x1b') == std::string::npos);
    CHECK(html.find("\u202e") == std::string::npos);
  }
}

TEST_CASE("a plan that cannot be has a page with its section and its reasons", "[sheet][html]") {
  const Kit kit = test::kit("units inch\nrebate 3/4\n");
  const Plan plan =
      test::quick_plan(test::profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"), kit);
  REQUIRE_FALSE(plan.feasible);
  const std::string html = html_sheet(plan, kit, {{Unit::inch}});
  check_well_formed(html);
  check_says(html, listing_of(plan, kit, {Unit::inch}).before);
  CHECK(count(html, "<svg") == 1);
  CHECK(count(html, "<button") == 0);
}

TEST_CASE("a job's page has a part for each plan, then the job's list", "[sheet][html]") {
  const std::string html = html_sheet(bookcase(), bookcase_plan(), {});
  check_well_formed(html);
  check_says(html, job_blocks(bookcase(), bookcase_plan(), {}));
  std::size_t steps = 0, at = 0;
  for (const Run& run : bookcase_plan().runs) {
    steps += run.plan.cuts.size() + 1;
    const std::size_t found = html.find(">For " + escaped(run_words(bookcase(), run)) + "</h2>");
    REQUIRE(found != std::string::npos);
    CHECK(found > at);
    at = found;
  }
  CHECK(count(html, "<article class=\"step\"") == steps);
  CHECK(html.find(">Order of work</h2>") > at);
  CHECK(html.find(">Contents</h2>") < html.find(">For "));
}
