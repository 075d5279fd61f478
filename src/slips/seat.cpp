// Downhill from the pose with growing steps, then golden section: on two rails the height has a sharp least
// where both bear. Shown by tests/slips/layout_test.cpp.
#include <algorithm>
#include <cmath>
#include <optional>

#include "plan/rest.h"
#include "slips/layout.h"

namespace arrisline {

namespace {

constexpr double kFirstStep = 0.002;  // of the sole's width
constexpr double kReach = 0.25;       // of the sole's width: farther off it is another seat
constexpr double kSeated = 1e-7;      // mm, to which the seat is found
const double kGolden = (std::sqrt(5.0) - 1) / 2;

/// How far across the sole the plane finds its seat: the nearest place where it stands lowest. Nothing where
/// there is no wood under it.
std::optional<double> settle(const Wood& wood, const Plane& plane, const Pose& pose) {
  const auto height = [&](double s) {
    return rest_height(wood.edges(), Sweep(plane, {pose.at + s * across(pose.tilt), pose.tilt}));
  };
  const double here = height(0);
  if (!std::isfinite(here)) return std::nullopt;
  double step = kFirstStep * plane.width;
  double low = -step, high = step;
  for (const double way : {1.0, -1.0}) {
    double behind = 0, at = 0, lowest = here;
    double next = way * step;
    while (std::abs(next) <= kReach * plane.width && height(next) < lowest) {
      lowest = height(next);
      behind = at;
      at = next;
      next = at + 1.5 * (at - behind);
    }
    if (at == 0) continue;
    low = std::min(behind, next);
    high = std::max(behind, next);
    break;
  }
  double a = high - kGolden * (high - low), b = low + kGolden * (high - low);
  double at_a = height(a), at_b = height(b);
  while (high - low > kSeated) {
    if (at_a < at_b) {
      high = b;
      b = a;
      at_b = at_a;
      a = high - kGolden * (high - low);
      at_a = height(a);
    } else {
      low = a;
      a = b;
      at_a = at_b;
      b = low + kGolden * (high - low);
      at_b = height(b);
    }
  }
  return at_a < at_b ? a : b;
}

}  // namespace

Seat seat(const Wood& wood, const Plane& plane, const Pose& pose) {
  Seat out;
  const std::optional<double> s = settle(wood, plane, pose);
  if (!s) return out;
  out.aside = std::abs(*s);
  const Pose there{pose.at + *s * across(pose.tilt), pose.tilt};
  out.guidance = guidance(touch(wood.edges(), Sweep(plane, there)), plane);
  return out;
}

}  // namespace arrisline
