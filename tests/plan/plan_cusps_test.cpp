// Cusps that the planes of real plans leave: plans made for an arc that no plane of the kit matches, their
// poses replayed on the blank, and the wood between two places of the sole measured on what then stands.
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "plan/planning.h"
#include "replay/standing.h"

using namespace arrisline;
using replaying::Standing;
using replaying::sweep_of;
using test::faults;
using test::need;

namespace {

constexpr double kFar = 400;  // mm, beyond any blank of this file

/// An arc, a plane of another radius, and the height that two places of it `degrees` apart leave between
/// them.
struct Row {
  PlaneKind kind;
  double arc, plane, width;  // mm
  double degrees, height;
};

// Computed, by the construction of Suresh and Yang, J. Eng. Ind. 116, 1994 (from memory). The figures for R 1
// are enlarged to a size that a plane can have: those for r .75 and 1.25 by 16, that for r .5 by 20.
const std::vector<Row> kRows = {
    {PlaneKind::round, 16, 12, 12, 30, 16 * 0.01131489},  {PlaneKind::round, 20, 10, 10, 15, 20 * 0.00855514},
    {PlaneKind::round, 12, 10, 10, 30, 0.08155479},       {PlaneKind::round, 25, 12, 12, 10, 0.10307804},
    {PlaneKind::hollow, 16, 20, 14, 30, 16 * 0.00684274}, {PlaneKind::hollow, 10, 12, 8.7, 30, 0.05697860},
};

bool is_cove(const Row& row) {
  return row.kind == PlaneKind::round;
}

/// A quadrant on the corner of a blank.
Section quadrant(const Row& row) {
  const std::string size = std::to_string(row.arc);
  return need(read_profile("units mm\nstock 80 wide, 40 thick\nstart face " + size + "\n" +
                               (is_cove(row) ? "cavetto " : "ovolo ") + size + "\n",
                           "quadrant.profile"));
}

Plan planned(const Row& row) {
  const Kit kit = test::kit("units mm\nrebate 20\n" + std::string(word(row.kind)) + " radius " +
                            std::to_string(row.plane) + " width " + std::to_string(row.width) + "\n");
  PlanOptions options;
  options.unit = Unit::mm;
  Plan plan = make_plan(quadrant(row), kit, options);
  REQUIRE(plan.feasible);
  REQUIRE_FALSE(plan.left.scrape);
  CHECK(faults(plan, options) == "");
  return plan;
}

Edge arc_of(const Plan& plan) {
  const Loop& target = plan.section.target;
  return *std::find_if(target.begin(), target.end(), [](const Edge& edge) { return edge.is_arc(); });
}

/// Where the sole touches the circle of the arc, as the tilt of the spoke to that place; nothing where it
/// stands off the circle, or would touch it beyond its own edge.
std::optional<double> spoke(const Plane& plane, const Pose& pose, const Edge& arc) {
  const bool cove = plane.kind == PlaneKind::round;
  const Point centre = pose.at + (cove ? plane.radius : -plane.radius) * outward(pose.tilt);
  const Point off = centre - arc.centre;
  if (std::abs(norm(off) - std::abs(radius(arc) - plane.radius)) > 1e-6) return std::nullopt;
  // Either centre lies on the line of the spoke, on the other side of the arc's centre from the sole's way
  // out.
  const double tilt = tilt_of(-1.0 * off);
  const double across = std::abs(wrap_degrees(tilt - pose.tilt));
  if (across > to_degrees(plane.half_arc()) + 1e-9) return std::nullopt;
  return tilt;
}

/// The height above the arc of what stands on the spoke at `tilt`.
double left_on(const Standing& wood, const Edge& arc, bool cove, double tilt) {
  const double top = wood.top({arc.centre, tilt}, 0).value();
  return cove ? radius(arc) + top : top - radius(arc);
}

double by_construction(const Row& row, double degrees) {
  const double half = to_radians(degrees) / 2, d = std::abs(row.arc - row.plane);
  const double reach = std::sqrt(row.plane * row.plane - d * d * std::sin(half) * std::sin(half));
  return is_cove(row) ? row.arc - (d * std::cos(half) + reach) : reach - d * std::cos(half) - row.arc;
}

/// Whether both soles reach the spoke half way between the places where they touch.
bool meets(const Plane& plane, const Pose& pose, const Edge& arc, double tilt, double height) {
  const double away = radius(arc) + (plane.kind == PlaneKind::round ? -height : height);
  const double side = plane.kind == PlaneKind::round ? -1 : 1;
  const Point p = arc.centre + (side * away) * outward(tilt);
  return std::abs(to_sole_frame(pose, p).x) <= plane.width / 2 + 1e-9;
}

}  // namespace

TEST_CASE("what a plan leaves between two places of its sole is what the construction gives",
          "[plan][cusps]") {
  for (const Row& row : kRows) {
    INFO(word(row.kind) << " of " << row.plane << " mm on " << row.arc << " mm");
    const Plan plan = planned(row);
    const Edge arc = arc_of(plan);
    Standing all(plan.section.width, plan.section.thickness);     // as the plan leaves it
    Standing curved(plan.section.width, plan.section.thickness);  // by the hollow or the round alone
    struct Place {
      double tilt;
      const Plane* plane;
      Pose pose;
    };
    std::vector<Place> places;
    for (const Cut& cut : plan.cuts) {
      for (const Pose& pose : cut.poses) {
        all.take(sweep_of(cut.plane, pose, kFar));
        if (!cut.plane.is_curved()) continue;
        curved.take(sweep_of(cut.plane, pose, kFar));
        if (const auto tilt = spoke(cut.plane, pose, arc)) places.push_back({*tilt, &cut.plane, pose});
      }
    }
    std::sort(places.begin(), places.end(), [](const Place& a, const Place& b) { return a.tilt < b.tilt; });
    int measured = 0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
      const Place &a = places[i], &b = places[i + 1];
      const double apart = b.tilt - a.tilt, middle = (a.tilt + b.tilt) / 2;
      if (apart < 1) continue;
      const double height = by_construction(row, apart);
      if (!meets(*a.plane, a.pose, arc, middle, height) || !meets(*b.plane, b.pose, arc, middle, height))
        continue;
      INFO(apart << " degrees apart, about " << middle);
      ++measured;
      CHECK(left_on(curved, arc, is_cove(row), middle) == Approx(height).epsilon(0).margin(1e-6));
      // A flat sole may have taken the cusp's top, and the plan leaves no more than it says.
      CHECK(left_on(all, arc, is_cove(row), middle) <= height + 1e-6);
      CHECK(left_on(all, arc, is_cove(row), middle) <= plan.left.max_height + 1e-3);
    }
    CHECK(measured >= 1);
  }
}

TEST_CASE("a plan's plane turned on by the step of the table leaves the table's cusp", "[plan][cusps]") {
  for (const Row& row : kRows) {
    INFO(word(row.kind) << " of " << row.plane << " mm on " << row.arc << " mm, " << row.degrees
                        << " degrees apart");
    const Plan made = planned(row);
    const Edge arc = arc_of(made);
    const auto curved = std::find_if(made.cuts.begin(), made.cuts.end(),
                                     [](const Cut& cut) { return cut.plane.is_curved(); });
    REQUIRE(curved != made.cuts.end());
    // Up to the cut that rides on what the plan laid for it, and that cut with one step either way instead of
    // its own tilts.
    int measured = 0;
    for (const double step : {row.degrees, -row.degrees}) {
      Plan plan = made;
      plan.cuts.resize(static_cast<std::size_t>(curved - made.cuts.begin()) + 1);
      Cut& cut = plan.cuts.back();
      const Pose first = cut.poses.front();
      const std::optional<double> at = spoke(cut.plane, first, arc);
      REQUIRE(at.has_value());
      const Point from_centre = to_sole_frame({arc.centre, first.tilt}, first.at);
      const Pose second{from_sole_frame({arc.centre, first.tilt + step}, from_centre), first.tilt + step};
      cut.poses = cut.set = {first, second};
      const std::vector<Finding> findings = replay(plan, {}).findings;
      const auto breaks = [](const Finding& finding) { return finding.rule == 1 || finding.rule == 4; };
      if (std::any_of(findings.begin(), findings.end(), breaks))
        continue;  // into a wall, or past the arc's end
      const double middle = *at + step / 2;
      Standing wood(plan.section.width, plan.section.thickness);
      for (const Pose& pose : cut.poses) wood.take(sweep_of(cut.plane, pose, kFar));
      ++measured;
      CHECK(left_on(wood, arc, is_cove(row), middle) == Approx(row.height).epsilon(0).margin(2e-7));
    }
    CHECK(measured >= 1);
  }
}
