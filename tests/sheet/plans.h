// Plans to draw: every example with two kits, and mouldings of sizes that try a layout.
#pragma once

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "arrisline/plan.h"
#include "arrisline/read.h"
#include "catch.h"
#include "plan/planning.h"

namespace arrisline::test {

struct Drawable {
  std::string name;
  Plan plan;
  Kit kit;
};

inline Plan quick_plan(const Section& section, const Kit& kit) {
  PlanOptions options;
  options.any = true;
  options.most_work = 400000;
  options.unit = kit.unit;
  return make_plan(section, kit, options);
}

inline Drawable drawable(const std::string& name, const std::string& profile_text,
                         const std::string& kit_text) {
  Kit kit = need(read_kit(kit_text, "test.kit"));
  return {name, quick_plan(need(read_profile(profile_text, "test.profile")), kit), std::move(kit)};
}

/// Every example that the half set can cut.
inline const std::vector<Drawable>& drawn_examples() {
  static const std::vector<Drawable> out = [] {
    const std::filesystem::path folder = std::filesystem::path(ARRISLINE_SOURCE_DIR) / "examples";
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
      if (entry.path().extension() == ".profile") paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    const Kit kit = need(read_kit_file((folder / "half-set.kit").string()));
    std::vector<Drawable> all;
    for (const auto& path : paths) {
      Plan plan = quick_plan(need(read_profile_file(path.string())), kit);
      if (plan.feasible) all.push_back({path.stem().string(), std::move(plan), kit});
    }
    REQUIRE(all.size() >= 8);
    return all;
  }();
  return out;
}

/// Sixty steps down to the edge, a cut for each, laid out by hand.
inline Drawable sixty_stairs() {
  std::string text = "units mm\nstock 200 wide, 90 thick\nstart face 60\n";
  for (int i = 0; i < 60; ++i) text += "step down 1\nfillet out 1\n";
  Plan plan;
  plan.section = need(read_profile(text, "stairs.profile"));
  plan.feasible = true;
  Kit kit = need(read_kit("units mm\nrebate 80\n", "test.kit"));
  for (int i = 0; i < 60; ++i) {
    Cut cut;
    cut.number = i + 1;
    cut.plane = kit.planes.front();
    cut.made_for = "waste";
    const double wide = 60.0 - i, deep = 1.0 + i;
    cut.poses = cut.set = {{{wide - 40, deep}, 0}};
    cut.lines = {{Side::edge, wide, wide, false}, {Side::face, deep, deep, false}};
    cut.removed = wide;
    plan.cuts.push_back(cut);
  }
  return {"sixty stairs", std::move(plan), std::move(kit)};
}

/// Tiny, huge, of many cuts, worked from all sides, in both units.
inline const std::vector<Drawable>& drawn_extremes() {
  static const std::vector<Drawable> out = [] {
    std::vector<Drawable> all;
    all.push_back(drawable("tiny",
                           "units mm\nstock 3 wide, 3 thick\nstart face 1\nstep down 1\nfillet out 1\n",
                           "units mm\nrebate 6\nshop gauge .05\n"));
    all.push_back(drawable("huge",
                           "units mm\nstock 400 wide, 90 thick\nstart face 60\nstep down 40\nfillet out 60\n",
                           "units mm\nrebate 40\n"));
    all.push_back(
        drawable("wide", "units inch\nstock 15 3/4 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n",
                 "units inch\nrebate 3/4\nhollow 6\n"));
    all.push_back(sixty_stairs());
    all.push_back(drawable(
        "two sides",
        "units inch\nstock 1 1/2 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\nside underside\n"
        "start face 1/2\nstep down 1/4\nfillet out 1/2\n",
        "units inch\nrebate 3/4\nhollow 6\n"));
    return all;
  }();
  return out;
}

}  // namespace arrisline::test
