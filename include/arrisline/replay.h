// Replay: an independent judgement of a plan, from its figures alone.
#pragma once

#include <string>
#include <vector>

#include "arrisline/plan.h"

namespace arrisline {

/// One thing that is wrong with a plan.
struct Finding {
  int cut = 0;   // number of the cut, 0 for the plan as a whole
  int rule = 0;  // of docs/model.md, 1–6; 0 for a stated figure or a malformed member
  std::string text;
};

struct ReplayResult {
  std::vector<Finding> findings;  // empty: the plan holds
  double max_height = 0;          // mm left above the target before any scraper
  double left_area = 0;           // mm²
  double deepest_gouge = 0;       // mm
};

struct ReplayOptions {
  double tolerance = 0.2;
  double scrape = 0.4;
};

/// Replays the poses in order on the blank and judges rules 1–4 (and what can be judged of 5) and the stated
/// figures. Shares no code with the planner's own judging beyond the geometry of edges and poses.
ReplayResult replay(const Plan& plan, const ReplayOptions& options);

/// The second opinion asked of every plan before it is shown: the same poses cut with a polygon clipper
/// on flattened arcs. Returns the findings where the areas disagree beyond the stated tolerance.
std::vector<Finding> second_opinion(const Plan& plan);

}  // namespace arrisline
