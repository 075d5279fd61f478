// The numbered cut list: what to get out and strike, each cut, what is left. Shown by tests/report.
#include <algorithm>
#include <cmath>

#include "arrisline/report.h"
#include "report/cut_words.h"
#include "report/figures.h"
#include "report/gauge_error_words.h"
#include "report/gauge_lines.h"
#include "report/listing.h"
#include "report/page.h"
#include "report/plain.h"
#include "report/reasons.h"
#include "report/work.h"

namespace arrisline {
namespace {

// Wood below the finished line that counts as none: rule 1 of docs/model.md.
constexpr double kGouge = 0.01;

void write_planes(Page& page, const Plan& plan) {
  page.heading("Planes to get out, in order of use");
  std::vector<const Plane*> planes;
  for (const Cut& cut : plan.cuts) {
    const auto same = [&cut](const Plane* plane) { return same_plane(*plane, cut.plane); };
    if (std::none_of(planes.begin(), planes.end(), same)) planes.push_back(&cut.plane);
  }
  for (std::size_t i = 0; i < planes.size(); ++i)
    page.item(2, number_lead(i + 1), shorten(planes[i]->label, 120));
  if (planes.empty()) page.line(2, "None.");
}

std::string gauged_words(const StruckLine& line, Unit unit) {
  const Side from = line.gauged.from;
  const std::string flat = from == Side::face || from == Side::underside ? "floor" : "wall";
  return exact(line.gauged.set, unit) + " from the " +
         (line.gauged.left_by == 0 ? word(from) : flat + " of cut " + std::to_string(line.gauged.left_by));
}

/// ", on the face", or what has to be done before it can be struck.
std::string struck_words(const StruckLine& line) {
  if (line.wall_of != 0) {
    const bool upright = line.on == Side::edge || line.on == Side::back;
    return std::string(", on the ") + (upright ? "wall" : "floor") + " of cut " +
           std::to_string(line.wall_of) + " that looks to the " + word(line.on);
  }
  const int after = std::max(line.after, line.gauged.left_by);
  return after == 0 ? std::string(", on the ") + word(line.on)
                    : ", once cut " + std::to_string(after) + " is done";
}

/// mm of wood that was asked to be left at most.
double asked_for(const Plan& plan, const ReportOptions& options) {
  return plan.left.scrape ? options.scrape : options.tolerance;
}

/// "line K", "lines B, D and K" of those for which that holds; nothing where it holds for none.
struct Lines {
  std::string words;
  bool one = false;
};

template <class Holds>
Lines lines_that(const std::vector<StruckLine>& lines, const Holds& holds) {
  std::vector<std::string> letters;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (holds(lines[i])) letters.push_back(line_letter(i));
  if (letters.empty()) return {};
  return {(letters.size() == 1 ? "line " : "lines ") + listed(letters), letters.size() == 1};
}

void write_lines(Page& page, const Plan& plan, const std::vector<StruckLine>& lines,
                 const ReportOptions& options) {
  const Unit unit = options.unit;
  page.heading("Gauge lines to strike, in order");
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const StruckLine& line = lines[i];
    const std::string letter = line_letter(i) + ". ";
    page.item(2 + (letter.size() < 4 ? 4 - letter.size() : 0), letter,
              gauged_words(line, unit) + struck_words(line));
  }
  if (lines.empty()) page.line(2, "None.");
  const Lines rails = lines_that(lines, [](const StruckLine& line) { return line.rail; });
  if (!rails.words.empty())
    page.line(2, "Set " + rails.words + " with care: " + (rails.one ? "it lays a rail" : "they lay rails") +
                     " for a later plane.");
  const Lines close = lines_that(lines, [](const StruckLine& line) { return line.fine && !line.rail; });
  if (!close.words.empty())
    page.line(2, "Set " + close.words + " with care: by the gauge's own division " +
                     (close.one ? "it" : "they") + " would leave more than the " +
                     thickness(asked_for(plan, options), unit) + " asked for.");
}

void write_cut(Page& page, const Cut& cut, const CutContext& context) {
  const std::size_t indent = 6;
  page.item(2, number_lead(static_cast<std::size_t>(std::max(cut.number, 0))),
            shorten(cut.plane.label, 60) + ": " + purpose(cut, context.section) + ".");
  for (const std::string& words : where_it_goes(cut, context)) page.line(indent, words);
  if (cut.plane.kind != PlaneKind::scraper) {
    page.line(indent, guided_by(cut));
    page.line(indent, planed_words(cut.lies));
  }
  if (cut.overhang) page.line(indent, overhang_words(cut.lies));
  if (!cut.reason.empty()) page.line(indent, "Why now: " + visible(cut.reason) + ".");
}

// What the list says of each cut, in turn.
std::vector<std::vector<Block>> cuts_of(const Plan& plan, const CutContext& context) {
  std::vector<std::vector<Block>> out;
  Lies lies = Lies::face_up;
  for (const Cut& cut : plan.cuts) {
    Page page;
    if (cut.lies != lies) page.line(2, lay(cut.lies));
    lies = cut.lies;
    write_cut(page, cut, context);
    out.push_back(page.take());
  }
  return out;
}

/// "line K to 0.7427 in, finer than it is set": each line that leaves too much as set, with its exact figure.
std::string finer_words(const std::vector<StruckLine>& lines, Unit unit) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const StruckLine& line = lines[i];
    if (!line.finer) continue;
    const double more = line.at - line.set;
    const double at = line.gauged.set + (line.gauged.from == line.from ? more : -more);
    words.push_back("line " + line_letter(i) + " to " +
                    (unit == Unit::inch ? plain(at / kMmPerInch, 4) : plain(at, 3)) + unit_word(unit));
  }
  if (words.empty()) return "";
  return listed(words) + ", finer than " + (words.size() == 1 ? "it is" : "they are") + " set";
}

void write_left(Page& page, const Plan& plan, const std::vector<StruckLine>& lines,
                const ReportOptions& options) {
  page.heading("What is left");
  const Left& left = plan.left;
  const std::string most = thickness(left.max_height, options.unit);
  std::string exactly = "Cut exactly: " + most;
  if (most != "nothing") {
    exactly += " at the thickest";
    if (!left.where.empty()) exactly += ", on " + shorten(left.where, 100);
  }
  page.line(2, exactly + ".");
  std::string as_set =
      "With the gauge lines rounded as set: " + thickness(left.as_set_max_height, options.unit);
  if (thickness(left.as_set_max_height, options.unit) != "nothing") as_set += " at the thickest";
  as_set += left.as_set_deepest_gouge <= kGouge
                ? "; nothing cut below the finished line."
                : "; " + thickness(left.as_set_deepest_gouge, options.unit) + " cut below the finished line.";
  page.line(2, as_set);
  const double allowed = asked_for(plan, options);
  if (left.as_set_max_height > allowed) {
    const std::string finer = finer_words(lines, options.unit);
    page.line(2, "As set, that is more than the " + thickness(allowed, options.unit) + " asked for" +
                     (finer.empty() ? "" : ": work " + finer) + ".");
  }
  if (left.scrape) page.line(2, "The scraper takes it down to the finished line.");
}

void write_effort(Page& page, const Plan& plan, const Kit& kit) {
  page.heading("Effort");
  const Work work = work_of(plan, kit);
  std::string counts = counted(work.cuts, "cut", "cuts") + ", " +
                       counted(work.plane_changes, "change of plane", "changes of plane") + ", " +
                       counted(static_cast<std::size_t>(work.settings), "gauge setting", "gauge settings");
  if (work.turns > 0)
    counts += ", the blank turned " + (work.turns == 1   ? "once"
                                       : work.turns == 2 ? "twice"
                                                         : std::to_string(work.turns) + " times");
  page.line(2, counts + ".");
  std::string stick = plain(std::ceil(work.strokes), 0) + " strokes, each the length of the stick";
  if (kit.shop.strokes_per_minute > 0)
    stick += ", about " + plain(std::max(1.0, std::round(work.minutes)), 0) +
             (work.minutes < 1.5 ? " minute" : " minutes") + " at " + plain(kit.shop.strokes_per_minute, 1) +
             " a minute";
  page.line(2, stick + ".");
  page.line(2, "Flat soles take " + share(plan.waste_by_flat, plan.waste_area) + " of the waste.");
  if (!work.shavings.empty()) page.line(2, "Shavings by plane, in mm² of section:");
  for (const Shavings& shavings : work.shavings)
    page.line(4, shorten(shavings.plane, 60) + ": " + plain(shavings.area, 1));
  const std::string effort = "Effort " + plain(plan.effort, 1);
  const std::string among = plan.prefer == Prefer::fewest_planes   ? " with the fewest planes"
                            : plan.prefer == Prefer::fewest_cuts   ? " with the fewest cuts"
                            : plan.prefer == Prefer::least_strokes ? " with the least strokes"
                                                                   : "";
  if (plan.optimal) {
    page.line(2, effort + ", the least of all plans searched" + among + ".");
  } else {
    const std::string bound = plain(plan.bound, 1);
    page.line(2, effort + "; the search was left off, and a plan" + among + " may do with less" +
                     (bound == "0" ? "" : ", though not under " + bound) + ".");
  }
}

bool has_arc(const Section& section, int element) {
  for (std::size_t i = 0; i < section.target.size() && i < section.source.size(); ++i)
    if (section.source[i] == element && section.target[i].is_arc()) return true;
  return false;
}

// Flat soles finish an arc only where the shop allows facets, and then the list says so.
void write_facets(Page& page, const Plan& plan) {
  for (const Cut& cut : plan.cuts) {
    if (!cut.plane.is_flat()) continue;
    for (const int element : cut.elements) {
      if (element < 0 || !has_arc(plan.section, element)) continue;
      page.line(2, "Cut " + std::to_string(cut.number) + " leaves flats on " +
                       shorten(describe(plan.section.elements[static_cast<std::size_t>(element)]), 100) +
                       ": no hollow or round of the kit serves there.");
    }
  }
}

void write_notes(Page& page, const Plan& plan, const Kit& kit) {
  page.heading("Notes");
  if (plan.holding_checked) {
    page.line(2, "Holding was checked: the board's stop screws clear the plane in every cut.");
  } else {
    page.line(2,
              kit.board ? "Holding was not checked." : "Holding was not checked: the kit has no board line.");
  }
  write_facets(page, plan);
  std::vector<std::string> over;
  for (const Cut& cut : plan.cuts)
    if (cut.overhang) over.push_back(std::to_string(cut.number));
  if (over.empty()) return;
  page.line(2, (over.size() == 1 ? "Cut " : "Cuts ") + listed(over) +
                   (over.size() == 1 ? " passes" : " pass") +
                   " below the blank: the edge must overhang the board.");
}

void write_cautions(Page& page) {
  page.heading("Cautions");
  page.line(2, "The irons are sharp: keep both hands behind the cutting edge.");
  page.line(2,
            "See that the work is held before each cut. Where the grain rises toward the plane it "
            "splinters: turn the stick, or take less.");
  page.line(2, "The tool maker's advice and your shop's rules come before this list. More: docs/care.md.");
}

}  // namespace

Listing listing_of(const Plan& plan, const Kit& kit, const ReportOptions& options,
                   const GaugeError* gauge_error) {
  Listing out;
  Page page;
  const Section& section = plan.section;
  page.heading(named("Cut list", section.name));
  page.line(2, "Stock: " + exact(section.width, options.unit) + " wide, " +
                   exact(section.thickness, options.unit) + " thick.");
  if (!kit.name.empty()) page.line(2, "Kit: " + shorten(kit.name, 150) + ".");
  if (!plan.feasible) {
    page.heading(plan.undecided ? "No answer: the search reached its limit before it found a plan"
                                : "No: these planes cannot cut it");
    write_reasons(page, plan, options);
    out.before = page.take();
    return out;
  }
  const std::vector<StruckLine> lines = struck_lines(plan);
  const CutContext context{section, lines, options.unit, gauge_division(kit.shop, options.unit)};
  write_planes(page, plan);
  write_lines(page, plan, lines, options);
  page.heading("Cuts");
  if (plan.cuts.empty()) {
    page.line(2, "None: the blank is already the finished section.");
  } else {
    page.line(2,
              "Mark an arrow on the face of the blank, the way the plane goes while the blank lies face up, "
              "working edge toward you. Choose the end so that the grain rises along it.");
  }
  out.before = page.take();
  out.cuts = cuts_of(plan, context);
  write_left(page, plan, lines, options);
  if (gauge_error != nullptr) write_gauge_error(page, plan, *gauge_error, context);
  write_effort(page, plan, kit);
  write_notes(page, plan, kit);
  write_cautions(page);
  out.after = page.take();
  return out;
}

std::string cut_list(const Plan& plan, const Kit& kit, const ReportOptions& options,
                     const GaugeError* gauge_error) {
  const Listing listing = listing_of(plan, kit, options, gauge_error);
  Page page;
  page.append(listing.before);
  for (const std::vector<Block>& cut : listing.cuts) {
    page.blank();
    page.append(cut);
  }
  page.append(listing.after);
  return laid_out(page.take(), options.plain, options.colour);
}

}  // namespace arrisline
