// Shown by tests/cli/reach*.golden.
#include "report/reach_list.h"

#include <algorithm>
#include <cstddef>

#include "report/cut_words.h"
#include "report/json_text.h"
#include "report/page.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

constexpr std::size_t kBesidePicture = 28;  // column of the words

std::vector<std::string> planes_of(const Plan& plan) {
  std::vector<std::string> out;
  for (const Cut& cut : plan.cuts) {
    const std::string label = shorten(cut.plane.label, 40);
    if (std::find(out.begin(), out.end(), label) == out.end()) out.push_back(label);
  }
  return out;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) out += (i > 0 ? ", " : "") + words[i];
  return out;
}

/// Words wrapped to what is right of the picture.
std::vector<std::string> wrapped(const std::string& text, std::size_t room) {
  std::vector<std::string> out = {""};
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    if (!out.back().empty() && columns(out.back()) + 1 + columns(word) > room) out.emplace_back();
    out.back() += (out.back().empty() ? "" : " ") + word;
    at = end + 1;
  }
  return out;
}

std::string none_words(const Kit& kit) {
  const bool curved =
      std::any_of(kit.planes.begin(), kit.planes.end(), [](const Plane& plane) { return plane.is_curved(); });
  return curved ? "None of those tried: no hollow or round of the kit finds a moulding on this stock."
                : "None: those tried are made by hollows and rounds, and the kit has neither.";
}

/// What is not among those tried.
std::string shaped_words(const Kit& kit) {
  std::vector<std::string> names;
  for (const Plane& plane : kit.planes)
    if (plane.kind == PlaneKind::shaped) names.push_back(shorten(plane.label, 40));
  if (names.empty()) return "";
  Page page;
  page.line(2, "Shaped planes are not tried; each sticks the moulding of its sole: " + joined(names) + ".");
  return in_columns(page.take(), false);
}

}  // namespace

std::string reach_list(const std::vector<Made>& made, const std::vector<std::vector<std::string>>& pictures,
                       const Kit& kit, double width, double thickness, const ReportOptions& options) {
  std::string out = named("Mouldings within reach of kit", kit.name) + "\n";
  out += "  Stock: " + exact(width, options.unit) + " wide, " + exact(thickness, options.unit) + " thick.\n";
  if (made.empty()) out += "  " + none_words(kit) + "\n";
  if (const std::string shaped = shaped_words(kit); !shaped.empty()) out += shaped;
  for (std::size_t i = 0; i < made.size(); ++i) {
    const Made& one = made[i];
    std::vector<std::string> words = wrapped(one.moulding.name, kPageColumns - kBesidePicture);
    const std::string size = about(one.moulding.across, options.unit) + " across, " +
                             about(one.moulding.down, options.unit) + " down.";
    const std::string cuts =
        counted(one.plan.cuts.size(), "cut", "cuts") + " with " + joined(planes_of(one.plan)) + ".";
    for (const std::string& text : {size, cuts})
      for (std::string& line : wrapped(text, kPageColumns - kBesidePicture)) words.push_back(std::move(line));
    out += "\n";
    for (std::size_t k = 0; k < std::max(words.size(), pictures[i].size()); ++k) {
      std::string line = "  " + (k < pictures[i].size() ? pictures[i][k] : "");
      if (k < words.size()) {
        line.append(kBesidePicture - std::min(kBesidePicture, columns(line)), ' ');
        line += words[k];
      }
      out += line + "\n";
    }
  }
  if (!made.empty())
    out +=
        "\n  " + counted(made.size(), "moulding", "mouldings") + ". Cautions and each cut: arrisline plan.\n";
  return out;
}

std::string additions_list(const std::vector<Addition>& additions, const ReportOptions& options) {
  Page page;
  page.heading("What would add most, one plane after the other");
  std::size_t number = 0;
  for (std::size_t i = 0; i < additions.size(); ++i) {
    // A pair that adds only together stands in one line.
    std::string name = additions[i].plane.label;
    while (additions[i].gained.empty() && i + 1 < additions.size())
      name += " and " + additions[++i].plane.label;
    const std::vector<Moulding>& gained = additions[i].gained;
    std::string text = name + ": " + counted(gained.size(), "moulding", "mouldings") + " more, as ";
    std::vector<std::string> some;
    for (std::size_t k = 0; k < gained.size() && k < 3; ++k) some.push_back(gained[k].name);
    page.item(2, std::to_string(++number) + ". ", text + joined(some) + ".");
  }
  if (additions.empty()) page.line(2, "No plane of a usual number adds any moulding on this stock.");
  return "\n" + in_columns(page.take(), options.colour);
}

std::string reach_json(const std::vector<Made>& made, const std::vector<Addition>* planes) {
  Json out = Json::object();
  out["format"] = "arrisline-reach";
  out["version"] = 1;
  out["units"] = "mm";
  out["mouldings"] = Json::array();
  for (const Made& one : made) {
    out["mouldings"].push_back(Json{{"name", one.moulding.name},
                                    {"across", one.moulding.across},
                                    {"down", one.moulding.down},
                                    {"cuts", one.plan.cuts.size()},
                                    {"planes", planes_of(one.plan)},
                                    {"profile", one.moulding.profile}});
  }
  if (planes != nullptr) {
    out["add"] = Json::array();
    for (const Addition& addition : *planes) {
      Json names = Json::array();
      for (const Moulding& moulding : addition.gained) names.push_back(moulding.name);
      Json one{{"kind", word(addition.plane.kind)},
               {"number", addition.plane.number.value_or(0)},
               {"radius", addition.plane.radius},
               {"width", addition.plane.width},
               {"adds", names}};
      // Of a pair that adds only together, the second has what both add.
      if (names.empty()) one["with_next"] = true;
      out["add"].push_back(std::move(one));
    }
  }
  return json_text(out);
}

}  // namespace arrisline
