// What is said of a profile that was drawn anew, and of one that was not for want of time.
#include "report/redrawn_words.h"

#include "arrisline/plan_json.h"
#include "catch.h"
#include "report/pages.h"

namespace arrisline::test {
namespace {

constexpr double kIn = kMmPerInch;

Section one_cove() {
  Section out;
  Element cove;
  cove.number = 1;
  cove.name = "cove";
  out.elements = {cove};
  return out;
}

Redrawing found(double drawn, double now) {
  Substitute nearest;
  nearest.departure = 0.0125 * kIn;
  nearest.changes = {{0, Redrawn::What::across, drawn, now, false}};
  return {nearest, false};
}

TEST_CASE("how far the redrawn line lies off is rounded up, as what is no farther", "[report]") {
  CHECK(has(running(redrawn_words(one_cove(), found(kIn / 4, kIn / 8), {})),
            "lies at most 0.013 in from the drawn line"));
}

TEST_CASE("two figures of one division are told apart", "[report]") {
  const auto told = [](double drawn, double now, Unit unit) {
    return running(redrawn_words(one_cove(), found(drawn * kIn, now * kIn), {unit}));
  };
  CHECK(has(told(3, 3.0004, Unit::inch), "out 3.0004 in, drawn 3 in."));
  CHECK(has(told(0.125, 0.1262, Unit::inch), "out 0.126 in, drawn 0.125 in."));
  CHECK(has(told(0, 0.00034, Unit::inch), "out 0.0003 in, drawn 0 in."));
  CHECK(has(told(0.125, 0.25, Unit::inch), "out 1/4 in, drawn 1/8 in."));
  Redrawing up = found(kIn / 8, kIn / 4);
  up.nearest->changes = {{0, Redrawn::What::across, kIn / 8, kIn / 4, true},
                         {0, Redrawn::What::down, kIn / 8, kIn / 4, false},
                         {0, Redrawn::What::down, kIn / 8, kIn / 2, true}};
  CHECK(has(running(redrawn_words(one_cove(), up, {})),
            "(cove): in 1/4 in, drawn 1/8 in, down 1/4 in, drawn 1/8 in, up 1/2 in, drawn 1/8 in."));
  CHECK(has(told(10 / kIn, 10.003 / kIn, Unit::mm), "out 10.003 mm, drawn 10 mm."));
}

TEST_CASE("a search for another drawing that was left off says so", "[report]") {
  Redrawing redrawing = found(kIn / 4, kIn / 8);
  CHECK_FALSE(has(redrawn_words(one_cove(), redrawing, {}), "left off"));
  redrawing.left_off = true;
  CHECK(has(running(redrawn_words(one_cove(), redrawing, {})),
            "The search was left off before everything was tried"));
  CHECK(has(running(none_redrawn_words(0.4, false, {Unit::mm})), "Nor is any profile found within 0.4 mm"));
  const std::string late = running(none_redrawn_words(0.4, true, {Unit::mm}));
  CHECK(has(late, "within 0.4 mm of the drawing that they can was left off before it found one"));
  CHECK_FALSE(has(late, "Nor"));
}

TEST_CASE("the JSON names what was left off, and nothing where nothing was", "[report]") {
  Plan no;
  const Redrawing late = {std::nullopt, true};
  CHECK_FALSE(has(plan_to_json(no), "left_off"));
  CHECK(has(plan_to_json(no, {nullptr, nullptr, &no.section, &late}), "\"left_off\": [\"redrawing\"]"));
  no.remedies_left_off = true;
  CHECK(has(plan_to_json(no), "\"left_off\": [\"remedies\"]"));
}

}  // namespace
}  // namespace arrisline::test
