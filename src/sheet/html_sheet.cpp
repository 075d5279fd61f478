// A plan, or all of a job's, as one HTML page to step through. Shown by tests/sheet/html_test.cpp and
// tests/sheet/browser.py.
#include <algorithm>
#include <array>

#include "arrisline/sheet.h"
#include "report/job_words.h"
#include "report/listing.h"
#include "sheet/full_size.h"
#include "sheet/html_page.h"
#include "sheet/picture.h"
#include "sheet/svg.h"

namespace arrisline {
namespace {

// mm of paper. Type of 3 mm in it can still be read on a telephone 360 px wide, and from the back of a class.
constexpr double kWidth = 100;
constexpr double kHeight = 75;
constexpr double kKeyWidth = 80;
constexpr std::string_view kCautions = "Cautions";

using Blocks = std::vector<Block>;

std::string element(const std::string& tag, const std::string& attributes, const std::string& text) {
  return "<" + tag + (attributes.empty() ? "" : " " + attributes) + ">" + escaped(text) + "</" + tag + ">\n";
}

std::string heading(int level, const std::string& text, const std::string& id = "") {
  return element("h" + std::to_string(level), id.empty() ? "" : "id=\"" + id + "\"", text);
}

/// Paragraphs and lists; a line further in than an item belongs to it.
std::string running_text(Blocks::const_iterator at, Blocks::const_iterator end) {
  std::string out;
  bool listing = false;
  std::size_t indent = 0;
  std::size_t margin = std::string::npos;
  for (auto block = at; block != end; ++block)
    if (block->kind == Block::Kind::line || block->kind == Block::Kind::item)
      margin = std::min(margin, block->indent);
  const auto close = [&] {
    if (listing) out += "</li>\n</ul>\n";
    listing = false;
  };
  for (; at != end; ++at) {
    if (at->kind == Block::Kind::item) {
      if (listing && at->indent <= indent) {
        out += "</li>\n<li>";
      } else {
        close();
        out += "<ul class=\"items\">\n<li>";
        indent = at->indent;
        listing = true;
      }
      out += "<span class=\"lead\">" + escaped(at->lead.substr(0, at->lead.find_last_not_of(' ') + 1)) +
             "</span> " + escaped(at->text);
    } else if (at->kind == Block::Kind::line) {
      if (!listing || at->indent <= indent) {
        close();
        out += element("p", at->indent > margin ? "class=\"in\"" : "", at->text);
      } else {
        out += "\n" + element("p", "", at->text);
      }
    }
  }
  close();
  return out;
}

Blocks::const_iterator next_heading(Blocks::const_iterator at, Blocks::const_iterator end) {
  return std::find_if(at, end, [](const Block& b) { return b.kind == Block::Kind::heading; });
}

/// Each heading with what stands under it; the ids are `id` and a number.
std::string parts(Blocks::const_iterator at, Blocks::const_iterator end, int level, const std::string& id) {
  std::string out;
  for (int number = 1; at != end; ++number) {
    const Blocks::const_iterator next = next_heading(at + 1, end);
    out += "<section class=\"part\">\n" + heading(level, at->text, id + std::to_string(number)) +
           running_text(at + 1, next) + "</section>\n";
    at = next;
  }
  return out;
}

/// The first of the cautions, with the way to all of them; "" where there are none.
std::string short_caution(const Blocks& blocks, const std::string& id) {
  int number = 0;
  for (std::size_t i = 0; i + 1 < blocks.size(); ++i) {
    if (blocks[i].kind != Block::Kind::heading) continue;
    ++number;
    if (blocks[i].text == kCautions)
      return "<p class=\"care\" role=\"note\">" + escaped(blocks[i + 1].text) + " <a href=\"#" + id +
             std::to_string(number) + "\">" + escaped(blocks[i].text) + "</a></p>\n";
  }
  return "";
}

std::string figure_of(const Picture& picture, const std::string& id, const char* attributes = "") {
  return std::string("<figure") + attributes + ">\n" + svg_element(picture, id) + "</figure>\n";
}

/// The section with its dimensions, at the largest of some scales with room for it.
Picture section_picture(const Section& section, Unit unit) {
  constexpr std::array<double, 14> kScales = {8, 6, 5, 4, 3, 2.5, 2, 1.5, 1.25, 1, 0.8, 0.6, 0.5, 0.4};
  for (const double scale : kScales) {
    Picture picture = dimensioned_picture(section, unit, scale);
    if (picture.width <= kWidth && picture.height <= kHeight) return picture;
  }
  const double scale = 0.5 * std::min(kWidth / section.width, kHeight / section.thickness);
  return dimensioned_picture(section, unit, std::min(scale, kScales.back()));
}

/// A plan on a page: its ids begin with `id`, its steps have headings of `level`.
struct Part {
  const Plan& plan;
  const Kit& kit;
  const SheetOptions& options;
  std::string id;
  int level;
};

struct Step {
  std::string title;
  std::string row;  // in the list
  std::string picture;
  std::string words;
};

std::vector<Step> steps_to_show(const Part& part, const Listing& listing) {
  const Plan& plan = part.plan;
  const Unit unit = part.options.report.unit;
  const Picture section = section_picture(plan.section, unit);
  const auto first = next_heading(listing.before.begin() + 1, listing.before.end());
  std::vector<Step> out;
  out.push_back({"The finished section", "The finished section", figure_of(section, part.id + "p0"),
                 parts(first, listing.before.end(), part.level + 1, part.id + "-before")});
  const std::vector<StepView> views = steps_of(plan);
  const Frame frame = frame_of(plan, views, unit, kWidth, kHeight);
  for (std::size_t i = 0; i < views.size(); ++i) {
    const Picture picture = step_picture(plan, views[i], frame);
    Step step{picture.title, "", figure_of(picture, part.id + "p" + std::to_string(i + 1)), ""};
    // The title says what the item says: which plane, and what for.
    Blocks words;
    for (const Block& block : listing.cuts[i]) {
      if (block.kind == Block::Kind::item) {
        step.row = block.lead + block.text;
      } else {
        words.push_back(block);
      }
    }
    step.words = running_text(words.begin(), words.end());
    out.push_back(std::move(step));
  }
  return out;
}

std::string bench(const Part& part, const std::vector<Step>& steps) {
  const std::string last = std::to_string(steps.size() - 1);
  std::string out = "<div class=\"bench\">\n<div class=\"show\">\n" +
                    figure_of(key_picture(kKeyWidth), part.id + "key", " class=\"key\"") +
                    "<div class=\"stage\">\n";
  for (std::size_t i = 0; i < steps.size(); ++i)
    out += "<article class=\"step\" id=\"" + part.id + "-step" + std::to_string(i) + "\">\n" +
           heading(part.level, steps[i].title) + steps[i].picture +
           (i == 0 ? "<div class=\"words ready\">\n" : "<div class=\"words\">\n") + steps[i].words +
           "</div>\n</article>\n";
  out +=
      "</div>\n<div class=\"tools\" role=\"group\" aria-label=\"Step through the cuts\" hidden=\"hidden\">\n"
      "<button type=\"button\">Back</button>\n<input type=\"range\" min=\"0\" max=\"" +
      last +
      "\" step=\"1\" value=\"0\" aria-label=\"Cut shown\"/>\n<button type=\"button\">Next</button>\n"
      "</div>\n<p class=\"said\" role=\"status\" aria-live=\"polite\"></p>\n</div>\n"
      "<nav class=\"list\" aria-labelledby=\"" +
      part.id + "-list\">\n" + heading(part.level, "Cuts", part.id + "-list") + "<ol>\n";
  for (std::size_t i = 0; i < steps.size(); ++i)
    out += "<li><a href=\"#" + part.id + "-step" + std::to_string(i) + "\">" + escaped(steps[i].row) +
           "</a></li>\n";
  return out + "</ol>\n</nav>\n</div>\n";
}

/// The plan without its title: what stands under that, the steps, and the rest of the list.
std::string plan_part(const Part& part, const Listing& listing) {
  const std::string before = part.id + "-before", after = part.id + "-after";
  const auto first = next_heading(listing.before.begin() + 1, listing.before.end());
  std::string out = "<div class=\"facts\">\n" + running_text(listing.before.begin() + 1, first) + "</div>\n" +
                    short_caution(listing.after, after);
  if (part.plan.feasible && !part.plan.cuts.empty()) {
    out += bench(part, steps_to_show(part, listing));
  } else {
    const Unit unit = part.options.report.unit;
    const Picture section = section_picture(part.plan.section, unit);
    out += "<div class=\"still\">\n" + figure_of(section, part.id + "p0") + "<div class=\"words\">\n" +
           parts(first, listing.before.end(), part.level, before) + "</div>\n</div>\n";
  }
  return out + "<div class=\"after\">\n" +
         parts(listing.after.begin(), listing.after.end(), part.level, after) + "</div>\n";
}

}  // namespace

std::string html_sheet(const Plan& plan, const Kit& kit, const SheetOptions& options) {
  const Listing listing = listing_of(plan, kit, options.report, options.gauge_error);
  const std::string& title = listing.before.front().text;
  return html_page(escaped(title),
                   "<header>\n" + heading(1, title) + "</header>\n<main>\n" +
                       plan_part({plan, kit, options, "plan", 2}, listing) + "</main>\n",
                   options.paper);
}

std::string html_sheet(const Job& job, const JobPlan& plan, const SheetOptions& options) {
  const Blocks blocks = job_blocks(job, plan, options.report);
  const auto first = next_heading(blocks.begin() + 1, blocks.end());
  const std::string& title = blocks.front().text;
  const auto row = [](const std::string& id, const std::string& words) {
    return "<li><a href=\"#" + id + "\">" + escaped(words) + "</a></li>\n";
  };
  std::string contents, works;
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    const std::string id = "run" + std::to_string(i + 1);
    const std::string name = "For " + run_words(job, plan.runs[i]);
    const Listing listing = listing_of(plan.runs[i].plan, job.kit, options.report);
    contents += row(id, name);
    works += "<section class=\"work\" aria-labelledby=\"" + id + "\">\n" + heading(2, name, id) +
             heading(3, listing.before.front().text) +
             plan_part({plan.runs[i].plan, job.kit, options, id, 3}, listing) + "</section>\n";
  }
  int number = 0;
  for (auto at = first; at != blocks.end(); at = next_heading(at + 1, blocks.end()))
    contents += row("job" + std::to_string(++number), at->text);
  const Blocks rest(first, blocks.end());
  return html_page(escaped(title),
                   "<header>\n" + heading(1, title) + "<div class=\"facts\">\n" +
                       running_text(blocks.begin() + 1, first) + "</div>\n" + short_caution(rest, "job") +
                       "</header>\n<main>\n<nav class=\"contents\" "
                       "aria-labelledby=\"contents\">\n" +
                       heading(2, "Contents", "contents") + "<ol>\n" + contents + "</ol>\n</nav>\n" + works +
                       "<div class=\"work sheet\">\n" + parts(rest.begin(), rest.end(), 2, "job") +
                       "</div>\n</main>\n",
                   options.paper);
}

}  // namespace arrisline
