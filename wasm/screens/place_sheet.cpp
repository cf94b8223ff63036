// Where the wire lies: what shakes it, how hot it gets, what it is bundled with, and the table
// its current is read from.
#include "screens/fields.h"
#include "screens/places/size.h"
#include "screens/words.h"

namespace screens {
namespace {

bool draw_setting(app::AppState& app) {
  const std::vector<std::string> names = names_of(setting_words());
  const auto chosen = ui::choice("It is in", names, static_cast<std::size_t>(app.editor().circuit().setting));
  if (!chosen) return false;
  app.editor().dispatch(circuit::SetSetting{static_cast<circuit::Setting>(*chosen)});
  return true;
}

bool draw_table(app::AppState& app, circuit::Wiring wiring) {
  const auto tables = tables::ampacity_tables();
  std::vector<std::string> names, abouts;
  std::size_t current = 0;
  for (std::size_t i = 0; i < tables.size(); ++i) {
    names.emplace_back(tables[i].name);
    abouts.emplace_back(tables[i].about);
    if (tables[i].id == wiring.ampacity_table) current = i;
  }
  const auto chosen = ui::choice("What the wire may carry, by", names, current,
                                 {.sub = {}, .hide_label = false, .as_list = true, .subs = abouts});
  if (!chosen) return false;
  wiring.ampacity_table = tables[*chosen].id;
  app.editor().dispatch(circuit::SetWiring{wiring});
  return true;
}

bool draw_insulation(app::AppState& app, circuit::Wiring wiring) {
  const auto ratings = tables::insulation_ratings_c();
  std::vector<std::string> names;
  std::size_t current = 0;
  for (std::size_t i = 0; i < ratings.size(); ++i) {
    names.push_back(units::celsius_text(units::Celsius(ratings[i]), app.settings().units()));
    if (ratings[i] == wiring.around.insulation.number()) current = i;
  }
  if (!ui::disclosure("Insulation: " + names[current], false, "as printed on the wire")) return false;
  const auto chosen = ui::choice("Insulation", names, current, {.sub = {}, .hide_label = true, .as_list = true});
  if (!chosen) return false;
  wiring.around.insulation = units::Celsius(ratings[*chosen]);
  app.editor().dispatch(circuit::SetWiring{wiring});
  return true;
}

bool draw_heat(app::AppState& app, circuit::Wiring wiring) {
  if (const auto air = number_stepper(app, {.label = "Air where it lies",
                                            .sub = "the hottest it gets",
                                            .field = circuit::Field::ambient_c,
                                            .value = wiring.around.ambient.number()})) {
    wiring.around.ambient = units::Celsius(air->value);
    commit(app, circuit::SetWiring{wiring}, "ambient", *air);
    return true;
  }
  if (ui::switch_row("Through a hot space", wiring.around.hot_space, {.sub = "an engine space, or beside a heater", .disabled = false})) {
    wiring.around.hot_space = !wiring.around.hot_space;
    app.editor().dispatch(circuit::SetWiring{wiring});
    return true;
  }
  if (const auto bundled = number_stepper(app, {.label = "Circuits tied together",
                                                .sub = "this one counts too",
                                                .field = circuit::Field::circuits_bundled,
                                                .value = static_cast<double>(wiring.around.circuits_bundled)})) {
    wiring.around.circuits_bundled = static_cast<int>(bundled->value);
    commit(app, circuit::SetWiring{wiring}, "bundled", *bundled);
    return true;
  }
  if (const auto metal = number_stepper(app, {.label = "The wire itself",
                                              .sub = "its temperature, for the voltage drop",
                                              .field = circuit::Field::wire_temperature_c,
                                              .value = wiring.wire_temperature.number()})) {
    wiring.wire_temperature = units::Celsius(metal->value);
    commit(app, circuit::SetWiring{wiring}, "metal", *metal);
    return true;
  }
  return false;
}

}  // namespace

void draw_place_sheet(app::AppState& app, Memory&) {
  const circuit::Wiring wiring = app.editor().circuit().wiring;
  ui::begin_card("setting", {.name = "Setting", .tone = ui::Tone::plain});
  bool edited = draw_setting(app);
  ui::end_card();
  ui::begin_card("heat", {.name = "Heat", .tone = ui::Tone::plain});
  edited = edited || draw_heat(app, wiring);
  edited = edited || draw_insulation(app, wiring);
  ui::end_card();
  ui::begin_card("table", {.name = "Table", .tone = ui::Tone::plain});
  if (!edited) draw_table(app, wiring);
  ui::caption("Source: " + source_text(*tables::ampacity_table(app.editor().circuit().wiring.ampacity_table).citation) + ".");
  ui::end_card();
}

}  // namespace screens
