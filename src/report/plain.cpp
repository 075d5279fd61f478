// One fact a line. Shown by tests/report/plain_test.cpp and the goldens of --plain.
#include "report/plain.h"

#include <algorithm>
#include <cctype>

namespace arrisline {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_capital(char c) {
  return c >= 'A' && c <= 'Z';
}
bool is_letter(char c) {
  return is_capital(c) || (c >= 'a' && c <= 'z');
}

/// What the numbers beneath a heading count.
std::string counted_by(std::string_view heading) {
  const auto begins = [&](std::string_view with) { return heading.substr(0, with.size()) == with; };
  if (begins("Planes") || begins("Order of work")) return "Plane";
  if (begins("Cuts")) return "Cut";
  if (begins("Blanks")) return "Strip";
  return "Number";
}

/// "Cut 3", "Line B"; the lead itself where it is a word; nothing for a dash.
std::string spoken(std::string lead, const std::string& counted) {
  lead.erase(lead.find_last_not_of(" .") + 1);
  lead.erase(0, lead.find_first_not_of(" -"));
  if (lead.empty()) return "";
  if (is_digit(lead.front())) return counted + " " + lead;
  if (is_capital(lead.front())) return "Line " + lead;
  return capital(lead);
}

/// Text cut where `ends` says that a part ends, before the blank.
template <class Ends>
std::vector<std::string> cut_up(std::string_view text, const Ends& ends) {
  std::vector<std::string> out;
  std::size_t from = 0;
  for (std::size_t i = 0; i + 2 < text.size(); ++i) {
    if (text[i + 1] != ' ' || !ends(text[i], text[i + 2])) continue;
    out.emplace_back(text.substr(from, i - from));
    from = i + 2;
  }
  out.emplace_back(text.substr(from));
  return out;
}

/// Sentences end in a full stop before a blank and a capital or a figure.
std::vector<std::string> sentences(std::string_view text) {
  if (text.ends_with('.')) text.remove_suffix(1);
  return cut_up(text, [](char c, char next) { return c == '.' && (is_capital(next) || is_digit(next)); });
}

std::vector<std::string> clauses(std::string_view sentence) {
  return cut_up(sentence, [](char c, char) { return c == ';'; });
}

/// The unit behind a figure: "1/8 in" is "1/8 inch", "2 in" is "2 inches".
std::string with_units(const std::string& text) {
  struct Unit {
    std::string_view brief, one, more;
  };
  static constexpr Unit kUnits[] = {{" in", " inch", " inches"},
                                    {" mm²", " square millimetre", " square millimetres"},
                                    {" mm", " millimetre", " millimetres"},
                                    {" %", " per cent", " per cent"}};
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    bool written = false;
    for (const Unit& unit : kUnits) {
      const std::size_t end = i + unit.brief.size();
      const bool whole = end >= text.size() || (!is_letter(text[end]) && !is_digit(text[end]) &&
                                                static_cast<unsigned char>(text[end]) < 0x80);
      if (i == 0 || !is_digit(text[i - 1]) || text.compare(i, unit.brief.size(), unit.brief) != 0 || !whole)
        continue;
      std::size_t from = i;
      while (from > 0 && (is_digit(text[from - 1]) || text[from - 1] == '/' || text[from - 1] == '.')) --from;
      const std::string figure = text.substr(from, i - from);
      // Of a mixed number the whole stands before the fraction.
      const bool mixed = from >= 2 && text[from - 1] == ' ' && is_digit(text[from - 2]);
      const bool one = !mixed && (figure == "1" || figure.find('/') != std::string::npos);
      out += one ? unit.one : unit.more;
      i = end - 1;
      written = true;
      break;
    }
    if (!written) out += text[i];
  }
  return out;
}

struct Context {
  std::size_t indent = 0;
  std::string about;
};

std::string before(const std::vector<Context>& contexts) {
  std::string out;
  for (const Context& context : contexts)
    if (!context.about.empty()) out += context.about + ": ";
  return out;
}

std::string up_to_colon(const std::string& text) {
  const std::size_t colon = text.find(": ");
  return colon == std::string::npos ? "" : text.substr(0, colon);
}

/// What the first sentence is about before its colon, the others are about too; and so of a sentence in
/// clauses.
void say(std::string& out, const std::string& about, const std::string& text) {
  std::string whole = about;
  bool first = true;
  for (const std::string& sentence : sentences(text)) {
    const std::string mine = up_to_colon(sentence);
    bool begins = true;
    for (std::string clause : clauses(sentence)) {
      const std::string before = begins || mine.empty() ? whole : whole + mine + ": ";
      if (before.empty() && !begins) clause = capital(clause);
      out += with_units(before + clause) + ".\n";
      begins = false;
    }
    if (first && !mine.empty()) whole += mine + ": ";
    first = false;
  }
}

}  // namespace

std::string in_plain_lines(const std::vector<Block>& blocks) {
  std::string out;
  std::vector<Context> contexts;
  std::string counted = "Number";
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    const Block& block = blocks[i];
    if (block.kind == Block::Kind::blank) continue;
    if (block.kind == Block::Kind::heading) {
      contexts.clear();
      counted = counted_by(block.text);
      say(out, "", block.text);
      continue;
    }
    while (!contexts.empty() && contexts.back().indent >= block.indent) contexts.pop_back();
    const std::string lead = block.kind == Block::Kind::item ? spoken(block.lead, counted) : std::string();
    std::string text = block.text;
    std::size_t next = i + 1;
    while (next < blocks.size() && blocks[next].kind == Block::Kind::blank) ++next;
    const bool more = next < blocks.size() && blocks[next].kind != Block::Kind::heading &&
                      blocks[next].indent > block.indent;
    const bool opens = text.ends_with(':');
    if (opens) text.pop_back();
    if (!(opens && more)) say(out, before(contexts) + (lead.empty() ? "" : lead + ": "), text);
    if (!more) continue;
    // What lies deeper is about this.
    const std::string mine = up_to_colon(text);
    contexts.push_back({block.indent, !lead.empty() ? lead : opens ? text : mine});
  }
  return out;
}

std::string laid_out(const std::vector<Block>& blocks, bool plain, bool colour) {
  return plain ? in_plain_lines(blocks) : in_columns(blocks, colour);
}

}  // namespace arrisline
