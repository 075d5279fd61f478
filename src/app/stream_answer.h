// The answer to one record of `arrisline stream`.
#pragma once

#include <cstddef>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "app/stream_record.h"
#include "arrisline/plan.h"
#include "arrisline/read.h"
#include "arrisline/replay.h"

namespace arrisline {

/// Kits by their path, each read once as long as it is among the last few. For any number of threads.
class KitShelf {
 public:
  std::shared_ptr<const Reading<Kit>> at(const std::string& path);

 private:
  static constexpr std::size_t kMost = 64;

  std::mutex mutex_;
  std::map<std::string, std::shared_ptr<const Reading<Kit>>> kits_;
  std::deque<std::string> order_;  // the one taken longest ago first
};

struct Answering {
  const Kit* kit = nullptr;  // where the record names none; may be null
  KitShelf* shelf = nullptr;
  PlanOptions options;  // but for the unit, which is the kit's
  std::function<std::vector<Finding>(const Plan&, const ReplayOptions&)> judge;
};

struct Answer {
  std::string line;  // JSON with the end of the line
  bool error = false;
  std::string fault;  // for standard error: our own, and its plan is kept
};

/// Answers one line, the `number`-th of the input. Never throws.
Answer answer_line(std::string_view line, std::size_t number, const Answering& how);
/// The answer to a line that was not kept.
Answer answer_too_long(std::size_t number);

}  // namespace arrisline
