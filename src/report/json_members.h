// Members of a JSON object read by name and type, everything that is wrong listed with its place.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/geometry.h"
#include "report/plan_json_words.h"

namespace arrisline {

/// Each of its readers leaves what it reads into as it was where the member is missing or wrong.
class JsonMembers {
 public:
  using Json = nlohmann::json;
  /// Where a value stands: "cuts[3].plane.radius".
  using Path = std::string;
  enum class Need { must, may };

  /// Lengths in mm: ten metres is the longest a maker may write; poses may stand off the blank.
  static constexpr double kLongest = 1e5;

  explicit JsonMembers(std::vector<std::string>& faults) : faults_(faults) {}

  void fault(const Path& path, const std::string& text) {
    if (faults_.size() < kMostFaults) faults_.push_back(path + ": " + text);
    if (faults_.size() == kMostFaults) faults_.push_back("and more");
  }
  static Path join(const Path& path, std::string_view name) {
    return path.empty() ? Path(name) : path + "." + std::string(name);
  }
  static Path join(const Path& path, std::size_t index) { return path + "[" + std::to_string(index) + "]"; }
  static std::string found(const Json& value) { return std::string("found ") + value.type_name(); }

  const Json* member(const Json& object, const Path& path, std::string_view name, Need need) {
    const auto it = object.find(std::string(name));
    if (it != object.end()) return &*it;
    if (need == Need::must) fault(join(path, name), "missing");
    return nullptr;
  }
  const Json* typed(const Json& object, const Path& path, std::string_view name, Need need,
                    Json::value_t type, const char* wanted) {
    const Json* value = member(object, path, name, need);
    if (!value || value->type() == type) return value;
    fault(join(path, name), std::string("expected ") + wanted + ", " + found(*value));
    return nullptr;
  }
  const Json* object_at(const Json& in, const Path& path, std::string_view name, Need need) {
    return typed(in, path, name, need, Json::value_t::object, "an object");
  }
  const Json* list_at(const Json& in, const Path& path, std::string_view name, Need need) {
    return typed(in, path, name, need, Json::value_t::array, "a list");
  }
  bool is_object(const Json& value, const Path& path) {
    if (value.is_object()) return true;
    fault(path, "expected an object, " + found(value));
    return false;
  }

  bool number(const Json& value, const Path& path, double low, double high, double& out) {
    if (!value.is_number()) {
      fault(path, "expected a number, " + found(value));
      return false;
    }
    const double x = value.get<double>();
    if (!(x >= low && x <= high)) {
      fault(path, "out of range: " + value.dump());
      return false;
    }
    out = x;
    return true;
  }
  bool number_at(const Json& in, const Path& path, std::string_view name, Need need, double low, double high,
                 double& out) {
    const Json* value = member(in, path, name, need);
    return value && number(*value, join(path, name), low, high, out);
  }
  bool whole_at(const Json& in, const Path& path, std::string_view name, Need need, int& out) {
    const Json* value = member(in, path, name, need);
    if (!value) return false;
    const bool small = value->is_number_integer() && value->get<double>() >= 0 && value->get<double>() <= 1e9;
    if (small) {
      out = value->get<int>();
      return true;
    }
    fault(join(path, name),
          "expected a whole number, found " + (value->is_number() ? value->dump() : found(*value).substr(6)));
    return false;
  }
  void truth_at(const Json& in, const Path& path, std::string_view name, Need need, bool& out) {
    const Json* value = typed(in, path, name, need, Json::value_t::boolean, "true or false");
    if (value) out = value->get<bool>();
  }
  void text_at(const Json& in, const Path& path, std::string_view name, Need need, std::string& out) {
    const Json* value = typed(in, path, name, need, Json::value_t::string, "text");
    if (value) out = value->get<std::string>();
  }
  template <class T, std::size_t N>
  bool word_at(const Json& in, const Path& path, std::string_view name, Need need,
               const json_words::Table<T, N>& table, T& out) {
    const Json* value = typed(in, path, name, need, Json::value_t::string, "a word");
    if (!value) return false;
    const std::string& text = value->get_ref<const std::string&>();
    std::string known;
    for (const auto& [word, meaning] : table) {
      if (word == text) {
        out = meaning;
        return true;
      }
      known += (known.empty() ? "" : ", ") + std::string(word);
    }
    fault(join(path, name), "unknown word " + Json(text).dump() + "; known are " + known);
    return false;
  }
  bool point(const Json& value, const Path& path, Point& out) {
    if (!value.is_array() || value.size() != 2) {
      fault(path, "expected a point [x, y]");
      return false;
    }
    const bool x = number(value[0], join(path, 0), -kLongest, kLongest, out.x);
    const bool y = number(value[1], join(path, 1), -kLongest, kLongest, out.y);
    return x && y;
  }
  bool point_at(const Json& in, const Path& path, std::string_view name, Need need, Point& out) {
    const Json* value = member(in, path, name, need);
    return value && point(*value, join(path, name), out);
  }

 private:
  static constexpr std::size_t kMostFaults = 200;

  std::vector<std::string>& faults_;
};

}  // namespace arrisline
