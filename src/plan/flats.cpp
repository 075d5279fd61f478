// Flat cuts: where a square sole can stand against the target.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "plan/gouge.h"
#include "plan/problem.h"
#include "plan/rest.h"
#include "plan/tilts.h"

namespace arrisline {

namespace {

constexpr std::size_t kMostPoses = 60;  // of one cut; a wider rebate than that many soles is no moulding

struct Extent {
  double u0, u1, v0, v1;
};

Extent extent(const Loop& loop, double tilt) {
  Extent out{1e300, -1e300, 1e300, -1e300};
  const Point e = across(tilt);
  const Point a = outward_of(e);
  for (const Edge& edge : loop) {
    const double u = dot(edge.from, e);
    const double v = dot(edge.from, a);
    out = {std::min(out.u0, u), std::max(out.u1, u), std::min(out.v0, v), std::max(out.v1, v)};
  }
  return out;
}

Pose pose_at(double tilt, double u, double v) {
  const Point e = across(tilt);
  return {u * e + v * outward_of(e), tilt};
}

/// Lowest v at which the sole, its middle at u, stays out of the target.
double lowest(const Problem& problem, const Plane& plane, double tilt, double u) {
  return rest_height(problem.section.target, Sweep(plane, pose_at(tilt, u, 0)));
}

std::vector<double> tilts_for(const Problem& problem, const Plane& plane) {
  std::vector<double> tilts;
  auto add = [&](double tilt) {
    tilt = wrap_degrees(tilt);
    for (const double known : tilts) {
      if (std::abs(wrap_degrees(known - tilt)) < 1e-7) return;
    }
    tilts.push_back(tilt);
  };
  if (plane.kind != PlaneKind::bench) {
    add(0);
    bool below = false, edge = false, back = false;
    for (const Surface& s : problem.surfaces) {
      const double c = std::cos(to_radians(s.tilt));
      const double n = std::sin(to_radians(s.tilt));
      below = below || c < 0.01;
      edge = edge || n > -0.01;
      back = back || n < 0.01;
    }
    if (edge) add(90);
    if (back) add(-90);
    if (below) add(180);
  }
  if (plane.kind == PlaneKind::plough) return tilts;
  for (const Surface& s : problem.surfaces) {
    if (s.arc) continue;
    add(s.tilt);
    if (plane.kind == PlaneKind::bench) continue;
    add(s.tilt + 90);
    add(s.tilt - 90);
  }
  return tilts;
}

/// What the poses finish of the flat surfaces: stretches along their soles and sides, or so near them that
/// what stays may stay.
std::vector<Stretch> finished_by(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses) {
  std::vector<Stretch> out;
  constexpr double kAbove = 1e-6;  // mm by which rounding may lift the target above a sole
  const double near = allowances(problem).front();
  const auto may_stay = [&](double height) { return height > -kAbove && height < near; };
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    const Surface& s = problem.surfaces[i];
    if (s.arc) continue;
    const Edge& edge = problem.edge(s);
    const double len = length(edge);
    for (const Pose& pose : poses) {
      const Sweep sweep(plane, pose);
      const Point p = {sweep.u(edge.from), sweep.v(edge.from)};
      const Point q = {sweep.u(edge.to), sweep.v(edge.to)};
      double from = 0, to = 0;
      auto clip = [&](double a, double b, double low, double high) {
        // Fractions of a → b that lie in [low, high].
        double t0 = (low - a) / (b - a), t1 = (high - a) / (b - a);
        if (t0 > t1) std::swap(t0, t1);
        from = std::max(0.0, t0);
        to = std::min(1.0, t1);
      };
      const double half = sweep.half();
      const bool one_side = (p.x < 0) == (q.x < 0);
      double stays = 0;
      if (may_stay(-p.y) && may_stay(-q.y)) {
        // Beside the sole a strip may stay only where the flat ends with it.
        const double left = -half - std::min(p.x, q.x), right = std::max(p.x, q.x) - half;
        clip(p.x, q.x, -half - (left < near ? near : kAbove), half + (right < near ? near : kAbove));
        stays = std::max({-p.y, -q.y, left < near ? left : 0, right < near ? right : 0});
      } else if (one_side && may_stay(std::abs(p.x) - half) && may_stay(std::abs(q.x) - half) &&
                 plane.kind != PlaneKind::bench) {
        clip(p.y, q.y, -near, 1e9);
        stays = std::max(std::abs(p.x), std::abs(q.x)) - half;
      }
      if ((to - from) * len > 1e-3) out.push_back({static_cast<int>(i), from, to, stays > kAbove});
    }
  }
  return out;
}

bool plough_allows(const Problem& problem, const Plane& plane, const Pose& pose) {
  const Extent all = extent(problem.blank, pose.tilt);
  const double u = dot(pose.at, across(pose.tilt));
  const double v = dot(pose.at, outward(pose.tilt));
  const double near = std::min(u - plane.width / 2 - all.u0, all.u1 - u - plane.width / 2);
  return near <= plane.reach && all.v1 - v <= plane.deep;
}

/// A bench plane's iron does not reach its sides: it works only where nothing stands beside it.
bool bench_allows(const Problem& problem, const Plane& plane, const Pose& pose) {
  Plane wide = plane;
  wide.width += 2;
  return rest_height(problem.section.target, Sweep(wide, pose)) < 1e-6;
}

/// Rebate planes before ploughs before bench planes.
int rank(PlaneKind kind) {
  return kind == PlaneKind::rebate ? 0 : kind == PlaneKind::plough ? 1 : 2;
}

/// Of all planes keeps those that are, for the middle of some flat, the widest of the first kind that
/// finishes it: a cut that a wider sole makes as well is made with it, unless the narrower plane has to be
/// taken up anyway, for such a flat or for the waste of an arc.
void keep_widest(const Problem& problem, std::vector<Draft>& drafts) {
  std::set<int> wanted;
  for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
    if (problem.surfaces[s].arc) continue;
    for (const auto& [at, nearly] :
         {std::pair{0.01, false}, {0.5, false}, {0.99, false}, {0.01, true}, {0.5, true}, {0.99, true}}) {
      int best = -1;
      for (const Draft& draft : drafts) {
        const bool finishes = std::any_of(draft.finishes.begin(), draft.finishes.end(),
                                          [&, at = at, nearly = nearly](const Stretch& part) {
                                            return part.surface == static_cast<int>(s) && part.from <= at &&
                                                   part.to >= at && (nearly || !part.nearly);
                                          });
        if (!finishes) continue;
        if (best >= 0) {
          const Plane& other = problem.plane(best);
          const Plane& mine = problem.plane(draft.plane);
          if (rank(mine.kind) > rank(other.kind)) continue;
          if (rank(mine.kind) == rank(other.kind) && mine.width <= other.width) continue;
        }
        best = draft.plane;
      }
      if (best >= 0) wanted.insert(best);
    }
  }
  // The widest that has room to take the waste of an arc may be out for that.
  const std::vector<int> rebates = rebate_planes(problem);
  for (const Surface& arc : problem.surfaces) {
    if (!arc.arc) continue;
    const auto fits = std::find_if(rebates.begin(), rebates.end(), [&](int p) {
      return !waste_on_arc(problem, arc, problem.plane(p), (arc.lo + arc.hi) / 2).empty();
    });
    if (fits != rebates.end()) wanted.insert(*fits);
  }
  drafts.erase(std::remove_if(drafts.begin(), drafts.end(),
                              [&](const Draft& draft) { return wanted.count(draft.plane) == 0; }),
               drafts.end());
}

}  // namespace

namespace {

/// Soles side by side from the one whose middle is at u, on toward the open side, as long as they stand as
/// low as v; the last of them up against what stands in the way, if that gains anything.
std::vector<Pose> side_by_side(const Problem& problem, const Plane& plane, double tilt, double u, int open,
                               double v) {
  const double half = plane.width / 2;
  const Extent all = extent(problem.blank, tilt);
  std::vector<Pose> poses = {pose_at(tilt, u, v)};
  while (poses.size() < kMostPoses) {
    const bool more = open < 0 ? u - half > all.u0 + 1e-6 : u + half < all.u1 - 1e-6;
    if (!more) break;
    double next = u + open * plane.width;
    if (lowest(problem, plane, tilt, next) > v + 1e-6) {
      double low = 0, high = plane.width;
      while (high - low > 1e-7) {
        const double mid = (low + high) / 2;
        (lowest(problem, plane, tilt, u + open * mid) > v + 1e-6 ? high : low) = mid;
      }
      if (low < 0.01) break;
      for (const Surface& s : problem.surfaces) {
        // Stand exactly against the wall found.
        const double corner = dot(problem.edge(s).from, across(tilt));
        if (std::abs(corner - (u + open * (low + half))) < 1e-5) low = std::abs(corner - open * half - u);
      }
      next = u + open * low;
      poses.push_back(pose_at(tilt, next, v));
      break;
    }
    u = next;
    poses.push_back(pose_at(tilt, u, v));
  }
  return poses;
}

/// Whether the plane can be set so, as high as lowest() at least: so its sole is clear of the target.
bool allows(const Problem& problem, const Plane& plane, const Pose& pose) {
  if (plane.kind == PlaneKind::plough && !plough_allows(problem, plane, pose)) return false;
  if (plane.kind == PlaneKind::bench && !bench_allows(problem, plane, pose)) return false;
  return body_clears(problem.section.target, plane, pose);
}

}  // namespace

std::vector<Pose> flat_cut(const Problem& problem, const Plane& plane, double tilt, double wall_u, int open,
                           double floor_v) {
  const double half = plane.width / 2;
  const Extent all = extent(problem.blank, tilt);
  const double u = wall_u + open * half;
  if (u + half < all.u0 + 1e-6 || u - half > all.u1 - 1e-6) return {};
  // With nothing of the target under the sole the floor is the far side of the blank.
  const double v = std::max({floor_v, lowest(problem, plane, tilt, u), all.v0});
  if (v > all.v1 - 1e-4) return {};
  std::vector<Pose> poses = plane.kind == PlaneKind::plough ? std::vector{pose_at(tilt, u, v)}
                                                            : side_by_side(problem, plane, tilt, u, open, v);
  // Beside a corner of the blank a slanted sole soon passes over nothing.
  std::erase_if(poses, [&](const Pose& pose) { return !gouges(problem.blank, Sweep(plane, pose), 1e-4); });
  if (!std::all_of(poses.begin(), poses.end(),
                   [&](const Pose& pose) { return allows(problem, plane, pose); }))
    return {};
  return poses;
}

std::vector<Pose> grooves(const Problem& problem, const Plane& plough, double tilt, double wall_u, int open,
                          double floor_v) {
  const double u = wall_u + open * plough.width / 2;
  const double v = std::max(floor_v, lowest(problem, plough, tilt, u));
  std::vector<Pose> poses = side_by_side(problem, plough, tilt, u, open, v);
  std::erase_if(poses, [&](const Pose& pose) {
    return !gouges(problem.blank, Sweep(plough, pose), 1e-4) || !allows(problem, plough, pose);
  });
  return poses;
}

std::vector<Draft> flat_drafts(const Problem& problem) {
  std::vector<Draft> out;
  std::map<std::tuple<int, long, long, long, std::size_t>, bool> seen;
  auto add = [&](int plane, std::vector<Pose> poses) {
    if (poses.empty()) return;
    const Pose& first = poses.front();
    const auto key = std::make_tuple(plane, std::lround(first.at.x * 1e4), std::lround(first.at.y * 1e4),
                                     std::lround(wrap_degrees(first.tilt) * 1e4), poses.size());
    if (!seen.emplace(key, true).second) return;
    Draft draft;
    draft.plane = plane;
    draft.finishes = finished_by(problem, problem.plane(plane), poses);
    draft.poses = std::move(poses);
    // Slanted cuts are laid out by the two lines their sole ends in, so the sole has to make one of the
    // flats.
    const double tilt = draft.poses.front().tilt;
    const bool slanted = !is_square(tilt);
    const bool by_sole = std::any_of(draft.finishes.begin(), draft.finishes.end(), [&](const Stretch& s) {
      return std::abs(wrap_degrees(problem.surfaces[static_cast<std::size_t>(s.surface)].tilt - tilt)) < 1e-6;
    });
    if (!slanted || by_sole) out.push_back(std::move(draft));
  };
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    const Plane& plane = problem.plane(p);
    if (!plane.is_flat() || !problem.uses(p)) continue;
    for (const double tilt : tilts_for(problem, plane)) {
      std::vector<double> corners;
      for (const Surface& s : problem.surfaces) {
        corners.push_back(dot(problem.edge(s).from, across(tilt)));
        corners.push_back(dot(problem.edge(s).to, across(tilt)));
      }
      for (const Surface& s : problem.surfaces) {
        // A flat shorter than the sole: the sole laid over its middle.
        if (s.arc || std::abs(wrap_degrees(s.tilt - tilt)) > 1e-7) continue;
        const double u = dot(point_at(problem.edge(s), 0.5), across(tilt));
        const double v = dot(problem.edge(s).from, outward(tilt));
        if (length(problem.edge(s)) <= plane.width && lowest(problem, plane, tilt, u) < v + 1e-6)
          for (const int open : {-1, 1})
            add(p, flat_cut(problem, plane, tilt, u - open * plane.width / 2, open, v));
      }
      if (plane.kind == PlaneKind::plough) {
        // A flat wider than the iron: groove beside groove from either end, each with its own setting.
        constexpr int kMostGrooves = 12;
        for (const Surface& s : problem.surfaces) {
          if (s.arc || std::abs(wrap_degrees(s.tilt - tilt)) > 1e-7) continue;
          const double a = dot(problem.edge(s).from, across(tilt));
          const double b = dot(problem.edge(s).to, across(tilt));
          for (int i = 1; i < kMostGrooves && i * plane.width < std::abs(b - a) - 1e-6; ++i) {
            add(p, flat_cut(problem, plane, tilt, std::min(a, b) + i * plane.width, 1, -1e9));
            add(p, flat_cut(problem, plane, tilt, std::max(a, b) - i * plane.width, -1, -1e9));
          }
        }
      }
      for (const double corner : corners) {
        add(p, flat_cut(problem, plane, tilt, corner, -1, -1e9));
        add(p, flat_cut(problem, plane, tilt, corner, 1, -1e9));
      }
    }
  }
  keep_widest(problem, out);
  join_alike(problem, out);
  return out;
}

}  // namespace arrisline
