#include "screens/fields.h"

#include <algorithm>
#include <cmath>

#include "circuit/validate.h"
#include "units/parse.h"

namespace screens {
namespace {

using circuit::Field;

enum class Measure { length, short_length, celsius, percent, amperes, watts, volts, count };

Measure measure_of(Field field) {
  const circuit::Limit& limit = circuit::limit(field);
  if (field == Field::tail_m) return Measure::short_length;
  if (limit.unit == "m") return Measure::length;
  if (limit.unit == "°C") return Measure::celsius;
  if (limit.unit == "%") return Measure::percent;
  if (limit.unit == "A") return Measure::amperes;
  if (limit.unit == "W") return Measure::watts;
  if (limit.unit == "V") return Measure::volts;
  return Measure::count;
}

// The unit a stepper steps in: shown = core * factor + offset.
struct Scale {
  double factor = 1.0;
  double offset = 0.0;
  double step = 0.0;     // 0: the limit's own
};

// Exact by definition: 1 ft = 0.3048 m, 1 in = 0.0254 m, F = 1.8 C + 32.
Scale scale_of(Measure measure, bool us) {
  switch (measure) {
    case Measure::length: return us ? Scale{1.0 / 0.3048, 0.0, 0.5} : Scale{};
    case Measure::short_length: return us ? Scale{1.0 / 0.0254, 0.0, 1.0} : Scale{1000.0, 0.0, 25.0};
    case Measure::celsius: return us ? Scale{1.8, 32.0, 10.0} : Scale{};
    case Measure::percent: return Scale{100.0, 0.0, 0.0};
    default: return Scale{};
  }
}

double to_shown(const Scale& scale, double core) { return core * scale.factor + scale.offset; }
double to_core(const Scale& scale, double shown) { return (shown - scale.offset) / scale.factor; }

struct Bounds { double low; double high; };
Bounds bounds_of(Field field, int blocks) {
  const circuit::Limit& limit = circuit::limit(field);
  const bool per_12v = field == Field::minimum_voltage_per_12v || field == Field::resting_per_12v ||
                       field == Field::low_per_12v;
  const double times = per_12v ? blocks : 1.0;
  return {limit.low * times, limit.high * times};
}

bool us_units(const app::AppState& app) { return app.settings().units() == units::Preference::us; }

// A conversion there and back may leave the end of a range by a rounding error.
double settle(double value, const Bounds& bounds) {
  const double slack = 1e-9 * std::max(1.0, std::abs(bounds.high));
  if (value < bounds.low && value > bounds.low - slack) return bounds.low;
  if (value > bounds.high && value < bounds.high + slack) return bounds.high;
  return value;
}

template <class T>
ui::Read as_read(const units::Parsed<T>& parsed) {
  if (!parsed.value) return {std::nullopt, parsed.why_not};
  if constexpr (std::is_same_v<T, double>) return {*parsed.value, {}};
  else return {parsed.value->number(), {}};
}

// Typed text to the core's unit.
ui::Read parse(Measure measure, std::string_view text, units::Preference preference) {
  switch (measure) {
    case Measure::length: return as_read(units::parse_length(text, preference));
    case Measure::short_length: {
      // A bare number is millimetres or inches here, not metres or feet.
      const auto bare = units::parse_number(text);
      if (!bare.value) return as_read(units::parse_length(text, preference));
      return {*bare.value * (preference == units::Preference::us ? 0.0254 : 0.001), {}};
    }
    case Measure::celsius: return as_read(units::parse_celsius(text, preference));
    case Measure::percent: return as_read(units::parse_percent(text));
    case Measure::amperes: return as_read(units::parse_amperes(text));
    case Measure::watts: return as_read(units::parse_watts(text));
    case Measure::volts: return as_read(units::parse_volts(text));
    case Measure::count: return as_read(units::parse_number(text));
  }
  return {};
}

std::string capital(std::string_view text) {
  std::string sentence(text);
  if (!sentence.empty() && sentence.front() >= 'a' && sentence.front() <= 'z')
    sentence.front() = static_cast<char>(sentence.front() - 'a' + 'A');
  return sentence;
}

std::vector<ui::UnitKey> unit_keys(Measure measure, bool us) {
  switch (measure) {
    case Measure::length:
      if (us) return {{"ft", false}, {"in", false}};
      return {{"m"}, {"cm"}};
    case Measure::short_length:
      if (us) return {{"in"}, {"ft", false}};
      return {{"mm"}, {"cm"}, {"m"}};
    case Measure::celsius: return {{"°C"}, {"°F"}};
    default: return {};
  }
}

ui::Reader reader_of(const app::AppState& app, const Number& number) {
  const Measure measure = measure_of(number.field);
  const Scale scale = scale_of(measure, us_units(app));
  const units::Preference preference = app.settings().units();
  const std::string allowed = allowed_text(app, number.field, number.blocks);
  return [=, &app](std::string_view text) -> ui::Read {
    ui::Read read = parse(measure, text, preference);
    if (!read.value) return read;
    const double core = settle(*read.value, bounds_of(number.field, number.blocks));
    if (circuit::check_value(number.field, core, {}, number.blocks)) {
      const std::string_view whole = circuit::limit(number.field).whole ? ", whole numbers" : "";
      return {std::nullopt, capital(circuit::limit(number.field).name) + " is " +
                                shown_text(app, number.field, core) + ". Give " + allowed + std::string(whole) + "."};
    }
    return {to_shown(scale, core), {}};
  };
}

ui::StepperOptions options_of(const app::AppState& app, const Number& number) {
  const Measure measure = measure_of(number.field);
  const Scale scale = scale_of(measure, us_units(app));
  const circuit::Limit& limit = circuit::limit(number.field);
  const Bounds bounds = bounds_of(number.field, number.blocks);
  ui::StepperOptions options;
  options.sub = number.sub;
  options.said = number.said;
  options.shown = number.shown.empty() ? shown_text(app, number.field, number.value) : number.shown;
  options.value = to_shown(scale, number.value);
  options.low = to_shown(scale, limit.zero.empty() ? bounds.low : 0.0);
  options.high = to_shown(scale, bounds.high);
  options.step = scale.step > 0.0 ? scale.step : limit.step * scale.factor;
  options.allowed = allowed_text(app, number.field, number.blocks);
  if (!number.shown.empty()) options.first_text = units::number_text(options.value, 4);
  options.read = reader_of(app, number);
  options.unit_keys = unit_keys(measure, us_units(app));
  options.minus_sign = bounds.low < 0.0;
  options.disabled = number.disabled;
  return options;
}

std::optional<ui::Changed> in_core_unit(const app::AppState& app, const Number& number,
                                        std::optional<ui::Changed> changed) {
  if (!changed) return std::nullopt;
  const Scale scale = scale_of(measure_of(number.field), us_units(app));
  const Bounds bounds = bounds_of(number.field, number.blocks);
  double core = settle(to_core(scale, changed->value), bounds);
  // One press down from the least goes to the 'none' that zero stands for, where it does.
  if (core < bounds.low) core = circuit::limit(number.field).zero.empty() ? bounds.low : 0.0;
  changed->value = std::min(core, bounds.high);
  return changed;
}

}  // namespace

std::string shown_text(const app::AppState& app, Field field, double value) {
  const circuit::Limit& limit = circuit::limit(field);
  if (value == 0.0 && !limit.zero.empty()) return "none";
  switch (measure_of(field)) {
    case Measure::length: return units::length_text(units::Metres(value), app.settings().units());
    case Measure::short_length: return units::short_length_text(units::Metres(value), app.settings().units());
    case Measure::celsius: return units::celsius_text(units::Celsius(value), app.settings().units());
    case Measure::percent: return units::percent_text(value);
    case Measure::amperes: return units::amperes_text(units::Amperes(value));
    case Measure::watts: return units::watts_text(units::Watts(value));
    case Measure::volts: return units::volts_text(units::Volts(value));
    case Measure::count: return units::number_text(value, 6);
  }
  return {};
}

std::string allowed_text(const app::AppState& app, Field field, int blocks) {
  const Bounds bounds = bounds_of(field, blocks);
  return shown_text(app, field, bounds.low) + " to " + shown_text(app, field, bounds.high);
}

std::optional<ui::Changed> number_stepper(const app::AppState& app, const Number& number) {
  return in_core_unit(app, number, ui::stepper(number.label, options_of(app, number)));
}

std::optional<ui::Changed> number_row(const app::AppState& app, const Number& number) {
  return in_core_unit(app, number, ui::number_row(number.label, options_of(app, number)));
}

namespace {

// "60 W" and "60w" are watts, "5 A" is amps, a bare number is what the field shows now.
bool typed_watts(std::string_view text, bool now) {
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  if (text.empty()) return now;
  if (text.back() == 'W' || text.back() == 'w') return true;
  if (text.back() == 'A' || text.back() == 'a') return false;
  return now;
}

}  // namespace

std::optional<LoadChange> load_stepper(const app::AppState& app, std::string_view label, std::string_view said,
                                       const circuit::Load& load, bool disabled) {
  const bool watts_now = load.rating_in_watts;
  const Field field = watts_now ? Field::load_w : Field::load_a;
  const circuit::Limit& limit = circuit::limit(field);
  ui::StepperOptions options;
  options.shown = load.rating == 0.0 ? "none" : shown_text(app, field, load.rating);
  options.said = said;
  options.value = load.rating;
  options.high = limit.high;
  options.step = limit.step;
  options.allowed = allowed_text(app, Field::load_a) + ", or " + allowed_text(app, Field::load_w);
  if (load.rating == 0.0) options.first_text = watts_now ? "0 W" : "0 A";
  options.unit_keys = {{"A"}, {"W"}};
  options.disabled = disabled;
  options.read = [&app, watts_now](std::string_view text) -> ui::Read {
    const bool watts = typed_watts(text, watts_now);
    const Field typed = watts ? Field::load_w : Field::load_a;
    ui::Read read = parse(watts ? Measure::watts : Measure::amperes, text, app.settings().units());
    if (read.value && circuit::check_value(typed, *read.value, {}))
      return {std::nullopt, "Load is " + shown_text(app, typed, *read.value) + ". Give " +
                                allowed_text(app, typed) + ", or 0 for none."};
    return read;
  };
  const auto changed = ui::stepper(label, options);
  if (!changed) return std::nullopt;
  const bool watts = typed_watts(changed->typed, watts_now);
  const double low = circuit::limit(watts ? Field::load_w : Field::load_a).low;
  return LoadChange{changed->value < low ? 0.0 : changed->value, watts, changed->joins};
}

void commit(app::AppState& app, const circuit::Edit& edit, std::string join_key, const ui::Changed& changed) {
  if (!changed.joins) app.editor().end_join();
  app.editor().dispatch(edit, std::move(join_key));
}

std::optional<std::string> name_field(Memory& memory, std::string_view field, std::string_view label,
                                      const std::string& value, bool may_be_empty) {
  Draft& draft = memory.draft;
  const bool drafting = draft.field == field;
  const auto typed = ui::text_field(label, {.value = drafting ? draft.text : value,
                                            .placeholder = {},
                                            .error = drafting ? draft.error : std::string(),
                                            .hide_label = false});
  if (!typed) return std::nullopt;
  const bool empty_is_fine = may_be_empty && typed->empty();
  const auto problem = empty_is_fine ? std::nullopt : circuit::check_name(*typed, {});
  if (problem) {
    draft = {std::string(field), *typed, circuit::one_line(*problem)};
    return std::nullopt;
  }
  draft = {};
  return typed;
}

}  // namespace screens
