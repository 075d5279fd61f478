// A planned job as JSON, member by member as docs/job-json.md lists them. Shown by
// tests/report/job_sheet_test.cpp.
#include <algorithm>

#include "arrisline/job_report.h"
#include "report/json_text.h"

namespace arrisline {
namespace {

Json stock_json(const Stock& stock) {
  Json out;
  out["species"] = stock.species;
  out["thickness"] = stock.thickness;
  out["width"] = stock.width;
  out["length"] = stock.length;
  out["to_buy"] = stock.to_buy;
  if (stock.line > 0) out["line"] = stock.line;
  return out;
}

Json names_json(const Job& job, const Run& run) {
  Json out = Json::array();
  for (const std::size_t i : run.moulds) out.push_back(job.moulds[i].name);
  return out;
}

Json stops_json(const std::vector<StopSetting>& settings, const Plan& plan) {
  Json out = Json::array();
  for (const StopSetting& setting : settings) {
    Json stops = Json::array();
    for (const Stop& stop : setting.stops)
      stops.push_back(
          Json{{"at", stop.at}, {"height", stop.height}, {"clear", stop.clear}, {"holds", stop.holds}});
    Json one;
    one["cuts"] = Json::array({plan.cuts[setting.first].number, plan.cuts[setting.last].number});
    one["held"] = setting.held;
    one["stops"] = std::move(stops);
    out.push_back(std::move(one));
  }
  return out;
}

Json blank_json(const Job& job, const JobPlan& plan, const BlankWork& blank) {
  Json cuts = Json::array();
  Json strips = Json::array();
  for (std::size_t i = 0; i < blank.strips.size(); ++i) {
    const RipStep& step = blank.strips[i];
    const Run& run = plan.runs[step.run];
    for (const std::size_t piece : step.pieces) {
      Json cut;
      if (piece == kSparePiece) {
        cut["spare_for"] = job.moulds[run.moulds.front()].name;
        cut["length"] = job.spare->length;
      } else {
        cut["mould"] = job.moulds[piece].name;
        cut["length"] = job.moulds[piece].length;
      }
      cut["strip"] = i + 1;
      cuts.push_back(std::move(cut));
    }
    Json strip;
    strip["moulds"] = names_json(job, run);
    strip["width"] = job.moulds[run.moulds.front()].width;
    strip["blank_before"] = step.width_before;
    strip["blank_after"] = step.width_after;
    strip["ripped"] = step.ripped;
    strip["ripped_first"] = run.ripped_first;
    strip["left_over"] = step.left_over;
    if (!step.stops.empty()) strip["stops"] = stops_json(step.stops, run.plan);
    strips.push_back(std::move(strip));
  }
  Json out;
  out["stock"] = stock_json(job.stocks[blank.stock]);
  if (blank.missing) out["missing"] = true;
  out["cuts"] = std::move(cuts);
  out["strips"] = std::move(strips);
  return out;
}

Json mitres_json(const Job& job, const JobPlan& plan) {
  Json out = Json::array();
  for (const Mitre& mitre : plan.mitres) {
    const Mould& mould = job.moulds[mitre.mould];
    out.push_back(Json{{"mould", mould.name},
                       {"end", mitre.left ? "left" : "right"},
                       {"inside", mould.inside},
                       {"corner", mitre.corner},
                       {"spring", mitre.spring},
                       {"mitre", mitre.mitre},
                       {"bevel", mitre.bevel},
                       {"runs_back", mitre.runs_back},
                       {"short_point", mitre.short_point}});
  }
  return out;
}

Json holding_json(const Job& job, const JobPlan& plan) {
  Json out = Json::array();
  for (const Run& run : plan.runs) {
    if (!run.plan.feasible) continue;
    Json one;
    one["moulds"] = names_json(job, run);
    if (run.narrowest) one["narrowest"] = *run.narrowest;
    out.push_back(std::move(one));
  }
  return out;
}

/// Each cut once for every moulding that it makes.
Json order_json(const Job& job, const JobPlan& plan) {
  Json out = Json::array();
  for (const WorkStep step : plan.order.steps) {
    const Run& run = plan.runs[step.run];
    const Cut& cut = run.plan.cuts[step.cut];
    for (const std::size_t i : run.moulds)
      out.push_back(Json{{"plane", cut.plane.label}, {"mould", job.moulds[i].name}, {"cut", cut.number}});
  }
  return out;
}

Json short_json(const Job& job, const JobPlan& plan) {
  Json out = Json::array();
  for (const Shortage& shortage : plan.shortages) {
    Json one;
    switch (shortage.kind) {
      case Shortage::Kind::planes:
        one["kind"] = "planes";
        break;
      case Shortage::Kind::blanks:
        one["kind"] = "blanks";
        break;
      case Shortage::Kind::holding:
        one["kind"] = "holding";
        break;
      case Shortage::Kind::too_narrow:
        one["kind"] = "holding";
        one["hold"] = job.ripping.hold;
        break;
      case Shortage::Kind::undecided:
        one["kind"] = "undecided";
        break;
    }
    if (shortage.run) {
      one["moulds"] = names_json(job, plan.runs[*shortage.run]);
      const Json whole = plan_as_json(plan.runs[*shortage.run].plan);
      if (whole.contains("reasons")) one["reasons"] = whole["reasons"];
    }
    if (shortage.stock) {
      one["stock"] = stock_json(job.stocks[*shortage.stock]);
      one["count"] = shortage.count;
    }
    out.push_back(std::move(one));
  }
  return out;
}

Json buy_json(const Job& job, const JobPlan& plan) {
  Json out = Json::array();
  for (std::size_t i = 0; i < plan.buying.planes.size(); ++i) {
    Json moulds = Json::array();
    for (const std::size_t r : plan.buying.unlocks[i])
      for (const std::size_t mould : plan.runs[r].moulds) moulds.push_back(job.moulds[mould].name);
    out.push_back(Json{{"plane", plane_json(plan.buying.planes[i])}, {"unlocks", std::move(moulds)}});
  }
  for (std::size_t s = 0; s < job.stocks.size(); ++s) {
    const bool bought = job.stocks[s].to_buy;
    const auto used = std::count_if(plan.blanks.begin(), plan.blanks.end(),
                                    [s](const BlankWork& blank) { return blank.stock == s; });
    const auto count = bought ? static_cast<int>(used) : plan.cutting.missing[s];
    if (count > 0) out.push_back(Json{{"stock", stock_json(job.stocks[s])}, {"count", count}});
  }
  return out;
}

Json movement_json(const Job& job, const JobPlan& plan) {
  Json out = Json::array();
  for (const Movement& movement : plan.movements)
    out.push_back(Json{{"mould", job.moulds[movement.mould].name},
                       {"species", movement.species},
                       {"across", movement.across},
                       {"radial", movement.radial},
                       {"tangential", movement.tangential}});
  return out;
}

}  // namespace

std::string job_to_json(const Job& job, const JobPlan& plan) {
  ObjectText out;
  out.add("format", "arrisline-job");
  out.add("version", 1);
  out.add("units", "mm");
  out.add("job", job.name);
  out.add("kit", job.kit.name);
  out.open("plans");
  for (std::size_t i = 0; i < job.moulds.size(); ++i) {
    const auto run = std::find_if(plan.runs.begin(), plan.runs.end(), [i](const Run& one) {
      return std::find(one.moulds.begin(), one.moulds.end(), i) != one.moulds.end();
    });
    out.add(job.moulds[i].name, plan_as_json(run->plan, {&job.kit, nullptr}));
  }
  out.close();
  Json blanks = Json::array();
  for (const BlankWork& blank : plan.blanks) blanks.push_back(blank_json(job, plan, blank));
  out.add("blanks", blanks);
  out.add("blanks_needed", plan.blanks.size());
  out.add("optimal", plan.cutting.optimal);
  out.add("bound", plan.cutting.bound);
  out.add("mitres", mitres_json(job, plan));
  if (job.kit.board) out.add("holding", holding_json(job, plan));
  out.add("order", order_json(job, plan));
  out.add("plane_changes", plan.order.plane_changes);
  out.add("plane_changes_one_by_one", plan.order.plane_changes_one_by_one);
  out.add("settings", plan.order.settings);
  out.add("settings_one_by_one", plan.order.settings_one_by_one);
  out.add("fewest_changes", plan.order.fewest);
  out.add("estimate", Json{{"strokes", plan.estimate.strokes},
                           {"minutes", plan.estimate.minutes},
                           {"metres", plan.estimate.metres},
                           {"shavings_litres", plan.estimate.shavings_litres}});
  out.add("movement", movement_json(job, plan));
  out.add("short", short_json(job, plan));
  out.add("buy", buy_json(job, plan));
  return out.take();
}

}  // namespace arrisline
