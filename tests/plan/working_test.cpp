// What a cut has to work whichever order its poses come in, against every order gone through.
#include "plan/working.h"

#include "plan/planning.h"
#include "plan/sequence.h"

using namespace arrisline;
using test::kit;
using test::pair_of_sixes;
using test::profile;

namespace {

struct Spent {
  double strokes = 0, taken = 0;
};

/// The poses one after another, each on the wood that those before it leave.
Spent spend(const Problem& problem, const Plane& plane, const std::vector<Pose>& poses, Wood wood) {
  Spent out;
  for (const Pose& pose : poses) {
    const Sweep sweep(plane, pose);
    out.strokes += weighed(problem.weights, strokes_of(problem, sweep, wood));
    out.taken += wood.cut(sweep);
  }
  return out;
}

}  // namespace

TEST_CASE("no start of a hollow or round has less to work than is told of all", "[working]") {
  const Kit planes = pair_of_sixes();
  const PlanOptions options;
  int looked_at = 0, least_found = 0;
  for (const char* chain :
       {"start face 3/8\novolo 3/8", "start face 3/8\ncavetto 3/8",
        "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8", "start face .6\nogee out .6 down .45"}) {
    const Section section = profile("2 1/2 wide, 3/4 thick", chain);
    const Problem problem = make_problem(section, planes, options);
    const Wood blank(problem.blank);
    for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
      if (!problem.surfaces[s].arc) continue;
      for (const std::vector<Draft>& way : arc_drafts(problem, static_cast<int>(s))) {
        Draft draft = way.front();
        const Plane& plane = problem.plane(draft.plane);
        if (!plane.is_curved()) continue;
        const Surface& arc = problem.surfaces[s];
        draft.starts.push_back(arc.lo + 0.37 * (arc.hi - arc.lo));
        const Turns turns(problem, draft);
        const Worked told = worked_alone(problem, turns, blank);
        CHECK(told.width == plane.width);
        CHECK(told.taken == Approx(spend(problem, plane, draft.poses, blank).taken));
        double least = 1e300;
        std::vector<double> tilts = draft.starts;
        for (const Pose& pose : draft.poses) tilts.push_back(pose.tilt);
        for (const double tilt : tilts) {
          const Spent spent = spend(problem, plane, poses_from(problem, draft, tilt), blank);
          CHECK(told.strokes <= spent.strokes + 1e-9);
          CHECK(told.taken <= spent.taken + 1e-6);
          least = std::min(least, spent.strokes);
        }
        const auto one = std::make_shared<const Turns>(problem, draft);
        CHECK(worked_together(problem, {one}, blank).strokes <= told.strokes + 1e-9);
        ++looked_at;
        least_found += told.strokes > least - 1e-9 ? 1 : 0;
      }
    }
  }
  CHECK(looked_at > 4);
  // Told exactly of all that turn at few places.
  CHECK(least_found > looked_at / 2);
}

TEST_CASE("a flat sole works the thickest wood under it, and wears nothing", "[working]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  const Kit planes = kit("units inch\nrebate 3/4\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, planes, options);
  KnownTurns known(problem);
  for (const Draft& draft : flat_drafts(problem)) {
    const SharedTurns turns = known.of(draft);
    CHECK(known.of(draft) == turns);
    const Worked told = worked_alone(problem, *turns, Wood(problem.blank));
    const Spent spent = spend(problem, problem.plane(draft.plane), draft.poses, Wood(problem.blank));
    CHECK(told.strokes == Approx(spent.strokes));
    CHECK(told.taken == 0);
    CHECK(told.width == 0);
    // No stroke takes more than a shaving as wide as the sole stands in the blank.
    CHECK(turns->area_in_blank == Approx(spent.taken));
    CHECK(turns->cost_in_blank * turns->area_in_blank <= told.strokes + 1e-9);
  }
  CHECK_FALSE(flat_drafts(problem).empty());
}
