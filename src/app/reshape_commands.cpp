// `arrisline scale` and `arrisline rake`: from a profile to the one that it becomes. Shown by tests/cli.
#include <cmath>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/same_file.h"
#include "arrisline/report.h"
#include "report/reshaped_profile.h"
#include "section/drawing_of.h"
#include "section/one_chain.h"
#include "wording/figures.h"
#include "wording/length.h"
#include "wording/source.h"
#include "wording/words.h"

namespace arrisline {
namespace {

constexpr const char* kNoProfile = "what it becomes is no profile, as below; give other figures:";
constexpr double kMostSlope = 60;          // degrees
constexpr double kSharpest = 30;           // degrees, of a corner
constexpr double kLeastTolerance = 0.001;  // mm

/// A profile, and the unit that its file is written in.
struct Given {
  Section section;
  Unit unit = Unit::inch;
};

Unit unit_in(std::string_view text) {
  for (const std::string_view line : split_lines(text, "").lines) {
    const std::vector<Token> tokens = tokenise(line, 1);
    if (tokens.size() > 1 && lower(tokens[0].text) == "units")
      return lower(tokens[1].text) == "mm" ? Unit::mm : Unit::inch;
  }
  return Unit::inch;
}

std::optional<Given> given(const std::string& path, std::string& messages) {
  Given out;
  std::optional<Section> section =
      take(read_input<Section>(path,
                               [&](std::string_view text, const std::string& file) {
                                 out.unit = unit_in(text);
                                 return read_profile(text, file);
                               }),
           messages);
  if (!section) return std::nullopt;
  out.section = std::move(*section);
  return out;
}

/// A number of one word, or a mixed one of two, as the files have lengths: "22.5", "22 1/2".
std::optional<Number> number_in(std::string_view text) {
  const std::vector<Token> tokens = tokenise(text, 1);
  std::string why;
  if (tokens.empty() || tokens.size() > 2) return std::nullopt;
  const std::optional<Number> number = scan_number(tokens.front().text, why);
  if (tokens.size() == 1 || !number) return number;
  std::optional<Number> fraction = scan_number(tokens.back().text, why);
  if (!number->whole || !number->suffix.empty() || !fraction || !fraction->fraction) return std::nullopt;
  fraction->value += number->value;
  return fraction;
}

/// A number of degrees, of at least `least` and up to `most`.
std::optional<double> degrees(std::string_view text, double least, double most) {
  const std::optional<Number> number = number_in(text);
  const bool plain_or_degrees =
      number && (number->suffix.empty() || number->suffix == "deg" || number->suffix == "\u00B0");
  if (!plain_or_degrees || !(number->value >= least) || number->value > most) return std::nullopt;
  return number->value;
}

/// "22 1/2", "22.5deg", or a rise in a run, "5 in 12".
std::optional<double> slope_option(const std::optional<std::string>& text, std::string& messages) {
  constexpr double kLeastSlope = 0.01;  // degrees
  if (!text) return std::nullopt;
  std::optional<double> slope = degrees(*text, kLeastSlope, kMostSlope);
  const std::size_t in = lower(*text).find(" in ");
  if (!slope && in != std::string::npos) {
    const auto rise = number_in(std::string_view(*text).substr(0, in));
    const auto run = number_in(std::string_view(*text).substr(in + 4));
    if (rise && run && rise->suffix.empty() && run->suffix.empty() && rise->value > 0 && run->value > 0)
      slope = to_degrees(std::atan2(rise->value, run->value));
    if (slope && (*slope < kLeastSlope || *slope > kMostSlope)) slope.reset();
  }
  if (!slope)
    messages += usage_error("rake",
                            "--slope is an angle of 0.01 to 60 degrees, such as 22.5, or a "
                            "rise in a run, such as '5 in 12', not " +
                                quoted(*text));
  return slope;
}

std::optional<double> corner_option(const std::optional<std::string>& text, std::string& messages) {
  if (!text) return 90;
  const std::optional<double> corner = degrees(*text, kSharpest, 180);
  if (!corner)
    messages +=
        usage_error("rake", "--corner is an angle of 30 to 180 degrees, such as 90, not " + quoted(*text));
  return corner;
}

/// A factor of 1/100 to 100.
std::optional<double> by_option(const std::optional<std::string>& text, std::string& messages) {
  if (!text) return 1;
  const std::optional<Number> number = number_in(*text);
  if (number && number->suffix.empty() && number->value >= 0.01 && number->value <= 100) return number->value;
  messages +=
      usage_error("scale", "--by is a number of 0.01 to 100, such as 3/4 or 1.25, not " + quoted(*text));
  return std::nullopt;
}

/// Which of two words an option is; true for the second.
std::optional<bool> choice(const std::string& name, const std::optional<std::string>& word,
                           std::string_view first, std::string_view second, std::string& messages) {
  if (!word || lower(*word) == first) return false;
  if (lower(*word) == second) return true;
  messages += usage_error("rake", name + " is " + std::string(first) + " or " + std::string(second) +
                                      ", not " + quoted(*word) + suggestion(lower(*word), {first, second}));
  return std::nullopt;
}

/// What is drawn and its remarks: a member that only runs along the face, up to where cutting begins, is no
/// part of what is reshaped.
struct Drawn {
  Drawing drawing;
  std::vector<std::string> remarks;
};

Drawn drawn(const Section& section, Unit unit) {
  Drawn out;
  std::vector<int> sources;
  out.drawing = drawing_of(section, unit, &sources);
  for (int i = 0; i < (sources.empty() ? 0 : sources.front()); ++i)
    out.remarks.push_back("Left out is " + describe(section.elements[static_cast<std::size_t>(i)]) +
                          ", which lies along the face before anything is cut.");
  return out;
}

struct Verdict {
  std::string words;
  int code = kDone;
};

/// Whether the kit cuts the raked profile, in a sentence; `tolerance` is how far that may lie from the true
/// one.
Verdict answer(const std::string& text, const Kit& kit, const std::string& tolerance,
               const Outside& outside) {
  const Reading<Section> section = read_profile(text, "raked.profile");
  if (!section.value) return {};  // give_profile() says why
  PlanOptions options;  // bounded by work and not by the clock: the profile is the same at every run
  options.any = true;
  options.interrupt = outside.interrupt;
  options.progress = outside.progress;
  const Plan plan = make_plan(*section.value, kit, options);
  const std::string name = kit.name.empty() ? "The kit" : "Kit " + kit.name;
  if (plan.feasible) return {name + " cuts it: arrisline plan says how.", kDone};
  if (plan.undecided) return {name + ": the search reached its limit before it found a plan.", kNo};
  return {name + " cannot cut it: arrisline plan says why, and with --allow " + tolerance +
              " finds one as near to it that can be cut, where there is one.",
          kNo};
}

}  // namespace

Outcome scale_command(const ScaleArguments& arguments) {
  Outcome outcome;
  const std::optional<Given> from = given(arguments.profile, outcome.err);
  std::optional<Kit> kit;
  if (arguments.kit) kit = take(read_kit_file(*arguments.kit), outcome.err);
  const auto unit = unit_option(arguments.unit, from ? from->unit : Unit::inch, "scale", outcome.err);
  const Unit of_lengths = unit.value_or(Unit::inch);
  const auto height = length_option("--height", arguments.height, of_lengths, 0, "scale", outcome.err);
  const auto projection =
      length_option("--projection", arguments.projection, of_lengths, 0, "scale", outcome.err);
  const auto by = by_option(arguments.by, outcome.err);
  const double usual = of_lengths == Unit::inch ? kMmPerInch / 16 : 1.5;
  const auto fillet = length_option("--fillet", arguments.fillet, of_lengths, usual, "scale", outcome.err);
  const auto stock = stock_option(arguments.stock, of_lengths, "scale", outcome.err);
  const bool writable = output_option(arguments.output, "scale", outcome.err) &&
                        kept_apart({arguments.profile, arguments.kit.value_or("")},
                                   {{"--output", arguments.output}}, "scale", outcome.err);
  if (!from || !unit || !height || !projection || !by || !fillet || !stock || !writable ||
      (arguments.kit && !kit)) {
    outcome.code = kBadInput;
    return outcome;
  }
  ScaleOptions options;
  if (arguments.height) options.height = *height;
  if (arguments.projection) options.projection = *projection;
  if (arguments.by) options.by = *by;
  options.fillet = *fillet;
  if (kit) options.kit = &*kit;
  const auto [drawing, remarks] = drawn(from->section, *unit);
  if ((arguments.kit || arguments.fillet) && !is_one_chain(drawing)) {
    outcome.err += usage_error(
        "scale", std::string(arguments.kit ? "--kit" : "--fillet") +
                     " goes with work of one chain, from the face to the working edge or the underside; any "
                     "other is scaled with its stock as a whole: leave it out");
    outcome.code = kBadInput;
    return outcome;
  }
  std::string why;
  std::optional<Scaled> result = scaled(drawing, options, &why);
  if (!result) {
    outcome.err += refusal(input_name(arguments.profile), why);
    outcome.code = kBadInput;
    return outcome;
  }
  if (stock->width > 0) {
    result->drawing.width = stock->width;
    result->drawing.thickness = stock->thickness;
  }
  give_profile(
      scaled_profile(*result, file_name(input_name(arguments.profile)), *fillet, options.kit, remarks),
      input_name(arguments.profile), kNoProfile, arguments.output, outcome);
  return outcome;
}

Outcome rake_command(const RakeArguments& arguments) {
  Outcome outcome;
  const std::optional<Given> from = given(arguments.profile, outcome.err);
  std::optional<Kit> kit;
  if (arguments.kit) kit = take(read_kit_file(*arguments.kit), outcome.err);
  const auto unit = unit_option(arguments.unit, from ? from->unit : Unit::inch, "rake", outcome.err);
  const auto slope = slope_option(arguments.slope, outcome.err);
  const auto corner = corner_option(arguments.corner, outcome.err);
  const auto head = choice("--at", arguments.at, "foot", "head", outcome.err);
  const auto up = choice("--face", arguments.face, "down", "up", outcome.err);
  RakeOptions options;
  const auto tolerance = length_option("--tolerance", arguments.tolerance, unit.value_or(Unit::inch),
                                       options.tolerance, "rake", outcome.err);
  const bool fine = !tolerance || *tolerance >= kLeastTolerance;
  if (!fine) outcome.err += usage_error("rake", "--tolerance is at least 0.001 mm, such as 0.1mm");
  const bool writable = output_option(arguments.output, "rake", outcome.err) &&
                        kept_apart({arguments.profile, arguments.kit.value_or("")},
                                   {{"--output", arguments.output}}, "rake", outcome.err);
  if (!from || !unit || !slope || !corner || !head || !up || !tolerance || !fine || !writable ||
      (arguments.kit && !kit)) {
    outcome.code = kBadInput;
    return outcome;
  }
  options.slope = *slope;
  options.corner = *corner;
  options.at = *head ? ReturnAt::head : ReturnAt::foot;
  options.face = *up ? Face::up : Face::down;
  options.tolerance = *tolerance;
  auto [level, remarks] = drawn(from->section, *unit);
  std::string why;
  const std::optional<Raked> result = raked(level, options, &why);
  if (!result) {
    outcome.err += refusal(input_name(arguments.profile), why);
    outcome.code = kBadInput;
    return outcome;
  }
  const std::string name = file_name(input_name(arguments.profile));
  const Verdict cuts = kit ? answer(raked_profile(*result, options, name, {}), *kit,
                                    show(options.tolerance, *unit, true), arguments.outside)
                           : Verdict{};
  if (kit) remarks.push_back(cuts.words);
  give_profile(raked_profile(*result, options, name, remarks), input_name(arguments.profile), kNoProfile,
               arguments.output, outcome);
  if (outcome.code == kDone) outcome.code = cuts.code;
  outcome.code = code_after(arguments.outside, outcome.code);
  return outcome;
}

}  // namespace arrisline
