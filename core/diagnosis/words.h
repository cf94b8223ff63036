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
std::string letter_of(const Case& the_case, circuit::OutletId outlet);  // "C"; "?" when it is gone
// Where its wire comes from: "A", or "the block".
std::string fed_from_words(const Case& the_case, circuit::OutletId outlet);
// The conductor's colour: "red", or what this vehicle has.
std::string_view side_words(const Case& the_case, network::Side side);
inline char side_sign(network::Side side) { return side == network::Side::positive ? '+' : '-'; }
// "Pump (position 2)", "the circuit at position 2", "another circuit on this block"
std::string neighbour_words(const Case& the_case, int neighbour);
std::string capital(std::string text);  // first letter large, ASCII

// Sentences of the tables hold {tokens}. `resolve` gives the text for each.
template <class Resolve>
std::string filled(std::string_view sentence, Resolve resolve) {
  std::string text;
  for (std::size_t at = 0; at < sentence.size();) {
    const std::size_t open = sentence.find('{', at);
    const std::size_t close = open == std::string_view::npos ? open : sentence.find('}', open);
    text.append(sentence.substr(at, open == std::string_view::npos ? open : open - at));
    if (close == std::string_view::npos) break;
    text.append(resolve(sentence.substr(open + 1, close - open - 1)));
    at = close + 1;
  }
  return text;
}
// What a sentence is about, and the text of its tokens: plus, minus, Plus, Minus (colours), side, other_side,
// outlet, from, neighbour, position, fuse, new_fuse, rating, failed (the outlet complained of), fuse_caution,
// fuse_number, whose (this circuit or the neighbour), its_rating (of the neighbour's fuse), no_load.
struct Subject {
  circuit::OutletId outlet = circuit::kBlock;
  network::Side side = network::Side::positive;
  int neighbour = -1;
};
std::string token_words(const Case& the_case, const Subject& subject, std::string_view token);

}  // namespace diagnosis
