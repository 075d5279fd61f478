// Reads a plan from JSON and lists everything that is wrong with its form, each with its place. What the plan
// claims is not judged here but by replay(). Shown by tests/replay.
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "arrisline/limits.h"
#include "arrisline/plan_json.h"
#include "report/plan_json_syntax.h"
#include "report/plan_json_words.h"

namespace arrisline {

using Json = nlohmann::json;
using namespace json_words;

// Lengths: ten metres is the longest a maker may write; poses may stand off the blank.
static constexpr double kLongest = 1e5;
// Areas, efforts and counts of strokes.
static constexpr double kLargest = 1e12;
// Twice round: any lean can be written within it.
static constexpr double kMostTilt = 360;
// Both ends of an arc lie within this of its radius, and no edge is shorter: far below any shaving, far above
// what rounding in 17 digits leaves.
static constexpr double kArcEnds = 1e-6;
// Half a sole is written to the same exactness as any point.
static constexpr double kSoleEnds = 1e-6;
static constexpr std::size_t kMostFaults = 200;

namespace {

enum class Need { must, may };

class Reader {
 public:
  explicit Reader(StatedPlan& out) : plan_(out.plan), faults_(out.faults), unread_(out.unread) {}

  void read(const Json& root);

 private:
  using Path = std::string;

  void fault(const Path& path, const std::string& text) {
    if (faults_.size() < kMostFaults) faults_.push_back(path + ": " + text);
    if (faults_.size() == kMostFaults) faults_.push_back("and more");
  }
  void over(const Path& path, const std::string& text, std::string_view constant) {
    fault(path, text + to_raise(constant));
    unread_ = true;
  }
  static Path join(const Path& path, std::string_view name) {
    return path.empty() ? Path(name) : path + "." + std::string(name);
  }
  static Path join(const Path& path, std::size_t index) { return path + "[" + std::to_string(index) + "]"; }
  static std::string found(const Json& value) { return std::string("found ") + value.type_name(); }

  const Json* member(const Json& object, const Path& path, std::string_view name, Need need) {
    const auto it = object.find(std::string(name));
    if (it != object.end()) return &*it;
    if (need == Need::must) fault(join(path, name), "missing");
    return nullptr;
  }
  const Json* typed(const Json& object, const Path& path, std::string_view name, Need need,
                    Json::value_t type, const char* wanted) {
    const Json* value = member(object, path, name, need);
    if (!value || value->type() == type) return value;
    fault(join(path, name), std::string("expected ") + wanted + ", " + found(*value));
    return nullptr;
  }
  const Json* object_at(const Json& in, const Path& path, std::string_view name, Need need) {
    return typed(in, path, name, need, Json::value_t::object, "an object");
  }
  const Json* list_at(const Json& in, const Path& path, std::string_view name, Need need) {
    return typed(in, path, name, need, Json::value_t::array, "a list");
  }
  bool is_object(const Json& value, const Path& path) {
    if (value.is_object()) return true;
    fault(path, "expected an object, " + found(value));
    return false;
  }

  bool number(const Json& value, const Path& path, double low, double high, double& out) {
    if (!value.is_number()) {
      fault(path, "expected a number, " + found(value));
      return false;
    }
    const double x = value.get<double>();
    if (!(x >= low && x <= high)) {
      fault(path, "out of range: " + value.dump());
      return false;
    }
    out = x;
    return true;
  }
  bool number_at(const Json& in, const Path& path, std::string_view name, Need need, double low, double high,
                 double& out) {
    const Json* value = member(in, path, name, need);
    return value && number(*value, join(path, name), low, high, out);
  }
  bool whole_at(const Json& in, const Path& path, std::string_view name, Need need, int& out) {
    const Json* value = member(in, path, name, need);
    if (!value) return false;
    const bool small = value->is_number_integer() && value->get<double>() >= 0 && value->get<double>() <= 1e9;
    if (small) {
      out = value->get<int>();
      return true;
    }
    fault(join(path, name),
          "expected a whole number, found " + (value->is_number() ? value->dump() : found(*value).substr(6)));
    return false;
  }
  void truth_at(const Json& in, const Path& path, std::string_view name, Need need, bool& out) {
    const Json* value = typed(in, path, name, need, Json::value_t::boolean, "true or false");
    if (value) out = value->get<bool>();
  }
  void text_at(const Json& in, const Path& path, std::string_view name, Need need, std::string& out) {
    const Json* value = typed(in, path, name, need, Json::value_t::string, "text");
    if (value) out = value->get<std::string>();
  }
  template <class T, std::size_t N>
  bool word_at(const Json& in, const Path& path, std::string_view name, Need need, const Table<T, N>& table,
               T& out) {
    const Json* value = typed(in, path, name, need, Json::value_t::string, "a word");
    if (!value) return false;
    const std::string& text = value->get_ref<const std::string&>();
    std::string known;
    for (const auto& [word, meaning] : table) {
      if (word == text) {
        out = meaning;
        return true;
      }
      known += (known.empty() ? "" : ", ") + std::string(word);
    }
    fault(join(path, name), "unknown word " + Json(text).dump() + "; known are " + known);
    return false;
  }
  bool point(const Json& value, const Path& path, Point& out) {
    if (!value.is_array() || value.size() != 2) {
      fault(path, "expected a point [x, y]");
      return false;
    }
    const bool x = number(value[0], join(path, 0), -kLongest, kLongest, out.x);
    const bool y = number(value[1], join(path, 1), -kLongest, kLongest, out.y);
    return x && y;
  }
  bool point_at(const Json& in, const Path& path, std::string_view name, Need need, Point& out) {
    const Json* value = member(in, path, name, need);
    return value && point(*value, join(path, name), out);
  }

  int element_index(const Json& in, const Path& path, Need need);
  bool edge(const Json& value, const Path& path, Point from, Edge& out);
  void target(const Json& root);
  void elements(const Json& root);
  void sole(const Json& plane, const Path& path, Plane& out);
  void check_sole(const Path& path, const Plane& plane);
  void plane(const Json& cut, const Path& path, Plane& out);
  void poses(const Json& cut, const Path& path, std::string_view name, Need need, std::vector<Pose>& out);
  void lines(const Json& cut, const Path& path, Cut& out);
  void cut(const Json& value, const Path& path, Cut& out);
  void cuts(const Json& root);
  void left(const Json& root);
  void reasons(const Json& root);

  Plan& plan_;
  std::vector<std::string>& faults_;
  bool& unread_;
  std::size_t poses_read_ = 0;
  std::size_t work_ = 0;    // poses times edges
  double chords_ = 0;       // that all the arcs come to, each counted for every pose that cuts with it
  bool says_set_ = false;   // some cut carries `set`, so every cut must
  bool says_lies_ = false;  // likewise `lies`
};

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

// The element an object speaks of by "element", "part" and "chain"; one not met before is added.
int Reader::element_index(const Json& in, const Path& path, Need need) {
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

void Reader::elements(const Json& root) {
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
bool Reader::edge(const Json& value, const Path& path, Point from, Edge& out) {
  if (!is_object(value, path)) return false;
  out.from = from;
  if (!point_at(value, path, "to", Need::must, out.to)) return false;
  const bool has_turn = word_at(value, path, "turn", Need::may, kTurns, out.turn);
  if (value.contains("centre")) {
    if (!value.contains("turn")) fault(join(path, "turn"), "missing: an arc must say which way it goes");
    if (!point_at(value, path, "centre", Need::must, out.centre) || !has_turn) return true;
    const double r = distance(out.centre, out.from);
    if (r < kArcEnds) {
      fault(path, "the arc has no radius");
    } else if (std::abs(r - distance(out.centre, out.to)) > kArcEnds) {
      fault(path, "the two ends of the arc are not at one distance from its centre");
    }
  } else if (has_turn) {
    fault(join(path, "centre"), "missing: the edge has a turn, but no centre");
    out.turn = Turn::straight;
  }
  if (distance(out.from, out.to) < kArcEnds) fault(path, "the edge is shorter than 1e-6 mm");
  return true;
}

void Reader::target(const Json& root) {
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

// A list of points and arcs in (u, f); the first entry is where the sole starts.
void Reader::sole(const Json& plane, const Path& path, Plane& out) {
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

void Reader::check_sole(const Path& path, const Plane& plane) {
  const double half = plane.width / 2;
  if (std::abs(plane.sole.front().from.x + half) > kSoleEnds ||
      std::abs(plane.sole.back().to.x - half) > kSoleEnds)
    fault(path, "does not run from minus to plus half the width");
  double lowest = plane.sole.front().from.y;
  for (const Edge& edge : plane.sole) {
    bool rises = edge.to.x > edge.from.x;
    lowest = std::min(lowest, edge.to.y);
    if (edge.is_arc()) {
      const double r = radius(edge);
      // With u rising throughout, an arc turning left keeps below its centre, one turning right above.
      const double side = edge.turn == Turn::left ? 1 : -1;
      rises = rises && side * (edge.centre.y - edge.from.y) > -kSoleEnds &&
              side * (edge.centre.y - edge.to.y) > -kSoleEnds;
      const bool past_bottom = edge.from.x < edge.centre.x && edge.centre.x < edge.to.x;
      if (edge.turn == Turn::left && past_bottom) lowest = std::min(lowest, edge.centre.y - r);
    }
    if (!rises) {
      fault(path, "u does not rise strictly along it");
      return;
    }
  }
  if (std::abs(lowest) > kSoleEnds) fault(path, "its deepest point is not at f = 0");
}

void Reader::plane(const Json& cut, const Path& above, Plane& out) {
  const Json* object = object_at(cut, above, "plane", Need::must);
  if (!object) return;
  const Path path = join(above, "plane");
  const bool known = word_at(*object, path, "kind", Need::must, kKinds, out.kind);
  text_at(*object, path, "label", Need::may, out.label);
  if (!known || out.kind == PlaneKind::scraper) return;
  const bool wide = number_at(*object, path, "width", Need::must, kArcEnds, kLongest, out.width);
  int number = 0;
  if (object->contains("number") && whole_at(*object, path, "number", Need::may, number)) out.number = number;
  if (out.is_curved() && number_at(*object, path, "radius", Need::must, kArcEnds, kLongest, out.radius) &&
      wide && out.width > 2 * out.radius + kSoleEnds)
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

void Reader::poses(const Json& cut, const Path& path, std::string_view name, Need need,
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

void Reader::lines(const Json& cut, const Path& path, Cut& out) {
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

void Reader::cut(const Json& value, const Path& path, Cut& out) {
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

void Reader::cuts(const Json& root) {
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

void Reader::left(const Json& root) {
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

void Reader::reasons(const Json& root) {
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

void Reader::read(const Json& root) {
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
    number_at(*stock, "stock", "width", Need::must, kArcEnds, kLongest, plan_.section.width);
    number_at(*stock, "stock", "thickness", Need::must, kArcEnds, kLongest, plan_.section.thickness);
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

}  // namespace

StatedPlan plan_from_json(std::string_view text) {
  StatedPlan out;
  if (const std::optional<JsonFault> fault = json_fault(text)) {
    out.faults.push_back(fault->text);
    out.unread = fault->unread;
    return out;
  }
  Reader(out).read(Json::parse(text.begin(), text.end()));
  return out;
}

}  // namespace arrisline
