// The first page of a plan, and those that a large section goes over. Shown by tests/sheet/pdf_test.cpp.
#include "sheet/full_size_pages.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "report/gauge_lines.h"
#include "sheet/full_size.h"
#include "sheet/picture.h"
#include "sheet/tiles.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kGap = 4;
constexpr double kType = 3.3;
constexpr double kLeastDrawn = 45;          // room in height below which nothing larger is drawn
constexpr std::size_t kMostParts = 24;      // of a section at true size; more would be wallpaper
constexpr std::size_t kMostEdges = 100000;  // in all parts together: some tens of MB

constexpr std::array<double, 8> kLarger = {8, 6, 5, 4, 3, 2.5, 2, 1.5};

Picture drawn(const Plan& plan, Unit unit, double scale) {
  return dimensioned_picture(plan.section, unit, scale);
}

std::string how_to_read(Unit unit) {
  return std::string("The face is up, the working edge at the left. Figures are in ") +
         (unit == Unit::inch ? "inches" : "millimetres") +
         ": those above and below the section are from the working edge, those beside it from the face. R is "
         "a radius, a cross its centre.";
}

double rules_depth() {
  return rules_picture().height;
}

/// The rules with what to do with them beside them.
void write_rules(Pages& pages) {
  Picture rules = rules_picture();
  const double beside = pages.left() + rules.width + 6;
  const double height = rules.height;
  const std::vector<Paragraph> words =
      caption_paragraphs({{Block::Kind::item, 0, "", "Print at 100 %, no fit to page."},
                          {Block::Kind::line, 0, "",
                           "Then measure both rules: 100 mm and 4 in. If they are off, so is the section: do "
                           "not work from it."}},
                         pages.left() + pages.width() - beside);
  const double at = pages.down();
  pages.put(std::move(rules), {pages.left(), at});
  pages.put(words, {beside, at});
  pages.skip(std::max(height, depth_of(words)));
}

std::vector<Block> cautions(bool sawing) {
  std::vector<Block> out = {
      {Block::Kind::item, 0, "", "Take care."},
      {Block::Kind::line, 0, "",
       "The irons are sharp: both hands behind the cutting edge. See that the work is held before each cut. "
       "Where the grain rises toward the plane it splinters: turn the stick, or take less."}};
  if (sawing)
    out.push_back({Block::Kind::line, 0, "",
                   "Saw with both hands clear of the line, and use a push stick for narrow strips."});
  out.push_back(
      {Block::Kind::line, 0, "",
       "The tool maker's advice and your shop's rules come before this sheet. More: docs/care.md."});
  return out;
}

std::vector<Block> stock(const Plan& plan, const Kit& kit, Unit unit) {
  std::string words = "Stock " + exact(plan.section.width, unit) + " wide, " +
                      exact(plan.section.thickness, unit) + " thick.";
  if (!kit.name.empty()) words += " Kit: " + shorten(kit.name, 80) + ".";
  return {{Block::Kind::line, 0, "", words}};
}

void write_on_one_page(Pages& pages, const Plan& plan, Unit unit, Picture section, double kept) {
  pages.heading("The section at full size, to trace or to glue on a template");
  pages.text(how_to_read(unit));
  pages.space(kGap);
  pages.picture(std::move(section));
  const double room = pages.room() - kept - kGap - 12;
  for (const double scale : kLarger) {
    if (room < kLeastDrawn) break;
    if (std::max(plan.section.width * scale / pages.width(), plan.section.thickness * scale / room) > 1)
      continue;
    Picture larger = drawn(plan, unit, scale);
    if (larger.width > pages.width() || larger.height > room) continue;
    pages.heading("The same drawn " + scale_words(scale) + ", not to trace");
    pages.picture(std::move(larger));
    break;
  }
}

/// Small, as large as the page has room for.
void write_small(Pages& pages, const Plan& plan, Unit unit, double kept) {
  const double room = pages.room() - kept - kGap;
  double scale = 0.9 * std::min(pages.width() / plan.section.width, room / plan.section.thickness);
  for (int tries = 0; tries < 30; ++tries, scale *= 0.9) {
    Picture small = drawn(plan, unit, scale);
    if (small.width > pages.width() || small.height > room) continue;
    pages.picture(std::move(small));
    return;
  }
}

constexpr double kPartHead = 15;  // heading and words above a part, at least

/// Height of what stands above each part.
double part_head(const Tiling& tiling) {
  return std::max(kPartHead, map_of(tiling, 0).height + 1);
}

/// One under the other as long as there is room, the rules at the foot of each page.
void write_parts(Pages& pages, const Tiling& tiling) {
  const double head = part_head(tiling);
  for (std::size_t i = 0; i < tiling.tiles.size(); ++i) {
    const Tile& tile = tiling.tiles[i];
    if (i == 0 || head + tile.picture.height + 2 * kGap + rules_depth() > pages.room()) {
      if (i > 0) write_rules(pages);
      pages.start_page();
    }
    const double top = pages.down();
    Picture map = map_of(tiling, i);
    const Point corner = {pages.left() + pages.width() - map.width, top};
    pages.put(std::move(map), corner);
    pages.heading("At full size: part " + tile.letter + ", row " + std::to_string(tile.row + 1) + " of " +
                  std::to_string(tiling.rows) + ", column " + std::to_string(tile.column + 1) + " of " +
                  std::to_string(tiling.columns));
    pages.put(
        caption_paragraphs({{Block::Kind::line, 0, "",
                             "Lay the parts on each other so that the joints meet, each between the same two "
                             "letters."}},
                           corner.x - pages.left() - 4),
        {pages.left(), pages.down()});
    pages.skip(std::max(0.0, top + head - pages.down()));
    pages.put(tile.picture, {pages.left(), pages.down()});
    pages.skip(tile.picture.height + kGap);
  }
  write_rules(pages);
}

Tiling tiling_of(const Pages& pages, const Picture& section) {
  std::size_t edges = 1;
  for (const DrawnShape& shape : section.shapes)
    for (const auto& chain : shape.chains) edges += chain.size();
  const std::size_t most = std::min(kMostParts, kMostEdges / edges);
  // The map of the parts takes room, and with it there may be more of them.
  Tiling out;
  double head = kPartHead;
  for (int i = 0; i < 3; ++i) {
    out = tiles_of(section, pages.width(), pages.most_room() - head - rules_depth() - 2 * kGap, most);
    head = part_head(out);
  }
  return out;
}

}  // namespace

Picture rules_picture() {
  // The last figure stands past the end of its rule, in line with it.
  constexpr double kLine = 5, kNext = 13, kFigures = 14;
  Picture out;
  out.title = "Rules to check the printer by";
  out.description = "A rule 100 mm long above one 4 in long.";
  const auto mark = [&out](Point a, Point b) {
    out.shapes.push_back({Role::measure, {{{a, b, {}, Turn::straight}}}, false, false});
  };
  mark({0, kLine}, {100, kLine});
  for (int mm = 0; mm <= 100; mm += 1)
    mark({double(mm), kLine}, {double(mm), kLine - (mm % 10 == 0 ? 4 : mm % 5 == 0 ? 2.8 : 1.6)});
  mark({0, kNext}, {4 * kMmPerInch, kNext});
  for (int n = 0; n <= 64; ++n) {
    const double x = n * kMmPerInch / 16;
    mark({x, kNext}, {x, kNext - (n % 16 == 0 ? 4 : n % 8 == 0 ? 3.2 : n % 4 == 0 ? 2.4 : 1.6)});
  }
  out.labels.push_back({{100 + 1.2, kLine}, "100 mm", kType, Anchor::start, false});
  out.labels.push_back({{4 * kMmPerInch + 1.2, kNext}, "4 in", kType, Anchor::start, false});
  out.width = 100 + kFigures + 2;
  out.height = kNext + 1;
  out.window = {0, 0, out.width, out.height};
  return out;
}

void write_full_size(Pages& pages, const Plan& plan, const Kit& kit, Unit unit, bool sawing) {
  pages.start_page();
  const std::string name = shorten(plan.section.name, 150);
  pages.title(name.empty() ? "Moulding" : name, 2);
  pages.blocks(stock(plan, kit, unit));
  const std::vector<Paragraph> care = caption_paragraphs(cautions(sawing), pages.width());
  const double kept = depth_of(care) + rules_depth() + 3 * kGap;

  Picture section = drawn(plan, unit, 1);
  const double head = 18;  // heading and words
  const bool one_page = section.width <= pages.width() && section.height <= pages.room() - head - kept;
  const Tiling tiling = one_page ? Tiling{} : tiling_of(pages, section);
  if (one_page) {
    write_on_one_page(pages, plan, unit, std::move(section), kept);
  } else {
    const bool too_many = tiling.tiles.empty();
    const std::string letters =
        tiling.parts() == 1 ? "part A" : "parts A to " + line_letter(tiling.parts() - 1);
    pages.heading("The section, drawn small; not to trace");
    pages.text(how_to_read(unit) +
               (too_many
                    ? " At full size it would take " + std::to_string(tiling.parts()) +
                          " pages, so it is not drawn so."
                    : " It follows at full size as " + letters + ", to trace or to glue on a template."));
    pages.space(kGap);
    write_small(pages, plan, unit, kept);
  }
  pages.space(kGap);
  write_rules(pages);
  pages.space(kGap);
  pages.put(care, {pages.left(), pages.down()});
  pages.skip(depth_of(care));
  if (!tiling.tiles.empty()) write_parts(pages, tiling);
}

}  // namespace arrisline
