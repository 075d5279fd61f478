// Replays the plan for combinations of slips and keeps the worst of each element. Few settings: every
// combination of signs. Many: for each element the settings that move it, each to the side where it does so
// alone, and then signs turned one at a time while that makes it worse. Shown by
// tests/slips/gauge_error_test.cpp.
#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "arrisline/slips.h"
#include "slips/layout.h"
#include "slips/off_line.h"

namespace arrisline {

namespace {

constexpr std::size_t kEverySign = 8;     // settings up to which every combination of signs is tried
constexpr std::size_t kMostTried = 2000;  // replays of one plan
constexpr double kWorse = 2e-3;           // mm; less may be the measuring
constexpr double kMostImbalance = 0.5;    // rule 4 of docs/model.md

using Signs = std::vector<int>;  // −1, 0 or 1 for each setting

struct Outcome {
  std::vector<OffLine> elements;
  std::vector<Seat> seats;  // of the cuts on two arrises
};

bool rail_lost(const Seat& seat) {
  return !seat.guidance.two_arrises || seat.guidance.imbalance > kMostImbalance;
}

/// What is to be found at its worst: lost and left of each element, then how far aside each ride is set down,
/// and how unevenly.
std::vector<double> figures(const Outcome& outcome) {
  std::vector<double> out;
  for (const OffLine& element : outcome.elements) {
    out.push_back(element.lost);
    out.push_back(element.left);
  }
  for (const Seat& seat : outcome.seats) {
    out.push_back(rail_lost(seat) ? 0 : seat.aside);
    out.push_back(rail_lost(seat) ? 1 : seat.guidance.imbalance);
  }
  return out;
}

class Slips {
 public:
  Slips(const Plan& plan, double error) : plan_(plan), error_(error), layout_(plan) {
    out_.error = error;
    for (std::size_t i = 0; i < plan.section.elements.size(); ++i)
      out_.elements.push_back({static_cast<int>(i), 0, 0});
    for (const Cut& cut : plan.cuts)
      if (cut.rides == Rides::two_arrises) out_.rides.push_back({cut.number, 0, 0, false});
  }

  GaugeError run();

 private:
  const Outcome& replay(const Signs& signs);
  void keep(const Outcome& outcome);
  SettingOff alone(std::size_t setting, const Outcome& as_set);
  void every_sign();
  void seek();
  void climb(Signs signs, const std::vector<std::size_t>& settings, std::size_t figure);

  const Plan& plan_;
  const double error_;
  const Layout layout_;
  std::map<Signs, Outcome> tried_;
  GaugeError out_;
};

const Outcome& Slips::replay(const Signs& signs) {
  const auto known = tried_.find(signs);
  if (known != tried_.end()) return known->second;
  std::vector<double> off;
  for (const int sign : signs) off.push_back(sign * error_);
  const Slipped slipped = layout_.slip(off);
  std::vector<Sweep> sweeps;
  Outcome outcome;
  for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
    for (const Pose& pose : slipped.poses[i]) sweeps.emplace_back(plan_.cuts[i].plane, pose);
    if (plan_.cuts[i].rides == Rides::two_arrises) outcome.seats.push_back(slipped.seats[i]);
  }
  outcome.elements = off_line(plan_.section, sweeps);
  keep(outcome);
  return tried_.emplace(signs, std::move(outcome)).first->second;
}

void Slips::keep(const Outcome& outcome) {
  for (std::size_t i = 0; i < out_.elements.size(); ++i) {
    out_.elements[i].lost = std::max(out_.elements[i].lost, outcome.elements[i].lost);
    out_.elements[i].left = std::max(out_.elements[i].left, outcome.elements[i].left);
  }
  for (std::size_t k = 0; k < out_.rides.size(); ++k) {
    const Seat& seat = outcome.seats[k];
    RideOff& ride = out_.rides[k];
    if (rail_lost(seat)) {
      ride.rail_lost = true;
      continue;
    }
    ride.imbalance = std::max(ride.imbalance, seat.guidance.imbalance);
    ride.aside = std::max(ride.aside, seat.aside);
  }
}

SettingOff Slips::alone(std::size_t setting, const Outcome& as_set) {
  const Setting& s = layout_.settings()[setting];
  SettingOff out;
  out.from = s.from;
  out.at = s.at;
  out.set = s.set;
  for (const std::size_t cut : s.cuts) out.cuts.push_back(plan_.cuts[cut].number);
  for (const int sign : {1, -1}) {
    Signs signs(layout_.settings().size());
    signs[setting] = sign;
    const Outcome& outcome = replay(signs);
    for (std::size_t i = 0; i < outcome.elements.size(); ++i) {
      for (const bool lost : {true, false}) {
        const double more = lost ? outcome.elements[i].lost - as_set.elements[i].lost
                                 : outcome.elements[i].left - as_set.elements[i].left;
        if (more <= out.moves + kWorse) continue;
        out.moves = more;
        out.element = static_cast<int>(i);
        out.lost = lost;
      }
    }
    for (std::size_t k = 0; k < out_.rides.size(); ++k) {
      const Seat& seat = outcome.seats[k];
      if (!rail_lost(seat)) {
        out.aside = std::max(out.aside, seat.aside - as_set.seats[k].aside);
        continue;
      }
      const int cut = out_.rides[k].cut;
      const bool known = std::find(out.loses.begin(), out.loses.end(), cut) != out.loses.end();
      if (!known && !rail_lost(as_set.seats[k])) out.loses.push_back(cut);
    }
  }
  std::sort(out.loses.begin(), out.loses.end());
  return out;
}

void Slips::every_sign() {
  const std::size_t n = layout_.settings().size();
  for (std::size_t bits = 0; bits < std::size_t{1} << n; ++bits) {
    Signs signs;
    for (std::size_t i = 0; i < n; ++i) signs.push_back((bits >> i & 1) != 0 ? 1 : -1);
    replay(signs);
  }
}

/// Turns the signs of these settings one at a time while that makes the figure worse.
void Slips::climb(Signs signs, const std::vector<std::size_t>& settings, std::size_t figure) {
  double here = figures(replay(signs))[figure];
  for (bool worse = true; worse;) {
    worse = false;
    for (const std::size_t i : settings) {
      for (const int sign : {-1, 1}) {
        if (sign == signs[i] || tried_.size() >= kMostTried) continue;
        Signs next = signs;
        next[i] = sign;
        const double there = figures(replay(next))[figure];
        if (there <= here + kWorse) continue;
        here = there;
        signs = next;
        worse = true;
      }
    }
  }
}

void Slips::seek() {
  const std::size_t n = layout_.settings().size();
  const std::vector<double> as_set = figures(replay(Signs(n)));
  for (std::size_t figure = 0; figure < as_set.size(); ++figure) {
    Signs worst(n);
    std::vector<std::size_t> moving;
    for (std::size_t i = 0; i < n; ++i) {
      double most = as_set[figure];
      bool moves = false;
      for (const int sign : {1, -1}) {
        Signs signs(n);
        signs[i] = sign;
        const std::vector<double> here = figures(replay(signs));
        // What it takes from an element and what it leaves on it are two ends of one movement.
        moves = moves || std::abs(here[figure] - as_set[figure]) > kWorse ||
                std::abs(here[figure ^ 1] - as_set[figure ^ 1]) > kWorse;
        if (here[figure] <= most) continue;
        most = here[figure];
        worst[i] = sign;
      }
      if (moves) moving.push_back(i);
    }
    climb(worst, moving, figure);
  }
}

GaugeError Slips::run() {
  const std::size_t n = layout_.settings().size();
  const Outcome as_set = replay(Signs(n));
  for (std::size_t i = 0; i < n; ++i) out_.settings.push_back(alone(i, as_set));
  out_.every_sign = n <= kEverySign;
  out_.every_sign ? every_sign() : seek();
  const auto rank = [](const SettingOff& setting) {
    return std::make_tuple(std::llround(setting.moves / kWorse), setting.loses.size(),
                           std::llround(setting.aside / kWorse));
  };
  std::stable_sort(out_.settings.begin(), out_.settings.end(),
                   [&](const SettingOff& a, const SettingOff& b) { return rank(a) > rank(b); });
  return out_;
}

}  // namespace

GaugeError gauge_error(const Plan& plan, double error) {
  return Slips(plan, error).run();
}

}  // namespace arrisline
