// `arrisline words`: what the words of the files mean, with pictures. Shown by tests/cli.
#include <algorithm>

#include "app/commands.h"
#include "app/inputs.h"
#include "arrisline/read.h"
#include "sheet/small_picture.h"
#include "text/vocabulary.h"
#include "wording/words.h"

namespace arrisline {
namespace {

constexpr std::size_t kWordColumns = 15;

std::string lines_of(std::string_view statements, const std::string& indent) {
  std::string out;
  while (!statements.empty()) {
    const std::size_t end = std::min(statements.find(';'), statements.size());
    out += indent + std::string(statements.substr(0, end)) + "\n";
    statements.remove_prefix(std::min(statements.size(), end + 2));
  }
  return out;
}

bool is_plane(const Word& word) {
  return word.in.front() == FileKind::kit;
}

std::string picture_of(const Word& word, const std::string& indent, bool ascii) {
  if (word.picture.empty()) return "";
  const Reading<Section> section = read_profile(lines_of(word.picture, ""), "picture");
  std::string out;
  for (const std::string& row :
       small_picture(section.value.value(), is_plane(word) ? Waste::left_out : Waste::shown, ascii))
    out += row.empty() ? "\n" : indent + row + "\n";
  return out;
}

/// "In a kit or a job".
std::string heading(const Word& word) {
  if (word.in.size() == 3) return "In every file";
  if (word.in.size() == 2 && word.in.front() == FileKind::kit) return "In a kit or a job";
  return "In a " + std::string(arrisline::word(word.in.front()));
}

std::string entry(const Word& word) {
  std::string out = word.within.empty() ? "  " : "    ";
  out += word.word;
  out.append(out.size() < kWordColumns ? kWordColumns - out.size() : 1, ' ');
  return out + "  " + std::string(word.meaning) + "\n";
}

std::string all_words(bool ascii) {
  std::string out;
  std::string before;
  for (const Word& word : vocabulary()) {
    if (word.within.empty() && heading(word) != before) {
      out += (before.empty() ? "" : "\n") + heading(word) + "\n\n";
      before = heading(word);
    }
    out += entry(word) + picture_of(word, "      ", ascii);
  }
  return out + "\nMore of one word, with an example: arrisline words ogee\n";
}

bool belongs_to(const Word& word, std::string_view statement) {
  std::string_view within = word.within;
  while (!within.empty()) {
    const std::size_t end = std::min(within.find_first_of(", "), within.size());
    if (within.substr(0, end) == statement) return true;
    within.remove_prefix(std::min(within.size(), end + 1));
  }
  return false;
}

std::string place_of(const Word& word) {
  std::string where = heading(word);
  if (word.in.size() == 2 && word.in.back() == FileKind::kit)
    where += ", and in a kit from 'shaped' to 'end'";
  if (word.within == "element") return where + ", after an element";
  if (word.within.empty()) return where;
  std::string after(word.within);
  if (const std::size_t comma = after.find(", "); comma != std::string::npos)
    after.replace(comma, 2, "' or '");
  return where + ", after '" + after + "'";
}

std::string one_word(const Word& word, bool ascii) {
  std::string out = std::string(word.word) + ": " + std::string(word.meaning) + "\n";
  out += "  " + place_of(word) + ".\n";
  const std::string picture = picture_of(word, "    ", ascii);
  if (!picture.empty()) out += "\n" + picture;
  out += "\n  As in:\n" + lines_of(word.example, "    ");
  std::string more;
  if (word.within.empty()) {
    for (const Word& other : vocabulary()) {
      const bool same_file = std::find_first_of(other.in.begin(), other.in.end(), word.in.begin(),
                                                word.in.end()) != other.in.end();
      if (same_file && belongs_to(other, word.word)) more += entry(other);
    }
  }
  if (!more.empty()) out += "\n  Words that may follow:\n" + more;
  return out;
}

}  // namespace

Outcome words_command(const WordsArguments& arguments) {
  if (!arguments.word) return {kDone, all_words(arguments.ascii), ""};
  const std::string wanted = lower(*arguments.word);
  std::string out;
  std::vector<std::string_view> known;
  for (const Word& word : vocabulary()) {
    known.push_back(word.word);
    if (word.word == wanted) out += (out.empty() ? "" : "\n") + one_word(word, arguments.ascii);
  }
  if (!out.empty()) return {kDone, out, ""};
  return {
      kBadInput, "",
      usage_error("words", "no file has the word " + quoted(*arguments.word) + suggestion(wanted, known)) +
          "see all of them: arrisline words\n"};
}

}  // namespace arrisline
