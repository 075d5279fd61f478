// Words in messages: quoting, lists, and the nearest known word.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace arrisline {

/// ASCII letters made small; the rest as it stands.
std::string lower(std::string_view text);

/// The word in quotes, cut short where it is very long.
std::string quoted(std::string_view word);

/// "a", "a or b", "a, b or c".
std::string either(const std::vector<std::string_view>& words);

/// Letters wrong, missing, added or swapped with their neighbour between two words.
int edit_distance(std::string_view a, std::string_view b);

/// The known word that was most likely meant, or nothing: another name that the trade has for it, at most one
/// slip in three letters (two slips from five letters on), or a known word that goes on from at least three
/// letters written.
std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known);

/// "; did you mean 'fillet'?", or nothing.
std::string suggestion(std::string_view word, const std::vector<std::string_view>& known);

}  // namespace arrisline
