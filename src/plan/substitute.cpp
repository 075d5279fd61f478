// Every way to give the failing elements figures of the kit is drawn as near to the old line as it goes, and
// with the ends where they are, and planned, the nearest first. What is tried, and in which order, does not
// hang on how much is allowed but for where it ends, so that more allowed never brings a line that lies
// farther off. Shown by tests/plan/substitute_test.cpp.
#include "arrisline/substitute.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <deque>
#include <limits>
#include <map>
#include <utility>

#include "arrisline/read.h"
#include "plan/patience.h"
#include "plan/redrawn_ways.h"
#include "section/drawing_of.h"
#include "section/redraw.h"
#include "section/walk.h"
#include "text/write_profile.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr std::size_t kMostPlans = 300;        // at a level; the limit mostly comes first
constexpr std::size_t kMostWays = 400;         // drawn; only the nearest are planned
constexpr std::uint64_t kWorkOfOne = 600000;   // pieces of wood cut, half a second
constexpr std::uint64_t kWorkBetween = 60000;  // of one that is only to show where nearer ones lie
constexpr double kFirstLevel = 1.0 / 16;       // mm
constexpr double kSeen = 5e-3;                 // mm: a change under it nobody could tell
constexpr double kSmoothWorth = 2;  // times as far off, and a line that stays smooth is the better one
constexpr double kShare = 0.75;     // of the time left, so that the one found can be planned well

/// An element that may change, and how.
struct Variable {
  std::size_t chain = 0;
  std::size_t stroke = 0;
  bool arc = false;
  std::vector<OtherFigure> choices;  // as drawn first
};

class Substituting {
 public:
  Substituting(const Plan& refused, const Kit& kit, const PlanOptions& options, double allow)
      : section_(refused.section),
        kit_(kit),
        options_(timed(options)),
        allow_(allow),
        clock_(options_),
        drawing_(drawing_of(section_, options.unit, &sources_)),
        anew_(drawing_, section_.width, section_.thickness) {
    drawn_as_ = drawn_as(section_, drawing_, sources_);
    // A reason for the whole names nobody.
    for (const Reason& reason : refused.reasons) {
      if (reason.element >= 0) named_.push_back(reason.element);
    }
  }

  Redrawing find() {
    Redrawing out;
    for (const bool any_arc : {false, true}) {
      any_arc_ = any_arc;
      double most = allow_;
      if (out.nearest) most = out.nearest->departure - kSeen;
      // Near ones first: a line that cannot lie so near is given up early, and the limit then goes to those
      // that can.
      for (level_ = kFirstLevel; !left_off_ && most > 0; level_ *= 2) {
        find_variables();
        if (std::optional<Substitute> found = nearest_planned(std::min(most, level_))) {
          out.nearest = std::move(found);
          break;
        }
        if (level_ >= most) break;
      }
    }
    out.left_off = left_off_;
    return out;
  }

 private:
  static double gone(const PlanOptions& options) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - *options.since).count();
  }

  /// For the whole of the search: its share of the limit, and no bound of work but that of each plan.
  static PlanOptions timed(PlanOptions options) {
    if (!options.since) options = from_now(std::move(options));
    const double before = gone(options);
    options.limit = before + kShare * std::max(0.0, options.limit - before);
    options.most_work = std::numeric_limits<std::uint64_t>::max();
    return options;
  }

  /// A way, and all with the same figures.
  struct Candidate {
    const Way* way = nullptr;
    std::deque<Way>* alike = nullptr;
  };
  static bool nearer(const Candidate& a, const Candidate& b) { return a.way->departure < b.way->departure; }

  std::optional<Substitute> nearest_planned(double most) {
    std::size_t plans = 0;
    std::vector<Candidate> list = drawn_ways(most);
    for (std::size_t i = 0; i < list.size() && plans < kMostPlans; ++i) {
      if (clock_.over()) {
        left_off_ = true;
        break;
      }
      const Candidate one = list[i];
      const bool corners_moved = one.way->corners && !one.way->between_ends;
      if (corners_moved && goes_smooth(one, plans)) continue;
      undecided_ = tried_ = false;
      std::optional<Substitute> found = planned(anew_.tidied(*one.way, level_), most, plans);
      if (!found) found = planned(*one.way, most, plans);
      if (found) return found;
      // Where any arc may change there are too many for that.
      if (any_arc_ || undecided_ || !tried_) continue;
      const Way* next = cut_between(one, plans);
      if (next == nullptr || next->departure > most) continue;
      const Candidate added{next, one.alike};
      list.insert(
          std::upper_bound(list.begin() + static_cast<std::ptrdiff_t>(i) + 1, list.end(), added, nearer),
          added);
    }
    return std::nullopt;
  }

  /// Of a way that cannot be cut, the nearest found to it that can, on the way to one with the same figures
  /// that departs not much more and can. Put with the others.
  const Way* cut_between(const Candidate& one, std::size_t& plans) {
    constexpr int kHalvings = 4;
    constexpr double kWorth = 2;  // times as far
    const Way& no = *one.way;
    std::optional<Way> best;
    for (const Way& other : *one.alike) {
      if (other.corners != no.corners || other.departure <= no.departure + kSeen ||
          other.departure > kWorth * no.departure || clock_.over() ||
          !planned(other, kWorth * no.departure, plans, kWorkBetween))
        continue;
      double low = 0, high = 1;
      for (int k = 0; k < kHalvings; ++k) {
        const double share = (low + high) / 2;
        std::optional<Way> way = anew_.between(no, other, share, level_);
        if (way && way->departure < other.departure && planned(*way, other.departure, plans, kWorkBetween)) {
          high = share;
          if (!best || way->departure < best->departure) best = std::move(way);
        } else {
          low = share;
        }
      }
    }
    if (!best) return nullptr;
    one.alike->push_back(std::move(*best));
    return &one.alike->back();
  }

  /// Whether with the same figures a line that stays smooth can be cut and lies not much farther off.
  bool goes_smooth(const Candidate& one, std::size_t& plans) {
    const double most = kSmoothWorth * one.way->departure;
    return std::any_of(one.alike->begin(), one.alike->end(), [&](const Way& way) {
      return !way.corners && way.departure <= most && planned(way, most, plans);
    });
  }

  /// The way with a plan of it. Nothing where there is none, or it does not read as a profile.
  std::optional<Substitute> planned(const Way& way, double most, std::size_t& plans,
                                    std::uint64_t work = kWorkOfOne) {
    std::optional<Substitute> found = as_profile(way, most);
    if (!found) return std::nullopt;
    // What changed fewer comes up again where any arc may change, and near ones do where far ones may.
    const auto known = planned_.find(found->profile);
    if (known != planned_.end() && !known->second) return std::nullopt;
    PlanOptions any = options_;
    any.any = true;
    any.most_work = work;
    ++plans;
    found->plan = make_plan(found->section, kit_, any);
    if (work == kWorkOfOne || !found->plan.undecided) planned_[found->profile] = found->plan.feasible;
    if (found->plan.feasible) return found;
    tried_ = true;
    undecided_ = undecided_ || found->plan.undecided;
    left_off_ = left_off_ || (found->plan.undecided && clock_.over());
    return std::nullopt;
  }

  bool is_named(int element) const {
    return std::find(named_.begin(), named_.end(), element) != named_.end();
  }

  /// What may change: the elements that the reasons name and the arcs that run smooth into an arc of these,
  /// or any arc.
  void find_variables() {
    variables_.clear();
    std::size_t first = 0;  // of the chain, in sources_
    for (std::size_t c = 0; c < anew_.chains().size(); ++c) {
      const std::vector<Stroke>& strokes = anew_.chains()[c].drawn.strokes;
      const auto named_arc = [&](std::size_t s) {
        return s < strokes.size() && strokes[s].turn != Turn::straight && is_named(sources_[first + s]);
      };
      for (std::size_t s = 0; s < strokes.size(); ++s) {
        const bool arc = strokes[s].turn != Turn::straight;
        const bool beside = arc && ((s > 0 && named_arc(s - 1) && smooth_at(anew_.chains()[c].line, s)) ||
                                    (named_arc(s + 1) && smooth_at(anew_.chains()[c].line, s + 1)));
        const int element = sources_[first + s];
        if (element < 0 || !(is_named(element) || beside || (any_arc_ && arc))) continue;
        Variable variable{c, s, arc, figures_for(strokes[s], kit_, options_.tolerance, level_)};
        if (variable.choices.size() > 1) variables_.push_back(std::move(variable));
      }
      first += strokes.size();
    }
  }

  /// Every way to choose, likeliest first, each drawn as near to the old line as it goes.
  std::vector<Candidate> drawn_ways(double most) {
    std::vector<std::vector<std::size_t>> picks = {{}};
    for (const Variable& variable : variables_) {
      std::vector<std::vector<std::size_t>> longer;
      for (const auto& pick : picks) {
        for (std::size_t i = 0; i < variable.choices.size(); ++i) {
          longer.push_back(pick);
          longer.back().push_back(i);
        }
      }
      std::stable_sort(longer.begin(), longer.end(),
                       [&](const auto& a, const auto& b) { return off(a) < off(b); });
      if (longer.size() > kMostWays) longer.resize(kMostWays);
      picks = std::move(longer);
    }
    std::vector<Candidate> out;
    // Half of the time, since what is drawn has to be planned.
    PlanOptions half = options_;
    const double before = gone(half);
    half.limit = before + std::max(0.0, half.limit - before) / 2;
    half.progress = nullptr;
    Patience drawing(half);
    for (const auto& pick : picks) {
      if (clock_.over() || drawing.over()) {
        left_off_ = true;
        break;
      }
      std::vector<Chosen> chosen;
      std::vector<double> key;
      for (std::size_t v = 0; v < pick.size(); ++v) {
        if (pick[v] == 0) continue;
        const Variable& variable = variables_[v];
        const OtherFigure& figure = variable.choices[pick[v]];
        chosen.push_back({variable.chain, variable.stroke, variable.arc, figure});
        key.insert(key.end(), {static_cast<double>(variable.chain), static_cast<double>(variable.stroke),
                               figure.figure, figure.chord.value_or(0)});
      }
      if (chosen.empty()) continue;
      auto& [near, ways] = drawn_[key];
      if (near < level_) {
        near = level_;
        ways = anew_.ways(chosen, level_);
      }
      for (const Way& way : ways)
        if (way.departure <= most) out.push_back({&way, &ways});
    }
    std::stable_sort(out.begin(), out.end(), nearer);
    return out;
  }

  double off(const std::vector<std::size_t>& pick) const {
    double sum = 0;
    for (std::size_t v = 0; v < pick.size(); ++v) sum += variables_[v].choices[pick[v]].off;
    return sum;
  }

  /// The way as a maker writes it. Nothing where it does not read as a profile within what is allowed.
  std::optional<Substitute> as_profile(const Way& way, double most) const {
    Drawing drawing = drawing_;
    drawing.name += " (redrawn)";
    Substitute out;
    std::size_t index = 0;
    for (std::size_t c = 0; c < anew_.chains().size(); ++c) {
      DrawnChain& chain = drawing.chains[c];
      const FlatsAndArcs& line = way.lines[c];
      const double start = chain.start;
      chain.start = chain.from_back ? line.joints[0].y : line.joints[0].x;
      if (sources_[index] >= 0 && std::abs(start - chain.start) > kSeen)
        out.changes.push_back({sources_[index], Redrawn::What::start, start, chain.start, false});
      const Held held = kept(anew_.chains()[c], section_.width, section_.thickness);
      for (std::size_t s = 0; s < chain.strokes.size(); ++s, ++index) {
        Stroke& stroke = chain.strokes[s];
        const Stroke drawn = stroke;
        const Edge edge = edge_of(line, s);
        stroke.move = edge.to - edge.from;
        if (held.axis[s] == Held::Axis::level) stroke.move.y = 0;
        if (held.axis[s] == Held::Axis::upright) stroke.move.x = 0;
        if (edge.is_arc()) {
          stroke.radius = chosen_radius(edge, drawn.radius);
          stroke.large = std::abs(sweep(edge)) > kPi;
        }
        note(drawn_as_[index], drawn, stroke, out.changes);
      }
    }
    if (out.changes.empty()) return std::nullopt;
    out.profile = profile_text(drawing);
    Reading<Section> reading = read_profile(out.profile, "redrawn.profile");
    if (!reading.value) return std::nullopt;
    out.section = std::move(*reading.value);
    // Of what is written, whatever it was made from.
    out.departure = apart(section_, out.section);
    if (out.departure > most + kSameLength) return std::nullopt;
    return out;
  }

  /// A held radius exactly.
  double chosen_radius(const Edge& edge, double drawn) const {
    const double r = radius(edge);
    double best = drawn;
    for (const Plane& plane : kit_.planes)
      if (plane.is_curved() && std::abs(plane.radius - r) < std::abs(best - r)) best = plane.radius;
    return std::abs(best - r) < 1e-3 ? std::max(best, distance(edge.from, edge.to) / 2) : r;
  }

  static void note(int element, const Stroke& drawn, const Stroke& now, std::vector<Redrawn>& changes) {
    if (element < 0) return;
    auto add = [&](Redrawn::What what, double a, double b, bool back = false) {
      if (std::abs(a - b) > kSeen) changes.push_back({element, what, a, b, back});
    };
    if (now.turn != Turn::straight) add(Redrawn::What::radius, drawn.radius, now.radius);
    add(Redrawn::What::across, std::abs(drawn.move.x), std::abs(now.move.x), now.move.x > 0);
    add(Redrawn::What::down, std::abs(drawn.move.y), std::abs(now.move.y), now.move.y < 0);
  }

  const Section& section_;
  const Kit& kit_;
  const PlanOptions options_;
  double allow_;
  Patience clock_;
  bool left_off_ = false;
  std::vector<int> sources_;
  Drawing drawing_;
  RedrawnWays anew_;
  std::vector<int> drawn_as_;  // element of each stroke, of those along the stock too
  std::vector<int> named_;     // elements, by the reasons
  std::vector<Variable> variables_;
  std::map<std::string, bool> planned_;  // texts of profiles, and whether there is a plan
  bool tried_ = false;                   // a plan of the way in hand was looked for, and there is none
  bool undecided_ = false;               // or not within the work of one
  bool any_arc_ = false;
  double level_ = 0;
  std::map<std::vector<double>, std::pair<double, std::deque<Way>>> drawn_;
};

}  // namespace

Redrawing nearest_profile(const Plan& refused, const Kit& kit, const PlanOptions& options, double allow) {
  return Substituting(refused, kit, options, allow).find();
}

}  // namespace arrisline
