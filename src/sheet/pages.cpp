// Breaking text into pages. Shown by tests/sheet/pdf_test.cpp.
#include "sheet/pages.h"

#include <algorithm>

namespace arrisline {
namespace {

// mm of paper.
constexpr double kSide = 12;    // margins
constexpr double kTop = 17;     // where the first line may begin, below the name
constexpr double kBottom = 15;  // above the number
constexpr double kNameDown = 11;
constexpr double kNumberUp = 8;
constexpr double kSmall = 2.9;  // type of names, numbers and captions
constexpr double kType = 3.3;
constexpr double kHeading = 3.9;
constexpr double kTitle = 6;
constexpr double kLeading = 1.36;  // from line to line, of the type
constexpr double kColumn = 1.55;   // that a column of indent in a report is worth
constexpr double kBeforeHeading = 4;
constexpr double kBetween = 0.7;   // paragraphs
constexpr double kBold = 1.2;      // bold type is broken as if it were so much larger
constexpr std::size_t kAlone = 2;  // lines of a paragraph that a page may not part

std::vector<std::string> lines_of(const std::string& words, double size, bool bold, double width) {
  return wrapped(words, bold ? kBold * size : size, width);
}

std::string trimmed(const std::string& words) {
  const std::size_t from = words.find_first_not_of(' ');
  const std::size_t to = words.find_last_not_of(' ');
  return from == std::string::npos ? "" : words.substr(from, to - from + 1);
}

/// What must stand together on a page from the k-th paragraph on: headings with the beginning of what
/// follows.
double needed(const std::vector<Paragraph>& all, std::size_t k) {
  double out = 0;
  for (; k < all.size(); ++k) {
    const Paragraph& p = all[k];
    if (p.heading) {
      out += p.before + p.height();
      continue;
    }
    // Short paragraphs are never parted.
    const std::size_t lines = p.lines.size() < 2 * kAlone ? p.lines.size() : kAlone;
    return out + p.before + static_cast<double>(lines) * p.line();
  }
  return out;
}

}  // namespace

Point size_of(Paper paper) {
  if (paper == Paper::letter) return {8.5 * kMmPerInch, 11 * kMmPerInch};
  return {210, 297};
}

double Paragraph::line() const {
  return kLeading * size;
}

std::vector<Paragraph> paragraphs(const std::vector<Block>& blocks, double width) {
  std::vector<Paragraph> out;
  double more = 0;
  for (const Block& block : blocks) {
    if (block.kind == Block::Kind::blank) {
      more += kType * 0.6;
      continue;
    }
    Paragraph p;
    p.heading = block.kind == Block::Kind::heading;
    p.bold = p.heading;
    p.size = p.heading ? kHeading : kType;
    p.before = more + (p.heading ? kBeforeHeading : kBetween);
    more = 0;
    p.indent = kColumn * static_cast<double>(block.indent);
    if (block.kind == Block::Kind::item) {
      p.lead = trimmed(block.lead);
      const double lead = kColumn * static_cast<double>(columns(block.lead));
      p.indent += std::max(lead, text_width(p.lead, p.size) + 1);
      p.lead_at = p.indent - 1;
    } else if (block.kind == Block::Kind::line) {
      p.hang = 2 * kColumn;
    }
    // The first line has a little more room than it uses, so that all lines can be broken alike.
    p.lines = lines_of(block.text, p.size, p.bold, width - p.indent - p.hang);
    if (p.lines.empty()) p.lines.emplace_back();
    out.push_back(std::move(p));
  }
  return out;
}

std::vector<Paragraph> caption_paragraphs(const std::vector<Block>& blocks, double width) {
  std::vector<Paragraph> out;
  for (const Block& block : blocks) {
    Paragraph p;
    p.bold = block.kind == Block::Kind::item;
    p.size = kSmall;
    p.before = 0.3;
    p.lines = lines_of(trimmed(block.lead + block.text), p.size, p.bold, width);
    if (!p.lines.empty()) out.push_back(std::move(p));
  }
  return out;
}

double depth_of(const std::vector<Paragraph>& paragraphs) {
  double out = 0;
  for (const Paragraph& p : paragraphs) out += p.before + p.height();
  return out;
}

Pages::Pages(Paper paper) : size_(size_of(paper)) {}

void Pages::start_page() {
  if (!pages_.empty() && fresh_) return;
  pages_.emplace_back();
  page().width = size_.x;
  page().height = size_.y;
  down_ = kTop;
  fresh_ = true;
  label(kSide, kNameDown, fitted(name_, kSmall, width()), kSmall, Anchor::start, false);
  const Point a = {kSide, kNameDown + 2}, b = {size_.x - kSide, kNameDown + 2};
  page().shapes.push_back({Role::leader, {{{a, b, {}, Turn::straight}}}, false, false});
}

double Pages::left() const {
  return kSide;
}

double Pages::width() const {
  return size_.x - 2 * kSide;
}

double Pages::room() const {
  return pages_.empty() ? 0 : size_.y - kBottom - down_;
}

double Pages::most_room() const {
  return size_.y - kBottom - kTop;
}

void Pages::skip(double height) {
  down_ += height;
  fresh_ = false;
}

void Pages::label(double x, double baseline, const std::string& words, double size, Anchor anchor,
                  bool bold) {
  if (!words.empty()) page().labels.push_back({{x, baseline}, words, size, anchor, bold});
}

void Pages::title(const std::string& words, std::size_t lines) {
  std::vector<std::string> all = lines_of(words, kTitle, true, width());
  if (all.size() > lines) {
    all.resize(lines);
    all.back() = fitted(all.back() + "...", kTitle * kBold, width());
  }
  for (const std::string& line : all) {
    skip(kLeading * kTitle);
    label(left(), down_ - 0.4 * kTitle, line, kTitle, Anchor::start, true);
  }
}

void Pages::heading(const std::string& words) {
  flow(paragraphs({{Block::Kind::heading, 0, "", words}}, width()));
}

void Pages::text(const std::string& words) {
  Paragraph p;
  p.size = kType;
  p.before = kBetween;
  p.lines = lines_of(words, kType, false, width());
  flow({p});
}

void Pages::put(const std::vector<Paragraph>& all, Point at) {
  for (const Paragraph& p : all) {
    at.y += p.before;
    for (const std::string& line : p.lines) {
      at.y += p.line();
      label(at.x + p.indent + (&line == p.lines.data() ? 0 : p.hang), at.y - 0.32 * p.line(), line, p.size,
            Anchor::start, p.bold);
    }
  }
}

void Pages::flow(const std::vector<Paragraph>& all) {
  if (pages_.empty()) start_page();
  for (std::size_t k = 0; k < all.size(); ++k) {
    const Paragraph& p = all[k];
    if (needed(all, k) > room() && !fresh_) start_page();
    space(p.before);
    for (std::size_t i = 0; i < p.lines.size(); ++i) {
      const std::size_t left_over = p.lines.size() - i;
      // The last lines go over to the next page together.
      const bool last_two = left_over == kAlone && p.lines.size() >= 2 * kAlone;
      const double need = static_cast<double>(last_two ? kAlone : 1) * p.line();
      if (need > room() && !fresh_) start_page();
      skip(p.line());
      const double baseline = down_ - 0.32 * p.line();
      if (i == 0) label(left() + p.lead_at, baseline, p.lead, p.size, Anchor::end, p.bold);
      label(left() + p.indent + (i == 0 ? 0 : p.hang), baseline, p.lines[i], p.size, Anchor::start, p.bold);
    }
  }
}

void Pages::blocks(const std::vector<Block>& blocks) {
  flow(paragraphs(blocks, width()));
}

void Pages::together(const std::vector<Block>& blocks) {
  const std::vector<Paragraph> all = paragraphs(blocks, width());
  const double depth = depth_of(all);
  if (depth > room() && depth <= most_room()) start_page();
  flow(all);
}

void Pages::picture(Picture picture) {
  const double height = picture.height;
  const double across = left() + (width() - picture.width) / 2;
  put(std::move(picture), {across, down_});
  skip(height);
}

void Pages::put(Picture picture, Point at) {
  page().pictures.push_back({at, std::move(picture)});
}

std::vector<Sheet> Pages::take() {
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const std::string words = std::to_string(i + 1) + " of " + std::to_string(pages_.size());
    pages_[i].labels.push_back({{size_.x - kSide, size_.y - kNumberUp}, words, kSmall, Anchor::end, false});
  }
  return std::move(pages_);
}

}  // namespace arrisline
