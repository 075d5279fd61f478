// The elements of an SVG by name, and their attributes where they stand.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "trace/svg_values.h"

namespace arrisline {

/// What Expat puts between the namespace of a name and the name.
inline constexpr char kBetween = ' ';

/// The name of an element, of SVG or of no namespace; empty for those of other kinds of XML.
std::string_view svg_name(std::string_view full);

/// Elements that hold others and draw them.
bool is_svg_group(std::string_view name);
/// Elements that draw nothing by themselves, nor what is in them.
bool draws_nothing(std::string_view name);
/// Of an element that draws what is not read: what to do about it. Null for any other.
const char* unread_advice(std::string_view name);

/// The value of an attribute among those that Expat gives, names and values by turns up to a null; null where
/// it is not there.
const char* given_value(const char** given, std::string_view name);
/// The same with its place in a tag that begins at a byte of the text. Not as written where it comes from an
/// entity or from what a document type declares.
std::optional<Passage> given_passage(std::string_view text, const char** given, std::size_t from,
                                     const char* name);

}  // namespace arrisline
