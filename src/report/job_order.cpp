// The order of work and the stops on the sheet of a job. Shown by tests/report/job_sheet_test.cpp.
#include <algorithm>
#include <cmath>
#include <map>

#include "report/cut_words.h"
#include "report/figures.h"
#include "report/job_words.h"

namespace arrisline {
namespace {

void write_lines(Page& page, const Job& job, const JobPlan& plan,
                 const std::vector<std::vector<StruckLine>>& lines, Unit unit) {
  page.heading("Gauge lines of each profile");
  for (std::size_t r = 0; r < plan.runs.size(); ++r) {
    if (!plan.runs[r].plan.feasible) continue;
    std::vector<std::string> words;
    for (std::size_t i = 0; i < lines[r].size(); ++i) {
      const StruckLine& line = lines[r][i];
      words.push_back(line_letter(i) + ", " + exact(line.set, unit) + " from the " + word(line.from) +
                      (line.fine ? ", with care" : ""));
    }
    std::string all;
    for (const std::string& one : words) all += (all.empty() ? "" : "; ") + one;
    page.line(2, run_words(job, plan.runs[r]) + ": " + (all.empty() ? "none" : all) + ".");
  }
  const bool all_rails = std::all_of(lines.begin(), lines.end(), [](const std::vector<StruckLine>& of_run) {
    return std::all_of(of_run.begin(), of_run.end(),
                       [](const StruckLine& line) { return line.rail || !line.fine; });
  });
  page.line(2, std::string("\"With care\" lays a rail for a later plane") +
                   (all_rails ? "." : ", or would leave too much by the gauge's own division."));
}

void write_step(Page& page, const Job& job, const Run& run, std::size_t cut_index,
                const CutContext& context) {
  const Cut& cut = run.plan.cuts[cut_index];
  std::string words;
  const Lies before = cut_index == 0 ? Lies::face_up : run.plan.cuts[cut_index - 1].lies;
  if (cut.lies != before) words += lay(cut.lies) + " ";
  for (const std::string& sentence : where_it_goes(cut, context)) words += sentence + " ";
  if (cut.plane.kind == PlaneKind::scraper) {
    words += "Clean off what the planes left.";
  } else {
    words += guided_by(cut);
    if (cut.lies != Lies::face_up) words += " " + planed_words(cut.lies);
  }
  if (cut.overhang) words += " " + overhang_words(cut.lies);
  page.line(6, run_words(job, run) + ", cut " + std::to_string(cut.number) + ": " + words);
}

std::string saving(int changes, int one_by_one, int settings, int settings_one_by_one) {
  std::string out = counted(static_cast<std::size_t>(changes), "change of plane", "changes of plane") +
                    " and " + counted(static_cast<std::size_t>(settings), "gauge setting", "gauge settings");
  out += "; one profile after another it would be " + std::to_string(one_by_one) + " and " +
         std::to_string(settings_one_by_one);
  return out + ".";
}

bool sunk(const Stop& stop, const Job& job) {
  return stop.height < gauge_division(job.kit.shop, job.unit);
}

/// Rounded down to what can be set by eye with a rule, so that the stop stands no higher than it may.
std::string height_words(double mm, const Job& job) {
  const double division = gauge_division(job.kit.shop, job.unit);
  return exact(std::floor(mm / division + kSameLength) * division, job.unit);
}

/// "any height at 1/2 in and 1 in; up to 3/16 in at 5 in": stops of one height told together.
std::string by_height(const StopSetting& setting, bool holds, const Job& job) {
  std::vector<std::pair<std::string, std::vector<std::string>>> heights;
  for (const Stop& stop : setting.stops) {
    if (stop.holds != holds || sunk(stop, job)) continue;
    const std::string height = stop.clear ? "any height" : "up to " + height_words(stop.height, job);
    auto same =
        std::find_if(heights.begin(), heights.end(), [&](const auto& one) { return one.first == height; });
    if (same == heights.end()) same = heights.insert(heights.end(), {height, {}});
    same->second.push_back(exact(stop.at, job.unit));
  }
  std::string out;
  for (const auto& [height, at] : heights) out += (out.empty() ? "" : "; ") + height + " at " + listed(at);
  return out;
}

std::string stops_words(const StopSetting& setting, const Job& job) {
  std::vector<std::string> parts;
  const std::string holding = by_height(setting, true, job);
  const std::string idle = by_height(setting, false, job);
  if (!holding.empty()) parts.push_back("holding: " + holding + ".");
  if (!setting.held) parts.push_back("none of them holds.");
  if (!idle.empty()) parts.push_back("Bearing on nothing: " + idle + ".");
  std::vector<std::string> at;
  for (const Stop& stop : setting.stops)
    if (sunk(stop, job)) at.push_back(exact(stop.at, job.unit));
  if (!at.empty()) parts.push_back("Sunk: " + listed(at) + ".");
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : " ") + part;
  return out;
}

std::string cuts_words(const StopSetting& setting, const Plan& plan) {
  const std::string first = std::to_string(plan.cuts[setting.first].number);
  if (setting.first == setting.last) return "cut " + first;
  return "cuts " + first + " to " + std::to_string(plan.cuts[setting.last].number);
}

}  // namespace

void write_order(Page& page, const Job& job, const JobPlan& plan, Unit unit) {
  if (plan.order.steps.empty()) return;
  std::vector<std::vector<StruckLine>> lines;
  for (const Run& run : plan.runs) lines.push_back(struck_lines(run.plan));
  write_lines(page, job, plan, lines, unit);

  page.heading("Order of work");
  page.line(2, saving(plan.order.plane_changes, plan.order.plane_changes_one_by_one, plan.order.settings,
                      plan.order.settings_one_by_one) +
                   (plan.order.fewest ? " No order of these cuts has fewer changes of plane." : ""));
  page.line(2,
            "Mark an arrow on the face of each blank, the way the plane goes while it lies face up, working "
            "edge toward "
            "you. Each pass through this list is for the strips that stand next on their blanks; go through "
            "it again "
            "after they are ripped off.");
  const Plane* in_hand = nullptr;
  std::size_t number = 0;
  for (const WorkStep step : plan.order.steps) {
    const Run& run = plan.runs[step.run];
    const Cut& cut = run.plan.cuts[step.cut];
    if (in_hand == nullptr || !same_plane(*in_hand, cut.plane)) {
      page.blank();
      page.item(2, number_lead(++number), shorten(cut.plane.label, 60));
      in_hand = &cut.plane;
    }
    write_step(
        page, job, run, step.cut,
        {run.plan.section, lines[step.run], unit, gauge_division(job.kit.shop, unit), run.ripped_first});
  }
}

void write_stops(Page& page, const Job& job, const JobPlan& plan) {
  const bool any =
      std::any_of(plan.runs.begin(), plan.runs.end(), [](const Run& run) { return run.plan.feasible; });
  if (!job.kit.board || !any) return;
  page.heading("Stops of the board, from the fence");
  page.line(2, "The edge that is not worked bears on the fence. Heights are above the board.");
  for (const Run& run : plan.runs) {
    if (!run.plan.feasible) continue;
    page.line(2, run_words(job, run) +
                     (run.narrowest ? ": held on a blank from " + about(*run.narrowest, job.unit) + " wide."
                                    : ": not held on any of these blanks."));
  }
  std::map<std::pair<std::size_t, double>, const RipStep*> told;
  for (const BlankWork& blank : plan.blanks) {
    for (const RipStep& strip : blank.strips) {
      if (strip.stops.empty()) continue;
      const Run& run = plan.runs[strip.run];
      const double width = run.ripped_first ? run.plan.section.width : strip.width_before;
      if (!told.emplace(std::pair{strip.run, width}, &strip).second) continue;
      page.line(2, run_words(job, run) + ", the blank " + about(width, job.unit) + " wide:");
      for (const StopSetting& setting : strip.stops)
        page.line(4, cuts_words(setting, run.plan) + ", " + stops_words(setting, job));
    }
  }
}

}  // namespace arrisline
