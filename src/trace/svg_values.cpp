// Attributes of SVG 1.1: numbers and lengths (4.2), transform (7.6), viewBox and preserveAspectRatio
// (7.7, 7.8). Shown by tests/trace/svg_values_test.cpp.
#include "trace/svg_values.h"

#include <charconv>
#include <cmath>
#include <system_error>

#include "wording/words.h"

namespace arrisline {

static bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

static bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

static bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

void Scanner::skip_blanks() {
  while (!at_end() && is_blank(peek())) ++pos;
}

bool Scanner::skip_comma() {
  skip_blanks();
  if (peek() != ',') return false;
  ++pos;
  skip_blanks();
  return true;
}

std::optional<double> Scanner::number() {
  too_large = false;
  std::size_t at = pos;
  const auto digit = [&](std::size_t i) { return i < in.text.size() && is_digit(in.text[i]); };
  const bool minus = peek() == '-';
  if (minus || peek() == '+') ++at;
  if (!digit(at) && !(at < in.text.size() && in.text[at] == '.' && digit(at + 1))) return std::nullopt;
  double value = 0;
  const auto [end, error] = std::from_chars(in.text.data() + at, in.text.data() + in.text.size(), value);
  if (error == std::errc::result_out_of_range) {
    const std::string_view figures(in.text.data() + at, static_cast<std::size_t>(end - in.text.data()) - at);
    too_large = figures.find('-') == std::string_view::npos;
    if (too_large) return std::nullopt;
    value = 0;  // smaller than any
  } else if (error != std::errc()) {
    return std::nullopt;
  }
  pos = static_cast<std::size_t>(end - in.text.data());
  return minus ? -value : value;
}

std::string Scanner::what_number() const {
  return too_large ? "this number is too large" : "a number is expected here";
}

std::string_view Scanner::word() {
  const std::size_t from = pos;
  while (!at_end() && is_letter(peek())) ++pos;
  return in.text.substr(from, pos - from);
}

Span Scanner::here() const {
  std::size_t end = pos;
  while (end < in.text.size() && !is_blank(in.text[end]) && in.text[end] != ',') ++end;
  return in.span(pos, std::max<std::size_t>(1, end - pos));
}

std::optional<std::vector<double>> numbers_of(const Passage& passage, std::size_t most, Faults& faults) {
  Scanner scanner{passage};
  std::vector<double> numbers;
  scanner.skip_blanks();
  bool comma = false;
  while (!scanner.at_end() || comma) {
    const std::size_t from = scanner.pos;
    const std::optional<double> number = scanner.number();
    if (!number) {
      faults.error(scanner.here(), scanner.what_number() + std::string(kSaveSvgAgain));
      return std::nullopt;
    }
    if (numbers.size() == most) {
      faults.error(passage.span(from, scanner.pos - from),
                   "at most " + std::to_string(most) + " numbers are expected here; leave the others out");
      return std::nullopt;
    }
    numbers.push_back(*number);
    comma = scanner.skip_comma();
  }
  return numbers;
}

double SvgLength::px() const {
  return mm ? *mm / kMmPerPx : 0;
}

std::optional<SvgLength> length_of(const Passage& passage, Faults& faults) {
  Scanner scanner{passage};
  scanner.skip_blanks();
  const std::optional<double> number = scanner.number();
  if (!number) {
    faults.error(scanner.here(), "a length is expected here, such as 10mm, 2in or 40");
    return std::nullopt;
  }
  SvgLength length;
  length.number = *number;
  const Span unit_span = scanner.here();
  if (scanner.peek() == '%') {
    ++scanner.pos;
    length.percent = true;
  } else {
    const std::string_view unit = scanner.word();
    if (unit.empty() || unit == "px") {
      length.mm = *number * kMmPerPx;
    } else if (unit == "mm") {
      length.mm = *number;
    } else if (unit == "cm") {
      length.mm = *number * 10;
    } else if (unit == "in") {
      length.mm = *number * kMmPerInch;
    } else if (unit == "pt") {
      length.mm = *number * kMmPerInch / 72;
    } else if (unit == "pc") {
      length.mm = *number * kMmPerInch / 6;
    } else if (unit != "em" && unit != "ex") {
      faults.error(unit_span,
                   "unknown unit " + quoted(unit) + "; expected mm, cm, in, pt, pc, px or no unit");
      return std::nullopt;
    }
  }
  scanner.skip_blanks();
  if (!scanner.at_end()) {
    faults.error(scanner.here(), "the length is complete before this; leave it out");
    return std::nullopt;
  }
  return length;
}

namespace {

/// One of the functions of a transform: its map, or nothing for a number of figures that it does not take.
std::optional<Affine> function_map(std::string_view name, const std::vector<double>& n) {
  const auto turned = [](double degrees) {
    const double angle = to_radians(std::fmod(degrees, 360.0));
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    return Affine{c, s, -s, c, 0, 0};
  };
  if (name == "matrix" && n.size() == 6) return Affine{n[0], n[1], n[2], n[3], n[4], n[5]};
  if (name == "translate" && (n.size() == 1 || n.size() == 2))
    return Affine{1, 0, 0, 1, n[0], n.size() == 2 ? n[1] : 0};
  if (name == "scale" && (n.size() == 1 || n.size() == 2))
    return Affine{n[0], 0, 0, n.size() == 2 ? n[1] : n[0], 0, 0};
  if (name == "rotate" && n.size() == 1) return turned(n[0]);
  if (name == "rotate" && n.size() == 3)
    return Affine{1, 0, 0, 1, n[1], n[2]} * turned(n[0]) * Affine{1, 0, 0, 1, -n[1], -n[2]};
  if (name == "skewX" && n.size() == 1) return Affine{1, 0, std::tan(to_radians(n[0])), 1, 0, 0};
  if (name == "skewY" && n.size() == 1) return Affine{1, std::tan(to_radians(n[0])), 0, 1, 0, 0};
  return std::nullopt;
}

const std::vector<std::string_view> kFunctions = {"matrix", "translate", "scale", "rotate", "skewX", "skewY"};

const char* figures_of(std::string_view name) {
  if (name == "matrix") return "takes 6 numbers";
  if (name == "translate" || name == "scale") return "takes 1 or 2 numbers";
  return name == "rotate" ? "takes 1 or 3 numbers" : "takes 1 number";
}

}  // namespace

std::optional<Affine> transform_of(const Passage& passage, Faults& faults) {
  Scanner scanner{passage};
  Affine map;
  scanner.skip_blanks();
  while (!scanner.at_end()) {
    const std::size_t from = scanner.pos;
    const std::string_view name = scanner.word();
    const Span span = passage.span(from, std::max<std::size_t>(1, name.size()));
    scanner.skip_blanks();
    if (std::find(kFunctions.begin(), kFunctions.end(), name) == kFunctions.end()) {
      faults.error(span,
                   (name.empty() ? "a function" : quoted(name) + " is no function of a transform; one") +
                       std::string(" of ") + either(kFunctions) + " is expected here" +
                       suggestion(name, kFunctions) + std::string(kSaveSvgAgain));
      return std::nullopt;
    }
    const std::size_t close = passage.text.find(')', scanner.pos);
    if (scanner.peek() != '(' || close == std::string_view::npos) {
      faults.error(span, quoted(name) + " is followed by its numbers in brackets, as in scale(2)");
      return std::nullopt;
    }
    Passage inside = passage;
    inside.text = passage.text.substr(scanner.pos + 1, close - scanner.pos - 1);
    if (inside.as_written) inside.at = passage.at + scanner.pos + 1;
    const std::optional<std::vector<double>> numbers = numbers_of(inside, 6, faults);
    if (!numbers) return std::nullopt;
    const std::optional<Affine> one = function_map(name, *numbers);
    if (!one) {
      faults.error(span, quoted(name) + " " + figures_of(name) + "; here are " +
                             std::to_string(numbers->size()) + std::string(kSaveSvgAgain));
      return std::nullopt;
    }
    map = map * *one;
    scanner.pos = close + 1;
    scanner.skip_comma();
  }
  return map;
}

std::optional<ViewBox> view_box_of(const Passage& passage, Faults& faults) {
  const std::optional<std::vector<double>> numbers = numbers_of(passage, 4, faults);
  if (!numbers) return std::nullopt;
  const bool four = numbers->size() == 4;
  if (!four || !((*numbers)[2] > 0) || !((*numbers)[3] > 0)) {
    faults.error(passage.span(0, std::max<std::size_t>(1, passage.text.size())),
                 four ? "the viewBox has no size; expected a width and a height more than 0"
                      : "a viewBox takes 4 numbers: x, y, width, height, such as 0 0 210 297");
    return std::nullopt;
  }
  return ViewBox{{(*numbers)[0], (*numbers)[1]}, {(*numbers)[2], (*numbers)[3]}};
}

std::optional<Aspect> aspect_of(const Passage& passage, Faults& faults) {
  Scanner scanner{passage};
  scanner.skip_blanks();
  std::string_view align = scanner.word();
  scanner.skip_blanks();
  if (align == "defer") {
    align = scanner.word();
    scanner.skip_blanks();
  }
  const std::string_view how = scanner.word();
  scanner.skip_blanks();
  Aspect aspect;
  aspect.slice = how == "slice";
  bool sound = scanner.at_end() && (how.empty() || how == "meet" || how == "slice");
  const auto share = [&](std::string_view word) {
    if (word == "Min") return 0.0;
    if (word != "Mid" && word != "Max") sound = false;
    return word == "Max" ? 1.0 : 0.5;
  };
  if (align == "none") {
    aspect.keep = false;
  } else if (align.size() == 8 && align[0] == 'x' && align[4] == 'Y') {
    aspect.across = share(align.substr(1, 3));
    aspect.down = share(align.substr(5, 3));
  } else {
    sound = false;
  }
  if (sound) return aspect;
  faults.error(
      passage.span(0, std::max<std::size_t>(1, passage.text.size())),
      "expected none, or xMin, xMid or xMax with YMin, YMid or YMax (as xMidYMid), then meet or slice");
  return std::nullopt;
}

Affine view_map(const ViewBox& box, const Aspect& aspect, Point size) {
  double across = size.x / box.size.x;
  double down = size.y / box.size.y;
  if (aspect.keep) across = down = aspect.slice ? std::max(across, down) : std::min(across, down);
  Point shift{-box.least.x * across, -box.least.y * down};
  if (aspect.keep) {
    shift.x += aspect.across * (size.x - box.size.x * across);
    shift.y += aspect.down * (size.y - box.size.y * down);
  }
  return {across, 0, 0, down, shift.x, shift.y};
}

}  // namespace arrisline
