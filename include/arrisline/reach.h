// What one kit of planes makes on one stock.
#pragma once

#include <atomic>
#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "arrisline/kit.h"
#include "arrisline/plan.h"
#include "arrisline/section.h"

namespace arrisline {

/// A moulding that might be made: trade shapes on the edge of a stock, fillets before, between and after.
struct Moulding {
  std::string name;     // "ogee 3/4 between fillets"
  std::string file;     // the name without what a file's name had better not have: "ogee-3-4-between-fillets"
  std::string profile;  // its text, in the unit of the kit
  Section section;      // what that reads as
  double across = 0;    // from the working edge in, mm
  double down = 0;      // mm
};

/// The mouldings to try: every shape of every radius among the curved planes, alone, with a fillet on either
/// side where the shape has none of its own, and two quadrants with a fillet between, as far as they leave a
/// quarter of the stock in width and a sixth in thickness; and a torus as thick as the stock. Each once,
/// smaller ones first.
std::vector<Moulding> mouldings(const std::vector<Plane>& planes, Unit unit, double width, double thickness);

struct Made {
  Moulding moulding;
  Plan plan;
};

struct ReachOptions {
  double limit = 2;                                     // seconds for one moulding
  const std::atomic<bool>* interrupt = nullptr;         // leave off, with what is found so far
  std::function<void(std::size_t, std::size_t)> tried;  // called with how many of how many
};

/// Those that the kit cuts well: nothing left for a scraper, and every hollow and round well laid out on its
/// rails (an imbalance of at most .15). All cores work at it; the order is that of mouldings().
std::vector<Made> within_reach(const Kit& kit, double width, double thickness, const ReachOptions& options);

/// A plane, and what it adds.
struct Addition {
  Plane plane;
  std::vector<Moulding>
      gained;  // mouldings that the kit cuts well with it and with those before it, not without
};

/// The planes of usual numbers, at most `count`, each the one that adds most to the kit and those before it.
/// A hollow and the round of its number count as one addition where only both together add anything; then
/// they stand one after the other.
std::vector<Addition> additions(const Kit& kit, double width, double thickness, std::size_t count,
                                const ReachOptions& options);

}  // namespace arrisline
