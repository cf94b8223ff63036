#include "calculators/ask.h"

#include <array>
#include <cmath>

#include "circuit/limits.h"
#include "tables/supply.h"

namespace calculators {
namespace {

std::vector<Choice> made_wires() {
  std::vector<Choice> all;
  for (const auto system : {tables::GaugeSystem::awg, tables::GaugeSystem::metric}) {
    for (const tables::Conductor& wire : tables::conductors(system)) all.push_back({wire.id, wire_name(wire)});
  }
  return all;
}
std::span<const Choice> system_choices() {
  static const std::array<Choice, 3> all{{{"12", "12 V"}, {"24", "24 V"}, {"48", "48 V"}}};
  return all;
}
std::span<const Choice> table_choices() {
  static const std::vector<Choice> all = [] {
    std::vector<Choice> made{{"usual", "As usual for the wire"}};
    for (const tables::AmpacityTable& table : tables::ampacity_tables()) made.push_back({table.key, std::string(table.name)});
    return made;
  }();
  return all;
}
std::span<const Choice> insulation_choices() {
  static const std::array<Choice, 8> all{{{"60", "60 °C"}, {"70", "70 °C"}, {"75", "75 °C"}, {"80", "80 °C"},
                                          {"90", "90 °C"}, {"105", "105 °C"}, {"125", "125 °C"}, {"200", "200 °C"}}};
  return all;
}
std::span<const Choice> setting_choices() {
  static const std::array<Choice, 4> all{{{"van", "Van"}, {"trailer", "Trailer"}, {"boat", "Boat"}, {"fixed", "Fixed"}}};
  return all;
}
std::span<const Choice> hot_choices() {
  static const std::array<Choice, 2> all{{{"no", "No"}, {"yes", "Yes"}}};
  return all;
}
std::span<const Choice> family_choices() {
  static const std::vector<Choice> all = [] {
    std::vector<Choice> made;
    for (const tables::FuseFamily& family : tables::fuse_families()) made.push_back({family.key, std::string(family.name)});
    return made;
  }();
  return all;
}

Input from_limit(std::string_view key, std::string_view name, Measure measure, circuit::Field field, double normal) {
  const circuit::Limit& limit = circuit::limit(field);
  Input input = number_input(key, name, measure, limit.low, limit.high, limit.step, normal);
  input.whole = limit.whole;
  return input;
}
Input folded_if(Input input, bool folded) {
  input.folded = folded;
  return input;
}

}  // namespace

std::string wire_name(const tables::Conductor& wire) {
  return std::string(wire.size) + " " + std::string(tables::gauge_system_suffix(wire.system));
}

std::span<const Choice> wire_choices() {
  static const std::vector<Choice> all = made_wires();
  return all;
}
std::span<const Choice> battery_choices() {
  static const std::vector<Choice> all = [] {
    std::vector<Choice> made;
    for (const tables::BatteryKind& kind : tables::battery_kinds()) made.push_back({kind.key, std::string(kind.name)});
    return made;
  }();
  return all;
}

Input number_input(std::string_view key, std::string_view name, Measure measure, double low, double high, double step,
                   double normal) {
  Input input;
  input.key = key;
  input.name = name;
  input.measure = measure;
  input.low = low;
  input.high = high;
  input.step = step;
  input.normal = normal;
  return input;
}
Input as_reading(Input input) {
  input.reading = true;
  return input;
}
Input choice_input(std::string_view key, std::string_view name, std::span<const Choice> choices,
                   std::string_view normal) {
  Input input = number_input(key, name, Measure::count, 0.0, static_cast<double>(choices.size()) - 1.0, 1.0, 0.0);
  input.whole = true;
  input.choices = choices;
  if (const auto index = choice_index(input, normal)) input.normal = static_cast<double>(*index);
  return input;
}

Input wire_input() { return choice_input("wire", "Wire", wire_choices(), "10awg"); }
Input length_input() {
  return from_limit("run", "Length, one way", Measure::length, circuit::Field::run_m, 5.0);
}
Input current_input(std::string_view name, double normal) {
  return from_limit("current", name, Measure::current, circuit::Field::load_a, normal);
}
Input system_input() { return choice_input("system", "System", system_choices(), "12"); }
Input drop_limit_input(bool folded) {
  return folded_if(from_limit("limit", "Drop limit", Measure::fraction, circuit::Field::drop_limit_fraction, 0.05), folded);
}
Input metal_input() {
  return folded_if(from_limit("metal", "Wire temperature", Measure::temperature, circuit::Field::wire_temperature_c, 50.0), true);
}
Input insulation_input(bool folded) {
  return folded_if(choice_input("insulation", "Insulation rating", insulation_choices(), "105"), folded);
}
Input ambient_input(bool folded) {
  return folded_if(from_limit("ambient", "Air temperature", Measure::temperature, circuit::Field::ambient_c, 30.0), folded);
}
Input bundled_input(bool folded) {
  return folded_if(from_limit("bundled", "Circuits tied together", Measure::count, circuit::Field::circuits_bundled, 1.0), folded);
}
Input table_input(bool folded) {
  return folded_if(choice_input("table", "The wire lies", table_choices(), "usual"), folded);
}
Input hot_space_input() { return folded_if(choice_input("hot", "Engine space", hot_choices(), "no"), true); }
Input setting_input() { return folded_if(choice_input("setting", "Fitted in", setting_choices(), "van"), true); }
Input family_input(bool folded) {
  return folded_if(choice_input("family", "Kind of fuse", family_choices(), "blade"), folded);
}

// Values by key -------------------------------------------------------------------------------

double Asked::number(std::string_view key) const {
  const auto index = input_index(calculator, key);
  return index ? values[*index] : 0.0;
}
std::string_view Asked::choice(std::string_view key) const {
  const auto index = input_index(calculator, key);
  if (!index) return {};
  return calculator.inputs[*index].choices[static_cast<std::size_t>(values[*index])].key;
}
const tables::Conductor& Asked::wire() const { return *tables::conductor_by_id(choice("wire")); }
units::Volts Asked::system() const {
  return units::Volts(tables::system_voltages_v()[static_cast<std::size_t>(number("system"))]);
}
const tables::FuseFamily& Asked::family() const {
  return tables::fuse_families()[static_cast<std::size_t>(number("family"))];
}

Lie Asked::lie() const {
  Lie lie;
  const auto has = [&](std::string_view key) { return input_index(calculator, key).has_value(); };
  if (const auto* table = tables::ampacity_table_by_key(choice("table"))) lie.table = table->id;
  if (has("insulation")) {
    lie.around.insulation = units::Celsius(tables::insulation_ratings_c()[static_cast<std::size_t>(number("insulation"))]);
  }
  if (has("ambient")) lie.around.ambient = units::Celsius(number("ambient"));
  if (has("bundled")) lie.around.circuits_bundled = static_cast<int>(number("bundled"));
  lie.around.hot_space = choice("hot") == "yes";
  if (has("setting")) {
    constexpr std::array kSettings{circuit::Setting::van, circuit::Setting::trailer, circuit::Setting::boat,
                                   circuit::Setting::fixed};
    lie.setting = kSettings[static_cast<std::size_t>(number("setting"))];
  }
  if (has("family")) lie.family = family().id;
  return lie;
}

}  // namespace calculators
