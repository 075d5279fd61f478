// The cuts of a plan: planes, poses, gauge lines. Shown by tests/replay/plan_json_test.cpp.
#include <algorithm>
#include <cmath>

#include "report/plan_reader.h"

namespace arrisline {

using namespace json_words;

namespace {

// Twice round: any lean can be written within it.
constexpr double kMostTilt = 360;

// About as many chords as the replay flattens an arc into.
double chords_of(const Edge& edge) {
  constexpr double kChordError = 0.0005;
  return edge.is_arc() ? length(edge) / std::sqrt(8 * kChordError * radius(edge)) : 0;
}

double chords_of(const Plane& plane) {
  if (plane.is_curved() && plane.radius > 0) return chords_of(sole_edges(plane, {}).front());
  double sum = 0;
  for (const Edge& edge : plane.sole) sum += chords_of(edge);
  return sum;
}

}  // namespace

// A list of points and arcs in (u, f); the first entry is where the sole starts.
void PlanReader::sole(const Json& plane, const Path& path, Plane& out) {
  const Json* list = list_at(plane, path, "sole", Need::must);
  if (!list) return;
  const Path here = join(path, "sole");
  if (list->size() > kMaxSole + 1) {
    over(here, "more than " + std::to_string(kMaxSole) + " edges", "kMaxSole");
    return;
  }
  if (list->size() < 2) {
    fault(here, "expected at least a start and one edge");
    return;
  }
  Point at;
  for (std::size_t i = 0; i < list->size(); ++i) {
    const Json& value = (*list)[i];
    const Path place = join(here, i);
    Edge one;
    if (value.is_array()) {
      one.from = at;
      if (!point(value, place, one.to)) return;
    } else if (i == 0) {
      if (!is_object(value, place) || !point_at(value, place, "to", Need::must, one.to)) return;
    } else if (!edge(value, place, at, one)) {
      return;
    }
    at = one.to;
    if (i > 0) out.sole.push_back(one);
  }
  check_sole(here, out);
}

void PlanReader::check_sole(const Path& path, const Plane& plane) {
  const double half = plane.width / 2;
  if (std::abs(plane.sole.front().from.x + half) > kWrittenTo ||
      std::abs(plane.sole.back().to.x - half) > kWrittenTo)
    fault(path, "does not run from minus to plus half the width");
  double lowest = plane.sole.front().from.y;
  for (const Edge& edge : plane.sole) {
    bool rises = edge.to.x > edge.from.x;
    lowest = std::min(lowest, edge.to.y);
    if (edge.is_arc()) {
      const double r = radius(edge);
      // With u rising throughout, an arc turning left keeps below its centre, one turning right above.
      const double side = edge.turn == Turn::left ? 1 : -1;
      rises = rises && side * (edge.centre.y - edge.from.y) > -kWrittenTo &&
              side * (edge.centre.y - edge.to.y) > -kWrittenTo;
      const bool past_bottom = edge.from.x < edge.centre.x && edge.centre.x < edge.to.x;
      if (edge.turn == Turn::left && past_bottom) lowest = std::min(lowest, edge.centre.y - r);
    }
    if (!rises) {
      fault(path, "u does not rise strictly along it");
      return;
    }
  }
  if (std::abs(lowest) > kWrittenTo) fault(path, "its deepest point is not at f = 0");
}

void PlanReader::plane(const Json& cut, const Path& above, Plane& out) {
  const Json* object = object_at(cut, above, "plane", Need::must);
  if (!object) return;
  const Path path = join(above, "plane");
  const bool known = word_at(*object, path, "kind", Need::must, kKinds, out.kind);
  text_at(*object, path, "label", Need::may, out.label);
  if (!known || out.kind == PlaneKind::scraper) return;
  const bool wide = number_at(*object, path, "width", Need::must, kWrittenTo, kLongest, out.width);
  int number = 0;
  if (object->contains("number") && whole_at(*object, path, "number", Need::may, number)) out.number = number;
  if (out.is_curved() && number_at(*object, path, "radius", Need::must, kWrittenTo, kLongest, out.radius) &&
      wide && out.width > 2 * out.radius + kWrittenTo)
    fault(join(path, "width"), "wider than the circle of the sole");
  number_at(*object, path, "reach", Need::may, 0, kLongest, out.reach);
  number_at(*object, path, "deep", Need::may, 0, kLongest, out.deep);
  if (out.kind == PlaneKind::shaped && wide) sole(*object, path, out);
  if (const Json* body = object_at(*object, path, "body", Need::may)) {
    Body wider;
    const Path here = join(path, "body");
    const bool over = number_at(*body, here, "overhang", Need::must, 0, kLongest, wider.overhang);
    if (number_at(*body, here, "above", Need::must, -kLongest, kLongest, wider.above) && over)
      out.body = wider;
  }
}

void PlanReader::poses(const Json& cut, const Path& path, std::string_view name, Need need,
                       std::vector<Pose>& out) {
  const Json* list = list_at(cut, path, name, need);
  if (!list) return;
  const Path here = join(path, name);
  for (std::size_t i = 0; i < std::min(list->size(), kMaxPlanPoses + 1); ++i) {
    const Path place = join(here, i);
    if (!is_object((*list)[i], place)) continue;
    Pose pose;
    const bool at = point_at((*list)[i], place, "at", Need::must, pose.at);
    if (number_at((*list)[i], place, "tilt", Need::must, -kMostTilt, kMostTilt, pose.tilt) && at)
      out.push_back(pose);
  }
}

void PlanReader::lines(const Json& cut, const Path& path, Cut& out) {
  const Json* list = list_at(cut, path, "lines", Need::may);
  if (!list) return;
  for (std::size_t i = 0; i < std::min(list->size(), kMaxPlanPoses); ++i) {
    const Json& one = (*list)[i];
    const Path here = join(join(path, "lines"), i);
    if (!is_object(one, here)) continue;
    GaugeLine line;
    word_at(one, here, "from", Need::must, kSides, line.from);
    number_at(one, here, "at", Need::must, -kLongest, kLongest, line.at);
    number_at(one, here, "set", Need::must, -kLongest, kLongest, line.set);
    truth_at(one, here, "fine", Need::may, line.fine);
    out.lines.push_back(line);
  }
}

void PlanReader::cut(const Json& value, const Path& path, Cut& out) {
  plane(value, path, out.plane);
  const bool scraper = out.plane.kind == PlaneKind::scraper;
  text_at(value, path, "for", Need::must, out.made_for);
  if (const Json* list = list_at(value, path, "elements", Need::may)) {
    for (std::size_t i = 0; i < std::min(list->size(), kMaxPlanEdges); ++i) {
      const Path here = join(join(path, "elements"), i);
      if (!is_object((*list)[i], here)) continue;
      const int index = element_index((*list)[i], here, Need::must);
      if (index >= 0) out.elements.push_back(index);
    }
  }
  poses(value, path, "poses", scraper ? Need::may : Need::must, out.poses);
  poses(value, path, "set", says_set_ && !scraper ? Need::must : Need::may, out.set);
  const std::size_t stands = value.contains("poses") ? value["poses"].size() : 0;
  if (scraper && stands > 0) fault(join(path, "poses"), "a scraper has none");
  if (!scraper && stands == 0 && value.contains("poses")) fault(join(path, "poses"), "empty");
  if (value.contains("set") && value["set"].size() != stands)
    fault(join(path, "set"), "not one for each of the poses");
  poses_read_ += out.poses.size();
  work_ += out.poses.size() * (plan_.section.target.size() + out.plane.sole.size());
  chords_ += static_cast<double>(out.poses.size()) * chords_of(out.plane);
  lines(value, path, out);
  whole_at(value, path, "settings", Need::may, out.settings);
  number_at(value, path, "strokes", Need::may, 0, kLargest, out.strokes);
  number_at(value, path, "removed", Need::must, 0, kLargest, out.removed);
  if (!word_at(value, path, "rides", scraper ? Need::may : Need::must, kRides, out.rides) && scraper)
    out.rides = Rides::by_hand;
  const bool balanced = out.rides == Rides::two_arrises;
  number_at(value, path, "imbalance", balanced ? Need::must : Need::may, 0, 1, out.imbalance);
  number_at(value, path, "imbalance_set", Need::may, 0, 1, out.imbalance_set);
  // Where nothing is said of it, the blank lies as the plane needs it.
  if (!out.poses.empty() && std::abs(wrap_degrees(out.poses.front().tilt)) > 90)
    out.lies = Lies::underside_up;
  word_at(value, path, "lies", says_lies_ ? Need::must : Need::may, kLies, out.lies);
  Planed way = planed(out.lies);
  if (word_at(value, path, "planed", Need::may, kPlaned, way) && way != planed(out.lies)) {
    if (out.lies == Lies::underside_up) {
      out.lies = Lies::rolled_over;
    } else {
      fault(join(path, "planed"),
            std::string(word(out.lies)) + " the blank is planed " + word(planed(out.lies)));
    }
  }
  truth_at(value, path, "overhang", Need::may, out.overhang);
  text_at(value, path, "reason", Need::may, out.reason);
}

void PlanReader::cuts(const Json& root) {
  const Json* list = list_at(root, "", "cuts", Need::must);
  if (!list) return;
  if (list->size() > kMaxPlanCuts) {
    over("cuts", "more than " + std::to_string(kMaxPlanCuts), "kMaxPlanCuts");
    return;
  }
  for (const Json& one : *list) {
    says_set_ = says_set_ || (one.is_object() && one.contains("set"));
    says_lies_ = says_lies_ || (one.is_object() && one.contains("lies"));
  }
  for (std::size_t i = 0; i < list->size(); ++i) {
    const Path path = join(Path("cuts"), i);
    if (!is_object((*list)[i], path)) continue;
    Cut one;
    const auto expected = static_cast<int>(i + 1);
    if (whole_at((*list)[i], path, "number", Need::must, one.number) && one.number != expected)
      fault(join(path, "number"),
            "expected " + std::to_string(expected) + ", found " + std::to_string(one.number));
    cut((*list)[i], path, one);
    plan_.cuts.push_back(std::move(one));
  }
  if (poses_read_ > kMaxPlanPoses)
    over("cuts", "more than " + std::to_string(kMaxPlanPoses) + " poses in all", "kMaxPlanPoses");
  for (const Edge& edge : plan_.section.target) chords_ += chords_of(edge);
  if (chords_ > static_cast<double>(kMaxPlanChords))
    over("cuts",
         "the arcs of the target and of the soles come to more than " + std::to_string(kMaxPlanChords) +
             " chords",
         "kMaxPlanChords");
  if (work_ > kMaxPlanWork)
    over("cuts", "more than " + std::to_string(kMaxPlanWork) + " poses times edges", "kMaxPlanWork");
}

}  // namespace arrisline
