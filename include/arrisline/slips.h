// What becomes of the finished line when the gauge is set a little wrong.
#pragma once

#include <vector>

#include "arrisline/plan.h"

namespace arrisline {

/// How far an element may come out off its drawn line, mm.
struct ElementOff {
  int element = 0;  // index into Section::elements
  double lost = 0;  // wood gone below the line
  double left = 0;  // wood left above it
};

/// One figure set on the gauge, and what it does when it alone is off.
struct SettingOff {
  Side from = Side::edge;
  double at = 0;          // exact plan value, mm
  double set = 0;         // as the gauge is set
  std::vector<int> cuts;  // numbers of the cuts in a row that use it
  double moves = 0;   // mm: the most it takes below an element, or leaves above it, beyond the lines as set
  int element = -1;   // index of that element; −1 where it moves none
  bool lost = false;  // whether that is wood lost, or left
  std::vector<int> loses;  // numbers of the cuts whose hollow or round it puts off its two arrises
  double aside = 0;  // mm: how much farther off its place it sets down a hollow or round that still rides
};

/// What becomes of one hollow or round on two arrises. The figures are of where both still bear.
struct RideOff {
  int cut = 0;
  double imbalance = 0;    // at worst
  double aside = 0;        // mm across the sole from its drawn place to where it settles, at worst
  bool rail_lost = false;  // somewhere one of the two no longer bears
};

/// The lines as the cut list sets them, each off by as much as `error` either way.
struct GaugeError {
  double error = 0;                  // mm
  std::vector<ElementOff> elements;  // at worst, in the order of Section::elements
  std::vector<SettingOff> settings;  // the one that matters most first
  std::vector<RideOff> rides;
  bool every_sign = false;  // all combinations of signs were tried; else the worst were sought
};

/// Replays the plan with its gauge settings off, as docs/how-it-plans.md says: each setting `error` too much,
/// `error` too little, or right. REQUIRES: a feasible plan; error ≥ 0.
GaugeError gauge_error(const Plan& plan, double error);

}  // namespace arrisline
