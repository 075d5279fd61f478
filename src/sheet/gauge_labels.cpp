// Figures of gauge lines, kept apart. Shown by tests/sheet/picture_test.cpp.
#include "sheet/gauge_labels.h"

#include <algorithm>

#include "wording/figures.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kType = 3;
constexpr double kRow = 4.2;
constexpr double kGap = 2;

std::string words_of(const GaugeMark& mark, Unit unit) {
  return mark.letter + "  " + exact(mark.set, unit);
}

double width_of(const GaugeMark& mark, Unit unit) {
  return text_width(words_of(mark, unit), kType);
}

/// The marks of one direction, in the order of their places.
std::vector<GaugeMark> sorted(const std::vector<GaugeMark>& marks, bool upright) {
  std::vector<GaugeMark> out;
  for (const GaugeMark& mark : marks)
    if (mark.upright == upright) out.push_back(mark);
  std::stable_sort(out.begin(), out.end(),
                   [](const GaugeMark& a, const GaugeMark& b) { return a.at < b.at; });
  return out;
}

/// Centres near the wanted ones, in their order, at least (size[i] + size[i+1]) / 2 + gap apart, within
/// [low, high] as far as they find room there: pushed to the right where they are too near, then back to the
/// left where the last of them would stick out.
std::vector<double> spread(std::vector<double> wanted, const std::vector<double>& sizes, double gap,
                           double low, double high) {
  const std::size_t n = wanted.size();
  const auto apart = [&](std::size_t i) { return (sizes[i] + sizes[i + 1]) / 2 + gap; };
  for (std::size_t i = 0; i < n; ++i) {
    wanted[i] = std::max(wanted[i], low + sizes[i] / 2);
    if (i > 0) wanted[i] = std::max(wanted[i], wanted[i - 1] + apart(i - 1));
  }
  for (std::size_t i = n; i-- > 0;) {
    wanted[i] = std::min(wanted[i], high - sizes[i] / 2);
    if (i + 1 < n) wanted[i] = std::min(wanted[i], wanted[i + 1] - apart(i));
  }
  return wanted;
}

/// Marks beside each other in rows: the k-th of them goes into row k modulo the number of rows.
std::size_t rows_for(const std::vector<GaugeMark>& marks, Unit unit, double width) {
  for (std::size_t rows = 1; rows < marks.size(); ++rows) {
    bool fits = true;
    for (std::size_t row = 0; row < rows && fits; ++row) {
      double used = -kGap;
      for (std::size_t i = row; i < marks.size(); i += rows) used += width_of(marks[i], unit) + kGap;
      fits = used <= width;
    }
    if (fits) return rows;
  }
  return marks.size();
}

void add_upright(Picture& picture, const std::vector<GaugeMark>& marks, Unit unit, const Placing& placing,
                 const Box& blank, double past) {
  const std::size_t rows = rows_for(marks, unit, picture.width);
  for (std::size_t row = 0; row < rows; ++row) {
    std::vector<double> wanted, sizes;
    for (std::size_t i = row; i < marks.size(); i += rows) {
      wanted.push_back(placing.point({marks[i].at, 0}).x);
      sizes.push_back(width_of(marks[i], unit));
    }
    const std::vector<double> centres = spread(wanted, sizes, kGap, 0, picture.width);
    const double baseline = (static_cast<double>(row) + 0.8) * kRow;
    for (std::size_t k = 0; k < centres.size(); ++k) {
      const GaugeMark& mark = marks[row + k * rows];
      const double top = placing.point({0, blank.y0}).y - past;
      const double bottom = placing.point({0, blank.y1}).y + past;
      const Point from = {centres[k], baseline + 0.25 * kType};
      picture.labels.push_back({{centres[k], baseline}, words_of(mark, unit), kType, Anchor::middle, false});
      picture.shapes.push_back(
          {Role::leader, {{{from, {wanted[k], top}, {}, Turn::straight}}}, false, false});
      picture.shapes.push_back(
          {Role::gauge, {{{{wanted[k], top}, {wanted[k], bottom}, {}, Turn::straight}}}, false, false});
    }
  }
}

void add_level(Picture& picture, const std::vector<GaugeMark>& marks, Unit unit, const Placing& placing,
               const Box& blank, double past) {
  std::vector<double> wanted;
  for (const GaugeMark& mark : marks) wanted.push_back(placing.point({0, mark.at}).y);
  const std::vector<double> sizes(marks.size(), kType);
  const std::vector<double> centres = spread(wanted, sizes, kRow - kType, picture.window.y0, picture.height);
  for (std::size_t k = 0; k < marks.size(); ++k) {
    const double left = placing.point({blank.x0, 0}).x - past;
    const double right = placing.point({blank.x1, 0}).x + past;
    const double end = width_of(marks[k], unit);
    picture.labels.push_back(
        {{0, centres[k] + 0.3 * kType}, words_of(marks[k], unit), kType, Anchor::start, false});
    picture.shapes.push_back(
        {Role::leader, {{{{end + 0.6, centres[k]}, {left, wanted[k]}, {}, Turn::straight}}}, false, false});
    picture.shapes.push_back(
        {Role::gauge, {{{{left, wanted[k]}, {right, wanted[k]}, {}, Turn::straight}}}, false, false});
  }
}

}  // namespace

double side_room(const std::vector<GaugeMark>& marks, Unit unit) {
  double out = 0;
  for (const GaugeMark& mark : marks)
    if (!mark.upright) out = std::max(out, width_of(mark, unit) + kGap);
  return out;
}

double top_room(const std::vector<GaugeMark>& marks, Unit unit, double width) {
  return kRow * static_cast<double>(rows_for(sorted(marks, true), unit, width));
}

void add_gauge_lines(Picture& picture, const std::vector<GaugeMark>& marks, Unit unit, const Placing& placing,
                     const Box& blank, double past) {
  add_upright(picture, sorted(marks, true), unit, placing, blank, past);
  add_level(picture, sorted(marks, false), unit, placing, blank, past);
}

}  // namespace arrisline
