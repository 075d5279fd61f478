// Profiles and kits put together at random, taken the whole way: text → section → plan → JSON → replay. Each
// plan holds when it is read back from what was printed, and each refusal says why.
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "arrisline/plan_json.h"
#include "arrisline/read.h"
#include "arrisline/replay.h"
#include "catch.h"

using namespace arrisline;

namespace {

constexpr unsigned kSeed = 20;   // ARRISLINE_SEED sets another
constexpr int kPairs = 150;      // that read; a chain that does not fit its stock is made anew
constexpr int kMostTries = 600;  // so that a generator gone wrong ends
constexpr int kSixteenth = 2;    // lengths below are in thirty-seconds of an inch

using Random = std::mt19937;

int between(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<std::uint_fast32_t>(high - low + 1));
}

std::string inches(int thirty_seconds) {
  return std::to_string(thirty_seconds) + "/32";
}

struct Chain {
  std::string statements;
  int out = 0;
  int down = 0;

  void add(const std::string& word, int a, int b, const std::string& rest = "") {
    statements += word;
    if (a > 0) statements += " out " + inches(a);
    if (b > 0) statements += " down " + inches(b);
    statements += rest + "\n";
    out += a;
    down += b;
  }
};

/// One moulded member: a quadrant, an arc of 30 to 120 degrees, a trade shape or a slant.
void add_member(Random& random, Chain& chain, int radius) {
  const std::string arc = random() % 2 == 0 ? "bead" : "cove";
  const std::string of_radius = " radius " + inches(radius);
  switch (random() % 7) {
    case 0:
      chain.add(arc, radius, radius);
      break;
    case 1:
    case 2: {
      int a = radius;
      int b = radius;
      for (int tries = 0; tries < 50; ++tries) {
        const int try_a = between(random, 1, radius * 2);
        const int try_b = between(random, 1, radius * 2);
        const double half = 0.5 * std::hypot(try_a, try_b) / radius;  // sine of half the arc
        if (half < 0.26 || half > 0.86) continue;
        a = try_a;
        b = try_b;
        break;
      }
      chain.add(arc, a, b, of_radius);
      break;
    }
    case 3:
      chain.add(random() % 2 == 0 ? "ogee" : "reverse-ogee", between(random, 14, 20), between(random, 10, 16),
                of_radius);
      break;
    case 4: {
      const int side = between(random, 2, 8);
      chain.add("bevel", side, side);
      break;
    }
    case 5:
      chain.add("bevel", between(random, 2, 10), between(random, 2, 10));
      break;
    default:
      chain.add("thumbnail", between(random, 12, 16), between(random, 10, 12));
      break;
  }
}

Chain edge_chain(Random& random, int radius) {
  Chain chain;
  if (random() % 2 == 0) chain.add("step", 0, kSixteenth * between(random, 1, 2));
  const int members = random() % 3 == 0 ? 2 : 1;
  for (int i = 0; i < members; ++i) {
    add_member(random, chain, radius);
    if (i + 1 == members && random() % 2 == 0) continue;
    if (random() % 3 == 0) {
      chain.add("step", 0, kSixteenth);
    } else {
      chain.add("fillet", kSixteenth * between(random, 1, 3), 0);
    }
  }
  return chain;
}

std::string make_profile(Random& random) {
  const int radius = random() % 4 == 0 ? between(random, 8, 16) : 12;
  const int thickness = random() % 4 == 0 ? 32 : 24;
  const int width = 16 * between(random, 3, 6);
  std::ostringstream text;
  text << "profile made at random\nstock " << inches(width) << " wide, " << inches(thickness) << " thick\n";
  switch (random() % 8) {
    case 0:  // a flute or a groove in the face
      text << "start face " << inches(width / 2 + 6) << "\n";
      if (random() % 2 == 0) {
        text << "cove out 3/8 radius 3/8\n";
      } else {
        text << "step down 1/4\nfillet out 3/8\nstep up 1/4\n";
      }
      break;
    case 1:  // the whole edge
      text << "start face " << inches(thickness / 2) << "\ntorus " << inches(thickness) << "\n";
      break;
    case 2: {  // a frame, worked from the back edge
      const Chain chain = edge_chain(random, radius);
      text << "start back 1/8\n";
      if (width > chain.out) text << "fillet out " << inches(width - chain.out) << "\n";
      text << chain.statements;
      break;
    }
    default: {
      const Chain chain = edge_chain(random, radius);
      text << "start face " << inches(chain.out) << "\n" << chain.statements;
      if (random() % 4 == 0) {
        text << "side underside\nstart back 1/4\nfillet out 3/8\nstep up 1/4\n";
      } else if (random() % 4 == 0) {
        text << "side back\nstart face 3/8\n" << (random() % 2 == 0 ? "ovolo" : "cavetto") << " 3/8\n";
      }
      break;
    }
  }
  return text.str();
}

std::string make_kit(Random& random) {
  static const std::vector<std::string> kits = {
      "rebate 3/4\nhollow 6\nround 6\nscraper\n",
      "rebate 3/4\nrebate 3/8\nplough 1/8 1/4 3/8\nhollow 6\nround 6\nhollow 4\nround 4\nscraper\n",
      "units mm\nrebate 20\nplough 3 5 8\nhollow radius 9.8 width 10.1\nround radius 9.3 arc 66\n"
      "hollow radius 7.5\nround radius 7.5\nscraper\n",
      "bench 2\nrebate 3/4 body 1/8 above 3/4\nhollow 6 body 1/8 above 1/2\nround 6 body 1/8 above 1/2\n",
      "rebate 1/4\nhollow 6\nround 6\nboard stops at 1/2, 1, 1 1/2, 2 screw 3/8 clear 1/16\n",
      "number 1 radius 3/16\nnumber 2 radius 3/8\nrebate 3/4\nhollow 1\nround 1\nhollow 2\nround 2\n",
      "rebate 3/4\nhollow 6\nround 6\nshaped table edge\novolo 3/8\nfillet out 1/8\nend\n",
      "hollow 6\nround 6\nscraper\n",
  };
  // The first kit twice as often as any other.
  const std::size_t pick = random() % (kits.size() + 1);
  return kits[pick < kits.size() ? pick : 0];
}

std::string listed(const std::vector<Finding>& findings) {
  std::string all;
  for (const Finding& f : findings) {
    all += "cut " + std::to_string(f.cut) + ", rule " + std::to_string(f.rule) + ": " + f.text + "\n";
  }
  return all;
}

}  // namespace

TEST_CASE("profiles and kits at random: what is printed holds, and each refusal has reasons",
          "[plan][random][campaign]") {
  unsigned seed = kSeed;
  if (const char* given = std::getenv("ARRISLINE_SEED")) {
    seed = static_cast<unsigned>(std::strtoul(given, nullptr, 10));
  }
  Random random(seed);
  int read = 0;
  int planned = 0;
  int refused = 0;
  int with_curves = 0;
  for (int tried = 0; read < kPairs && tried < kMostTries; ++tried) {
    const std::string profile_text = make_profile(random);
    const std::string kit_text = make_kit(random);
    const Reading<Section> profile = read_profile(profile_text, "random.profile");
    const Reading<Kit> kit = read_kit(kit_text, "random.kit");
    INFO("seed " << seed << ", try " << tried << "\n" << profile_text << "--- kit\n" << kit_text);
    REQUIRE(kit.value.has_value());
    if (!profile.value) {
      CHECK_FALSE(profile.diagnostics.empty());
      continue;
    }
    ++read;

    PlanOptions options;
    options.most_work = 1500000;  // about a second: a plan left off there has to hold like any other
    const Plan plan = make_plan(*profile.value, *kit.value, options);
    const StatedPlan back = plan_from_json(plan_to_json(plan));
    CHECK(back.faults == std::vector<std::string>{});
    CHECK(back.plan.feasible == plan.feasible);
    CHECK(back.plan.undecided == plan.undecided);
    CHECK(back.plan.cuts.size() == plan.cuts.size());
    if (!plan.feasible) {
      ++refused;
      CHECK(plan.cuts.empty());
      CHECK((plan.undecided || !plan.reasons.empty()));
      for (const Reason& reason : plan.reasons) CHECK_FALSE(reason.why.empty());
      CHECK(back.plan.reasons.size() == plan.reasons.size());
      continue;
    }
    ++planned;
    CHECK_FALSE(plan.undecided);
    CHECK(plan.bound <= plan.effort);
    for (const Cut& cut : plan.cuts) {
      if (cut.rides == Rides::two_arrises) {
        ++with_curves;
        break;
      }
    }
    const ReplayResult judged = replay(back.plan, {options.tolerance, options.scrape});
    CHECK(listed(judged.findings) == "");
    CHECK(judged.max_height <= (plan.left.scrape ? options.scrape : options.tolerance) + 0.001);
    CHECK(listed(second_opinion(back.plan)) == "");
  }
  // Guards against a generator that makes nothing, or nothing that can be cut, or nothing that cannot.
  INFO("seed " << seed << ": " << planned << " planned, " << refused << " refused, " << with_curves
               << " with curves");
  CHECK(read == kPairs);
  CHECK(planned >= kPairs / 3);
  CHECK(refused >= kPairs / 20);
  CHECK(with_curves >= kPairs / 5);
  WARN("seed " << seed << ": " << planned << " planned, " << refused << " refused, " << with_curves
               << " with curves");
}

TEST_CASE("planner and replay agree on who has finished a bead, with sixes and fours on the shelf",
          "[plan][random]") {
  const Reading<Kit> kit =
      read_kit("rebate 3/4\nrebate 3/8\nplough 1/8 1/4 3/8\nhollow 6\nround 6\nhollow 4\nround 4\nscraper\n",
               "sixes.kit");
  REQUIRE(kit.value.has_value());
  const std::vector<std::string> profiles = {
      "stock 2 1/2 wide, 3/4 thick\nstart face 19/32\nstep down 1/16\nthumbnail out 13/32 down 11/32\n"
      "fillet out 3/16\n",
      "stock 2 wide, 3/4 thick\nstart face 5/8\nstep down 3/16\nogee out 5/8 down 3/8 radius 3/8\n",
  };
  for (const std::string& text : profiles) {
    INFO(text);
    const Reading<Section> profile = read_profile(text, "bead.profile");
    REQUIRE(profile.value.has_value());
    PlanOptions options;
    options.most_work = 1500000;  // about a second: a plan left off there has to hold like any other
    const Plan plan = make_plan(*profile.value, *kit.value, options);
    if (plan.feasible) {
      CHECK(listed(replay(plan, {options.tolerance, options.scrape}).findings) == "");
    } else {
      CHECK_FALSE(plan.reasons.empty());
    }
  }
}
