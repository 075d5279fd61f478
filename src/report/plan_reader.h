// Reads a plan from JSON.
#pragma once

#include <vector>

#include "arrisline/limits.h"
#include "arrisline/plan_json.h"
#include "report/json_members.h"

namespace arrisline {

/// Half a sole, and both ends of an arc, are written to the same exactness as any point; no edge is shorter:
/// far below any shaving, far above what rounding in 17 digits leaves. In mm.
inline constexpr double kWrittenTo = 1e-6;
/// Areas, efforts and counts of strokes.
inline constexpr double kLargest = 1e12;

class PlanReader : JsonMembers {
 public:
  explicit PlanReader(StatedPlan& out) : JsonMembers(out.faults), plan_(out.plan), unread_(out.unread) {}

  void read(const Json& root);

 private:
  /// Past a limit of arrisline/limits.h.
  void over(const Path& path, const std::string& text, std::string_view constant) {
    fault(path, text + to_raise(constant));
    unread_ = true;
  }

  int element_index(const Json& in, const Path& path, Need need);
  bool edge(const Json& value, const Path& path, Point from, Edge& out);
  void target(const Json& root);
  void elements(const Json& root);
  void sole(const Json& plane, const Path& path, Plane& out);
  void check_sole(const Path& path, const Plane& plane);
  void plane(const Json& cut, const Path& path, Plane& out);
  void poses(const Json& cut, const Path& path, std::string_view name, Need need, std::vector<Pose>& out);
  void lines(const Json& cut, const Path& path, Cut& out);
  void cut(const Json& value, const Path& path, Cut& out);
  void cuts(const Json& root);
  void left(const Json& root);
  void reasons(const Json& root);

  Plan& plan_;
  bool& unread_;
  std::size_t poses_read_ = 0;
  std::size_t work_ = 0;    // poses times edges
  double chords_ = 0;       // that all the arcs come to, each counted for every pose that cuts with it
  bool says_set_ = false;   // some cut carries `set`, so every cut must
  bool says_lies_ = false;  // likewise `lies`
};

}  // namespace arrisline
