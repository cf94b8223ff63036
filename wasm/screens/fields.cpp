#include "screens/fields.h"

#include <algorithm>
#include <array>
#include <utility>

#include "circuit/validate.h"
#include "screens/words.h"
#include "units/parse.h"

namespace screens {
namespace {

using circuit::Field;
using units::Measure;
using units::Preference;

// In the order of Field.
constexpr std::array kMeasures{
    std::pair{Field::run_m, Measure::length},
    std::pair{Field::load_a, Measure::current},
    std::pair{Field::load_w, Measure::power},
    std::pair{Field::at_most_at_once_a, Measure::current},
    std::pair{Field::drop_limit_fraction, Measure::fraction},
    std::pair{Field::minimum_voltage_per_12v, Measure::voltage},
    std::pair{Field::ambient_c, Measure::temperature},
    std::pair{Field::wire_temperature_c, Measure::temperature},
    std::pair{Field::circuits_bundled, Measure::count},
    std::pair{Field::tail_m, Measure::short_length},
    std::pair{Field::feeder_run_m, Measure::length},
    std::pair{Field::main_fuse_a, Measure::current},
    std::pair{Field::resting_per_12v, Measure::voltage},
    std::pair{Field::low_per_12v, Measure::voltage},
    std::pair{Field::part_rating_a, Measure::current},
    std::pair{Field::fuse_position, Measure::count},
    std::pair{Field::fuse_a, Measure::current},
    std::pair{Field::taps, Measure::count},
    std::pair{Field::inrush_a, Measure::current},
    std::pair{Field::inrush_s, Measure::time},
    std::pair{Field::in_line_a, Measure::current},
    std::pair{Field::highest_per_12v, Measure::voltage},
    std::pair{Field::internal_ohm, Measure::small_resistance},
    std::pair{Field::main_fuse_distance_m, Measure::length},
    std::pair{Field::disconnect_a, Measure::current},
    std::pair{Field::block_a, Measure::current},
    std::pair{Field::beside_a, Measure::current},
    std::pair{Field::capacity_ah, Measure::charge},
    std::pair{Field::positions, Measure::count},
    std::pair{Field::source_a, Measure::current},
    std::pair{Field::source_run_m, Measure::length},
};
constexpr bool in_order_of_field() {
  for (std::size_t i = 0; i < kMeasures.size(); ++i) {
    if (static_cast<std::size_t>(kMeasures[i].first) != i) return false;
  }
  return static_cast<std::size_t>(Field::source_run_m) + 1 == kMeasures.size();
}
static_assert(in_order_of_field());

Measure measure_of(Field field) { return kMeasures.at(static_cast<std::size_t>(field)).second; }

struct Bounds { double low; double high; };
Bounds bounds_of(Field field, int blocks) {
  const circuit::Limit& limit = circuit::limit(field);
  const bool per_12v = field == Field::minimum_voltage_per_12v || field == Field::resting_per_12v ||
                       field == Field::low_per_12v || field == Field::highest_per_12v;
  const double times = per_12v ? blocks : 1.0;
  return {limit.low * times, limit.high * times};
}

std::string capital(std::string_view text) {
  std::string sentence(text);
  if (!sentence.empty() && sentence.front() >= 'a' && sentence.front() <= 'z')
    sentence.front() = static_cast<char>(sentence.front() - 'a' + 'A');
  return sentence;
}

Amount amount_of(const Number& number) {
  const circuit::Limit& limit = circuit::limit(number.field);
  const Bounds bounds = bounds_of(number.field, number.blocks);
  return {measure_of(number.field), number.value, limit.zero.empty() ? bounds.low : 0.0, bounds.high, limit.step};
}

// "Length is 3000 m. Give 0.05 m to 100 m."
std::string refusal(const app::AppState& app, Field field, int blocks, double core) {
  const circuit::Limit& limit = circuit::limit(field);
  return capital(limit.name) + " is " + shown_text(app, field, core) + ". Give " + allowed_text(app, field, blocks) +
         (limit.whole ? ", whole numbers." : ".");
}

ui::Reader reader_of(const app::AppState& app, const Number& number) {
  const Preference preference = app.settings().units();
  return [&app, preference, field = number.field, blocks = number.blocks](std::string_view text) -> ui::Read {
    const units::Typed typed = units::read(text, measure_of(field), preference);
    if (!typed.core) return {std::nullopt, typed.why_not};
    const Bounds bounds = bounds_of(field, blocks);
    const double core = units::settled(*typed.core, bounds.low, bounds.high);
    if (circuit::check_value(field, core, {}, blocks)) return {std::nullopt, refusal(app, field, blocks, core)};
    return {units::to_shown(measure_of(field), core, preference), {}};
  };
}

ui::StepperOptions options_of(const app::AppState& app, const Number& number) {
  ui::StepperOptions options = amount_options(amount_of(number), app.settings().units());
  options.sub = number.sub;
  options.said = number.said;
  options.shown = number.shown.empty() ? shown_text(app, number.field, number.value) : number.shown;
  options.allowed = allowed_text(app, number.field, number.blocks);
  options.read = reader_of(app, number);
  options.disabled = number.disabled;
  return options;
}

std::optional<ui::Changed> in_core_unit(const app::AppState& app, const Number& number, std::optional<ui::Changed> changed) {
  if (!changed) return std::nullopt;
  const Bounds bounds = bounds_of(number.field, number.blocks);
  double core = units::settled(units::to_core(measure_of(number.field), changed->value, app.settings().units()), bounds.low, bounds.high);
  // One press down from the least goes to the 'none' that zero stands for, where it does.
  if (core < bounds.low) core = circuit::limit(number.field).zero.empty() ? bounds.low : 0.0;
  changed->value = std::min(core, bounds.high);
  return changed;
}

}  // namespace

ui::StepperOptions amount_options(const Amount& amount, Preference preference) {
  const units::MeasureRow& row = units::row(amount.measure, preference);
  ui::StepperOptions options;
  options.shown = units::text(amount.measure, amount.value, preference);
  options.value = units::to_shown(amount.measure, amount.value, preference);
  options.low = units::to_shown(amount.measure, amount.low, preference);
  options.high = units::to_shown(amount.measure, amount.high, preference);
  options.step = amount.step > 0.0 ? units::shown_step(amount.measure, amount.step, preference) : row.step;
  options.first_text = units::typed_text(amount.measure, amount.value, preference);
  options.unit = row.unit;
  options.unit_keys.assign(row.keys.begin(), row.keys.end());
  options.minus_sign = options.low < 0.0;
  return options;
}

std::string shown_text(const app::AppState& app, Field field, double value) {
  if (value == 0.0 && !circuit::limit(field).zero.empty()) return "none";
  return units::text(measure_of(field), value, app.settings().units());
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

// A bare number is what the field shows now; "60 W" or "5 A" says which it is.
std::array<Measure, 2> load_measures(bool watts_now) {
  if (watts_now) return {Measure::power, Measure::current};
  return {Measure::current, Measure::power};
}

}  // namespace

std::optional<LoadChange> load_stepper(const app::AppState& app, std::string_view label, std::string_view said,
                                       const circuit::Load& load, bool disabled) {
  const bool watts_now = load.rating_in_watts;
  const Field field = watts_now ? Field::load_w : Field::load_a;
  const Preference preference = app.settings().units();
  ui::StepperOptions options = amount_options({measure_of(field), load.rating, 0.0, circuit::limit(field).high, circuit::limit(field).step},
                                              preference);
  options.shown = shown_text(app, field, load.rating);
  options.said = said;
  options.allowed = allowed_text(app, Field::load_a) + ", or " + allowed_text(app, Field::load_w);
  options.unit_keys = {{units::row(Measure::current, preference).unit}, {units::row(Measure::power, preference).unit}};
  options.disabled = disabled;
  options.read = [&app, preference, watts_now](std::string_view text) -> ui::Read {
    const units::Typed typed = units::read(text, load_measures(watts_now), preference);
    if (!typed.core) return {std::nullopt, typed.why_not};
    const Field as = typed.measure == Measure::power ? Field::load_w : Field::load_a;
    if (circuit::check_value(as, *typed.core, {}))
      return {std::nullopt, "Load is " + shown_text(app, as, *typed.core) + ". Give " + allowed_text(app, as) + ", or 0 for none."};
    return {*typed.core, {}};
  };
  const auto changed = ui::stepper(label, options);
  if (!changed) return std::nullopt;
  const bool watts = changed->typed.empty()
                         ? watts_now
                         : units::read(changed->typed, load_measures(watts_now), preference).measure == Measure::power;
  const double low = circuit::limit(watts ? Field::load_w : Field::load_a).low;
  return LoadChange{changed->value < low ? 0.0 : changed->value, watts, changed->joins};
}

void commit(app::AppState& app, const circuit::Edit& edit, std::string join_key, const ui::Changed& changed) {
  if (!changed.joins) app.editor().end_join();
  app.editor().dispatch(edit, std::move(join_key));
}

void change(app::AppState& app, std::uint32_t vehicle, const vehicle::Edit& edit, std::string join_key, const ui::Changed& changed) {
  if (!changed.joins) app.editor().end_join();
  app.editor().change(vehicle, edit, std::move(join_key));
}

namespace {

constexpr std::string_view kUnknown = "I don't know";

}  // namespace

std::optional<std::string> size_chips(tables::GaugeSystem system, std::string_view chosen, std::string_view said,
                                      bool may_be_unknown) {
  std::optional<std::string> pressed;
  ui::begin_flow();
  for (const tables::Conductor& size : tables::conductors(system)) {
    if (ui::chip(size.size, {.on = size.id == chosen, .said = std::string(said) + " " + size_text(size)})) pressed = std::string(size.id);
  }
  if (may_be_unknown && ui::chip(kUnknown, {.on = chosen.empty(), .said = std::string(said) + ": I don't know"})) pressed = std::string();
  ui::end_flow();
  return pressed;
}

std::optional<units::Amperes> fuse_chips(tables::FuseFamilyId kind, units::Amperes chosen, std::string_view said) {
  std::optional<units::Amperes> pressed;
  ui::begin_flow();
  for (const double rating : tables::fuse_family(kind).ratings_a) {
    const std::string text = trimmed(rating);
    if (ui::chip(text, {.on = rating == chosen.number(), .said = std::string(said) + " " + text + " A"})) pressed = units::Amperes(rating);
  }
  if (ui::chip(kUnknown, {.on = chosen.number() <= 0.0, .said = std::string(said) + ": I don't know"})) pressed = units::Amperes(0.0);
  ui::end_flow();
  return pressed;
}

std::optional<tables::GaugeSystem> gauge_choice(std::string_view label, tables::GaugeSystem now) {
  const auto systems = tables::gauge_systems();
  std::vector<std::string> names;
  std::size_t current = 0;
  for (std::size_t i = 0; i < systems.size(); ++i) {
    names.emplace_back(tables::gauge_system_suffix(systems[i]));
    if (systems[i] == now) current = i;
  }
  const auto pressed = ui::choice(label, names, current);
  return pressed ? std::optional(systems[*pressed]) : std::nullopt;
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
