// The form of a plan, by docs/plan-json.md. Stops at the first fault: one is enough to break a plan.
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "referee/judge.h"

namespace arrisline::referee {

using Json = nlohmann::json;

namespace {

struct Fault {
  std::string text;
};

[[noreturn]] void fail(const std::string& text) {
  throw Fault{text};
}

const Json& need(const Json& in, const char* name) {
  if (!in.is_object()) fail(std::string("no object that has ") + name);
  const auto it = in.find(name);
  if (it == in.end()) fail(std::string(name) + " is missing");
  return *it;
}

double figure(const Json& value, const char* name, double low, double high) {
  if (!value.is_number()) fail(std::string(name) + " is not a number");
  const double x = value.get<double>();
  if (!std::isfinite(x) || x < low || x > high) fail(std::string(name) + " is out of range");
  return x;
}

constexpr double kFar = 1e5, kHuge = 1e12;

double length(const Json& in, const char* name, double low = 0) {
  return figure(need(in, name), name, low, kFar);
}

double amount(const Json& in, const char* name) {
  return figure(need(in, name), name, 0, kHuge);
}

std::string text(const Json& in, const char* name) {
  const Json& value = need(in, name);
  if (!value.is_string()) fail(std::string(name) + " is not text");
  return value.get<std::string>();
}

bool truth(const Json& in, const char* name) {
  const Json& value = need(in, name);
  if (!value.is_boolean()) fail(std::string(name) + " is not true or false");
  return value.get<bool>();
}

std::string word(const Json& in, const char* name, const std::set<std::string>& known) {
  const std::string value = text(in, name);
  if (known.count(value) == 0) fail(std::string(name) + " is no known word");
  return value;
}

int whole(const Json& in, const char* name) {
  const Json& value = need(in, name);
  if (!value.is_number_integer() || value.get<double>() < 0 || value.get<double>() > 1e9)
    fail(std::string(name) + " is not a whole number");
  return value.get<int>();
}

const Json& list(const Json& in, const char* name) {
  const Json& value = need(in, name);
  if (!value.is_array()) fail(std::string(name) + " is not a list");
  return value;
}

Point point(const Json& value, const char* name) {
  if (!value.is_array() || value.size() != 2) fail(std::string(name) + " is not a point");
  return {figure(value[0], name, -kFar, kFar), figure(value[1], name, -kFar, kFar)};
}

// Of members that may be left out: of the right type where they are there.
void element_of(const Json& in) {
  if (in.contains("element")) whole(in, "element");
  if (in.contains("part")) whole(in, "part");
  if (in.contains("chain")) word(in, "chain", {"face", "underside", "back"});
}

Edge edge(const Json& one, Point from, Judgement& out) {
  Edge edge;
  edge.from = from;
  edge.to = point(need(one, "to"), "to");
  if (one.contains("turn")) {
    edge.turn = word(one, "turn", {"left", "right"}) == "left" ? Turn::left : Turn::right;
    edge.centre = point(need(one, "centre"), "centre");
  } else if (one.contains("centre")) {
    fail("an arc has no turn");
  }
  constexpr double kEnds = 1e-6, kRounding = 1e-9;
  if (distance(edge.from, edge.to) < kEnds) fail("an edge is shorter than 1e-6 mm");
  if (edge.is_arc()) {
    const double r = distance(edge.centre, edge.from);
    const double off = std::abs(r - distance(edge.centre, edge.to));
    if (r < kEnds) fail("an arc has no radius");
    if (off > kEnds + kRounding) fail("the ends of an arc are off its radius");
    if (off > kEnds - kRounding) out.near.push_back("the ends of an arc are off its radius by 1e-6");
  }
  return edge;
}

void sole(const Json& plane, StatedPlane& out, Judgement& judgement) {
  const Json& entries = list(plane, "sole");
  if (entries.size() < 2) fail("a sole has no edge");
  Point at = point(need(entries[0], "to"), "to");
  const double half = out.width / 2;
  constexpr double kEnds = 1e-6;
  if (std::abs(at.x + half) > kEnds) fail("a sole does not start at its side");
  double lowest = at.y;
  for (std::size_t i = 1; i < entries.size(); ++i) {
    const Edge one = edge(entries[i], at, judgement);
    if (!(one.to.x > one.from.x)) fail("a sole does not run on");
    lowest = std::min(lowest, one.to.y);
    if (one.is_arc()) {
      const double r = distance(one.centre, one.from);
      for (const Point end : {one.from, one.to})
        if (one.turn == Turn::left ? end.y > one.centre.y + kEnds : end.y < one.centre.y - kEnds)
          fail("an arc of a sole turns back");
      if (one.turn == Turn::left && one.from.x < one.centre.x && one.to.x > one.centre.x)
        lowest = std::min(lowest, one.centre.y - r);
    }
    out.sole.push_back(one);
    at = one.to;
  }
  if (std::abs(at.x - half) > kEnds) fail("a sole does not end at its side");
  if (std::abs(lowest) > kEnds) fail("the deepest point of a sole is not at 0");
}

StatedPlane plane(const Json& one, Judgement& judgement) {
  StatedPlane out;
  out.kind = word(one, "kind", {"rebate", "plough", "bench", "hollow", "round", "shaped", "scraper"});
  if (one.contains("label")) text(one, "label");
  if (out.kind == "scraper") return out;
  constexpr double kLeast = 1e-6;
  out.width = length(one, "width", kLeast);
  if (one.contains("number")) whole(one, "number");
  if (out.curved()) {
    out.radius = length(one, "radius", kLeast);
    if (out.width > 2 * out.radius + 1e-6) fail("a sole is wider than its circle");
  }
  if (one.contains("reach")) out.reach = length(one, "reach");
  if (one.contains("deep")) out.deep = length(one, "deep");
  if (out.kind == "shaped") sole(one, out, judgement);
  if (one.contains("body")) {
    out.has_body = true;
    out.overhang = length(one["body"], "overhang");
    out.above = length(one["body"], "above", -kFar);
  }
  return out;
}

std::vector<StatedPose> poses(const Json& entries) {
  std::vector<StatedPose> out;
  for (const Json& one : entries) {
    StatedPose pose;
    pose.at = point(need(one, "at"), "at");
    pose.tilt = figure(need(one, "tilt"), "tilt", -360, 360);
    out.push_back(pose);
  }
  return out;
}

StatedCut cut(const Json& one, std::size_t number, Stated& plan, bool has_lies, Judgement& judgement) {
  StatedCut out;
  if (whole(one, "number") != static_cast<int>(number)) fail("the cuts are not numbered 1, 2, 3 …");
  out.plane = plane(need(one, "plane"), judgement);
  const bool scraper = out.plane.kind == "scraper";
  text(one, "for");
  if (one.contains("elements"))
    for (const Json& element : list(one, "elements")) {
      whole(element, "element");
      element_of(element);
    }
  if (!scraper || one.contains("poses")) out.poses = poses(list(one, "poses"));
  if (out.poses.empty() != scraper) fail("only a scraper has no poses");
  if ((plan.has_set && !scraper) || one.contains("set")) out.set = poses(list(one, "set"));
  if (one.contains("set") && out.set.size() != out.poses.size())
    fail("`set` has not one for each of the poses");
  if (one.contains("lines"))
    for (const Json& line : list(one, "lines")) {
      word(line, "from", {"face", "edge", "back", "underside"});
      length(line, "at", -kFar);
      length(line, "set", -kFar);
      if (line.contains("fine")) truth(line, "fine");
    }
  if (one.contains("settings")) whole(one, "settings");
  if (one.contains("strokes")) amount(one, "strokes");
  out.removed = amount(one, "removed");
  static const std::set<std::string> kRides{"gauge line",  "wall",    "fence",
                                            "two arrises", "own arc", "by hand"};
  if (!scraper || one.contains("rides")) out.rides = word(one, "rides", kRides);
  if (out.rides == "two arrises" || one.contains("imbalance"))
    out.imbalance = figure(need(one, "imbalance"), "imbalance", 0, 1);
  if (one.contains("imbalance_set")) figure(one["imbalance_set"], "imbalance_set", 0, 1);
  if (has_lies || one.contains("lies"))
    out.lies = word(one, "lies", {"face up", "underside up", "end for end"});
  if (one.contains("planed")) {
    const std::string way = word(one, "planed", {"along the arrow", "against the arrow"});
    if (out.lies == "end for end" && way != "against the arrow")
      fail("end for end is planed against the arrow");
    if (out.lies == "face up" && way != "along the arrow") fail("face up is planed along the arrow");
  }
  if (one.contains("overhang")) out.overhangs = truth(one, "overhang");
  if (one.contains("reason")) text(one, "reason");
  return out;
}

void target(const Json& root, Stated& plan, Judgement& judgement) {
  const Json& object = need(root, "target");
  const Point start = point(need(object, "start"), "start");
  Point at = start;
  const Json& edges = list(object, "edges");
  if (edges.size() < 2) fail("the target is no outline");
  for (const Json& one : edges) {
    plan.target.push_back(edge(one, at, judgement));
    element_of(one);
    at = plan.target.back().to;
  }
  if (!(at == start)) fail("the outline does not close");
}

Stated whole_plan(const Json& root, Judgement& judgement) {
  Stated plan;
  if (text(root, "format") != "arrisline-plan") fail("another format");
  if (figure(need(root, "version"), "version", 1, 1) != 1) fail("another version");
  if (text(root, "units") != "mm") fail("other units");
  if (root.contains("profile")) text(root, "profile");
  if (root.contains("elements"))
    for (const Json& one : list(root, "elements")) {
      whole(one, "element");
      element_of(one);
      if (one.contains("name")) text(one, "name");
      if (one.contains("line")) whole(one, "line");
    }
  plan.width = length(need(root, "stock"), "width", 1e-6);
  plan.thickness = length(need(root, "stock"), "thickness", 1e-6);
  target(root, plan, judgement);
  if (root.contains("undecided") && truth(root, "undecided")) fail("undecided: no plan");
  if (!truth(root, "feasible")) fail("not feasible: no plan");
  const Json& cuts = list(root, "cuts");
  bool has_lies = false;
  for (const Json& one : cuts) {
    if (!one.is_object()) fail("a cut is no object");
    plan.has_set = plan.has_set || one.contains("set");
    has_lies = has_lies || one.contains("lies");
  }
  for (std::size_t i = 0; i < cuts.size(); ++i)
    plan.cuts.push_back(cut(cuts[i], i + 1, plan, has_lies, judgement));
  const Json& left = need(root, "left");
  plan.max_height = length(left, "max_height");
  plan.left_area = amount(left, "area");
  plan.scrape = truth(left, "scrape");
  if (left.contains("where")) text(left, "where");
  plan.has_as_set = left.contains("as_set");
  if (plan.has_set || plan.has_as_set) {
    plan.as_set_height = length(need(left, "as_set"), "max_height");
    plan.as_set_gouge = length(need(left, "as_set"), "deepest_gouge");
  }
  plan.waste = amount(need(root, "waste"), "area");
  plan.by_flat = amount(need(root, "waste"), "by_flat");
  if (root.contains("effort") || root.contains("bound") || root.contains("optimal")) {
    plan.effort = amount(root, "effort");
    plan.bound = amount(root, "bound");
    truth(root, "optimal");
  }
  if (root.contains("holding_checked")) truth(root, "holding_checked");
  if (root.contains("facets")) plan.facets = whole(root, "facets");
  return plan;
}

}  // namespace

std::optional<Stated> read_stated(const std::string& text, Judgement& out) {
  // A name given twice in one object: the parser tells of each name as it comes.
  std::vector<std::set<std::string>> names;
  bool twice = false;
  const auto each = [&](int, Json::parse_event_t event, Json& value) {
    if (event == Json::parse_event_t::object_start) names.emplace_back();
    if (event == Json::parse_event_t::object_end) names.pop_back();
    if (event == Json::parse_event_t::key)
      twice = !names.back().insert(value.get<std::string>()).second || twice;
    return true;
  };
  try {
    const Json root = Json::parse(text, each);
    if (twice) fail("a name is given twice");
    return whole_plan(root, out);
  } catch (const Json::exception&) {
    out.broken.push_back("form: not JSON");
  } catch (const Fault& fault) {
    out.broken.push_back("form: " + fault.text);
  }
  return std::nullopt;
}

}  // namespace arrisline::referee
