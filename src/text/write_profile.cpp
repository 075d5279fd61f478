// Each length is written as it is by itself, so that like ones look alike; where what the figures before it
// were rounded by adds up, one of them makes up for that, so that the line as read ends where the drawing
// does. Shown by tests/text/write_profile_test.cpp.
#include "text/write_profile.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>

#include "section/drawing_of.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr double kNothing = 5e-7;  // mm
/// The line as read may stand this far from the drawing, mm, along the face and square to it: a thousandth of
/// what the reader takes for no distance.
constexpr double kDrift = 1e-6;
constexpr std::size_t kRemarks = 40;  // column of the remarks against strokes

/// A figure and what a reader will take it for, in mm.
struct Figure {
  std::string text;
  double mm = 0;
};

double rounded(double value, int decimals) {
  const double scale = std::pow(10, decimals);
  return std::round(value * scale) / scale;
}

Figure figure(double mm, Unit unit) {
  if (unit == Unit::mm) return {plain(mm, 6), rounded(mm, 6)};
  for (const long long denominator : {1LL, 2LL, 4LL, 8LL, 16LL, 32LL, 64LL}) {
    const double steps = std::round(mm / kMmPerInch * static_cast<double>(denominator));
    const double exactly = steps / static_cast<double>(denominator) * kMmPerInch;
    if (std::abs(exactly - mm) < kNothing) return {fraction(steps, denominator), exactly};
  }
  return {plain(mm / kMmPerInch, 8), rounded(mm / kMmPerInch, 8) * kMmPerInch};
}

/// The figures of one chain, so that like moves get like ones.
struct LikeFigures {
  Unit unit;
  std::vector<double> written = {};  // mm

  Figure keep(Figure one) {
    written.push_back(one.mm);
    return one;
  }

  /// The move to write for one that is `own` long and has to be `due` to end where the drawing does. The last
  /// of a chain is due, since the reader moves its end onto the stock, unless one like it stands there
  /// already; a flat that is level or upright stays so.
  double move(double own, double due, bool last) const {
    double out = due;
    double nearest = kDrift;
    const auto look = [&](double mm) {
      const double one = std::copysign(mm, own);
      if (std::abs(one - due) > nearest) return;
      nearest = std::abs(one - due);
      out = one;
    };
    if (last && own == 0 && std::abs(due) < 2 * kDrift) return 0;
    if (last) {
      std::for_each(written.begin(), written.end(), look);
    } else {
      look(figure(std::abs(own), unit).mm);
    }
    return std::abs(out) < kNothing ? 0 : out;
  }
};

std::string padded(std::string word) {
  word.resize(std::max<std::size_t>(9, word.size() + 1), ' ');
  return word;
}

/// A name or a remark on one line, without what would end it.
std::string on_one_line(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < ' ' || c == '\x7f') c = ' ';
  return text;
}

std::string radius_text(double r, double half_chord, Unit unit) {
  // The reader takes a radius that is too small by rounding as a half-round's.
  constexpr double kHalfRound = 2e-6;
  return figure(r - half_chord < kHalfRound ? half_chord : r, unit).text;
}

using Remarks = std::vector<std::string>;

void write_chain(const DrawnChain& chain, bool first, Unit unit, const Remarks& of_strokes,
                 Remarks::const_iterator& remark, std::string& out) {
  out += "\n";
  if (!first || chain.side != Chain::face) out += padded("side") + word(chain.side) + "\n";
  const Figure start = figure(chain.start, unit);
  out += padded("start") + (chain.from_back ? "back " : "face ") + start.text + "\n";
  // Where the drawing stands and where the reader will, in from the edge and down.
  LikeFigures like{unit};
  Point drawn;
  Point read = chain.from_back ? Point{0, start.mm - chain.start} : Point{start.mm - chain.start, 0};
  for (const Stroke& stroke : chain.strokes) {
    drawn = drawn + stroke.move;
    Stroke plain_stroke = stroke;
    const bool last = &stroke == &chain.strokes.back();
    const Point due = drawn - read;
    const Point move{like.move(stroke.move.x, due.x, last), like.move(stroke.move.y, due.y, last)};
    plain_stroke.move = move;
    std::string line = padded(plain_name(plain_stroke));
    std::string across, down;
    Point written;
    if (move.x != 0) {
      const Figure x = like.keep(figure(std::abs(move.x), unit));
      across = x.text;
      line += (move.x < 0 ? "out " : "in ") + x.text;
      written.x = move.x < 0 ? -x.mm : x.mm;
    }
    if (move.y != 0) {
      const Figure y = like.keep(figure(std::abs(move.y), unit));
      down = y.text;
      line += std::string(move.x != 0 ? " " : "") + (move.y > 0 ? "down " : "up ") + y.text;
      written.y = move.y > 0 ? y.mm : -y.mm;
    }
    read = read + written;
    if (stroke.turn != Turn::straight) {
      const std::string r = radius_text(stroke.radius, norm(written) / 2, unit);
      if (stroke.large || across != r || down != r) line += " radius " + r;
      if (stroke.large) line += " large";
    }
    if (remark != of_strokes.end() && !(remark++)->empty()) {
      line.resize(std::max<std::size_t>(line.size() + 1, kRemarks), ' ');
      line += " # " + on_one_line(*std::prev(remark));
    }
    out += line + "\n";
  }
}

}  // namespace

std::string profile_text(const Drawing& drawing, const std::vector<std::string>& remarks,
                         const std::vector<std::string>& of_strokes) {
  std::string out;
  for (const std::string& remark : remarks) out += remark.empty() ? "#\n" : "# " + on_one_line(remark) + "\n";
  if (!drawing.name.empty()) {
    std::string name = on_one_line(drawing.name);
    std::replace(name.begin(), name.end(), '#', ' ');
    out += padded("profile") + name + "\n";
  }
  out += padded("units") + (drawing.unit == Unit::inch ? "inch" : "mm") + "\n";
  out += padded("stock") + figure(drawing.width, drawing.unit).text + " wide, " +
         figure(drawing.thickness, drawing.unit).text + " thick\n";
  bool first = true;
  auto remark = of_strokes.begin();
  for (const DrawnChain& chain : drawing.chains) {
    write_chain(chain, first, drawing.unit, of_strokes, remark, out);
    first = false;
  }
  return out;
}

}  // namespace arrisline
