// The plans come from the planner; nothing here judges them.
#include "referee/small_plans.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>

#include "arrisline/plan_json.h"
#include "arrisline/read.h"
#include "replay/plans.h"

namespace arrisline::referee {

namespace fs = std::filesystem;

static std::string text_of(const fs::path& path) {
  std::ifstream in(path);
  return {std::istreambuf_iterator<char>(in), {}};
}

// The first plan found will do: what is tampered with need not be the best.
static void add_plan(std::vector<Good>& out, const std::string& name, const std::string& profile,
                     const std::string& kit) {
  const Reading<Section> section = read_profile(profile, name);
  const Reading<Kit> planes = read_kit(kit, "kit");
  if (!section.value || !planes.value) return;
  PlanOptions options;
  options.any = true;
  options.most_work = 100000;
  const Plan plan = make_plan(*section.value, *planes.value, options);
  if (plan.feasible && !plan.undecided) out.push_back({name, plan_to_json(plan)});
}

std::vector<Good> example_plans() {
  std::vector<fs::path> profiles, kits;
  for (const auto& entry : fs::directory_iterator(ARRISLINE_SOURCE_DIR "/examples")) {
    if (entry.path().extension() == ".profile") profiles.push_back(entry.path());
    if (entry.path().extension() == ".kit") kits.push_back(entry.path());
  }
  std::sort(profiles.begin(), profiles.end());
  std::sort(kits.begin(), kits.end());
  std::vector<Good> out;
  for (const fs::path& kit : kits)
    for (const fs::path& profile : profiles)
      add_plan(out, profile.stem().string() + " with " + kit.stem().string(), text_of(profile), text_of(kit));
  return out;
}

std::vector<Good> hand_plans() {
  std::vector<Good> out;
  for (const Plan& plan : {plans::round_over(), plans::round_over_two_chamfers(),
                           plans::round_over_in_two_cuts(), plans::cavetto_one(), plans::cavetto_three()})
    out.push_back({"by hand: " + plan.section.name, plan_to_json(plan)});
  return out;
}

namespace {

using Random = std::mt19937;

int between(Random& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<std::uint_fast32_t>(high - low + 1));
}

std::string inches(int thirty_seconds) {
  return std::to_string(thirty_seconds) + "/32";
}

// One to three members down the edge, some with a groove, an underside or a back beside.
std::string small_profile(Random& random) {
  std::string chain;
  int out = 0;
  const auto add = [&](const std::string& word, int a, int b, const std::string& rest = "") {
    chain += word + (a > 0 ? " out " + inches(a) : "") + (b > 0 ? " down " + inches(b) : "") + rest + "\n";
    out += a;
  };
  const int r = random() % 3 == 0 ? 8 : 12;
  if (random() % 2 == 0) add("step", 0, between(random, 2, 4));
  for (int i = between(random, 1, 2); i > 0; --i) {
    switch (random() % 6) {
      case 0:
        add("bead", r, r);
        break;
      case 1:
        add("cove", r, r);
        break;
      case 2:
        add("bevel", between(random, 3, 10), between(random, 3, 10));
        break;
      case 3:
        add(random() % 2 == 0 ? "bead" : "cove", r - 2, r - 4, " radius " + inches(r));
        break;
      case 4:
        add(random() % 2 == 0 ? "ogee" : "reverse-ogee", 18, 12, " radius " + inches(r));
        break;
      default:
        add("chamfer", 4, 4);
        break;
    }
    if (random() % 2 == 0) add("fillet", between(random, 2, 6), 0);
  }
  std::string text = "profile small\nstock " + inches(16 * between(random, 4, 6)) + " wide, " +
                     inches(random() % 2 == 0 ? 24 : 32) + " thick\nstart face " + inches(out) + "\n" + chain;
  switch (random() % 4) {
    case 0:
      text += "side underside\nstart back 1/4\nfillet out 3/8\nstep up 1/4\n";
      break;
    case 1:
      text +=
          std::string("side back\nstart face 3/8\n") + (random() % 2 == 0 ? "ovolo" : "cavetto") + " 3/8\n";
      break;
    case 2:
      text += "side face\nstart face " + inches(out + 16) + "\nstep down 1/4\nfillet out 3/8\nstep up 1/4\n";
      break;
    default:
      break;
  }
  return text;
}

std::string small_kit(Random& random) {
  static const std::vector<std::string> kits{
      "rebate 3/4\nplough 3/8\nhollow 6\nround 6\nhollow 4\nround 4\nscraper\n",
      "rebate 3/4\nrebate 3/8\nplough 1/8 1/4 3/8\nhollow 6\nround 6\nhollow 4\nround 4\n",
      "units mm\nrebate 20\nplough 3 5 8\nhollow radius 9.8 width 10.1\nround radius 9.3 arc 66\n"
      "hollow radius 6.35\nround radius 6.35\nscraper\n",
      "bench 2\nrebate 3/4 body 1/8 above 3/4\nplough 1/4\nhollow 6 body 1/8 above 1/2\n"
      "round 6 body 1/8 above 1/2\nhollow 4\nround 4\n",
      "rebate 3/4\nplough 1/4\nhollow 6\nround 6\nshaped table edge\novolo 3/8\nfillet out 1/8\nend\n",
      "rebate 3/4\nplough 1/4\nshop facets 3\nscraper\n",
  };
  return kits[random() % kits.size()];
}

}  // namespace

std::vector<Good> random_plans(unsigned seed, int count) {
  Random random(seed);
  std::vector<Good> out;
  for (int tries = 0; static_cast<int>(out.size()) < count && tries < 40 * count; ++tries) {
    const std::string profile = small_profile(random), kit = small_kit(random);
    add_plan(out, "random " + std::to_string(tries) + "\n" + profile + kit, profile, kit);
  }
  return out;
}

}  // namespace arrisline::referee
