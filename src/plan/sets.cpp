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
  std::vector<long long> out = {draft.plane, draft.arc};
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

std::vector<long long> key_of(const std::vector<Draft>& drafts) {
  std::vector<std::vector<long long>> keys;
  for (const Draft& draft : drafts) keys.push_back(key_of(draft));
  std::sort(keys.begin(), keys.end());
  std::vector<long long> out;
  for (const std::vector<long long>& key : keys) {
    out.push_back(static_cast<long long>(key.size()));
    out.insert(out.end(), key.begin(), key.end());
  }
  return out;
}

}  // namespace arrisline
