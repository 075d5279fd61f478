// What a plan asks of the maker: changes, settings, strokes, time, shavings.
#pragma once

#include <string>
#include <vector>

#include "arrisline/plan.h"

namespace arrisline {

struct Shavings {
  std::string plane;  // as the maker calls it
  double area = 0;    // mm² of section
};

struct Work {
  std::size_t cuts = 0;
  std::size_t plane_changes = 0;  // taking up the first plane is none
  std::size_t turns = 0;          // of the blank, end for end or over; it lies face up at first
  int settings = 0;
  double strokes = 0;              // each the length of the stick; not rounded
  double minutes = 0;              // at the shop's stroke rate
  std::vector<Shavings> shavings;  // by plane, in order of use
};

Work work_of(const Plan& plan, const Kit& kit);

}  // namespace arrisline
