// Pictures: all there is to see has room, and no figure lies on another.
#include "sheet/picture.h"

#include <cmath>

#include "catch.h"
#include "sheet/plans.h"
#include "sheet/style.h"

using namespace arrisline;

namespace {

bool overlap(const Box& a, const Box& b) {
  constexpr double kHair = 1e-9;
  return a.x0 < b.x1 - kHair && b.x0 < a.x1 - kHair && a.y0 < b.y1 - kHair && b.y0 < a.y1 - kHair;
}

void check_labels(const Picture& picture) {
  std::vector<Box> boxes;
  for (const Label& label : picture.labels) boxes.push_back(box_of(label));
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    INFO(picture.title << ": " << picture.labels[i].words);
    CHECK(boxes[i].x0 >= -1e-9);
    CHECK(boxes[i].y0 >= -1e-9);
    CHECK(boxes[i].x1 <= picture.width + 1e-9);
    CHECK(boxes[i].y1 <= picture.height + 1e-9);
    for (std::size_t k = i + 1; k < boxes.size(); ++k) {
      INFO("and " << picture.labels[k].words);
      CHECK_FALSE(overlap(boxes[i], boxes[k]));
    }
  }
}

const DrawnShape* shape_of(const Picture& picture, Role role) {
  for (const DrawnShape& shape : picture.shapes)
    if (shape.role == role) return &shape;
  return nullptr;
}

/// A plan of one cut that strikes so many lines of each kind, some of them hardly apart.
Plan many_lines(int count) {
  Plan plan;
  plan.feasible = true;
  plan.section.width = 60;
  plan.section.thickness = 20;
  plan.section.target = blank_outline(60, 20);
  plan.section.source = {-1, -1, -1, -1};
  Cut cut;
  cut.number = 1;
  cut.plane.label = "rebate";
  cut.plane.width = 30;
  cut.poses = cut.set = {{{10, 4}, 0}};
  for (int i = 0; i < count; ++i) {
    const double at = 2 + i * (i % 2 == 0 ? 0.4 : 1.3);
    cut.lines.push_back({Side::edge, at, at, false});
    cut.lines.push_back({Side::face, at / 2, at / 2, false});
  }
  plan.cuts = {cut};
  return plan;
}

}  // namespace

TEST_CASE("figures have room in their picture and none lies on another", "[sheet]") {
  for (const std::vector<test::Drawable>* drawables : {&test::drawn_examples(), &test::drawn_extremes()}) {
    for (const test::Drawable& one : *drawables) {
      for (const Unit unit : {Unit::inch, Unit::mm}) {
        for (const double width : {60.0, 92.0, 180.0}) {
          const std::vector<StepView> steps = steps_of(one.plan);
          const Frame frame = frame_of(one.plan, steps, unit, width, 0.75 * width);
          for (const StepView& step : steps) {
            const Picture picture = step_picture(one.plan, step, frame);
            INFO(one.name << " at " << width);
            check_labels(picture);
            CHECK(picture.height <= 0.75 * width + 1e-9);
            CHECK(picture.width == width);
          }
        }
      }
    }
  }
  check_labels(key_picture(190));
  check_labels(key_picture(80));
}

TEST_CASE("lines hardly apart have their figures side by side and in rows", "[sheet]") {
  for (const int count : {1, 2, 4, 7, 10}) {
    const Plan plan = many_lines(count);
    const std::vector<StepView> steps = steps_of(plan);
    const Frame frame = frame_of(plan, steps, Unit::inch, 92, 68);
    const Picture picture = step_picture(plan, steps[0], frame);
    CHECK(picture.labels.size() == 2 * static_cast<std::size_t>(count));
    check_labels(picture);
  }
}

TEST_CASE("the finished line is drawn where the section has it, at a scale that fits", "[sheet]") {
  for (const test::Drawable& one : test::drawn_examples()) {
    INFO(one.name);
    const std::vector<StepView> steps = steps_of(one.plan);
    const Frame frame = frame_of(one.plan, steps, Unit::mm, 92, 68);
    const Picture picture = step_picture(one.plan, steps.front(), frame);
    const DrawnShape* line = shape_of(picture, Role::finished);
    REQUIRE(line != nullptr);
    std::size_t edges = 0;
    for (const std::vector<Edge>& chain : line->chains) edges += chain.size();
    std::size_t expected = 0;
    for (const int source : one.plan.section.source) expected += source >= 0 ? 1 : 0;
    CHECK(edges == expected);
    for (const std::vector<Edge>& chain : line->chains) {
      for (const Edge& edge : chain) {
        const Point back = (1 / frame.placing.scale) * (point_at(edge, 0.5) - frame.placing.origin);
        CHECK(distance(back, std::span<const Edge>(one.plan.section.target)) < 1e-9);
        CHECK(edge.from.x >= picture.window.x0);
        CHECK(edge.from.x <= picture.window.x1);
        CHECK(edge.from.y >= picture.window.y0);
        CHECK(edge.from.y <= picture.window.y1);
      }
    }
  }
}

TEST_CASE("a blank much wider than its work is cut off, and then it says so with a broken line", "[sheet]") {
  const Section wide = test::profile("12 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  const Section narrow = test::profile("7/8 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  const Kit kit = test::pair_of_sixes();
  for (const Section* section : {&wide, &narrow}) {
    const Plan plan = test::quick_plan(*section, kit);
    const std::vector<StepView> steps = steps_of(plan);
    const Frame frame = frame_of(plan, steps, Unit::inch, 92, 68);
    CHECK(frame.cut_off == (section == &wide));
    CHECK((shape_of(step_picture(plan, steps[0], frame), Role::leader) != nullptr));
    CHECK(frame.shown.x1 <= section->width);
    CHECK(frame.shown.x1 > reach(*section));
  }
}

TEST_CASE("a picture says in words what can be seen", "[sheet]") {
  const Plan plan = test::quick_plan(
      test::profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"), test::pair_of_sixes());
  const std::vector<StepView> steps = steps_of(plan);
  const Frame frame = frame_of(plan, steps, Unit::inch, 92, 68);
  const Picture first = step_picture(plan, steps.front(), frame);
  CHECK(first.title == "Cut 1 of " + std::to_string(plan.cuts.size()) + ": rebate 3/4 takes out waste");
  CHECK(first.description.find("Gauge line") != std::string::npos);
  const Picture last = step_picture(plan, steps.back(), frame);
  CHECK(last.title.find("hollow 6 makes element 1 (bead)") != std::string::npos);
  CHECK(last.description.find("Two discs") != std::string::npos);
}

TEST_CASE("a blank that lies otherwise than face up has it written on the picture", "[sheet]") {
  int turned = 0;
  for (const test::Drawable& one : test::drawn_examples()) {
    const std::vector<StepView> steps = steps_of(one.plan);
    const Frame frame = frame_of(one.plan, steps, Unit::inch, 92, 68);
    for (std::size_t i = 0; i < steps.size(); ++i) {
      bool said = false;
      for (const Label& label : step_picture(one.plan, steps[i], frame).labels)
        said = said || label.words == std::string("blank ") + word(one.plan.cuts[i].lies);
      CHECK(said == (one.plan.cuts[i].lies != Lies::face_up));
      turned += said ? 1 : 0;
    }
  }
  CHECK(turned >= 1);
}

TEST_CASE("scales are said in whole and round figures", "[sheet]") {
  CHECK(scale_words(2) == "2 : 1");
  CHECK(scale_words(1.25) == "1.25 : 1");
  CHECK(scale_words(1) == "1 : 1");
  CHECK(scale_words(0.25) == "1 : 4");
}

TEST_CASE("roles are told apart without colour", "[sheet]") {
  // In black and white two lines differ in width or in dashes, two areas in tint or hatching.
  for (const Role a : kRoles) {
    for (const Role b : kRoles) {
      if (a >= b) continue;
      const Style s = style_of(a), t = style_of(b);
      INFO(word(a) << " and " << word(b));
      CHECK((s.width != t.width || s.dash != t.dash || s.gap != t.gap || s.hatched != t.hatched ||
             s.fill.has_value() != t.fill.has_value()));
    }
  }
}
