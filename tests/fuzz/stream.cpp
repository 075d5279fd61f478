// Any bytes as a line of `arrisline stream`: a fault that can be shown, or a record whose members are what
// the line says. No file is opened and nothing is planned.
#include "app/stream_record.h"
#include "arrisline/report.h"
#include "fuzz/holds.h"
#include "report/json_text.h"

using namespace arrisline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view line = fuzz::text_of(data, size);
  line = line.substr(0, line.find('\n'));
  const StreamRecord record = read_record(line);
  const Json id = Json::parse(record.id);
  fuzz::hold(id.is_null() || id.is_string() || id.is_number_integer(), "an id is one");
  // Whatever becomes of it, it goes out on one line, and is JSON there.
  const std::string out = json_line({{"id", id}, {"fault", record.fault}});
  fuzz::hold(out.find('\n') == out.size() - 1, "an answer is one line", out);
  fuzz::hold_shown(visible(out));
  const Json back = Json::parse(out);
  fuzz::hold(back.at("id") == id && back.at("fault") == record.fault, "an answer is what it says", out);
  if (!record.fault.empty()) return 0;

  fuzz::hold(!is_blank(line), "a record is no blank line");
  const auto held = [](const TextOrPath& one) {
    fuzz::hold(!one.words.empty(), "a text or a path says something");
    fuzz::hold(one.is_text == (one.words.find('\n') != std::string::npos), "a text has lines");
    fuzz::hold(one.is_text || one.words.find('\0') == std::string::npos, "a path holds no NUL");
  };
  held(record.profile);
  if (record.kit) held(*record.kit);
  // Written again it reads the same.
  Json again = {{"id", id}, {"profile", record.profile.words}};
  if (record.kit) again["kit"] = record.kit->words;
  const StreamRecord twice = read_record(again.dump());
  fuzz::hold(twice.fault.empty(), "a record that was read is one", twice.fault);
  fuzz::hold(twice.id == record.id && twice.profile.words == record.profile.words &&
                 twice.kit.has_value() == record.kit.has_value() &&
                 (!record.kit || twice.kit->words == record.kit->words),
             "a record is the same when it is read again", again.dump());
  return 0;
}
