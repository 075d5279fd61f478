// Numbers are read and written without the locale, whatever a program that uses the library has set.
#include <clocale>
#include <locale>
#include <string>

#include "arrisline/plan.h"
#include "arrisline/plan_json.h"
#include "arrisline/read.h"
#include "arrisline/replay.h"
#include "arrisline/report.h"
#include "catch.h"

using namespace arrisline;

namespace {

// Decimal commas and thousands set apart, in the C library (where the environment names such a locale) and in
// the streams.
class Commas {
 public:
  Commas() : old_(std::locale::global(std::locale(std::locale::classic(), new Punctuation))) {
    std::setlocale(LC_ALL, "");
  }
  Commas(const Commas&) = delete;
  Commas& operator=(const Commas&) = delete;
  ~Commas() {
    std::locale::global(old_);
    std::setlocale(LC_ALL, "C");
  }

 private:
  struct Punctuation : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\1"; }
  };
  std::locale old_;
};

struct Printed {
  std::string json, list, diagnostics, findings;
  bool operator==(const Printed&) const = default;
};

Printed print() {
  const auto section =
      read_profile("units mm\nstock 40.25 wide 20.5 thick\nstart face 6.35\ncove out 6.35 down 6.35\n", "p");
  const auto kit = read_kit("round 4 width .24\nrebate 3/4\n", "k");
  REQUIRE(section.value);
  REQUIRE(kit.value);
  const Plan plan = make_plan(*section.value, *kit.value, {});
  Printed out{plan_to_json(plan), cut_list(plan, *kit.value, {Unit::mm, false, 0.2, 0.4}), "", ""};
  for (const Diagnostic& d : read_profile("units mm\nstock 40,25 wide 1.5.5 thick\n", "p").diagnostics)
    out.diagnostics += format(d);
  // What the replay and the clipper say of figures stated falsely, and of a plane that rides on nothing.
  Plan wrong = plan;
  for (Cut& cut : wrong.cuts) {
    cut.removed += 1.5;
    for (Pose& pose : cut.poses) pose.at = pose.at + Point{-0.75, 0.75};
  }
  for (const auto& findings : {replay(wrong, {}).findings, second_opinion(wrong)})
    for (const Finding& finding : findings) out.findings += finding.text + "\n";
  return out;
}

}  // namespace

TEST_CASE("figures are the same whatever the locale", "[locale]") {
  const Printed plain = print();
  CHECK(plain.json.find("40.25") != std::string::npos);
  CHECK(plain.list.find("40.25") != std::string::npos);
  Printed abroad;
  {
    const Commas commas;
    // Without this the rest would show nothing.
    REQUIRE(std::use_facet<std::numpunct<char>>(std::locale()).decimal_point() == ',');
    abroad = print();
  }
  CHECK(abroad.json == plain.json);
  CHECK(abroad.list == plain.list);
  CHECK(abroad.diagnostics == plain.diagnostics);
  CHECK(plain.findings.find("near x ") != std::string::npos);
  CHECK(plain.findings.find(" by the clipper") != std::string::npos);
  CHECK(abroad.findings == plain.findings);
}
