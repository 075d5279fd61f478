// Branch and bound over the candidates that docs/how-it-plans.md lists.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "plan/compose.h"
#include "plan/covers.h"
#include "plan/orders.h"
#include "plan/patience.h"
#include "plan/rails.h"
#include "plan/sets.h"

namespace arrisline {

/// Whether the one plan is better than the other: model.md, what makes it so.
bool better(const Problem& problem, const Sequence& a, const Sequence& b);

/// Cuts from the pool that one plan may need to leave little enough.
inline constexpr int kMostThinning = 3;

/// Flat cuts that may take waste from before the curved planes.
struct RoughingPool {
  /// Chamfers on beads, corners in coves, grooves where a cove leaves the corners no room, and the flats that
  /// stand against corners of the target.
  std::vector<Draft> cuts;
  Keys keys;  // of the cuts
  /// Two grooves each, as far out on either side of a cove, as places in `cuts`.
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  /// In some cove a plough has room where no rebate plane has.
  bool trough = false;
};
RoughingPool roughing_pool(const Problem& problem, const std::vector<Draft>& flats);

using WoodKey = std::array<long long, 4>;

/// The search with some drafts given (a shaped plane's cut, or none). It keeps what it finds in `out`, so
/// that several searches share one best plan.
class Search {
 public:
  /// `apart`: cuts that may make a plan, looked at before all others; or none.
  Search(const Problem& problem, const std::vector<Draft>& flats, std::vector<Draft> given,
         std::vector<Draft> apart, Patience& patience, Composition& out);

  void run();

  /// Least cost of what was left unsearched; infinity where nothing was.
  double unsearched() const { return unsearched_; }

 private:
  using Way = std::vector<Draft>;
  using Ways = std::vector<Way>;  // of one arc
  /// The cuts chosen so far, flats first in what they finish, and the wood that the flats leave.
  struct Choice {
    explicit Choice(Wood uncut) : wood(std::move(uncut)) {}
    std::vector<Draft> flats;
    std::vector<Draft> curved;
    Wood wood;
    int thinning = 0;  // cuts of the pool put in because too much was left
    Thickest left = {std::numeric_limits<double>::infinity(), {}};  // before the last of these
  };

  /// All the cuts of a plan, put by to be tried with one more.
  struct Pending {
    double least;  // that they must cost
    double known;  // the least that was known to all that come from them
    Thickest left;
    std::vector<Draft> drafts;
    std::shared_ptr<LeastCost> worked;  // null where there is no room to keep it
  };

  /// A choice that leaves so much that it would have to be scraped, put by to be tried with cuts more.
  struct Scraped {
    double known;  // the least that was known to all that come from it
    Choice choice;
    Wood finished;
    Thickest left;
  };

  /// All the cuts of a plan whose best order takes long to find.
  struct Unordered {
    double least;  // that they must cost
    double left;   // mm
    std::vector<Draft> drafts;
  };

  void look(OrderOf orders);
  bool leaves_too_much_in_any_case() const;
  void keep_likely_planes();
  void work_out_shavings();
  void covers();
  void try_cover(const Covers::Cover& cover, int strays);
  double least_of_arcs() const;
  double least_of_arcs(std::size_t done, std::set<int> planes) const;
  void arcs(std::size_t k, const Choice& choice, int strays);
  std::vector<Setup> setups(const Way& way, const Choice& choice);
  std::vector<Setup> on_held_back(const Draft& first, const std::vector<Draft>& flats);
  const std::vector<Setup>& rails_for(const Draft& draft, const Wood& wood);
  double estimate(const Way& way, const Setup& setup, const Wood& wood) const;
  double least_work(const Choice& choice);
  double least_of(const Choice& choice, std::size_t arcs_done);
  void whole(const Choice& choice, double least_known);
  void try_pool();
  void try_with_one_more(LeastCost least, const Thickest& before);
  void try_with_more();
  bool may_go(const Draft& draft) const;
  bool try_without_one();
  void thin(const Choice& choice, const Wood& finished, const Thickest& left);
  void thin_scraped();
  bool rides_cut_off(const LeastCost& least, double cutoff);
  bool finds_flats_left(const Draft& draft, const LeastCost& least);
  double may_leave(const LeastCost& least, double left) const;
  void judge(const LeastCost& least, double left, bool to_the_end = false);
  bool try_drafts(std::vector<Draft> drafts);
  void try_first(const std::vector<Draft>& drafts);
  double limit_for(double left, double most) const;
  void take_in(std::optional<Sequence> sequence, double left, double most, const std::vector<Draft>& drafts);
  void improve();
  void order_unordered();
  void put_by_too_thick(Unordered one);
  void order_too_thick();
  double worth(double left = 0) const;
  bool cut_off(double least, double left = 0) const;
  bool takes(const Draft& draft, Point at) const;
  Thickest sure_to_stay(const std::vector<Draft>& drafts, const Wood& finished, const Thickest& left) const;
  bool leave_off(double least);

  const Problem& problem_;
  KnownTurns known_;
  const std::vector<Draft>& flat_drafts_;
  const std::vector<Draft> given_;
  Patience& patience_;
  Composition& out_;
  std::vector<Ways> arcs_;
  bool possible_ = true;
  RoughingPool pool_;
  const std::vector<Draft> apart_;  // a plan put together of those of the parts
  std::vector<Draft> best_drafts_;  // of the best plan, where this search found it
  double with_more_ =
      std::numeric_limits<double>::infinity();  // effort of the last best that was tried with more
  std::vector<Pending> pending_;
  std::vector<Scraped> scraped_;
  std::vector<Unordered> unordered_;
  std::vector<Unordered> too_thick_;  // while there is no plan
  double taken_by_given_ = 0;         // mm²
  double cheapest_shaving_ = 0;       // least cost of a mm² taken by a flat
  double least_waste_ = 0;            // least cost of all that must be taken beside what is given
  std::map<std::pair<std::vector<long long>, WoodKey>, std::vector<Setup>> rails_;
  std::set<std::vector<long long>> seen_;
  OrderOf orders_ = OrderOf::flats_first;
  bool forward_ = true;
  bool trenches_ = false;       // ploughs lay rails groove beside groove
  bool one_by_one_ = false;     // each arc is finished before rails are laid for the next
  bool chosen_ = false;         // some cover had rails for every arc
  bool little_enough_ = false;  // some choice leaves no more than may be left
  double unsearched_ = std::numeric_limits<double>::infinity();
};

}  // namespace arrisline
