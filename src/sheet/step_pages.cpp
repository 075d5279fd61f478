// Pictures in rows, and the list. Shown by tests/sheet/pdf_test.cpp.
#include "sheet/step_pages.h"

#include <algorithm>

#include "sheet/picture.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kGap = 6;       // between pictures beside each other, and rows
constexpr double kPicture = 62;  // height, at most
constexpr double kCaption = 48;  // depth of the words below, at most
constexpr double kBelow = 1;     // a picture, before its words

/// As many sentences as have room, whole.
std::vector<Paragraph> caption_of(const std::vector<Block>& blocks, double width) {
  std::vector<Paragraph> all = caption_paragraphs(blocks, width);
  while (all.size() > 1 && depth_of(all) > kCaption) all.pop_back();
  return all;
}

}  // namespace

void write_steps(Pages& pages, const Plan& plan, const Listing& listing, Unit unit) {
  pages.start_page();
  const double across = (pages.width() - kGap) / 2;
  const std::vector<StepView> steps = steps_of(plan);
  const Frame frame = frame_of(plan, steps, unit, across, kPicture);
  pages.heading("The cuts, drawn " + scale_words(frame.placing.scale) +
                ", face up, working edge at the left; not to trace");
  pages.space(2);
  pages.picture(key_picture(pages.width()));
  pages.space(kGap - 2);
  for (std::size_t i = 0; i < steps.size(); i += 2) {
    std::vector<std::vector<Paragraph>> captions;
    double depth = 0;
    for (std::size_t k = i; k < std::min(i + 2, steps.size()); ++k) {
      captions.push_back(caption_of(listing.cuts[k], across));
      depth = std::max(depth, frame.height + kBelow + depth_of(captions.back()));
    }
    if (depth > pages.room()) pages.start_page();
    for (std::size_t k = 0; k < captions.size(); ++k) {
      const double left = pages.left() + static_cast<double>(k) * (across + kGap);
      pages.put(step_picture(plan, steps[i + k], frame), {left, pages.down()});
      pages.put(captions[k], {left, pages.down() + frame.height + kBelow});
    }
    pages.skip(depth);
    pages.space(kGap);
  }
}

void write_list(Pages& pages, const Listing& listing) {
  pages.blocks(listing.before);
  for (const std::vector<Block>& cut : listing.cuts) {
    pages.space(1.2);
    pages.together(cut);
  }
  pages.blocks(listing.after);
}

}  // namespace arrisline
