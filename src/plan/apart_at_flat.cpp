// Shown by tests/plan/apart_test.cpp.
#include "plan/apart_at_flat.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "section/walk.h"

namespace arrisline {

namespace {

/// mm²; less than this of a floor is what rounding leaves beside a sole that stands against a wall or an
/// arc's foot: under 0.01 mm of it.
constexpr double kSliver = 0.1;

/// The edges from one place of the blank's outline to another, in their order round the target.
Path chain_of(const Section& section) {
  const std::size_t n = section.target.size();
  const auto inside = [&](std::size_t i) {
    return !runs_along_outline(section.width, section.thickness, section.target[i % n]);
  };
  Path out;
  for (std::size_t i = 0; i < n; ++i) {
    if (!inside(i) || inside(i + n - 1)) continue;
    if (!out.edges.empty()) return {};
    for (; inside(i + out.edges.size());) {
      const std::size_t at = (i + out.edges.size()) % n;
      out.edges.push_back(section.target[at]);
      out.source.push_back(section.source[at]);
    }
  }
  return out;
}

bool is_level(const Edge& edge) {
  return !edge.is_arc() && std::abs(edge.from.y - edge.to.y) < kExact;
}

/// Neither level nor upright.
bool is_shaped(const Edge& edge) {
  return edge.is_arc() || (!is_level(edge) && std::abs(edge.from.x - edge.to.x) >= kExact);
}

/// A level flat of a chain, seen so that the chain goes on toward greater x and the wood lies at greater y,
/// whether it is of the face or of the underside.
struct Flat {
  const Path& chain;
  std::size_t at;

  const Edge& edge() const { return chain.edges[at]; }
  double sign() const { return edge().to.x > edge().from.x ? 1 : -1; }
  Reach reach(std::size_t i) const {
    const Reach r = reach_of(chain.edges[i]);
    return sign() > 0 ? r : Reach{-1 * r.high, -1 * r.low};
  }
  int shaped(std::size_t first, std::size_t end) const {
    int out = 0;
    for (std::size_t i = first; i < end; ++i)
      out += chain.source[i] >= 0 && is_shaped(chain.edges[i]) ? 1 : 0;
    return out;
  }
  bool has_arc(std::size_t first, std::size_t end) const {
    for (std::size_t i = first; i < end; ++i)
      if (chain.source[i] >= 0 && chain.edges[i].is_arc()) return true;
    return false;
  }

  /// All else lies before one end of the flat or past the other, and there is enough of it on both sides.
  bool parts(int least_shaped) const {
    const std::size_t n = chain.edges.size();
    if (chain.source[at] < 0 || !is_level(edge())) return false;
    if (!has_arc(0, at) || !has_arc(at + 1, n) || shaped(0, n) < least_shaped) return false;
    for (std::size_t i = 0; i < at; ++i)
      if (reach(i).high.x > sign() * edge().from.x + kExact) return false;
    for (std::size_t i = at + 1; i < n; ++i)
      if (reach(i).low.x < sign() * edge().to.x - kExact) return false;
    return true;
  }

  /// Where what lies past the flat, or before it, first rises above it.
  std::optional<double> wall(bool past) const {
    std::optional<double> out;
    const double level = sign() * edge().from.y;
    for (std::size_t i = past ? at + 1 : 0; i < (past ? chain.edges.size() : at); ++i) {
      const Reach r = reach(i);
      if (r.low.y > level - kExact) continue;
      const double x =
          past ? std::max(r.low.x, sign() * edge().to.x) : std::min(r.high.x, sign() * edge().from.x);
      if (!out || (past ? x < *out : x > *out)) out = x;
    }
    return out ? std::optional(sign() * *out) : std::nullopt;
  }
};

/// The section with only what lies on one side of the flat, and the flat itself.
Section side_of(const Section& section, const Flat& flat, bool past) {
  Path out;
  const auto go = [&](Point from, Point to) {
    if (distance(from, to) < kExact) return;
    out.edges.push_back({from, to, {}, Turn::straight});
    out.source.push_back(-1);
  };
  const auto keep = [&](std::size_t i) {
    out.edges.push_back(flat.chain.edges[i]);
    out.source.push_back(flat.chain.source[i]);
  };
  // What is left out lies past the flat where its other side is kept.
  const std::optional<double> wall = flat.wall(!past);
  const Point end = past ? flat.edge().from : flat.edge().to;
  const bool to_back = (flat.sign() > 0) != past;
  const double outer = flat.sign() > 0 ? 0 : section.thickness;
  Point corner = {wall ? *wall : to_back ? section.width : 0, end.y};
  if (std::abs(corner.x - end.x) < kExact) corner = end;
  const Point top = {corner.x, wall ? outer : corner.y};
  if (past) {
    go(top, corner);
    go(corner, end);
    for (std::size_t i = flat.at; i < flat.chain.edges.size(); ++i) keep(i);
  } else {
    for (std::size_t i = 0; i <= flat.at; ++i) keep(i);
    go(end, corner);
    go(corner, top);
  }
  follow_outline(section.width, section.thickness, out.edges.front().from, out);
  close_outline(out.edges);
  Section side = section;
  side.target = std::move(out.edges);
  side.source = std::move(out.source);
  return side;
}

/// One floor made with one plane, and neither waits for a curve that the other comes before. A plough is set
/// anew for each of its grooves.
bool on_one_floor(const Problem& problem, const Draft& a, const Draft& b) {
  const Plane& plane = problem.plane(a.plane);
  if (a.plane != b.plane || a.late != b.late) return false;
  if (!plane.is_flat() || plane.kind == PlaneKind::plough) return false;
  const Pose& p = a.poses.front();
  const Pose& q = b.poses.front();
  return std::abs(wrap_degrees(p.tilt - q.tilt)) < 1e-6 &&
         std::abs(dot(p.at - q.at, outward(p.tilt))) < kExact;
}

/// Adds the cut's poses and what it finishes to the other's.
void join(const Problem& problem, const Draft& from, Draft& into) {
  std::vector<Pose> poses = std::move(into.poses);
  poses.insert(poses.end(), from.poses.begin(), from.poses.end());
  into.poses.clear();
  into.otherwise.clear();
  into.finishes.insert(into.finishes.end(), from.finishes.begin(), from.finishes.end());
  Wood wood(problem.blank);
  for (const Pose& pose : poses) {
    if (wood.cut(Sweep(problem.plane(into.plane), pose)) >= kSliver) into.poses.push_back(pose);
  }
}

}  // namespace

std::vector<Section> sides_of_flat(const Problem& problem, int least_shaped) {
  const std::vector<int> rebates = rebate_planes(problem);
  if (rebates.empty()) return {};
  const Path chain = chain_of(problem.section);
  double longest = problem.plane(rebates.back()).width;
  std::optional<std::size_t> at;
  for (std::size_t i = 0; i < chain.edges.size(); ++i) {
    const double long_as = length(chain.edges[i]);
    if (long_as < longest || !Flat{chain, i}.parts(least_shaped)) continue;
    longest = long_as;
    at = i;
  }
  if (!at) return {};
  const Flat flat{chain, *at};
  return {side_of(problem.section, flat, false), side_of(problem.section, flat, true)};
}

std::vector<Draft> with_floors_joined(const Problem& problem, const std::vector<std::vector<Draft>>& sides) {
  std::vector<Draft> all;
  for (const std::vector<Draft>& side : sides) {
    const std::size_t before = all.size();
    for (const Draft& draft : side) {
      const auto end = all.begin() + static_cast<std::ptrdiff_t>(before);
      const auto same = std::find_if(all.begin(), end,
                                     [&](const Draft& other) { return on_one_floor(problem, other, draft); });
      if (same == end)
        all.push_back(draft);
      else
        join(problem, draft, *same);
    }
  }
  std::vector<Draft> out;
  Wood wood(problem.blank);
  for (Draft& draft : all) {
    const double had = wood.area();
    cut_all(problem, {draft}, wood);
    if (had - wood.area() >= kLeastCut) out.push_back(std::move(draft));
  }
  return out;
}

}  // namespace arrisline
