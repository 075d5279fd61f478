// Shown by tests/plan/substitute_test.cpp.
#include "plan/redrawn_ways.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/redrawn_nearer.h"
#include "section/contacts.h"
#include "section/walk.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr double kWorthMoving = 3;  // times what is asked for: what departs more comes no nearer than that
constexpr int kRounds = 25;
constexpr int kLonger = 2;        // steps from the shortest arc that a sole may go in at to its whole width
constexpr double kUnseen = 1e-3;  // mm

/// Whether nobody could tell them apart.
bool alike(const Way& one, const Way& other) {
  constexpr double kUntold = 0.01;  // mm
  for (std::size_t c = 0; c < one.lines.size(); ++c)
    for (std::size_t j = 0; j < one.lines[c].joints.size(); ++j)
      if (distance(one.lines[c].joints[j], other.lines[c].joints[j]) > kUntold) return false;
  return true;
}

}  // namespace

RedrawnWays::RedrawnWays(const Drawing& drawing, double width, double thickness)
    : width_(width), thickness_(thickness) {
  for (const DrawnChain& chain : drawing.chains) chains_.push_back(line_of(chain, width));
}

std::deque<Way> RedrawnWays::ways(const std::vector<Chosen>& chosen, double near) const {
  std::deque<Way> out;
  // The two begin apart, and where one of them comes to cannot always be cut where that of the other can.
  for (const int rounds : {1, kRounds}) {
    const std::optional<Way> fitted = drawn(chosen, near, rounds);
    if (!fitted) continue;
    out.push_back(*fitted);
    for (int longer = 0; longer <= kLonger; ++longer) {
      Way begun = out.back();
      bool grows = false;
      for (const Chosen& one : chosen) {
        if (!one.figure.chord) continue;
        grows = true;
        begun.held[one.chain].chord[one.stroke] =
            *one.figure.chord + longer * (one.figure.whole - *one.figure.chord) / kLonger;
      }
      if (longer > 0 && (!grows || rounds > 1)) break;
      std::optional<Way> moved = nearer(begun, near);
      if (moved && std::none_of(out.begin(), out.end(), [&](const Way& way) { return alike(way, *moved); }))
        out.push_back(std::move(*moved));
    }
  }
  if (const std::optional<Way> as_they_end = drawn_between_ends(chosen)) {
    out.push_back(*as_they_end);
    if (as_they_end->departure <= kWorthMoving * near)
      if (std::optional<Way> moved = nearer(*as_they_end, near)) out.push_back(std::move(*moved));
  }
  return out;
}

std::optional<Way> RedrawnWays::drawn(const std::vector<Chosen>& chosen, double near, int rounds) const {
  Way out;
  for (std::size_t c = 0; c < chains_.size(); ++c) {
    const ChainLine& chain = chains_[c];
    Held held = kept(chain, width_, thickness_);
    for (const Chosen& one : chosen) {
      if (one.chain != c) continue;
      if (one.arc) {
        held.radius[one.stroke] = one.figure.figure;
        held.chord[one.stroke] = one.figure.chord;
      } else {
        hold_width(chain.line, one.stroke, one.figure.figure, held);
      }
    }
    std::optional<FlatsAndArcs> line = nearest_line(chain, held, thickness_, near, rounds);
    if (!line || !put_in_blank(*line, held, near)) return std::nullopt;
    out.lines.push_back(std::move(*line));
    out.held.push_back(std::move(held));
  }
  out.departure = departure(out.lines);
  return out;
}

std::optional<Way> RedrawnWays::drawn_between_ends(const std::vector<Chosen>& chosen) const {
  Way out;
  out.between_ends = true;
  for (const ChainLine& chain : chains_) {
    out.lines.push_back(chain.line);
    out.held.push_back(kept(chain, width_, thickness_));
  }
  for (const Chosen& one : chosen) {
    if (!one.arc || one.figure.chord) return std::nullopt;
    FlatsAndArcs& line = out.lines[one.chain];
    const Edge edge = edge_of(line, one.stroke);
    const double r = one.figure.figure;
    if (r < distance(edge.from, edge.to) / 2 - kSameLength) return std::nullopt;
    const bool large = std::abs(sweep(edge)) > kPi;
    line.bulges[one.stroke] = bulge_of(edge_between(edge.from, edge.to, edge.turn, r, large));
    out.held[one.chain].radius[one.stroke] = r;
  }
  for (std::size_t c = 0; c < chains_.size(); ++c) {
    for (std::size_t j = 1; j < out.lines[c].size(); ++j) {
      if (!out.held[c].smooth[j] || smooth_at(out.lines[c], j)) continue;
      out.held[c].smooth[j] = false;
      out.corners = true;
    }
  }
  out.departure = departure(out.lines);
  return out;
}

std::optional<Way> RedrawnWays::nearer(const Way& way, double near) const {
  Way out = way;
  out.between_ends = false;
  for (std::size_t c = 0; c < chains_.size(); ++c) {
    std::optional<FlatsAndArcs> line = nearer_line(chains_[c], out.lines[c], out.held[c], thickness_, near);
    if (!line) return std::nullopt;
    out.lines[c] = std::move(*line);
  }
  out.departure = departure(out.lines);
  return out;
}

Way RedrawnWays::tidied(const Way& way, double near) const {
  Way out = way;
  if (way.between_ends) return out;
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
      std::optional<FlatsAndArcs> line = held_line(chain, out.lines[c], held, thickness_, near);
      if (!line || apart(chain.line, *line, thickness_) > way.departure + kUnseen) continue;
      out.lines[c] = std::move(*line);
      out.held[c] = std::move(held);
    }
  }
  out.departure = departure(out.lines);
  return out;
}

std::optional<Way> RedrawnWays::between(const Way& one, const Way& other, double share, double near) const {
  Way out = one;
  out.between_ends = false;
  for (std::size_t c = 0; c < chains_.size(); ++c) {
    for (std::size_t j = 0; j < out.lines[c].joints.size(); ++j)
      out.lines[c].joints[j] = (1 - share) * one.lines[c].joints[j] + share * other.lines[c].joints[j];
    for (std::size_t i = 0; i < out.lines[c].size(); ++i) {
      std::optional<double>& chord = out.held[c].chord[i];
      if (chord) *chord += share * (*other.held[c].chord[i] - *chord);
    }
    std::optional<FlatsAndArcs> line = held_line(chains_[c], out.lines[c], out.held[c], thickness_, near);
    if (!line) return std::nullopt;
    out.lines[c] = std::move(*line);
  }
  out.departure = departure(out.lines);
  return out;
}

double RedrawnWays::departure(const std::vector<FlatsAndArcs>& lines) const {
  double most = 0;
  for (std::size_t c = 0; c < chains_.size(); ++c)
    most = std::max(most, apart(chains_[c].line, lines[c], thickness_));
  return most;
}

}  // namespace arrisline
