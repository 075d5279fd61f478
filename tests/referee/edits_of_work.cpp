// Edits of poses, planes, order, target and stock.
#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>
#include <utility>

#include "referee/edits.h"

namespace arrisline::referee {

static std::size_t pick(Random& random, std::size_t count) {
  return static_cast<std::size_t>(random()) % count;
}

static Point point_of(const Json& at) {
  return {at[0].get<double>(), at[1].get<double>()};
}

static StatedPose pose_of(const Json& pose) {
  return {point_of(pose["at"]), pose["tilt"].get<double>()};
}

static void renumber(Json& plan) {
  int number = 0;
  for (Json& cut : plan["cuts"]) cut["number"] = ++number;
}

namespace {

class Hand {
 public:
  Hand(const Json& plan, Random& random, int of_each) : plan_(plan), random_(random), of_each_(of_each) {}

  std::vector<Edit> out;

  void move_poses();
  void change_planes();
  void change_order();
  void change_drawing();
  void add_bodies_and_facets();

 private:
  using Change = std::function<bool(Json& plan, Json& cut)>;
  using ChangePose = std::function<void(Json& pose, const Json& plane)>;

  // The numbers under `count`, shuffled.
  std::vector<std::size_t> in_any_order(std::size_t count) {
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::shuffle(order.begin(), order.end(), random_);
    return order;
  }

  // Some cuts, each changed alone. A change that finds nothing to do says so.
  void at_cuts(const std::string& kind, const Change& change) {
    int made = 0;
    for (const std::size_t i : in_any_order(plan_["cuts"].size())) {
      if (made == of_each_) return;
      Json plan = plan_;
      if (!change(plan, plan["cuts"][i])) continue;
      out.push_back({kind, plan.dump()});
      ++made;
    }
  }

  // Some poses, each moved alone, where it is set as where it is drawn.
  void at_poses(const std::string& kind, const ChangePose& change) {
    at_cuts(kind, [&](Json&, Json& cut) {
      if (!cut.contains("poses") || cut["poses"].empty()) return false;
      const std::size_t i = pick(random_, cut["poses"].size());
      change(cut["poses"][i], cut["plane"]);
      if (cut.contains("set")) change(cut["set"][i], cut["plane"]);
      return true;
    });
  }

  void shift(const std::string& kind, double across, double out_of_wood) {
    at_poses(kind, [=](Json& pose, const Json&) {
      const StatedPose from = pose_of(pose);
      const Point to = from_frame(from, across, out_of_wood);
      pose["at"] = {to.x, to.y};
    });
  }
  void lean(const std::string& kind, const std::function<double(double)>& lean) {
    at_poses(kind, [=](Json& pose, const Json&) { pose["tilt"] = lean(pose["tilt"].get<double>()); });
  }
  double either() { return random_() % 2 == 0 ? 1 : -1; }

  const Json& plan_;
  Random& random_;
  int of_each_;
};

}  // namespace

void Hand::move_poses() {
  shift("pose 0.05 into the wood", 0, -0.05);
  shift("pose 0.05 out of the wood", 0, 0.05);
  shift("pose 0.5 out of the wood", 0, 0.5);
  shift("pose 0.05 aside", 0.05 * either(), 0);
  shift("pose 1 aside", either(), 0);
  at_cuts("pose only, not as set", [&](Json&, Json& cut) {
    if (!cut.contains("set") || cut["poses"].empty()) return false;
    Json& pose = cut["poses"][pick(random_, cut["poses"].size())];
    const Point to = from_frame(pose_of(pose), 0, 0.05 * either());
    pose["at"] = {to.x, to.y};
    return true;
  });
  at_cuts("set only", [&](Json&, Json& cut) {
    if (!cut.contains("set") || cut["set"].empty()) return false;
    Json& pose = cut["set"][pick(random_, cut["set"].size())];
    const Point to = from_frame(pose_of(pose), 0, 0.1 * either());
    pose["at"] = {to.x, to.y};
    return true;
  });
  const double way = either();
  lean("tilt 3 degrees off", [=](double tilt) { return tilt + 3 * way; });
  lean("tilt mirrored", [](double tilt) { return -tilt; });
  lean("tilt turned round", [](double tilt) { return tilt > 0 ? tilt - 180 : tilt + 180; });
  at_poses("turned 3 degrees about the sole's centre", [=](Json& pose, const Json& plane) {
    const StatedPose from = pose_of(pose);
    const std::string kind = plane["kind"];
    const double r = plane.value("radius", 0.0) * (kind == "hollow" ? -1 : 1);
    const Point centre = from_frame(from, 0, r);
    const StatedPose to{centre, from.tilt + 3 * way};
    const Point at = from_frame(to, 0, -r);
    pose["at"] = {at.x, at.y};
    pose["tilt"] = to.tilt;
  });
  const auto both = [](Json& cut, const std::function<void(Json&)>& change) {
    change(cut["poses"]);
    if (cut.contains("set")) change(cut["set"]);
  };
  at_cuts("pose dropped", [&](Json&, Json& cut) {
    if (!cut.contains("poses") || cut["poses"].size() < 2) return false;
    const std::size_t i = pick(random_, cut["poses"].size());
    both(cut, [i](Json& poses) { poses.erase(i); });
    return true;
  });
  at_cuts("pose twice", [&](Json&, Json& cut) {
    if (!cut.contains("poses") || cut["poses"].empty()) return false;
    const std::size_t i = pick(random_, cut["poses"].size());
    both(cut, [i](Json& poses) {
      const Json again = poses[i];
      poses.push_back(again);
    });
    return true;
  });
  at_cuts("first pose changed for a later", [&](Json&, Json& cut) {
    if (!cut.contains("poses") || cut["poses"].size() < 2) return false;
    const std::size_t i = 1 + pick(random_, cut["poses"].size() - 1);
    both(cut, [i](Json& poses) { std::swap(poses[0], poses[i]); });
    return true;
  });
  at_cuts("pose of another cut", [&](Json& plan, Json& cut) {
    const Json& other = plan["cuts"][pick(random_, plan["cuts"].size())];
    if (!cut.contains("poses") || cut["poses"].empty() || !other.contains("poses") ||
        other["poses"].empty() || other["number"] == cut["number"])
      return false;
    const std::size_t i = pick(random_, cut["poses"].size()), k = pick(random_, other["poses"].size());
    const Json pose = other["poses"][k];
    both(cut, [&](Json& poses) { poses[i] = pose; });
    return true;
  });
}

void Hand::change_planes() {
  at_cuts("plane of another cut", [&](Json& plan, Json& cut) {
    const Json other = plan["cuts"][pick(random_, plan["cuts"].size())]["plane"];
    if (other == cut["plane"] || other["kind"] == "scraper" || cut["plane"]["kind"] == "scraper")
      return false;
    cut["plane"] = other;
    return true;
  });
  at_cuts("hollow for round", [&](Json&, Json& cut) {
    Json& kind = cut["plane"]["kind"];
    if (kind != "hollow" && kind != "round") return false;
    kind = kind == "hollow" ? "round" : "hollow";
    return true;
  });
  at_cuts("flat for curved", [&](Json&, Json& cut) {
    Json& plane = cut["plane"];
    if (plane["kind"] != "hollow" && plane["kind"] != "round") return false;
    plane = Json{{"kind", "rebate"}, {"width", plane["width"]}};
    cut["rides"] = "gauge line";
    return true;
  });
  at_cuts("curved for flat", [&](Json&, Json& cut) {
    Json& plane = cut["plane"];
    if (plane["kind"] != "rebate" && plane["kind"] != "plough") return false;
    const double width = plane["width"];
    plane = Json{{"kind", random_() % 2 == 0 ? "hollow" : "round"}, {"radius", width}, {"width", width}};
    cut["rides"] = "two arrises";
    cut["imbalance"] = 0;
    return true;
  });
  at_cuts("size of another number", [&](Json&, Json& cut) {
    Json& plane = cut["plane"];
    if (!plane.contains("radius")) return false;
    const double by = 1 + 0.25 * either();
    plane["radius"] = by * plane["radius"].get<double>();
    plane["width"] = by * plane["width"].get<double>();
    return true;
  });
  for (const char* name : {"radius", "width"})
    at_cuts(std::string(name) + " 2 % off", [&](Json&, Json& cut) {
      Json& plane = cut["plane"];
      if (!plane.contains(name) || plane["kind"] == "shaped") return false;
      plane[name] = (1 + 0.02 * either()) * plane[name].get<double>();
      return true;
    });
  at_cuts("point of a shaped sole moved", [&](Json&, Json& cut) {
    Json& plane = cut["plane"];
    if (plane["kind"] != "shaped") return false;
    Json& sole = plane["sole"];
    Json& to = sole[pick(random_, sole.size())]["to"];
    to[1] = to[1].get<double>() + 0.2 * either();
    return true;
  });
  at_cuts("iron that reaches less", [&](Json&, Json& cut) {
    if (cut["plane"]["kind"] != "plough") return false;
    cut["plane"][random_() % 2 == 0 ? "reach" : "deep"] = 1;
    return true;
  });
}

void Hand::change_order() {
  const auto on_cuts = [&](const std::string& kind, std::size_t least,
                           const std::function<void(Json&)>& change) {
    for (int i = 0; i < of_each_; ++i) {
      Json plan = plan_;
      if (plan["cuts"].size() < least) return;
      change(plan["cuts"]);
      renumber(plan);
      out.push_back({kind, plan.dump()});
    }
  };
  on_cuts("cut dropped", 1, [&](Json& cuts) { cuts.erase(pick(random_, cuts.size())); });
  on_cuts("cut twice", 1, [&](Json& cuts) {
    const Json again = cuts[pick(random_, cuts.size())];
    cuts.push_back(again);
  });
  on_cuts("order of two cuts swapped", 2, [&](Json& cuts) {
    const std::size_t i = pick(random_, cuts.size() - 1);
    std::swap(cuts[i], cuts[i + 1 + pick(random_, cuts.size() - 1 - i)]);
  });
  on_cuts("a scraper put in", 1, [&](Json& cuts) {
    const Json scraper{
        {"number", 1}, {"plane", {{"kind", "scraper"}}}, {"for", "all"}, {"removed", 0}, {"lies", "face up"}};
    cuts.insert(cuts.begin() + static_cast<std::ptrdiff_t>(pick(random_, cuts.size() + 1)), scraper);
  });
}

void Hand::change_drawing() {
  const auto at_edges = [&](const std::string& kind,
                            const std::function<bool(Json & target, std::size_t)>& change) {
    int made = 0;
    for (const std::size_t i : in_any_order(plan_["target"]["edges"].size())) {
      if (made == of_each_) return;
      Json plan = plan_;
      if (!change(plan["target"], i)) continue;
      out.push_back({kind, plan.dump()});
      ++made;
    }
  };
  const auto move = [](Json& at, double by, std::size_t axis) { at[axis] = at[axis].get<double>() + by; };
  at_edges("corner of the drawing moved", [&](Json& target, std::size_t i) {
    Json& edges = target["edges"];
    const Json& next = edges[(i + 1) % edges.size()];
    if (edges[i].contains("centre") || next.contains("centre")) return false;
    const double by = either() * (random_() % 2 == 0 ? 0.05 : 0.5);
    const std::size_t axis = random_() % 2;
    move(edges[i]["to"], by, axis);
    if (i + 1 == edges.size()) move(target["start"], by, axis);
    return true;
  });
  at_edges("whole drawing moved", [&](Json& target, std::size_t) {
    const double by = 0.1 * either();
    const std::size_t axis = random_() % 2;
    move(target["start"], by, axis);
    for (Json& edge : target["edges"])
      for (const char* name : {"to", "centre"})
        if (edge.contains(name)) move(edge[name], by, axis);
    return true;
  });
  at_edges("arc drawn straight", [&](Json& target, std::size_t i) {
    Json& edge = target["edges"][i];
    if (!edge.contains("centre")) return false;
    edge.erase("centre");
    edge.erase("turn");
    return true;
  });
  at_edges("arc turned the other way", [&](Json& target, std::size_t i) {
    Json& edge = target["edges"][i];
    if (!edge.contains("centre")) return false;
    edge["turn"] = edge["turn"] == "left" ? "right" : "left";
    return true;
  });
  at_edges("centre of an arc moved", [&](Json& target, std::size_t i) {
    Json& edge = target["edges"][i];
    if (!edge.contains("centre")) return false;
    move(edge["centre"], either() * (random_() % 2 == 0 ? 0.01 : 3e-6), random_() % 2);
    return true;
  });
  at_edges("edge dropped", [&](Json& target, std::size_t i) {
    target["edges"].erase(i);
    return true;
  });
  for (const char* name : {"width", "thickness"})
    at_cuts(std::string("stock ") + name + " changed", [&](Json& plan, Json&) {
      Json& size = plan["stock"][name];
      size = size.get<double>() + either() * (random_() % 2 == 0 ? 0.1 : 2.0);
      return true;
    });
}

void Hand::add_bodies_and_facets() {
  at_cuts("a body wider than the sole", [&](Json&, Json& cut) {
    if (cut["plane"]["kind"] == "scraper") return false;
    cut["plane"]["body"] = Json{{"overhang", 4}, {"above", random_() % 2 == 0 ? 0.5 : 8.0}};
    return true;
  });
  at_cuts("facets allowed", [&](Json& plan, Json&) {
    plan["facets"] = 1 + pick(random_, 3);
    return true;
  });
}

std::vector<Edit> edits_of_the_work(const Json& plan, Random& random, int of_each) {
  Hand hand(plan, random, of_each);
  hand.move_poses();
  hand.change_planes();
  hand.change_order();
  hand.change_drawing();
  hand.add_bodies_and_facets();
  return std::move(hand.out);
}

std::string restated(const std::string& text, const Found& found) {
  Json plan = Json::parse(text);
  Json& cuts = plan["cuts"];
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    cuts[i]["removed"] = std::max(0.0, found.removed[i]);
    if (found.imbalance[i]) cuts[i]["imbalance"] = std::min(1.0, *found.imbalance[i]);
  }
  plan["left"]["max_height"] = found.max_height;
  plan["left"]["area"] = std::max(0.0, found.left_area);
  if (plan["left"].contains("as_set")) {
    plan["left"]["as_set"]["max_height"] = found.as_set_height;
    plan["left"]["as_set"]["deepest_gouge"] = found.as_set_gouge;
  }
  plan["waste"]["area"] = std::max(0.0, found.waste);
  plan["waste"]["by_flat"] = std::max(0.0, found.by_flat);
  plan["left"]["scrape"] = !cuts.empty() && cuts.back()["plane"]["kind"] == "scraper";
  return plan.dump();
}

}  // namespace arrisline::referee
