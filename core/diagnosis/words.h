// Small pieces of sentences. Private to this room.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "diagnosis/case.h"
#include "network/branch_network.h"

namespace diagnosis {

inline std::string joined(std::initializer_list<std::string_view> parts) {
  std::string text;
  for (const std::string_view part : parts) text.append(part);
  return text;
}
std::string letter_of(const Case& the_case, circuit::OutletId outlet);   // "C"; "?" when it is gone
// Where its wire comes from: "A", or "the block".
std::string fed_from_words(const Case& the_case, circuit::OutletId outlet);
inline std::string_view side_words(network::Side side) {
  return side == network::Side::positive ? "red" : "black";
}
inline char side_sign(network::Side side) { return side == network::Side::positive ? '+' : '-'; }
std::string neighbour_words(const Case& the_case, int neighbour);   // "Lights (position 2)"
std::string capital(std::string text);                             // first letter large, ASCII

}  // namespace diagnosis
