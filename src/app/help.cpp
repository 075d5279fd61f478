// Help texts, each at most 80 columns wide. Shown by tests/cli.
#include "app/help.h"

namespace arrisline {
namespace {

constexpr std::string_view kProgram =
    R"(arrisline: cut lists for mouldings stuck by hand with hollows and rounds

usage: arrisline COMMAND ...

  plan PROFILE --kit KIT        the numbered cut list for one profile
  check PROFILE... --kit KIT    which profiles the kit can cut, and why not
  job FILE                      a whole piece of furniture: every moulding, from
                                blanks to mitred lengths
  survey --profiles FOLDER --kits FOLDER
                                which kit cuts which profile, as a table
  stream --kit KIT              profiles as lines of JSON in, plans as lines of
                                JSON out, on all cores
  reach --kit KIT --stock "W x T"
                                what the kit makes on that stock
  trace FILE                    a profile from points of an old piece, or from a
                                drawing (SVG, DXF)
  scale PROFILE                 a profile larger or smaller, fillets kept
  rake PROFILE --slope ANGLE    the profile that mitres with it up a slope
  new profile|kit|job           a commented file to begin from
  words [WORD]                  the words of these files, with a picture each
  fmt FILE...                   profiles, kits and jobs in tidy form
  completions bash|zsh|fish     what the shell offers at the tab key
  replay PLAN.json              judge a plan, cut by cut, from its figures alone

  -h, --help                    this text; after a command, or as help COMMAND,
                                what is said of it
  --version                     the version

example: arrisline plan table-edge.profile --kit chest.kit

Exit codes: 0 done, 1 the answer is no, 2 bad input or usage, 3 a fault of ours,
130 left off at Ctrl-C.
)";

constexpr std::string_view kPlan =
    R"(arrisline plan: the numbered cut list for one profile with one kit of planes

usage: arrisline plan PROFILE --kit KIT [options]

  PROFILE            the moulding, a text file; - reads standard input
  --kit KIT          the planes on the shelf, a text file
  --json             the plan for other programs (JSON), not the cut list
  --plain            one fact a line, to be read aloud: no columns, no pictures
  --tolerance L      wood that may be left above the finished line
                     (default 1/128 in, 0.2 mm)
  --scrape L         thickest facet that may be left for a scraper
                     (default 1/64 in, 0.4 mm)
  --gauge-error L    what becomes of the finished line if every setting of the
                     gauge is off by L, and which setting matters most
  --limit SECONDS    leave off the search for less effort then (default 10), with
                     the best plan so far
  --prefer WHAT      fewest-planes, fewest-cuts or least-strokes before the least
                     effort
  --allow L          where these planes cannot cut it, redraw it with radii of
                     theirs, nowhere farther than L from the drawing
  --redrawn FILE     keep the redrawn profile in this file
  --unit inch|mm     unit of the figures printed (default: the kit's)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  --sheet FILE       write a sheet with pictures too: FILE.svg, FILE.pdf (the
                     section at true size) or FILE.html (to step through); may
                     be given several times
  --paper a4|letter  of a PDF (default: the one that is usual where you are)
  --picture          draw the section above the cut list, in files and pipes too;
                     on a terminal it is drawn unasked
  --no-picture       draw nothing
  --steps            draw the section and each cut
  --ascii            draw with the signs of a keyboard alone, where the terminal
                     shows others wrongly
  -h, --help         this text

L is a length such as 1/64, .01 or 0.3mm; a bare number has the unit of --unit,
or else of the kit. Exit code 1: these planes cannot cut it, and why is printed.

example: arrisline plan table-edge.profile --kit chest.kit --sheet edge.pdf
)";

constexpr std::string_view kCheck = R"(arrisline check: which profiles a kit of planes can cut

usage: arrisline check PROFILE... --kit KIT [options]

  PROFILE...         the mouldings, text files
  --kit KIT          the planes on the shelf, a text file
  --json             the answers as a JSON list
  --plain            one fact a line, to be read aloud: no columns, no pictures
  --limit SECONDS    longest search for each profile (default 10)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  -h, --help         this text

For each profile yes or no; where no, the element, the reason and the nearest
changes that would do. Exit code 1: at least one cannot be cut.

example: arrisline check table-edge.profile plinth.profile --kit chest.kit
)";

constexpr std::string_view kJob =
    R"(arrisline job: all the mouldings of one piece of furniture, from blanks to
mitred lengths

usage: arrisline job FILE [options]

  FILE               the job, a text file: mouldings, blanks, saw; it names the
                     kit and the profiles
  --json             the job as JSON instead of the sheet
  --plain            one fact a line, to be read aloud: no columns, no pictures
  --limit SECONDS    longest search for each profile, and for the blanks
                     (default 10)
  --unit inch|mm     unit of the figures printed (default: the job's)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  --sheet FILE       write a sheet with pictures too: FILE.svg, FILE.pdf or
                     FILE.html; may be given several times
  --paper a4|letter  of a PDF (default: the one that is usual where you are)
  -h, --help         this text

Printed are the blanks strip by strip, the order of work for all profiles
together, stops, mitres, the time it takes, and what falls short. Exit code 1:
blanks or planes do not suffice; everything else is printed all the same.

example: arrisline job bookcase.job
)";

constexpr std::string_view kSurvey = R"(arrisline survey: which kit of planes cuts which profile

usage: arrisline survey --profiles FOLDER --kits FOLDER [options]

  --profiles FOLDER  the files *.profile in it are the mouldings
  --kits FOLDER      the files *.kit in it are the kits
  --json             the answers as a JSON list, with the reasons
  --limit SECONDS    longest search for each answer (default 10)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  -h, --help         this text

A table of yes and no, with ? where the search reached its limit. All cores work
at it. Exit code 0 whatever the answers are.

example: arrisline survey --profiles mouldings --kits chests
)";

constexpr std::string_view kStream =
    R"(arrisline stream: profiles as lines of JSON in, plans as lines of JSON out

usage: arrisline stream [--kit KIT] [options] < RECORDS > ANSWERS

  --kit KIT          the planes on the shelf, a text file, for every record that
                     names none itself
  --threads N        so many records at a time (default: all cores)
  --limit SECONDS    longest search for each record (default 10)
  -h, --help         this text

A record is an object on one line: "profile" and "kit" are each a text with the
ends of its lines, or a path; "id" is any string or whole number. For each there
is one line, in the same order: {"id": ..., "plan": {...}}, where a no is a plan
too, or {"id": ..., "error": {...}}, and the reading goes on.

example: arrisline stream --kit chest.kit < catalogue.jsonl > plans.jsonl

Exit code 0: every record has a plan; 1: some have an error instead.
)";

constexpr std::string_view kReach = R"(arrisline reach: what a kit of planes makes on a stock

usage: arrisline reach --kit KIT --stock "W x T" [options]

  --kit KIT          the planes on the shelf, a text file
  --stock "W x T"    width and thickness of the stock, such as "2 x 3/4"
  --by-adding N      the N planes that would add most, one after the other
  --write FOLDER     write the profile of each moulding to this folder; a file
                     there that holds anything else is not written over
  --json             the mouldings as JSON
  --limit SECONDS    longest search for each moulding (default 2)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  --ascii            draw with the signs of a keyboard alone, where the terminal
                     shows others wrongly
  -h, --help         this text

Tried are ovolo, cavetto, flat beads and coves, and ogees at the radii of the
kit's hollows and rounds, alone, with fillets on either side, and two with a
fillet between. Shown are those it cuts well: with nothing left to scrape, and
every hollow and round evenly on its rails. Exit code 1: there is none.

example: arrisline reach --kit chest.kit --stock "2 x 3/4" --by-adding 2
)";

constexpr std::string_view kTrace =
    R"(arrisline trace: from an old piece or a drawing to a profile

usage: arrisline trace FILE [options]

  FILE               the section, traced: points, two figures a line (a profile
                     gauge, a digitiser), a drawing of its line as .svg or .dxf
  --unit inch|mm     unit of the figures in the file, where it does not say, and
                     of the profile (default: by their size)
  --tolerance L      how far the profile may lie from what was traced
                     (default 0.002 in, 0.05 mm; 0.2 mm for a trace by hand)
  --kit KIT          take the radii of these planes, and of grooves the widths of
                     these irons, where the tolerance allows
  --width L          the full width of the line, whatever the file says
  --layer NAME       of a drawing only this layer (.dxf), or what has this id or
                     label (.svg): the line without its frame and dimensions
  --edge left|right  the side that the working edge is at, face up (default: where
                     a drawing shows it; of points, at the left)
  --stock "W x T"    width and thickness of the stock (default: as traced, or
                     as large as the work needs)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  -h, --help         this text

The fewest flats and arcs that follow the line become a profile, with what fits
how well beside each. Points may come in any order, from either end, up to 10
degrees askew. A photograph is not read: lay points on it with a digitiser, or
draw over it. L is a length; a bare number has the unit of --unit, or else is in
millimetres.

example: arrisline trace old-cornice.csv --unit mm -o old-cornice.profile
)";

constexpr std::string_view kNew = R"(arrisline new: a commented file to begin from

usage: arrisline new profile|kit|job [options]

  --unit inch|mm     unit of the figures in it (default: inch)
  -o, --output FILE  write to this new file instead of the terminal; a file that
                     is there already is left alone
  -h, --help         this text

The profile, the kit and the job belong together and can be planned as they are;
then change the figures. "arrisline words" tells what every word means.

example: arrisline new profile -o table-edge.profile
         arrisline new kit -o chest.kit
         arrisline plan table-edge.profile --kit chest.kit
)";

constexpr std::string_view kWordsHelp =
    R"(arrisline words: the words of profiles, kits and jobs, and what they mean

usage: arrisline words [WORD] [options]

  WORD               only this word, with an example (default: every word)
  --ascii            draw with the signs of a keyboard alone, where the terminal
                     shows others wrongly
  -h, --help         this text

Elements and trade shapes are drawn at the end grain, face up, working edge at
the left; planes stand on their soles.

example: arrisline words ogee
)";

constexpr std::string_view kFmt = R"(arrisline fmt: profiles, kits and jobs in tidy form

usage: arrisline fmt FILE... [options]

  FILE...            files whose names end in .profile, .kit or .job
  --check            change nothing; print the names of those that are not tidy,
                     with exit code 1
  -o, --output FILE  write to this file, whole or not at all, instead of the one
                     that was read; of one FILE only
  -h, --help         this text

Words in columns, comments below each other, one empty line for several. What
you wrote stays as it is: comments, figures, the order of the lines. A file with
mistakes is left alone, and the mistakes are printed, with exit code 2.

example: arrisline fmt table-edge.profile chest.kit
)";

constexpr std::string_view kCompletions =
    R"(arrisline completions: commands, options, files and words at the tab key

usage: arrisline completions bash|zsh|fish

  -h, --help         this text

Prints a script for the shell. An installed arrisline brings the scripts with
it; where it is not installed, the line below does for bash until it is closed.

example: source <(arrisline completions bash)
)";

constexpr std::string_view kScale = R"(arrisline scale: a moulding larger or smaller

usage: arrisline scale PROFILE --height L | --projection L | --by F [options]

  PROFILE            the moulding, a text file; - reads standard input
  --height L         so deep, from its highest point to its lowest
  --projection L     so far out, likewise
  --by F             so many times as large, such as 3/4 or 1.25
  --fillet L         no fillet, step or quirk becomes narrower (default 1/16 in,
                     1.5 mm); one that is narrower already stays as it is
  --kit KIT          each arc takes the nearest radius of the kit's hollows or
                     rounds, where one is no more than a third off
  --stock "W x T"    width and thickness of the stock (default: the wood behind
                     the moulding stays, the next usual thickness)
  --unit inch|mm     unit of the lengths, and of the profile (default: that of
                     PROFILE)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  -h, --help         this text

What is not to scale is written beside it in the profile. With --kit the height
comes out as the radii have it.

example: arrisline scale cornice.profile --height 1-1/4 -o small.profile
)";

constexpr std::string_view kRake =
    R"(arrisline rake: the moulding that mitres with a level one and runs up a slope

usage: arrisline rake PROFILE --slope ANGLE [options]

  PROFILE            the level moulding, a text file; - reads standard input
  --slope ANGLE      of the pediment: degrees up to 60, or a rise in a run, such
                     as "5 in 12"
  --corner ANGLE     between the two walls, in plan (default 90; 180 is one wall)
  --at foot|head     the end of the slope where they meet (default foot)
  --face down|up     where the face looks when it hangs: down in a cornice
                     (default), up in a plinth
  --tolerance L      how far arcs may lie from the true curves (default 0.004 in,
                     0.1 mm)
  --kit KIT          say in the profile whether this kit cuts it; exit code 1
                     where it cannot
  --unit inch|mm     unit of the lengths, and of the profile (default: that of
                     PROFILE)
  -o, --output FILE  write to this file, whole or not at all, instead of the
                     terminal
  -h, --help         this text

The work must be one chain, from the face to the working edge or the underside.

example: arrisline rake cornice.profile --slope 22.5 -o raking.profile
         arrisline rake cornice.profile --slope 22.5 | arrisline plan - --kit KIT
)";

constexpr std::string_view kReplay = R"(arrisline replay: judge a plan, cut by cut, from its figures alone

usage: arrisline replay PLAN.json [options]

  PLAN.json          a plan as "arrisline plan --json" prints it, or as somebody
                     changed it; - reads standard input
  --tolerance L      wood that may be left above the finished line
                     (default 0.2 mm)
  --scrape L         thickest facet that may be left for a scraper
                     (default 0.4 mm)
  -h, --help         this text

L is a length such as 0.3, .01in or 1/64in; a bare number is in millimetres, as
in the plan. Findings are printed one a line, and the exit code is 1.

example: arrisline plan table-edge.profile --kit chest.kit --json > plan.json
         arrisline replay plan.json
)";

}  // namespace

std::string help_text(std::string_view command) {
  if (command == "plan") return std::string(kPlan);
  if (command == "check") return std::string(kCheck);
  if (command == "job") return std::string(kJob);
  if (command == "survey") return std::string(kSurvey);
  if (command == "stream") return std::string(kStream);
  if (command == "reach") return std::string(kReach);
  if (command == "trace") return std::string(kTrace);
  if (command == "new") return std::string(kNew);
  if (command == "words") return std::string(kWordsHelp);
  if (command == "fmt") return std::string(kFmt);
  if (command == "completions") return std::string(kCompletions);
  if (command == "scale") return std::string(kScale);
  if (command == "rake") return std::string(kRake);
  if (command == "replay") return std::string(kReplay);
  return std::string(kProgram);
}

std::string example_of(std::string_view command) {
  constexpr std::string_view kMark = "example: ";
  const std::string text = help_text(command);
  const std::size_t from = text.find(kMark) + kMark.size();
  return text.substr(from, text.find('\n', from) - from);
}

}  // namespace arrisline
