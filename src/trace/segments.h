// The fewest flats and arcs that pass along sampled points.
#pragma once

#include <cstddef>
#include <vector>

#include "trace/samples.h"

namespace arrisline {

/// A run of samples that one flat or one arc follows: points[first] up to, but without, points[end].
struct Segment {
  std::size_t first = 0;
  std::size_t end = 0;
  bool arc = false;
  Point centre;       // of an arc
  double radius = 0;  // of an arc
};

/// How far a line may lie from samples of it: their mean over a short stretch by `tolerance`, single points
/// by their scatter besides.
struct Allowed {
  double tolerance = 0;  // mm
  double scatter = 0;    // mm, of the samples
  double rounded = 0;    // mm, that the figures of a drawing may be off by for want of decimals

  double single() const { return tolerance + kScatters * scatter; }
  double mean_of(std::size_t count) const;

  /// Standard deviations that chance is given. Of thousands of points one in some ten million strays farther.
  static constexpr double kScatters = 5.5;
};

/// Whether signed distances of consecutive samples from a line are within what is allowed.
bool follows(const std::vector<double>& distances, const Allowed& allowed);
/// The greatest share of what is allowed that they take up: at most 1 exactly where they follow.
double share_of(const std::vector<double>& distances, const Allowed& allowed);

/// What one figure more of a line (a joint, a direction, a radius) has to take off the squared distances, in
/// units of variance_of(), to be believed: the logarithm of the number of samples (G. Schwarz, Ann. Statist.
/// 6, 1978).
double figure_cost(std::size_t samples);
/// By how much so many figures more lower the sum of squared distances of so many samples by chance, mm²:
/// half as much again as one figure by itself would, as each was chosen among many.
double chance_of(double figures, std::size_t samples, const Allowed& allowed);
/// Variance that a sample is reckoned with, mm²: its scatter, and half the tolerance.
double variance_of(const Allowed& allowed);

/// How many corners a drawn line has.
std::size_t corners_of(const Samples& samples);

/// The segmentation of fewest segments, each of which follows its samples; of those the one that lies nearest
/// to them. Where samples scatter, a short segment may be lost in it, so there a segment more is taken where
/// it takes off more than its figures cost. Breaks may fall between any two of some four hundred places
/// spread over the samples, corners included. Exact over those places, by dynamic programming.
std::vector<Segment> fewest_segments(const Samples& samples, const Allowed& allowed);

}  // namespace arrisline
