// Dynamic programming over which cuts are done and which came last. The wood depends only on the cuts
// done, so it is kept once for each set. Shown by tests/plan/sequence_test.cpp.
#include "plan/sequence.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <queue>

#include "plan/rails.h"

namespace arrisline {

namespace {

constexpr double kDeep = 3;  // mm of thickness from which a curved plane's strokes count more
constexpr double kDeepFactor = 3;
constexpr double kSlantFactor = 2;         // a slanted flat has only its lines to guide it, so it goes slowly
constexpr double kOwnArc = 10;             // degrees of its own arc that guide a sole
constexpr std::ptrdiff_t kFreeCurves = 5;  // curved drafts up to which every order of theirs is tried
constexpr std::size_t kMostDrafts = 60;    // the sets of cuts done are kept as bits of one word
constexpr std::size_t kAllOrders = 9;      // drafts up to which every order is tried

bool same_figure(const GaugeLine& a, const GaugeLine& b) {
  return a.from == b.from && std::abs(a.at - b.at) < 1e-6;
}

/// Degrees of the arc that the sole at `tilt` shares with earlier cuts of the same plane on it.
bool rides_in_own_arc(const Problem& problem, const Draft& draft, double tilt,
                      const std::vector<const Draft*>& done) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(draft.arc)];
  const Plane& plane = problem.plane(draft.plane);
  if (std::abs(plane.radius - radius(problem.edge(arc))) > kSameCircle) return false;
  const double beta = to_degrees(plane.half_arc());
  for (const Draft* other : done) {
    if (other->arc < 0) continue;
    const Surface& its = problem.surfaces[static_cast<std::size_t>(other->arc)];
    const Plane& its_plane = problem.plane(other->plane);
    if (distance(problem.edge(its).centre, problem.edge(arc).centre) > kSameCircle ||
        std::abs(its_plane.radius - plane.radius) > kSameCircle)
      continue;
    for (const Pose& pose : other->poses) {
      const double its_beta = to_degrees(its_plane.half_arc());
      const double low = std::max({tilt - beta, pose.tilt - its_beta, its.lo});
      const double high = std::min({tilt + beta, pose.tilt + its_beta, its.hi});
      if (high - low >= kOwnArc + 0.1) return true;
    }
  }
  return false;
}

/// The poses of a curved draft reordered to begin at `start` and turn outward from it.
std::vector<Pose> poses_from(const Problem& problem, const Draft& draft, double start) {
  std::vector<Pose> poses = draft.poses;
  const Pose first = start_pose(problem, draft, start);
  const bool extra = std::none_of(poses.begin(), poses.end(), [&](const Pose& pose) {
    return std::abs(pose.tilt - start) < 1e-6 && distance(pose.at, first.at) < 1e-6;
  });
  if (extra) poses.push_back(first);
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(draft.arc)];
  const Plane& plane = problem.plane(draft.plane);
  std::stable_sort(poses.begin(), poses.end(), [&](const Pose& a, const Pose& b) {
    const double at_a = contact_of(problem, arc, plane, a), at_b = contact_of(problem, arc, plane, b);
    const double from_a = std::abs(at_a - start), from_b = std::abs(at_b - start);
    if (std::abs(from_a - from_b) > 1e-6) return from_a < from_b;
    // Square to the arc before leaning on about the sole's own centre.
    return std::abs(a.tilt - at_a) < std::abs(b.tilt - at_b) - 1e-6;
  });
  return poses;
}

double step_effort(const Shop& shop, const Step& step, const Step* previous) {
  double effort =
      shop.weight_cut + shop.weight_setting * step.settings + shop.weight_stroke * step.strokes.counted;
  effort += shop.weight_wear * step.wear;
  if (previous == nullptr || previous->draft.plane != step.draft.plane) effort += shop.weight_change;
  // Turning the blank over or end for end is a change like taking up another plane.
  if (step.lies != (previous == nullptr ? Lies::face_up : previous->lies)) effort += shop.weight_change;
  return effort;
}

void count_settings(Step& step, const Step* previous) {
  step.settings = 0;
  for (const GaugeLine& line : step.laid_out.lines) {
    const bool set =
        previous != nullptr && std::any_of(previous->laid_out.lines.begin(), previous->laid_out.lines.end(),
                                           [&](const GaugeLine& other) { return same_figure(line, other); });
    if (!set) ++step.settings;
  }
}

/// A small preference that settles ties: flats before curves, from the back wall outward, upright before
/// leaning.
double tie_break(const Problem& problem, const Draft& draft, std::size_t position) {
  const Pose& pose = draft.poses.front();
  const double inward = pose.at.x / (problem.section.width + 1);
  const double later = (draft.arc >= 0 ? 1 : 0) + (std::abs(wrap_degrees(pose.tilt)) > 1e-6 ? 0.01 : 0);
  return 1e-5 * static_cast<double>(position) * (inward - later);
}

}  // namespace

Strokes strokes_of(const Problem& problem, const Plane& plane, const Pose& pose, const Wood& wood) {
  const double thick = std::max(0.0, rest_height(wood.edges(), Sweep(plane, pose)));
  const Shop& shop = problem.kit.shop;
  if (plane.is_flat()) {
    const double strokes = thick / shop.shaving_rebate;
    const bool slanted = !is_square(pose.tilt);
    return {strokes, slanted ? kSlantFactor * strokes : strokes};
  }
  const double deep = plane.is_curved() ? std::max(0.0, thick - kDeep) : 0;
  return {thick / shop.shaving_curved, (thick + (kDeepFactor - 1) * deep) / shop.shaving_curved};
}

std::optional<Step> take(const Problem& problem, const Draft& draft, const std::vector<const Draft*>& done,
                         const Step* previous, Wood& wood) {
  Step step;
  step.draft = draft;
  const Plane& plane = problem.plane(draft.plane);
  if (plane.is_curved()) {
    if (const std::optional<Start> start = best_start(problem, draft, wood)) {
      step.draft.poses = poses_from(problem, draft, start->tilt);
      step.rides = Rides::two_arrises;
      step.guidance = start->guidance;
    } else {
      bool own = false;
      for (const Pose& pose : draft.poses) {
        own = rides_in_own_arc(problem, draft, pose.tilt, done);
        if (!own) continue;
        step.draft.poses = poses_from(problem, draft, pose.tilt);
        break;
      }
      if (!own) return std::nullopt;
      step.rides = Rides::own_arc;
    }
  } else if (plane.kind == PlaneKind::shaped) {
    step.rides = Rides::fence;
  }
  const std::optional<Lies> lies = lies_for(step.draft.poses);
  if (!lies) return std::nullopt;
  step.lies = *lies;
  const Wood before = wood;
  for (const Pose& pose : step.draft.poses) {
    const Strokes strokes = strokes_of(problem, plane, pose, wood);
    step.strokes.plain += strokes.plain;
    step.strokes.counted += strokes.counted;
    step.removed += wood.cut(Sweep(plane, pose));
    // Wood that a later pose takes is still there for the body at this one.
    if (!body_clears(wood.edges(), plane, pose)) return std::nullopt;
  }
  if (step.removed < kLeastCut) return std::nullopt;
  if (!plane.is_flat()) step.wear = step.removed / (plane.width * plane.width);
  if (plane.is_flat()) {
    step.laid_out = lay_out(problem, plane, step.draft.poses, before, wood);
    step.rides = plane.kind == PlaneKind::plough ? Rides::fence
                 : step.laid_out.on_wall         ? Rides::wall
                                                 : Rides::gauge_line;
  }
  if (!can_be_held(problem, plane, step.draft.poses, wood)) return std::nullopt;
  count_settings(step, previous);
  step.effort = step_effort(problem.kit.shop, step, previous);
  if (step.rides == Rides::two_arrises && !well_laid(step.guidance, plane)) step.effort += kIllLaid;
  return step;
}

namespace {

class Orders {
 public:
  using Done = unsigned long long;   // bit i: drafts_[i] is cut
  using Key = std::pair<Done, int>;  // cuts done, and which came last
  Orders(const Problem& problem, std::vector<Draft> drafts, bool all)
      : problem_(problem), drafts_(std::move(drafts)), all_(all) {
    free_curves_ = std::count_if(drafts_.begin(), drafts_.end(),
                                 [](const Draft& draft) { return draft.arc >= 0; }) <= kFreeCurves;
  }

  std::optional<Sequence> best() {
    const std::size_t n = drafts_.size();
    const Done full = (Done{1} << n) - 1;
    woods_.emplace(Done{0}, Wood(problem_.blank));
    // Cheapest way known to each (cuts done, last cut), explored in order of cost.
    using Node = std::pair<double, Key>;
    std::priority_queue<Node, std::vector<Node>, std::greater<>> open;
    std::map<Key, Reached> reached;
    open.push({0, {0, -1}});
    reached[{0, -1}] = {};
    while (!open.empty()) {
      const Node node = open.top();
      open.pop();
      const double cost = node.first;
      const Key key = node.second;
      Reached& here = reached[key];
      if (here.closed || cost > here.cost + 1e-12) continue;
      here.closed = true;
      if (key.first == full) return unwind(reached, key);
      const Step* previous = key.second < 0 ? nullptr : &here.step;
      std::vector<const Draft*> done;
      std::size_t count = 0;
      for (std::size_t i = 0; i < n; ++i) {
        if ((key.first >> i & 1) == 0) continue;
        done.push_back(&drafts_[i]);
        ++count;
      }
      for (std::size_t i = 0; i < n; ++i) {
        if ((key.first >> i & 1) != 0 || !allowed(key.first, i)) continue;
        const Done next_set = key.first | Done{1} << i;
        Wood wood = woods_.at(key.first);
        std::optional<Step> step = take(problem_, drafts_[i], done, previous, wood);
        if (!step) continue;
        woods_.emplace(next_set, std::move(wood));
        const double next_cost = cost + step->effort + tie_break(problem_, drafts_[i], count);
        const Key next{next_set, static_cast<int>(i)};
        auto [slot, fresh] = reached.try_emplace(next);
        if (!fresh && slot->second.cost <= next_cost) continue;
        slot->second = {next_cost, false, key, std::move(*step)};
        open.push({next_cost, next});
      }
    }
    return std::nullopt;
  }

 private:
  struct Reached {
    double cost = 0;
    bool closed = false;
    Key from{0, -1};
    Step step;
  };

  /// Without `all_`, a flat waits for the flats before it, and where there are many curves a curve for the
  /// curves before it.
  bool allowed(Done done, std::size_t i) const {
    const bool curved = drafts_[i].arc >= 0;
    if (all_ || (curved && free_curves_)) return true;
    for (std::size_t j = 0; j < i; ++j) {
      if ((drafts_[j].arc >= 0) == curved && (done >> j & 1) == 0) return false;
    }
    return true;
  }

  Sequence unwind(const std::map<Key, Reached>& reached, Key key) const {
    Sequence out;
    const Wood& wood = woods_.at(key.first);
    while (key.second >= 0) {
      const Reached& here = reached.at(key);
      out.steps.push_back(here.step);
      key = here.from;
    }
    std::reverse(out.steps.begin(), out.steps.end());
    for (const Step& step : out.steps) {
      out.effort += step.effort;
      out.imbalance += step.guidance.imbalance;
      if (problem_.plane(step.draft.plane).is_flat()) out.by_flat += step.removed;
    }
    out.left = thickest_left(wood, problem_.section.target);
    out.left_area = std::max(0.0, wood.area() - area(problem_.section.target));
    return out;
  }

  const Problem& problem_;
  std::vector<Draft> drafts_;
  bool all_;
  bool free_curves_ = true;
  std::map<Done, Wood> woods_;
};

}  // namespace

std::optional<Sequence> best_order(const Problem& problem, std::vector<Draft> drafts, bool thorough) {
  if (drafts.size() > kMostDrafts) return std::nullopt;
  std::stable_sort(drafts.begin(), drafts.end(), [&](const Draft& a, const Draft& b) {
    if ((a.arc < 0) != (b.arc < 0)) return a.arc < 0;
    if (a.plane != b.plane) return a.plane < b.plane;
    const bool a_square = is_square(a.poses.front().tilt);
    const bool b_square = is_square(b.poses.front().tilt);
    if (a_square != b_square) return a_square;
    // To a hundredth of a micron, so that rounding settles no order.
    const long long a_x = std::llround(a.poses.front().at.x * 1e5);
    const long long b_x = std::llround(b.poses.front().at.x * 1e5);
    if (a_x != b_x) return a_x > b_x;
    return std::abs(a.poses.front().tilt) < std::abs(b.poses.front().tilt) - 1e-6;
  });
  return Orders(problem, drafts, thorough && drafts.size() <= kAllOrders).best();
}

}  // namespace arrisline
