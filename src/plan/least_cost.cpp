// What some cuts must cost in any order. Shown by tests/plan/oracle_test.cpp.
#include <algorithm>
#include <cmath>
#include <set>

#include "plan/orders.h"

namespace arrisline {

namespace {

constexpr std::size_t kFewTurns = 12;  // starts by poses, of which each order is gone through

/// Every pose that the draft may take wood at, the places it may start at among them.
std::vector<Pose> all_poses(const Problem& problem, const Draft& draft) {
  std::vector<Pose> out = draft.poses;
  if (!problem.plane(draft.plane).is_curved()) return out;
  auto add = [&](double tilt) {
    const Pose pose = start_pose(problem, draft, tilt);
    if (std::none_of(out.begin(), out.end(), [&](const Pose& other) { return same_pose(other, pose); }))
      out.push_back(pose);
  };
  for (const Pose& pose : draft.poses) add(pose.tilt);
  for (const double start : draft.starts) add(start);
  return out;
}

/// Takes all that the draft may take. Returns how much, mm².
double cut_whole(const Problem& problem, const Draft& draft, Wood& wood) {
  double taken = 0;
  for (const Pose& pose : all_poses(problem, draft))
    taken += wood.cut(Sweep(problem.plane(draft.plane), pose));
  return taken;
}

}  // namespace

/// Least strokes and wear of one draft on this wood, over the tilts it may start at. Where it starts and
/// turns at many, somewhat less than that.
LeastCost::Worked LeastCost::worked_alone(const Draft& draft, const Wood& wood) const {
  const Plane& plane = problem_.plane(draft.plane);
  Worked out;
  auto work = [&](const std::vector<Pose>& poses) {
    Wood left = wood;
    Worked one;
    for (const Pose& pose : poses) {
      one.strokes += weighed(problem_.weights, strokes_of(problem_, plane, pose, left));
      one.taken += left.cut(Sweep(plane, pose));
    }
    return one;
  };
  if (plane.is_curved()) {
    const std::vector<Pose> starts = all_poses(problem_, draft);
    out.strokes = out.taken = std::numeric_limits<double>::infinity();
    if (starts.size() * draft.poses.size() <= kFewTurns) {
      for (const Pose& start : starts) {
        const Worked one = work(poses_from(problem_, draft, start.tilt));
        out.strokes = std::min(out.strokes, one.strokes);
        out.taken = std::min(out.taken, one.taken);
      }
    } else {
      // Wherever it starts, it takes all of this, and no stroke takes more than a shaving as wide as the
      // sole.
      out.taken = work(draft.poses).taken;
      for (const Pose& start : starts) {
        const Worked first = work({start});
        const double rest = std::max(0.0, out.taken - first.taken);
        const double strokes = rest / (plane.width * problem_.kit.shop.shaving_curved);
        out.strokes = std::min(out.strokes, first.strokes + weighed(problem_.weights, {strokes, strokes}));
      }
    }
  } else {
    out = work(draft.poses);
  }
  if (plane.is_flat()) out.taken = 0;
  out.width = plane.is_flat() ? 0 : plane.width;
  return out;
}

/// Strokes and wear of the drafts of one arc, whatever their order. Of several, or of one where it is to be
/// told quickly: the wear of all that they take, and the strokes of whichever pose comes first.
LeastCost::Worked LeastCost::worked_together(const Group& group, const Wood& others, bool quickly) const {
  std::vector<const Draft*> members;
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    if ((group.members >> i & 1) != 0) members.push_back(&drafts_[i]);
  }
  if (members.size() == 1 && (!quickly || is_flat(*members.front())))
    return worked_alone(*members.front(), others);
  Worked out;
  out.strokes = std::numeric_limits<double>::infinity();
  Wood left = others;
  for (const Draft* draft : members) {
    const Plane& plane = problem_.plane(draft->plane);
    if (!plane.is_flat()) out.width = std::max(out.width, plane.width);
    for (const Pose& pose : all_poses(problem_, *draft))
      out.strokes =
          std::min(out.strokes, weighed(problem_.weights, strokes_of(problem_, plane, pose, others)));
    for (const Pose& pose : draft->poses) left.cut(Sweep(plane, pose));
  }
  if (out.width > 0) out.taken = others.area() - left.area();
  return out;
}

/// The weight of what is worked. Of the wood that all soles that are not flat take between them, each takes
/// at least what no other can; the rest wears the widest least.
double LeastCost::weigh(const std::vector<Worked>& worked, double taken_in_all) const {
  double cost = 0;
  double taken = 0;
  double widest = 0;
  for (const Worked& one : worked) {
    cost += one.strokes;
    if (one.width <= 0) continue;
    cost += problem_.weights.wear * one.taken / (one.width * one.width);
    taken += one.taken;
    widest = std::max(widest, one.width);
  }
  if (widest > 0) cost += problem_.weights.wear * std::max(0.0, taken_in_all - taken) / (widest * widest);
  return cost;
}

/// How much of the blank the flat sole reaches, and what a mm² of it costs at the least: a stroke takes no
/// more than a shaving as wide as the sole is in the blank.
void LeastCost::reach_of(const Draft& draft, Share& share) const {
  const Plane& plane = problem_.plane(draft.plane);
  Wood blank(problem_.blank);
  share.area_in_blank = cut_whole(problem_, draft, blank);
  double width = 0;
  for (const Pose& pose : draft.poses) {
    const Sweep sweep(plane, pose);
    double low = sweep.half(), high = -sweep.half();
    const auto reach = [&](double u) {
      low = std::min(low, std::max(u, -sweep.half()));
      high = std::max(high, std::min(u, sweep.half()));
    };
    for (const Edge& edge : problem_.blank) {
      const double from = sweep.v(edge.from), to = sweep.v(edge.to);
      if (from >= 0) reach(sweep.u(edge.from));
      if ((from < 0) != (to < 0)) reach(sweep.u(edge.from + (from / (from - to)) * (edge.to - edge.from)));
    }
    width = std::max(width, high - low);
  }
  if (width <= 0) return;
  const double shaving = problem_.kit.shop.shaving_rebate;
  const double counted = is_square(draft.poses.front().tilt) ? 1 : problem_.kit.shop.weight_slant;
  share.cost_in_blank = weighed(problem_.weights, {1 / shaving, counted / shaving}) / width;
}

/// Gives the draft, the next of all, its share and its group.
void LeastCost::group(const Draft& draft) {
  std::size_t g = 0;
  while (g < groups_.size() && (draft.arc < 0 || arcs_[g] != draft.arc)) ++g;
  if (g == groups_.size()) {
    groups_.push_back({0, true, {}, Wood(problem_.blank)});
    arcs_.push_back(draft.arc);
  }
  groups_[g].members |= 1ULL << shares_.size();
  groups_[g].flat = groups_[g].flat && is_flat(draft);
  Share share;
  share.fixed = problem_.weights.cut;
  share.group = g;
  if (draft.starts.empty()) share.lies = lies_for(draft.poses);
  if (flats_left_ && is_flat(draft)) reach_of(draft, share);
  shares_.push_back(std::move(share));
}

/// What the group's drafts have to work on the wood that the others leave.
void LeastCost::share_work(std::size_t g) {
  Group& group = groups_[g];
  group.worked = worked_together(group, group.others, false);
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    if (shares_[i].group != g) continue;
    if (group.members == 1ULL << i) {
      shares_[i].worked = weigh({group.worked}, 0);
      continue;
    }
    Wood others = group.others;
    for (std::size_t j = 0; j < drafts_.size(); ++j) {
      if (j != i && shares_[j].group == g) cut_whole(problem_, drafts_[j], others);
    }
    shares_[i].worked = weigh({worked_alone(drafts_[i], others)}, 0);
  }
}

/// The figures each flat needs: the floor and the walls of a square one; of a slanted one only how many.
/// Without the wood that the walls have to stand on, no wall is certain.
void LeastCost::share_figures(const Wood* walls_of) {
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    const Plane& plane = problem_.plane(drafts_[i].plane);
    if (!plane.is_flat()) continue;
    shares_[i].fixed = problem_.weights.cut;
    shares_[i].figures.clear();
    if (!is_square(drafts_[i].poses.front().tilt)) {
      shares_[i].fixed += problem_.weights.setting * (walls_of == nullptr ? 1 : slanted_settings(i));
      continue;
    }
    for (const GaugeLine& line : certain_lines(problem_, plane, drafts_[i].poses, walls_of)) {
      // A wall that another draft also stands at may be there before.
      bool shared = false;
      for (std::size_t j = 0; j < drafts_.size() && !shares_[i].figures.empty() && !shared; ++j) {
        if (j == i || (orders_ == OrderOf::flats_first && !is_flat(drafts_[j]))) continue;
        shared = stands_at(problem_, problem_.plane(drafts_[j].plane), drafts_[j].poses, line);
      }
      if (!shared) shares_[i].figures.push_back(line);
    }
  }
}

/// What the flats must work beyond what each has to work in any case. Wood that several of them could take is
/// taken by one, and a stroke takes no more than a shaving as wide as the sole is in the blank. The cheapest
/// take as much of it as they reach.
double LeastCost::shared_work() const {
  struct Room {
    double cost;  // of a mm²
    double area;
  };
  std::vector<Room> rooms;
  double open = area(problem_.blank) - flats_left_->area();
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    if (!groups_[g].flat) continue;
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if (shares_[i].group != g) continue;
      if (groups_[g].members != 1ULL << i) return 0;
      const double cost = shares_[i].cost_in_blank, most = shares_[i].area_in_blank;
      const double sure = cost > 0 ? std::min(most, groups_[g].worked.strokes / cost) : most;
      open -= sure;
      rooms.push_back({cost, most - sure});
    }
  }
  std::sort(rooms.begin(), rooms.end(), [](const Room& a, const Room& b) { return a.cost < b.cost; });
  double work = 0;
  for (const Room& room : rooms) {
    if (open <= 0) break;
    work += room.cost * std::min(open, room.area);
    open -= room.area;
  }
  return work;
}

void LeastCost::sum_up() {
  total_ = remaining(0, nullptr);
  if (flats_left_ && orders_ == OrderOf::flats_first) total_ += shared_work();
  std::set<int> planes;
  for (const Draft& draft : drafts_) planes.insert(draft.plane);
  planes_ = problem_.weights.plane * static_cast<double>(planes.size());
}

LeastCost::LeastCost(const Problem& problem, const std::vector<Draft>& drafts)
    : problem_(problem), drafts_(drafts) {
  for (const Draft& draft : drafts_) group(draft);
  share_figures(nullptr);
  sum_up();
}

LeastCost::LeastCost(const Problem& problem, const std::vector<Draft>& drafts, OrderOf orders)
    : problem_(problem), drafts_(drafts), orders_(orders), flats_left_(problem.blank) {
  for (const Draft& draft : drafts_) group(draft);
  for (const Draft& draft : drafts_) {
    if (is_flat(draft)) cut_whole(problem, draft, *flats_left_);
  }
  // Only what is taken in any case: where a cut starts is not known.
  finished_ = *flats_left_;
  for (const Draft& draft : drafts_) {
    if (!is_flat(draft)) cut_all(problem, {draft}, *finished_);
  }
  for (std::size_t i = 0; i < drafts_.size(); ++i) {
    double& width = groups_[shares_[i].group].worked.width;
    if (!is_flat(drafts_[i])) width = std::max(width, problem.plane(drafts_[i].plane).width);
  }
  share_figures(orders == OrderOf::flats_first ? &*flats_left_ : nullptr);
  sum_up();
}

void LeastCost::work_out() {
  for (const bool flat : {true, false}) {
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if (is_flat(drafts_[i]) != flat) continue;
      for (std::size_t g = 0; g < groups_.size(); ++g) {
        const bool before = flat || orders_ == OrderOf::any || !groups_[g].flat;
        if (g != shares_[i].group && before) cut_whole(problem_, drafts_[i], groups_[g].others);
      }
    }
  }
  for (std::size_t g = 0; g < groups_.size(); ++g) share_work(g);
  sum_up();
}

std::optional<LeastCost> LeastCost::with(const Draft& extra, double cutoff) const {
  Wood flats_left = *flats_left_;
  if (cut_whole(problem_, extra, flats_left) <= kLeastCut) return std::nullopt;
  LeastCost out = *this;
  out.flats_left_ = std::move(flats_left);
  // From the quickest told to the nearest.
  const std::vector<std::size_t> touched = out.put_last(extra);
  const auto too_much = [&] {
    out.sum_up();
    return out.total() >= cutoff;
  };
  if (too_much()) return std::nullopt;
  for (const std::size_t g : touched) {
    Group& group = out.groups_[g];
    group.worked = out.worked_together(group, group.others, true);
    if (too_much()) return std::nullopt;
  }
  for (const std::size_t g : touched) {
    out.share_work(g);
    if (too_much()) return std::nullopt;
  }
  return out;
}

/// Returns the groups that find less than before, whose work is now told only at the least.
std::vector<std::size_t> LeastCost::put_last(const Draft& extra) {
  Wood before = *flats_left_;
  for (const Draft& draft : drafts_) {
    if (orders_ == OrderOf::any && !is_flat(draft)) cut_whole(problem_, draft, before);
  }
  std::vector<std::size_t> touched;
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    const double taken = cut_whole(problem_, extra, groups_[g].others);
    if (taken <= 0) continue;
    Worked& worked = groups_[g].worked;
    worked.strokes = 0;
    worked.taken = std::max(0.0, worked.taken - taken);
    touched.push_back(g);
  }
  group(extra);
  drafts_.push_back(extra);
  groups_.back().others = std::move(before);
  share_work(groups_.size() - 1);
  cut_whole(problem_, extra, *finished_);
  share_figures(orders_ == OrderOf::flats_first ? &*flats_left_ : nullptr);
  return touched;
}

/// Figures that a slanted flat has to set: both its lines, or one where the cut before may have used the
/// other. Where two slanted flats cross neither can end in the other's line: the one cut first runs on
/// beyond.
double LeastCost::slanted_settings(std::size_t i) const {
  auto lines_without = [&](std::size_t of, std::size_t without) {
    std::vector<Draft> others = drafts_;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(std::max(of, without)));
    if (of != without) others.erase(others.begin() + static_cast<std::ptrdiff_t>(std::min(of, without)));
    return possible_lines(problem_, drafts_[of], others);
  };
  const std::vector<GaugeLine> mine = lines_without(i, i);
  for (std::size_t j = 0; j < drafts_.size(); ++j) {
    if (j == i || !is_flat(drafts_[j])) continue;
    if (is_square(drafts_[j].poses.front().tilt)) {
      for (const GaugeLine& line : mine) {
        if (stands_at(problem_, problem_.plane(drafts_[j].plane), drafts_[j].poses, line)) return 1;
      }
      continue;
    }
    const std::vector<GaugeLine> its = lines_without(j, i);
    for (const GaugeLine& line : lines_without(i, j)) {
      if (std::any_of(its.begin(), its.end(),
                      [&](const GaugeLine& other) { return same_figure(line, other); }))
        return 1;
    }
  }
  return 2;
}

double LeastCost::remaining(unsigned long long done, const Step* previous) const {
  double cost = 0;
  std::vector<int> planes;
  std::vector<const GaugeLine*> figures;
  std::vector<Lies> turned;
  const int held = previous == nullptr ? -1 : previous->draft.plane;
  const Lies lies = previous == nullptr ? Lies::face_up : previous->lies;
  std::vector<Worked> worked;
  bool all_curves = flats_left_.has_value();
  for (const Group& group : groups_) {
    if ((group.members & done) == 0) worked.push_back(group.worked);
    if (!group.flat && (group.members & done) != 0) all_curves = false;
  }
  // What the curves take between them is known while none of them is done.
  cost += weigh(worked, all_curves ? flats_left_->area() - finished_->area() : 0);
  for (std::size_t i = 0; i < shares_.size(); ++i) {
    if ((done >> i & 1) != 0) continue;
    const Share& share = shares_[i];
    cost += share.fixed;
    if ((groups_[share.group].members & done) != 0) cost += share.worked;
    const int plane = drafts_[i].plane;
    if (plane != held && std::find(planes.begin(), planes.end(), plane) == planes.end())
      planes.push_back(plane);
    if (share.lies && *share.lies != lies &&
        std::find(turned.begin(), turned.end(), *share.lies) == turned.end())
      turned.push_back(*share.lies);
    for (const GaugeLine& figure : share.figures) {
      const bool known = std::any_of(figures.begin(), figures.end(),
                                     [&](const GaugeLine* other) { return same_figure(*other, figure); });
      const bool set = previous != nullptr &&
                       std::any_of(previous->laid_out.lines.begin(), previous->laid_out.lines.end(),
                                   [&](const GaugeLine& other) { return same_figure(other, figure); });
      if (!known && !set) figures.push_back(&figure);
    }
  }
  cost += problem_.weights.change * static_cast<double>(planes.size() + turned.size());
  return cost + problem_.weights.setting * static_cast<double>(figures.size());
}

}  // namespace arrisline
