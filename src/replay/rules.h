// The single judgements that replay() puts together. Each returns what is wrong in trade words, or nothing.
#pragma once

#include <string>
#include <vector>

#include "arrisline/replay.h"
#include "replay/depth.h"
#include "replay/flattened.h"
#include "replay/standing.h"

namespace arrisline::replaying {

/// "0.31"; four decimals under a tenth: "0.0108".
std::string figure(double value);
/// "near x 12.70, y 3.18".
std::string near(Point p);

/// Figures with which no replay can begin: not finite, a plane without width, an outline of fewer than two
/// edges.
std::vector<Finding> unusable(const Plan& plan);

Loop interior_to_the_left(const Loop& loop);
/// A length that reaches beyond the blank from every pose of the plan.
double far_beyond(const Plan& plan);

/// The target must lie in the blank, and not cross itself.
std::vector<std::string> outline_faults(const Section& section, const Loop& target,
                                        const ClipperLib::Paths& flat_target);

/// Rule 1: the deepest the sole and sides reach into the target, or the target's outline into the swept
/// region.
Depth gouge(const Swept& swept, const Loop& target, Depth floor);

/// The body beside and above the sole must be clear of the wood still there.
std::string body_fault(const Plane& plane, const Pose& pose, double far, const ClipperLib::Paths& wood);

/// Rule 3: arcs of the target are finished by curved or shaped soles, over at least half of each, or by as
/// few flats as the plan says that the shop allows.
std::vector<std::string> facet_faults(const Loop& target, const Plan& plan, double limit);

/// Rule 5, as far as a section shows it.
std::vector<std::string> register_faults(const Standing& wood, const Section& section, const Cut& cut);

/// How the blank is said to lie: the plane comes from above, and what passes below the underside is said to
/// overhang the board.
std::vector<std::string> lying_faults(const Section& section, const Cut& cut);

/// A hollow or round is not gauged: it stands as set where it is drawn.
std::string set_fault(const Cut& cut);

}  // namespace arrisline::replaying
