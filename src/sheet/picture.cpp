// One picture a cut. Shown by tests/sheet/picture_test.cpp.
#include "sheet/picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "report/cut_words.h"
#include "report/page.h"
#include "sheet/gauge_labels.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kAround = 7;  // round the blank, where planes stand
constexpr double kSides = 9;   // of a plane, above its sole
constexpr double kRail = 0.8;  // radius of a mark where the sole bears
constexpr double kPast = 2;    // that a gauge line goes past the blank
constexpr double kType = 3;
constexpr std::size_t kNameColumns = 80;

/// The part of the blank worth drawing: to some way beyond the work, or all where little more would be.
Box shown_of(const Plan& plan, const std::vector<StepView>& steps) {
  const Section& section = plan.section;
  double right = std::max(reach(section), section.thickness / 2) * 1.25 + section.thickness / 2;
  for (const StepView& step : steps) {
    for (const GaugeMark& mark : step.marks)
      if (mark.upright) right = std::max(right, mark.at + section.thickness / 4);
  }
  if (works_back_edge(section) || section.width <= 1.3 * right) right = section.width;
  return {0, 0, right, section.thickness};
}

/// The largest of 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that is no larger.
double round_scale(double scale) {
  constexpr std::array<double, 10> kSteps = {8, 6, 5, 4, 3, 2.5, 2, 1.5, 1.25, 1};
  const double power = std::pow(10, std::floor(std::log10(scale)));
  for (const double step : kSteps)
    if (step * power <= scale * (1 + 1e-9)) return step * power;
  return power;
}

std::vector<Edge> straight(const std::vector<Point>& points) {
  std::vector<Edge> out;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    out.push_back({points[i], points[i + 1], {}, Turn::straight});
  return out;
}

DrawnShape region_shape(Role role, const Region& region, const Placing& placing) {
  DrawnShape shape{role, {}, true, true};
  for (const Loop& loop : region) shape.chains.push_back(placing.chain(loop));
  return shape;
}

DrawnShape blank_shape(const Section& section, const Placing& placing) {
  return {Role::blank, {placing.chain(blank_outline(section.width, section.thickness))}, true, true};
}

DrawnShape disc(Point at, double r) {
  const Point left = at - Point{r, 0}, right = at + Point{r, 0};
  return {Role::rail, {{{left, right, at, Turn::left}, {right, left, at, Turn::left}}}, true, true};
}

/// The sides of the plane from the ends of its sole upward, and a wavy line where the rest of it is left off.
DrawnShape sides_of(const Cut& cut, const Pose& pose, const Placing& placing) {
  const double half = cut.plane.width / 2;
  const double up = kSides / placing.scale;
  const double low = sole_height(cut.plane, -half);
  const double top = std::max(low, 0.0) + up;
  const auto at = [&](double u, double v) { return placing.point(from_sole_frame(pose, {u, v})); };
  DrawnShape shape{Role::plane, {}, false, true};
  shape.chains.push_back(straight({at(-half, low), at(-half, top)}));
  shape.chains.push_back(straight({at(half, sole_height(cut.plane, half)), at(half, top)}));
  const double wave = std::min(0.8 / placing.scale, half / 2);
  shape.chains.push_back(
      straight({at(-half, top), at(-half / 3, top + wave), at(half / 3, top - wave), at(half, top)}));
  return shape;
}

/// The blank goes on to the right: a broken line across it.
DrawnShape break_line(const Frame& frame) {
  const double x = frame.shown.x1;
  const double jag = 1.2 / frame.placing.scale;
  const double height = frame.shown.height();
  const auto at = [&](double dx, double part) { return frame.placing.point({x + dx, part * height}); };
  return {Role::leader,
          {straight({at(0, -0.06), at(0, 0.44), at(-jag, 0.48), at(jag, 0.52), at(0, 0.56), at(0, 1.06)})},
          false,
          false};
}

Picture empty_picture(const Plan& plan, const Frame& frame) {
  Picture picture;
  picture.width = frame.width;
  picture.height = frame.height;
  const Point end = frame.placing.point({frame.shown.x1, 0});
  picture.window = {frame.label_width, frame.label_height, frame.cut_off ? end.x : frame.width, frame.height};
  picture.shapes.push_back(blank_shape(plan.section, frame.placing));
  return picture;
}

void finish(Picture& picture, const Plan& plan, const Frame& frame) {
  picture.shapes.push_back(finished_line(plan.section, frame.placing));
  if (frame.cut_off) picture.shapes.push_back(break_line(frame));
}

std::string leaning(double tilt) {
  if (tilt == 0) return "upright on the face";
  if (std::fabs(tilt) > 135) return "on the underside";
  return "leaning " + plain(std::fabs(tilt), 1) + " degrees toward the " +
         (tilt > 0 ? "working edge" : "back edge");
}

std::string description_of(const Cut& cut, const StepView& step) {
  std::string out =
      "The wood as it stands is tinted, what this cut takes is hatched, the finished line is heavy.";
  if (!cut.poses.empty())
    out += " The sole of " + shorten(cut.plane.label, kNameColumns) + " is drawn at its last place, " +
           leaning(cut.poses.back().tilt) + ".";
  if (cut.poses.size() > 1)
    out +=
        " Its " + counted(cut.poses.size() - 1, "earlier place is", "earlier places are") + " broken lines.";
  std::vector<std::string> marks;
  for (const GaugeMark& mark : step.marks) marks.push_back(mark.letter);
  if (!marks.empty()) out += (marks.size() == 1 ? " Gauge line " : " Gauge lines ") + listed(marks) + ".";
  if (!step.rails.empty()) out += " Two discs show where it bears as it starts.";
  return out;
}

}  // namespace

DrawnShape finished_line(const Section& section, const Placing& placing) {
  DrawnShape shape{Role::finished, {}, false, true};
  std::vector<Edge> chain;
  const auto end_chain = [&] {
    if (!chain.empty()) shape.chains.push_back(placing.chain(chain));
    chain.clear();
  };
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (section.source[i] < 0) {
      end_chain();
    } else {
      chain.push_back(section.target[i]);
    }
  }
  end_chain();
  return shape;
}

std::string scale_words(double scale) {
  return scale >= 1 ? plain(scale, 2) + " : 1" : "1 : " + plain(1 / scale, 2);
}

Frame frame_of(const Plan& plan, const std::vector<StepView>& steps, Unit unit, double width, double height) {
  Frame frame;
  frame.unit = unit;
  frame.width = width;
  frame.height = height;
  frame.shown = shown_of(plan, steps);
  frame.cut_off = frame.shown.x1 < plan.section.width;
  for (const StepView& step : steps) {
    frame.label_width = std::max(frame.label_width, side_room(step.marks, unit));
    frame.label_height = std::max(frame.label_height, top_room(step.marks, unit, width));
  }
  const double right = frame.cut_off ? 1 : kAround;
  const double across = width - frame.label_width - kAround - right;
  const double down = height - frame.label_height - 2 * kAround;
  frame.placing.scale = round_scale(std::min(across / frame.shown.width(), down / frame.shown.height()));
  // What room is over across goes to both sides alike; down, the picture is made no higher than it needs.
  const double spare = across - frame.placing.scale * frame.shown.width();
  frame.height = height - (down - frame.placing.scale * frame.shown.height());
  frame.placing.origin = {frame.label_width + kAround + spare / 2, frame.label_height + kAround};
  return frame;
}

Picture step_picture(const Plan& plan, const StepView& step, const Frame& frame) {
  const Cut& cut = plan.cuts[step.cut];
  const Placing& placing = frame.placing;
  Picture picture = empty_picture(plan, frame);
  picture.title = "Cut " + std::to_string(cut.number) + " of " + std::to_string(plan.cuts.size()) + ": " +
                  shorten(cut.plane.label, kNameColumns) + " " + purpose(cut, plan.section);
  picture.description = description_of(cut, step);
  picture.shapes.push_back(region_shape(Role::taken, step.before, placing));
  picture.shapes.push_back(region_shape(Role::wood, step.after, placing));
  finish(picture, plan, frame);
  const Box blank = {0, 0, frame.shown.x1, plan.section.thickness};
  add_gauge_lines(picture, step.marks, frame.unit, placing, blank, kPast);
  for (std::size_t i = 0; i < step.soles.size(); ++i) {
    const bool last = i + 1 == step.soles.size();
    if (last) picture.shapes.push_back(sides_of(cut, cut.poses[i], placing));
    picture.shapes.push_back({last ? Role::sole : Role::turn, {placing.chain(step.soles[i])}, false, true});
  }
  if (cut.lies != Lies::face_up)
    picture.labels.push_back({{frame.width / 2, frame.height - 1},
                              std::string("blank ") + word(cut.lies),
                              kType,
                              Anchor::middle,
                              true});
  for (const Point rail : step.rails) picture.shapes.push_back(disc(placing.point(rail), kRail));
  return picture;
}

Picture finished_picture(const Plan& plan, const Frame& frame) {
  Picture picture = empty_picture(plan, frame);
  const std::string name = shorten(plan.section.name, kNameColumns);
  picture.title = name.empty() ? "The finished section" : "The finished section: " + name;
  picture.description = "The wood that stays is tinted, the finished line is heavy, the blank is dotted.";
  picture.shapes.push_back(region_shape(Role::wood, {plan.section.target}, frame.placing));
  finish(picture, plan, frame);
  return picture;
}

Picture key_picture(double width) {
  struct Entry {
    Role role;
    const char* words;
  };
  constexpr std::array<Entry, 7> kEntries = {{{Role::wood, "wood that stays"},
                                              {Role::taken, "wood this cut takes"},
                                              {Role::finished, "finished line"},
                                              {Role::sole, "sole at its last place"},
                                              {Role::turn, "sole at its earlier places"},
                                              {Role::gauge, "gauge line"},
                                              {Role::rail, "where the sole bears at the start"}}};
  constexpr double kSwatch = 8, kRow = 5, kGap = 5;
  Picture picture;
  picture.title = "Key to the pictures";
  picture.description =
      "Tint: wood that stays. Hatching: wood this cut takes. Heaviest line: the finished line.";
  double x = 0, y = 0;
  for (const Entry& entry : kEntries) {
    const double need = kSwatch + 1.5 + text_width(entry.words, kType);
    if (x > 0 && x + need > width) {
      x = 0;
      y += kRow;
    }
    const Point a = {x + 0.5, y + 0.8}, b = {x + kSwatch, y + kRow - 1.2};
    const double middle = (a.y + b.y) / 2;
    if (entry.role == Role::wood || entry.role == Role::taken) {
      std::vector<Edge> box = straight({a, {b.x, a.y}, b, {a.x, b.y}, a});
      picture.shapes.push_back({entry.role, {std::move(box)}, true, false});
    } else if (entry.role == Role::rail) {
      picture.shapes.push_back(disc({(a.x + b.x) / 2, middle}, kRail));
      picture.shapes.back().clipped = false;
    } else {
      picture.shapes.push_back({entry.role, {straight({{a.x, middle}, {b.x, middle}})}, false, false});
    }
    picture.labels.push_back({{x + kSwatch + 1.5, middle + 1.05}, entry.words, kType, Anchor::start, false});
    x += need + kGap;
  }
  picture.width = width;
  picture.height = y + kRow;
  picture.window = {0, 0, width, picture.height};
  return picture;
}

}  // namespace arrisline
