// The statements of a job, line by line, and the files it names. Shown by tests/text/job_test.cpp and
// job_mistakes_test.cpp.
#include <algorithm>
#include <deque>
#include <map>
#include <set>

#include "text/job_checks.h"
#include "text/job_files.h"
#include "text/job_lines.h"
#include "text/kit_shop.h"
#include "text/load.h"
#include "text/other_kind.h"
#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {
namespace {

const std::vector<std::string_view> kStatements = {"job", "units", "kit",   "blank", "buy",  "mould",
                                                   "saw", "rip",   "spare", "board", "shop", "moisture"};

/// What to do about a file that is not there, where none beside it is named nearly so.
std::string or_where(const std::string& near) {
  return near.empty() ? "; check its name: it is looked for from the folder of the job" : near;
}

class JobReader {
 public:
  JobReader(Mistakes& mistakes, const JobFiles& files) : mistakes_(mistakes), files_(files) {
    job_.name = stem(mistakes.source.file);
  }

  std::optional<Job> read() {
    if (is_of_another_kind(mistakes_, FileKind::job)) return std::nullopt;
    int number = 0;
    for (const std::string_view line : mistakes_.source.lines) {
      std::vector<Token> tokens = tokenise_quoted(line, ++number);
      if (tokens.empty()) continue;
      lines_.push_back(std::move(tokens));
      Statement statement{lines_.back(), mistakes_, job_.unit};
      read_statement(statement);
      if (mistakes_.full() || past_a_limit(statement)) return std::nullopt;
    }
    return finish();
  }

  /// What the files that it names have wrong, in the order they are named.
  std::vector<Diagnostic> of_files() { return std::move(of_files_); }

 private:
  void read_statement(Statement& statement) {
    const std::string word = lower(statement.tokens.front().text);
    const Place place = statement.tokens.front().place;
    const bool known = std::find(kStatements.begin(), kStatements.end(), word) != kStatements.end();
    if (!known) {
      fail(statement, place,
           "unknown word " + quoted(statement.tokens.front().text) +
               known_words(word, kStatements, FileKind::job));
      return;
    }
    if (word == "units") {
      read_units(statement, lines_of_[word], length_line_, job_.unit);
      return;
    }
    const bool many = word == "blank" || word == "buy" || word == "mould" || word == "shop";
    if (!many) stood_before(statement, lines_of_[word]);
    if (word == "job") {
      const std::optional<std::string> name = read_name(statement, "a name after 'job'");
      if (name) job_.name = *name;
      return;
    }
    if (word == "kit") {
      read_kit_line(statement);
      return;
    }
    if (length_line_ == 0 && word != "moisture") length_line_ = place.line;
    read_rest(statement, word);
  }

  void read_rest(Statement& statement, const std::string& word) {
    if (word == "mould") {
      ++mould_lines_;
      if (const auto mould = read_mould(statement)) add_mould(*mould);
    } else if (word == "blank" || word == "buy") {
      ++stock_lines_;
      if (const auto stock = read_stock_line(statement, word == "buy")) stocks_.push_back(*stock);
    } else if (word == "saw") {
      if (const auto saw = read_saw(statement)) saw_ = *saw;
    } else if (word == "rip") {
      if (const auto rip = read_rip(statement)) rip_ = *rip;
    } else if (word == "spare") {
      spare_ = read_spare(statement);
    } else if (word == "moisture") {
      job_.moisture = read_moisture(statement);
    } else if (word == "board") {
      board_ = read_board(statement);
    } else {
      Shop nowhere;  // the kit that it is for may not be read yet
      read_shop(statement, nowhere, shop_given_);
      shop_lines_.push_back(lines_.size() - 1);
    }
  }

  void read_kit_line(Statement& statement) {
    const bool marks = !statement.done() && statement.token().text.front() == '"';
    const std::size_t first = statement.next;
    Stated<std::string> name;
    if (marks || statement.done()) {
      const auto word = read_word(statement, "the file of the kit after 'kit'");
      if (!word) return;
      name = *word;
      expect_end(statement);
    } else {
      const auto rest = read_name(statement, "the file of the kit after 'kit'");
      if (!rest) return;
      name = {*rest, read_since(statement, first)};
    }
    if (statement.failed) return;
    job_.kit_file = name.value;
    if (const auto near = files_.missing(name.value)) {
      mistakes_.error(name.place, "there is no kit " + quoted(name.value) + or_where(*near));
      return;
    }
    Reading<Kit> kit = files_.kit(name.value);
    add_diagnostics(std::move(kit.diagnostics));
    if (kit.value) job_.kit = std::move(*kit.value);
  }

  void add_mould(const MouldText& mould) {
    const auto same = std::find_if(moulds_.begin(), moulds_.end(), [&](const MouldText& other) {
      return other.name.value == mould.name.value;
    });
    if (same != moulds_.end()) {
      mistakes_.error(mould.name.place, "there is a moulding " + quoted(mould.name.value) +
                                            " already, on line " + std::to_string(same->place.line) +
                                            "; give it another name");
    }
    moulds_.push_back(mould);
    if (profiles_.count(mould.profile.value) > 0) return;
    std::optional<Section>& section = profiles_[mould.profile.value];
    if (const auto near = files_.missing(mould.profile.value)) {
      mistakes_.error(mould.profile.place,
                      "there is no profile " + quoted(mould.profile.value) + or_where(*near));
      return;
    }
    Reading<Section> reading = files_.profile(mould.profile.value);
    add_diagnostics(std::move(reading.diagnostics));
    section = std::move(reading.value);
  }

  void add_diagnostics(std::vector<Diagnostic> list) {
    of_files_.insert(of_files_.end(), std::make_move_iterator(list.begin()),
                     std::make_move_iterator(list.end()));
  }

  bool past_a_limit(Statement& statement) {
    const auto refuse = [&](const std::string& what, std::size_t most, const char* constant) {
      mistakes_.error(place_of(statement), "a job has at most " + std::to_string(most) + " " + what +
                                               "; make two jobs of it" + to_raise(constant));
      return true;
    };
    if (mould_lines_ > kMaxMoulds) return refuse("mouldings", kMaxMoulds, "kMaxMoulds");
    if (stock_lines_ > kMaxStocks) return refuse("lines of blanks", kMaxStocks, "kMaxStocks");
    return false;
  }

  void settle_moulds() {
    long pieces = 0;
    for (const MouldText& text : moulds_) {
      const std::optional<Section>& profile = profiles_.at(text.profile.value);
      pieces += text.count;
      if (pieces > kMaxPieces && pieces - text.count <= kMaxPieces) {
        mistakes_.error(text.place, "a job has at most " + std::to_string(kMaxPieces) +
                                        " pieces; make two jobs of it" + to_raise("kMaxPieces"));
      }
      if (!profile || !text.sound) continue;
      if (const auto mould = settle_mould(text, *profile, saw_, job_.unit, mistakes_))
        job_.moulds.push_back(*mould);
    }
  }

  void settle_shop() {
    Mistakes told(mistakes_.source);  // they were told of when they were read
    std::set<std::string> given;
    for (const std::size_t line : shop_lines_) {
      Statement statement{lines_[line], told, job_.unit};
      read_shop(statement, job_.kit.shop, given);
    }
    if (board_) job_.kit.board = board_;
  }

  /// Some blank is wide enough to be held.
  bool check_hold() {
    if (!rip_.hold || stocks_.empty()) return true;
    const auto widest = std::max_element(
        stocks_.begin(), stocks_.end(),
        [](const StockText& a, const StockText& b) { return a.stock.width < b.stock.width; });
    if (rip_.hold->value <= widest->stock.width) return true;
    mistakes_.error(rip_.hold->place, "no blank is so wide; write at most " +
                                          show(widest->stock.width, job_.unit) + ", the width of the widest");
    return false;
  }

  std::optional<Job> finish() {
    if (lines_of_.count("kit") == 0) mistakes_.error({}, "no kit; expected a line such as 'kit chest.kit'");
    if (mould_lines_ == 0)
      mistakes_.error({}, "no mouldings; expected lines such as 'mould shelf shelf.profile length 42'");
    if (stock_lines_ == 0)
      mistakes_.error({}, "no blanks; expected lines such as 'blank poplar 3/4 thick 5 1/2 wide 96 long'");
    job_.saw = saw_.saw;
    job_.ripping = {rip_.kerf.value_or(saw_.saw.kerf), rip_.trued, rip_.hold ? rip_.hold->value : 0};
    if (spare_) job_.spare = Spare{spare_->length.value, spare_->count};
    for (const StockText& stock : stocks_) job_.stocks.push_back(stock.stock);
    settle_moulds();
    settle_shop();
    // A blank that could not be read may be the very one.
    const bool all_read = !stocks_.empty() && stocks_.size() == stock_lines_;
    if (check_hold() && all_read) check_blanks(job_, moulds_, stocks_, spare_, mistakes_);
    if (mistakes_.errors > 0) return std::nullopt;
    return std::move(job_);
  }

  Mistakes& mistakes_;
  const JobFiles& files_;
  Job job_;
  std::deque<std::vector<Token>> lines_;  // statements keep references to them
  std::map<std::string, int> lines_of_;   // of statements that stand once
  std::vector<MouldText> moulds_;
  std::vector<StockText> stocks_;
  std::map<std::string, std::optional<Section>>
      profiles_;  // by the name in the job; empty: could not be read
  SawText saw_;
  std::optional<SpareText> spare_;
  RippingText rip_;
  std::optional<Board> board_;
  std::set<std::string> shop_given_;
  std::vector<std::size_t> shop_lines_;  // indices into lines_
  std::vector<Diagnostic> of_files_;
  std::size_t mould_lines_ = 0;
  std::size_t stock_lines_ = 0;
  int length_line_ = 0;
};

}  // namespace

Reading<Job> read_job(std::string_view text, const std::string& file, const JobFiles& files) {
  const Source source = split_lines(text.size() > kMaxFileBytes ? std::string_view{} : text, file);
  Mistakes mistakes(source);
  Reading<Job> reading;
  std::vector<Diagnostic> of_files;
  if (check_text(text, mistakes)) {
    JobReader reader(mistakes, files);
    reading.value = reader.read();
    of_files = reader.of_files();
  }
  const bool files_sound = std::none_of(of_files.begin(), of_files.end(), [](const Diagnostic& diagnostic) {
    return diagnostic.severity == Severity::error;
  });
  if (mistakes.errors > 0 || !files_sound) reading.value.reset();
  reading.diagnostics = in_order(std::move(mistakes));
  reading.diagnostics.insert(reading.diagnostics.end(), of_files.begin(), of_files.end());
  return reading;
}

Reading<Job> read_job(std::string_view text, const std::string& file, const std::string& folder) {
  return read_job(text, file, files_in(folder));
}

Reading<Job> read_job_file(const std::string& path) {
  return read_from<Job>(path, [](std::string_view text, const std::string& file) {
    return read_job(text, file, files_in(folder_of(file)));
  });
}

}  // namespace arrisline
