// Rules 1 to 5 of docs/model.md and the stated figures, on exact regions.
#include "referee/judge.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>

#include "referee/margins.h"

namespace arrisline::referee {

void Judge::at_most(const std::string& what, double value, double limit, double margin) {
  const std::string text = what + " " + shown(value) + ", limit " + shown(limit);
  if (value > limit + margin)
    out_.broken.push_back(text);
  else if (value > limit - margin)
    out_.near.push_back(text);
}

void Judge::close(const std::string& what, double stated, double found, double allowed, double margin) {
  at_most("stated: " + what + " " + shown(stated) + ", found " + shown(found) + ", off",
          std::abs(stated - found), allowed, margin);
}

void Judge::area(const std::string& what, double stated, double found) {
  close(what, stated, found, 0.01 * found + 0.05, kAreaMargin + 0.0005 * found);
}

void Judge::holds(const std::string& what, bool strictly, bool loosely) {
  if (strictly) return;
  (loosely ? out_.near : out_.broken).push_back(what);
}

void Judge::forget() {
  targets_.clear();
  states_.clear();
  gouges_.clear();
  thicknesses_.clear();
}

static void put(std::string& key, double value) {
  char bytes[sizeof value];
  std::memcpy(bytes, &value, sizeof value);
  key.append(bytes, sizeof value);
}

static void put(std::string& key, const std::vector<Edge>& edges) {
  for (const Edge& e : edges)
    for (const double value : {e.from.x, e.from.y, e.to.x, e.to.y, e.centre.x, e.centre.y, double(e.turn)})
      put(key, value);
}

static void put(std::string& key, const StatedPlane& plane, const StatedPose& pose) {
  key += plane.kind;
  for (const double value : {plane.width, plane.radius, pose.at.x, pose.at.y, pose.tilt}) put(key, value);
  put(key, plane.sole);
}

static std::vector<Edge> rectangle(Point low, Point high) {
  const Point b{high.x, low.y}, d{low.x, high.y};
  return {{low, b, {}, Turn::straight},
          {b, high, {}, Turn::straight},
          {high, d, {}, Turn::straight},
          {d, low, {}, Turn::straight}};
}

// Sole and sides, open above.
static std::vector<Edge> swept_of(const StatedPlane& plane, const StatedPose& pose, double far) {
  std::vector<Edge> out = sole_of(plane, pose);
  const Point left = out.front().from, right = out.back().to, up = far * outward_of(pose);
  out.push_back({right, right + up, {}, Turn::straight});
  out.push_back({left + up, left, {}, Turn::straight});
  return out;
}

static std::vector<Edge> closed(std::vector<Edge> swept) {
  const Edge left = swept.back();
  swept.back() = {swept[swept.size() - 2].to, left.from, {}, Turn::straight};
  swept.push_back(left);
  return swept;
}

const Judge::State& Judge::blank(const Stated& plan, Key& key) {
  key = "";
  put(key, plan.width);
  put(key, plan.thickness);
  const auto known = states_.find(key);
  if (known != states_.end()) return known->second;
  State state;
  state.wood = *Region::inside(rectangle({0, 0}, {plan.width, plan.thickness}));
  state.area = state.wood.area();
  return states_.emplace(key, state).first->second;
}

const Judge::State& Judge::after(const State& before, const StatedPlane& plane, const StatedPose& pose,
                                 double far, Key& key) {
  put(key, plane, pose);
  const auto known = states_.find(key);
  if (known != states_.end()) return known->second;
  State state = before;
  if (const auto region = Region::inside(closed(swept_of(plane, pose, far)))) {
    state.wood = before.wood.less(*region);
    state.area = state.wood.area();
  } else {
    out_.broken.push_back("a sole crosses itself");
  }
  return states_.emplace(key, state).first->second;
}

double Judge::gouge(const Stated& plan, const StatedPlane& plane, const StatedPose& pose, double far) {
  Key key = target_key_;
  put(key, plane, pose);
  const auto known = gouges_.find(key);
  if (known != gouges_.end()) return known->second;
  const std::vector<Edge> swept = swept_of(plane, pose, far);
  double depth = 0;
  if (const auto region = Region::inside(closed(swept)))
    depth = depth_in(target_->common(*region), plan.target, swept);
  return gouges_.emplace(key, depth).first->second;
}

double Judge::thickness(const State& wood, const Stated& plan, const Key& key) {
  const Key whole = target_key_ + key;
  const auto known = thicknesses_.find(whole);
  if (known != thicknesses_.end()) return known->second;
  const double thickest = thickest_in(wood.wood.less(*target_), plan.target);
  return thicknesses_.emplace(whole, thickest).first->second;
}

void Judge::judge_body(const Stated& plan, std::size_t cut, const StatedPose& pose, const State& wood,
                       double far) {
  const StatedPlane& plane = plan.cuts[cut].plane;
  if (!plane.has_body) return;
  const auto meets = [&](double slack) {
    if (plane.overhang <= slack) return 0.0;
    double sum = 0;
    for (const double side : {-1.0, 1.0}) {
      const double inner = side * plane.width / 2, outer = side * (plane.width / 2 + plane.overhang - slack);
      const Point a = from_frame(pose, inner, plane.above + slack),
                  b = from_frame(pose, outer, plane.above + slack);
      const Point up = far * outward_of(pose);
      const auto body = Region::inside({{a, b, {}, Turn::straight},
                                        {b, b + up, {}, Turn::straight},
                                        {b + up, a + up, {}, Turn::straight},
                                        {a + up, a, {}, Turn::straight}});
      if (body) sum += wood.wood.common(*body).area();
    }
    return sum;
  };
  constexpr double kSlack = 0.01, kArea = 1e-6;  // what rule 1 allows the sole
  holds(of_cut(cut, "rule 1: the body meets wood"), meets(kSlack - kDepthMargin) <= kArea,
        meets(kSlack + kDepthMargin) <= kArea);
}

void Judge::judge_arcs(const Stated& plan, double limit) {
  for (const Edge& arc : plan.target) {
    if (!arc.is_arc()) continue;
    // With the wood to the left an arc turning left is a bead.
    const std::string fits = arc.turn == Turn::left ? "hollow" : "round";
    std::vector<Edge> soles;
    for (const StatedCut& cut : plan.cuts)
      if (cut.plane.kind == fits || cut.plane.kind == "shaped")
        for (const StatedPose& pose : cut.poses)
          for (const Edge& edge : sole_of(cut.plane, pose)) soles.push_back(edge);
    const auto share = [&](double within) {
      std::vector<Edge> parts{arc};
      for (int k = 0; k < 8; ++k) {
        std::vector<Edge> halves;
        for (const Edge& part : parts) {
          halves.push_back(first_half(part));
          halves.push_back(second_half(part));
        }
        parts = std::move(halves);
      }
      int near = 0;
      for (const Edge& part : parts) near += off_outline(part.from, soles) <= within ? 1 : 0;
      return static_cast<double>(near) / static_cast<double>(parts.size());
    };
    const bool curved = share(limit - kHeightMargin) >= 0.5 + kShareMargin;
    const bool hardly = share(limit + kHeightMargin) >= 0.5 - kShareMargin;
    if (curved) continue;
    if (plan.facets == 0) {
      holds("rule 3: an arc is not finished by a curved sole", curved, hardly);
      continue;
    }
    std::vector<double> tilts;
    for (const StatedCut& cut : plan.cuts) {
      if (!cut.plane.flat()) continue;
      for (const StatedPose& pose : cut.poses) {
        const double r = distance(arc.centre, arc.from);
        const Point at = arc.centre + (arc.turn == Turn::left ? r : -r) * outward_of(pose);
        if (off_edge(at, arc) > kRounding || distance(at, arc.from) < 0.05 || distance(at, arc.to) < 0.05 ||
            off_outline(at, sole_of(cut.plane, pose)) > limit)
          continue;
        if (std::none_of(tilts.begin(), tilts.end(),
                         [&](double t) { return degrees_between(t, pose.tilt) < 0.5; }))
          tilts.push_back(pose.tilt);
      }
    }
    const bool few = static_cast<int>(tilts.size()) <= plan.facets;
    holds("rule 3: more facets on an arc than stated", few, few || hardly);
  }
}

static double far_from(const Stated& plan, const StatedPose& pose) {
  return norm(pose.at - Point{plan.width / 2, plan.thickness / 2}) + plan.width + plan.thickness;
}

static double beyond(const Stated& plan) {
  double far = 0;
  for (const StatedCut& cut : plan.cuts)
    for (const auto* poses : {&cut.poses, &cut.set})
      for (const StatedPose& pose : *poses) far = std::max(far, far_from(plan, pose) + cut.plane.width);
  return far;
}

void Judge::judge_as_set(const Stated& plan, Found& found) {
  if (!plan.has_set) return;
  const double far = beyond(plan);
  Key key;
  const State* wood = &blank(plan, key);
  double deepest = 0;
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
    const StatedCut& cut = plan.cuts[i];
    for (std::size_t k = 0; k < cut.set.size(); ++k) {
      const StatedPose &pose = cut.set[k], &exact = cut.poses[k];
      if (cut.plane.curved())
        at_most(of_cut(i, "set: a hollow or round is not gauged, but set aside by"),
                distance(pose.at, exact.at) + degrees_between(pose.tilt, exact.tilt), kRounding,
                kRounding / 10);
      deepest = std::max(deepest, gouge(plan, cut.plane, pose, far));
      wood = &after(*wood, cut.plane, pose, far, key);
    }
  }
  found.as_set_height = thickness(*wood, plan, key);
  found.as_set_gouge = deepest;
  close("as set, thickest left", plan.as_set_height, found.as_set_height, 0.01, kStatedHeightMargin);
  close("as set, deepest gouge", plan.as_set_gouge, deepest, 0.01, kStatedHeightMargin);
}

Judgement Judge::judge(const std::string& text, double tolerance, double scrape) {
  out_ = {};
  std::optional<Stated> plan = read_stated(text, out_);
  if (!plan) return out_;
  target_key_ = "";
  put(target_key_, plan->target);
  const auto known = targets_.find(target_key_);
  target_ = known != targets_.end() ? known->second : Region::inside(plan->target);
  targets_[target_key_] = target_;
  if (target_) {
    plan->target = inside_to_the_left(plan->target);
    judge_wood(*plan, tolerance, scrape);
  } else {
    out_.broken.push_back("form: the target crosses itself");
  }
  return out_;
}

void Judge::judge_wood(const Stated& plan, double tolerance, double scrape) {
  double outside = 0;
  for (const auto& loop : target_->loops())
    for (const Edge& edge : loop)
      for (const Point p : {edge.from, middle_of(edge)})
        outside = std::max({outside, -p.x, -p.y, p.x - plan.width, p.y - plan.thickness});
  // An arc whose ends are off its radius by as little as they may be bulges by some 1e-6 mm.
  holds("form: the target leaves the stock by " + shown(outside), outside <= 1e-6, outside <= 1e-5);

  Found found;
  const double far = beyond(plan);
  Key key;
  const State* wood = &blank(plan, key);
  found.waste = wood->area - target_->area();
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
    const StatedCut& cut = plan.cuts[i];
    const double before = wood->area;
    std::optional<double> imbalance;
    double removed = 0;
    if (cut.plane.kind == "scraper") {
      if (i + 1 < plan.cuts.size())
        out_.broken.push_back(of_cut(i, "rule 5: a scraper comes before a plane"));
      removed = wood->wood.less(*target_).area();
    } else {
      if (cut.plane.curved())
        imbalance = judge_riding(plan, i, *wood);
      else
        judge_register(plan, i, *wood);
      judge_lying(plan, i);
      for (const StatedPose& pose : cut.poses) {
        at_most(of_cut(i, "rule 1: depth"), gouge(plan, cut.plane, pose, far), 0.01, kDepthMargin);
        wood = &after(*wood, cut.plane, pose, far, key);
        judge_body(plan, i, pose, *wood, far);
      }
      removed = before - wood->area;
    }
    if (cut.plane.flat()) found.by_flat += removed;
    at_most(of_cut(i, "rule 2: short of 0.01 mm² by"), 0.01 - removed, 0, kNothingMargin);
    area(of_cut(i, "removed"), cut.removed, removed);
    found.removed.push_back(removed);
    found.imbalance.push_back(imbalance);
  }
  const bool scraped = !plan.cuts.empty() && plan.cuts.back().plane.kind == "scraper";
  if (plan.scrape != scraped)
    out_.broken.push_back("rule 3: `scrape` is not whether a scraper ends the plan");
  const double limit = scraped ? std::max(scrape, tolerance) : tolerance;
  found.max_height = thickness(*wood, plan, key);
  found.left_area = wood->wood.less(*target_).area();
  at_most("rule 3: thickness left", found.max_height, limit, kHeightMargin);
  at_most("rule 3: thickness stated", plan.max_height, limit, kHeightMargin);
  close("max_height", plan.max_height, found.max_height, 0.01, kStatedHeightMargin);
  area("left", plan.left_area, found.left_area);
  area("waste", plan.waste, found.waste);
  area("waste by flat soles", plan.by_flat, found.by_flat);
  at_most("stated: bound over effort by", plan.bound - plan.effort, 2 * kRounding, kRounding);
  judge_arcs(plan, limit);
  judge_as_set(plan, found);
  out_.found = std::move(found);
}

}  // namespace arrisline::referee
