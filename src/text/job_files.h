// The files that a job names.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "arrisline/job.h"
#include "arrisline/read.h"

namespace arrisline {

/// Where a job's reader gets them from; the fuzzer gives it none of the disk's.
struct JobFiles {
  /// Nothing where the file is there, else what to say of it ("; did you mean …", or nothing more).
  std::function<std::optional<std::string>(const std::string& name)> missing;
  std::function<Reading<Section>(const std::string& name)> profile;
  std::function<Reading<Kit>(const std::string& name)> kit;
};

/// The folder that a file is in, empty where the path names none.
std::string folder_of(const std::string& path);

/// Those beside the job, in `folder`; an empty one is the current folder.
JobFiles files_in(const std::string& folder);

Reading<Job> read_job(std::string_view text, const std::string& file, const JobFiles& files);

}  // namespace arrisline
