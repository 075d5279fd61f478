// A furniture job as its file says it: the mouldings wanted, what they are cut from, and with what saw.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/diagnostic.h"
#include "arrisline/kit.h"
#include "arrisline/section.h"

namespace arrisline {

/// Boards of one size. Lengths in mm.
struct Stock {
  std::string species;
  double thickness = 0;
  double width = 0;
  double length = 0;
  bool to_buy = false;       // not on hand; `count` is then the most that can be had
  std::optional<int> count;  // absent only where `to_buy`: as many as it takes
  int line = 0;              // of the job file
};

enum class Ends { none, left, right, both };
/// "none", "left", "right", "both".
const char* word(Ends ends);
bool left_end(Ends ends);
bool right_end(Ends ends);

/// Pieces of one moulding, all of one length. Lengths in mm, angles in degrees.
///
/// Left and right are as seen from in front of the piece where it is fixed, its face toward the eye and its
/// working edge down.
struct Mould {
  std::string name;     // no two alike in a job
  std::string profile;  // the path as the job file has it
  Section section;      // on a blank of the ripped width
  std::string species;  // of the blanks that will do; empty: any of the thickness
  double width = 0;     // ripped
  double length = 0;    // of the longest line, long point to long point where both ends are mitred
  int count = 1;
  Ends mitre = Ends::none;
  bool inside = false;  // the corners turn toward the room (a frame's), else away from it (a case's)
  double spring = 90;   // between the moulding's back and the wall; 90: lies flat, 0: stands against the wall
  double corner = 90;   // that the two walls make
  std::optional<double> across;  // fixed across the grain of a side so wide, for the note on movement
  int line = 0;                  // of the job file
};

/// They are of one profile and ripped to one width, and so may come from one strip; however the paths are
/// written.
bool same_strip(const Mould& a, const Mould& b);

/// How far each mitred end runs back from its long point, mm: (W sin S + T cos S) / tan(C/2).
double runs_back(const Mould& mould);

struct Saw {
  double kerf = 0;
  double allowance = 0;  // added at each end of each piece
};

struct Ripping {
  double kerf = 0;   // the saw's own where the file does not say
  double trued = 0;  // planed off the new edge after each rip
  double hold = 0;   // narrowest strip that can still be held while it is stuck
};

/// Lengths for setting up the planes, `count` of each profile; nothing is added to their ends.
struct Spare {
  double length = 0;
  int count = 1;
};

/// How far the wood's moisture content swings in a year, in per cent of its dry weight.
struct Moisture {
  double driest = 0;
  double dampest = 0;
};

struct Job {
  std::string name;
  Unit unit = Unit::inch;
  std::string kit_file;  // the path as the job file has it
  Kit kit;               // with the job's own board and shop figures where it gives some
  std::vector<Stock> stocks;
  std::vector<Mould> moulds;
  Saw saw;
  Ripping ripping;
  std::optional<Spare> spare;
  std::optional<Moisture> moisture;
};

/// Blanks of the stock can be stuck and ripped into the mould: the thickness agrees within kSameThickness,
/// the species is the one asked for, and it is wide and long enough for one piece with its allowances.
bool serves(const Stock& stock, const Mould& mould, const Job& job);
inline constexpr double kSameThickness = 0.1;  // mm
inline constexpr double kSameWidth = 1e-6;     // mm: sums of inches are not exact

/// Reads a job, with the kit and the profiles it names; paths in it are relative to `folder`. The mistakes of
/// every file come together, those of the job's own first. The grammar is in docs/jobs.md.
Reading<Job> read_job(std::string_view text, const std::string& file, const std::string& folder);
/// As above, from a path, relative to the folder that the file is in.
Reading<Job> read_job_file(const std::string& path);

}  // namespace arrisline
