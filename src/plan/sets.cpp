// Shown by tests/plan/oracle_test.cpp.
#include "plan/sets.h"

#include <algorithm>
#include <cmath>

namespace arrisline {

std::vector<Draft> together(const std::vector<Draft>& a, const std::vector<Draft>& b) {
  std::vector<Draft> out = a;
  out.insert(out.end(), b.begin(), b.end());
  return out;
}

std::vector<long long> key_of(const Draft& draft) {
  std::vector<long long> out;
  out.reserve(2 + 3 * (draft.poses.size() + draft.otherwise.size()) + draft.starts.size());
  out.push_back(draft.plane);
  out.push_back(draft.arc);
  for (const std::vector<Pose>* poses : {&draft.poses, &draft.otherwise}) {
    for (const Pose& pose : *poses) {
      out.push_back(std::llround(pose.at.x * 1e5));
      out.push_back(std::llround(pose.at.y * 1e5));
      out.push_back(std::llround(wrap_degrees(pose.tilt) * 1e5));
    }
  }
  for (const double start : draft.starts) out.push_back(std::llround(start * 1e5));
  return out;
}

bool has(const std::vector<Draft>& drafts, const Draft& draft) {
  const std::vector<long long> key = key_of(draft);
  return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& other) { return key_of(other) == key; });
}

Keys keys_of(const std::vector<Draft>& drafts) {
  Keys keys;
  keys.reserve(drafts.size());
  for (const Draft& draft : drafts) keys.push_back(key_of(draft));
  return keys;
}

static std::vector<long long> joined(std::vector<const std::vector<long long>*> keys) {
  std::sort(keys.begin(), keys.end(), [](const auto* a, const auto* b) { return *a < *b; });
  std::size_t length = 0;
  for (const auto* key : keys) length += 1 + key->size();
  std::vector<long long> out;
  out.reserve(length);
  for (const auto* key : keys) {
    out.push_back(static_cast<long long>(key->size()));
    out.insert(out.end(), key->begin(), key->end());
  }
  return out;
}

static std::vector<const std::vector<long long>*> each(const Keys& keys) {
  std::vector<const std::vector<long long>*> out;
  out.reserve(keys.size() + 1);
  for (const std::vector<long long>& key : keys) out.push_back(&key);
  return out;
}

std::vector<long long> key_of(const std::vector<Draft>& drafts) {
  const Keys keys = keys_of(drafts);
  return joined(each(keys));
}

std::vector<long long> key_of(const Keys& keys, const std::vector<long long>& more) {
  std::vector<const std::vector<long long>*> all = each(keys);
  all.push_back(&more);
  return joined(std::move(all));
}

}  // namespace arrisline
