// Where a word too wide for its line may be parted. Private to the room.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace ui {

struct Parting {
  std::size_t at = 0;        // bytes of the word that stay on the line
  bool hyphen = false;       // to be drawn behind them; false: the word has one there, or a slash
};
// In order. Behind the word's own hyphens and slashes where it has some, else where English words
// are parted (before -ment, -tion, ...; between two consonants; before one). By rule, without a dictionary: a
// name in another language may be parted where its reader would not. Empty: no such place.
std::vector<Parting> own_partings(std::string_view word);
std::vector<Parting> syllable_partings(std::string_view word);

}  // namespace ui
