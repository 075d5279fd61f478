// Tidy form: what it looks like, that it is stable, and that a tidied file reads as the file did.
#include "text/tidy.h"

#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "arrisline/job.h"
#include "arrisline/plan_json.h"
#include "catch.h"
#include "job/grammar.h"
#include "plan/grammar.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

std::string examples() {
  return std::string(ARRISLINE_SOURCE_DIR) + "/examples/";
}

std::string contents_of(const std::filesystem::path& path) {
  std::ostringstream out;
  out << std::ifstream(path, std::ios::binary).rdbuf();
  return out.str();
}

bool same(const Edge& a, const Edge& b) {
  return a.from == b.from && a.to == b.to && a.is_arc() == b.is_arc() &&
         (!a.is_arc() || a.centre == b.centre);
}

bool same(const Loop& a, const Loop& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const Edge& x, const Edge& y) { return same(x, y); });
}

/// To the last bit; only the lines of the file that the elements stand in may differ, since empty ones go.
void check_same(const Section& a, const Section& b) {
  CHECK(a.name == b.name);
  CHECK(a.width == b.width);
  CHECK(a.thickness == b.thickness);
  CHECK(same(a.target, b.target));
  CHECK(a.source == b.source);
  REQUIRE(a.elements.size() == b.elements.size());
  for (std::size_t i = 0; i < a.elements.size(); ++i)
    CHECK(describe(a.elements[i]) == describe(b.elements[i]));
}

void check_same(const Kit& a, const Kit& b) {
  CHECK(a.name == b.name);
  CHECK(a.unit == b.unit);
  CHECK(a.scraper == b.scraper);
  REQUIRE(a.planes.size() == b.planes.size());
  for (std::size_t i = 0; i < a.planes.size(); ++i) {
    const Plane &x = a.planes[i], &y = b.planes[i];
    CHECK(x.label == y.label);
    CHECK(same_plane(x, y));
    CHECK((x.kind == y.kind && x.width == y.width && x.radius == y.radius && x.number == y.number));
    CHECK((x.reach == y.reach && x.deep == y.deep && x.body.has_value() == y.body.has_value()));
    if (x.body && y.body) CHECK((x.body->overhang == y.body->overhang && x.body->above == y.body->above));
    CHECK(same(x.sole, y.sole));
  }
  const Shop &s = a.shop, &t = b.shop;
  CHECK((s.shaving_rebate == t.shaving_rebate && s.shaving_curved == t.shaving_curved && s.gauge == t.gauge &&
         s.weight_change == t.weight_change && s.weight_cut == t.weight_cut &&
         s.weight_wear == t.weight_wear && s.weight_setting == t.weight_setting &&
         s.weight_stroke == t.weight_stroke && s.deep == t.deep && s.weight_slow == t.weight_slow &&
         s.weight_slant == t.weight_slant && s.facets == t.facets && s.weight_uneven == t.weight_uneven &&
         s.strokes_per_minute == t.strokes_per_minute));
  REQUIRE(a.board.has_value() == b.board.has_value());
  if (a.board)
    CHECK((a.board->stops == b.board->stops && a.board->screw == b.board->screw &&
           a.board->clear == b.board->clear));
}

void check_same(const Job& a, const Job& b) {
  CHECK(a.name == b.name);
  CHECK(a.unit == b.unit);
  CHECK(a.kit_file == b.kit_file);
  check_same(a.kit, b.kit);
  REQUIRE(a.moulds.size() == b.moulds.size());
  for (std::size_t i = 0; i < a.moulds.size(); ++i) {
    const Mould &x = a.moulds[i], &y = b.moulds[i];
    CHECK((x.name == y.name && x.profile == y.profile && x.species == y.species && x.width == y.width &&
           x.length == y.length && x.count == y.count && x.mitre == y.mitre && x.inside == y.inside &&
           x.spring == y.spring && x.corner == y.corner && x.across == y.across));
    check_same(x.section, y.section);
  }
  REQUIRE(a.stocks.size() == b.stocks.size());
  for (std::size_t i = 0; i < a.stocks.size(); ++i) {
    const Stock &x = a.stocks[i], &y = b.stocks[i];
    CHECK((x.species == y.species && x.thickness == y.thickness && x.width == y.width &&
           x.length == y.length && x.to_buy == y.to_buy && x.count == y.count));
  }
  CHECK((a.saw.kerf == b.saw.kerf && a.saw.allowance == b.saw.allowance && a.ripping.kerf == b.ripping.kerf &&
         a.ripping.trued == b.ripping.trued && a.ripping.hold == b.ripping.hold));
  REQUIRE(a.spare.has_value() == b.spare.has_value());
  if (a.spare) CHECK((a.spare->length == b.spare->length && a.spare->count == b.spare->count));
  REQUIRE(a.moisture.has_value() == b.moisture.has_value());
  if (a.moisture)
    CHECK((a.moisture->driest == b.moisture->driest && a.moisture->dampest == b.moisture->dampest));
}

/// The comments in order, each from its # to the last that is no blank. A # within quotation marks begins
/// none, and they open only where a word may begin; an inch mark stands behind a figure.
std::vector<std::string> comments_of(const std::string& text) {
  std::vector<std::string> out;
  bool quoted = false;
  bool inside = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\n' || c == '\r') {
      quoted = inside = false;
    } else if (inside) {
      out.back() += c;
    } else if (quoted) {
      quoted = c != '"';
    } else if (c == '"') {
      quoted = i == 0 || std::string(" \t,\r\n").find(text[i - 1]) != std::string::npos;
    } else if (c == '#') {
      inside = true;
      out.emplace_back("#");
    }
  }
  for (std::string& comment : out) comment.erase(comment.find_last_not_of(" \t") + 1);
  return out;
}

/// Tidies and reads both; false where the text does not read, which makes no test.
template <class Read>
bool holds(const std::string& text, FileKind kind, const Read& read) {
  const auto before = read(text);
  if (!before.value) return false;
  const std::string tidy = tidied(text, kind);
  CAPTURE(text, tidy);
  CHECK(tidied(tidy, kind) == tidy);
  CHECK(comments_of(tidy) == comments_of(text));
  const auto after = read(tidy);
  CHECK(messages(after).find("error") == std::string::npos);
  REQUIRE(after.value);
  check_same(*before.value, *after.value);
  return true;
}

bool holds(const std::string& text, FileKind kind) {
  if (kind == FileKind::profile)
    return holds(text, kind, [](const std::string& t) { return read_profile(t, "t.profile"); });
  if (kind == FileKind::kit)
    return holds(text, kind, [](const std::string& t) { return read_kit(t, "t.kit"); });
  return holds(text, kind, [](const std::string& t) { return read_job(t, "t.job", examples()); });
}

}  // namespace

TEST_CASE("what tidy form looks like", "[text][tidy]") {
  CHECK(
      tidied("\xEF\xBB\xBF\n\n#  An edge\t \r\n\r\n\r\nProfile  Table Edge, left\nSTOCK 2 Wide ,3/4  THICK\n"
             "  start face 1/2#begin\n\tSTEP\tdown 1/8IN   # deep\nreverse-ogee out 3/4 , down 3/4\n"
             "# the end\nfillet out 1/8 \n\n",
             FileKind::profile) ==
      "#  An edge\n"
      "\n"
      "profile  Table Edge, left\n"
      "stock    2 wide, 3/4  thick\n"
      "start    face 1/2            #begin\n"
      "step     down 1/8IN          # deep\n"
      "reverse-ogee out 3/4, down 3/4\n"
      "# the end\n"
      "fillet   out 1/8\n");
  CHECK(tidied("mould \"top # shelf\" a.profile  width 1 1/2   length 44 # long\n"
               "mould b  b.profile\t\twidth 1  length 9 1/2  count 2\nsaw KERF 1/16  allowance 1/32",
               FileKind::job) ==
        "mould    \"top # shelf\" a.profile  width 1 1/2  length 44  # long\n"
        "mould    b                        b.profile    width 1  length 9 1/2  count 2\n"
        "saw      kerf 1/16  allowance 1/32\n");
}

TEST_CASE("every example is the same when it is tidied", "[text][tidy]") {
  int files = 0;
  for (const auto& file : std::filesystem::directory_iterator(examples())) {
    const std::string ending = file.path().extension().string();
    const FileKind kind = ending == ".kit"   ? FileKind::kit
                          : ending == ".job" ? FileKind::job
                                             : FileKind::profile;
    if (ending != ".kit" && ending != ".job" && ending != ".profile") continue;
    CAPTURE(file.path().string());
    CHECK(holds(contents_of(file.path()), kind));
    ++files;
  }
  CHECK(files >= 17);
}

TEST_CASE("profiles and kits of the grammar are the same when they are tidied", "[text][tidy]") {
  const std::uint32_t seed = 20261127;
  CAPTURE(seed);
  std::mt19937 random(seed);
  int profiles = 0, kits = 0;
  for (int i = 0; i < 600; ++i) {
    std::string bytes(400, '\0');
    for (char& byte : bytes) byte = static_cast<char>(random() & 0xFF);
    test::Choices choices(bytes);
    profiles += holds(test::make_profile(choices), FileKind::profile);
    kits += holds(test::make_kit(choices), FileKind::kit);
  }
  CHECK(profiles > 200);
  CHECK(kits > 400);
}

TEST_CASE("jobs of the grammar are the same when they are tidied", "[text][tidy]") {
  const std::uint32_t seed = 20261127;
  CAPTURE(seed);
  std::mt19937 random(seed);
  const JobFiles files = test::grammar_job_files();
  int jobs = 0, changed = 0;
  std::size_t comments = 0;
  for (int i = 0; i < 600; ++i) {
    std::string bytes(600, '\0');
    for (char& byte : bytes) byte = static_cast<char>(random() & 0xFF);
    test::Choices choices(bytes);
    const std::string text = test::make_job(choices);
    if (!holds(text, FileKind::job, [&](const std::string& t) { return read_job(t, "t.job", files); }))
      continue;
    ++jobs;
    changed += tidied(text, FileKind::job) != text;
    comments += comments_of(text).size();
  }
  INFO(jobs << " of 600 read, " << changed << " changed, " << comments << " comments");
  CHECK(jobs > 400);
  CHECK(changed > 400);
  CHECK(comments > 800);
}
