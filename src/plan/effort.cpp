// Shown by tests/plan/sequence_test.cpp and tests/plan/prefer_test.cpp.
#include "plan/effort.h"

#include "plan/sequence.h"

namespace arrisline {

namespace {

/// No plan's effort comes near this many times a weight of 1.
constexpr double kAboveAll = 1e4;

}  // namespace

const char* word(Prefer prefer) {
  switch (prefer) {
    case Prefer::least_effort:
      return "least-effort";
    case Prefer::fewest_planes:
      return "fewest-planes";
    case Prefer::fewest_cuts:
      return "fewest-cuts";
    case Prefer::least_strokes:
      return "least-strokes";
  }
  return "";
}

Weights weights_for(const Shop& shop, Prefer prefer) {
  Weights weights;
  weights.change = shop.weight_change;
  weights.cut = shop.weight_cut;
  weights.setting = shop.weight_setting;
  weights.stroke = shop.weight_stroke;
  weights.wear = shop.weight_wear;
  weights.ill_laid = shop.weight_uneven;
  switch (prefer) {
    case Prefer::least_effort:
      break;
    case Prefer::fewest_planes:
      weights.plane = kAboveAll;
      break;
    case Prefer::fewest_cuts:
      weights.cut += kAboveAll;
      break;
    case Prefer::least_strokes:
      weights.plain_stroke = kAboveAll;
      break;
  }
  return weights;
}

double effort_of(const Weights& weights, const Step& step, const Step* previous) {
  double effort = weights.cut + weights.setting * step.settings + weighed(weights, step.strokes) +
                  weights.wear * step.wear;
  if (step.ill_laid) effort += weights.ill_laid;
  if (previous == nullptr || previous->taken_up != step.taken_up) effort += weights.change;
  // Turning the blank over or end for end is a change like taking up another plane.
  if (step.lies != lies_after(previous)) effort += weights.change;
  return effort;
}

}  // namespace arrisline
