// The fewest lines that have to be set finer than the gauge's division, and the flats that waste cuts finish.
// Shown by tests/plan/as_set_test.cpp.
#include "plan/as_set.h"

#include <algorithm>

namespace arrisline {

namespace {

struct LineOf {
  std::size_t step, line;
};

class Setting {
 public:
  Setting(const Problem& problem, const Sequence& sequence, double may_leave, std::vector<LaidOut>& lines)
      : problem_(problem), sequence_(sequence), may_leave_(may_leave), lines_(lines) {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      lines_[i].exactly.assign(lines_[i].lines.size(), false);
      if (!problem_.plane(sequence_.steps[i].draft.plane).is_flat()) continue;
      for (std::size_t k = 0; k < lines_[i].lines.size(); ++k) all_.push_back({i, k});
    }
  }

  void work_out() {
    if (is_fine_enough()) return;
    for (const LineOf& one : all_) {
      if (!line(one).fine) line(one).fine = line(one).close = true;
    }
    if (!is_fine_enough() && !find_finer()) return leave_as_divided();
    for (const LineOf& one : all_) {
      if (!line(one).close || line(one).finer) continue;
      set_fine(one, false);
      if (!is_fine_enough()) set_fine(one, true);
    }
    for (LaidOut& laid_out : lines_) laid_out.exactly.clear();
    // Marks of the finer division need not lie between all those of the gauge's own: the nearer ones serve.
    for (const LineOf& one : all_) {
      if (!line(one).close || !line(one).finer) continue;
      const double fine = left_as_set();
      set_fine(one, false);
      if (left_as_set() > fine) set_fine(one, true);
    }
  }

 private:
  GaugeLine& line(const LineOf& of) { return lines_[of.step].lines[of.line]; }

  /// Which lines have to keep their exact figures. False where even those of all leave more.
  bool find_finer() {
    for (LaidOut& laid_out : lines_) laid_out.exactly.assign(laid_out.lines.size(), true);
    if (!is_fine_enough()) return false;
    for (const LineOf& one : all_) {
      lines_[one.step].exactly[one.line] = false;
      if (is_fine_enough()) continue;
      lines_[one.step].exactly[one.line] = true;
      line(one).finer = true;
    }
    return true;
  }

  /// All the lines of one figure that have to be finer still or need not, as the first, but for those that
  /// lay rails.
  void set_fine(const LineOf& first, bool fine) {
    for (const LineOf& one : all_) {
      GaugeLine& other = line(one);
      const bool rail = other.fine && !other.close;
      if (!rail && other.finer == line(first).finer && same_figure(other, line(first)))
        other.fine = other.close = fine;
    }
  }

  void leave_as_divided() {
    for (const LineOf& one : all_) {
      if (line(one).close) line(one).fine = line(one).close = false;
    }
    for (LaidOut& laid_out : lines_) laid_out.exactly.clear();
  }

  bool is_fine_enough() { return left_as_set() <= may_leave_; }

  double left_as_set() {
    const Divisions rounding = divisions(problem_.kit, problem_.options);
    Wood wood(problem_.blank);
    for (std::size_t i = 0; i < sequence_.steps.size(); ++i) {
      const Draft& draft = sequence_.steps[i].draft;
      const Plane& plane = problem_.plane(draft.plane);
      LaidOut laid_out = lines_[i];
      const std::vector<Pose> poses =
          plane.is_flat() ? set_to_lines(problem_, plane, draft.poses, laid_out, rounding) : draft.poses;
      for (const Pose& pose : poses) wood.cut(Sweep(plane, pose));
    }
    return thickest_left(wood, problem_.section.target).height;
  }

  const Problem& problem_;
  const Sequence& sequence_;
  double may_leave_;
  std::vector<LaidOut>& lines_;
  std::vector<LineOf> all_;
};

/// Places a little farther above the flat than may be left, but for those that lie nearer to the rest of the
/// target.
std::vector<Point> places_over(const Problem& problem, const Edge& flat, double above) {
  constexpr int kPlaces = 40;
  const Point along = direction_at(flat, 0);
  const Point out = {along.y, -along.x};  // the target lies to the left
  std::vector<Point> places;
  for (int i = 0; i <= kPlaces; ++i) {
    const Point p = point_at(flat, (i + 0.5) / (kPlaces + 1)) + above * out;
    if (!contains(problem.section.target, p) && distance(p, problem.section.target) > above - kTouch / 2)
      places.push_back(p);
  }
  return places;
}

bool stands_in(const Wood& wood, const std::vector<Point>& places) {
  return std::any_of(places.begin(), places.end(), [&](Point p) { return wood.contains(p); });
}

}  // namespace

void set_fine_enough(const Problem& problem, const Sequence& sequence, double may_leave,
                     std::vector<LaidOut>& lines) {
  Setting(problem, sequence, may_leave, lines).work_out();
}

void claim_flats(const Problem& problem, double may_leave, Sequence& sequence) {
  std::vector<std::pair<int, std::vector<Point>>> unclaimed;  // surfaces, with places over them
  Wood wood(problem.blank);
  for (int s = 0; s < static_cast<int>(problem.surfaces.size()); ++s) {
    const bool claimed = std::any_of(sequence.steps.begin(), sequence.steps.end(), [&](const Step& step) {
      return std::any_of(step.draft.finishes.begin(), step.draft.finishes.end(),
                         [s](const Stretch& stretch) { return stretch.surface == s; });
    });
    const Surface& surface = surface_of(problem, s);
    if (claimed || surface.arc) continue;
    const std::vector<Point> places = places_over(problem, problem.edge(surface), may_leave + kTouch);
    if (stands_in(wood, places)) unclaimed.emplace_back(s, places);
  }
  for (Step& step : sequence.steps) {
    if (unclaimed.empty()) return;
    cut_all(problem, {step.draft}, wood);
    for (auto one = unclaimed.begin(); one != unclaimed.end();) {
      if (stands_in(wood, one->second)) {
        ++one;
        continue;
      }
      if (problem.plane(step.draft.plane).is_flat()) step.draft.finishes.push_back({one->first, 0, 1, true});
      one = unclaimed.erase(one);
    }
  }
}

}  // namespace arrisline
