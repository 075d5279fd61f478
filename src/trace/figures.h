// How many figures a line takes to say, as a maker would say them.
#pragma once

#include <cstddef>

#include "arrisline/trace.h"
#include "trace/chain.h"

namespace arrisline {

constexpr double kFiguresOfFlat = 2;

/// Two of a link, one more of an arc, one less for each end at which it runs on from its neighbour or stands
/// square to it, as links of mouldings do where one of the two is flat; by some degrees, as a short link
/// does.
double figures_of_link(const Fitted& fitted, std::size_t link);
/// Whether the links at an inner joint do so, as nearly as their lengths and their samples tell.
bool is_ruled(const Fitted& fitted, std::size_t joint, const Allowed& allowed);
/// Of the whole line, one less for each joint of that sort.
double figures_of(const Fitted& fitted, const Allowed& allowed);

/// How many of the figures of a profile's elements are no whole divisions, nor radii of planes.
int odd_figures(const FittedProfile& profile, const FitOptions& options);

}  // namespace arrisline
