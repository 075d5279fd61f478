// Path data by the grammar of SVG 1.1, 8.3.9. Shown by tests/trace/svg_path_test.cpp; any bytes:
// tests/fuzz/svg.cpp.
#include "trace/svg_path.h"

#include <array>
#include <string>
#include <utility>

#include "wording/words.h"

namespace arrisline {

namespace {

char capital(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

/// What a command takes, as a message says it; nothing for what is no command.
const char* takes(char command) {
  switch (capital(command)) {
    case 'M':
    case 'L':
    case 'T':
      return "2 numbers, x y";
    case 'H':
      return "1 number, x";
    case 'V':
      return "1 number, y";
    case 'C':
      return "6 numbers, x1 y1 x2 y2 x y";
    case 'S':
      return "4 numbers, x2 y2 x y";
    case 'Q':
      return "4 numbers, x1 y1 x y";
    case 'A':
      return "7 numbers, rx ry angle large-arc-flag sweep-flag x y";
    case 'Z':
      return "no numbers";
    default:
      return nullptr;
  }
}

std::size_t count_of(char command) {
  return static_cast<std::size_t>(takes(command)[0] - '0');
}

struct PathReader {
  Scanner in;
  const Affine& map;
  std::vector<DrawnPath>& strokes;
  Faults& faults;
  DrawnPath stroke;
  Point current;
  Point start;               // of the subpath
  std::size_t start_at = 0;  // in the data
  Point handle;              // of the curve before, for S and T
  char before = '\0';        // the command before, as a capital
  std::array<double, 7> n = {};

  void read() {
    in.skip_blanks();
    while (!in.at_end() && !faults.full()) {
      command();
      in.skip_blanks();
    }
    finish();
  }

  void finish() {
    if (!stroke.curves.empty()) strokes.push_back(std::move(stroke));
    stroke = {};
  }

  void command() {
    const std::size_t at = in.pos;
    const char letter = in.peek();
    if (takes(letter) == nullptr) {
      const Span span = in.in.span(at, std::max<std::size_t>(1, utf8_length(in.in.text.substr(at))));
      const bool number = in.number().has_value();
      faults.error(number ? in.in.span(at, in.pos - at) : span,
                   (number ? std::string("a command")
                           : quoted(in.in.text.substr(at, span.bytes)) + " is no command; one") +
                       " of M, L, H, V, C, S, Q, T, A and Z is expected here" + std::string(kSaveSvgAgain));
      return resume(at + 1);
    }
    ++in.pos;
    if (before == '\0' && capital(letter) != 'M') {
      faults.error(in.in.span(at, 1), "path data begin with M or m, the place where the line begins" +
                                          std::string(kSaveSvgAgain));
      before = 'M';
    }
    if (capital(letter) == 'Z') return close(at);
    bool first = true;
    do {
      const std::size_t from = first ? at : in.pos;
      if (!arguments(letter, first)) {
        before = capital(letter);  // told once: the path has begun
        return;
      }
      draw(letter, from, first);
      first = false;
      const std::size_t end = in.pos;
      const bool comma = in.skip_comma();
      const char next = in.peek();
      const bool goes_on = (next >= '0' && next <= '9') || next == '.' || next == '-' || next == '+';
      if (comma && !goes_on) {
        faults.error(in.here(), "a number is expected after the comma" + std::string(kSaveSvgAgain));
        return resume(in.pos);
      }
      if (!goes_on) {
        in.pos = end;
        return;
      }
    } while (!faults.full());
  }

  /// Passes everything up to the next letter that is a command.
  void resume(std::size_t from) {
    in.pos = from;
    while (!in.at_end() && takes(in.peek()) == nullptr) {
      // The letters of a word are no commands.
      if (in.word().empty()) ++in.pos;
    }
  }

  bool arguments(char letter, bool first) {
    const std::size_t count = count_of(letter);
    for (std::size_t i = 0; i < count; ++i) {
      if (i > 0) {
        in.skip_comma();
      } else if (first) {
        in.skip_blanks();
      }
      const bool flag = capital(letter) == 'A' && (i == 3 || i == 4);
      if (flag && (in.peek() == '0' || in.peek() == '1')) {
        n[i] = in.peek() == '1' ? 1 : 0;
        ++in.pos;
        continue;
      }
      const std::optional<double> number = flag ? std::nullopt : in.number();
      if (number) {
        n[i] = *number;
        continue;
      }
      faults.error(in.here(), flag ? "a flag, 0 or 1, is expected here: " + quoted({&letter, 1}) + " takes " +
                                         takes(letter) + std::string(kSaveSvgAgain)
                                   : in.what_number() + ": " + quoted({&letter, 1}) + " takes " +
                                         takes(letter) + std::string(kSaveSvgAgain));
      resume(in.pos);
      return false;
    }
    return true;
  }

  void close(std::size_t at) {
    if (!stroke.curves.empty() && current != start) add({Curve::Kind::line, start, {}, {}, {}, 0, 0, 0}, at);
    finish();
    current = start;
    before = 'Z';
  }

  /// Adds a curve in the frame of the path.
  void add(Curve curve, std::size_t at) {
    const std::size_t byte = in.in.span(at, 1).at;
    if (stroke.curves.empty()) {
      stroke.from = map(current);
      stroke.at = in.in.span(start_at, 1).at;
    }
    current = curve.to;
    curve = mapped(curve, map);
    curve.at = byte;
    stroke.curves.push_back(curve);
  }

  void draw(char letter, std::size_t at, bool first) {
    const char command = capital(letter);
    const Point base = letter == command ? Point{} : current;
    const auto point = [&](std::size_t i) { return base + Point{n[i], n[i + 1]}; };
    const auto line = [&](Point to) {
      Curve curve;
      curve.to = to;
      add(curve, at);
    };
    const auto cubic = [&](Point a, Point b, Point to) {
      Curve curve;
      curve.kind = Curve::Kind::cubic;
      curve.a = a;
      curve.b = b;
      curve.to = to;
      add(curve, at);
    };
    const auto quadratic = [&](Point middle, Point to) {
      handle = middle;
      cubic(current + (2.0 / 3) * (middle - current), to + (2.0 / 3) * (middle - to), to);
    };
    switch (command) {
      case 'M':
        if (!first) {
          line(point(0));
          break;
        }
        finish();
        current = start = point(0);
        start_at = at;
        break;
      case 'L':
        line(point(0));
        break;
      case 'H':
        line({base.x + n[0], current.y});
        break;
      case 'V':
        line({current.x, base.y + n[0]});
        break;
      case 'C':
        handle = point(2);
        cubic(point(0), handle, point(4));
        break;
      case 'S': {
        const Point mirrored = before == 'C' || before == 'S' ? 2 * current - handle : current;
        handle = point(0);
        cubic(mirrored, handle, point(2));
        break;
      }
      case 'Q':
        quadratic(point(0), point(2));
        break;
      case 'T':
        quadratic(before == 'Q' || before == 'T' ? 2 * current - handle : current, point(0));
        break;
      default:
        // An arc to where it begins is left out (appendix F.6.2).
        if (point(5) != current)
          add(elliptical_arc(current, point(5), n[0], n[1], n[2], n[3] != 0, n[4] != 0), at);
        break;
    }
    before = command;
  }
};

}  // namespace

void read_path(const Passage& data, const Affine& map, std::vector<DrawnPath>& strokes, Faults& faults) {
  PathReader{Scanner{data}, map, strokes, faults, {}, {}, {}, 0, {}, '\0', {}}.read();
}

}  // namespace arrisline
