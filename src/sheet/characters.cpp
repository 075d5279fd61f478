// The section, and each cut, drawn with characters: first in words what is drawn, then the picture, a rule
// and a key, for whoever has it read aloud. Shown by tests/sheet/characters_test.cpp and tests/cli.
#include <algorithm>
#include <cmath>
#include <optional>

#include "arrisline/sheet.h"
#include "report/cut_words.h"
#include "report/page.h"
#include "sheet/glyphs.h"
#include "sheet/steps.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr std::size_t kIndent = 2;
constexpr std::size_t kMostRows = 16;     // with words, rule and key some 24 lines
constexpr std::size_t kMostCutRows = 10;  // a few rows of cuts are seen at once
constexpr std::size_t kMostCutColumns = 37;
constexpr std::size_t kLeastCell = 24;  // room for the words over a cut
constexpr std::size_t kGap = 2;         // between cuts side by side

constexpr std::size_t line_width(bool ascii) {
  return ascii ? 1 : 2;
}

std::string padded(std::string text, std::size_t width) {
  text.append(width - std::min(width, columns(text)), ' ');
  return text;
}

void add_line(std::string& out, std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  out += line + "\n";
}

/// Rows of characters with the mark of a blank that goes on.
std::vector<std::string> rows_of(const Raster& raster, const std::vector<Mark>& marks, const Grid& grid,
                                 bool ascii) {
  std::vector<std::string> rows = in_characters(raster, marks, ascii);
  if (grid.cut_off)
    for (std::string& row : rows) row += "~";
  return rows;
}

std::string rule(const Grid& grid, const CharacterOptions& options) {
  const std::string size = exact(grid.rule, options.unit);
  if (grid.rule_columns < 2)
    return (options.ascii ? "|" : "\u2502") + std::string(" a character is ") + size + " wide";
  std::string out = options.ascii ? "|" : "\u251c";
  for (std::size_t i = 2; i < grid.rule_columns; ++i) out += options.ascii ? "-" : "\u2500";
  return out + (options.ascii ? "|" : "\u2524") + " " + size;
}

std::string words_before(const Plan& plan, const Grid& grid, const CharacterOptions& options) {
  const Section& section = plan.section;
  std::string out = section.name.empty() ? "The section" : "The section of " + shorten(section.name, 60);
  out += ": end grain, face up, working edge at the left.";
  if (grid.cut_off)
    out += " The blank goes on to the right at ~; it is " + exact(section.width, options.unit) + " wide.";
  return out;
}

std::string key_line(const std::string& waste, const KeyGlyphs& key) {
  return key.wood + " wood that stays, " + key.waste + " " + waste + ", " + key.line + " finished line.";
}

/// Where a sole comes down: over the middle of what it takes, or of its part within the blank.
std::optional<Mark> mark_of(const Cut& cut, const Pose& pose, const StepView& step, const Grid& grid) {
  constexpr int kPlaces = 64;  // across the sole; a character is seldom finer
  const double row = 2 * grid.column;
  double sum = 0, sum_within = 0;
  int count = 0, count_within = 0;
  const Point right_below = grid.origin + grid.column * Point{static_cast<double>(grid.columns),
                                                              2 * static_cast<double>(grid.rows)};
  for (int i = 0; i < kPlaces; ++i) {
    const double u = cut.plane.width * ((i + 0.5) / kPlaces - 0.5);
    const Point p = from_sole_frame(pose, {u, sole_height(cut.plane, u) + 0.05});
    if (p.x < 0 || p.y < 0 || p.x > right_below.x || p.y > right_below.y) continue;
    sum_within += u;
    ++count_within;
    if (!contains(step.before, p) || contains(step.after, p)) continue;
    sum += u;
    ++count;
  }
  if (count_within == 0) return std::nullopt;
  const double u = count > 0 ? sum / count : sum_within / count_within;
  const Point at = from_sole_frame(pose, {u, sole_height(cut.plane, u) + row / 2}) - grid.origin;
  const double column =
      std::clamp(std::floor(at.x / grid.column), 0.0, static_cast<double>(grid.columns - 1));
  const double down = std::clamp(std::floor(at.y / row), 0.0, static_cast<double>(grid.rows - 1));
  return Mark{static_cast<std::size_t>(column), static_cast<std::size_t>(down), pose.tilt};
}

/// How the plane is held: "upright", "on its side", "leaning 30-60 degrees"; no wider than kLeastCell.
std::string held(const Cut& cut) {
  if (cut.poses.empty()) return "by hand";
  const auto all = [&cut](bool (*is)(double)) {
    return std::all_of(cut.poses.begin(), cut.poses.end(), [is](const Pose& pose) { return is(pose.tilt); });
  };
  const bool below = all([](double tilt) { return std::fabs(tilt) > 90; });
  const bool back = all([](double tilt) { return tilt < 0; });
  double least = 180, most = 0;
  for (const Pose& pose : cut.poses) {
    const double lean = below ? 180 - std::fabs(pose.tilt) : std::fabs(pose.tilt);
    least = std::min(least, lean);
    most = std::max(most, lean);
  }
  const std::string one = plain(least, 0), other = plain(most, 0);
  if (one == other && other == "0") return below ? "from below" : "upright";
  if (one == other && other == "90") return back ? "on its side, from behind" : "on its side";
  const std::string figure = one == other ? plain(most, 1) : one + "-" + other;
  return std::string(below ? "below, " : back ? "back, " : "leaning ") + figure + " degrees";
}

/// The cuts, as many side by side as there is room for.
void write_cuts(std::string& out, const Plan& plan, const CharacterOptions& options) {
  const std::vector<StepView> steps = steps_of(plan);
  const std::size_t room = options.columns - kIndent;
  const Grid grid = grid_of(plan.section, options.unit, std::min(kMostCutColumns, room - 1), kMostCutRows);
  const std::size_t cell = std::max(grid.columns + (grid.cut_off ? 1 : 0), std::min(kLeastCell, room));
  const std::size_t across = std::max<std::size_t>(1, (room + kGap) / (cell + kGap));
  for (std::size_t first = 0; first < steps.size(); first += across) {
    const std::size_t last = std::min(first + across, steps.size());
    std::vector<std::string> lines(grid.rows + 2, std::string(kIndent, ' '));
    for (std::size_t i = first; i < last; ++i) {
      const Cut& cut = plan.cuts[steps[i].cut];
      std::vector<std::string> mine = {
          shorten(std::to_string(cut.number) + ". " + visible(cut.plane.label), cell),
          shorten(held(cut), cell)};
      std::vector<Mark> marks;
      for (const Pose& pose : cut.poses)
        if (const auto mark = mark_of(cut, pose, steps[i], grid)) marks.push_back(*mark);
      const Raster raster =
          raster_of(plan.section, steps[i].before, steps[i].after, grid, line_width(options.ascii));
      for (std::string& row : rows_of(raster, marks, grid, options.ascii)) mine.push_back(std::move(row));
      for (std::size_t k = 0; k < lines.size(); ++k)
        lines[k] += padded(mine[k], i + 1 < last ? cell + kGap : cell);
    }
    out += "\n";
    for (std::string& line : lines) add_line(out, std::move(line));
  }
  out += "\n";
  const KeyGlyphs key = samples(options.ascii);
  add_line(out, "  " + rule(grid, options));
  Page words;
  words.line(kIndent, key_line("wood that this cut takes", key));
  words.line(kIndent, key.mark + (options.ascii ? " where the sole comes down."
                                                : " where the sole comes down, and which way."));
  out += in_columns(words.take(), false);
}

}  // namespace

std::string drawn_in_characters(const Plan& plan, const CharacterOptions& options) {
  const std::size_t room = options.columns - kIndent;
  const Section& section = plan.section;
  const Grid grid = grid_of(section, options.unit, room - 1, kMostRows);
  Page before;
  before.line(0, words_before(plan, grid, options));
  before.blank();
  std::string out = in_columns(before.take(), false);
  const Raster raster = raster_of(section, {blank_outline(section.width, section.thickness)},
                                  {section.target}, grid, line_width(options.ascii));
  for (const std::string& row : rows_of(raster, {}, grid, options.ascii)) add_line(out, "  " + row);
  out += "\n";
  add_line(out, "  " + rule(grid, options));
  Page after;
  after.line(kIndent, key_line("waste", samples(options.ascii)));
  if (options.steps && !plan.cuts.empty()) {
    after.heading(plan.cuts.size() == 1 ? "The cut, drawn as the section is"
                                        : "The " + counted(plan.cuts.size(), "cut", "cuts") +
                                              " in order, drawn as the section is");
  }
  out += in_columns(after.take(), false);
  if (options.steps && !plan.cuts.empty()) write_cuts(out, plan, options);
  return out;
}

}  // namespace arrisline
