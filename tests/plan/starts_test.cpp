// Where a curved cut may start, and what is worth riding on there. The profiles and kits are made up for the
// purpose.
#include <cmath>

#include "plan/gouge.h"
#include "plan/planning.h"
#include "plan/rails.h"
#include "plan/sequence.h"

using namespace arrisline;
using test::kit;
using test::profile;

namespace {

/// Every way to finish each arc of the profile, as a list of cuts.
std::vector<Draft> curved_drafts(const Problem& problem) {
  std::vector<Draft> out;
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    if (!problem.surfaces[i].arc) continue;
    for (const std::vector<Draft>& way : arc_drafts(problem, static_cast<int>(i)))
      out.insert(out.end(), way.begin(), way.end());
  }
  return out;
}

std::vector<double> starts_of(const Draft& draft) {
  std::vector<double> out = draft.starts;
  for (const Pose& pose : draft.poses) out.push_back(pose.tilt);
  return out;
}

}  // namespace

TEST_CASE("wherever a curved cut may start, the plane stands clear of the finished wood", "[plan][starts]") {
  // On the flat end of the ellipse hollow 18 leans about its own centre, farther than the arc itself goes: a
  // plane that rested on the arc at that lean would be in the fillet.
  const Section section = profile(
      "4 wide, 2 thick", "start face 7/8\nstep down 1/8\ncurve bead out 3/4 down 1/2\nfillet out 1/8");
  const Kit with = kit("units inch\nrebate 1 1/4\nhollow 4\nhollow 18\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, with, options);
  bool leans = false;
  for (const Draft& draft : curved_drafts(problem)) {
    const Surface& arc = problem.surfaces[static_cast<std::size_t>(draft.arc)];
    for (const double start : starts_of(draft)) {
      const Pose pose = start_pose(problem, draft, start);
      INFO(problem.plane(draft.plane).label << " at " << start);
      CHECK_FALSE(gouges(section.target, Sweep(problem.plane(draft.plane), pose), kExact));
      CHECK(same_pose(poses_from(problem, draft, start).front(), pose));
      leans = leans || start < arc.lo - 1 || start > arc.hi + 1;
    }
  }
  CHECK(leans);
}

TEST_CASE("arcs count as finished by what is left once the starts have taken theirs", "[plan][starts]") {
  // Hollow 6.5 mm starts where it takes so much of the large bead that nothing stays for the scraper; then
  // its soles have to come as near to the arc as what may stay unscraped.
  PlanOptions options;
  options.most_work = 7'000'000;
  const Plan plan =
      make_plan(profile("38mm wide, 28mm thick",
                        "start face 17.78407mm\nbead out 4.499998mm down 4.50424mm radius 4.5mm\n"
                        "bead out 5.312494mm down 4.908965mm radius 5.5mm\n"
                        "bead out 4.507641mm down 5.474151mm radius 11mm\n"
                        "cove out 3.463937mm down 3.655592mm radius 6.5mm"),
                kit("units mm\nrebate 25\nplough 4 6\nhollow radius 6.5\nround radius 6.5\nhollow radius 11\n"
                    "round radius 12\nscraper\n"),
                options);
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan, options).empty());
}
