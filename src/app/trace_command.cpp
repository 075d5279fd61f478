// `arrisline trace`: from the points of a section, or a drawing of it, to a profile. Shown by tests/cli.
#include <algorithm>
#include <cmath>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/same_file.h"
#include "arrisline/report.h"
#include "arrisline/trace.h"
#include "report/figures.h"
#include "report/traced_profile.h"
#include "trace/spread.h"
#include "wording/figures.h"
#include "wording/length.h"
#include "wording/source.h"
#include "wording/words.h"

namespace arrisline {
namespace {

/// The larger of width and height, in the file's own figures.
double extent_of(const std::vector<Point>& points) {
  const Point span = span_of(points);
  return std::max(span.x, span.y);
}

/// mm in one of the file's figures, and what to say of it where the file did not.
struct Scale {
  double mm = 1;
  Unit unit = Unit::mm;
  std::string remark;
};

/// `unit` is what --unit says where `given`.
Scale scale_of(const Tracing& tracing, bool given, Unit unit) {
  if (tracing.mm_per_unit) {
    const bool inches = std::abs(*tracing.mm_per_unit - kMmPerInch) < 1e-6;
    return {*tracing.mm_per_unit, given ? unit : inches ? Unit::inch : Unit::mm, ""};
  }
  if (given) return {unit == Unit::inch ? kMmPerInch : 1, unit, ""};
  // A moulding by hand is some tenths of an inch to some inches, or some millimetres to some hundred.
  constexpr double kInches = 5;
  const Unit likely = extent_of(tracing.points) < kInches ? Unit::inch : Unit::mm;
  return {likely == Unit::inch ? kMmPerInch : 1, likely,
          std::string("Its figures were taken for ") + (likely == Unit::inch ? "inches" : "millimetres") +
              ", as their size suggests; --unit says otherwise."};
}

/// The radii of the planes that could ride there, each once.
std::vector<double> radii_of(const Kit& kit) {
  std::vector<double> out;
  for (const Plane& plane : kit.planes)
    if (plane.is_curved()) out.push_back(plane.radius);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

/// The widths of grooves that its irons make.
std::vector<double> widths_of(const Kit& kit) {
  std::vector<double> out;
  for (const Plane& plane : kit.planes)
    if (plane.kind == PlaneKind::plough) out.push_back(plane.width);
  return out;
}

/// What --edge names, nothing where it is absent; a word that is no side adds to `messages`.
std::optional<EdgeAt> edge_option(const std::optional<std::string>& word, std::string& messages) {
  if (!word) return std::nullopt;
  if (lower(*word) == "left") return EdgeAt::left;
  if (lower(*word) == "right") return EdgeAt::right;
  messages += usage_error("trace",
                          "--edge is left or right, the side of the tracing that the working edge "
                          "is at, not " +
                              quoted(*word) + suggestion(lower(*word), {"left", "right"}));
  return std::nullopt;
}

}  // namespace

Outcome trace_command(const TraceArguments& arguments) {
  Outcome outcome;
  const std::optional<Unit> unit = unit_option(arguments.unit, Unit::mm, "trace", outcome.err);
  const Unit of_lengths = unit.value_or(Unit::mm);
  FitOptions options;
  const auto tolerance =
      length_option("--tolerance", arguments.tolerance, of_lengths, options.tolerance, "trace", outcome.err);
  const auto width = length_option("--width", arguments.width, of_lengths, 0, "trace", outcome.err);
  const bool no_width = arguments.width && width && !(*width > 0);
  if (no_width)
    outcome.err += usage_error("trace", "--width " + quoted(*arguments.width) +
                                            ": the line is more than 0 wide; give the width that it has");
  const auto stock = stock_option(arguments.stock, of_lengths, "trace", outcome.err);
  options.edge = edge_option(arguments.edge, outcome.err);
  const bool no_side = arguments.edge && !options.edge;
  std::optional<Kit> kit;
  if (arguments.kit) kit = take(read_kit_file(*arguments.kit), outcome.err);
  const bool writable = output_option(arguments.output, "trace", outcome.err) &&
                        kept_apart({arguments.file, arguments.kit.value_or("")},
                                   {{"--output", arguments.output}}, "trace", outcome.err);
  if (!unit || !tolerance || !width || !stock || !writable || no_width || no_side ||
      (arguments.kit && !kit)) {
    outcome.code = kBadInput;
    return outcome;
  }
  TracingOptions reading;
  if (arguments.width) reading.width = *width;
  reading.layer = arguments.layer;
  reading.progress = arguments.read;
  const std::optional<Tracing> tracing = take(read_tracing_file(arguments.file, reading), outcome.err);
  if (!tracing) {
    outcome.code = kBadInput;
    return outcome;
  }
  const Scale scale = scale_of(*tracing, arguments.unit.has_value(), of_lengths);
  if (const double large = scale.mm * extent_of(tracing->points); large > kLongest) {
    outcome.err +=
        refusal(arguments.file, "by the unit of its figures the line is " + plain(large / 1000, 1) +
                                    " m large, and the longest that is read is 10 m; give the full "
                                    "width that it has: --width");
    outcome.code = kBadInput;
    return outcome;
  }
  options.tolerance = *tolerance;
  options.mm_per_unit = scale.mm;
  options.division = gauge_division(kit ? kit->shop : Shop{}, scale.unit);
  if (kit) {
    options.preferred = radii_of(*kit);
    options.widths = widths_of(*kit);
  }
  if (stock->width > 0) {
    options.width = stock->width;
    options.thickness = stock->thickness;
  }
  std::string why;
  std::optional<FittedProfile> fitted = fit_tracing(*tracing, options, &why);
  if (!fitted) {
    outcome.err += refusal(arguments.file, why);
    outcome.code = kBadInput;
    return outcome;
  }
  fitted->section.name = stem(arguments.file);
  const TracedFrom from{file_name(arguments.file), scale.remark, options.tolerance, kit ? &*kit : nullptr,
                        scale.unit};
  // A line that crosses itself, or leaves the stock, makes no profile.
  give_profile(
      traced_profile(*fitted, from), arguments.file,
      fitted->put_in_order
          ? "its points stand in no order along the line, and in the order that they were put in "
            "the line that fits it best is no profile, as below; trace them one after the other along it:"
          : "the line that fits it best is no profile, as below; trace it anew, or give a smaller "
            "--tolerance:",
      arguments.output, outcome);
  return outcome;
}

}  // namespace arrisline
