// Rules 4 and 5: what guides a plane when it is set down, how it turns on, and how the blank lies for it.
#include <algorithm>
#include <cmath>

#include "referee/judge.h"
#include "referee/margins.h"

namespace arrisline::referee {

// Rule 4 read against the plan and for it.
static constexpr SeatLimits kSeats[] = {
    {0.0195, 0.022, 20.5, 25, 0.0180, 0.45}, {0.0200, 0.022, 20.5, 25, 0.0180, 0.45},
    {0.0205, 0.022, 20.5, 25, 0.0180, 0.45}, {0.0195, 0.018, 19.5, 15, 0.0220, 0.35},
    {0.0200, 0.018, 19.5, 15, 0.0220, 0.35}, {0.0205, 0.018, 19.5, 15, 0.0220, 0.35}};

static Point centre_of(const StatedPlane& plane, const StatedPose& pose) {
  return from_frame(pose, 0, plane.kind == "round" ? plane.radius : -plane.radius);
}

static double half_degrees(const StatedPlane& plane) {
  return std::asin(std::min(1.0, plane.width / 2 / plane.radius)) * 180 / kPi;
}

// Degrees of the sole along an arc of the target that earlier cuts of its kind, centre and radius have made.
double Judge::own_arc(const Stated& plan, std::size_t cut) const {
  constexpr double kSame = 0.01, kAlong = 0.02, kMade = 0.05;
  const StatedPlane& plane = plan.cuts[cut].plane;
  const StatedPose& pose = plan.cuts[cut].poses.front();
  const Point centre = centre_of(plane, pose);
  std::vector<Edge> arcs, made;
  for (const Edge& edge : plan.target)
    if (edge.is_arc() && distance(edge.centre, centre) <= kSame &&
        std::abs(distance(edge.centre, edge.from) - plane.radius) <= kSame)
      arcs.push_back(edge);
  for (std::size_t i = 0; i < cut; ++i) {
    const StatedPlane& other = plan.cuts[i].plane;
    if (other.kind != plane.kind || std::abs(other.radius - plane.radius) > kSame) continue;
    for (const StatedPose& earlier : plan.cuts[i].poses)
      if (distance(centre_of(other, earlier), centre) <= kSame)
        made.push_back(sole_of(other, earlier).front());
  }
  if (arcs.empty() || made.empty()) return 0;
  const double half = half_degrees(plane);
  constexpr int kLooks = 1000;
  int along = 0;
  for (int i = 0; i < kLooks; ++i) {
    const double u = plane.radius * std::sin(half * (2 * (i + 0.5) / kLooks - 1) * kPi / 180);
    const Point p = from_frame(pose, u, height_of(plane, u));
    if (off_outline(p, arcs) <= kAlong && off_outline(p, made) <= kMade) ++along;
  }
  return 2 * half * along / kLooks;
}

void Judge::judge_turning(const Stated& plan, std::size_t cut) {
  const StatedCut& one = plan.cuts[cut];
  constexpr double kSame = 0.01;
  const auto follows = [&](const StatedPose& earlier, const StatedPose& later, double same, double degrees) {
    const double step = degrees_between(earlier.tilt, later.tilt);
    const bool overlaps = step <= 2 * half_degrees(one.plane) - 10 + degrees;
    const Point centre = centre_of(one.plane, earlier);
    if (overlaps && distance(centre, centre_of(one.plane, later)) <= same) return true;
    // The 30 degrees are for planes of another radius than the arc's; one of its own radius has to overlap.
    return std::any_of(plan.target.begin(), plan.target.end(), [&](const Edge& arc) {
      if (!arc.is_arc() || distance(in_frame(earlier, arc.centre), in_frame(later, arc.centre)) > same)
        return false;
      const double off = std::abs(distance(arc.from, arc.centre) - one.plane.radius);
      return off > kSame ? step <= 30 + degrees : overlaps;
    });
  };
  for (std::size_t i = 1; i < one.poses.size(); ++i) {
    bool strictly = false, loosely = false;
    for (std::size_t k = 0; k < i; ++k) {
      strictly = strictly || follows(one.poses[k], one.poses[i], kSame - kPlaceMargin, kRounding);
      loosely = loosely || follows(one.poses[k], one.poses[i], kSame + kPlaceMargin, kDegreesMargin);
    }
    holds(of_cut(cut, "rule 4: a pose does not turn on from an earlier one"), strictly, loosely);
  }
}

std::optional<double> Judge::judge_riding(const Stated& plan, std::size_t cut, const State& wood) {
  const StatedCut& one = plan.cuts[cut];
  std::optional<double> imbalance;
  if (one.rides == "own arc") {
    const double degrees = own_arc(plan, cut);
    holds(of_cut(cut, "rule 4: degrees in its own arc ") + shown(degrees), degrees >= 10 + kDegreesMargin,
          degrees >= 10 - kDegreesMargin);
  } else if (one.rides == "two arrises") {
    const Seater seater(wood.wood, one.plane, one.poses.front());
    int two = 0, all = 0;
    double least = 1, most = 0;
    for (const SeatLimits& limits : kSeats) {
      const Seat seat = seater.sit(limits);
      ++all;
      if (!seat.two) continue;
      ++two;
      least = std::min(least, seat.imbalance);
      most = std::max(most, seat.imbalance);
    }
    holds(of_cut(cut, "rule 4: no two arrises"), two == all, two > 0);
    if (two > 0) {
      at_most(of_cut(cut, "rule 4: imbalance"), most, 0.5, most - least + kImbalanceMargin);
      imbalance = (least + most) / 2;
      const double nearest = std::clamp(one.imbalance, least, most);
      const double farthest = std::max(std::abs(one.imbalance - least), std::abs(one.imbalance - most));
      holds(of_cut(cut, "stated: imbalance ") + shown(one.imbalance) + ", found " + shown(least) + " to " +
                shown(most),
            farthest <= 0.03 - kImbalanceMargin,
            std::abs(one.imbalance - nearest) <= 0.03 + kImbalanceMargin);
    }
  } else {
    out_.broken.push_back(of_cut(cut, "rule 4: a curved plane is guided by neither arrises nor its arc"));
  }
  judge_turning(plan, cut);
  return imbalance;
}

void Judge::judge_register(const Stated& plan, std::size_t cut, const State& wood) {
  const StatedCut& one = plan.cuts[cut];
  if (one.rides != "gauge line" && one.rides != "wall" && one.rides != "fence")
    out_.broken.push_back(
        of_cut(cut, "rule 5: a flat or shaped plane is guided by none of line, wall and fence"));
  if (one.rides == "wall") {
    // Wood beyond a side of some pose, with air within: the wall it is set against.
    // Near enough to the side that a surface crossing it aslant is none.
    constexpr double kBeside = 0.002, kStep = 0.002;
    double highest = 0;
    for (const StatedPose& pose : one.poses)
      for (const double side : {-1.0, 1.0}) {
        int seen = 0;
        const double half = one.plane.width / 2;
        for (double v = kStep / 2; v < 2 * (plan.width + plan.thickness); v += kStep)
          if (wood.wood.holds(from_frame(pose, side * (half + kBeside), v)) &&
              !wood.wood.holds(from_frame(pose, side * (half - kBeside), v)))
            ++seen;
        highest = std::max(highest, seen * kStep);
      }
    holds(of_cut(cut, "rule 5: height of the wall ") + shown(highest), highest >= 0.06, highest >= 0.02);
  }
  if (one.plane.kind != "plough") return;
  for (const StatedPose& pose : one.poses) {
    at_most(of_cut(cut, "rule 5: the plough leans"), std::abs(std::remainder(pose.tilt, 90)), 0.01, 0.002);
    const bool upright = std::abs(std::remainder(pose.tilt, 180)) < 45;
    const double from = upright ? pose.at.x : pose.at.y, whole = upright ? plan.width : plan.thickness;
    at_most(of_cut(cut, "rule 5: reach"), std::min(from, whole - from) - one.plane.width / 2, one.plane.reach,
            0.011);
    double deepest = 0;
    const Seater seater(wood.wood, one.plane, pose);
    deepest = std::max(deepest, seater.highest());
    at_most(of_cut(cut, "rule 5: depth"), deepest, one.plane.deep, 0.011);
  }
}

void Judge::judge_lying(const Stated& plan, std::size_t cut) {
  const StatedCut& one = plan.cuts[cut];
  // The plane stands above the wood, or on its side at most; said or not, on one side of it throughout a cut.
  const auto from_above = [&](bool turned, double most) {
    return std::all_of(one.poses.begin(), one.poses.end(), [&](const StatedPose& pose) {
      return degrees_between(pose.tilt, turned ? 180 : 0) <= most;
    });
  };
  const bool turned = one.lies.empty() ? !from_above(false, 91) : one.lies == "underside up";
  holds(of_cut(cut, "lies: the plane comes from below"), from_above(turned, 91 - kDegreesMargin),
        from_above(turned, 91 + kDegreesMargin));
  if (turned || one.overhangs.value_or(false)) return;
  double below = 0;
  for (const StatedPose& pose : one.poses)
    for (const Edge& edge : sole_of(one.plane, pose))
      below = std::max({below, edge.from.y - plan.thickness, edge.to.y - plan.thickness});
  holds(of_cut(cut, "lies: not said to overhang, but below the underside by ") + shown(below),
        below <= kRounding, below <= 0.02);
}

}  // namespace arrisline::referee
