// From a record to its plan, or to why there is none. Shown by tests/app/stream_test.cpp.
#include "app/stream_answer.h"

#include <algorithm>
#include <exception>

#include "app/verify.h"
#include "arrisline/limits.h"
#include "report/json_text.h"

namespace arrisline {
namespace {

using ReadKit = std::shared_ptr<const Reading<Kit>>;

Json as_json(const std::vector<Diagnostic>& diagnostics, Severity severity) {
  Json out = Json::array();
  for (const Diagnostic& one : diagnostics) {
    if (one.severity != severity) continue;
    out.push_back({{"file", one.file}, {"line", one.line}, {"column", one.column}, {"message", one.message}});
  }
  return out;
}

Answer error_record(const std::string& id, std::size_t number, const std::string& message,
                    const std::vector<Diagnostic>& diagnostics = {}) {
  Json error = {{"message", message}, {"line", number}};
  error["diagnostics"] = as_json(diagnostics, Severity::error);
  return {json_line({{"id", Json::parse(id)}, {"error", std::move(error)}}), true, ""};
}

Answer our_fault(const std::string& id, std::size_t number, const std::string& message,
                 const std::string& told) {
  Answer out = error_record(id, number, "a fault of ours: " + message);
  out.fault = told;
  return out;
}

Reading<Section> read_profile_of(const TextOrPath& from) {
  return from.is_text ? read_profile(from.words, "profile") : read_profile_file(from.words);
}

ReadKit read_kit_of(const TextOrPath& from, KitShelf& shelf) {
  return from.is_text ? std::make_shared<const Reading<Kit>>(read_kit(from.words, "kit"))
                      : shelf.at(from.words);
}

Answer answer_record(const StreamRecord& record, std::size_t number, const Answering& how) {
  const Reading<Section> profile = read_profile_of(record.profile);
  const ReadKit own = record.kit ? read_kit_of(*record.kit, *how.shelf) : nullptr;
  const Kit* kit = own ? (own->value ? &*own->value : nullptr) : how.kit;

  std::vector<Diagnostic> told = profile.diagnostics;
  if (own) told.insert(told.end(), own->diagnostics.begin(), own->diagnostics.end());
  if (!profile.value && own && !kit)
    return error_record(record.id, number,
                        "neither the profile nor the kit can be read; mend what 'diagnostics' names", told);
  if (!profile.value)
    return error_record(record.id, number, "the profile cannot be read; mend what 'diagnostics' names", told);
  if (own && !kit)
    return error_record(record.id, number, "the kit cannot be read; mend what 'diagnostics' names", told);
  if (!kit)
    return error_record(record.id, number, "\"kit\" is missing, and there is no --kit; give one of them");

  PlanOptions options = from_now(how.options);
  options.unit = kit->unit;
  Plan plan = make_plan(*profile.value, *kit, options);
  find_remedies(plan, *kit, options);
  const std::vector<Finding> findings = how.judge(plan, {options.tolerance, options.scrape});
  if (!findings.empty())
    return our_fault(record.id, number, "the plan made does not pass its own replay",
                     refused(plan, findings, ".").err);
  Json out = {{"id", Json::parse(record.id)}, {"plan", plan_as_json(plan)}};
  Json warnings = as_json(told, Severity::warning);
  if (!warnings.empty()) out["warnings"] = std::move(warnings);
  return {json_line(out), false, ""};
}

}  // namespace

std::shared_ptr<const Reading<Kit>> KitShelf::at(const std::string& path) {
  const std::lock_guard<std::mutex> lock(mutex_);
  const auto taken = std::find(order_.begin(), order_.end(), path);
  if (taken != order_.end()) {
    order_.erase(taken);
  } else {
    if (order_.size() == kMost) {
      kits_.erase(order_.front());
      order_.pop_front();
    }
    kits_[path] = std::make_shared<const Reading<Kit>>(read_kit_file(path));
  }
  order_.push_back(path);
  return kits_.at(path);
}

Answer answer_line(std::string_view line, std::size_t number, const Answering& how) {
  StreamRecord record;
  try {
    record = read_record(line);
    if (!record.fault.empty()) return error_record(record.id, number, record.fault);
    return answer_record(record, number, how);
  } catch (const std::exception& error) {
    return our_fault(record.id, number, error.what(),
                     "arrisline: fault: line " + std::to_string(number) + ": " + error.what() + "\n");
  }
}

Answer answer_too_long(std::size_t number) {
  return error_record("null", number,
                      "longer than " + std::to_string(kMaxStreamLine) +
                          " bytes; name files instead of their texts" + to_raise("kMaxStreamLine"));
}

}  // namespace arrisline
