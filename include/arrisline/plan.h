// A plan: the numbered cuts that take a blank to its target with the planes of one kit.
#pragma once

#include <atomic>
#include <chrono>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "arrisline/kit.h"
#include "arrisline/plane.h"
#include "arrisline/section.h"

namespace arrisline {

enum class Rides { gauge_line, wall, fence, two_arrises, own_arc, by_hand };

/// How the blank lies on the board. An arrow on its face points the way the plane goes while it lies face up.
///   face_up       working edge free; planed along the arrow
///   end_for_end   face up, turned about the upright, back edge free; planed against the arrow
///   underside_up  turned over end over end, working edge free; planed against the arrow
///   rolled_over   turned over about its length, back edge free; planed along the arrow
enum class Lies { face_up, underside_up, end_for_end, rolled_over };
/// "face up", "underside up" (of both that are), "end for end".
const char* word(Lies lies);
bool is_underside_up(Lies lies);
/// The back edge is free, and the working edge stands at the fence.
bool back_edge_free(Lies lies);

enum class Planed { along, against };
/// Which way the plane goes, by the arrow on the face.
Planed planed(Lies lies);
/// "along the arrow", "against the arrow".
const char* word(Planed planed);

enum class Side { face, edge, back, underside };

/// A line struck with the marking gauge: its stock bears on `from`, and the line runs `at` mm from there.
/// A line gauged from the working edge (or the back edge) is struck on the face side, one gauged from the
/// face (or the underside) on the edge.
struct GaugeLine {
  Side from = Side::edge;
  double at = 0;       // exact plan value, mm
  double set = 0;      // rounded toward the wood, as the gauge is set
  bool fine = false;   // lays a rail, so it is rounded to the finer division,
  bool close = false;  // or lays none, but the coarser one would leave too much
  bool finer = false;  // even the finer division leaves too much

  friend bool operator==(const GaugeLine&, const GaugeLine&) = default;
};

struct Cut {
  int number = 0;
  Plane plane;
  std::string made_for;          // "element 2", or "waste"
  std::vector<int> elements;     // indices into Section::elements that this cut finishes; empty for waste
  std::vector<Pose> poses;       // in order; empty for a scraper
  std::vector<Pose> set;         // the same with the gauge lines rounded
  std::vector<GaugeLine> lines;  // what is gauged for this cut; none for hollows, rounds, scraper
  int settings = 0;              // gauge figures not set by the cut before
  double strokes = 0;            // not rounded
  double removed = 0;            // mm² of section
  Rides rides = Rides::gauge_line;
  double imbalance = 0;  // two arrises only
  double imbalance_set =
      0;  // two arrises only: on the section cut to the rounded lines; 0.5 where only one is left
  Lies lies = Lies::face_up;
  bool overhang = false;  // a pose passes below the underside's level: the edge overhangs the board
  std::string reason;     // why it comes now, in a few words
};

/// Why an element cannot be cut, and the nearest size that would do: its share of the first remedy that
/// find_remedies() verified, none where it found none.
struct Reason {
  int element = -1;  // index into Section::elements, −1 for the whole
  std::string why;
  struct Nearest {
    std::optional<PlaneKind> kind;  // absent where `radius` is one for the drawing
    double radius = 0;
    double width = 0;
    std::optional<int> number;
  };
  std::optional<Nearest> nearest;
  std::optional<double> leaves;  // mm of wood, where more than may be left is what is wrong
};

/// A change with which the kit can cut the profile. One of its members is set. Every remedy is verified: a
/// plan made with it alone is feasible.
struct Remedy {
  struct Redrawn {
    int element = 0;  // index into Section::elements
    double radius = 0;
  };
  std::vector<Plane> add;           // planes to add, the fewest found; a scraper may be one
  std::vector<Redrawn> redraw;      // arcs to draw with another radius between the same ends
  double departure = 0;             // of `redraw`: largest distance between the two outlines, mm
  std::optional<double> tolerance;  // mm, the least found in thousandths of an inch or hundredths of a mm
  std::optional<double> scrape;     // the same of what may be left for the kit's scraper
};

struct Left {
  double max_height = 0;  // mm, thickest wood left above the target before any scraper
  double area = 0;        // mm²
  bool scrape = false;
  std::string where;             // the element it lies on, for the cut list; empty when nothing is left
  double as_set_max_height = 0;  // with the gauge lines rounded
  double as_set_deepest_gouge = 0;
};

/// What the maker would rather have less of; between plans equal in that the effort decides.
enum class Prefer { least_effort, fewest_planes, fewest_cuts, least_strokes };
/// "least-effort", "fewest-planes", "fewest-cuts", "least-strokes".
const char* word(Prefer prefer);

/// The outcome of planning. Either `feasible` with cuts, or not with reasons, or `undecided` with neither.
struct Plan {
  Section section;
  bool feasible = false;
  bool undecided = false;
  std::vector<Cut> cuts;
  Left left;
  double waste_area = 0;     // blank less target, mm²
  double waste_by_flat = 0;  // taken by rebate, plough and bench planes, mm²
  double effort = 0;
  double bound = 0;  // proved least effort, ≤ effort
  bool optimal = false;
  Prefer prefer = Prefer::least_effort;
  bool holding_checked = false;  // false without a `board` line
  int facets = 0;                // flats that the shop lets finish an arc, where some arc is left so; else 0
  std::vector<Reason> reasons;
  std::vector<Remedy> remedies;    // of find_remedies(), nearest first
  bool remedies_left_off = false;  // by the limit or an interruption, before everything was tried
};

struct PlanOptions {
  double tolerance = 0.2;  // mm of wood that may be left above the finished line
  double scrape = 0.4;     // mm, thickest facet left for a scraper where the kit has one
  Unit unit = Unit::inch;  // of the gauge divisions that `set` is rounded to
  Prefer prefer = Prefer::least_effort;
  double limit = std::numeric_limits<double>::infinity();  // seconds after which the best so far is given
  // From when `limit` counts: for a plan and its remedies within one limit. Else each plan made begins anew.
  std::optional<std::chrono::steady_clock::time_point> since;
  std::uint64_t most_work = 4000000;  // the same in pieces of wood cut, some seconds; unlike a clock it is
                                      // alike at every run
  const std::atomic<bool>* interrupt = nullptr;  // set by another hand: leave off as at the limit
  std::function<void(double)> progress;          // called now and then with the seconds gone, where given
  bool any = false;                              // the first valid plan found will do, whatever its effort
};

/// The options with `limit` counted from now on, whatever is done with them.
PlanOptions from_now(PlanOptions options);

/// Plans one profile with one kit. As long as it is not left off by the clock or an interruption the same
/// input gives the same plan; at a limit the plan is the best so far, `optimal` false, or `undecided` where
/// there was none yet. Every plan returned feasible has passed the rules of docs/model.md as the planner
/// itself judges them; replay() judges them again.
Plan make_plan(const Section& section, const Kit& kit, const PlanOptions& options);

/// Looks for what would make a "no" a "yes", by planning again with each change, and fills in `remedies` and
/// the `nearest` of each reason; a reason that such a plan shows to be none is taken away. At most a fixed
/// number of plans is made, in a fixed order, so the same input gives the same remedies, as long as the limit
/// counted from `since` does not cut the search short: `remedies_left_off` then says so. Does nothing to a
/// plan that is feasible or undecided. REQUIRES: `plan` is what make_plan() gave for this kit and these
/// options.
void find_remedies(Plan& plan, const Kit& kit, const PlanOptions& options);

}  // namespace arrisline
