// What a fitted line leaves out of its tracing.
#pragma once

#include "trace/chain.h"

namespace arrisline {

/// How far the measured point lies from the line that is farthest from it, mm; the two ends run on. Each link
/// was held against its own samples as if it had no ends: this tells where it leaves some of them out.
double farthest_off(const Samples& samples, const FlatsAndArcs& line);

/// Whether an inner joint lies where the samples pass from one link to the next. Where two links all but
/// touch their crossing can run away along them, and a flat across a circle crosses it on the far side too:
/// no distance tells of either.
bool joint_stays(const Samples& samples, const Fitted& fitted, std::size_t joint, const Allowed& allowed);
/// Whether each does.
bool joints_stay(const Samples& samples, const Fitted& fitted, const Allowed& allowed);

/// How far a place lies from the line through the samples, mm.
double distance_from(const Samples& samples, Point place);
/// How far the joint lies from the line through the samples that is farthest from it, mm; the two ends are
/// none.
double farthest_joint(const Samples& samples, const Fitted& fitted);

}  // namespace arrisline
