// Mouldings of the classical orders and by Nicholson's rules, at three sizes each, stuck with a half set, and
// with no more planes than it takes: fewer are shown not to do by planning with less of the set.
#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::need;

namespace {

/// The half set of the examples: even numbers from 2 to 18, two rebate planes and a plough.
const Kit& half_set() {
  static const Kit kit = need(read_kit_file(ARRISLINE_SOURCE_DIR "/examples/half-set.kit"));
  return kit;
}

template <class Keep>
Kit only(Keep keep) {
  Kit kit = half_set();
  kit.planes.erase(
      std::remove_if(kit.planes.begin(), kit.planes.end(), [&](const Plane& plane) { return !keep(plane); }),
      kit.planes.end());
  return kit;
}

/// A moulding in parts of its order. A chain holds each figure in braces, as parts.
struct Moulding {
  const char* thickness;  // of the stock, in parts
  const char* chain;
};

std::string sized(const std::string& text, double part) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] != '{') {
      out += text[at++];
      continue;
    }
    const std::size_t end = text.find('}', at);
    out += std::to_string(part * std::stod(text.substr(at + 1, end - at - 1)));
    at = end + 1;
  }
  return out;
}

Section section_of(const Moulding& moulding, double part) {
  return need(read_profile("units inch\nstock 3 wide, " + sized(moulding.thickness, part) + " thick\n" +
                               sized(moulding.chain, part),
                           "order.profile"));
}

/// A size, the part in inches, and the planes that do.
struct Size {
  double part;
  std::vector<std::string> planes;
};

int kind_of(const Plane& plane) {
  return plane.is_flat() ? 0 : plane.kind == PlaneKind::hollow ? 1 : 2;
}

/// The half set makes it; so do the planes named, and it uses every one of them; of none of the three kinds
/// (flat, hollow, round) would fewer do, with all the rest of the set at hand, and so no fewer planes in all.
void makes(const Moulding& moulding, const std::vector<Size>& sizes) {
  for (const Size& size : sizes) {
    INFO("a part of " << size.part << " in: " << sized(moulding.chain, size.part));
    const Section section = section_of(moulding, size.part);
    const Plan plan = make_plan(section, half_set(), {});
    REQUIRE(plan.feasible);
    CHECK(faults(plan) == "");

    const auto named = [&](const Plane& plane) {
      return std::count(size.planes.begin(), size.planes.end(), plane.label) > 0;
    };
    const Kit few = only(named);
    REQUIRE(few.planes.size() == size.planes.size());
    const Plan with_few = make_plan(section, few, {});
    REQUIRE(with_few.feasible);
    CHECK(faults(with_few) == "");
    std::set<std::string> used;
    for (const Cut& cut : with_few.cuts)
      if (cut.plane.kind != PlaneKind::scraper) used.insert(cut.plane.label);
    CHECK(used.size() == size.planes.size());

    std::vector<int> kinds(3, 0);
    for (const Plane& plane : few.planes) ++kinds[static_cast<std::size_t>(kind_of(plane))];
    for (int kind = 0; kind < 3; ++kind) {
      // One of a kind less is none.
      REQUIRE(kinds[static_cast<std::size_t>(kind)] <= 1);
      if (kinds[static_cast<std::size_t>(kind)] == 0) continue;
      INFO("without any plane of kind " << kind);
      CHECK_FALSE(
          make_plan(section, only([&](const Plane& plane) { return kind_of(plane) != kind; }), {}).feasible);
    }
  }
}

const std::string kWide = "rebate 1 1/4";

}  // namespace

// Published: Cyclopedia of Architecture, Carpentry and Building, vol. 7, §§40–41, in parts: torus 12
// projecting 6, listel 3 by 3, congé a quarter of 3. The plinth under it is a piece of its own, as the torus
// runs tangent to it.
TEST_CASE("Tuscan base above its plinth", "[plan][orders][campaign]") {
  makes({"{18}", "start face {9}\ncavetto {3}\nstep down {3}\ntorus {12}\n"},
        {{1 / 24.0, {kWide, "hollow 4", "round 2"}},
         {1 / 16.0, {kWide, "hollow 6", "round 2"}},
         {1 / 12.0, {kWide, "hollow 8", "round 4"}}});
}

// Published: as above, §54, the Doric mutular cornice: a quarter-round of 3.5 by 3.5 under a fillet of 1.5
// that projects 1, and over one of .5.
TEST_CASE("Doric quarter-round between its fillets", "[plan][orders]") {
  makes({"{8}",
         "start face {5}\nfillet out {1}\nstep down {1.5}\novolo {3.5}\nfillet out {.5}\nstep down {3}\n"},
        {{1 / 14.0, {kWide, "hollow 4"}}, {3 / 28.0, {kWide, "hollow 6"}}, {1 / 7.0, {kWide, "hollow 8"}}});
}

// Published: as above, the crown of the same cornice: fillet 1.2, cyma recta 6 by 6, fillet 3.
TEST_CASE("Doric cyma recta between its fillets", "[plan][orders]") {
  makes({"{10.2}", "start face {6}\nstep down {1.2}\nogee out {6} down {6}\nstep down {3}\n"},
        {{1 / 12.0, {kWide, "hollow 4", "round 4"}},
         {1 / 8.0, {kWide, "hollow 6", "round 6"}},
         {1 / 6.0, {kWide, "hollow 8", "round 8"}}});
}

// Published: Vitruvius 3.5.2 (tr. Morgan), the Attic base of a column 48 across: the lower torus 6 under its
// fillet of 1.
TEST_CASE("lower torus of the Attic base with its fillet", "[plan][orders]") {
  makes({"{7}", "start face {3}\nstep down {1}\ntorus {6}\n"},
        {{1 / 12.0, {kWide, "hollow 4"}}, {1 / 8.0, {kWide, "hollow 6"}}, {1 / 6.0, {kWide, "hollow 8"}}});
}

// Published: as above, the upper torus 4, with the fillet of 1 below it that the scotia starts from.
TEST_CASE("upper torus of the Attic base with its fillet", "[plan][orders]") {
  makes({"{5}", "start face {2}\ntorus {4}\nstep down {1}\n"},
        {{1 / 8.0, {kWide, "hollow 4"}}, {3 / 16.0, {kWide, "hollow 6"}}, {1 / 4.0, {kWide, "hollow 8"}}});
}

// Published: Peter Nicholson, The Mechanic's Companion: ovolo and cavetto are quadrants.
TEST_CASE("Nicholson's ovolo and cavetto", "[plan][orders]") {
  makes({"{6}", "start face {4}\novolo {4}\n"},
        {{1 / 16.0, {kWide, "hollow 4"}}, {3 / 32.0, {kWide, "hollow 6"}}, {1 / 8.0, {kWide, "hollow 8"}}});
  makes({"{6}", "start face {4}\ncavetto {4}\n"},
        {{1 / 16.0, {kWide, "round 4"}}, {3 / 32.0, {kWide, "round 6"}}, {1 / 8.0, {kWide, "round 8"}}});
}

// Published: Nicholson, as above: a cyma of unequal height and projection is two arcs on equilateral
// triangles, so r = ½√(H² + P²): of H 4, P 3 radius 2.5, each arc 2.617994 long and .334936 high (Circular
// Segment, CRC Concise Encyclopedia of Mathematics).
TEST_CASE("Nicholson's cyma recta and reversa, one pose to an arc", "[plan][orders]") {
  for (const std::string shape : {"ogee", "reverse-ogee"}) {
    for (const std::string size : {"out {3} down {4}", "out {4} down {3}"}) {
      const std::string chain = "start face {4}\n" + shape + " " + size +
                                (size == "out {4} down {3}" ? "\n" : "\nfillet out {1}\n");
      INFO(chain);
      const Moulding cyma{"{6}", chain.c_str()};
      makes(cyma, {{.1, {kWide, "hollow 4", "round 4"}},
                   {.15, {kWide, "hollow 6", "round 6"}},
                   {.2, {kWide, "hollow 8", "round 8"}}});
      for (const double part : {.1, .15, .2}) {
        const Section section = section_of(cyma, part);
        const double scale = part * kMmPerInch;
        const Plan plan = make_plan(section, only([&](const Plane& plane) {
                                      return plane.is_flat() || std::abs(plane.radius - 2.5 * scale) < 1e-9;
                                    }),
                                    {});
        REQUIRE(plan.feasible);
        int arcs = 0;
        for (const Edge& edge : section.target) {
          if (!edge.is_arc()) continue;
          ++arcs;
          CHECK(radius(edge) / scale == Approx(2.5).epsilon(0).margin(1e-4));
          CHECK(length(edge) / scale == Approx(2.617994).epsilon(0).margin(1e-4));
          const Point chord = edge.to - edge.from;
          const double rise = distance(point_at(edge, 0.5), edge.from + 0.5 * chord);
          CHECK(rise / scale == Approx(.334936).epsilon(0).margin(1e-4));
          // The sole as long as its arc lies along all of it at one tilt, that of its middle.
          const double side = edge.turn == Turn::left ? 1 : -1;
          const double middle = tilt_of(side * (point_at(edge, 0.5) - edge.centre));
          const PlaneKind kind = edge.turn == Turn::left ? PlaneKind::hollow : PlaneKind::round;
          CHECK(std::any_of(plan.cuts.begin(), plan.cuts.end(), [&](const Cut& cut) {
            return cut.plane.kind == kind &&
                   std::any_of(cut.poses.begin(), cut.poses.end(), [&](const Pose& pose) {
                     return std::abs(wrap_degrees(pose.tilt - middle)) < 0.2;
                   });
          }));
        }
        CHECK(arcs == 2);
      }
    }
  }
}

// Published: Thomas Sheraton, Drawing-Book (1793), height in 7 parts (reconstruction): the upper arc of 3
// starts level under its fillet and the foot stands 3 out. Computed: a sole of w = r that covers the arc to
// an angle A above level leans A − 30° down, past the foot, which lies atan(4/3) = 53.13° down and 5 from the
// arc's centre; its side clears it up to 53.13° − asin(1.5/5) = 35.67°, so A ends at 65.67°, and the top of
// the arc cannot be reached.
TEST_CASE("Sheraton's scotia is out of reach under its top", "[plan][orders][campaign]") {
  for (const double part : {1 / 12.0, 1 / 8.0, 1 / 6.0}) {
    const Plan plan =
        make_plan(section_of({"{10}", "start face {4}\nstep down {1}\nscotia {7}\nfillet out {1}\n"}, part),
                  half_set(), {});
    REQUIRE_FALSE(plan.feasible);
    CHECK_FALSE(plan.undecided);
    CHECK(std::any_of(plan.reasons.begin(), plan.reasons.end(), [&](const Reason& reason) {
      return reason.element >= 0 &&
             plan.section.elements[static_cast<std::size_t>(reason.element)].number == 2;
    }));
  }
}
