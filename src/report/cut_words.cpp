// The words for one cut: widths and depths, tilts, what it rides on. Shown by tests/report.
#include "report/cut_words.h"

#include <algorithm>
#include <cmath>

#include "report/figures.h"
#include "report/page.h"

namespace arrisline {
namespace {

constexpr double kSameTilt = 1e-6;   // degrees
constexpr double kSamePlace = 1e-6;  // mm

// A side the plane bears on, and how far across it a figure is measured.
struct Bearing {
  Side side;          // the plane is square to this
  Side near;          // spans are measured from here,
  Side far;           // or from here
  double across = 0;  // mm from near to far
};

bool is_tilt(const Pose& pose, double tilt) {
  return std::fabs(wrap_degrees(pose.tilt - tilt)) < kSameTilt;
}

std::optional<Bearing> bearing(const Pose& pose, const Section& section) {
  if (is_tilt(pose, 0)) return Bearing{Side::face, Side::edge, Side::back, section.width};
  if (is_tilt(pose, 180)) return Bearing{Side::underside, Side::edge, Side::back, section.width};
  if (is_tilt(pose, 90)) return Bearing{Side::edge, Side::face, Side::underside, section.thickness};
  if (is_tilt(pose, -90)) return Bearing{Side::back, Side::face, Side::underside, section.thickness};
  return std::nullopt;
}

double from_side(Side side, Point p, const Section& section) {
  switch (side) {
    case Side::face:
      return p.y;
    case Side::underside:
      return section.thickness - p.y;
    case Side::edge:
      return p.x;
    case Side::back:
      return section.width - p.x;
  }
  return 0;
}

// Poses side by side at one depth.
struct Pass {
  Bearing bearing;
  double near = 0;
  double far = 0;
  double deep = 0;
  int count = 1;
};

std::optional<Pass> pass_of(const Plane& plane, const Pose& pose, const Section& section) {
  const std::optional<Bearing> b = bearing(pose, section);
  if (!b) return std::nullopt;
  const double middle = from_side(b->near, pose.at, section);
  return Pass{*b, middle - plane.width / 2, middle + plane.width / 2, from_side(b->side, pose.at, section),
              1};
}

std::vector<Pass> passes_of(const Cut& cut, const Section& section) {
  std::vector<Pass> out;
  for (const Pose& pose : cut.set) {
    const std::optional<Pass> pass = pass_of(cut.plane, pose, section);
    if (!pass) return {};
    if (!out.empty() && out.back().bearing.side == pass->bearing.side &&
        std::fabs(out.back().deep - pass->deep) < kSamePlace) {
      out.back().near = std::min(out.back().near, pass->near);
      out.back().far = std::max(out.back().far, pass->far);
      ++out.back().count;
    } else {
      out.push_back(*pass);
    }
  }
  return out;
}

// The cut's gauge lines, and which of them the sentence has named.
class Named {
 public:
  Named(const Cut& cut, const CutContext& context)
      : cut_(cut), context_(context), said_(cut.lines.size(), false) {}

  /// " (line A)" where a line stands at `set` from `side`, else nothing.
  std::string at(Side side, double set) {
    for (std::size_t i = 0; i < cut_.lines.size(); ++i) {
      if (cut_.lines[i].from != side || std::fabs(cut_.lines[i].set - set) >= kSamePlace) continue;
      said_[i] = true;
      return " (line " + letter(i) + ")";
    }
    return "";
  }

  /// "line A, 3/8 in from the edge" for each line not named yet.
  std::vector<std::string> rest() const {
    std::vector<std::string> out;
    for (std::size_t i = 0; i < cut_.lines.size(); ++i) {
      if (said_[i]) continue;
      const int corner = corner_of(context_.lines[find_line(context_.lines, cut_, cut_.lines[i])], cut_);
      out.push_back(
          (corner == 0 ? "line " + letter(i) : "the corner that cut " + std::to_string(corner) + " left") +
          ", " + exact(cut_.lines[i].set, context_.unit) + " from the " + word(cut_.lines[i].from));
    }
    return out;
  }

 private:
  std::string letter(std::size_t i) const {
    return line_letter(find_line(context_.lines, cut_, cut_.lines[i]));
  }

  const Cut& cut_;
  const CutContext& context_;
  std::vector<bool> said_;
};

std::string joined(const std::vector<std::string>& parts) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i != 0) out += i + 1 == parts.size() ? ", and " : "; ";
    out += parts[i];
  }
  return out;
}

/// A width as the line gives it; one that no line gives, against a wall already cut, only roughly.
std::string width_words(double wide, const std::string& line, const CutContext& context, bool begins) {
  if (!line.empty()) return exact(wide, context.unit);
  return (begins ? "About " : "about ") + show_length(wide, context.unit, context.division) +
         (context.unit == Unit::inch ? " in" : " mm");
}

/// The element whose arc ends where that side of the sole comes down, `across` mm from the near side: there a
/// flat ends that is cut after its curve.
std::optional<std::string> curve_at(const Pass& pass, double across, const Section& section) {
  constexpr double kAtCorner = 1;  // mm, as far as lines may be rounded
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& edge = section.target[i];
    const int element = section.source[i];
    if (!edge.is_arc() || element < 0) continue;
    for (const Point end : {edge.from, edge.to}) {
      if (std::fabs(from_side(pass.bearing.near, end, section) - across) < kSamePlace &&
          std::fabs(from_side(pass.bearing.side, end, section) - pass.deep) < kAtCorner)
        return describe(section.elements[static_cast<std::size_t>(element)]);
    }
  }
  return std::nullopt;
}

/// How wide from one side of the blank on, `across` mm from the near side.
std::string reach_words(const Pass& pass, double wide, double across, const std::string& line, Side from,
                        const CutContext& context, bool begins) {
  const std::optional<std::string> curve =
      line.empty() ? curve_at(pass, across, context.section) : std::nullopt;
  if (!curve) return width_words(wide, line, context, begins) + " wide from the " + word(from) + line;
  return (begins ? "From the " : "from the ") + std::string(word(from)) + " up to " + *curve + ", " +
         width_words(wide, line, context, false) + " wide";
}

std::string sentence_of(const Pass& pass, const CutContext& context, Named& named) {
  const Bearing& b = pass.bearing;
  const bool to_near = pass.near < kSamePlace;
  const bool to_far = pass.far > b.across - kSamePlace;
  std::string out;
  if (b.side == Side::edge) out = "On its side, bearing on the edge: ";
  if (b.side == Side::back) out = "On its side, bearing on the back edge: ";
  const bool upright = out.empty();
  if (to_near && to_far) {
    out += upright ? "Right across" : "right across";
  } else if (to_near) {
    const std::string line = named.at(b.near, pass.far);
    out += reach_words(pass, pass.far, pass.far, line, b.near, context, upright);
  } else if (to_far) {
    const double wide = b.across - pass.near;
    const std::string line = named.at(b.far, wide) + named.at(b.near, pass.near);
    out += reach_words(pass, wide, pass.near, line, b.far, context, upright);
  } else {
    out += (upright ? "From " : "from ") + exact(pass.near, context.unit) + named.at(b.near, pass.near) +
           " to " + exact(pass.far, context.unit) + " from the " + word(b.near) + named.at(b.near, pass.far);
  }
  out +=
      ", " + exact(pass.deep, context.unit) + " deep from the " + word(b.side) + named.at(b.side, pass.deep);
  if (pass.count > 1) out += ", in " + std::to_string(pass.count) + " passes side by side";
  return out + ".";
}

std::string lean(double tilt) {
  const double t = wrap_degrees(tilt);
  if (std::fabs(t) < kSameTilt) return "upright on the face";
  if (std::fabs(t - 180) < kSameTilt) return "upright on the underside";
  if (std::fabs(t - 90) < kSameTilt) return "square to the edge";
  if (std::fabs(t + 90) < kSameTilt) return "square to the back edge";
  const std::string toward = t > 0 ? " toward the edge" : " toward the back edge";
  if (std::fabs(t) < 90) return "leaning " + degrees(std::fabs(t)) + toward;
  return "leaning " + degrees(180 - std::fabs(t)) + toward + ", from the underside";
}

// How far a figure lies inside a side of the blank, or outside it.
struct Placing {
  const char* inside;
  const char* outside;
  const char* level;
};

std::string place(double figure, const Placing& words, const CutContext& context) {
  const std::string length = show_length(std::fabs(figure), context.unit, context.division);
  if (length == "0") return words.level;
  return "about " + length + (context.unit == Unit::inch ? " in " : " mm ") +
         (figure < 0 ? words.outside : words.inside);
}

/// Every tilt of a cut is placed from one edge, the nearer one of them all together.
bool is_nearer_back(const Cut& cut, const CutContext& context) {
  double sum = 0;
  for (const Pose& pose : cut.poses) sum += 2 * pose.at.x - context.section.width;
  return context.back_edge && sum > 0;
}

std::string sole_sits(const Pose& pose, bool from_back, const CutContext& context) {
  constexpr Placing kEdge = {"from the edge", "outside the edge", "at the edge"};
  constexpr Placing kBack = {"from the back edge", "outside the back edge", "at the back edge"};
  constexpr Placing kFace = {"below the face", "above the face", "level with the face"};
  constexpr Placing kUnder = {"from the underside", "clear of the underside", "level with the underside"};
  const Section& s = context.section;
  const bool outside_back = context.back_edge && pose.at.x > s.width;
  const std::string across = from_back || outside_back ? place(s.width - pose.at.x, kBack, context)
                                                       : place(pose.at.x, kEdge, context);
  const std::string deep = std::fabs(wrap_degrees(pose.tilt)) <= 90
                               ? place(pose.at.y, kFace, context)
                               : place(s.thickness - pose.at.y, kUnder, context);
  return across + " and " + deep;
}

std::vector<std::string> by_tilts(const Cut& cut, const CutContext& context) {
  std::vector<std::string> out;
  const bool from_back = is_nearer_back(cut, context);
  for (std::size_t i = 0; i < cut.poses.size(); ++i) {
    const std::string start = cut.poses.size() == 1 ? "Hold it " : i == 0 ? "First hold it " : "Then ";
    const std::string middle = i == 0 ? ", the middle of the sole " : ", ";
    out.push_back(start + lean(cut.poses[i].tilt) + middle + sole_sits(cut.poses[i], from_back, context) +
                  ".");
  }
  return out;
}

std::vector<std::string> by_gauge_lines(const Cut& cut, const CutContext& context) {
  if (cut.lines.size() < 2) return by_tilts(cut, context);
  std::vector<std::string> tilts;
  for (const Pose& pose : cut.set) {
    const std::string words = lean(pose.tilt);
    if (tilts.empty() || tilts.back() != words) tilts.push_back(words);
  }
  const Named named(cut, context);
  return {"Hold it " + joined(tilts) + ". Work down to " + joined(named.rest()) + "."};
}

}  // namespace

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i)
    out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return out;
}

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string number_lead(std::size_t number) {
  std::string digits = std::to_string(number);
  if (digits.size() < 2) digits.insert(digits.begin(), ' ');
  return digits + ". ";
}

std::string purpose(const Cut& cut, const Section& section) {
  std::vector<std::string> made;
  for (const int element : cut.elements) {
    const auto index = static_cast<std::size_t>(element);
    if (element < 0 || index >= section.elements.size()) continue;
    const std::string words = describe(section.elements[index]);
    if (std::find(made.begin(), made.end(), words) == made.end()) made.push_back(words);
  }
  if (cut.plane.kind == PlaneKind::scraper) return "clean off what the planes left";
  if (!made.empty()) return "makes " + shorten(listed(made), 200);
  return cut.made_for == "waste" || cut.made_for.empty() ? "takes out waste"
                                                         : "for " + shorten(cut.made_for, 200);
}

std::vector<std::string> where_it_goes(const Cut& cut, const CutContext& context) {
  if (cut.plane.kind == PlaneKind::scraper) return {};
  if (!cut.plane.is_flat()) return by_tilts(cut, context);
  const std::vector<Pass> passes = passes_of(cut, context.section);
  if (passes.empty()) return by_gauge_lines(cut, context);
  std::vector<std::string> out;
  Named named(cut, context);
  for (const Pass& pass : passes) out.push_back(sentence_of(pass, context, named));
  const std::vector<std::string> rest = named.rest();
  if (!rest.empty()) out.push_back("Also by " + joined(rest) + ".");
  return out;
}

std::string guided_by(const Cut& cut) {
  switch (cut.rides) {
    case Rides::gauge_line:
      return "Starts in a gauge line.";
    case Rides::wall:
      return "Runs against the wall already cut.";
    case Rides::fence:
      return "Runs by its fence.";
    case Rides::two_arrises: {
      const std::string width = " of the sole's width off centre";
      const std::string cut_exact = plain(100 * cut.imbalance, 0) + " %";
      const std::string as_set = plain(100 * cut.imbalance_set, 0) + " %";
      // The planner states a half where the rounded lines leave the sole one arris only.
      if (cut.imbalance_set >= 0.5)
        return "Rides on two arrises" + (cut_exact == "0 %" ? ", evenly" : ", " + cut_exact + width) +
               "; with the lines as set one of them stands low: try the plane, and ease the other till it "
               "bears on both.";
      if (cut_exact == "0 %" && as_set == "0 %") return "Rides on two arrises, evenly.";
      if (cut_exact == "0 %")
        return "Rides on two arrises, evenly; with the lines as set, " + as_set + width + ".";
      const std::string when_set = as_set == cut_exact ? "" : ", " + as_set + " with the lines as set";
      return "Rides on two arrises, " + cut_exact + width + when_set + ".";
    }
    case Rides::own_arc:
      return "Turns in its own arc, already begun.";
    case Rides::by_hand:
      return "Guided by hand.";
  }
  return "";
}

std::string lay(Lies lies) {
  switch (lies) {
    case Lies::face_up:
      return "Lay the blank face up, working edge toward you.";
    case Lies::underside_up:
      return "Turn the blank over end over end: underside up, working edge toward you.";
    case Lies::rolled_over:
      return "Roll the blank over about its length: underside up, back edge toward you.";
    case Lies::end_for_end:
      return "Turn the blank end for end: face up, back edge toward you.";
  }
  return "";
}

std::string overhang_words(Lies lies) {
  return std::string("Let the ") + (back_edge_free(lies) ? "back" : "working") + " edge overhang the board.";
}

std::string planed_words(Lies lies) {
  // Fibres that rise toward the face the one way rise toward the underside the other way.
  const std::string tears = " against the grain: take thin shavings, or it tears.";
  switch (lies) {
    case Lies::face_up:
      return "Blank face up; planed along the arrow.";
    case Lies::end_for_end:
      return "Blank face up, end for end; planed against the arrow," + tears;
    case Lies::underside_up:
      return "Blank underside up, working edge toward you; planed against the arrow, which is with the grain "
             "on "
             "this side.";
    case Lies::rolled_over:
      return "Blank underside up, back edge toward you; planed along the arrow, on this side" + tears;
  }
  return "";
}

}  // namespace arrisline
