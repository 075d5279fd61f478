// Every way to give the failing elements figures of the kit is drawn as near to the old line as it goes, and
// with the ends where they are, and planned, the nearest first. Shown by tests/plan/substitute_test.cpp.
#include "arrisline/substitute.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <limits>
#include <utility>

#include "arrisline/read.h"
#include "section/contacts.h"
#include "section/drawing_of.h"
#include "section/walk.h"
#include "text/write_profile.h"
#include "trace/exact.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr std::size_t kMostPlans = 50;
constexpr std::size_t kMostWays = 400;        // drawn; only the nearest are planned
constexpr std::size_t kChoices = 4;           // figures tried for one element
constexpr std::uint64_t kWorkOfOne = 600000;  // pieces of wood cut, half a second
constexpr double kSeen = 5e-3;                // mm: a change under it nobody could tell
constexpr int kPerEdge = 60;                  // samples of a drawn edge

/// A figure that an element may have instead of the drawn one.
struct Choice {
  double figure = 0;
  double off = 0;  // about how far it takes the line, mm: only the order of trying hangs on it
};

/// An element that may change, and how.
struct Variable {
  std::size_t chain = 0;
  std::size_t stroke = 0;
  bool arc = false;
  std::vector<Choice> choices;  // as drawn first
};

struct ChainLine {
  DrawnChain drawn;
  FlatsAndArcs line;
  Samples samples;
  std::vector<std::size_t> from;
};

/// The line with a piece of the stock's side at either end: where a line begins farther along the face, what
/// it departs by is not how far its start has moved.
std::vector<Edge> with_sides(const FlatsAndArcs& line, double thickness) {
  constexpr double kPiece = 20;  // mm
  const Point from = line.joints.front();
  const Point to = line.joints.back();
  std::vector<Edge> out;
  out.push_back({std::abs(from.y) < kOnOutline ? Point{from.x + kPiece, 0} : Point{from.x, from.y - kPiece},
                 from,
                 {},
                 Turn::straight});
  for (std::size_t i = 0; i < line.size(); ++i) out.push_back(edge_of(line, i));
  Point end = {to.x, to.y + kPiece};
  if (std::abs(to.y) < kOnOutline) end = {to.x - kPiece, to.y};
  if (std::abs(to.y - thickness) < kOnOutline && std::abs(to.x) > kOnOutline) end = {to.x + kPiece, to.y};
  out.push_back({to, end, {}, Turn::straight});
  return out;
}

ChainLine line_of(const DrawnChain& chain, double width) {
  ChainLine out;
  out.drawn = chain;
  Point at = chain.from_back ? Point{width, chain.start} : Point{chain.start, 0};
  out.line.joints.push_back(at);
  for (const Stroke& stroke : chain.strokes) {
    const Edge edge = edge_between(at, at + stroke.move, stroke.turn, stroke.radius, stroke.large);
    out.from.push_back(out.samples.points.size());
    for (int k = 0; k < kPerEdge; ++k) out.samples.points.push_back(point_at(edge, (k + 0.5) / kPerEdge));
    at = edge.to;
    out.line.joints.push_back(at);
    out.line.bulges.push_back(bulge_of(edge));
  }
  out.from.push_back(out.samples.points.size());
  out.samples.filled.assign(out.samples.points.size(), false);
  return out;
}

bool smooth_at(const FlatsAndArcs& line, std::size_t joint) {
  constexpr double kSmooth = 1e-3;  // radians
  const Edge before = edge_of(line, joint - 1);
  const Edge after = edge_of(line, joint);
  if (!before.is_arc() && !after.is_arc()) return false;
  const Point in = direction_at(before, 1);
  const Point out = direction_at(after, 0);
  return std::abs(std::atan2(cross(in, out), dot(in, out))) < kSmooth;
}

/// What a changed line keeps of the drawn one.
Held kept(const ChainLine& chain, double width, double thickness) {
  const FlatsAndArcs& line = chain.line;
  Held out(line.size());
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Edge edge = edge_of(line, i);
    if (edge.is_arc()) {
      out.radius[i] = radius(edge);
    } else if (edge.from.y == edge.to.y || std::abs(edge.from.y - edge.to.y) < kSamePoint) {
      out.axis[i] = Held::Axis::level;
    } else if (std::abs(edge.from.x - edge.to.x) < kSamePoint) {
      out.axis[i] = Held::Axis::upright;
    }
    if (i > 0) out.smooth[i] = smooth_at(line, i);
  }
  // The ends stay on the sides of the stock that they are on.
  for (const std::size_t j : {std::size_t{0}, line.size()}) {
    const Point p = line.joints[j];
    if (std::abs(p.y) < kOnOutline || std::abs(p.y - thickness) < kOnOutline) out.y[j] = p.y;
    if (std::abs(p.x) < kOnOutline || std::abs(p.x - width) < kOnOutline) out.x[j] = p.x;
  }
  return out;
}

/// Greatest distance between two lines, either way round, by some hundred points on each edge. Their first
/// and last edges are only there to be near to.
double departure(const std::vector<Edge>& one, const std::vector<Edge>& other) {
  constexpr int kPoints = 128;
  double most = 0;
  for (const auto& [from, to] : {std::pair(&one, &other), std::pair(&other, &one)}) {
    for (std::size_t i = 1; i + 1 < from->size(); ++i)
      for (int k = 0; k <= kPoints; ++k)
        most = std::max(most, distance(point_at((*from)[i], static_cast<double>(k) / kPoints), *to));
  }
  return most;
}

class Substituting {
 public:
  Substituting(const Plan& refused, const Kit& kit, const PlanOptions& options, double allow)
      : section_(refused.section), kit_(kit), options_(options), allow_(allow) {
    const Drawing drawing = drawing_of(section_, options.unit, &sources_);
    drawing_ = drawing;
    for (const DrawnChain& chain : drawing.chains) chains_.push_back(line_of(chain, section_.width));
    // A reason for the whole names nobody.
    for (const Reason& reason : refused.reasons) {
      if (reason.element >= 0) named_.push_back(reason.element);
    }
  }

  std::optional<Substitute> find() {
    std::size_t changed = 0;
    for (const bool any_arc : {false, true}) {
      find_variables(any_arc);
      if (variables_.size() == changed) continue;
      changed = variables_.size();
      if (std::optional<Substitute> found = nearest_planned()) return found;
    }
    return std::nullopt;
  }

 private:
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
      std::optional<Substitute> found = as_profile(tidied(way));
      if (!found) continue;
      PlanOptions any = options_;
      any.any = true;
      any.most_work = kWorkOfOne;
      ++plans;
      if (make_plan(found->section, kit_, any).feasible) return found;
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
        Variable variable{c, s, arc, arc ? radii(strokes[s]) : widths(strokes[s])};
        if (variable.choices.size() > 1) variables_.push_back(std::move(variable));
      }
      first += strokes.size();
    }
  }

  /// The drawn radius, then those of planes, the nearest first.
  std::vector<Choice> radii(const Stroke& stroke) const {
    std::vector<Choice> out;
    const PlaneKind kind = stroke.turn == Turn::right ? PlaneKind::hollow : PlaneKind::round;
    const double half = norm(stroke.move) / 2;
    const double rise = stroke.radius - std::sqrt(std::max(0.0, stroke.radius * stroke.radius - half * half));
    for (const Plane& plane : kit_.planes) {
      if (plane.kind != kind || std::abs(plane.radius - stroke.radius) < kSameLength) continue;
      // About half of how much the rise changes with the ends kept, or as with the arc made larger or
      // smaller.
      const double r = std::max(plane.radius, half);
      const double other = r - std::sqrt(std::max(0.0, r * r - half * half));
      const double off =
          std::min(std::abs(other - rise) / 2 + (plane.radius < half ? half - plane.radius : 0),
                   std::abs(plane.radius - stroke.radius));
      if (off <= 3 * allow_) out.push_back({plane.radius, off});
    }
    return cut_short(std::move(out), stroke.radius);
  }

  std::vector<Choice> widths(const Stroke& stroke) const {
    std::vector<Choice> out;
    const double drawn = std::max(std::abs(stroke.move.x), std::abs(stroke.move.y));
    if (stroke.move.x != 0 && stroke.move.y != 0) return {};
    for (const Plane& plane : kit_.planes) {
      if (!plane.is_flat() || plane.width <= drawn + kSameLength) continue;
      if (plane.width - drawn <= 2 * allow_) out.push_back({plane.width, (plane.width - drawn) / 2});
    }
    return cut_short(std::move(out), drawn);
  }

  static std::vector<Choice> cut_short(std::vector<Choice> choices, double drawn) {
    std::sort(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) { return a.off < b.off; });
    choices.erase(std::unique(choices.begin(), choices.end(),
                              [](const Choice& a, const Choice& b) {
                                return std::abs(a.figure - b.figure) < kSameLength;
                              }),
                  choices.end());
    if (choices.size() > kChoices) choices.resize(kChoices);
    choices.insert(choices.begin(), Choice{drawn, 0});
    return choices;
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
    for (const auto& pick : picks) {
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
        } else {
          hold_width(chain.line, variable.stroke, figure, held);
        }
      }
      std::optional<FlatsAndArcs> line = nearest(chain, held);
      if (!line || !put_in_blank(*line, held)) return std::nullopt;
      out.departure = std::max(out.departure, apart(chain.line, *line));
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
      if (!variable.arc) return std::nullopt;
      FlatsAndArcs& line = out.lines[variable.chain];
      const Edge edge = edge_of(line, variable.stroke);
      const double r = variable.choices[pick[v]].figure;
      if (r < distance(edge.from, edge.to) / 2 - kSameLength) return std::nullopt;
      const bool large = std::abs(sweep(edge)) > kPi;
      line.bulges[variable.stroke] = bulge_of(edge_between(edge.from, edge.to, edge.turn, r, large));
      out.held[variable.chain].radius[variable.stroke] = r;
    }
    for (std::size_t c = 0; c < chains_.size(); ++c)
      out.departure = std::max(out.departure, apart(chains_[c].line, out.lines[c]));
    return out;
  }

  /// An arc that ran level into the face and now passes over it is put under it. False where it then no
  /// longer keeps to what is held.
  bool put_in_blank(FlatsAndArcs& line, const Held& held) const {
    Held free = held;
    keep_in_blank(line, free, {allow_, 0});
    for (std::size_t j = 0; j < line.joints.size(); ++j) {
      const Point p = line.joints[j];
      if ((held.x[j] && std::abs(*held.x[j] - p.x) > kSamePoint) ||
          (held.y[j] && std::abs(*held.y[j] - p.y) > kSamePoint))
        return false;
    }
    return keeps(line, held);
  }

  /// The flat grows by as much at both ends, but for an end that is on a side of the stock.
  void hold_width(const FlatsAndArcs& line, std::size_t i, double width, Held& held) const {
    const Point from = line.joints[i];
    const Point to = line.joints[i + 1];
    const bool level = std::abs(from.y - to.y) < kSamePoint;
    auto& levels = level ? held.x : held.y;
    const double a = level ? from.x : from.y;
    const double b = level ? to.x : to.y;
    const double more = (width - std::abs(b - a)) * (b > a ? 1 : -1);
    if (levels[i]) {
      levels[i + 1] = b + more;
    } else if (levels[i + 1]) {
      levels[i] = a - more;
    } else {
      levels[i] = a - more / 2;
      levels[i + 1] = b + more / 2;
    }
  }

  /// The line that keeps to `held` and departs least: least squares, the weights then moved to where it
  /// departs most (C. L. Lawson's way to the least greatest distance).
  std::optional<FlatsAndArcs> nearest(const ChainLine& chain, const Held& held) const {
    constexpr int kRounds = 25;
    Fitted start;
    start.line = chain.line;
    start.from = chain.from;
    const Allowed allowed{std::max(allow_, 0.01), 0};
    Samples samples = chain.samples;
    samples.weights.assign(samples.points.size(), 1);
    // A radius that is much another is come to in steps, or the fit loses its way.
    constexpr int kSteps = 4;
    for (int step = 1; step < kSteps; ++step) {
      Held on_the_way = held;
      for (std::size_t i = 0; i < chain.line.size(); ++i) {
        if (!held.radius[i]) continue;
        const double drawn = radius(edge_of(chain.line, i));
        on_the_way.radius[i] = drawn + step * (*held.radius[i] - drawn) / kSteps;
      }
      start = fit(samples, start, on_the_way, allowed);
    }
    std::optional<FlatsAndArcs> best;
    double least = std::numeric_limits<double>::infinity();
    for (int round = 0; round < kRounds; ++round) {
      const Fitted next = fit(samples, start, held, allowed);
      if (!keeps(next.line, held)) break;
      const std::vector<Edge> now = with_sides(next.line, section_.thickness);
      std::vector<double> distances;
      double most = 0;
      for (const Point& p : samples.points) {
        distances.push_back(distance(p, now));
        most = std::max(most, distances.back());
      }
      if (most < least) least = most, best = next.line;
      if (most < 1e-6) break;
      double sum = 0;
      for (std::size_t i = 0; i < distances.size(); ++i) {
        samples.weights[i] *= std::sqrt((distances[i] + 0.02 * most) / most);
        sum += samples.weights[i];
      }
      for (double& weight : samples.weights) weight *= static_cast<double>(distances.size()) / sum;
      start = next;
    }
    if (best) make_exact(*best, held);
    return best;
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
        if (!put_in_blank(line, held)) continue;
        const double most = apart(chain.line, line);
        if (most > 1.02 * out.departure + 1e-3) continue;
        out.lines[c] = line;
        out.held[c] = held;
      }
    }
    out.departure = 0;
    for (std::size_t c = 0; c < chains_.size(); ++c)
      out.departure = std::max(out.departure, apart(chains_[c].line, out.lines[c]));
    return out;
  }

  double apart(const FlatsAndArcs& one, const FlatsAndArcs& other) const {
    return departure(with_sides(one, section_.thickness), with_sides(other, section_.thickness));
  }

  /// What is held is reached, and nothing turned about.
  bool keeps(const FlatsAndArcs& line, const Held& held) const {
    for (std::size_t i = 0; i < line.size(); ++i) {
      const Edge edge = edge_of(line, i);
      if (length(edge) < 0.05) return false;
      if (held.radius[i] && (!edge.is_arc() || std::abs(radius(edge) - *held.radius[i]) > 1e-3)) return false;
    }
    return true;
  }

  std::optional<Substitute> as_profile(const Way& way) const {
    Drawing drawing = drawing_;
    drawing.name += " (redrawn)";
    Substitute out;
    out.departure = way.departure;
    std::size_t index = 0;
    for (std::size_t c = 0; c < chains_.size(); ++c) {
      DrawnChain& chain = drawing.chains[c];
      const FlatsAndArcs& line = way.lines[c];
      const double start = chain.start;
      chain.start = chain.from_back ? line.joints[0].y : line.joints[0].x;
      if (sources_[index] >= 0 && std::abs(start - chain.start) > kSeen)
        out.changes.push_back({sources_[index], Redrawn::What::start, start, chain.start});
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
        note(sources_[index], drawn, stroke, out.changes);
      }
    }
    if (out.changes.empty()) return std::nullopt;
    out.profile = profile_text(drawing);
    Reading<Section> reading = read_profile(out.profile, "redrawn.profile");
    if (!reading.value) return std::nullopt;
    out.section = std::move(*reading.value);
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
    auto add = [&](Redrawn::What what, double a, double b) {
      if (std::abs(a - b) > kSeen) changes.push_back({element, what, a, b});
    };
    if (now.turn != Turn::straight) add(Redrawn::What::radius, drawn.radius, now.radius);
    add(Redrawn::What::across, std::abs(drawn.move.x), std::abs(now.move.x));
    add(Redrawn::What::down, std::abs(drawn.move.y), std::abs(now.move.y));
  }

  const Section& section_;
  const Kit& kit_;
  const PlanOptions& options_;
  double allow_;
  Drawing drawing_;
  std::vector<int> sources_;
  std::vector<int> named_;  // elements, by the reasons
  std::vector<ChainLine> chains_;
  std::vector<Variable> variables_;
};

}  // namespace

std::optional<Substitute> nearest_profile(const Plan& refused, const Kit& kit, const PlanOptions& options,
                                          double allow) {
  return Substituting(refused, kit, options, allow).find();
}

}  // namespace arrisline
