// The table of commands and options. Shown by tests/app/options_test.cpp and tests/cli.
#include "app/options.h"

#include <algorithm>
#include <stdexcept>
#include <string>

namespace arrisline {

const std::vector<std::string_view>& words_of(Takes takes) {
  static const std::vector<std::string_view> none,
      units = {"inch", "mm"}, papers = {"a4", "letter"},
      preferences = {"fewest-planes", "fewest-cuts", "least-strokes"}, shells = {"bash", "zsh", "fish"},
      sides = {"left", "right"}, kinds = {"profile", "kit", "job"};
  switch (takes) {
    case Takes::unit:
      return units;
    case Takes::paper:
      return papers;
    case Takes::prefer:
      return preferences;
    case Takes::side:
      return sides;
    case Takes::shell:
      return shells;
    case Takes::kind_of_file:
      return kinds;
    default:
      return none;
  }
}

const std::vector<std::string_view>& endings_of(Takes takes) {
  static const std::vector<std::string_view> none, profile = {"profile"}, kit = {"kit"}, job = {"job"},
                                                   plan = {"json"}, tracing = {"csv", "txt", "svg", "dxf"},
                                                   ours = {"profile", "kit", "job"},
                                                   sheet = {"svg", "pdf", "html"};
  switch (takes) {
    case Takes::profile:
      return profile;
    case Takes::kit:
      return kit;
    case Takes::job:
      return job;
    case Takes::plan:
      return plan;
    case Takes::tracing:
      return tracing;
    case Takes::any_of_ours:
      return ours;
    case Takes::sheet:
      return sheet;
    default:
      return none;
  }
}

const std::vector<CommandRow>& command_table() {
  static const OptionRow kit = {"--kit", Takes::kit, "the planes on the shelf"};
  static const OptionRow json = {"--json", Takes::nothing, "as JSON"};
  static const OptionRow plain = {"--plain", Takes::nothing, "one fact a line, to be read aloud"};
  static const OptionRow limit = {"--limit", Takes::text, "longest search, in seconds"};
  static const OptionRow unit = {"--unit", Takes::unit, "unit of the figures"};
  static const OptionRow output = {"--output", Takes::output, "write to this file", "-o"};
  static const OptionRow sheet = {"--sheet", Takes::sheet, "write a sheet with pictures"};
  static const OptionRow paper = {"--paper", Takes::paper, "paper of a PDF"};
  static const OptionRow tolerance = {"--tolerance", Takes::text, "wood that may be left"};
  static const OptionRow scrape = {"--scrape", Takes::text, "thickest facet left for a scraper"};
  static const std::vector<CommandRow> table = {
      {"plan",
       "the numbered cut list for one profile",
       Takes::profile,
       false,
       {kit,
        json,
        plain,
        tolerance,
        scrape,
        {"--gauge-error", Takes::text, "what a gauge set wrong does"},
        limit,
        {"--prefer", Takes::prefer, "before the least effort"},
        {"--allow", Takes::text, "how far it may be drawn anew"},
        {"--redrawn", Takes::output, "write the profile drawn anew"},
        unit,
        output,
        sheet,
        paper,
        {"--picture", Takes::nothing, "draw the section"},
        {"--no-picture", Takes::nothing, "draw nothing"},
        {"--steps", Takes::nothing, "draw the section and each cut"},
        {"--ascii", Takes::nothing, "draw with ASCII"}}},
      {"check",
       "which profiles the kit can cut, and why not",
       Takes::profile,
       true,
       {kit, json, plain, limit, output}},
      {"job",
       "a whole piece of furniture",
       Takes::job,
       false,
       {json, plain, limit, unit, output, sheet, paper}},
      {"survey",
       "which kit cuts which profile, as a table",
       Takes::nothing,
       false,
       {{"--profiles", Takes::folder, "the folder of the profiles"},
        {"--kits", Takes::folder, "the folder of the kits"},
        json,
        limit,
        output}},
      {"stream",
       "profiles as lines of JSON in, plans as lines of JSON out",
       Takes::nothing,
       false,
       {kit, {"--threads", Takes::text, "so many records at a time"}, limit}},
      {"reach",
       "what a kit makes on a stock",
       Takes::nothing,
       false,
       {kit,
        {"--stock", Takes::text, "width and thickness of the stock"},
        {"--by-adding", Takes::text, "so many planes that would add most"},
        {"--write", Takes::folder, "write the profiles to this folder"},
        json,
        limit,
        output,
        {"--ascii", Takes::nothing, "draw with ASCII"}}},
      {"trace",
       "a profile from points of an old piece, or from a drawing",
       Takes::tracing,
       false,
       {unit,
        {"--tolerance", Takes::text, "how far the profile may lie off"},
        kit,
        {"--width", Takes::text, "the full width of the line"},
        {"--layer", Takes::text, "this layer of a drawing alone"},
        {"--edge", Takes::side, "where the working edge is"},
        {"--stock", Takes::text, "width and thickness of the stock"},
        output}},
      {"scale",
       "a profile larger or smaller, fillets kept",
       Takes::profile,
       false,
       {{"--height", Takes::text, "so deep, first member to last"},
        {"--projection", Takes::text, "so far out, first member to last"},
        {"--by", Takes::text, "so many times as large"},
        {"--fillet", Takes::text, "no flat becomes narrower"},
        kit,
        {"--stock", Takes::text, "width and thickness of the stock"},
        unit,
        output}},
      {"rake",
       "the profile that mitres with it up a slope",
       Takes::profile,
       false,
       {{"--slope", Takes::text, "degrees, or a rise in a run"},
        {"--corner", Takes::text, "degrees between the walls"},
        {"--at", Takes::text, "foot or head of the slope"},
        {"--face", Takes::text, "where the face looks: down or up"},
        {"--tolerance", Takes::text, "how far its arcs may lie off"},
        kit,
        unit,
        output}},
      {"new", "a commented file to begin from", Takes::kind_of_file, false, {unit, output}},
      {"words",
       "the words of the files, each with what it means",
       Takes::word,
       false,
       {{"--ascii", Takes::nothing, "draw with ASCII"}}},
      {"fmt",
       "files in tidy form",
       Takes::any_of_ours,
       true,
       {{"--check", Takes::nothing, "only say which are not tidy"}, output}},
      {"completions", "what a shell offers at the tab key", Takes::shell, false, {}},
      {"replay", "judge a plan, cut by cut, from its figures alone", Takes::plan, false, {tolerance, scrape}},
  };
  return table;
}

const CommandRow& command_row(std::string_view name) {
  for (const CommandRow& row : command_table())
    if (row.name == name) return row;
  throw std::logic_error("no command " + std::string(name) + " in the table");
}

const std::vector<std::string_view>& command_names() {
  static const std::vector<std::string_view> names = [] {
    std::vector<std::string_view> list;
    for (const CommandRow& row : command_table()) list.push_back(row.name);
    return list;
  }();
  return names;
}

}  // namespace arrisline
