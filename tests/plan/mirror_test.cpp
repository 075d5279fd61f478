// Random edge mouldings in sixteenths of an inch, worked on either edge: what can be made on the one can be
// made on the other, each arc by a plane of its radius. How many cuts it takes may differ: the search is cut
// short, and ties fall one way (tests/plan/properties_test.cpp has mouldings for which it must not).
#include <algorithm>
#include <cmath>
#include <random>
#include <sstream>

#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::pair_of_sixes;

namespace {

std::string sixteenths(int n) {
  return std::to_string(n) + "/16";
}

/// A chain that starts on the face and goes out and down to the edge, every figure in sixteenths.
struct Chain {
  std::ostringstream statements;
  int out = 0;
  int down = 0;

  void add(const char* what, int across, int deeper, const char* more = "") {
    statements << what;
    if (across > 0) statements << " out " << sixteenths(across);
    if (deeper > 0) statements << " down " << sixteenths(deeper);
    statements << more << "\n";
    out += across;
    down += deeper;
  }
};

std::string random_profile(std::mt19937& random, const std::string& side) {
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  Chain chain;
  if (below(2) == 0) chain.add("step", 0, 1 + below(3));
  const int parts = 1 + below(2);
  for (int i = 0; i < parts; ++i) {
    switch (below(7)) {
      case 0:
        chain.add("bead", 6, 6);
        break;
      case 1:
        chain.add("cove", 6, 6);
        break;
      // Flat arcs whose 3/8 in radius reaches over their chords.
      case 2:
        chain.add("bead", 5, 3, " radius 3/8");
        break;
      case 3:
        chain.add("cove", 3, 5, " radius 3/8");
        break;
      case 4:
        chain.add("bevel", 2 + below(4), 2 + below(4));
        break;
      case 5:
        chain.add("fillet", 1 + below(4), 0);
        chain.add("step", 0, 1 + below(3));
        break;
      default:
        chain.add("cove", 5, 3, " radius 3/8");
        break;
    }
    if (below(2) == 0) chain.add("fillet", 1 + below(4), 0);
  }
  return "units inch\nstock 3 wide, 1 1/4 thick\n" + side + "start face " + sixteenths(chain.out) + "\n" +
         chain.statements.str();
}

/// What the plan promises beyond the replay: each arc is finished by a plane of its radius.
std::string unfinished(const Section& section, const Plan& plan) {
  std::string out;
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (!section.target[i].is_arc()) continue;
    bool done = false;
    for (const Cut& cut : plan.cuts) {
      for (const int element : cut.elements)
        done = done || (element == section.source[i] && cut.plane.is_curved() &&
                        std::abs(cut.plane.radius - radius(section.target[i])) < 0.05);
    }
    if (!done) out += describe(section.elements[static_cast<std::size_t>(section.source[i])]) + "\n";
  }
  return out;
}

/// What is said of a chain of the back, in the words for the same chain of the face.
std::string as_on_the_face(std::string why) {
  for (const auto& [back, face] : {std::pair<std::string, std::string>{" on the back", ""},
                                   std::pair<std::string, std::string>{"back edge", "working edge"}}) {
    for (std::size_t at = why.find(back); at != std::string::npos; at = why.find(back))
      why.replace(at, back.size(), face);
  }
  return why;
}

}  // namespace

TEST_CASE("what is made on the working edge is made on the back edge", "[plan][property]") {
  const unsigned seed = 20240923;
  INFO("seed " << seed);
  const Kit kit = pair_of_sixes();
  int feasible = 0, curved = 0;
  for (unsigned trial = 0; trial < 40; ++trial) {
    std::mt19937 random(seed + trial), again(seed + trial);
    const std::string text = random_profile(random, "");
    CAPTURE(text);
    const Reading<Section> reading = read_profile(text, "random.profile");
    // Parts that meet in a cleft may cross; the readers say so.
    if (!reading.value) continue;
    const Section& section = *reading.value;
    const Plan plan = make_plan(section, kit, {});
    const Section mirrored = test::need(read_profile(random_profile(again, "side back\n"), "back.profile"));
    const Plan back = make_plan(mirrored, kit, {});
    CHECK(back.feasible == plan.feasible);
    CHECK(back.waste_area == Approx(plan.waste_area));
    if (!plan.feasible) {
      // The same elements, for the same reasons.
      REQUIRE_FALSE(plan.reasons.empty());
      REQUIRE(back.reasons.size() == plan.reasons.size());
      for (const Reason& reason : plan.reasons) {
        CHECK(std::any_of(back.reasons.begin(), back.reasons.end(), [&](const Reason& other) {
          return other.element == reason.element && as_on_the_face(other.why) == reason.why;
        }));
      }
      continue;
    }
    CHECK(faults(plan) == "");
    CHECK(faults(back) == "");
    CHECK(unfinished(section, plan) == "");
    CHECK(unfinished(mirrored, back) == "");
    CHECK(plan.left.as_set_deepest_gouge <= 0.01);
    ++feasible;
    if (std::any_of(plan.cuts.begin(), plan.cuts.end(), [](const Cut& c) { return c.plane.is_curved(); }))
      ++curved;
  }
  CHECK(feasible >= 25);
  CHECK(curved >= 15);
}
