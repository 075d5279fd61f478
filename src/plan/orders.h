// The order of the cuts of a plan: the one that costs least, and what any order must cost.
#pragma once

#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "plan/changes.h"
#include "plan/sequence.h"
#include "plan/working.h"

namespace arrisline {

/// Which orders of the cuts are looked at. Flats come before all curves in the first kind, but for those that
/// may come late.
enum class OrderOf { flats_first, any };

/// What some drafts must cost whatever their order. The drafts of one arc are taken together, every other by
/// itself, each on the wood that all the rest leave that may come before it: a cut never finds less than
/// that.
class LeastCost {
 public:
  /// Of all the cuts of a plan, in orders of the kind given. What each has to work is not yet told apart: the
  /// sum is less than it may be, and quickly had. `known` must outlive it.
  LeastCost(KnownTurns& known, const std::vector<Draft>& drafts, OrderOf orders);

  /// Of some of the cuts of a plan in orders of the kind given: cuts still to come may take from what these
  /// have to take, and from the walls they make.
  LeastCost(const Problem& problem, const std::vector<Draft>& drafts, OrderOf orders);

  /// Tells apart what each has to work, the curves before the flats: those that were not told yet.
  /// REQUIRES: all the cuts of a plan were given.
  void work_out_curves();
  void work_out();

  /// Of the same and one flat more, which goes last among the drafts, all told apart. Nothing where the flat
  /// takes next to nothing of what the others leave, or where all cost `cutoff` or more. REQUIRES:
  /// work_out_curves() was called.
  std::optional<LeastCost> with(const Draft& extra, double cutoff);

  /// Of all drafts, and the weight of the planes they use.
  double total() const { return total_ + planes_; }
  /// The weight of the planes they use, the same for every order.
  double planes() const { return planes_; }

  /// Of the drafts whose bits are not in `done`, after `previous` (null at the start).
  double remaining(unsigned long long done, const Step* previous) const;

  /// The curves wait for the draft, whose place this is: so for a flat where flats come first.
  bool comes_first(std::size_t i) const;
  /// Where flats come first: a curve takes of what a late flat reaches.
  bool curves_meet_late_flats() const;

  const std::vector<Draft>& drafts() const { return drafts_; }
  OrderOf orders() const { return orders_; }
  /// What the flats of the plan leave, and what all its cuts do. REQUIRES: all the cuts of a plan were given.
  const Wood& flats_left() const { return *flats_left_; }
  const Wood& finished() const { return *finished_; }

 private:
  struct Share {
    double fixed = 0;                // cut, and the lines of a slanted flat
    double worked = 0;               // strokes and wear
    std::vector<GaugeLine> figures;  // that it needs in any order
    LieSet may_lie;                  // ways in which the blank may lie for its poses alone
    std::size_t need = 0;            // its place among the needs
    std::optional<double>
        by_curves;  // of a late flat where flats come first: mm² that curves may take before
    std::size_t group = 0;
    SharedTurns turns;
    std::vector<MaybeFigure> maybe;  // of a slanted flat, in their order
    bool shares = false;             // it may find one of them set
  };
  /// Drafts of one arc, or one other draft.
  struct Group {
    unsigned long long members = 0;
    bool flat = false;
    bool first = false;  // flats that come before all curves
    bool told = false;   // what they work, on the wood that the others leave
    Worked worked;       // all of them together; while it is not told, no more than that
    std::shared_ptr<const Wood>
        others;  // what the rest of the drafts leave that may come before; lazily made
  };
  bool is_flat(const Draft& draft) const { return problem_.plane(draft.plane).is_flat(); }
  bool may_come_late(std::size_t i) const {
    return arrisline::may_come_late(problem_, drafts_[i], shares_[i].may_lie);
  }
  /// A late flat of which the curves take nothing, whenever it comes.
  bool is_clear_of_curves(std::size_t i) const {
    constexpr double kNone = 1e-6;  // mm²
    return shares_[i].by_curves && *shares_[i].by_curves < kNone;
  }
  bool is_slanted(std::size_t i) const {
    return is_flat(drafts_[i]) && !is_square(drafts_[i].poses.front().tilt);
  }
  void group(const Draft& draft);
  void add_maybe_figures(std::size_t i);
  const Wood& others(std::size_t group);
  void put_last(const Draft& extra);
  void share_with_curves();
  double shared_work() const;
  void sum_up();
  std::vector<SharedTurns> turns_of(const Group& group) const;
  void share_work(std::size_t group, std::optional<double> taken = std::nullopt);
  void share_apart(std::size_t group);
  void share_figures();
  bool may_find_one_set(std::size_t i) const;
  double weigh(std::span<const Worked> worked, double taken_in_all) const;

  const Problem& problem_;
  KnownTurns* known_ = nullptr;  // where all the cuts of a plan were given
  std::vector<Draft> drafts_;
  OrderOf orders_ = OrderOf::any;
  std::vector<Share> shares_;
  std::vector<Group> groups_;
  std::vector<int> arcs_;    // of the groups, −1 for a draft of no arc
  std::vector<Need> needs_;  // of the drafts, each once
  std::shared_ptr<const Wood> flats_left_;
  std::shared_ptr<const Wood> finished_;
  double taken_by_flats_ = 0;   // mm²
  double taken_by_curves_ = 0;  // after the flats, in any case
  double total_ = 0;
  double planes_ = 0;
};

/// The drafts in the order in which those that cost the same are to come: flats before curves, plane by
/// plane, upright before leaning, from the back wall outward.
std::vector<Draft> in_order(std::vector<Draft> drafts);

/// The order of least effort among the orders that `least` is for; nothing where none passes the rules, or
/// where every one costs `cutoff` or more. `stop` is asked for each state looked at whether to leave off; the
/// answer is then nothing as well. At most 60 drafts.
std::optional<Sequence> best_order(const Problem& problem, const LeastCost& least,
                                   double cutoff = std::numeric_limits<double>::infinity(),
                                   const std::function<bool()>& stop = {});

/// An order of little effort, soon found: of all that come to the same number of cuts only the likeliest few
/// are followed. Nothing where these lead nowhere, otherwise as best_order().
std::optional<Sequence> good_order(const Problem& problem, const LeastCost& least,
                                   double cutoff = std::numeric_limits<double>::infinity(),
                                   const std::function<bool()>& stop = {});

}  // namespace arrisline
