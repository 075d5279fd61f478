// Finds where an outline crosses or touches itself. Boxes with eight sides around ever longer stretches of
// the chain keep the work near-linear: neighbours along the chain are neighbours in the plane. Shown by
// tests/section/contacts_test.cpp, against all pairs.
#include "section/contacts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace arrisline {

namespace {

/// Contacts this near to the joint of two neighbouring edges belong to the joint, in mm.
constexpr double kJoint = 1e-5;
/// Pairs of edges looked at before the search gives up.
constexpr std::size_t kBudget = 20'000'000;
/// Farthest from a contact at which the order of its branches is read, in mm.
constexpr double kProbe = 0.5;
/// Branches nearer than this in direction run along one another, in radians.
constexpr double kAlong = 1e-9;

const std::array<Point, 4> kDirections = {Point{1, 0}, Point{0, 1}, Point{std::sqrt(0.5), std::sqrt(0.5)},
                                          Point{std::sqrt(0.5), -std::sqrt(0.5)}};

/// Least and greatest reach along each of the four directions.
struct Box {
  std::array<double, 4> low{};
  std::array<double, 4> high{};
};

bool on_arc(const Edge& arc, Point direction) {
  const Point a = arc.from - arc.centre;
  double ahead = std::atan2(cross(a, direction), dot(a, direction));
  if (arc.turn == Turn::right) ahead = -ahead;
  if (ahead < 0) ahead += 2 * kPi;
  return ahead <= std::abs(sweep(arc));
}

Box box_around(const Edge& edge) {
  Box box;
  for (std::size_t k = 0; k < kDirections.size(); ++k) {
    const Point n = kDirections[k];
    const double a = dot(edge.from, n);
    const double b = dot(edge.to, n);
    box.low[k] = std::min(a, b);
    box.high[k] = std::max(a, b);
    if (edge.is_arc()) {
      if (on_arc(edge, n)) box.high[k] = dot(edge.centre, n) + radius(edge);
      if (on_arc(edge, -1 * n)) box.low[k] = dot(edge.centre, n) - radius(edge);
    }
    box.low[k] -= kSamePoint;
    box.high[k] += kSamePoint;
  }
  return box;
}

Box join(const Box& a, const Box& b) {
  Box box;
  for (std::size_t k = 0; k < kDirections.size(); ++k) {
    box.low[k] = std::min(a.low[k], b.low[k]);
    box.high[k] = std::max(a.high[k], b.high[k]);
  }
  return box;
}

bool overlap(const Box& a, const Box& b) {
  for (std::size_t k = 0; k < kDirections.size(); ++k) {
    if (a.low[k] > b.high[k] || b.low[k] > a.high[k]) return false;
  }
  return true;
}

void cross_lines(const Edge& a, const Edge& b, std::vector<Point>& out) {
  const Point da = a.to - a.from;
  const Point db = b.to - b.from;
  const double det = cross(da, db);
  if (std::abs(det) <= 1e-12 * norm(da) * norm(db)) return;
  out.push_back(a.from + (cross(b.from - a.from, db) / det) * da);
}

void cross_line_circle(const Edge& line, const Edge& arc, std::vector<Point>& out) {
  const Point d = direction_at(line, 0);
  const Point foot = line.from + dot(arc.centre - line.from, d) * d;
  const double away = distance(foot, arc.centre);
  const double r = radius(arc);
  if (away > r + kSamePoint) return;
  const double half = away > r - kSamePoint ? 0 : std::sqrt(r * r - away * away);
  out.push_back(foot - half * d);
  if (half > 0) out.push_back(foot + half * d);
}

void cross_circles(const Edge& a, const Edge& b, std::vector<Point>& out) {
  const double ra = radius(a);
  const double rb = radius(b);
  const Point d = b.centre - a.centre;
  const double apart = norm(d);
  if (apart <= kSamePoint) return;
  if (apart > ra + rb + kSamePoint || apart < std::abs(ra - rb) - kSamePoint) return;
  const Point n = (1 / apart) * d;
  const double along = (apart * apart + ra * ra - rb * rb) / (2 * apart);
  const bool tangent = apart > ra + rb - kSamePoint || apart < std::abs(ra - rb) + kSamePoint;
  if (tangent) {
    out.push_back(a.centre + (along < 0 ? -ra : ra) * n);
    return;
  }
  const double half = std::sqrt(std::max(0.0, ra * ra - along * along));
  out.push_back(a.centre + along * n + half * Point{-n.y, n.x});
  out.push_back(a.centre + along * n - half * Point{-n.y, n.x});
}

/// A place on the chain: on an edge, or at the joint where `in` ends and `out` begins.
struct Spot {
  Point at;
  std::optional<Edge> in;   // travelled up to `at`
  std::optional<Edge> out;  // travelled from `at` on
};

double fraction_at(const Edge& edge, Point p) {
  if (!edge.is_arc()) {
    const Point d = edge.to - edge.from;
    return std::clamp(dot(p - edge.from, d) / dot(d, d), 0.0, 1.0);
  }
  const Point a = edge.from - edge.centre;
  const Point q = p - edge.centre;
  double ahead = std::atan2(cross(a, q), dot(a, q));
  if (edge.turn == Turn::right) ahead = -ahead;
  if (ahead < 0) ahead += 2 * kPi;
  return std::clamp(ahead / std::abs(sweep(edge)), 0.0, 1.0);
}

class Search {
 public:
  Search(const std::vector<Edge>& edges, bool closed, std::size_t most)
      : edges_(edges), closed_(closed), most_(most), boxes_(2 * edges.size()) {
    build(0, edges.size(), 1);
  }

  Contacts run() {
    within(0, edges_.size(), 1);
    return std::move(found_);
  }

 private:
  // A node holds a stretch [from, to) of edges. Its halves are numbered so that a tree over n leaves needs
  // 2n − 1 boxes: the left half follows its parent, the right half comes after all nodes of the left.
  static std::size_t middle(std::size_t from, std::size_t to) { return from + (to - from) / 2; }
  static std::size_t right_of(std::size_t node, std::size_t from, std::size_t to) {
    return node + 2 * (middle(from, to) - from);
  }

  void build(std::size_t from, std::size_t to, std::size_t node) {
    if (to - from == 1) {
      boxes_[node] = box_around(edges_[from]);
      return;
    }
    const std::size_t mid = middle(from, to);
    const std::size_t right = right_of(node, from, to);
    build(from, mid, node + 1);
    build(mid, to, right);
    boxes_[node] = join(boxes_[node + 1], boxes_[right]);
  }

  bool stopped() const { return found_.list.size() >= most_ || !found_.complete; }

  void within(std::size_t from, std::size_t to, std::size_t node) {
    if (to - from == 1 || stopped()) return;
    const std::size_t mid = middle(from, to);
    const std::size_t right = right_of(node, from, to);
    within(from, mid, node + 1);
    within(mid, to, right);
    between(from, mid, node + 1, mid, to, right);
  }

  void between(std::size_t from_a, std::size_t to_a, std::size_t a, std::size_t from_b, std::size_t to_b,
               std::size_t b) {
    if (stopped() || !overlap(boxes_[a], boxes_[b])) return;
    if (++found_.looked_at > kBudget) {
      found_.complete = false;
      return;
    }
    if (to_a - from_a == 1 && to_b - from_b == 1) {
      examine(from_a, from_b);
    } else if (to_a - from_a >= to_b - from_b) {
      const std::size_t mid = middle(from_a, to_a);
      between(from_a, mid, a + 1, from_b, to_b, b);
      between(mid, to_a, right_of(a, from_a, to_a), from_b, to_b, b);
    } else {
      const std::size_t mid = middle(from_b, to_b);
      between(from_a, to_a, a, from_b, mid, b + 1);
      between(from_a, to_a, a, mid, to_b, right_of(b, from_b, to_b));
    }
  }

  std::optional<Edge> before(std::size_t i) const {
    if (i > 0) return edges_[i - 1];
    return closed_ ? std::optional(edges_.back()) : std::nullopt;
  }
  std::optional<Edge> after(std::size_t i) const {
    if (i + 1 < edges_.size()) return edges_[i + 1];
    return closed_ ? std::optional(edges_.front()) : std::nullopt;
  }

  Spot spot(std::size_t i, Point p) const {
    const Edge& edge = edges_[i];
    if (distance(p, edge.from) <= kSamePoint) return {edge.from, before(i), edge};
    if (distance(p, edge.to) <= kSamePoint) return {edge.to, edge, after(i)};
    const double t = fraction_at(edge, p);
    return {point_at(edge, t), piece(edge, 0, t), piece(edge, t, 1)};
  }

  void examine(std::size_t i, std::size_t j) {
    const bool j_follows_i = j == i + 1;
    const bool i_follows_j = closed_ && i == 0 && j + 1 == edges_.size();
    for (const Point p : common_points(edges_[i], edges_[j])) {
      if (j_follows_i && distance(p, edges_[i].to) <= kJoint) continue;
      if (i_follows_j && distance(p, edges_[i].from) <= kJoint) continue;
      const auto same = [&](const SelfContact& known) { return distance(known.at, p) <= 4 * kSamePoint; };
      if (std::any_of(found_.list.begin(), found_.list.end(), same)) continue;
      const std::optional<Meeting> meeting = judge(spot(i, p), spot(j, p));
      if (meeting) found_.list.push_back({i, j, p, *meeting});
    }
  }

  static double angle(Point v) { return std::atan2(v.y, v.x); }

  /// How two stretches of the chain meet at one point, from the order of their four branches around it.
  static std::optional<Meeting> judge(const Spot& a, const Spot& b) {
    double probe = kProbe;
    for (const auto* branch : {&a.in, &a.out, &b.in, &b.out}) {
      if (*branch) probe = std::min(probe, 0.3 * length(**branch));
    }
    const auto ahead = [&](const Spot& s) { return angle(point_at(*s.out, probe / length(*s.out)) - s.at); };
    const auto back = [&](const Spot& s) { return angle(point_at(*s.in, 1 - probe / length(*s.in)) - s.at); };
    // An open end that touches something is judged by whoever knows what the end stands on.
    if (!a.in || !a.out || !b.in || !b.out) return Meeting::crosses;
    const double from = ahead(a);
    const auto around = [&](double direction) {
      const double turned = std::fmod(direction - from + 4 * kPi, 2 * kPi);
      return turned > 2 * kPi - kAlong ? 0 : turned;
    };
    const double left = around(back(a));
    const double b_out = around(ahead(b));
    const double b_in = around(back(b));
    for (const double branch : {b_out, b_in}) {
      if (branch <= kAlong || std::abs(branch - left) <= kAlong) return Meeting::crosses;
    }
    if ((b_out < left) != (b_in < left)) return Meeting::crosses;
    return b_out < left ? Meeting::pinches_in : Meeting::pinches_out;
  }

  const std::vector<Edge>& edges_;
  bool closed_;
  std::size_t most_;
  std::vector<Box> boxes_;
  Contacts found_;
};

}  // namespace

std::vector<Point> common_points(const Edge& a, const Edge& b) {
  std::vector<Point> candidates;
  if (!a.is_arc() && !b.is_arc()) {
    cross_lines(a, b, candidates);
  } else if (a.is_arc() && b.is_arc()) {
    cross_circles(a, b, candidates);
  } else {
    cross_line_circle(a.is_arc() ? b : a, a.is_arc() ? a : b, candidates);
  }
  candidates.insert(candidates.end(), {a.from, a.to, b.from, b.to});
  std::vector<Point> points;
  for (const Point p : candidates) {
    if (!(distance(p, a) <= kSamePoint && distance(p, b) <= kSamePoint)) continue;
    const auto same = [&](Point known) { return distance(known, p) <= kSamePoint; };
    if (std::none_of(points.begin(), points.end(), same)) points.push_back(p);
  }
  return points;
}

Contacts find_contacts(const std::vector<Edge>& edges, bool closed, std::size_t most) {
  if (edges.empty()) return {};
  return Search(edges, closed, most).run();
}

}  // namespace arrisline
