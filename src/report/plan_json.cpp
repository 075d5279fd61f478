// Writes a plan as JSON, member by member as docs/plan-json.md lists them. Shown by tests/replay.
#include "arrisline/plan_json.h"

#include <algorithm>

#include "report/json_text.h"
#include "report/plan_json_words.h"
#include "report/work.h"

namespace arrisline {

using namespace json_words;

static Json pair_of(Point p) {
  return Json::array({p.x, p.y});
}

static Json edge_json(const Edge& edge) {
  Json out;
  out["to"] = pair_of(edge.to);
  if (edge.is_arc()) {
    out["centre"] = pair_of(edge.centre);
    out["turn"] = word_for(kTurns, edge.turn);
  }
  return out;
}

static void add_element(Json& out, const Element& element) {
  out["element"] = element.number;
  if (element.part > 0) out["part"] = element.part;
  if (element.chain != Chain::face) out["chain"] = word_for(kChains, element.chain);
}

static const Element* element_at(const Section& section, int index) {
  const bool known = index >= 0 && static_cast<std::size_t>(index) < section.elements.size();
  return known ? &section.elements[static_cast<std::size_t>(index)] : nullptr;
}

static Json target_json(const Section& section) {
  Json edges = Json::array();
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    Json edge = edge_json(section.target[i]);
    const Element* element = i < section.source.size() ? element_at(section, section.source[i]) : nullptr;
    if (element) add_element(edge, *element);
    edges.push_back(std::move(edge));
  }
  Json out;
  out["start"] = section.target.empty() ? Json::array() : pair_of(section.target.front().from);
  out["edges"] = std::move(edges);
  return out;
}

static Json elements_json(const Section& section) {
  Json out = Json::array();
  for (const Element& element : section.elements) {
    Json one;
    add_element(one, element);
    one["name"] = element.name;
    if (element.line > 0) one["line"] = element.line;
    out.push_back(std::move(one));
  }
  return out;
}

Json plane_json(const Plane& plane) {
  Json out;
  out["kind"] = word_for(kKinds, plane.kind);
  out["label"] = plane.label;
  if (plane.number) out["number"] = *plane.number;
  if (plane.is_curved()) out["radius"] = plane.radius;
  if (plane.kind != PlaneKind::scraper) out["width"] = plane.width;
  if (plane.kind == PlaneKind::plough) {
    out["reach"] = plane.reach;
    out["deep"] = plane.deep;
  }
  if (plane.kind == PlaneKind::shaped) {
    Json sole = Json::array();
    if (!plane.sole.empty()) sole.push_back(Json{{"to", pair_of(plane.sole.front().from)}});
    for (const Edge& edge : plane.sole) sole.push_back(edge_json(edge));
    out["sole"] = std::move(sole);
  }
  if (plane.body) out["body"] = Json{{"overhang", plane.body->overhang}, {"above", plane.body->above}};
  return out;
}

static Json poses_json(const std::vector<Pose>& poses) {
  Json out = Json::array();
  for (const Pose& pose : poses) out.push_back(Json{{"at", pair_of(pose.at)}, {"tilt", pose.tilt}});
  return out;
}

static Json cut_json(const Section& section, const Cut& cut, bool says_set) {
  Json out;
  out["number"] = cut.number;
  out["plane"] = plane_json(cut.plane);
  out["for"] = cut.made_for;
  out["elements"] = Json::array();
  for (const int index : cut.elements) {
    const Element* element = element_at(section, index);
    if (!element) continue;
    Json one;
    add_element(one, *element);
    out["elements"].push_back(std::move(one));
  }
  out["poses"] = poses_json(cut.poses);
  if (says_set) out["set"] = poses_json(cut.set);
  out["lines"] = Json::array();
  for (const GaugeLine& line : cut.lines)
    out["lines"].push_back(
        Json{{"from", word_for(kSides, line.from)}, {"at", line.at}, {"set", line.set}, {"fine", line.fine}});
  out["settings"] = cut.settings;
  out["strokes"] = cut.strokes;
  out["removed"] = cut.removed;
  out["rides"] = word_for(kRides, cut.rides);
  if (cut.rides == Rides::two_arrises) {
    out["imbalance"] = cut.imbalance;
    out["imbalance_set"] = cut.imbalance_set;
  }
  out["lies"] = word(cut.lies);
  out["planed"] = word(planed(cut.lies));
  out["overhang"] = cut.overhang;
  out["reason"] = cut.reason;
  return out;
}

static Json reasons_json(const Plan& plan) {
  Json out = Json::array();
  for (const Reason& reason : plan.reasons) {
    Json one = Json::object();
    if (const Element* element = element_at(plan.section, reason.element)) add_element(one, *element);
    one["why"] = reason.why;
    if (reason.nearest) {
      Json nearest = Json::object();
      if (reason.nearest->kind) nearest["kind"] = word_for(kKinds, *reason.nearest->kind);
      if (reason.nearest->radius > 0) nearest["radius"] = reason.nearest->radius;
      if (reason.nearest->width > 0) nearest["width"] = reason.nearest->width;
      if (reason.nearest->number) nearest["number"] = *reason.nearest->number;
      one["nearest"] = std::move(nearest);
    }
    out.push_back(std::move(one));
  }
  return out;
}

static Json work_json(const Plan& plan, const Kit& kit) {
  const Work work = work_of(plan, kit);
  Json out;
  out["cuts"] = work.cuts;
  out["plane_changes"] = work.plane_changes;
  out["turns"] = work.turns;
  out["settings"] = work.settings;
  out["strokes"] = work.strokes;
  out["strokes_per_minute"] = kit.shop.strokes_per_minute;
  out["minutes"] = work.minutes;
  out["shavings"] = Json::array();
  for (const Shavings& shavings : work.shavings)
    out["shavings"].push_back(Json{{"plane", shavings.plane}, {"area", shavings.area}});
  return out;
}

static Json gauge_error_json(const Section& section, const GaugeError& error) {
  Json out;
  out["error"] = error.error;
  out["every_sign"] = error.every_sign;
  out["elements"] = Json::array();
  for (const ElementOff& off : error.elements) {
    Json one;
    if (const Element* element = element_at(section, off.element)) add_element(one, *element);
    one["lost"] = off.lost;
    one["left"] = off.left;
    out["elements"].push_back(std::move(one));
  }
  out["settings"] = Json::array();
  for (const SettingOff& setting : error.settings) {
    Json one{{"from", word_for(kSides, setting.from)}, {"at", setting.at}, {"set", setting.set}};
    one["cuts"] = setting.cuts;
    if (const Element* element = element_at(section, setting.element)) {
      Json& moves = one["moves"] = Json::object();
      add_element(moves, *element);
      moves[setting.lost ? "lost" : "left"] = setting.moves;
    }
    if (!setting.loses.empty()) one["loses"] = setting.loses;
    one["aside"] = setting.aside;
    out["settings"].push_back(std::move(one));
  }
  out["rides"] = Json::array();
  for (const RideOff& ride : error.rides)
    out["rides"].push_back(Json{{"cut", ride.cut},
                                {"imbalance", ride.imbalance},
                                {"aside", ride.aside},
                                {"rail_lost", ride.rail_lost}});
  return out;
}

static Json remedies_json(const Plan& plan) {
  Json out = Json::array();
  for (const Remedy& remedy : plan.remedies) {
    Json one = Json::object();
    if (!remedy.add.empty()) {
      one["add"] = Json::array();
      for (const Plane& plane : remedy.add) one["add"].push_back(plane_json(plane));
    }
    if (!remedy.redraw.empty()) {
      one["redraw"] = Json::array();
      for (const Remedy::Redrawn& redrawn : remedy.redraw) {
        Json arc = Json::object();
        if (const Element* element = element_at(plan.section, redrawn.element)) add_element(arc, *element);
        arc["radius"] = redrawn.radius;
        one["redraw"].push_back(std::move(arc));
      }
      one["departure"] = remedy.departure;
    }
    if (remedy.tolerance) one["tolerance"] = *remedy.tolerance;
    if (remedy.scrape) one["scrape"] = *remedy.scrape;
    one["verified"] = true;
    out.push_back(std::move(one));
  }
  return out;
}

static Json redrawn_json(const Section& drawn, const Substitute& substitute) {
  Json changes = Json::array();
  for (const Redrawn& change : substitute.changes) {
    Json one = Json::object();
    if (const Element* element = element_at(drawn, change.element)) add_element(one, *element);
    one["figure"] = change.what == Redrawn::What::start    ? "start"
                    : change.what == Redrawn::What::radius ? "radius"
                    : change.what == Redrawn::What::across ? "across"
                                                           : "down";
    one["drawn"] = change.drawn;
    one["now"] = change.now;
    changes.push_back(std::move(one));
  }
  return Json{{"departure", substitute.departure}, {"changes", changes}, {"profile", substitute.profile}};
}

Json plan_as_json(const Plan& plan, const JsonBesides& besides) {
  const Section& section = plan.section;
  Json out;
  out["format"] = "arrisline-plan";
  out["version"] = 1;
  out["units"] = "mm";
  out["profile"] = section.name;
  out["stock"] = Json{{"width", section.width}, {"thickness", section.thickness}};
  out["target"] = target_json(section);
  out["elements"] = elements_json(section);
  if (plan.undecided) {
    out["undecided"] = true;
  } else {
    out["feasible"] = plan.feasible;
  }
  if (plan.feasible && !plan.undecided) {
    // A plan read may not say how the tools are set; then no cut does.
    const bool says_set =
        std::any_of(plan.cuts.begin(), plan.cuts.end(), [](const Cut& cut) { return !cut.set.empty(); });
    out["cuts"] = Json::array();
    for (const Cut& cut : plan.cuts) out["cuts"].push_back(cut_json(section, cut, says_set));
    out["left"] = Json{{"max_height", plan.left.max_height},
                       {"area", plan.left.area},
                       {"scrape", plan.left.scrape},
                       {"where", plan.left.where},
                       {"as_set", Json{{"max_height", plan.left.as_set_max_height},
                                       {"deepest_gouge", plan.left.as_set_deepest_gouge}}}};
    out["waste"] = Json{{"area", plan.waste_area}, {"by_flat", plan.waste_by_flat}};
    out["effort"] = plan.effort;
    out["bound"] = plan.bound;
    out["optimal"] = plan.optimal;
    if (plan.prefer != Prefer::least_effort) out["prefer"] = word(plan.prefer);
    out["holding_checked"] = plan.holding_checked;
    if (besides.kit != nullptr) out["work"] = work_json(plan, *besides.kit);
    if (besides.gauge_error != nullptr) out["gauge_error"] = gauge_error_json(section, *besides.gauge_error);
    if (besides.drawn != nullptr && besides.redrawing != nullptr && besides.redrawing->nearest)
      out["redrawn"] = redrawn_json(*besides.drawn, *besides.redrawing->nearest);
    if (plan.facets > 0) out["facets"] = plan.facets;
  }
  if (!plan.feasible || plan.undecided) out["reasons"] = reasons_json(plan);
  if (!plan.feasible && !plan.undecided) out["remedies"] = remedies_json(plan);
  Json left_off = Json::array();
  if (besides.redrawing != nullptr && besides.redrawing->left_off) left_off.push_back("redrawing");
  if (!plan.feasible && plan.remedies_left_off) left_off.push_back("remedies");
  if (!left_off.empty()) out["left_off"] = left_off;
  return out;
}

std::string plan_to_json(const Plan& plan, const JsonBesides& besides) {
  return json_text(plan_as_json(plan, besides));
}

}  // namespace arrisline
