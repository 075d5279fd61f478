// A whole furniture job planned: a plan for each profile, the order of the work, what comes out of which
// blank, the stops of the board, the mitres, and what falls short.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "arrisline/cutting.h"
#include "arrisline/job.h"
#include "arrisline/plan.h"

namespace arrisline {

/// One mitred end. Angles in degrees, lengths in mm.
///
/// With the spring S, the corner C, the ripped width W and the thickness T:
///   mitre      atan(sin S / tan(C/2)): how far the saw swings off square across the face
///   bevel      asin(cos S · cos(C/2)): how far the blade leans off upright
///   runs_back  (W sin S + T cos S) / tan(C/2): from the long point to the short one, along the piece
/// The two angles are those of the published tables of compound mitres; a piece that lies flat (S = 90) has
/// the mitre 90 − C/2 and no bevel, one that stands against the wall (S = 0) no mitre and the bevel 90 − C/2.
struct Mitre {
  std::size_t mould = 0;
  bool left = false;
  double corner = 90;
  double spring = 90;
  double mitre = 0;
  double bevel = 0;
  double runs_back = 0;
  double short_point = 0;  // length of the piece's shortest line: its length less what its ends run back
};
/// The mitred ends of all mouldings, in their order, left before right.
std::vector<Mitre> mitres_of(const Job& job);
/// As above of one moulding's end, whether it is mitred or not.
Mitre mitre_of(const Mould& mould, bool left);

/// The mouldings of one profile at one ripped width: they share a plan, and may come from one strip.
struct Run {
  std::vector<std::size_t> moulds;  // indices into Job::moulds
  Plan plan;
  bool ripped_first = false;  // needs its back edge free, so it is ripped to width before it is stuck
  std::optional<double>
      narrowest;  // blank that the board's stops hold for every cut, mm; see narrowest_held()
};

/// One cut of one run, in the order of work. Indices into JobPlan::runs and the cuts of its plan.
struct WorkStep {
  std::size_t run = 0;
  std::size_t cut = 0;

  friend bool operator==(const WorkStep&, const WorkStep&) = default;
};

/// The cuts of all runs that have a plan, each once, those of one run in the order of its plan. A plane
/// change is a step with another plane than the step before; a gauge setting is a line struck or set that the
/// step before did not have.
///
/// Property 1: no order has fewer plane changes, where `fewest` is true.
///
/// Property 2: of the orders with so few plane changes none has fewer settings, where the states of all
/// orders (each profile's cuts and one, multiplied) are under some hundred thousand.
struct WorkOrder {
  std::vector<WorkStep> steps;
  int plane_changes = 0;
  int settings = 0;
  int plane_changes_one_by_one = 0;  // one profile after another, in the job's order
  int settings_one_by_one = 0;
  bool fewest = true;
};
WorkOrder order_work(const std::vector<const Plan*>& plans);

/// A stop screw at the end of the board during some cuts.
struct Stop {
  double at = 0;       // of its centre from the fence, mm
  double height = 0;   // that it may stand above the board, mm; 0: sunk
  bool clear = false;  // nothing comes down to it: it may stand as high as the wood
  bool holds = false;  // it bears on wood from the first of the cuts to the last
};
/// Consecutive cuts for which the stops may stand as they are.
struct StopSetting {
  std::size_t first = 0;  // cuts of the plan, indices
  std::size_t last = 0;
  std::vector<Stop> stops;  // as the board has them
  bool held = false;        // some stop holds
};
/// How the stops stand while a run is stuck on a blank so wide, its back edge at the fence, in as few
/// settings as can be. Empty without a board.
std::vector<StopSetting> stop_settings(const Plan& plan, double blank_width, const Board& board);

/// Some stop holds in every setting; so too where there is none, for want of a board or of cuts.
bool all_held(const std::vector<StopSetting>& settings);

/// The least width, from one to another in steps of 1/64 in, of a blank on which some stop holds for every
/// cut; a wider one may yet not do, where its stops lie otherwise. Nothing where there is none.
std::optional<double> narrowest_held(const Plan& plan, double from, double to, const Board& board);

/// One strip of a blank: stuck, then ripped off.
struct RipStep {
  std::size_t run = 0;
  double width_before = 0;          // of the blank, mm
  double width_after = 0;           // once ripped and trued; 0 where nothing is left
  bool ripped = true;               // false where the strip is all that is left
  std::vector<std::size_t> pieces;  // moulds, in the order of sawing; kSparePiece for a length to set up by
  double left_over = 0;             // of the length, mm
  std::vector<StopSetting> stops;
};
inline constexpr std::size_t kSparePiece = static_cast<std::size_t>(-1);

struct BlankWork {
  std::size_t stock = 0;
  bool missing = false;  // over those on hand or to be had
  std::vector<RipStep> strips;
};

/// What keeps the job from being done as it stands.
struct Shortage {
  /// `holding`: on some strip no stop of the board holds; `too_narrow`: ripped off before it is stuck, and
  /// narrower than the job's `hold`.
  enum class Kind { planes, blanks, holding, too_narrow, undecided };
  Kind kind = Kind::planes;
  std::optional<std::size_t> run;    // all but blanks
  std::optional<std::size_t> stock;  // blanks
  int count = 0;                     // blanks: how many more
};

/// The fewest planes found that let the kit cut every profile that it cannot, each verified by a plan.
struct Buying {
  std::vector<Plane> planes;
  std::vector<std::vector<std::size_t>> unlocks;  // beside `planes`: the runs that need it
  bool complete = true;                           // false where some profile stays out of reach
};

/// How far a side across which a moulding is fixed swells and shrinks in the year, mm. A note, not a rule:
/// ΔD = D·C·ΔMC with the species' coefficients (USDA Wood Handbook FPL-GTR-190, table 13-5).
struct Movement {
  std::size_t mould = 0;
  std::string species;
  double across = 0;
  double radial = 0;      // quarter-sawn
  double tangential = 0;  // flat-sawn
};
/// Nothing where no mould is fixed across the grain, the job gives no moisture, or the species is not known.
std::vector<Movement> movements_of(const Job& job);

/// What the job takes, by the shop's own figures.
struct Estimate {
  double strokes = 0;          // each the length of a strip
  double minutes = 0;          // of planing
  double metres = 0;           // of strips stuck
  double shavings_litres = 0;  // dm³ of wood planed away
};

struct JobPlan {
  std::vector<Run> runs;
  WorkOrder order;
  CuttingPlan cutting;
  std::vector<BlankWork> blanks;
  std::vector<Mitre> mitres;
  std::vector<Movement> movements;
  Estimate estimate;
  std::vector<Shortage> shortages;
  Buying buying;
};

struct JobOptions {
  PlanOptions plan;  // for each profile; its limit is that of the cutting of the blanks too
  std::function<void(std::size_t done, std::size_t of)> progress;  // profiles planned so far
};

JobPlan plan_job(const Job& job, const JobOptions& options);

}  // namespace arrisline
