// Reads a plan from JSON and lists everything that is wrong with its form, each with its place. What the plan
// claims is not judged here but by replay(). Shown by tests/replay.
#include <algorithm>
#include <cmath>

#include "report/plan_json_syntax.h"
#include "report/plan_reader.h"

namespace arrisline {

using namespace json_words;

// The element an object speaks of by "element", "part" and "chain"; one not met before is added.
int PlanReader::element_index(const Json& in, const Path& path, Need need) {
  Element wanted;
  if (!whole_at(in, path, "element", need, wanted.number)) return -1;
  whole_at(in, path, "part", Need::may, wanted.part);
  word_at(in, path, "chain", Need::may, kChains, wanted.chain);
  std::vector<Element>& known = plan_.section.elements;
  const auto it = std::find_if(known.begin(), known.end(), [&](const Element& e) {
    return e.number == wanted.number && e.part == wanted.part && e.chain == wanted.chain;
  });
  const auto index = static_cast<int>(it - known.begin());
  if (it == known.end()) known.push_back(wanted);
  return index;
}

void PlanReader::elements(const Json& root) {
  const Json* list = list_at(root, "", "elements", Need::may);
  if (!list) return;
  for (std::size_t i = 0; i < std::min(list->size(), kMaxPlanEdges); ++i) {
    const Json& one = (*list)[i];
    const Path path = join(Path("elements"), i);
    if (!is_object(one, path)) continue;
    Element element;
    if (!whole_at(one, path, "element", Need::must, element.number)) continue;
    whole_at(one, path, "part", Need::may, element.part);
    word_at(one, path, "chain", Need::may, kChains, element.chain);
    text_at(one, path, "name", Need::may, element.name);
    whole_at(one, path, "line", Need::may, element.line);
    plan_.section.elements.push_back(element);
  }
}

// False where the next edge does not know where it starts.
bool PlanReader::edge(const Json& value, const Path& path, Point from, Edge& out) {
  if (!is_object(value, path)) return false;
  out.from = from;
  if (!point_at(value, path, "to", Need::must, out.to)) return false;
  const bool has_turn = word_at(value, path, "turn", Need::may, kTurns, out.turn);
  if (value.contains("centre")) {
    if (!value.contains("turn")) fault(join(path, "turn"), "missing: an arc must say which way it goes");
    if (!point_at(value, path, "centre", Need::must, out.centre) || !has_turn) return true;
    const double r = distance(out.centre, out.from);
    if (r < kWrittenTo) {
      fault(path, "the arc has no radius");
    } else if (std::abs(r - distance(out.centre, out.to)) > kWrittenTo) {
      fault(path, "the two ends of the arc are not at one distance from its centre");
    }
  } else if (has_turn) {
    fault(join(path, "centre"), "missing: the edge has a turn, but no centre");
    out.turn = Turn::straight;
  }
  if (distance(out.from, out.to) < kWrittenTo) fault(path, "the edge is shorter than 1e-6 mm");
  return true;
}

void PlanReader::target(const Json& root) {
  const Path path = "target";
  const Json* object = object_at(root, "", "target", Need::must);
  if (!object) return;
  Point at;
  const bool started = point_at(*object, path, "start", Need::must, at);
  const Json* edges = list_at(*object, path, "edges", Need::must);
  if (!edges || !started) return;
  if (edges->size() > kMaxPlanEdges) {
    over("target.edges", "more than " + std::to_string(kMaxPlanEdges) + " edges", "kMaxPlanEdges");
    return;
  }
  if (edges->size() < 2) {
    fault("target.edges", "expected at least 2 edges, found " + std::to_string(edges->size()));
    return;
  }
  const Point start = at;
  for (std::size_t i = 0; i < edges->size(); ++i) {
    const Path here = join(Path("target.edges"), i);
    Edge one;
    if (!edge((*edges)[i], here, at, one)) return;
    plan_.section.target.push_back(one);
    plan_.section.source.push_back(element_index((*edges)[i], here, Need::may));
    at = one.to;
  }
  if (!(at == start)) fault("target.edges", "the outline does not close: the last `to` is not the start");
}

void PlanReader::left(const Json& root) {
  if (const Json* object = object_at(root, "", "left", Need::must)) {
    Left& out = plan_.left;
    number_at(*object, "left", "max_height", Need::must, 0, kLongest, out.max_height);
    number_at(*object, "left", "area", Need::must, 0, kLargest, out.area);
    truth_at(*object, "left", "scrape", Need::must, out.scrape);
    text_at(*object, "left", "where", Need::may, out.where);
    const Json* as_set = object_at(*object, "left", "as_set", says_set_ ? Need::must : Need::may);
    if (as_set) {
      number_at(*as_set, "left.as_set", "max_height", Need::must, 0, kLongest, out.as_set_max_height);
      number_at(*as_set, "left.as_set", "deepest_gouge", Need::must, 0, kLongest, out.as_set_deepest_gouge);
    }
  }
  if (const Json* object = object_at(root, "", "waste", Need::must)) {
    number_at(*object, "waste", "area", Need::must, 0, kLargest, plan_.waste_area);
    number_at(*object, "waste", "by_flat", Need::must, 0, kLargest, plan_.waste_by_flat);
  }
  // Either all three are said, or none.
  const bool says = root.contains("effort") || root.contains("bound") || root.contains("optimal");
  const Need need = says ? Need::must : Need::may;
  number_at(root, "", "effort", need, 0, kLargest, plan_.effort);
  number_at(root, "", "bound", need, 0, kLargest, plan_.bound);
  truth_at(root, "", "optimal", need, plan_.optimal);
  truth_at(root, "", "holding_checked", Need::may, plan_.holding_checked);
  whole_at(root, "", "facets", Need::may, plan_.facets);
}

void PlanReader::reasons(const Json& root) {
  const Json* list = list_at(root, "", "reasons", plan_.undecided ? Need::may : Need::must);
  if (!list) return;
  for (std::size_t i = 0; i < std::min(list->size(), kMaxPlanEdges); ++i) {
    const Json& one = (*list)[i];
    const Path path = join(Path("reasons"), i);
    if (!is_object(one, path)) continue;
    Reason reason;
    reason.element = element_index(one, path, Need::may);
    text_at(one, path, "why", Need::must, reason.why);
    if (const Json* object = object_at(one, path, "nearest", Need::may)) {
      const Path here = join(path, "nearest");
      Reason::Nearest nearest;
      PlaneKind kind{};
      int number = 0;
      if (word_at(*object, here, "kind", Need::may, kKinds, kind)) nearest.kind = kind;
      number_at(*object, here, "radius", nearest.kind ? Need::may : Need::must, 0, kLongest, nearest.radius);
      number_at(*object, here, "width", Need::may, 0, kLongest, nearest.width);
      if (object->contains("number") && whole_at(*object, here, "number", Need::may, number))
        nearest.number = number;
      reason.nearest = nearest;
    }
    plan_.reasons.push_back(std::move(reason));
  }
}

void PlanReader::read(const Json& root) {
  if (!is_object(root, "the plan")) return;
  std::string format, units;
  double version = 1;
  text_at(root, "", "format", Need::must, format);
  if (!format.empty() && format != "arrisline-plan") fault("format", "expected \"arrisline-plan\"");
  if (number_at(root, "", "version", Need::must, -kLargest, kLargest, version) && version != 1)
    fault("version", "expected 1");
  text_at(root, "", "units", Need::must, units);
  if (!units.empty() && units != "mm") fault("units", "expected \"mm\"");
  text_at(root, "", "profile", Need::may, plan_.section.name);
  if (const Json* stock = object_at(root, "", "stock", Need::must)) {
    number_at(*stock, "stock", "width", Need::must, kWrittenTo, kLongest, plan_.section.width);
    number_at(*stock, "stock", "thickness", Need::must, kWrittenTo, kLongest, plan_.section.thickness);
  }
  elements(root);
  target(root);
  truth_at(root, "", "undecided", Need::may, plan_.undecided);
  truth_at(root, "", "feasible", plan_.undecided ? Need::may : Need::must, plan_.feasible);
  if (plan_.undecided && plan_.feasible) fault("undecided", "a plan is feasible or undecided, not both");
  const auto says = root.find("feasible");
  if (!plan_.undecided && (says == root.end() || !says->is_boolean())) return;
  if (plan_.feasible && !plan_.undecided) {
    cuts(root);
    left(root);
  } else {
    reasons(root);
    const auto list = root.find("cuts");
    if (list != root.end() && !(list->is_array() && list->empty()))
      fault("cuts", "a plan that cannot be made has none");
  }
}

StatedPlan plan_from_json(std::string_view text) {
  StatedPlan out;
  if (const std::optional<JsonFault> fault = json_fault(text)) {
    out.faults.push_back(fault->text);
    out.unread = fault->unread;
    return out;
  }
  PlanReader(out).read(nlohmann::json::parse(text.begin(), text.end()));
  return out;
}

}  // namespace arrisline
