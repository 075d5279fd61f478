// The sizes are the trade's usual ones by common practice, no source: ploughs by sixteenths to 1/4 in and
// then 3/8 and 1/2, rebate planes by eighths and quarters, hollows and rounds by their numbers. Shown by
// tests/plan/remedies_test.cpp.
#include "plan/candidates.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "plan/why_arc.h"
#include "wording/figures.h"

namespace arrisline {

namespace {

constexpr double kSixteenth = kMmPerInch / 16;
constexpr int kGreatestNumber = 24;  // beyond, hollows and rounds go by their radius
constexpr double kSamePlane = 0.05;  // mm by which radius and width of one and the same plane may differ

double table_radius(int number) {
  return number * kSixteenth;
}

/// Whether this kit's planes of that number, if any, have the usual radius: else the name would mislead.
bool numbered_as_usual(const Kit& kit, int number) {
  return std::none_of(kit.planes.begin(), kit.planes.end(), [&](const Plane& plane) {
    return plane.number == number && std::abs(plane.radius - table_radius(number)) > kSamePlane;
  });
}

Plane of_radius(PlaneKind kind, double radius, double width, Unit unit) {
  Plane plane;
  plane.kind = kind;
  plane.radius = radius;
  plane.width = width;
  plane.label = std::string(word(kind)) + " radius " + about(radius, unit);
  if (std::abs(width - radius) > kSamePlane) plane.label += " width " + about(width, unit);
  return plane;
}

Plane flat(PlaneKind kind, double width, Unit unit) {
  Plane plane;
  plane.kind = kind;
  plane.width = width;
  plane.label = std::string(word(kind)) + " " + about(width, unit);
  return plane;
}

/// Widths a maker can buy, widest first, in mm.
std::vector<double> usual_widths(PlaneKind kind, Unit unit) {
  std::vector<double> out;
  if (unit == Unit::mm)
    return kind == PlaneKind::plough ? std::vector<double>{12, 10, 8, 6, 5, 4, 3}
                                     : std::vector<double>{30, 20, 15, 12, 10, 6};
  for (const int sixteenths :
       kind == PlaneKind::plough ? std::vector<int>{8, 6, 5, 4, 3, 2} : std::vector<int>{20, 16, 12, 8, 6, 4})
    out.push_back(sixteenths * kSixteenth);
  return out;
}

/// Each plane once, without those of the kit; a plough of the kit that does not go so far or so deep is not
/// counted as the same.
class List {
 public:
  explicit List(const Kit& kit) : kit_(kit) {}

  void add(Plane plane) {
    if (had(kit_.planes, plane) || had(planes_, plane)) return;
    planes_.push_back(std::move(plane));
  }
  void add_scraper() {
    if (kit_.scraper) return;
    Plane plane;
    plane.kind = PlaneKind::scraper;
    plane.label = "scraper";
    planes_.push_back(std::move(plane));
  }
  std::vector<Plane> take() { return std::move(planes_); }

 private:
  static bool had(const std::vector<Plane>& planes, const Plane& plane) {
    return std::any_of(planes.begin(), planes.end(), [&](const Plane& other) {
      if (other.kind != plane.kind || std::abs(other.width - plane.width) > kSamePlane ||
          std::abs(other.radius - plane.radius) > kSamePlane)
        return false;
      return plane.kind != PlaneKind::plough || (other.reach >= plane.reach && other.deep >= plane.deep);
    });
  }

  const Kit& kit_;
  std::vector<Plane> planes_;
};

struct Arc {
  PlaneKind kind = PlaneKind::hollow;
  double radius = 0;
  double chord = 0;
};

Arc arc_at(const Problem& problem, int surface) {
  const Surface& s = problem.surfaces[static_cast<std::size_t>(surface)];
  const Edge& edge = problem.edge(s);
  const double half = std::min(std::abs(sweep(edge)) / 2, kPi / 2);
  return {s.bead ? PlaneKind::hollow : PlaneKind::round, radius(edge), 2 * radius(edge) * std::sin(half)};
}

/// Whether the kit's hollows and rounds go by whole millimetres, and not by numbers.
bool goes_by_millimetres(const Kit& kit) {
  const auto curved = [](const Plane& plane) { return plane.is_curved(); };
  return kit.unit == Unit::mm && std::any_of(kit.planes.begin(), kit.planes.end(), curved) &&
         std::none_of(kit.planes.begin(), kit.planes.end(),
                      [](const Plane& plane) { return plane.number > 0; });
}

/// Planes of the sizes the kit goes by that go in without bearing on their edges, so many, nearest first:
/// hollows of more, rounds of less.
void add_neighbours(const Kit& kit, const Arc& arc, int count, List& list) {
  const bool metric = goes_by_millimetres(kit);
  const double at = arc.radius / (metric ? 1 : kSixteenth);
  const bool hollow = arc.kind == PlaneKind::hollow;
  const int first = static_cast<int>(hollow ? std::ceil(at - 1e-6) : std::floor(at + 1e-6));
  for (int i = 0; i < count; ++i) {
    const int size = hollow ? first + i : first - i;
    if (size < 1) continue;
    if (metric) {
      list.add(of_radius(arc.kind, size, size, Unit::mm));
    } else if (size <= kGreatestNumber && numbered_as_usual(kit, size)) {
      list.add(numbered_plane(arc.kind, size));
    }
  }
}

/// The numbered plane of this radius. Where there is none, the nearest size that may do, which can be bought,
/// and then a plane made for the arc.
void add_matching(const Kit& kit, const Arc& arc, Unit unit, List& list) {
  const int number = static_cast<int>(std::lround(arc.radius / kSixteenth));
  const bool metric = goes_by_millimetres(kit);
  if (!metric && number >= 1 && number <= kGreatestNumber && numbered_as_usual(kit, number) &&
      std::abs(table_radius(number) - arc.radius) < 0.04) {
    list.add(numbered_plane(arc.kind, number));
    return;
  }
  if (metric || unit == Unit::inch) add_neighbours(kit, arc, 1, list);
  list.add(of_radius(arc.kind, arc.radius, arc.radius, unit));
}

/// Soles narrower than the usual 60 degrees, in sixteenths of an inch or whole millimetres.
void add_narrower(const Arc& arc, Unit unit, List& list) {
  const double division = unit == Unit::inch ? kSixteenth : 1;
  const double most = std::min(arc.radius - 1e-6, arc.chord + 1e-6);
  const int widest = static_cast<int>(std::floor(most / division));
  for (int n = widest; n * division > std::min(arc.radius, arc.chord) / 3 && n > widest - 6; --n)
    list.add(of_radius(arc.kind, arc.radius, n * division, unit));
}

}  // namespace

Plane numbered_plane(PlaneKind kind, int number) {
  Plane plane;
  plane.kind = kind;
  plane.number = number;
  plane.radius = plane.width = table_radius(number);
  plane.label = std::string(word(kind)) + " " + std::to_string(number);
  return plane;
}

std::vector<Plane> fitting_planes(const Problem& problem, const std::vector<int>& surfaces) {
  const Unit unit = problem.options.unit;
  List list(problem.kit);
  std::vector<Arc> arcs;
  std::vector<double> lengths;
  bool slanting = false;
  for (const int s : surfaces) {
    const Surface& surface = problem.surfaces[static_cast<std::size_t>(s)];
    if (surface.arc) {
      arcs.push_back(arc_at(problem, s));
    } else {
      lengths.push_back(length(problem.edge(surface)));
      slanting = slanting || !is_square(surface.tilt);
    }
  }
  for (const Arc& arc : arcs) add_matching(problem.kit, arc, unit, list);
  if (!lengths.empty()) {
    // A sole as wide as the flat, where that is a size to be had; then the others from wide to narrow.
    const double shortest = *std::min_element(lengths.begin(), lengths.end());
    const double longest = *std::max_element(lengths.begin(), lengths.end());
    const std::vector<PlaneKind> kinds = slanting
                                             ? std::vector<PlaneKind>{PlaneKind::rebate, PlaneKind::plough}
                                             : std::vector<PlaneKind>{PlaneKind::plough, PlaneKind::rebate};
    for (const PlaneKind kind : kinds) {
      for (const double width : usual_widths(kind, unit)) {
        if (width <= longest + 1e-6 || kind == PlaneKind::rebate) list.add(flat(kind, width, unit));
      }
    }
    for (const double width : usual_widths(PlaneKind::plough, unit))
      list.add(flat(PlaneKind::plough, width, unit));
    for (const double share : {1.0, 0.5}) {
      list.add(flat(slanting ? PlaneKind::rebate : PlaneKind::plough, share * shortest, unit));
    }
  }
  for (const Arc& arc : arcs) add_neighbours(problem.kit, arc, 3, list);
  for (const Arc& arc : arcs) add_narrower(arc, unit, list);
  return list.take();
}

std::vector<Plane> helping_planes(const Problem& problem, const Kit& kit, const std::vector<int>& surfaces) {
  const Unit unit = problem.options.unit;
  List list(kit);
  std::vector<Arc> arcs;
  for (const int s : surfaces) {
    if (problem.surfaces[static_cast<std::size_t>(s)].arc) arcs.push_back(arc_at(problem, s));
  }
  const Problem with = make_problem(problem.section, kit, problem.options);
  bool goes_in = false;
  for (const int s : surfaces) {
    if (!problem.surfaces[static_cast<std::size_t>(s)].arc || !what_keeps_out(with, s)) continue;
    List fitting(kit);
    add_matching(kit, arc_at(problem, s), unit, fitting);
    add_narrower(arc_at(problem, s), unit, fitting);
    for (Plane& plane : fitting.take()) {
      if (!makes_arc(with, s, plane)) continue;
      list.add(std::move(plane));
      goes_in = true;
    }
  }
  for (const Arc& arc : arcs) add_matching(kit, arc, unit, list);
  list.add_scraper();
  // No rail helps a plane that is kept out where another would go in.
  if (goes_in) return list.take();
  const bool square = std::any_of(kit.planes.begin(), kit.planes.end(),
                                  [](const Plane& plane) { return plane.kind == PlaneKind::rebate; });
  const auto add_ploughs = [&](double below) {
    for (const double width : usual_widths(PlaneKind::plough, unit)) {
      if (width < below) list.add(flat(PlaneKind::plough, width, unit));
    }
  };
  // The first rebate plane of a kit is a wide one; a second is wanted where the first does not get in.
  const std::vector<double> rebates = usual_widths(PlaneKind::rebate, unit);
  if (!square) list.add(flat(PlaneKind::rebate, rebates[2], unit));
  // The rails of a bead slant, and only a rebate plane leans.
  const bool bead =
      std::any_of(arcs.begin(), arcs.end(), [](const Arc& arc) { return arc.kind == PlaneKind::hollow; });
  if (!bead) add_ploughs(rebates[3]);
  for (std::size_t i = 3; i < rebates.size(); ++i) list.add(flat(PlaneKind::rebate, rebates[i], unit));
  if (bead) add_ploughs(rebates[3]);
  for (const Arc& arc : arcs) add_narrower(arc, unit, list);
  return list.take();
}

}  // namespace arrisline
