#include "app/preferences.h"

#include <algorithm>
#include <array>

#include "app/lines.h"

namespace app {
namespace {

struct ThemeWord { Theme value; std::string_view word; };
constexpr std::array<ThemeWord, 3> kThemes{{{Theme::automatic, "auto"}, {Theme::day, "day"}, {Theme::night, "night"}}};
struct UnitWord { UnitChoice value; std::string_view word; };
constexpr std::array<UnitWord, 3> kUnits{
    {{UnitChoice::automatic, "auto"}, {UnitChoice::metric, "metric"}, {UnitChoice::us, "us"}}};

template <class Words, class Value>
bool read_word(const Words& words, std::string_view text, Value& value) {
  for (const auto& known : words)
    if (known.word == text) {
      value = known.value;
      return true;
    }
  return false;
}

template <class Words, class Value>
std::string word_of(const Words& words, Value value) {
  for (const auto& known : words)
    if (known.value == value) return std::string(known.word);
  return "auto";
}

bool read_text_size(std::string_view text, int& size) {
  const auto read = whole_number(text);
  if (!read || *read < kSmallestText || *read > kLargestText) return false;
  size = static_cast<int>(*read);
  return true;
}

}  // namespace

Preferences read_preferences(std::string_view text) {
  Preferences read;
  for (const Line& line : split_lines(text)) {
    const bool known = (line.word == "theme" && read_word(kThemes, line.rest, read.theme)) ||
                       (line.word == "units" && read_word(kUnits, line.rest, read.units)) ||
                       (line.word == "text-size" && read_text_size(line.rest, read.text_size));
    if (known || line.word == "theme" || line.word == "units" || line.word == "text-size") continue;
    if (line.word == "caution-seen") read.caution_seen = line.rest == "yes";
    else read.unknown_lines.push_back(std::string(line.word) + (line.rest.empty() ? "" : " ") + std::string(line.rest));
  }
  return read;
}

std::string write_preferences(const Preferences& preferences) {
  std::string text = "theme " + word_of(kThemes, preferences.theme) + "\n";
  text += "units " + word_of(kUnits, preferences.units) + "\n";
  text += "text-size " + std::to_string(preferences.text_size) + "\n";
  text += std::string("caution-seen ") + (preferences.caution_seen ? "yes" : "no") + "\n";
  for (const std::string& line : preferences.unknown_lines) text += line + "\n";
  return text;
}

}  // namespace app
