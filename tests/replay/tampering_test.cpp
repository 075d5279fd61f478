// Valid plans, edited one place at a time: every edit that breaks docs/model.md or docs/plan-json.md is
// refused.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "arrisline/plan_json.h"
#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using Json = nlohmann::ordered_json;

static std::vector<Plan> valid_plans() {
  return {plans::round_over(), plans::round_over_two_chamfers(), plans::round_over_in_two_cuts(),
          plans::cavetto_one(), plans::cavetto_three()};
}

static bool refused(const Plan& plan) {
  const StatedPlan stated = plan_from_json(plan_to_json(plan));
  return !stated.faults.empty() || !replay(stated.plan, {}).findings.empty();
}

static void renumber(Plan& plan) {
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) plan.cuts[i].number = static_cast<int>(i + 1);
}

// Applies `edit` to a copy of every pose of every valid plan, in `set` as well, and wants each refused.
template <class Change>
static int refused_at_every_pose(Change change) {
  int tried = 0;
  for (const Plan& good : valid_plans()) {
    REQUIRE_FALSE(refused(good));
    for (std::size_t i = 0; i < good.cuts.size(); ++i) {
      for (std::size_t k = 0; k < good.cuts[i].poses.size(); ++k) {
        Plan plan = good;
        change(plan.cuts[i].poses[k]);
        plan.cuts[i].set[k] = plan.cuts[i].poses[k];
        INFO(good.section.name << ", cut " << i + 1 << ", pose " << k + 1);
        CHECK(refused(plan));
        ++tried;
      }
    }
  }
  return tried;
}

TEST_CASE("no pose may be moved 0.05 mm into the wood", "[tamper]") {
  CHECK(refused_at_every_pose([](Pose& pose) { pose.at = pose.at - 0.05 * outward(pose.tilt); }) == 22);
}

TEST_CASE("no tilt may be three degrees off", "[tamper]") {
  refused_at_every_pose([](Pose& pose) { pose.tilt += 3; });
  refused_at_every_pose([](Pose& pose) { pose.tilt -= 3; });
}

TEST_CASE("no pose may stand half a millimetre short", "[tamper]") {
  refused_at_every_pose([](Pose& pose) { pose.at = pose.at + 0.5 * outward(pose.tilt); });
}

TEST_CASE("no cut and no pose may be dropped, and no two cuts swapped", "[tamper]") {
  for (const Plan& good : valid_plans()) {
    for (std::size_t i = 0; i < good.cuts.size(); ++i) {
      INFO(good.section.name << ", " << good.cuts.size() << " cuts, cut " << i + 1);
      const auto at = static_cast<std::ptrdiff_t>(i);
      Plan plan = good;
      plan.cuts.erase(plan.cuts.begin() + at);
      renumber(plan);
      CHECK(refused(plan));
      if (i + 1 < good.cuts.size()) {
        plan = good;
        std::swap(plan.cuts[i], plan.cuts[i + 1]);
        renumber(plan);
        CHECK(refused(plan));
      }
      for (std::size_t k = 0; k < good.cuts[i].poses.size(); ++k) {
        plan = good;
        plan.cuts[i].poses.erase(plan.cuts[i].poses.begin() + static_cast<std::ptrdiff_t>(k));
        plan.cuts[i].set = plan.cuts[i].poses;
        CHECK(refused(plan));
      }
    }
  }
}

TEST_CASE("no plane may be another", "[tamper]") {
  for (const Plan& good : valid_plans()) {
    for (std::size_t i = 0; i < good.cuts.size(); ++i) {
      for (const Plane& other :
           {plans::curved(PlaneKind::hollow), plans::curved(PlaneKind::round),
            plans::curved(PlaneKind::hollow, 12.7), plans::curved(PlaneKind::round, 12.7),
            plans::curved(PlaneKind::hollow, 6.35), plans::curved(PlaneKind::round, 6.35), plans::rebate()}) {
        const Plane& own = good.cuts[i].plane;
        if (own.kind == other.kind && own.radius == other.radius) continue;
        Plan plan = good;
        plan.cuts[i].plane = other;
        INFO(good.section.name << ", cut " << i + 1 << ", " << word(other.kind) << " " << other.radius);
        CHECK(refused(plan));
      }
    }
  }
}

// What a plan written by hand may leave out, and what is not judged.
static const std::set<std::string>& optional_members() {
  static const std::set<std::string> names = {
      "profile", "elements",        "element", "part",          "chain",    "name",   "line",  "label",
      "lines",   "settings",        "strokes", "imbalance_set", "overhang", "reason", "where", "lies",
      "planed",  "holding_checked", "centre",  "turn",          "reach",    "deep"};
  return names;
}

// Visits every member of the object, and of those within it, by pointer.
template <class Visit>
static void each_member(const Json& value, const Json::json_pointer& at, Visit visit) {
  if (value.is_object()) {
    for (auto it = value.begin(); it != value.end(); ++it) {
      visit(at / it.key(), it.key());
      each_member(it.value(), at / it.key(), visit);
    }
  } else if (value.is_array()) {
    for (std::size_t i = 0; i < value.size(); ++i) each_member(value[i], at / i, visit);
  }
}

static bool refused_text(const Json& json) {
  const StatedPlan stated = plan_from_json(json.dump());
  return !stated.faults.empty() || !replay(stated.plan, {}).findings.empty();
}

TEST_CASE("no member may be missing, but those that are optional", "[tamper]") {
  int tried = 0;
  for (const Plan& good : valid_plans()) {
    const Json whole = Json::parse(plan_to_json(good));
    REQUIRE_FALSE(refused_text(whole));
    each_member(whole, Json::json_pointer(), [&](const Json::json_pointer& at, const std::string& name) {
      // Of `number`, a cut's must stand; a plane's need not.
      if (optional_members().count(name) ||
          (name == "number" && at.to_string().find("plane") != std::string::npos))
        return;
      Json edited = whole;
      edited[at.parent_pointer()].erase(name);
      INFO(at.to_string());
      CHECK(refused_text(edited));
      ++tried;
    });
  }
  CHECK(tried > 300);
}

TEST_CASE("every figure must be a number of sensible size", "[tamper]") {
  int tried = 0;
  for (const Plan& good : valid_plans()) {
    const Json flat = Json::parse(plan_to_json(good)).flatten();
    for (auto it = flat.begin(); it != flat.end(); ++it) {
      if (!it.value().is_number()) continue;
      for (const Json& odd : {Json(nullptr), Json("1"), Json(1e300), Json(-1e300), Json(true)}) {
        Json edited = flat;
        edited[it.key()] = odd;
        INFO(it.key() << " = " << odd.dump());
        CHECK_FALSE(plan_from_json(edited.unflatten().dump()).faults.empty());
        ++tried;
      }
    }
  }
  CHECK(tried > 1000);
}

TEST_CASE("a part of a plan in the place of another is refused and nothing is thrown", "[tamper]") {
  const Json flat = Json::parse(plan_to_json(plans::round_over())).flatten();
  for (auto it = flat.begin(); it != flat.end(); ++it) {
    for (const Json& odd : {Json::array(), Json::object(), Json::array({1, 2, 3})}) {
      Json edited = flat.unflatten();
      const Json::json_pointer at(it.key());
      if (edited[at].is_structured() || edited[at.parent_pointer()].is_array()) continue;
      edited[at] = odd;
      INFO(it.key() << " = " << odd.dump());
      CHECK(refused_text(edited));
    }
  }
}
