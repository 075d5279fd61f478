// The exact twin of Wood: the same cuts with CGAL's sets of polygons bounded by lines and circles, in exact
// arithmetic. CGAL's boolean operations are under the GPL: nothing but the benchmarks, which are never
// installed, uses it.
#pragma once

#include <CGAL/Boolean_set_operations_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/General_polygon_set_2.h>
#include <CGAL/Gps_circle_segment_traits_2.h>

#include <algorithm>
#include <vector>

#include "plan/sweep.h"

namespace arrisline::bench {

class CgalTwin {
 public:
  using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
  using Traits = CGAL::Gps_circle_segment_traits_2<Kernel>;
  using Set = CGAL::General_polygon_set_2<Traits>;
  using Polygon = Traits::Polygon_2;

  /// REQUIRES: `base` has straight edges only.
  explicit CgalTwin(const Loop& base) {
    std::vector<Point> corners;
    for (const Edge& edge : base) corners.push_back(edge.from);
    set_.insert(polygon(corners));
  }

  void cut(const Set& region) { set_.difference(region); }

  /// Whether anything of the region lies within.
  bool meets(const Set& region) const { return set_.do_intersect(region); }

  /// The region of a flat sole or a round: a strip, or the strip within the circle and above its centre.
  static Set region(const Sweep& sweep, double far) {
    const auto at = [&](double u, double v) { return sweep.pose().at + u * sweep.e() + v * sweep.a(); };
    const double half = sweep.half();
    Set out;
    if (sweep.plane().is_flat()) {
      out.insert(polygon({at(-half, 0), at(half, 0), at(half, far), at(-half, far)}));
      return out;
    }
    const double r = sweep.plane().radius;
    out.insert(circle(at(0, r), r));
    Set strip(polygon({at(-half, -1), at(half, -1), at(half, far), at(-half, far)}));
    out.intersection(strip);
    out.join(Set(polygon({at(-half, r), at(half, r), at(half, far), at(-half, far)})));
    return out;
  }

 private:
  using Curve = Traits::Curve_2;
  using XCurve = Traits::X_monotone_curve_2;

  static Polygon polygon(std::vector<Point> corners) {
    double twice = 0;
    for (std::size_t i = 0; i < corners.size(); ++i)
      twice += cross(corners[i], corners[(i + 1) % corners.size()]);
    if (twice < 0) std::reverse(corners.begin(), corners.end());
    Polygon out;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Point a = corners[i], b = corners[(i + 1) % corners.size()];
      out.push_back(XCurve(Kernel::Point_2(a.x, a.y), Kernel::Point_2(b.x, b.y)));
    }
    return out;
  }

  static Polygon circle(Point centre, double r) {
    const Curve curve(Kernel::Circle_2(Kernel::Point_2(centre.x, centre.y), Kernel::FT(r) * Kernel::FT(r),
                                       CGAL::COUNTERCLOCKWISE));
    std::vector<CGAL::Object> parts;
    Traits().make_x_monotone_2_object()(curve, std::back_inserter(parts));
    Polygon out;
    for (const CGAL::Object& part : parts) {
      XCurve arc;
      if (CGAL::assign(arc, part)) out.push_back(arc);
    }
    return out;
  }

  Set set_;
};

}  // namespace arrisline::bench
