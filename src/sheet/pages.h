// Pages written from the top down: text, pictures, numbers.
#pragma once

#include <string>
#include <vector>

#include "arrisline/sheet.h"
#include "report/page.h"
#include "sheet/drawing.h"

namespace arrisline {

/// Width and height, mm: A4 of ISO 216, Letter of ANSI/ASME Y14.1 (8 1/2 by 11 in).
Point size_of(Paper paper);

/// A paragraph laid out in lines.
struct Paragraph {
  std::vector<std::string> lines;
  std::string lead;    // stands before the first line
  double lead_at = 0;  // where it ends, from the left of the text
  double indent = 0;   // of the lines
  double hang = 0;     // of all lines but the first, beyond the indent
  double size = 0;
  bool bold = false;
  bool heading = false;
  double before = 0;  // space above it, but at the top of a page
  double height() const { return static_cast<double>(lines.size()) * line(); }
  double line() const;
};

/// Blocks of a report set in lines of this width, those of a caption in smaller type and without indents.
std::vector<Paragraph> paragraphs(const std::vector<Block>& blocks, double width);
std::vector<Paragraph> caption_paragraphs(const std::vector<Block>& blocks, double width);
/// How deep they go, set under each other.
double depth_of(const std::vector<Paragraph>& paragraphs);

class Pages {
 public:
  explicit Pages(Paper paper);

  /// Stands at the head of the pages from now on. Of any length.
  void name(const std::string& name) { name_ = name; }
  /// Goes on to another page, unless nothing is on this one.
  void start_page();

  double left() const;
  double width() const;
  /// mm from the top of the page, and what is free below that.
  double down() const { return down_; }
  double room() const;
  /// All that a page has room for.
  double most_room() const;
  std::size_t index() const { return pages_.size() - 1; }
  Sheet& page() { return pages_.back(); }

  void space(double height) { down_ += fresh_ ? 0 : height; }
  void skip(double height);
  void title(const std::string& words, std::size_t lines);
  void heading(const std::string& words);
  void text(const std::string& words);
  /// Headings stay with what follows them, and no line of a paragraph stands alone.
  void blocks(const std::vector<Block>& blocks);
  /// All of it on one page where it has room on one.
  void together(const std::vector<Block>& blocks);
  /// Set where one likes, without moving on.
  void put(const std::vector<Paragraph>& paragraphs, Point at);
  /// In the middle of the page's width.
  void picture(Picture picture);
  void put(Picture picture, Point at);

  /// With the number of each: "3 of 7".
  std::vector<Sheet> take();

 private:
  void flow(const std::vector<Paragraph>& paragraphs);
  void label(double x, double baseline, const std::string& words, double size, Anchor anchor, bool bold);

  Point size_;
  std::string name_;
  std::vector<Sheet> pages_;
  double down_ = 0;
  bool fresh_ = true;
};

}  // namespace arrisline
