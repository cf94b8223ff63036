// What a calculator asks: each input by its kind, its range from the calculator's own data. A
// value that the calculator refuses says why and the last good one stays.
#include <algorithm>

#include "screens/fields.h"
#include "screens/lookup.h"
#include "ui/ui.h"
#include "units/parse.h"

namespace screens {
namespace {

using calculators::Calculator;
using calculators::Input;
using calculators::Values;

constexpr std::size_t kSideBySide = 4;    // choices shown at once; more are folded away

// What is wrong with these values; empty when the calculator takes them.
std::string refusal(const Calculator& calculator, const Values& values, units::Preference preference) {
  const calculators::Evaluation evaluation = calculators::evaluate(calculator, values, preference);
  if (evaluation.result || !evaluation.problem) return {};
  return circuit::one_line(*evaluation.problem);
}

// One input of one calculator, as it stands.
struct Asked {
  const app::AppState& app;
  const Calculator& calculator;
  const Values& values;
  std::size_t index;

  [[nodiscard]] const Input& input() const { return calculator.inputs[index]; }
  [[nodiscard]] double value() const { return values[index]; }
  [[nodiscard]] Values with(double changed) const {
    Values all = values;
    all[index] = changed;
    return all;
  }
  [[nodiscard]] std::string name() const { return std::string(input().name); }
  [[nodiscard]] std::string text(double number) const { return calculators::value_text(input(), number, app.settings().units()); }
  // The answer's sentence with this value.
  [[nodiscard]] std::string answer_with(double changed) const {
    const auto evaluation = calculators::evaluate(calculator, with(changed), app.settings().units());
    return evaluation.result ? evaluation.result->sentence : std::string();
  }
};

std::optional<Values> draw_number(const Asked& asked) {
  const Input& input = asked.input();
  const units::Preference preference = asked.app.settings().units();
  const auto core_of = [&input, preference](double shown) {
    return units::settled(units::to_core(input.measure, shown, preference), input.low, input.high);
  };
  ui::StepperOptions options = amount_options({input.measure, asked.value(), input.low, input.high, input.step}, preference);
  options.shown = asked.text(asked.value());
  options.allowed = asked.text(input.low) + " to " + asked.text(input.high);
  options.read = [&asked, &input, preference](std::string_view text) -> ui::Read {
    const units::Typed typed = units::read(text, input.measure, preference);
    if (!typed.core) return {std::nullopt, typed.why_not};
    const double value = units::settled(*typed.core, input.low, input.high);
    if (std::string why = refusal(asked.calculator, asked.with(value), preference); !why.empty()) return {std::nullopt, why};
    return {units::to_shown(input.measure, value, preference), {}};
  };
  options.preview = [&asked, core_of](double shown) { return asked.answer_with(core_of(shown)); };
  const auto changed = ui::stepper(asked.name(), options);
  if (!changed) return std::nullopt;
  return asked.with(std::clamp(core_of(changed->value), input.low, input.high));
}

std::string plain(std::string_view text) {
  std::string word;
  for (const char c : text)
    if (c != ' ') word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  if (const std::size_t square = word.find("²"); square != std::string::npos) word.replace(square, std::string("²").size(), "2");
  return word;
}

bool is_awg(const calculators::Choice& choice) { return choice.key.ends_with("awg"); }

// "12", "12 AWG", "2.5 mm2": which size. A bare number is in the list that stands there.
std::optional<double> read_size(const Input& input, std::string_view text, bool awg_now) {
  std::string word = plain(text);
  if (word.ends_with("mm")) word += "2";
  for (std::size_t i = 0; i < input.choices.size(); ++i) {
    const std::string key(input.choices[i].key);
    const bool same_list = is_awg(input.choices[i]) == awg_now;
    if (word == key || (same_list && word + (awg_now ? "awg" : "mm2") == key)) return static_cast<double>(i);
  }
  return std::nullopt;
}

std::optional<Values> draw_sizes(const Asked& asked) {
  const Input& input = asked.input();
  if (!ui::disclosure("Pick from all sizes")) return std::nullopt;
  std::optional<Values> edited;
  for (const bool awg : {true, false}) {
    ui::paragraph(awg ? "AWG" : "mm²", ui::Ink::muted);
    const ui::Scope scope(awg ? "awg" : "metric");
    ui::begin_flow();
    for (std::size_t i = 0; i < input.choices.size(); ++i) {
      if (is_awg(input.choices[i]) != awg) continue;
      const std::string& name = input.choices[i].name;
      const bool on = asked.value() == static_cast<double>(i);
      if (ui::chip(name.substr(0, name.find(' ')), {.on = on, .said = "Wire " + name}) && !on)
        edited = asked.with(static_cast<double>(i));
    }
    ui::end_flow();
  }
  return edited;
}

// Wire: a step is the next size of its list.
std::optional<Values> draw_wire(const Asked& asked) {
  const Input& input = asked.input();
  const bool awg = is_awg(input.choices[static_cast<std::size_t>(asked.value())]);
  double low = input.high, high = 0.0;
  for (std::size_t i = 0; i < input.choices.size(); ++i) {
    if (is_awg(input.choices[i]) != awg) continue;
    low = std::min(low, static_cast<double>(i));
    high = std::max(high, static_cast<double>(i));
  }
  ui::StepperOptions options;
  options.shown = asked.text(asked.value());
  options.value = asked.value();
  options.low = low;
  options.high = high;
  options.allowed = asked.text(low) + " to " + asked.text(high);
  options.unit_keys = {{"AWG"}, {"mm²"}};
  const std::string allowed = options.allowed;
  options.read = [&asked, &input, awg, allowed](std::string_view text) -> ui::Read {
    const auto size = read_size(input, text, awg);
    if (!size) return {std::nullopt, "No such size in the tables. Give one from " + allowed + ", or from the other list."};
    if (std::string why = refusal(asked.calculator, asked.with(*size), asked.app.settings().units()); !why.empty()) return {std::nullopt, why};
    return {*size, {}};
  };
  options.preview = [&asked](double size) { return asked.answer_with(size); };
  std::optional<Values> edited;
  if (const auto changed = ui::stepper(asked.name(), options)) edited = asked.with(changed->value);
  if (auto picked = draw_sizes(asked)) edited = picked;
  return edited;
}

std::optional<Values> draw_choice(const Asked& asked) {
  const Input& input = asked.input();
  std::vector<std::string> names;
  for (const calculators::Choice& choice : input.choices) names.push_back(choice.name);
  const auto current = static_cast<std::size_t>(asked.value());
  const bool many = names.size() > kSideBySide;
  if (many && !ui::disclosure(asked.name() + ": " + names[current])) return std::nullopt;
  const auto chosen = ui::choice(asked.name(), names, current, {.sub = {}, .hide_label = many, .as_list = many});
  if (!chosen) return std::nullopt;
  return asked.with(static_cast<double>(*chosen));
}

std::optional<Values> draw_input(const Asked& asked) {
  const ui::Scope scope(asked.input().key);
  if (asked.input().choices.empty()) return draw_number(asked);
  return asked.input().key == "wire" ? draw_wire(asked) : draw_choice(asked);
}

// "12 V · 5 % · 50 °C": what stands folded away.
std::string folded_values(const app::AppState& app, const Calculator& calculator, const Values& values) {
  std::string text;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const Input& input = calculator.inputs[i];
    if (!input.folded || !calculators::is_asked(calculator, values, i)) continue;
    std::string value = calculators::value_text(input, values[i], app.settings().units());
    // A bare number, a yes or no says nothing without its name.
    if (value.find_first_not_of("0123456789.") == std::string::npos || value == "No" || value == "Yes")
      value = std::string(input.name) + " " + value;
    text += (text.empty() ? "" : " · ") + value;
  }
  return text;
}

}  // namespace

void draw_quick_inputs(app::AppState& app, const Calculator& calculator, const Values& values) {
  std::optional<Values> edited;
  const auto draw_all = [&](bool folded) {
    for (std::size_t i = 0; i < calculator.inputs.size(); ++i) {
      if (calculator.inputs[i].folded != folded || !calculators::is_asked(calculator, values, i)) continue;
      if (auto changed = draw_input({app, calculator, values, i})) edited = std::move(changed);
    }
  };
  ui::begin_card("asked", {.name = "What you know", .tone = ui::Tone::plain});
  draw_all(false);
  const std::string more = folded_values(app, calculator, values);
  if (!more.empty() && ui::disclosure("More", false, more)) draw_all(true);
  ui::end_card();
  if (!edited) return;
  const std::string why = refusal(calculator, *edited, app.settings().units());
  if (why.empty()) app.lookup().set_quick_values(calculator, *edited);
  else app.messages().say_problem(why);
}

}  // namespace screens
