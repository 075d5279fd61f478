// Sheets as SVG 1.1. Shown by tests/sheet/svg_test.cpp.
#include "sheet/svg.h"

#include <array>
#include <charconv>
#include <cmath>

#include "sheet/style.h"

namespace arrisline {
namespace {

/// mm with at most five places: far finer than any printer, and the same everywhere.
std::string figure(double value) {
  std::array<char, 48> buffer{};
  if (std::fabs(value) < 5e-6) return "0";
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, 5);
  std::string out(buffer.data(), end.ptr);
  out.erase(out.find_last_not_of('0') + 1);
  if (out.back() == '.') out.pop_back();
  return out;
}

std::string pair(Point p) {
  return figure(p.x) + " " + figure(p.y);
}

std::string colour(unsigned rgb) {
  std::string out = "#";
  for (int shift = 20; shift >= 0; shift -= 4)
    out += "0123456789abcdef"[(rgb >> static_cast<unsigned>(shift)) & 0xfU];
  return out;
}

void arc_to(std::string& out, const Edge& arc) {
  const double r = radius(arc);
  const bool large = std::fabs(sweep(arc)) > kPi;
  out += " A " + figure(r) + " " + figure(r) + " 0 " + (large ? "1 " : "0 ") +
         // y runs down on paper as in a section, so that a turn to the left is one of rising angles.
         (arc.turn == Turn::left ? "1 " : "0 ") + pair(arc.to);
}

std::string path_data(const DrawnShape& shape) {
  std::string out;
  for (const std::vector<Edge>& chain : shape.chains) {
    if (chain.empty()) continue;
    out += (out.empty() ? "M " : " M ") + pair(chain.front().from);
    for (const Edge& edge : chain) {
      if (!edge.is_arc()) {
        out += " L " + pair(edge.to);
      } else if (std::fabs(sweep(edge)) > 1.5 * kPi) {
        // So nearly round that its ends alone would hardly tell the circle.
        arc_to(out, piece(edge, 0, 0.5));
        arc_to(out, piece(edge, 0.5, 1));
      } else {
        arc_to(out, edge);
      }
    }
    if (shape.closed) out += " Z";
  }
  return out;
}

void write_shape(std::string& out, const DrawnShape& shape, const std::string& id) {
  const std::string data = path_data(shape);
  if (data.empty()) return;
  out += "<path class=\"" + std::string(word(shape.role)) + "\"";
  if (style_of(shape.role).hatched) out += " fill=\"url(#" + id + "-hatch)\"";
  out += " d=\"" + data + "\"/>\n";
}

void write_label(std::string& out, const Label& label) {
  out += "<text x=\"" + figure(label.at.x) + "\" y=\"" + figure(label.at.y) + "\" font-size=\"" +
         figure(label.size) + "\"";
  if (label.anchor != Anchor::start)
    out += label.anchor == Anchor::middle ? " text-anchor=\"middle\"" : " text-anchor=\"end\"";
  if (label.bold) out += " font-weight=\"bold\"";
  out += ">" + escaped(label.words) + "</text>\n";
}

std::string hatch_of(const std::string& id) {
  const std::string gap = figure(kHatchGap);
  return "<pattern id=\"" + id + "-hatch\" width=\"" + gap + "\" height=\"" + gap +
         "\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
         "<rect class=\"ground\" width=\"" +
         gap + "\" height=\"" + gap + "\"/><path class=\"hatch\" d=\"M 0 0 L 0 " + gap + "\"/></pattern>\n";
}

std::string view_box(double width, double height) {
  return "viewBox=\"0 0 " + figure(width) + " " + figure(height) + "\"";
}

/// What stands between <svg …> and </svg>.
std::string inside(const Picture& picture, const std::string& id) {
  std::string out = "<title>" + escaped(picture.title) + "</title>\n<desc>" + escaped(picture.description) +
                    "</desc>\n<defs>\n" + hatch_of(id) + "<clipPath id=\"" + id + "-window\"><rect x=\"" +
                    figure(picture.window.x0) + "\" y=\"" + figure(picture.window.y0) + "\" width=\"" +
                    figure(picture.window.width()) + "\" height=\"" + figure(picture.window.height()) +
                    "\"/></clipPath>\n</defs>\n";
  bool open = false;
  for (const DrawnShape& shape : picture.shapes) {
    if (shape.clipped != open) out += open ? "</g>\n" : "<g clip-path=\"url(#" + id + "-window)\">\n";
    open = shape.clipped;
    write_shape(out, shape, id);
  }
  if (open) out += "</g>\n";
  for (const Label& label : picture.labels) write_label(out, label);
  return out;
}

}  // namespace

std::string escaped(const std::string& text) {
  std::string out;
  out.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string svg_element(const Picture& picture, const std::string& id) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" " + view_box(picture.width, picture.height) +
         " role=\"img\" aria-labelledby=\"" + id + "-title\">\n<title id=\"" + id + "-title\">" +
         inside(picture, id).substr(std::string("<title>").size()) + "</svg>\n";
}

std::string svg_styles() {
  std::string out = "text{font-family:sans-serif;fill:" + colour(kInk) +
                    "}\npath{stroke-linejoin:round}\n.ground{fill:#ffffff}\n.hatch{stroke:" +
                    colour(style_of(Role::taken).stroke.value_or(kInk)) +
                    ";stroke-width:" + figure(kHatchWidth * 2) + "}\n";
  for (const Role role : kRoles) {
    const Style style = style_of(role);
    out += std::string(".") + word(role) + "{";
    if (!style.hatched) out += "fill:" + (style.fill ? colour(*style.fill) : std::string("none")) + ";";
    if (style.stroke) out += "stroke:" + colour(*style.stroke) + ";stroke-width:" + figure(style.width);
    if (style.dash > 0) out += ";stroke-dasharray:" + figure(style.dash) + " " + figure(style.gap);
    out += "}\n";
  }
  return out;
}

std::string svg_document(const Sheet& sheet, const std::string& title, const std::string& description) {
  std::string out =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" "
      "width=\"" +
      figure(sheet.width) + "mm\" height=\"" + figure(sheet.height) + "mm\" " +
      view_box(sheet.width, sheet.height) +
      " role=\"img\" aria-labelledby=\"sheet-title sheet-desc\">\n<title id=\"sheet-title\">" +
      escaped(title) + "</title>\n<desc id=\"sheet-desc\">" + escaped(description) + "</desc>\n<style>\n" +
      svg_styles() + "</style>\n<rect class=\"ground\" width=\"" + figure(sheet.width) + "\" height=\"" +
      figure(sheet.height) + "\"/>\n";
  for (const DrawnShape& shape : sheet.shapes) write_shape(out, shape, "sheet");
  for (std::size_t i = 0; i < sheet.pictures.size(); ++i) {
    const Sheet::Placed& placed = sheet.pictures[i];
    out += "<svg x=\"" + figure(placed.at.x) + "\" y=\"" + figure(placed.at.y) + "\" width=\"" +
           figure(placed.picture.width) + "\" height=\"" + figure(placed.picture.height) + "\" " +
           view_box(placed.picture.width, placed.picture.height) + ">\n" +
           inside(placed.picture, "p" + std::to_string(i + 1)) + "</svg>\n";
  }
  for (const Label& label : sheet.labels) write_label(out, label);
  return out + "</svg>\n";
}

}  // namespace arrisline
