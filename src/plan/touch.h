// Sliding a sole in along the plane until it touches: where it bears, and what that is worth as guidance.
#pragma once

#include <span>
#include <vector>

#include "plan/sweep.h"

namespace arrisline {

/// The constants of rule 4 (docs/model.md).
inline constexpr double kTouch = 0.02;      // mm along the plane within which the sole counts as touching
inline constexpr double kOffMiddle = 0.02;  // of the width: a contact nearer the middle guides neither side
inline constexpr double kPatchArc = 20;  // degrees of the sole from which one patch guides like two contacts
inline constexpr double kWellLaidImbalance = 0.15;
inline constexpr double kWellLaidReach =
    0.48;  // of the width: contacts farther out are lost to a slip of the gauge

/// One stretch of the sole that bears on the wood. u in mm across the sole.
struct Contact {
  double from = 0;
  double to = 0;
  double peak = 0;          // where it is hardest against the wood
  bool plain_edge = false;  // the edge of the sole on plain wood that runs on under it: guides nothing
  bool tip = false;         // the knife edge of a lip that is hollowed out beneath: no guide to lean on
  bool arris = false;       // of one that is long for its sole: its hardest place is a corner of the wood
  bool broken = false;      // by a nick too narrow to tell whether it is one contact or two
};

struct Touch {
  bool any = false;
  double height = 0;  // mm along the plane above the pose at which the sole first touches; may be negative
  std::vector<Contact> contacts;  // u rising
};

/// Slides the sole in until it touches the wood whose boundary pieces these are; all that comes within
/// `within` mm along the plane is a contact.
Touch touch(std::span<const Edge> edges, const Sweep& sweep, double within = kTouch);

/// How the sole is guided by what it touches.
struct Guidance {
  bool two_arrises = false;
  double left = 0;  // outermost contacts that count, u in mm
  double right = 0;
  double imbalance = 0;  // |left + right| / width
  bool vague = false;    // a contact is so long a patch that where it bears hardest is a matter of hairs
  bool narrow = false;   // an arris bears on much of so narrow a sole
  bool well_laid() const { return two_arrises && !vague && imbalance <= kWellLaidImbalance; }
};

/// Stricter than the rule in two places: an edge of the sole that bears on plain wood beside good rails
/// spoils them, and so does the tip of an undercut lip.
Guidance guidance(const Touch& touch, const Plane& plane);

}  // namespace arrisline
