// Any bytes as a job: read or refused with a reason, and a job that was read keeps its promises. The files
// that it names are none of the disk's.
#include <algorithm>

#include "fuzz/sections.h"
#include "text/job_files.h"

using namespace arrisline;

namespace {

const JobFiles& files() {
  static const JobFiles kFiles = [] {
    JobFiles out;
    out.missing = [](const std::string& name) -> std::optional<std::string> {
      if (name.size() % 5 == 0) return "";
      return std::nullopt;
    };
    // By the name's length one of a few, so that sound and unsound ones come up.
    out.profile = [](const std::string& name) {
      constexpr std::string_view kTexts[] = {
          "stock 3 wide, 3/4 thick\nstart face 1/2\nstep down 1/8\nfillet out 1/2\n",
          "stock 2 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n",
          "stock 1 wide, 1/2 thick\nstart back 1/8\nfillet out 1\n", "stock 1 wide\n"};
      return read_profile(kTexts[name.size() % 4], name);
    };
    out.kit = [](const std::string& name) {
      return read_kit(name.size() % 2 == 0 ? "hollow 6\nround 6\nrebate 3/4\n" : "hollow\n", name);
    };
    return out;
  }();
  return kFiles;
}

void hold_job(const Job& job) {
  fuzz::hold(!job.moulds.empty() && !job.stocks.empty(), "a job has mouldings and blanks", "");
  fuzz::hold(job.saw.kerf >= 0 && job.saw.allowance >= 0 && job.ripping.kerf >= 0, "nothing is negative", "");
  for (const Mould& mould : job.moulds) {
    fuzz::hold(mould.count >= 1 && mould.length > 0 && mould.width == mould.section.width,
               "a moulding is whole", mould.name);
    fuzz::hold(mould.spring >= 0 && mould.spring <= 90 && mould.corner > 0 && mould.corner < 180, "angles",
               mould.name);
    if (mould.mitre != Ends::none)
      fuzz::hold(runs_back(mould) < mould.length, "a mitre leaves something of the piece", mould.name);
    const bool served = std::any_of(job.stocks.begin(), job.stocks.end(),
                                    [&](const Stock& stock) { return serves(stock, mould, job); });
    fuzz::hold(served, "some blank serves each moulding", mould.name);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const Reading<Job> reading = read_job(text, "fuzz.job", files());
  // Mistakes of the files have places in the files.
  Reading<int> own;
  bool own_wrong = false;
  bool wrong = false;
  for (const Diagnostic& diagnostic : reading.diagnostics) {
    const bool error = diagnostic.severity == Severity::error;
    wrong = wrong || error;
    if (diagnostic.file != "fuzz.job") continue;
    own.diagnostics.push_back(diagnostic);
    own_wrong = own_wrong || error;
  }
  if (!own_wrong) own.value = 0;
  fuzz::hold_diagnostics(own, text);
  fuzz::hold(reading.value.has_value() != wrong, "a job is read exactly when no mistake is an error");
  if (reading.value) hold_job(*reading.value);
  return 0;
}
