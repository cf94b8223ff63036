#include "app/preferences.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <iterator>

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
  int read = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), read);
  const bool whole = error == std::errc{} && end == text.data() + text.size();
  if (!whole || read < kSmallestText || read > kLargestText) return false;
  size = read;
  return true;
}

}  // namespace

std::vector<Line> split_lines(std::string_view text) {
  std::vector<Line> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    if (line.empty()) continue;
    const std::size_t space = line.find(' ');
    lines.push_back({line.substr(0, space),
                     space == std::string_view::npos ? std::string_view{} : line.substr(space + 1)});
  }
  return lines;
}

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
