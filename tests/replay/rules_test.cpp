// The single judgements of the replay, either side of each limit.
#include "replay/rules.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

Edge line(Point from, Point to) {
  return {from, to, {}, Turn::straight};
}

bool says(const std::vector<std::string>& faults, const char* part) {
  return std::any_of(faults.begin(), faults.end(),
                     [&](const std::string& fault) { return fault.find(part) != std::string::npos; });
}

Plane flat(PlaneKind kind, double width) {
  Plane plane;
  plane.kind = kind;
  plane.width = width;
  return plane;
}

Cut cut_by(Plane plane, std::vector<Pose> poses, Rides rides = Rides::gauge_line) {
  return plans::cut(1, std::move(plane), std::move(poses), 1, rides);
}

Section stock() {
  Section section;
  section.width = plans::kWidth;
  section.thickness = plans::kThickness;
  return section;
}

std::vector<std::string> outline_faults_of(const Loop& target) {
  return outline_faults(stock(), target, {flatten(std::span<const Edge>(target))});
}

}  // namespace

TEST_CASE("figures have two decimals, and four under a tenth", "[replay]") {
  CHECK(figure(0.314) == "0.31");
  CHECK(figure(-12.345) == "-12.35");
  CHECK(figure(0.1) == "0.10");
  CHECK(figure(0.0996) == "0.0996");
  CHECK(figure(-0.01084) == "-0.0108");
  CHECK(figure(0) == "0.00");
  CHECK(near({12.7, 3.178}) == "near x 12.70, y 3.18");
}

TEST_CASE("a plan is usable when every figure of it is a number and every plane has a sole", "[replay]") {
  const double nan = std::numeric_limits<double>::quiet_NaN(), endless = kEndless;
  const Plan good = plans::round_over();
  REQUIRE(unusable(good).empty());
  const auto faults_with = [&](auto change) {
    Plan plan = good;
    change(plan);
    std::vector<std::string> out;
    for (const Finding& finding : unusable(plan)) {
      out.push_back(std::to_string(finding.cut) + " " + finding.text);
      CHECK(finding.rule == 0);
    }
    return out;
  };
  using Faults = std::vector<std::string>;
  for (const double bad : {nan, endless, 0.0, -1.0}) {
    CHECK(faults_with([&](Plan& p) { p.section.width = bad; }) == Faults{"0 the stock has no size"});
    CHECK(faults_with([&](Plan& p) { p.section.thickness = bad; }) == Faults{"0 the stock has no size"});
    CHECK(faults_with([&](Plan& p) { p.cuts[0].plane.width = bad; }) ==
          Faults{"1 the plane has no usable sole"});
    CHECK(faults_with([&](Plan& p) { p.cuts[1].plane.radius = bad; }) ==
          Faults{"2 the plane has no usable sole"});
  }
  for (const double bad : {nan, endless, -endless}) {
    const Faults outline{"0 the target is not an outline"}, pose{"2 a pose is not a number"},
        figure{"0 a stated figure is not a number"}, of_cut{"2 a stated figure is not a number"};
    CHECK(faults_with([&](Plan& p) { p.section.target[0].from.x = bad; }) == outline);
    CHECK(faults_with([&](Plan& p) { p.section.target[0].from.y = bad; }) == outline);
    CHECK(faults_with([&](Plan& p) { p.section.target[0].to.y = bad; }) == outline);
    CHECK(faults_with([&](Plan& p) { p.section.target[4].centre.y = bad; }) == outline);
    CHECK(faults_with([&](Plan& p) {
            p.section.target[0].centre.y = bad;
          }).empty());  // a straight edge has none
    CHECK(faults_with([&](Plan& p) { p.cuts[1].poses[2].at.x = bad; }) == pose);
    CHECK(faults_with([&](Plan& p) { p.cuts[1].poses[2].at.y = bad; }) == pose);
    CHECK(faults_with([&](Plan& p) { p.cuts[1].poses[2].tilt = bad; }) == pose);
    CHECK(faults_with([&](Plan& p) { p.cuts[1].set[0].at.y = bad; }) == pose);
    CHECK(faults_with([&](Plan& p) { p.left.max_height = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.left.area = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.left.as_set_max_height = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.left.as_set_deepest_gouge = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.waste_area = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.waste_by_flat = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.effort = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.bound = bad; }) == figure);
    CHECK(faults_with([&](Plan& p) { p.cuts[1].removed = bad; }) == of_cut);
    CHECK(faults_with([&](Plan& p) { p.cuts[1].imbalance = bad; }) == of_cut);
  }
  CHECK(faults_with([](Plan& p) { p.section.target[4].centre = p.section.target[4].from; }) ==
        Faults{"0 the target is not an outline"});
  CHECK(faults_with([](Plan& p) { p.section.target.resize(1); }) == Faults{"0 the target is not an outline"});
  CHECK(faults_with([](Plan& p) { p.section.target.resize(2); }).empty());
  CHECK(faults_with([](Plan& p) { p.cuts[0].poses.clear(); }) == Faults{"1 no pose is given"});
  CHECK(faults_with([](Plan& p) { p.cuts[0].plane.kind = PlaneKind::scraper; }) ==
        Faults{"1 a scraper has no poses"});
  CHECK(faults_with([](Plan& p) {
          p.cuts[0].plane = flat(PlaneKind::scraper, 0);
          p.cuts[0].poses.clear();
        }).empty());
}

TEST_CASE("a sole is no wider than its circle, and a shaped one has a shape", "[replay]") {
  const auto usable = [](const Plane& plane) {
    Plan plan = plans::round_over();
    plan.cuts[0].plane = plane;
    return unusable(plan).empty();
  };
  Plane half = plans::curved(PlaneKind::round, 5);
  for (const auto& [wider, fits] :
       {std::pair(1.0, true), std::pair(1 + 2e-13, true), std::pair(1 + 4e-12, false), std::pair(1.4, false),
        std::pair(0.1, true)}) {
    half.width = 10 * wider;
    INFO(wider);
    CHECK(usable(half) == fits);
  }
  Plane shaped = flat(PlaneKind::shaped, 4);
  CHECK_FALSE(usable(shaped));
  shaped.sole = {line({-2, 0}, {2, 0})};
  CHECK(usable(shaped));
  CHECK(usable(flat(PlaneKind::plough, 0.4)));  // for stringing
  half.radius = 0.3;
  half.width = 0.6;
  CHECK(usable(half));
  shaped.sole[0].to.y = kEndless;
  CHECK_FALSE(usable(shaped));
}

TEST_CASE("an outline is turned so that its wood lies to the left", "[replay]") {
  const Loop target = plans::round_over().section.target;
  const Loop kept = interior_to_the_left(target);
  REQUIRE(kept.size() == target.size());
  CHECK(kept[4].from == target[4].from);
  Loop back;
  for (auto it = target.rbegin(); it != target.rend(); ++it) back.push_back(reversed(*it));
  REQUIRE(area(back) < 0);
  const Loop turned = interior_to_the_left(back);
  REQUIRE(turned.size() == target.size());
  for (std::size_t i = 0; i < target.size(); ++i) {
    CHECK(turned[i].from == target[i].from);
    CHECK(turned[i].to == target[i].to);
    CHECK(turned[i].turn == target[i].turn);
  }
}

TEST_CASE("an outline is turned however small it is", "[replay]") {
  const Loop small{line({0, 0}, {0.5, 0}), line({0.5, 0}, {0.5, 0.5}), line({0.5, 0.5}, {0, 0})};
  CHECK(interior_to_the_left(small)[1].to == Point{0.5, 0.5});
  const Loop back{line({0, 0}, {0.5, 0.5}), line({0.5, 0.5}, {0.5, 0}), line({0.5, 0}, {0, 0})};
  CHECK(interior_to_the_left(back)[0].to == Point{0.5, 0});
}

TEST_CASE("far beyond is past the blank from every pose, as drawn and as set", "[replay]") {
  const double w = plans::kWidth, t = plans::kThickness;
  for (const Point at : {Point{-40, -15}, Point{w + 60, t + 22.5}, Point{w + 3, -9}, Point{20, 5}}) {
    double farthest = 0;
    for (const Point corner : {Point{0, 0}, Point{w, 0}, Point{w, t}, Point{0, t}})
      farthest = std::max(farthest, distance(at, corner));
    Plan plan = plans::round_over();
    for (Cut& cut : plan.cuts) {
      cut.plane.width = 0.5;
      cut.poses = cut.set = {{{20, 5}, 0}};
    }
    const double near = far_beyond(plan);
    plan.cuts[0].poses[0].at = at;
    CHECK(far_beyond(plan) >= farthest);
    plan.cuts[0].poses[0] = plan.cuts[1].set[0];
    plan.cuts[1].set[0].at = at;
    CHECK(far_beyond(plan) >= farthest);
    // The ends of a hollow's sole may lie half its width below its middle.
    plan.cuts[0].plane.width = 80;
    CHECK(far_beyond(plan) >= farthest + 40);
    CHECK(near >= std::hypot(w - 20, t - 5));
  }
}

TEST_CASE("the target lies in the stock but for its own rounding", "[replay]") {
  const double w = plans::kWidth, t = plans::kThickness;
  const auto rectangle = [](double x0, double y0, double x1, double y1) {
    return Loop{line({x0, y0}, {x1, y0}), line({x1, y0}, {x1, y1}), line({x1, y1}, {x0, y1}),
                line({x0, y1}, {x0, y0})};
  };
  CHECK(outline_faults_of(rectangle(0, 0, w, t)).empty());
  const double in = 1e-6, out = 4e-6;
  CHECK(outline_faults_of(rectangle(-in, -in, w, t)).empty());
  CHECK(outline_faults_of(rectangle(0, -3, w, t)) ==
        std::vector<std::string>{"the target leaves the stock near x 0.00, y -3.00"});
  for (const Loop& target :
       {rectangle(0, -out, w, t), rectangle(0, 0, w + out, t), rectangle(0, 0, w, t + out)})
    CHECK(outline_faults_of(target).size() == 1);  // said once, of whichever corner comes first
}

TEST_CASE("an outline all of arcs is no outline that crosses itself; a bow of a millimetre is", "[replay]") {
  const Point c{20, 9};
  CHECK(outline_faults_of({{{28, 9}, {12, 9}, c, Turn::left}, {{12, 9}, {28, 9}, c, Turn::left}}).empty());
  // The face goes a millimetre back on itself, rising by half of one: a triangle is counted backward.
  const double w = plans::kWidth, t = plans::kThickness;
  for (const double over : {0.0, 0.5}) {
    const Loop target{line({0, 2}, {20 + over, 2}),
                      line({20 + over, 2}, {20 - over, 1.5}),
                      line({20 - over, 1.5}, {20 - over, 2.5}),
                      line({20 - over, 2.5}, {w, 2.5}),
                      line({w, 2.5}, {w, t}),
                      line({w, t}, {0, t}),
                      line({0, t}, {0, 2})};
    CHECK(says(outline_faults_of(target), "crosses itself") == (over > 0));
  }
  // A curl of a millimetre is counted twice.
  const Loop curl{line({0, 0}, {20, 0}),  line({20, 0}, {20, 3}), line({20, 3}, {19, 3}),
                  line({19, 3}, {19, 2}), line({19, 2}, {21, 2}), line({21, 2}, {21, t}),
                  line({21, t}, {0, t}),  line({0, t}, {0, 0})};
  CHECK(says(outline_faults_of(curl), "crosses itself"));
}

TEST_CASE("the blank lies so that the plane comes from above, a degree over on its side", "[replay]") {
  const auto faults = [](double tilt, Lies lies) {
    Cut cut = cut_by(flat(PlaneKind::rebate, 6), {{{20, 5}, 0}, {{20, 5}, tilt}});
    cut.lies = lies;
    cut.overhang = true;
    return lying_faults(stock(), cut);
  };
  for (const double sign : {1.0, -1.0}) {
    CHECK(faults(sign * 90.9, Lies::face_up).empty());
    CHECK(faults(sign * 91.1, Lies::face_up) ==
          std::vector<std::string>{"the blank is said to lie face up, but the rebate comes from below"});
  }
  CHECK(says(faults(0, Lies::underside_up), "the blank is said to lie underside up"));
  Cut cut = cut_by(flat(PlaneKind::rebate, 6), {{{20, 15}, 180}});
  cut.lies = Lies::underside_up;
  CHECK(lying_faults(stock(), cut).empty());
  cut.poses[0].tilt = 89.2;
  CHECK(lying_faults(stock(), cut).empty());
  cut.poses[0].tilt = 88.8;
  CHECK(lying_faults(stock(), cut).size() == 1);
}

TEST_CASE("what passes below the underside, by more than a hundredth, overhangs the board", "[replay]") {
  const double t = plans::kThickness;
  const auto faults = [&](double low, bool overhang) {
    // On its side; its lower end comes so low.
    Cut cut = cut_by(flat(PlaneKind::rebate, 6), {{{2, 8}, 90}, {{2, low - 3}, 90}, {{2, 9}, 90}});
    cut.overhang = overhang;
    return lying_faults(stock(), cut);
  };
  CHECK(faults(t, false).empty());
  CHECK(faults(t + 0.008, false).empty());
  CHECK(says(faults(t + 0.015, false), "passes below the underside"));
  CHECK(faults(t + 3, true).empty());
  Cut cut = cut_by(flat(PlaneKind::rebate, 6), {{{2, t}, -90}});  // the other end of the sole is the lower
  CHECK(says(lying_faults(stock(), cut), "passes below the underside"));
  cut.poses[0].tilt = 90;
  cut.lies = Lies::underside_up;  // nothing is below
  CHECK(lying_faults(stock(), cut).empty());
}

TEST_CASE("a hollow is set where it is drawn to a millionth, a rebate where the gauge says", "[replay]") {
  const auto fault = [](PlaneKind kind, double aside, double turned) {
    Cut cut = cut_by(plans::curved(kind), {{{20, 5}, 10}, {{20, 5}, 179.9999999}});
    cut.set[1].at.x += aside;
    cut.set[1].tilt = wrap_degrees(cut.set[1].tilt + turned);
    return set_fault(cut);
  };
  for (const PlaneKind kind : {PlaneKind::hollow, PlaneKind::round}) {
    CHECK(fault(kind, 8e-7, 0) == "");
    CHECK(fault(kind, -8e-7, 8e-7) == "");
    CHECK(fault(kind, -2e-6, 0) ==
          std::string("the ") + word(kind) + " is not gauged, but is set elsewhere than it is drawn");
    CHECK(fault(kind, 0, 2e-6) != "");
    CHECK(fault(kind, 0, -2e-6) != "");
  }
  CHECK(fault(PlaneKind::rebate, 0.1, 0.1) == "");
  Cut first = cut_by(plans::curved(PlaneKind::hollow), {{{20, 5}, 10}, {{20, 5}, 20}});
  first.set[0].at.y += 0.01;
  CHECK(set_fault(first) != "");
  Cut cut = cut_by(plans::curved(PlaneKind::hollow), {{{20, 5}, 10}});
  std::vector<Pose>().swap(cut.set);  // it says nothing of how it is set
  CHECK(set_fault(cut) == "");
}
