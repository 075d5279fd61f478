// Every way to give the failing elements figures of the kit is drawn as near to the old line as it goes, and
// with the ends where they are, and planned, the nearest first. Shown by tests/plan/substitute_test.cpp.
#include "arrisline/substitute.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <limits>
#include <set>
#include <utility>

#include "arrisline/read.h"
#include "plan/patience.h"
#include "plan/redrawn_figures.h"
#include "plan/redrawn_line.h"
#include "section/drawing_of.h"
#include "section/redraw.h"
#include "section/walk.h"
#include "text/write_profile.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr std::size_t kMostPlans = 50;
constexpr std::size_t kMostWays = 400;        // drawn; only the nearest are planned
constexpr std::uint64_t kWorkOfOne = 600000;  // pieces of wood cut, half a second
constexpr double kSeen = 5e-3;                // mm: a change under it nobody could tell
constexpr double kShare = 0.75;               // of the time left, so that the one found can be planned well

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
      : section_(refused.section), kit_(kit), options_(timed(options)), allow_(allow), clock_(options_) {
    const Drawing drawing = drawing_of(section_, options.unit, &sources_);
    drawing_ = drawing;
    for (const DrawnChain& chain : drawing.chains) chains_.push_back(line_of(chain, section_.width));
    drawn_as_ = drawn_as(section_, drawing, sources_);
    // A reason for the whole names nobody.
    for (const Reason& reason : refused.reasons) {
      if (reason.element >= 0) named_.push_back(reason.element);
    }
  }

  Redrawing find() {
    Redrawing out;
    const double most = allow_;
    std::size_t changed = 0;
    for (const bool any_arc : {false, true}) {
      if (out.nearest || left_off_) break;
      allow_ = most;
      find_variables(any_arc);
      if (variables_.size() == changed) continue;
      changed = variables_.size();
      // Near ones first: a line that cannot lie so near is given up early, and the limit then goes to those
      // that can.
      for (const double share : {0.25, 1.0}) {
        if (out.nearest || left_off_) break;
        allow_ = share * most;
        find_variables(any_arc);
        out.nearest = nearest_planned();
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

  struct Way {
    std::vector<FlatsAndArcs> lines;  // of each chain
    std::vector<Held> held;           // what each keeps to
    double departure = 0;
  };

  std::optional<Substitute> nearest_planned() {
    std::vector<Way> ways = drawn_ways();
    std::stable_sort(ways.begin(), ways.end(),
                     [](const Way& a, const Way& b) { return a.departure < b.departure; });
    std::size_t plans = 0;
    for (const Way& way : ways) {
      if (way.departure > allow_ || plans == kMostPlans) break;
      if (clock_.over()) {
        left_off_ = true;
        break;
      }
      std::optional<Substitute> found = as_profile(tidied(way));
      if (!found) found = as_profile(way);
      if (!found) continue;
      PlanOptions any = options_;
      any.any = true;
      any.most_work = kWorkOfOne;
      ++plans;
      // Where any arc may change, what changed fewer comes up again.
      if (!planned_.insert(found->profile).second) continue;
      found->plan = make_plan(found->section, kit_, any);
      if (found->plan.feasible) return found;
      left_off_ = left_off_ || (found->plan.undecided && clock_.over());
    }
    return std::nullopt;
  }

  bool is_named(int element) const {
    return std::find(named_.begin(), named_.end(), element) != named_.end();
  }

  /// What may change: the elements that the reasons name and the arcs that run smooth into an arc of these,
  /// or any arc.
  void find_variables(bool any_arc) {
    variables_.clear();
    std::size_t first = 0;  // of the chain, in sources_
    for (std::size_t c = 0; c < chains_.size(); ++c) {
      const std::vector<Stroke>& strokes = chains_[c].drawn.strokes;
      const auto named_arc = [&](std::size_t s) {
        return s < strokes.size() && strokes[s].turn != Turn::straight && is_named(sources_[first + s]);
      };
      for (std::size_t s = 0; s < strokes.size(); ++s) {
        const bool arc = strokes[s].turn != Turn::straight;
        const bool beside = arc && ((s > 0 && named_arc(s - 1) && smooth_at(chains_[c].line, s)) ||
                                    (named_arc(s + 1) && smooth_at(chains_[c].line, s + 1)));
        const int element = sources_[first + s];
        if (element < 0 || !(is_named(element) || beside || (any_arc && arc))) continue;
        Variable variable{c, s, arc, figures_for(strokes[s], kit_, options_.tolerance, allow_)};
        if (variable.choices.size() > 1) variables_.push_back(std::move(variable));
      }
      first += strokes.size();
    }
  }

  /// Every way to choose, likeliest first, each drawn as near to the old line as it goes.
  std::vector<Way> drawn_ways() {
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
    std::vector<Way> out;
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
      if (std::all_of(pick.begin(), pick.end(), [](std::size_t i) { return i == 0; })) continue;
      if (std::optional<Way> way = drawn(pick)) out.push_back(std::move(*way));
      if (std::optional<Way> way = drawn_between_ends(pick)) out.push_back(std::move(*way));
    }
    return out;
  }

  double off(const std::vector<std::size_t>& pick) const {
    double sum = 0;
    for (std::size_t v = 0; v < pick.size(); ++v) sum += variables_[v].choices[pick[v]].off;
    return sum;
  }

  std::optional<Way> drawn(const std::vector<std::size_t>& pick) {
    Way out;
    for (std::size_t c = 0; c < chains_.size(); ++c) {
      const ChainLine& chain = chains_[c];
      Held held = kept(chain, section_.width, section_.thickness);
      for (std::size_t v = 0; v < pick.size(); ++v) {
        const Variable& variable = variables_[v];
        if (variable.chain != c || pick[v] == 0) continue;
        const double figure = variable.choices[pick[v]].figure;
        if (variable.arc) {
          held.radius[variable.stroke] = figure;
          held.chord[variable.stroke] = variable.choices[pick[v]].chord;
        } else {
          hold_width(chain.line, variable.stroke, figure, held);
        }
      }
      std::optional<FlatsAndArcs> line = nearest_line(chain, held, section_.thickness, allow_);
      if (!line || !put_in_blank(*line, held, allow_)) return std::nullopt;
      out.departure = std::max(out.departure, apart(chain.line, *line, section_.thickness));
      out.lines.push_back(std::move(*line));
      out.held.push_back(std::move(held));
    }
    return out;
  }

  /// The arcs with their new radii between the ends that they have, whether or not they still run smooth
  /// there.
  std::optional<Way> drawn_between_ends(const std::vector<std::size_t>& pick) const {
    Way out;
    for (const ChainLine& chain : chains_) {
      out.lines.push_back(chain.line);
      Held held = kept(chain, section_.width, section_.thickness);
      for (std::size_t j = 0; j < chain.line.joints.size(); ++j) {
        held.x[j] = chain.line.joints[j].x;
        held.y[j] = chain.line.joints[j].y;
        held.smooth[j] = false;
      }
      out.held.push_back(std::move(held));
    }
    for (std::size_t v = 0; v < pick.size(); ++v) {
      if (pick[v] == 0) continue;
      const Variable& variable = variables_[v];
      if (!variable.arc || variable.choices[pick[v]].chord) return std::nullopt;
      FlatsAndArcs& line = out.lines[variable.chain];
      const Edge edge = edge_of(line, variable.stroke);
      const double r = variable.choices[pick[v]].figure;
      if (r < distance(edge.from, edge.to) / 2 - kSameLength) return std::nullopt;
      const bool large = std::abs(sweep(edge)) > kPi;
      line.bulges[variable.stroke] = bulge_of(edge_between(edge.from, edge.to, edge.turn, r, large));
      out.held[variable.chain].radius[variable.stroke] = r;
    }
    for (std::size_t c = 0; c < chains_.size(); ++c)
      out.departure = std::max(out.departure, apart(chains_[c].line, out.lines[c], section_.thickness));
    return out;
  }

  /// Joints go back to where they were drawn, one figure after another, where the line departs no more for
  /// it.
  Way tidied(const Way& way) const {
    Way out = way;
    for (std::size_t c = 0; c < chains_.size(); ++c) {
      const ChainLine& chain = chains_[c];
      struct Moved {
        double by = 0;
        std::size_t joint = 0;
        bool across = false;
      };
      std::vector<Moved> list;
      for (std::size_t j = 0; j < chain.line.joints.size(); ++j) {
        const Point by = out.lines[c].joints[j] - chain.line.joints[j];
        if (!out.held[c].x[j]) list.push_back({std::abs(by.x), j, true});
        if (!out.held[c].y[j]) list.push_back({std::abs(by.y), j, false});
      }
      std::sort(list.begin(), list.end(), [](const Moved& a, const Moved& b) { return a.by < b.by; });
      for (const Moved& moved : list) {
        Held held = out.held[c];
        const Point drawn = chain.line.joints[moved.joint];
        if (moved.across) {
          held.x[moved.joint] = drawn.x;
        } else {
          held.y[moved.joint] = drawn.y;
        }
        Fitted start;
        start.line = out.lines[c];
        start.from = chain.from;
        FlatsAndArcs line = fit(chain.samples, start, held, {std::max(allow_, 0.01), 0}).line;
        if (!keeps(line, held)) continue;
        make_exact(line, held);
        if (!put_in_blank(line, held, allow_)) continue;
        const double most = apart(chain.line, line, section_.thickness);
        if (most > std::min(allow_, 1.02 * out.departure + 1e-3)) continue;
        out.lines[c] = line;
        out.held[c] = held;
      }
    }
    out.departure = 0;
    for (std::size_t c = 0; c < chains_.size(); ++c)
      out.departure = std::max(out.departure, apart(chains_[c].line, out.lines[c], section_.thickness));
    return out;
  }

  /// The way as a maker writes it. Nothing where it does not read as a profile within what is allowed.
  std::optional<Substitute> as_profile(const Way& way) const {
    Drawing drawing = drawing_;
    drawing.name += " (redrawn)";
    Substitute out;
    std::size_t index = 0;
    for (std::size_t c = 0; c < chains_.size(); ++c) {
      DrawnChain& chain = drawing.chains[c];
      const FlatsAndArcs& line = way.lines[c];
      const double start = chain.start;
      chain.start = chain.from_back ? line.joints[0].y : line.joints[0].x;
      if (sources_[index] >= 0 && std::abs(start - chain.start) > kSeen)
        out.changes.push_back({sources_[index], Redrawn::What::start, start, chain.start, false});
      const Held held = kept(chains_[c], section_.width, section_.thickness);
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
    if (out.departure > allow_ + kSameLength) return std::nullopt;
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
  Drawing drawing_;
  std::vector<int> sources_;
  std::vector<int> drawn_as_;  // element of each stroke, of those along the stock too
  std::vector<int> named_;     // elements, by the reasons
  std::vector<ChainLine> chains_;
  std::vector<Variable> variables_;
  std::set<std::string> planned_;  // texts of profiles
};

}  // namespace

Redrawing nearest_profile(const Plan& refused, const Kit& kit, const PlanOptions& options, double allow) {
  return Substituting(refused, kit, options, allow).find();
}

}  // namespace arrisline
