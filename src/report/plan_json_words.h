// The words of the plan's JSON, one table each, shared by its writer and its reader.
#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "arrisline/plan.h"

namespace arrisline::json_words {

template <class T, std::size_t N>
using Table = std::array<std::pair<std::string_view, T>, N>;

inline constexpr Table<PlaneKind, 7> kKinds{{{"rebate", PlaneKind::rebate},
                                             {"plough", PlaneKind::plough},
                                             {"bench", PlaneKind::bench},
                                             {"hollow", PlaneKind::hollow},
                                             {"round", PlaneKind::round},
                                             {"shaped", PlaneKind::shaped},
                                             {"scraper", PlaneKind::scraper}}};

inline constexpr Table<Rides, 6> kRides{{{"gauge line", Rides::gauge_line},
                                         {"wall", Rides::wall},
                                         {"fence", Rides::fence},
                                         {"two arrises", Rides::two_arrises},
                                         {"own arc", Rides::own_arc},
                                         {"by hand", Rides::by_hand}}};

/// Of the two ways to turn the blank over, `planed` tells which.
inline constexpr Table<Lies, 3> kLies{
    {{"face up", Lies::face_up}, {"underside up", Lies::underside_up}, {"end for end", Lies::end_for_end}}};

inline constexpr Table<Planed, 2> kPlaned{
    {{"along the arrow", Planed::along}, {"against the arrow", Planed::against}}};

inline constexpr Table<Side, 4> kSides{
    {{"face", Side::face}, {"edge", Side::edge}, {"back", Side::back}, {"underside", Side::underside}}};

inline constexpr Table<Chain, 3> kChains{
    {{"face", Chain::face}, {"underside", Chain::underside}, {"back", Chain::back}}};

inline constexpr Table<Turn, 2> kTurns{{{"left", Turn::left}, {"right", Turn::right}}};

template <class T, std::size_t N>
constexpr std::string_view word_for(const Table<T, N>& table, T value) {
  for (const auto& entry : table)
    if (entry.second == value) return entry.first;
  return "";
}

}  // namespace arrisline::json_words
