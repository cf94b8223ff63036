// The small records of the app are lines "word rest of line". What reads them is shared here.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace app {

struct Line {
  std::string_view word;
  std::string_view rest;
};
// In order, empty lines left out. The views are into `text`.
std::vector<Line> split_lines(std::string_view text);

// The text up to the first `at`, taken off `rest` with it; all of it where there is none.
std::string_view take_part(std::string_view& rest, char at);
inline std::string_view take_word(std::string_view& rest) { return take_part(rest, ' '); }

// Digits and nothing else, 0 to 4294967295.
std::optional<std::uint32_t> whole_number(std::string_view text);
// The same, from 1: numbers of circuits, outlets and records start there.
std::optional<std::uint32_t> counted_number(std::string_view text);

}  // namespace app
