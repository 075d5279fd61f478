// Reasons. Shown by tests/plan/reasons_test.cpp.
#include "plan/reasons.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "plan/wood.h"

namespace arrisline {

namespace {

std::string size(double mm, Unit unit) {
  char text[32];
  if (unit == Unit::inch) {
    std::snprintf(text, sizeof text, "%.3f in", mm / kMmPerInch);
  } else {
    std::snprintf(text, sizeof text, "%.2f mm", mm);
  }
  std::string out = text;
  // The decimal mark is a point whatever the locale.
  std::replace(out.begin(), out.end(), ',', '.');
  return out;
}

int element_of(const Problem& problem, int surface) {
  return problem.section
      .source[static_cast<std::size_t>(problem.surfaces[static_cast<std::size_t>(surface)].edge)];
}

/// The plane that would fit the arc: the number whose table radius is the arc's, where there is one.
Reason::Nearest fitting_plane(double r, PlaneKind kind) {
  Reason::Nearest nearest;
  nearest.kind = kind;
  const double number = std::round(r * 16 / kMmPerInch);
  if (number >= 1 && std::abs(number * kMmPerInch / 16 - r) < 0.05) {
    nearest.number = static_cast<int>(number);
    nearest.radius = number * kMmPerInch / 16;
  } else {
    nearest.radius = r;
  }
  nearest.width = nearest.radius;  // a 60° sole
  return nearest;
}

Reason no_plane(const Problem& problem, int surface) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const PlaneKind kind = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  const double r = radius(problem.edge(arc));
  Reason reason;
  reason.element = element_of(problem, surface);
  reason.nearest = fitting_plane(r, kind);
  const Plane* closest = nullptr;
  for (const Plane& plane : problem.kit.planes) {
    if (plane.kind == kind &&
        (closest == nullptr || std::abs(plane.radius - r) < std::abs(closest->radius - r)))
      closest = &plane;
  }
  const std::string curve =
      std::string(arc.bead ? "bead" : "cove") + " of radius " + size(r, problem.options.unit);
  if (closest == nullptr) {
    reason.why = std::string("the kit has no ") + word(kind) + " for a " + curve;
    return reason;
  }
  const bool wrong_way = arc.bead ? closest->radius < r - 0.05 : closest->radius > r + 0.05;
  const bool fits = std::abs(closest->radius - r) <= 0.05;
  if (wrong_way) {
    reason.why = closest->label + (arc.bead ? " is too tight for a " : " is too flat for a ") + curve +
                 " and would bear on the edges of its sole";
  } else if (fits) {
    reason.why = closest->label + " fits the " + curve + " but its sole or side meets wood that must stay";
    reason.nearest->radius = r;
  } else {
    reason.why = closest->label + " cannot get to the " + curve + " without cutting wood that must stay";
  }
  return reason;
}

Reason no_rails(const Problem& problem, int surface) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  Reason reason;
  reason.element = element_of(problem, surface);
  const PlaneKind kind = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  reason.why =
      std::string("no flat plane of the kit can leave two arrises for the ") + word(kind) + " to ride on";
  return reason;
}

Reason no_flat(const Problem& problem, int surface) {
  const Surface& flat = problem.surfaces[static_cast<std::size_t>(surface)];
  const double len = length(problem.edge(flat));
  Reason reason;
  reason.element = element_of(problem, surface);
  double narrowest = 0;
  for (const Plane& plane : problem.kit.planes) {
    if (plane.is_flat() && (narrowest == 0 || plane.width < narrowest)) narrowest = plane.width;
  }
  if (narrowest == 0) {
    reason.why = "the kit has no plane with a flat sole";
  } else if (narrowest > len) {
    reason.why = "a flat " + size(len, problem.options.unit) +
                 " wide between walls lets in no flat sole of the kit, the narrowest being " +
                 size(narrowest, problem.options.unit);
  } else {
    reason.why = "no flat sole or side of the kit reaches it without cutting wood that must stay";
  }
  // A sole as wide as the flat helps only where it can then stand on it.
  Plane fitting;
  fitting.kind = PlaneKind::rebate;
  fitting.width = len;
  const Pose pose{point_at(problem.edge(flat), 0.5), flat.tilt};
  if (!gouges(problem.section.target, Sweep(fitting, pose), kExact)) {
    Reason::Nearest nearest;
    const bool square = is_square(flat.tilt);
    nearest.kind = square ? PlaneKind::plough : PlaneKind::rebate;
    nearest.width = len;
    reason.nearest = nearest;
  }
  return reason;
}

}  // namespace

std::vector<Reason> explain(const Problem& problem, const Composition& composition) {
  std::vector<Reason> out;
  for (const int s : composition.no_plane) out.push_back(no_plane(problem, s));
  for (const int s : composition.no_flat) out.push_back(no_flat(problem, s));
  if (out.empty()) {
    for (const int s : composition.no_rails) out.push_back(no_rails(problem, s));
  }
  if (out.empty() && composition.too_thick) {
    Reason reason;
    reason.why = "the best that the kit can do leaves " +
                 size(composition.too_thick->left.height, problem.options.unit) +
                 " of wood above the finished line, more than is allowed";
    double nearest = 1e300;
    for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
      const double d = distance(composition.too_thick->left.at, problem.edge(problem.surfaces[i]));
      if (d >= nearest) continue;
      nearest = d;
      reason.element = element_of(problem, static_cast<int>(i));
      const Surface& s = problem.surfaces[i];
      reason.nearest.reset();
      if (s.arc)
        reason.nearest =
            fitting_plane(radius(problem.edge(s)), s.bead ? PlaneKind::hollow : PlaneKind::round);
    }
    out.push_back(reason);
  }
  if (out.empty()) {
    Reason reason;
    reason.why = problem.kit.board ? "no order of the cuts found leaves every plane something to ride on and "
                                     "the blank held by a stop"
                                   : "no order of the cuts found leaves every plane something to ride on";
    out.push_back(reason);
  }
  return out;
}

}  // namespace arrisline
