#include "app/quick_inputs.h"

#include <array>
#include <cstdio>
#include <optional>

#include "app/lines.h"
#include "units/parse.h"

namespace app {
namespace {

// parse_number knows no locale and no exponent beyond what we write.
std::optional<double> read_number(std::string_view text) {
  if (text.empty() || text.size() > 40) return std::nullopt;
  const auto read = units::parse_number(text);
  return read.value;
}

// Enough digits that a number comes back as it went.
std::string number(double value) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.12g", value);
  return text.data();
}

std::optional<double> read_value(const calculators::Input& input, std::string_view text) {
  if (!input.choices.empty()) {
    const auto index = calculators::choice_index(input, text);
    return index ? std::optional(static_cast<double>(*index)) : std::nullopt;
  }
  return read_number(text);
}

bool fits(const calculators::Input& input, double value) {
  return !calculators::check_input(input, value, units::Preference::metric).has_value();
}

}  // namespace

QuickInputs::QuickInputs(std::string_view record) {
  for (const Line& line : split_lines(record)) lines_[std::string(line.word)] = std::string(line.rest);
}

calculators::Values QuickInputs::values(const calculators::Calculator& calculator) const {
  calculators::Values values = calculators::normal_values(calculator);
  const auto found = lines_.find(calculator.key);
  if (found == lines_.end()) return values;
  std::string_view rest = found->second;
  while (!rest.empty()) {
    const std::string_view pair = take_word(rest);
    const std::size_t equals = pair.find('=');
    if (equals == std::string_view::npos) continue;
    const auto index = calculators::input_index(calculator, pair.substr(0, equals));
    if (!index) continue;
    const calculators::Input& input = calculator.inputs[*index];
    const auto value = read_value(input, pair.substr(equals + 1));
    if (value && fits(input, *value)) values[*index] = *value;
  }
  // Kept from a version that allowed more, together they may mean nothing.
  const bool together = calculators::evaluate(calculator, values, units::Preference::metric).result.has_value();
  return together ? values : calculators::normal_values(calculator);
}

void QuickInputs::set(const calculators::Calculator& calculator, const calculators::Values& values) {
  if (values.size() != calculator.inputs.size()) return;
  std::string text;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const calculators::Input& input = calculator.inputs[i];
    if (!fits(input, values[i])) continue;
    if (!text.empty()) text += " ";
    text += std::string(input.key) + "=";
    text += !input.choices.empty()
                ? std::string(input.choices[static_cast<std::size_t>(values[i])].key)
                : number(values[i]);
  }
  lines_[std::string(calculator.key)] = text;
}

std::string QuickInputs::record() const {
  std::string text;
  for (const auto& [calculator, rest] : lines_) text += calculator + (rest.empty() ? "" : " ") + rest + "\n";
  return text;
}

}  // namespace app
