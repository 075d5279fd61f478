// JSON as every report writes it.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "arrisline/plan_json.h"

namespace arrisline {

using Json = nlohmann::ordered_json;

/// Numbers to 17 significant digits, lists and objects that fit on a line kept on one, so that it can be read
/// and edited by hand; a number that is not finite becomes null, bytes that are not UTF-8 U+FFFD. Ends with a
/// newline.
std::string json_text(const Json& value);

/// The same on one line, however long it is; ends with a newline.
std::string json_line(const Json& value);

/// One large object written member by member, as json_text() would write it whole; what is written is text at
/// once, so that a large object is not held twice over.
class ObjectText {
 public:
  void add(const std::string& name, const Json& value);
  /// A member that is an object, its own members added until it is closed. REQUIRES: none is open already.
  void open(const std::string& name);
  void close();
  std::string take();

 private:
  std::string text_ = "{";
  std::size_t indent_ = 2;
  bool first_ = true;
};

/// What plan_to_json() writes, and one plane as it stands in there.
Json plan_as_json(const Plan& plan, const JsonBesides& besides = {});
Json plane_json(const Plane& plane);

}  // namespace arrisline
