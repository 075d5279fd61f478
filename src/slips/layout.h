// Where the planes of a plan end up when its gauge settings are off: flat soles go with their lines and with
// the walls they run against; hollows and rounds start where their rails lead them, and end on the drawn arc.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "arrisline/plan.h"
#include "plan/touch.h"
#include "plan/wood.h"

namespace arrisline {

/// A figure set on the gauge once, and the cuts in a row that use it. The cuts are indices.
struct Setting {
  Side from = Side::edge;
  double at = 0;
  double set = 0;
  std::vector<std::size_t> cuts;
};

/// How a hollow or round on two arrises is set down.
struct Seat {
  Guidance guidance;  // where it settles
  double aside = 0;   // mm across the sole from where it is drawn to where it settles
};

/// A hollow or round set down at the pose, leaning as it says, and left to find its place across the wood.
Seat seat(const Wood& wood, const Plane& plane, const Pose& pose);

/// The poses of each cut with some settings off, and how its hollows and rounds are set down.
struct Slipped {
  std::vector<std::vector<Pose>> poses;  // of a scraper none
  std::vector<Seat> seats;               // beside `poses`; told of cuts on two arrises
};

class Layout {
 public:
  /// Finds out what each line and wall of the plan holds in place, on its exact poses. `plan` is borrowed.
  explicit Layout(const Plan& plan);

  const std::vector<Setting>& settings() const { return settings_; }

  /// REQUIRES: one figure for each setting, mm by which it is set too large (less than 0: too small).
  Slipped slip(const std::vector<double>& off) const;

 private:
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

  /// A sole (side 0) or a side (−1 at −u, +1 at +u) of a pose of a flat cut.
  struct Feature {
    std::size_t cut = 0;
    std::size_t pose = 0;
    int side = 0;
  };
  /// One end of the sole of a square flat cut.
  struct End {
    bool walled = false;          // wood stands beside it; beside a slanted one when all is done
    std::size_t line = kNone;     // index into the cut's lines of the one that gives it,
    std::optional<Feature> wall;  // or the wall it runs against
  };
  /// One line of a slanted flat cut: the sole or a side goes through the point where it is struck.
  struct Mark {
    std::size_t line = 0;
    int side = 0;
    std::optional<Feature> surface;  // that it is struck on; none where that is the blank's own
  };
  struct Place {
    std::size_t floor = kNone;  // square flats: index of the line of the floor,
    std::array<End, 2> ends;    // and the ends at the least and the greatest u
    std::vector<Mark> marks;    // slanted flats
  };
  /// The poses of the cuts so far as they come to stand. Of each cut those of the plan come first.
  using Stands = std::vector<std::vector<Pose>>;

  void find_settings();
  void find_square(std::size_t cut, const Wood& before, const Wood& after);
  void find_slanted(std::size_t cut, const Wood& before, const Wood& after, const Wood& finished);
  std::optional<Feature> wall_beside(std::size_t cut, Point p, Point along) const;
  std::optional<Feature> surface_under(std::size_t cut, Point p, Point scan) const;

  Edge carrier(const Feature& feature, const Stands& stands) const;
  double moved(std::size_t cut, std::size_t line, const std::vector<double>& off) const;
  std::vector<Pose> square(std::size_t cut, const std::vector<double>& off, const Stands& stands) const;
  std::vector<Pose> slanted(std::size_t cut, const std::vector<double>& off, const Stands& stands) const;
  std::vector<Pose> stand(std::size_t cut, const std::vector<double>& off, const Stands& stands) const;

  const Plan& plan_;
  std::vector<Setting> settings_;
  std::vector<std::vector<std::size_t>> setting_of_;  // of each line of each cut
  std::vector<Place> places_;
  Stands as_set_;
};

}  // namespace arrisline
