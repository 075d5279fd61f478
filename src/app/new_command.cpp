// `arrisline new`: files to begin from. They belong together: the job names the profile and the kit. Shown by
// tests/cli.
#include "app/commands.h"
#include "app/inputs.h"
#include "app/options.h"
#include "wording/words.h"

namespace arrisline {
namespace {

struct Template {
  std::string_view kind;
  std::string_view inch;
  std::string_view mm;
};

constexpr Template kTemplates[] = {
    {"profile",
     R"(# A moulding, as it is drawn at the end of the stick: the face is up, the
# working edge is at the left. What stands after a # is for you alone.
# What every word means: arrisline words

profile  table edge
units    inch
stock    2 wide, 3/4 thick   # the stick that it is stuck on

# Where the wood that stays ends, from the face to the working edge.
start    face 1/2            # on the face, 1/2 in from the working edge
step     down 1/8            # straight down
bead     out 3/8 down 3/8    # a quarter round, toward the edge; a hollow makes it
fillet   out 1/8             # a flat, which ends on the working edge

# Save it as table-edge.profile, then:
# arrisline plan table-edge.profile --kit chest.kit
)",
     R"(# A moulding, as it is drawn at the end of the stick: the face is up, the
# working edge is at the left. What stands after a # is for you alone.
# What every word means: arrisline words

profile  table edge
units    mm
stock    50 wide, 20 thick   # the stick that it is stuck on

# Where the wood that stays ends, from the face to the working edge.
start    face 12             # on the face, 12 mm from the working edge
step     down 3              # straight down
bead     out 9 down 9        # a quarter round, toward the edge; a hollow makes it
fillet   out 3               # a flat, which ends on the working edge

# Save it as table-edge.profile, then:
# arrisline plan table-edge.profile --kit chest.kit
)"},
    {"kit",
     R"(# The planes on the shelf, one a line. What stands after a # is for you alone.
# What every word means: arrisline words

kit      chest by the window
units    inch

rebate   3/4                 # how wide the sole is
hollow   6                   # makes beads; number 6 has a radius of 6/16 in
round    6                   # makes coves
plough   1/8 1/4 3/8         # its irons
scraper                      # for facets; leave the line out if there is none

# Old planes depart from the numbers. One that was measured:
# hollow   10  radius .66  width .64

# Thickness of a shaving, for the number of strokes.
shop     shaving rebate .006  shaving curved .004

# The sticking board: its stop screws, measured from the fence. Put in yours, and
# take the first # away.
# board    stops at 1/2, 1, 1 1/2, 2, 3  screw 3/8  clear 1/16
)",
     R"(# The planes on the shelf, one a line. What stands after a # is for you alone.
# What every word means: arrisline words

kit      chest by the window
units    mm

rebate   20                  # how wide the sole is
hollow   radius 9            # makes beads; the radius of its sole, as measured
round    radius 9            # makes coves
plough   3 6 9               # its irons
scraper                      # for facets; leave the line out if there is none

# The sole is an arc of 60 degrees, unless its width says otherwise:
# hollow   radius 16  width 15

# Thickness of a shaving, for the number of strokes.
shop     shaving rebate .15  shaving curved .1

# The sticking board: its stop screws, measured from the fence. Put in yours, and
# take the first # away.
# board    stops at 12, 25, 40, 50, 75  screw 10  clear 1.5
)"},
    {"job",
     R"(# All the mouldings of one piece of furniture, what they are cut from, and the saw.
# What stands after a # is for you alone. What every word means: arrisline words

job      side table
units    inch
kit      chest.kit           # beside this file: arrisline new kit -o chest.kit

# Boards on hand; boards that could be had begin with buy.
blank    poplar  3/4 thick  5 1/2 wide  72 long  count 2

# A name, its profile, the width it is ripped to, how long and how many.
# For the profile: arrisline new profile -o table-edge.profile
mould    front  table-edge.profile  width 2  length 36      count 2  mitre both
mould    ends   table-edge.profile  width 2  length 18 1/2  count 2  mitre both

saw      kerf 1/16  allowance 1/32  # left at each end of a piece
rip      kerf 1/8  true 1/32        # planed off the edge after each rip

# Save it as side-table.job, then: arrisline job side-table.job
)",
     R"(# All the mouldings of one piece of furniture, what they are cut from, and the saw.
# What stands after a # is for you alone. What every word means: arrisline words

job      side table
units    mm
kit      chest.kit           # beside this file: arrisline new kit --unit mm -o chest.kit

# Boards on hand; boards that could be had begin with buy.
blank    poplar  20 thick  140 wide  1800 long  count 2

# A name, its profile, the width it is ripped to, how long and how many.
# For the profile: arrisline new profile --unit mm -o table-edge.profile
mould    front  table-edge.profile  width 50  length 900  count 2  mitre both
mould    ends   table-edge.profile  width 50  length 470  count 2  mitre both

saw      kerf 1.5  allowance 1  # left at each end of a piece
rip      kerf 3  true 1         # planed off the edge after each rip

# Save it as side-table.job, then: arrisline job side-table.job
)"},
};

}  // namespace

Outcome new_command(const NewArguments& arguments) {
  Outcome outcome;
  const std::optional<Unit> unit = unit_option(arguments.unit, Unit::inch, "new", outcome.err);
  const std::string kind = lower(arguments.kind);
  const Template* found = nullptr;
  for (const Template& one : kTemplates)
    if (one.kind == kind) found = &one;
  const auto& kinds = words_of(Takes::kind_of_file);
  if (found == nullptr)
    outcome.err += usage_error("new", "what is begun is " + either(kinds) + ", not " +
                                          quoted(arguments.kind) + suggestion(kind, kinds));
  // A maker's own work is not written over.
  const bool taken = arguments.output && is_there(*arguments.output);
  if (taken)
    outcome.err += usage_error("new", "there is a file " + quoted(*arguments.output) +
                                          " already, and it is left as it is; choose another name");
  if (!taken && !output_option(arguments.output, "new", outcome.err)) found = nullptr;
  if (found == nullptr || !unit || taken) {
    outcome.code = kBadInput;
    return outcome;
  }
  outcome.out = *unit == Unit::inch ? found->inch : found->mm;
  outcome.file = arguments.output;
  return outcome;
}

}  // namespace arrisline
