// The statements of a profile, line by line, into a drawing, and the drawing into a section.
// Shown by tests/section/chains_test.cpp and tests/text/profile_mistakes_test.cpp.
#include <algorithm>

#include "arrisline/read.h"
#include "section/drawing.h"
#include "text/elements.h"
#include "text/other_kind.h"
#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {

namespace {

const std::vector<std::string_view>& statement_words() {
  static const std::vector<std::string_view> words = [] {
    std::vector<std::string_view> list = {"profile", "units", "stock", "side", "start"};
    list.insert(list.end(), element_words().begin(), element_words().end());
    return list;
  }();
  return words;
}

class ProfileReader {
 public:
  explicit ProfileReader(Mistakes& mistakes) : mistakes_(mistakes) {
    drawing_.name = stem(mistakes.source.file);
  }

  std::optional<Section> read() {
    if (is_of_another_kind(mistakes_, FileKind::profile)) return std::nullopt;
    int number = 0;
    for (const std::string_view line : mistakes_.source.lines) {
      const std::vector<Token> tokens = tokenise(line, ++number);
      if (tokens.empty()) continue;
      Statement statement{tokens, mistakes_, drawing_.unit};
      read_statement(statement);
      if (statement.failed && in_chain_) broken_.back() = true;
      if (mistakes_.full()) return std::nullopt;
      if (drawing_.elements.size() > kMaxElements) {
        mistakes_.error(place_of(statement), "a profile has at most " + std::to_string(kMaxElements) +
                                                 " elements; draw it as several" + to_raise("kMaxElements"));
        return std::nullopt;
      }
    }
    return finish();
  }

 private:
  void read_statement(Statement& statement) {
    in_chain_ = false;
    const std::string word = lower(statement.tokens.front().text);
    const auto& elements = element_words();
    if (word == "profile") {
      read_profile_name(statement);
    } else if (word == "units") {
      read_units(statement, units_line_, length_line_, drawing_.unit);
    } else if (word == "stock") {
      read_stock(statement);
    } else if (word == "side") {
      read_side(statement);
    } else if (word == "start") {
      read_start(statement);
    } else if (std::find(elements.begin(), elements.end(), word) != elements.end()) {
      add_element(statement);
    } else {
      fail_unknown(statement);
      in_chain_ = started_;
      has_statement_ = has_statement_ || started_;  // most likely an element, misspelt
    }
  }

  void fail_unknown(Statement& statement) {
    const Token& token = statement.tokens.front();
    fail(statement, token.place,
         "unknown word " + quoted(token.text) +
             known_words(lower(token.text), statement_words(), FileKind::profile));
  }

  void read_profile_name(Statement& statement) {
    stood_before(statement, name_line_);
    const std::optional<std::string> name = read_name(statement, "a name after 'profile'");
    if (name) drawing_.name = *name;
  }

  void note_length(const Statement& statement) {
    if (length_line_ == 0) length_line_ = statement.tokens.front().place.line;
  }

  /// As timber is often named: 2 x 3/4.
  static bool stands_between_sizes(std::string_view sign) {
    return sign == "x" || sign == "by" || sign == "\u00d7";
  }

  /// The word that says which measure a length is. A mistaken one is read over, so that the next is judged
  /// too.
  static void read_stock_word(Statement& statement, double length, std::optional<double>& wide,
                              std::optional<double>& thick) {
    std::vector<std::string_view> fitting;
    if (!wide) fitting.push_back("wide");
    if (!thick) fitting.push_back("thick");
    const std::string wanted = either(fitting) + " after the length";
    if (statement.done()) {
      fail_expected(statement, wanted);
    } else if (at_any(statement, fitting)) {
      (at_word(statement, "wide") ? wide : thick) = length;
    } else if (at_any(statement, {"wide", "thick"})) {
      fail(statement, statement.token().place,
           quoted(lower(statement.token().text)) + " is given twice; leave one of them out");
    } else if (stands_between_sizes(lower(statement.token().text))) {
      fail(statement, statement.token().place,
           quoted(statement.token().text) +
               " does not say which is the width; expected both named, such as 'stock 2 wide, 3/4 thick'");
      statement.next = statement.tokens.size();
      return;
    } else {
      std::string message = "expected " + wanted + ", found " + quoted(statement.token().text);
      const std::string comma = decimal_comma(statement);
      message += at_word(statement, "in") ? "; write a unit against its number, as 3/4in"
                 : !comma.empty()         ? comma
                                          : suggestion(statement.token().text, fitting);
      fail(statement, statement.token().place, message);
      if (!comma.empty()) statement.next = statement.tokens.size() - 1;
      (!wide ? wide : thick) = length;
    }
    if (!statement.done()) ++statement.next;
  }

  void read_stock(Statement& statement) {
    note_length(statement);
    stood_before(statement, stock_line_);
    std::optional<double> wide;
    std::optional<double> thick;
    while (!statement.done() && !(wide && thick)) {
      if (statement.next > 1) accept_comma(statement);
      if (statement.done()) break;
      const std::optional<double> length =
          read_length(statement, wide ? "a thickness before 'thick'" : "a width before 'wide'");
      if (!length) return;
      read_stock_word(statement, *length, wide, thick);
    }
    expect_end(statement);
    if (statement.failed) return;
    if (!wide || !thick) {
      fail(statement, end_of(statement),
           "stock needs a width and a thickness, as in 'stock 2 wide, 3/4 thick'");
      return;
    }
    drawing_.width = *wide;
    drawing_.thickness = *thick;
  }

  void read_side(Statement& statement) {
    end_chain(statement);
    const std::vector<std::string_view> words = {"face", "underside", "back"};
    if (!at_any(statement, words)) {
      std::string message = "expected face, underside or back after 'side'";
      if (statement.done()) {
        fail_expected(statement, "face, underside or back after 'side'");
      } else {
        message += ", found " + quoted(statement.token().text) + suggestion(statement.token().text, words);
        fail(statement, statement.token().place, message);
      }
    } else {
      side_ = at_word(statement, "underside") ? Chain::underside
              : at_word(statement, "back")    ? Chain::back
                                              : Chain::face;
      ++statement.next;
      expect_end(statement);
    }
    side_place_ = place_of(statement);
    started_ = false;
    side_waits_ = true;
    headless_reported_ = false;
  }

  /// Reports what the chain, or the side, before this statement lacks.
  void end_chain(Statement& statement) {
    if (side_waits_) {
      mistakes_.error(side_place_,
                      "this side has no chain; expected 'start face …' or 'start back …' after it");
      statement.failed = true;
      side_waits_ = false;
    }
    check_not_bare();
  }

  void check_not_bare() {
    if (!started_ || has_statement_) return;
    mistakes_.error(drawing_.chains.back().place,
                    "the chain has no elements; put one below it, such as 'step down 1/8'");
    broken_.back() = true;
  }

  void read_start(Statement& statement) {
    note_length(statement);
    in_chain_ = started_;
    if (started_) {
      fail(statement, statement.tokens.front().place,
           "a second 'start' in one chain; begin another chain with 'side face', 'side underside' or 'side "
           "back'");
      return;
    }
    DrawnChain chain;
    chain.side = side_;
    chain.place = place_of(statement);
    const std::vector<std::string_view> words = {"face", "back"};
    if (at_any(statement, words)) {
      chain.from_back = at_word(statement, "back");
      ++statement.next;
      const std::optional<double> at =
          read_length(statement, chain.from_back ? "a depth after 'back'" : "a distance after 'face'");
      if (at) chain.start = *at;
      expect_end(statement);
    } else if (statement.done()) {
      fail_expected(statement, "face or back after 'start'");
    } else {
      const std::string_view word = statement.token().text;
      fail(statement, statement.token().place,
           "expected face or back after 'start', found " + quoted(word) + suggestion(word, words));
    }
    drawing_.chains.push_back(std::move(chain));
    broken_.push_back(statement.failed);
    started_ = true;
    has_statement_ = false;
    side_waits_ = false;
    number_ = 0;
  }

  void add_element(Statement& statement) {
    note_length(statement);
    in_chain_ = started_;
    has_statement_ = true;
    ++number_;
    if (!started_ && !headless_reported_) {
      fail(statement, statement.tokens.front().place,
           "an element before 'start'; expected 'start face …' or 'start back …' first");
      headless_reported_ = true;
      side_waits_ = false;
    }
    const std::optional<ElementText> text = read_element(statement);
    if (!text || !started_) return;
    if (text->shape == Shape::curve && ++curves_ > kMaxCurves) {
      fail(statement, place_of(statement),
           "a profile has at most " + std::to_string(kMaxCurves) +
               " curves; draw the others with 'bead' and 'cove'");
      return;
    }
    DrawnChain& chain = drawing_.chains.back();
    const std::vector<Part> parts = parts_of(text->shape, text->dimensions);
    note_curve(statement, *text, parts);
    int part_number = 0;
    for (const Part& part : parts) {
      Element element;
      element.number = number_;
      element.part = parts.size() > 1 ? ++part_number : 0;
      element.chain = chain.side;
      element.name = text->name;
      if (parts.size() > 1) element.name += std::string(" (") + part.name + ")";
      element.line = statement.tokens.front().place.line;
      const int index = static_cast<int>(drawing_.elements.size());
      drawing_.elements.push_back(std::move(element));
      drawing_.places.push_back(place_of(statement));
      drawing_.chain_of.push_back(static_cast<int>(drawing_.chains.size()));
      chain.strokes.push_back({part.move, part.turn, part.radius, part.large, index});
    }
  }

  /// Arcs stand for a curve, and whoever reads the file is told how near they lie.
  void note_curve(const Statement& statement, const ElementText& text, const std::vector<Part>& parts) {
    constexpr double kTold = 1e-5;  // mm: less is rounding
    const double departs = parts.front().departs;
    if (text.shape != Shape::curve || departs < kTold) return;
    mistakes_.warn(place_of(statement),
                   "the " + std::string(text.dimensions.parabola ? "parabola" : "ellipse") + " is drawn as " +
                       std::to_string(parts.size()) + " arcs, nowhere farther than " +
                       show(departs, drawing_.unit, true) + " from it; check that this is near enough");
  }

  std::optional<Section> finish() {
    if (side_waits_) {
      mistakes_.error(side_place_,
                      "this side has no chain; expected 'start face …' or 'start back …' after it");
    }
    check_not_bare();
    if (stock_line_ == 0) mistakes_.error({}, "no stock; expected a line such as 'stock 2 wide, 3/4 thick'");
    if (drawing_.chains.empty() && !headless_reported_) {
      mistakes_.error({}, "no chain; expected 'start face …' or 'start back …' and the elements after it");
    }
    if (!(drawing_.width > 0) || mistakes_.full()) return std::nullopt;
    // Chains that were read whole are checked on the stock even where others were not.
    Drawing whole = drawing_;
    whole.chains.clear();
    for (std::size_t i = 0; i < drawing_.chains.size(); ++i) {
      if (!broken_[i]) whole.chains.push_back(drawing_.chains[i]);
    }
    if (whole.chains.empty()) return std::nullopt;
    std::optional<Section> section = build_section(whole, mistakes_);
    if (mistakes_.errors > 0) return std::nullopt;
    return section;
  }

  Mistakes& mistakes_;
  Drawing drawing_;
  std::vector<bool> broken_;  // for each chain: a statement of it could not be read
  int name_line_ = 0;
  int units_line_ = 0;
  int stock_line_ = 0;
  int length_line_ = 0;  // of the first statement with a length
  Chain side_ = Chain::face;
  Place side_place_;
  bool side_waits_ = false;  // a `side` without its `start` yet
  bool started_ = false;
  bool has_statement_ = false;
  bool in_chain_ = false;  // the statement being read belongs to the last chain
  bool headless_reported_ = false;
  int number_ = 0;
  std::size_t curves_ = 0;
};

}  // namespace

Reading<Section> read_profile(std::string_view text, const std::string& file) {
  return read_with<ProfileReader, Section>(text, file);
}

}  // namespace arrisline
