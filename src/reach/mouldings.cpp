// Trade shapes at the radii of the planes, put together. Shown by tests/reach/reach_test.cpp.
#include <algorithm>
#include <cmath>
#include <set>

#include "arrisline/reach.h"
#include "arrisline/read.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr double kSame = 0.01;  // mm by which the radii of two planes of one size may differ

/// A shape: what it takes across and down, and its statement with figures in place.
struct Piece {
  std::string name;
  std::string statement;
  double across = 0;
  double down = 0;
};

class Shapes {
 public:
  explicit Shapes(Unit unit) : unit_(unit) {}

  std::string figure(double mm) const {
    const std::string text = exact(mm, unit_);
    return text.substr(0, text.rfind(' '));
  }

  /// A fillet: 1/8 in or 3 mm, of long practice (common practice, no source).
  double fillet() const { return unit_ == Unit::inch ? kMmPerInch / 8 : 3; }

  std::vector<Piece> of_hollow(double r) const {
    return {{"ovolo " + figure(r), "ovolo " + figure(r), r, r}, flatter("bead", r)};
  }

  std::vector<Piece> of_round(double r) const {
    return {{"cavetto " + figure(r), "cavetto " + figure(r), r, r}, flatter("cove", r)};
  }

  Piece torus(double r) const {
    const std::string name = "torus " + figure(2 * r);
    return {name, name, r, 2 * r};
  }

  /// A step, and a quadrant that leaves it level.
  Piece thumbnail(double r) const {
    const std::string name = "thumbnail " + figure(r);
    return {name, name, r, 1.25 * r};
  }

  /// A flatter one of 53 degrees: with sides of 3, 4 and 5 its figures are whole tenths. A sole of 60 goes
  /// over its end, so nothing may stand there.
  Piece flat_thumbnail(double r) const {
    const std::string across = figure(0.8 * r), down = figure(0.5 * r);
    return {"thumbnail " + across + " by " + down, "thumbnail out " + across + " down " + down, 0.8 * r,
            0.5 * r};
  }

  /// Of a hollow and a round of one radius.
  std::vector<Piece> of_pair(double r) const {
    std::vector<Piece> out;
    for (const char* const word : {"ogee", "reverse-ogee"}) {
      const std::string both = figure(2 * r);
      out.push_back({std::string(word) + " " + both, std::string(word) + " out " + both + " down " + both,
                     2 * r, 2 * r});
      // Two arcs of 60 degrees, 3 across to 4 down: r = half the root of the sum of their squares.
      const std::string across = figure(1.2 * r);
      const std::string down = figure(1.6 * r);
      out.push_back({std::string(word) + " " + across + " by " + down,
                     std::string(word) + " out " + across + " down " + down + " radius " + figure(r), 1.2 * r,
                     1.6 * r});
    }
    return out;
  }

 private:
  /// An arc of 60 degrees, as wide as deep.
  Piece flatter(const char* word, double r) const {
    const double leg = r / std::sqrt(2.0);
    const double rounded =
        unit_ == Unit::inch ? std::round(leg / kMmPerInch * 32) / 32 * kMmPerInch : std::round(leg * 2) / 2;
    const std::string move = figure(rounded);
    return {std::string("flat ") + word + " " + move,
            std::string(word) + " out " + move + " down " + move + " radius " + figure(r), rounded, rounded};
  }

  Unit unit_;
};

std::string file_name(const std::string& name) {
  std::string out;
  for (const char c : name) {
    const bool plain_char = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '.';
    if (plain_char) {
      out += c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  return out;
}

class Maker {
 public:
  Maker(Unit unit, double width, double thickness)
      : shapes_(unit), unit_(unit), width_(width), thickness_(thickness) {}

  void with_fillets(const std::vector<Piece>& pieces, const std::string& name) {
    add(pieces, name, false, false);
    add(pieces, name + " below a fillet", true, false);
    add(pieces, name + " above a fillet", false, true);
    add(pieces, name + " between fillets", true, true);
  }

  /// Nothing of the thickness stays below it.
  void all_round_edge(const Piece& piece) {
    if (std::abs(piece.down - thickness_) < kSame && piece.across <= width_ * 3 / 4)
      put({piece}, piece.name + " all round the edge", false, false, piece.across, piece.down);
  }

  void add(const std::vector<Piece>& pieces, const std::string& name, bool before, bool after) {
    const double fillet = shapes_.fillet();
    double across = after ? fillet : 0;
    double down = before ? fillet : 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      across += pieces[i].across + (i > 0 ? fillet : 0);
      down += pieces[i].down;
    }
    if (across > width_ * 3 / 4 || down > thickness_ * 5 / 6) return;
    put(pieces, name, before, after, across, down);
  }

  std::vector<Moulding> take() {
    std::stable_sort(list_.begin(), list_.end(), [](const Moulding& a, const Moulding& b) {
      return a.across * a.down < b.across * b.down;
    });
    return std::move(list_);
  }

 private:
  void put(const std::vector<Piece>& pieces, const std::string& name, bool before, bool after, double across,
           double down) {
    const double fillet = shapes_.fillet();
    Moulding out;
    out.name = name;
    out.file = file_name(name);
    out.across = across;
    out.down = down;
    out.profile = "profile  " + name + "\nunits    " + (unit_ == Unit::inch ? "inch" : "mm") + "\nstock    " +
                  shapes_.figure(width_) + " wide, " + shapes_.figure(thickness_) + " thick\n\n";
    // The moves as they are written add up to the start.
    std::string chain;
    if (before) chain += "step     down " + shapes_.figure(fillet) + "\n";
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      if (i > 0) chain += "fillet   out " + shapes_.figure(fillet) + "\n";
      chain += pieces[i].statement + "\n";
    }
    if (after) chain += "fillet   out " + shapes_.figure(fillet) + "\n";
    out.profile += "start    face " + shapes_.figure(across) + "\n" + chain;
    Reading<Section> reading = read_profile(out.profile, out.file + ".profile");
    if (!reading.value || !seen_.insert(out.name).second) return;
    out.section = std::move(*reading.value);
    list_.push_back(std::move(out));
  }

  Shapes shapes_;
  Unit unit_;
  double width_;
  double thickness_;
  std::set<std::string> seen_;
  std::vector<Moulding> list_;
};

}  // namespace

std::vector<Moulding> mouldings(const std::vector<Plane>& planes, Unit unit, double width, double thickness) {
  // Sets of radii by the hundredth of a millimetre, so that two alike count once.
  auto radii = [&](PlaneKind kind) {
    std::vector<double> out;
    for (const Plane& plane : planes) {
      const bool known =
          std::any_of(out.begin(), out.end(), [&](double r) { return std::abs(r - plane.radius) < kSame; });
      if (plane.kind == kind && !known) out.push_back(plane.radius);
    }
    std::sort(out.begin(), out.end());
    return out;
  };
  const std::vector<double> hollows = radii(PlaneKind::hollow);
  const std::vector<double> rounds = radii(PlaneKind::round);
  const Shapes shapes(unit);
  Maker maker(unit, width, thickness);
  for (const double r : hollows)
    for (const Piece& piece : shapes.of_hollow(r)) maker.with_fillets({piece}, piece.name);
  for (const double r : hollows) {
    const Piece thumbnail = shapes.thumbnail(r), flat = shapes.flat_thumbnail(r);
    maker.add({thumbnail}, thumbnail.name, false, false);
    maker.add({thumbnail}, thumbnail.name + " above a fillet", false, true);
    maker.add({flat}, flat.name, false, false);
    maker.all_round_edge(shapes.torus(r));
  }
  for (const double r : rounds)
    for (const Piece& piece : shapes.of_round(r)) maker.with_fillets({piece}, piece.name);
  for (const double h : hollows) {
    for (const double r : rounds) {
      const Piece ovolo = shapes.of_hollow(h).front();
      const Piece cavetto = shapes.of_round(r).front();
      maker.with_fillets({ovolo, cavetto}, ovolo.name + ", fillet and " + cavetto.name);
      maker.with_fillets({cavetto, ovolo}, cavetto.name + ", fillet and " + ovolo.name);
      if (std::abs(h - r) < kSame)
        for (const Piece& piece : shapes.of_pair(h)) maker.with_fillets({piece}, piece.name);
    }
  }
  return maker.take();
}

}  // namespace arrisline
