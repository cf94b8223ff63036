#include "app/lines.h"

#include <charconv>

namespace app {

std::string_view take_part(std::string_view& rest, char at) {
  const std::size_t end = rest.find(at);
  const std::string_view part = rest.substr(0, end);
  rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
  return part;
}

std::vector<Line> split_lines(std::string_view text) {
  std::vector<Line> lines;
  while (!text.empty()) {
    std::string_view rest = take_part(text, '\n');
    if (!rest.empty() && rest.back() == '\r') rest.remove_suffix(1);
    if (rest.empty()) continue;
    const std::string_view word = take_word(rest);
    lines.push_back({word, rest});
  }
  return lines;
}

std::optional<std::uint32_t> whole_number(std::string_view text) {
  std::uint32_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return number;
}

std::optional<std::uint32_t> counted_number(std::string_view text) {
  const auto number = whole_number(text);
  return number && *number > 0 ? number : std::nullopt;
}

}  // namespace app
