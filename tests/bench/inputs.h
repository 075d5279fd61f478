// What the benchmarks work on: the example files, ordinary mouldings, and profiles of any length put together
// by a fixed rule.
#pragma once

#include <string>
#include <vector>

#include "arrisline/plan.h"
#include "arrisline/read.h"

namespace arrisline::bench {

inline const std::string kExamples = ARRISLINE_SOURCE_DIR "/examples/";

/// The value, or the end of the program with what was wrong.
template <class T>
T need(Reading<T> reading);
extern template Section need(Reading<Section>);
extern template Kit need(Reading<Kit>);

/// As the program plans: the best found in ten seconds.
PlanOptions within_limit();

/// Names of the example profiles, in order.
std::vector<std::string> example_profiles();

/// The even pairs from 2 to 18, with two rebate planes and six irons, as examples/half-set.kit.
Kit half_set();
Kit pair_of_sixes();
/// Every pair from 1 to 18, two rebate planes and a plough.
Kit full_set();
/// `count` planes, 3 or more: a rebate plane and a pair of sixes first, then pairs, irons and rebate planes.
Kit kit_of(int count);

/// Ordinary edge mouldings of one to six elements.
std::vector<Section> ordinary();

/// A stepped moulding of `elements` elements of its own kind for each `variant`: ovolos, cavettos, steps,
/// fillets and bevels, all within reach of a pair of sixes.
Section moulding_of(int elements, int variant);

}  // namespace arrisline::bench
