// How the cost of planning grows with the elements of the profile and the planes of the kit.
#pragma once

namespace arrisline::bench {

/// Plans generated mouldings, prints the table in Markdown and the growth fitted to it.
void print_growth();

}  // namespace arrisline::bench
