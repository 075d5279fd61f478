// Jobs read from text, with the files they name held in memory.
#pragma once

#include <map>
#include <string>

#include "text/job_files.h"
#include "text/reading.h"

namespace arrisline::testing {

/// A shelf edge on 3/4 in stock that reaches 3/8 in, a flute in the back edge, a profile with a mistake, and
/// a kit.
inline const std::map<std::string, std::string> kJobFiles = {
    {"shelf.profile", "profile shelf edge\nstock 9 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n"},
    {"back.profile", "stock 2 wide, 3/4 thick\nstart back 1/4\nfillet out 2\n"},
    {"bad.profile", "stock 2 wide, 3/4 thick\nstart face 3/8\nbaed out 3/8 down 3/8\n"},
    {"sixes.kit", "kit sixes\nrebate 3/4\nhollow 6\nround 6\n"},
    {"bad.kit", "holow 6\n"}};

inline JobFiles job_files() {
  JobFiles out;
  out.missing = [](const std::string& name) -> std::optional<std::string> {
    if (kJobFiles.count(name) > 0) return std::nullopt;
    return "";
  };
  out.profile = [](const std::string& name) { return read_profile(kJobFiles.at(name), name); };
  out.kit = [](const std::string& name) { return read_kit(kJobFiles.at(name), name); };
  return out;
}

inline Reading<Job> job_of(const std::string& text) {
  return read_job(text, "test.job", job_files());
}

inline std::string job_messages(const std::string& text) {
  return messages(job_of(text));
}

}  // namespace arrisline::testing
