// Blocks with their size in front, counted. Shown by tests/trace/svg_test.cpp.
#include "trace/xml_memory.h"

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <cstring>
#include <new>

#include "arrisline/limits.h"

namespace arrisline {

namespace {

/// What stands in front of a block; what follows it is aligned as any block is.
struct alignas(std::max_align_t) Head {
  std::size_t size = 0;
};

thread_local std::size_t used = 0;

void* take(std::size_t size) {
  if (size > kMaxXmlBytes || used + size > kMaxXmlBytes) return nullptr;
  void* const block = std::malloc(sizeof(Head) + size);
  if (block == nullptr) return nullptr;
  used += size;
  return new (block) Head{size} + 1;
}

void give_back(void* given) {
  if (given == nullptr) return;
  Head* const head = static_cast<Head*>(given) - 1;
  used -= head->size;
  std::free(head);
}

void* resize(void* given, std::size_t size) {
  void* const block = take(size);
  if (block == nullptr || given == nullptr) return block;
  std::memcpy(block, given, std::min(size, (static_cast<Head*>(given) - 1)->size));
  give_back(given);
  return block;
}

constexpr XML_Memory_Handling_Suite kBounded = {take, resize, give_back};

}  // namespace

const XML_Memory_Handling_Suite* bounded_memory() {
  return &kBounded;
}

}  // namespace arrisline
