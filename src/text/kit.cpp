// The statements of a kit, line by line. Numbered planes are settled at the end, when the numbering table is
// known. Shown by tests/text/kit_test.cpp and kit_mistakes_test.cpp.
#include <algorithm>

#include "arrisline/read.h"
#include "section/shapes.h"
#include "text/elements.h"
#include "text/kit_planes.h"
#include "text/kit_shop.h"
#include "text/other_kind.h"
#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {

namespace {

const std::vector<std::string_view> kStatements = {"kit",     "units", "hollow", "round", "rebate",
                                                   "plough",  "bench", "number", "body",  "shaped",
                                                   "scraper", "shop",  "board"};

class KitReader {
 public:
  explicit KitReader(Mistakes& mistakes) : mistakes_(mistakes) { kit_.name = stem(mistakes.source.file); }

  std::optional<Kit> read() {
    if (is_of_another_kind(mistakes_, FileKind::kit)) return std::nullopt;
    int number = 0;
    for (const std::string_view line : mistakes_.source.lines) {
      const std::vector<Token> tokens = tokenise(line, ++number);
      if (tokens.empty()) continue;
      Statement statement{tokens, mistakes_, kit_.unit};
      if (shaped_) {
        read_in_shaped(statement);
      } else {
        read_statement(statement);
      }
      if (mistakes_.full()) return std::nullopt;
      if (planes_.size() > kMaxPlanes) {
        mistakes_.error(place_of(statement), "a kit has at most " + std::to_string(kMaxPlanes) +
                                                 " planes; leave some out" + to_raise("kMaxPlanes"));
        return std::nullopt;
      }
    }
    return finish();
  }

 private:
  void read_statement(Statement& statement) {
    const std::string word = lower(statement.tokens.front().text);
    if (word != "kit" && word != "units" && word != "scraper" && word != "shaped" && length_line_ == 0) {
      length_line_ = statement.tokens.front().place.line;
    }
    if (word == "kit") {
      if (!stood_before(statement, name_line_)) {
        const std::optional<std::string> name = read_name(statement, "a name after 'kit'");
        if (name) kit_.name = *name;
      }
    } else if (word == "units") {
      read_units(statement, units_line_, length_line_, kit_.unit);
    } else if (word == "hollow" || word == "round") {
      const std::optional<PlaneText> plane = read_curved(statement);
      add_planes(statement, plane ? std::vector{*plane} : std::vector<PlaneText>{});
    } else if (word == "rebate" || word == "bench") {
      add_planes(statement, read_flat(statement));
    } else if (word == "plough") {
      add_planes(statement, read_plough(statement));
    } else if (word == "number") {
      read_numbering(statement);
    } else if (word == "body") {
      read_body_line(statement);
    } else if (word == "shaped") {
      begin_shaped(statement);
    } else if (word == "scraper") {
      kit_.scraper = true;
      last_count_ = 0;
      plane_before_ = false;
      expect_end(statement);
    } else if (word == "shop") {
      read_shop(statement, kit_.shop, shop_given_);
    } else if (word == "board") {
      stood_before(statement, board_line_);
      kit_.board = read_board(statement);
    } else {
      fail_unknown(statement, word);
    }
  }

  void fail_unknown(Statement& statement, const std::string& word) {
    std::string message = "unknown word " + quoted(statement.tokens.front().text);
    if (word == "end") {
      message += "; 'end' closes a shaped plane, and none is open: leave it out";
    } else {
      message += known_words(word, kStatements, FileKind::kit);
    }
    fail(statement, statement.tokens.front().place, message);
  }

  void add_planes(const Statement& statement, std::vector<PlaneText> planes) {
    any_plane_line_ = true;
    plane_before_ = true;
    last_count_ = statement.failed ? 0 : planes.size();
    std::move(planes.begin(), planes.end(), std::back_inserter(planes_));
  }

  void read_numbering(Statement& statement) {
    const std::optional<int> number = read_whole(statement, "the number of a plane", 1, 999);
    if (!number) return;
    const Place place = statement.tokens[statement.next - 1].place;
    if (!accept(statement, "radius")) {
      fail_expected(statement, "'radius' after the number");
      return;
    }
    const std::optional<double> radius = read_length(statement, "a length after 'radius'");
    if (!radius) return;
    expect_end(statement);
    if (!numbering_.emplace(*number, *radius).second) {
      fail(statement, place,
           "number " + std::to_string(*number) + " is in the numbering table twice; leave one of them out");
    }
  }

  void read_body_line(Statement& statement) {
    statement.next = 0;
    const std::optional<Body> body = read_body(statement);
    expect_end(statement);
    if (!plane_before_) {
      fail(statement, statement.tokens.front().place,
           "'body' comes after the plane it belongs to; put it below one");
      return;
    }
    if (!body) return;
    for (std::size_t i = planes_.size() - last_count_; i < planes_.size(); ++i) {
      if (planes_[i].plane.body) {
        fail(statement, statement.tokens.front().place,
             "this plane has a body already; leave one of them out");
        return;
      }
      planes_[i].plane.body = body;
    }
  }

  void begin_shaped(Statement& statement) {
    any_plane_line_ = true;
    shaped_ = PlaneText{};
    shaped_->plane.kind = PlaneKind::shaped;
    shaped_->place = place_of(statement);
    parts_.clear();
    part_places_.clear();
    shaped_sound_ = true;
    const std::optional<std::string> name = read_name(statement, "a name after 'shaped'");
    if (name) shaped_->plane.label = *name;
    if (!name) shaped_sound_ = false;
  }

  void read_in_shaped(Statement& statement) {
    const std::string word = lower(statement.tokens.front().text);
    const auto& elements = element_words();
    if (word == "end") {
      expect_end(statement);
      end_shaped();
      return;
    }
    if (length_line_ == 0) length_line_ = statement.tokens.front().place.line;
    if (std::find(elements.begin(), elements.end(), word) != elements.end()) {
      add_part(statement);
    } else if (word == "start") {
      read_start(statement);
    } else {
      std::vector<std::string_view> known = elements;
      known.push_back("end");
      const std::string near = suggestion(word, known);
      const std::string wanted =
          near.empty() ? "; expected an element or 'end'" : "; expected an element or 'end'" + near;
      const bool statement_word =
          std::find(kStatements.begin(), kStatements.end(), word) != kStatements.end();
      fail(statement, statement.tokens.front().place,
           (statement_word ? quoted(word) + " inside a shaped plane" : "unknown word " + quoted(word)) +
               (statement_word ? "; expected an element or 'end'" : wanted));
    }
    if (statement.failed) shaped_sound_ = false;
  }

  /// A shaped plane is moved about, so where its chain starts is of no account; the line must be sound,
  /// though.
  void read_start(Statement& statement) {
    if (!parts_.empty()) {
      fail(statement, statement.tokens.front().place, "'start' comes before the elements; put it above them");
    } else if (!accept(statement, "face")) {
      fail_expected(statement, "'face' after 'start'");
    } else if (read_length(statement, "a distance after 'face'")) {
      expect_end(statement);
    }
  }

  void add_part(Statement& statement) {
    const std::optional<ElementText> element = read_element(statement);
    if (!element) return;
    for (const Part& part : parts_of(element->shape, element->dimensions)) {
      parts_.push_back(part);
      part_places_.push_back(place_of(statement));
    }
    if (parts_.size() > kMaxSole) {
      fail(statement, place_of(statement),
           "the sole of a shaped plane has at most " + std::to_string(kMaxSole) +
               " elements; leave some out" + to_raise("kMaxSole"));
      parts_.clear();
      part_places_.clear();
    }
  }

  void end_shaped() {
    PlaneText plane = std::move(*shaped_);
    shaped_.reset();
    plane_before_ = true;
    last_count_ = 0;
    if (parts_.empty() && shaped_sound_) {
      mistakes_.error(plane.place,
                      "this shaped plane has no elements; put one below it, such as 'cavetto 3/8'");
      shaped_sound_ = false;
    }
    if (!shaped_sound_ || !shape_sole(plane, parts_, part_places_, mistakes_)) return;
    planes_.push_back(std::move(plane));
    last_count_ = 1;
  }

  std::optional<Kit> finish() {
    if (shaped_)
      mistakes_.error(shaped_->place, "this shaped plane is not closed; expected 'end' after its elements");
    for (PlaneText& plane : planes_) settle(plane, numbering_, kit_.unit, mistakes_);
    if (!any_plane_line_) {
      mistakes_.error({}, "no planes; expected lines such as 'hollow 6', 'round 6' or 'rebate 3/4'");
    }
    if (mistakes_.errors > 0) return std::nullopt;
    kit_.planes = told_apart(std::move(planes_));
    return std::move(kit_);
  }

  Mistakes& mistakes_;
  Kit kit_;
  std::vector<PlaneText> planes_;
  std::map<int, double> numbering_;
  std::set<std::string> shop_given_;
  int name_line_ = 0;
  int units_line_ = 0;
  int board_line_ = 0;
  int length_line_ = 0;
  bool any_plane_line_ = false;
  bool plane_before_ = false;   // a `body` line may follow
  std::size_t last_count_ = 0;  // planes that it would belong to
  std::optional<PlaneText> shaped_;
  std::vector<Part> parts_;
  std::vector<Place> part_places_;
  bool shaped_sound_ = true;
};

}  // namespace

Reading<Kit> read_kit(std::string_view text, const std::string& file) {
  return read_with<KitReader, Kit>(text, file);
}

}  // namespace arrisline
