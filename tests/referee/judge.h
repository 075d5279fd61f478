// An independent judge of plans, against the model of docs/model.md. It reads the JSON itself and cuts the
// wood in exact arithmetic; of the product it uses the types Point and Edge only. Its verdict is
// three-valued: near a limit, by the margins in judge.cpp, it does not decide.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "referee/region.h"

namespace arrisline::referee {

enum class Verdict { valid, broken, knife_edge };

/// The figures as the judge finds them; none where the form is at fault.
struct Found {
  std::vector<double> removed;
  std::vector<std::optional<double>> imbalance;  // by cut, where it rides on two arrises
  double max_height = 0, left_area = 0, waste = 0, by_flat = 0, as_set_height = 0, as_set_gouge = 0;
};

struct Judgement {
  std::vector<std::string> broken;  // each rule that is broken, and by how much
  std::vector<std::string> near;    // limits too near to decide
  std::optional<Found> found;
  Verdict verdict() const {
    return !broken.empty() ? Verdict::broken : near.empty() ? Verdict::valid : Verdict::knife_edge;
  }
};

// The plan as the judge reads it.

struct StatedPlane {
  std::string kind;
  double width = 0, radius = 0, reach = 127, deep = 19.05;
  bool has_body = false;
  double overhang = 0, above = 0;
  std::vector<Edge> sole;  // shaped: in (u, f)

  bool flat() const { return kind == "rebate" || kind == "plough" || kind == "bench"; }
  bool curved() const { return kind == "hollow" || kind == "round"; }
};

struct StatedPose {
  Point at;
  double tilt = 0;
};

struct StatedCut {
  StatedPlane plane;
  std::vector<StatedPose> poses, set;
  double removed = 0, imbalance = 0;
  std::string rides, lies;
  std::optional<bool> overhangs;
};

struct Stated {
  double width = 0, thickness = 0;
  std::vector<Edge> target;
  std::vector<StatedCut> cuts;
  bool has_set = false, has_as_set = false, scrape = false;
  double max_height = 0, left_area = 0, as_set_height = 0, as_set_gouge = 0;
  double waste = 0, by_flat = 0, effort = 0, bound = 0;
  int facets = 0;
};

/// Reads the text by docs/plan-json.md; what is wrong with its form goes to `broken`.
std::optional<Stated> read_stated(const std::string& text, Judgement& out);

// What is measured (measure.cpp).

Point across_of(const StatedPose& pose);
Point outward_of(const StatedPose& pose);
Point in_frame(const StatedPose& pose, Point p);
Point from_frame(const StatedPose& pose, double u, double v);
double height_of(const StatedPlane& plane, double u);
/// The sole in the section, u rising.
std::vector<Edge> sole_of(const StatedPlane& plane, const StatedPose& pose);

/// The greatest value, over `floor`, of a distance at points along an edge that count; `of` changes by no
/// more than the way travelled. `from` and `to` are its values at the ends, which are come near to only.
template <class Of, class Counts>
double greatest_along(const Edge& edge, double from, double to, double whole, const Of& of,
                      const Counts& counts, double floor, double error) {
  if ((from + to + whole) / 2 <= floor + error) return floor;
  const Point middle = middle_of(edge);
  const double here = of(middle);
  if (here > floor && counts(middle)) floor = here;
  if (whole <= error) return floor;
  floor = greatest_along(first_half(edge), from, here, whole / 2, of, counts, floor, error);
  return greatest_along(second_half(edge), here, to, whole / 2, of, counts, floor, error);
}

/// Depth of a pose in the target: along the boundary of what they have in common, the distance to the outline
/// of the other.
double depth_in(const Region& common, const std::vector<Edge>& target, const std::vector<Edge>& swept);
/// The greatest distance to the target of what is left above it.
double thickest_in(const Region& left, const std::vector<Edge>& target);

/// How a curved sole sits on the wood; `strict` takes every choice of the margins against it, and not strict
/// for it.
struct Seat {
  bool touches = false;
  bool two = false;
  double imbalance = 0;
};
struct SeatLimits {
  double touch, off_middle, steady, corner, near_corner, rise;
};
class Seater {
 public:
  Seater(const Region& wood, const StatedPlane& plane, const StatedPose& pose);
  Seat sit(const SeatLimits& limits) const;
  /// The topmost wood under the sole, over its middle's level; 0 where there is none.
  double highest() const;

 private:
  struct Look {
    double u;
    std::optional<double> over;
  };
  struct Corner {
    Point at;
    double turn;
  };
  std::optional<double> top(double u) const;
  std::optional<double> over(double u) const;
  bool guides(double u, double stands, const SeatLimits& limits) const;

  const StatedPlane& plane_;
  StatedPose pose_;
  std::vector<Edge> pieces_;  // the wood's boundary in the frame of the pose, monotone in u
  std::vector<Corner> corners_;
  std::vector<Look> looks_;
};

// The judge.

class Judge {
 public:
  Judgement judge(const std::string& text, double tolerance = 0.2, double scrape = 0.4);
  /// Forgets what it has measured, between plans.
  void forget();

 private:
  struct State {
    Region wood;
    double area = 0;
  };
  using Key = std::string;

  const State& blank(const Stated& plan, Key& key);
  const State& after(const State& before, const StatedPlane& plane, const StatedPose& pose, double far,
                     Key& key);
  double gouge(const Stated& plan, const StatedPlane& plane, const StatedPose& pose, double far);
  double thickness(const State& wood, const Stated& plan, const Key& key);

  void judge_body(const Stated& plan, std::size_t cut, const StatedPose& pose, const State& wood, double far);
  std::optional<double> judge_riding(const Stated& plan, std::size_t cut, const State& wood);
  void judge_turning(const Stated& plan, std::size_t cut);
  void judge_register(const Stated& plan, std::size_t cut, const State& wood);
  void judge_lying(const Stated& plan, std::size_t cut);
  void judge_arcs(const Stated& plan, double limit);
  void judge_as_set(const Stated& plan, Found& found);
  void judge_wood(const Stated& plan, double tolerance, double scrape);
  double own_arc(const Stated& plan, std::size_t cut) const;

  /// Broken where the value is over the limit by more than the margin, near within it.
  void at_most(const std::string& what, double value, double limit, double margin);
  void close(const std::string& what, double stated, double found, double allowed, double margin);
  void area(const std::string& what, double stated, double found);
  /// Broken where it does not hold even when read for the plan, near where only so.
  void holds(const std::string& what, bool strictly, bool loosely);

  Judgement out_;
  std::string target_key_;
  std::shared_ptr<const Region> target_;
  std::map<std::string, std::shared_ptr<const Region>> targets_;
  std::map<Key, State> states_;
  std::map<Key, double> gouges_, thicknesses_;
};

}  // namespace arrisline::referee
