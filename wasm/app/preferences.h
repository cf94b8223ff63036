// What a person set once for every circuit. Stored as lines "word value"; lines this version
// does not know are kept as they are, so that an older app does not lose a newer one's.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace app {

enum class Theme : std::uint8_t { automatic, day, night };
enum class UnitChoice : std::uint8_t { automatic, metric, us };

inline constexpr int kSmallestText = 100;   // per cent
inline constexpr int kLargestText = 200;

struct Preferences {
  Theme theme = Theme::automatic;
  UnitChoice units = UnitChoice::automatic;
  int text_size = 100;                      // per cent
  bool caution_seen = false;                // the card of the first start
  std::vector<std::string> unknown_lines;
};

Preferences read_preferences(std::string_view text);    // never fails: what can not be read stays as it was
std::string write_preferences(const Preferences& preferences);

}  // namespace app
