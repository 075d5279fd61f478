// The section with its dimensions. Shown by tests/sheet/full_size_test.cpp.
#include "sheet/full_size.h"

#include <algorithm>
#include <cmath>

#include "arrisline/report.h"
#include "report/page.h"
#include "sheet/levels.h"
#include "sheet/picture.h"
#include "sheet/radii.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kClear = 4;         // between the blank and the figures beside it
constexpr double kNearCentre = 20;   // a centre farther off the blank than this is told in words
constexpr double kBeyondCentre = 3;  // figures stand so far beyond a centre
constexpr double kMargin = 1;
// Corners and ends of arcs from which on figures would be a thicket (and take minutes to keep apart): then
// the size of the whole stands alone.
constexpr std::size_t kMostCorners = 200;
// mm of wood: levels that print alike anyway, and arcs of one circle.
constexpr double kSame = 0.005;

struct Corner {
  Point at;
  bool below = false;  // belongs to the underside's chain alone
};

/// The figure without its unit, which stands once for all of them.
std::string bare(double mm, Unit unit) {
  std::string out = exact(mm, unit);
  out.erase(out.size() - std::string(unit_word(unit)).size());
  return out;
}

/// Ends of every edge that has to be cut; none where there are too many to be told apart.
std::vector<Corner> corners_of(const Section& section) {
  std::vector<Corner> out;
  const std::size_t n = section.target.size();
  for (std::size_t i = 0; i < n; ++i) {
    bool worked = false, below = true;
    for (const int source : {section.source[(i + n - 1) % n], section.source[i]}) {
      if (source < 0) continue;
      worked = true;
      below = below && section.elements[static_cast<std::size_t>(source)].chain == Chain::underside;
    }
    if (worked) out.push_back({section.target[i].from, below});
  }
  if (out.size() > kMostCorners) out.clear();
  return out;
}

/// Corners at one height, or one distance from the edge.
struct Found {
  double at = 0;
  std::vector<Corner> corners;
};

std::vector<Found> found(const std::vector<Corner>& corners, double Point::*along, double last) {
  std::vector<Found> out;
  std::vector<Corner> sorted = corners;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [along](const Corner& a, const Corner& b) { return a.at.*along < b.at.*along; });
  for (const Corner& corner : sorted) {
    const double at = corner.at.*along;
    if (at < kSame) continue;  // the working edge and the face themselves
    if (out.empty() || at - out.back().at > kSame) out.push_back({at, {}});
    out.back().corners.push_back(corner);
  }
  if (out.empty() || last - out.back().at > kSame) out.push_back({last, {}});
  return out;
}

/// Figures on all four sides, those of an underside's own corners below it, those of the far half at the
/// back edge.
class Levels {
 public:
  Levels(const Section& section, Unit unit, double scale) : section_(section), unit_(unit), scale_(scale) {
    const std::vector<Corner> corners = corners_of(section);
    for (const Found& level : found(corners, &Point::x, section.width)) across(level);
    for (const Found& level : found(corners, &Point::y, section.thickness)) down(level);
  }

  void draw(Picture& picture, const Box& clear) const {
    const double width = section_.width * scale_, height = section_.thickness * scale_;
    add_levels(picture, above_, Beside::above, 0, clear.y0);
    add_levels(picture, below_, Beside::below, height, clear.y1);
    // Flags may stand out over the back edge, and then its figures stand beyond them.
    double out = width;
    for (const Label& label : picture.labels) out = std::max(out, box_of(label).x1);
    add_levels(picture, left_, Beside::left, 0, clear.x0);
    add_levels(picture, right_, Beside::right, width,
               beside(right_, height) ? clear.x1 : std::max(clear.x1, out - width + 1));
  }

 private:
  /// The figures find room between the face and the underside, clear of those above and below.
  static bool beside(const std::vector<Level>& levels, double height) {
    std::vector<double> wanted;
    for (const Level& one : levels) wanted.push_back(one.at);
    const std::vector<double> places = stand_apart(wanted, kLevelRow, -height);
    return places.empty() || (places.front() > 0 && places.back() < height);
  }
  Level level(double at, double from) const { return {at * scale_, from * scale_, bare(at, unit_)}; }
  void across(const Found& level_found) {
    const auto& corners = level_found.corners;
    const bool below = !corners.empty() &&
                       std::all_of(corners.begin(), corners.end(), [](const Corner& c) { return c.below; });
    double from = below ? section_.thickness : 0;
    for (const Corner& c : corners) from = below ? std::min(from, c.at.y) : std::max(from, c.at.y);
    (below ? below_ : above_).push_back(level(level_found.at, from));
  }
  void down(const Found& level_found) {
    double least = section_.width, most = 0;
    for (const Corner& c : level_found.corners) {
      least = std::min(least, c.at.x);
      most = std::max(most, c.at.x);
    }
    const bool far = !level_found.corners.empty() && least > section_.width / 2;
    (far ? right_ : left_).push_back(level(level_found.at, far ? least : most));
  }

  const Section& section_;
  Unit unit_;
  double scale_;
  std::vector<Level> above_, below_, left_, right_;
};

bool one_circle(const Edge& a, const Edge& b) {
  return distance(a.centre, b.centre) < kSame && std::fabs(radius(a) - radius(b)) < kSame;
}

std::string centre_words(Point c, Unit unit) {
  const std::string across =
      c.x >= 0 ? bare(c.x, unit) + " from the edge" : bare(-c.x, unit) + " outside the edge";
  return across + ", " +
         (c.y >= 0 ? bare(c.y, unit) + " below the face" : bare(-c.y, unit) + " above the face");
}

std::vector<Radius> radii_of(const Section& section, Unit unit, const Placing& placing) {
  std::vector<Edge> arcs;
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& edge = section.target[i];
    if (section.source[i] < 0 || !edge.is_arc()) continue;
    if (arcs.empty() || !one_circle(arcs.back(), edge)) arcs.push_back(edge);
  }
  if (arcs.size() > kMostCorners) arcs.clear();
  std::vector<Radius> out;
  for (const Edge& arc : arcs) {
    const double near = kNearCentre / placing.scale;
    const Point c = arc.centre;
    const bool centred =
        c.x > -near && c.x < section.width + near && c.y > -near && c.y < section.thickness + near;
    std::string words = "R " + bare(radius(arc), unit);
    if (!centred) words += ", centre " + centre_words(c, unit);
    out.push_back({placing.edge(arc), std::move(words), centred});
  }
  return out;
}

/// How far off each side figures must stand to be clear of the centres there.
Box clear_of(const std::vector<Radius>& radii, double width, double height) {
  Box out{kClear, kClear, kClear, kClear};
  for (const Radius& radius : radii) {
    if (!radius.centred) continue;
    const Point c = radius.arc.centre;
    out.x0 = std::max(out.x0, c.x < 0 ? kBeyondCentre - c.x : 0);
    out.y0 = std::max(out.y0, c.y < 0 ? kBeyondCentre - c.y : 0);
    out.x1 = std::max(out.x1, c.x > width ? c.x - width + kBeyondCentre : 0);
    out.y1 = std::max(out.y1, c.y > height ? c.y - height + kBeyondCentre : 0);
  }
  return out;
}

void take_in(Box& box, const Box& other) {
  box = {std::min(box.x0, other.x0), std::min(box.y0, other.y0), std::max(box.x1, other.x1),
         std::max(box.y1, other.y1)};
}

/// Moves all of it so that it begins a margin from (0, 0), and sets its size.
void fit(Picture& picture, Box box) {
  for (const Label& label : picture.labels) take_in(box, box_of(label));
  for (const DrawnShape& shape : picture.shapes)
    for (const auto& chain : shape.chains)
      for (const Edge& edge : chain)
        for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
          const Point p = point_at(edge, t);
          take_in(box, {p.x, p.y, p.x, p.y});
        }
  const Placing placing{{kMargin - box.x0, kMargin - box.y0}, 1};
  for (Label& label : picture.labels) label.at = placing.point(label.at);
  for (DrawnShape& shape : picture.shapes)
    for (auto& chain : shape.chains) chain = placing.chain(chain);
  picture.width = box.width() + 2 * kMargin;
  picture.height = box.height() + 2 * kMargin;
  picture.window = {0, 0, picture.width, picture.height};
}

}  // namespace

Picture dimensioned_picture(const Section& section, Unit unit, double scale) {
  const Placing placing{{0, 0}, scale};
  const double width = section.width * scale, height = section.thickness * scale;
  Picture picture;
  const std::string name = shorten(section.name, kPageColumns);
  picture.title = "Section with its dimensions" + (name.empty() ? "" : ": " + name);
  picture.description = "The section at " + scale_words(scale) + ", face up, working edge at the left, " +
                        exact(section.width, unit) + " wide and " + exact(section.thickness, unit) +
                        " thick. Figures at the top are from the working edge, at the side from the face.";
  picture.shapes.push_back(
      {Role::blank, {placing.chain(blank_outline(section.width, section.thickness))}, true, false});
  picture.shapes.push_back({Role::wood, {placing.chain(section.target)}, true, false});
  picture.shapes.push_back(finished_line(section, placing));
  picture.shapes.back().clipped = false;
  const std::vector<Radius> radii = radii_of(section, unit, placing);
  Levels(section, unit, scale).draw(picture, clear_of(radii, width, height));
  add_radii(picture, radii);
  fit(picture, {0, 0, width, height});
  return picture;
}

}  // namespace arrisline
