// A plan, or all of a job's, as one SVG document. Shown by tests/sheet/svg_test.cpp.
#include <algorithm>

#include "arrisline/sheet.h"
#include "report/job_words.h"
#include "report/listing.h"
#include "sheet/full_size.h"
#include "sheet/picture.h"
#include "sheet/svg.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kMargin = 10;
constexpr double kWidth = 210;
constexpr double kGap = 6;
constexpr double kCell = (kWidth - 2 * kMargin - kGap) / 2;
constexpr double kPicture = 68;  // height, at most
constexpr double kType = 3;
constexpr double kRow = 4;
constexpr double kHead = 4;

/// A sheet that is written from the top down.
class Writer {
 public:
  Writer() {
    sheet_.width = kWidth;
    down_ = kMargin;
  }

  void text(const std::string& words, double size, bool bold) {
    // Bold is wider: broken as for a larger type.
    for (const std::string& line : wrapped(words, bold ? 1.2 * size : size, kWidth - 2 * kMargin)) {
      down_ += 1.35 * size;
      sheet_.labels.push_back({{kMargin, down_ - 0.35 * size}, line, size, Anchor::start, bold});
    }
  }
  void blocks(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) {
      if (block.kind == Block::Kind::heading) {
        space(2);
        text(block.text, 1.15 * kType, true);
      } else if (block.kind != Block::Kind::blank) {
        text(block.lead + block.text, kType, false);
      }
    }
  }
  void space(double height) { down_ += height; }
  void picture(Picture picture) {
    const double height = picture.height;
    sheet_.pictures.push_back({{kMargin, down_}, std::move(picture)});
    down_ += height;
  }

  /// Pictures two across, each over its words.
  void grid(std::vector<Picture> pictures, const std::vector<std::vector<Block>>& words) {
    for (std::size_t i = 0; i < pictures.size(); i += 2) {
      double deepest = 0;
      const double height = pictures[i].height;
      for (std::size_t k = i; k < std::min(i + 2, pictures.size()); ++k) {
        const double left = kMargin + (k == i ? 0 : kCell + kGap);
        sheet_.pictures.push_back({{left, down_}, std::move(pictures[k])});
        deepest = std::max(deepest, caption(words[k], left, down_ + height + 1));
      }
      down_ = deepest + kGap;
    }
  }

  std::string done(const std::string& title, const std::string& description) {
    sheet_.height = down_ + kMargin;
    return svg_document(sheet_, title, description);
  }

 private:
  /// Returns how far down it goes.
  double caption(const std::vector<Block>& blocks, double left, double down) {
    for (const Block& block : blocks) {
      const bool head = block.kind == Block::Kind::item;
      for (const std::string& line : wrapped(block.lead + block.text, head ? 1.2 * kType : kType, kCell)) {
        down += kRow;
        sheet_.labels.push_back({{left, down - 0.3 * kRow}, line, kType, Anchor::start, head});
      }
    }
    return down;
  }

  Sheet sheet_;
  double down_;
};

void write_plan(Writer& writer, const Plan& plan, const Kit& kit, const SheetOptions& options) {
  const Listing listing = listing_of(plan, kit, options.report, options.gauge_error);
  const Unit unit = options.report.unit;
  writer.blocks(listing.before);
  writer.space(kGap);
  Picture section = dimensioned_picture(plan.section, unit, 1);
  if (section.width > kWidth - 2 * kMargin) {
    const double scale = 0.95 * (kWidth - 2 * kMargin) / section.width;
    section = dimensioned_picture(plan.section, unit, scale);
  }
  writer.picture(std::move(section));
  writer.space(kGap);
  if (!plan.cuts.empty()) {
    const std::vector<StepView> steps = steps_of(plan);
    const Frame frame = frame_of(plan, steps, unit, kCell, kPicture);
    writer.text("The cuts, drawn " + scale_words(frame.placing.scale) +
                    " with the face up and the working edge at the left",
                kHead, true);
    writer.space(1);
    writer.picture(key_picture(kWidth - 2 * kMargin));
    writer.space(kGap);
    std::vector<Picture> pictures;
    for (const StepView& step : steps) pictures.push_back(step_picture(plan, step, frame));
    writer.grid(std::move(pictures), listing.cuts);
  }
  writer.blocks(listing.after);
}

}  // namespace

std::string svg_sheet(const Plan& plan, const Kit& kit, const SheetOptions& options) {
  Writer writer;
  write_plan(writer, plan, kit, options);
  return writer.done(named("Moulding", plan.section.name),
                     "The section with its dimensions, then a picture of each cut with its words.");
}

std::string svg_sheet(const Job& job, const JobPlan& plan, const SheetOptions& options) {
  Writer writer;
  writer.blocks(job_blocks(job, plan, options.report));
  for (const Run& run : plan.runs) {
    writer.space(2 * kGap);
    writer.text("For " + run_words(job, run), kHead, true);
    write_plan(writer, run.plan, job.kit, options);
  }
  return writer.done(named("Job", job.name),
                     "The sheet of the job, then for each profile the pictures of its cuts.");
}

}  // namespace arrisline
