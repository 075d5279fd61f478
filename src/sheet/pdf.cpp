// Shapes, hatching and words painted with Cairo. Shown by tests/sheet/pdf_test.cpp.
#include "sheet/pdf.h"

#include <cairo-pdf.h>
#include <cairo.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <limits>
#include <memory>
#include <stdexcept>

#include "sheet/style.h"

namespace arrisline {
namespace {

constexpr double kPointsPerMm = 72 / kMmPerInch;  // a point of PDF is 1/72 in
// How far a curve may lie from its arc, in points: under 0.002 mm.
constexpr double kTolerance = 0.005;
constexpr double kHatchAngle = 45;  // degrees

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("the PDF cannot be made: ") + cairo_status_to_string(status));
}

struct Destroy {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
  void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
template <class T>
using Owned = std::unique_ptr<T, Destroy>;

cairo_status_t append(void* to, const unsigned char* data, unsigned length) {
  try {
    static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), length);
  } catch (const std::bad_alloc&) {
    return CAIRO_STATUS_NO_MEMORY;
  }
  return CAIRO_STATUS_SUCCESS;
}

/// What is painted while it lives is undone: clips, colours, places.
class Saved {
 public:
  explicit Saved(cairo_t* cr) : cr_(cr) { cairo_save(cr_); }
  ~Saved() { cairo_restore(cr_); }
  Saved(const Saved&) = delete;
  Saved& operator=(const Saved&) = delete;

 private:
  cairo_t* cr_;
};

void set_colour(cairo_t* cr, unsigned rgb) {
  const auto part = [rgb](unsigned shift) { return ((rgb >> shift) & 0xffU) / 255.0; };
  cairo_set_source_rgb(cr, part(16), part(8), part(0));
}

void add_path(cairo_t* cr, const DrawnShape& shape) {
  cairo_new_path(cr);
  for (const std::vector<Edge>& chain : shape.chains) {
    if (chain.empty()) continue;
    cairo_move_to(cr, chain.front().from.x, chain.front().from.y);
    for (const Edge& edge : chain) {
      if (edge.is_arc()) {
        const Point spoke = edge.from - edge.centre;
        const double start = std::atan2(spoke.y, spoke.x);
        // y runs down on the page as in a section, so that a turn to the left is one of rising angles.
        (edge.turn == Turn::left ? cairo_arc : cairo_arc_negative)(cr, edge.centre.x, edge.centre.y,
                                                                   radius(edge), start, start + sweep(edge));
      } else {
        cairo_line_to(cr, edge.to.x, edge.to.y);
      }
    }
    if (shape.closed) cairo_close_path(cr);
  }
}

/// Strokes across the current path, laid from the corner of the page so that those of neighbours meet.
void hatch(cairo_t* cr) {
  const Saved saved(cr);
  cairo_clip_preserve(cr);
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  cairo_path_extents(cr, &x0, &y0, &x1, &y1);
  cairo_new_path(cr);
  const double apart = kHatchGap / std::cos(to_radians(kHatchAngle));  // along x
  const double height = y1 - y0;
  // Strokes run down to the left: x + y is the same all along.
  for (double sum = std::ceil((x0 + y0) / apart) * apart; sum < x1 + y1; sum += apart) {
    cairo_move_to(cr, sum - y0, y0);
    cairo_rel_line_to(cr, -height, height);
  }
  cairo_set_line_width(cr, kHatchWidth);
  cairo_stroke(cr);
}

void paint(cairo_t* cr, const DrawnShape& shape) {
  const Style style = style_of(shape.role);
  add_path(cr, shape);
  if (style.fill) {
    set_colour(cr, *style.fill);
    cairo_fill_preserve(cr);
  }
  if (style.stroke) {
    set_colour(cr, *style.stroke);
    if (style.hatched) {
      const std::unique_ptr<cairo_path_t, decltype(&cairo_path_destroy)> path(cairo_copy_path(cr),
                                                                              cairo_path_destroy);
      hatch(cr);
      cairo_new_path(cr);
      cairo_append_path(cr, path.get());
    }
    const std::array<double, 2> dashes = {style.dash, style.gap};
    cairo_set_dash(cr, dashes.data(), style.dash > 0 ? 2 : 0, 0);
    cairo_set_line_width(cr, style.width);
    cairo_stroke(cr);
    cairo_set_dash(cr, nullptr, 0, 0);
  }
  cairo_new_path(cr);
}

void paint(cairo_t* cr, const Label& label) {
  cairo_select_font_face(cr, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                         label.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(cr, label.size);
  cairo_text_extents_t extents;
  cairo_text_extents(cr, label.words.c_str(), &extents);
  // Room was kept for usual types; where this one is wider, it is set narrower.
  const double room = text_width(label.words, label.size, label.bold);
  double wide = extents.x_advance;
  if (wide > room && room > 0) {
    cairo_matrix_t matrix;
    cairo_matrix_init_scale(&matrix, label.size * room / wide, label.size);
    cairo_set_font_matrix(cr, &matrix);
    wide = room;
  }
  const double left = label.anchor == Anchor::start    ? label.at.x
                      : label.anchor == Anchor::middle ? label.at.x - wide / 2
                                                       : label.at.x - wide;
  set_colour(cr, kInk);
  cairo_move_to(cr, left, label.at.y);
  cairo_show_text(cr, label.words.c_str());
  cairo_new_path(cr);
}

void paint(cairo_t* cr, const Picture& picture, Point at) {
  const Saved saved(cr);
  cairo_translate(cr, at.x, at.y);
  for (const DrawnShape& shape : picture.shapes) {
    const Saved clip(cr);
    if (shape.clipped) {
      const Box& w = picture.window;
      cairo_rectangle(cr, w.x0, w.y0, w.width(), w.height());
      cairo_clip(cr);
    }
    paint(cr, shape);
  }
  for (const Label& label : picture.labels) paint(cr, label);
}

void paint(cairo_t* cr, const Sheet& sheet) {
  const Saved saved(cr);
  cairo_scale(cr, kPointsPerMm, kPointsPerMm);
  cairo_set_tolerance(cr, kTolerance);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  for (const DrawnShape& shape : sheet.shapes) paint(cr, shape);
  for (const Sheet::Placed& placed : sheet.pictures) paint(cr, placed.picture, placed.at);
  for (const Label& label : sheet.labels) paint(cr, label);
}

}  // namespace

std::string document_date(const char* seconds) {
  using std::chrono::sys_days;
  long long since = 946684800;  // 2000
  if (seconds != nullptr) {
    const char* end = seconds + std::strlen(seconds);
    long long given = 0;
    const auto [at, error] = std::from_chars(seconds, end, given);
    // Up to the year 9999, the last that is written with four figures.
    if (error == std::errc() && at == end && given >= 0 && given < 253402300800) since = given;
  }
  const std::chrono::sys_seconds when{std::chrono::seconds{since}};
  const auto day = std::chrono::floor<std::chrono::days>(when);
  const std::chrono::year_month_day date{day};
  const std::chrono::hh_mm_ss time{when - day};
  const auto two = [](long long n) {
    const std::string out = std::to_string(n);
    return out.size() < 2 ? "0" + out : out;
  };
  return std::to_string(static_cast<int>(date.year())) + "-" + two(static_cast<unsigned>(date.month())) +
         "-" + two(static_cast<unsigned>(date.day())) + "T" + two(time.hours().count()) + ":" +
         two(time.minutes().count()) + ":" + two(time.seconds().count()) + "Z";
}

std::string pdf_document(const std::vector<Sheet>& pages, const PdfWords& words,
                         const std::vector<Bookmark>& bookmarks) {
  std::string out;
  const Owned<cairo_surface_t> surface(cairo_pdf_surface_create_for_stream(append, &out, 1, 1));
  check(cairo_surface_status(surface.get()));
  const auto say = [&](cairo_pdf_metadata_t what, const std::string& text) {
    cairo_pdf_surface_set_metadata(surface.get(), what, text.c_str());
  };
  say(CAIRO_PDF_METADATA_TITLE, words.title);
  say(CAIRO_PDF_METADATA_SUBJECT, words.subject);
  say(CAIRO_PDF_METADATA_CREATOR, std::string("arrisline ") + ARRISLINE_VERSION);
  say(CAIRO_PDF_METADATA_CREATE_DATE, document_date(std::getenv("SOURCE_DATE_EPOCH")));
  const Owned<cairo_t> context(cairo_create(surface.get()));
  for (const Sheet& page : pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width * kPointsPerMm, page.height * kPointsPerMm);
    paint(context.get(), page);
    check(cairo_status(context.get()));
    cairo_show_page(context.get());
  }
  for (const Bookmark& bookmark : bookmarks) {
    const std::string to = "page=" + std::to_string(bookmark.page + 1) + " pos=[0 0]";
    cairo_pdf_surface_add_outline(surface.get(), CAIRO_PDF_OUTLINE_ROOT, bookmark.words.c_str(), to.c_str(),
                                  CAIRO_PDF_OUTLINE_FLAG_OPEN);
  }
  check(cairo_status(context.get()));
  cairo_surface_finish(surface.get());
  check(cairo_surface_status(surface.get()));
  return out;
}

}  // namespace arrisline
