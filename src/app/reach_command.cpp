// `arrisline reach`: what a kit makes on a stock. Shown by tests/cli/reach*.golden and tests/reach.
#include <charconv>
#include <filesystem>
#include <system_error>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/output.h"
#include "app/same_file.h"
#include "app/verify.h"
#include "arrisline/reach.h"
#include "arrisline/report.h"
#include "report/reach_list.h"
#include "sheet/small_picture.h"
#include "text/load.h"
#include "wording/words.h"

namespace arrisline {
namespace {

constexpr std::size_t kMostAdded = 26;  // planes: as many as are tried

/// The number of planes to add; nothing, with a message, where it is no such number; 0 where it is absent.
std::optional<std::size_t> number_option(const std::optional<std::string>& text, std::string& messages) {
  if (!text) return 0;
  std::size_t value = 0;
  const char* end = text->data() + text->size();
  const std::from_chars_result read = std::from_chars(text->data(), end, value);
  if (read.ec == std::errc{} && read.ptr == end && value > 0 && value <= kMostAdded) return value;
  messages +=
      usage_error("reach", "--by-adding is a number of planes from 1 to " + std::to_string(kMostAdded) +
                               ", such as 2, not " + arrisline::quoted(*text));
  return std::nullopt;
}

bool folder_option(const std::optional<std::string>& folder, std::string& messages) {
  if (!folder) return true;
  std::error_code code;
  std::filesystem::create_directories(*folder, code);
  if (!code && std::filesystem::is_directory(*folder, code)) return true;
  messages +=
      usage_error("reach", "--write " + arrisline::quoted(*folder) + " cannot be a folder: " +
                               (code ? system_words(code.value()) : "it is a file") + "; name another place");
  return false;
}

/// Whether the file is there and is not what would be written.
bool is_another(const Outcome::File& file) {
  return is_there(file.path) && load(file.path).text != file.text;
}

/// Whether none of the files is there with another text, nor the one that the answer goes to; what would be
/// lost adds to `messages`.
bool nothing_lost(const std::vector<Outcome::File>& files, const std::optional<std::string>& output,
                  std::string& messages) {
  std::vector<std::string> others;
  for (const Outcome::File& file : files) {
    if (output && same_file(*output, file.path)) {
      messages += usage_error("reach", "--output " + arrisline::quoted(*output) +
                                           ": a file of --write has this name; name another");
      return false;
    }
    if (is_another(file)) others.push_back(file.path);
  }
  if (others.empty()) return true;
  const std::string more = others.size() > 1 ? " and " + std::to_string(others.size() - 1) + " more" : "";
  messages += usage_error("reach", "--write would write over '" + others.front() + "'" + more +
                                       ", whose text is another; name another folder, or move " +
                                       (others.size() > 1 ? "them" : "it"));
  return false;
}

}  // namespace

Outcome reach_command(const ReachArguments& arguments) {
  Outcome outcome;
  const std::optional<Kit> kit = take(read_kit_file(arguments.kit), outcome.err);
  const std::optional<StockSize> stock =
      stock_option(arguments.stock, kit ? kit->unit : Unit::inch, "reach", outcome.err);
  const std::optional<double> limit = limit_option(arguments.limit, "reach", outcome.err);
  const std::optional<std::size_t> adding = number_option(arguments.by_adding, outcome.err);
  const bool writable = output_option(arguments.output, "reach", outcome.err) &&
                        kept_apart({arguments.kit}, {{"--output", arguments.output}}, "reach", outcome.err);
  if (!kit || !stock || !limit || !adding || !writable || !folder_option(arguments.write, outcome.err)) {
    outcome.code = kBadInput;
    return outcome;
  }
  ReachOptions options;
  if (arguments.limit) options.limit = *limit;
  options.interrupt = arguments.outside.interrupt;
  options.tried = arguments.tried;
  const std::vector<Made> made = within_reach(*kit, stock->width, stock->thickness, options);
  for (const Made& one : made) {
    const PlanOptions usual;
    const std::vector<Finding> findings = judge(one.plan, {usual.tolerance, usual.scrape});
    if (!findings.empty()) return refused(one.plan, findings, ".");
  }
  std::vector<Addition> planes;
  if (*adding > 0) planes = additions(*kit, stock->width, stock->thickness, *adding, options);

  const ReportOptions report{kit->unit, false, 0, 0};
  if (arguments.json) {
    outcome.out = reach_json(made, *adding > 0 ? &planes : nullptr);
  } else {
    std::vector<std::vector<std::string>> pictures;
    for (const Made& one : made)
      pictures.push_back(small_picture(one.moulding.section, Waste::left_out, arguments.ascii));
    outcome.out = reach_list(made, pictures, *kit, stock->width, stock->thickness, report);
    if (*adding > 0) outcome.out += additions_list(planes, report);
  }
  if (arguments.write) {
    for (const Made& one : made)
      outcome.sheets.push_back(
          {*arguments.write + "/" + one.moulding.file + ".profile", one.moulding.profile});
    if (!nothing_lost(outcome.sheets, arguments.output, outcome.err)) return {kBadInput, "", outcome.err};
  }
  outcome.file = arguments.output;
  outcome.code = code_after(arguments.outside, made.empty() && planes.empty() ? kNo : kDone);
  return outcome;
}

}  // namespace arrisline
