// The statements of a kit about the shop and its sticking board.
#pragma once

#include <optional>
#include <set>
#include <string>

#include "arrisline/kit.h"
#include "text/statement.h"

namespace arrisline {

/// `shop …`, any number of fields a line; `given` holds the fields that stood before.
void read_shop(Statement& statement, Shop& shop, std::set<std::string>& given);

/// `board stops at L… [screw D] [clear D]`.
std::optional<Board> read_board(Statement& statement);

}  // namespace arrisline
