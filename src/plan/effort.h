// What a cut counts, and what the maker would rather have less of.
#pragma once

#include "arrisline/plan.h"

namespace arrisline {

struct Step;

struct Strokes {
  double plain = 0;    // as they are made
  double counted = 0;  // slow ones as often as docs/how-it-plans.md says
};

/// Weights of effort (docs/how-it-plans.md). `plane` counts each plane of the kit that is used at all; it is
/// 0 but for a maker who wants few planes.
struct Weights {
  double change = 0;
  double cut = 0;
  double setting = 0;
  double stroke = 0;        // slow ones as often as they count
  double plain_stroke = 0;  // each as it is made
  double wear = 0;
  double ill_laid = 0;  // a ride that is not well laid out: taken only where nothing else serves
  double plane = 0;
};

/// The kit's own weights. With a preference, what is preferred counts so much more that nothing else
/// outweighs it, and the kit's weights decide between what is equal in it.
Weights weights_for(const Shop& shop, Prefer prefer);

/// Strokes by their weight.
inline double weighed(const Weights& weights, const Strokes& strokes) {
  return weights.stroke * strokes.counted + weights.plain_stroke * strokes.plain;
}

/// What the step adds after `previous` (null at the start); its settings are already counted.
double effort_of(const Weights& weights, const Step& step, const Step* previous);

}  // namespace arrisline
