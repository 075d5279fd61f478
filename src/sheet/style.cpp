// Shown by tests/sheet/picture_test.cpp.
#include "sheet/style.h"

namespace arrisline {

Style style_of(Role role) {
  switch (role) {
    case Role::wood:
      return {0xe9dcc3, false, 0x4a3b28, 0.18, 0, 0};
    case Role::taken:
      return {0xffffff, true, 0x4a3b28, 0.18, 0, 0};
    case Role::blank:
      return {std::nullopt, false, 0x6b6b6b, 0.13, 0.3, 0.9};
    case Role::finished:
      return {std::nullopt, false, kInk, 0.5, 0, 0};
    case Role::plane:
      return {std::nullopt, false, 0x23507a, 0.18, 0, 0};
    case Role::sole:
      return {std::nullopt, false, 0x23507a, 0.45, 0, 0};
    case Role::turn:
      return {std::nullopt, false, 0x23507a, 0.18, 1.2, 0.7};
    case Role::gauge:
      return {std::nullopt, false, 0x8a2b1c, 0.18, 2.4, 0.6};
    case Role::leader:
      return {std::nullopt, false, 0x4d4d4d, 0.1, 0, 0};
    case Role::rail:
      return {kInk, false, std::nullopt, 0, 0, 0};
    case Role::centre:
      return {std::nullopt, false, kInk, 0.13, 0, 0};
    case Role::measure:
      return {std::nullopt, false, kInk, 0.15, 0, 0};
  }
  return {};
}

const char* word(Role role) {
  switch (role) {
    case Role::wood:
      return "wood";
    case Role::taken:
      return "taken";
    case Role::blank:
      return "blank";
    case Role::finished:
      return "finished";
    case Role::plane:
      return "plane";
    case Role::sole:
      return "sole";
    case Role::turn:
      return "turn";
    case Role::gauge:
      return "gauge";
    case Role::leader:
      return "leader";
    case Role::rail:
      return "rail";
    case Role::centre:
      return "centre";
    case Role::measure:
      return "measure";
  }
  return "";
}

}  // namespace arrisline
