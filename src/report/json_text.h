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

/// What plan_to_json() writes, and one plane as it stands in there.
Json plan_as_json(const Plan& plan, const JsonBesides& besides = {});
Json plane_json(const Plane& plane);

}  // namespace arrisline
