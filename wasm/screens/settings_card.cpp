// What else the answer depends on, each a row with what is set now; the row opens its sheet.
#include "app/built.h"
#include "screens/pages.h"
#include "screens/words.h"
#include "tables/part.h"
#include "tables/supply.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string place_text(const app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  const tables::Surroundings& around = circuit.wiring.around;
  std::string text(setting_words()[static_cast<std::size_t>(circuit.setting)].name);
  text += around.hot_space ? ", hot space" : ", " + units::celsius_text(around.ambient, app.settings().units());
  text += around.circuits_bundled > 1 ? ", " + std::to_string(around.circuits_bundled) + " bundled" : ", alone";
  return text;
}

std::string supply_text(const app::AppState& app) {
  const circuit::Supply& supply = app.editor().circuit().supply;
  const tables::BatteryKind* battery = tables::battery_kind_by_key(supply.battery);
  std::string text = trimmed(supply.nominal.number()) + " V";
  if (battery != nullptr) text.append(", ").append(battery->name);
  return text + ", " + units::length_text(supply.feeder_run, app.settings().units()) + " to the block";
}

std::string parts_text(const app::AppState& app) {
  const circuit::Wiring& wiring = app.editor().circuit().wiring;
  std::string text(tables::gauge_system_suffix(wiring.gauge));
  text.append(", ").append(tables::fuse_family(wiring.fuse_family).name);
  return text + (wiring.ferrule ? ", ferrules" : ", bare strands");
}

std::string shelf_text(const app::AppState& app) {
  const circuit::Shelf& shelf = app.editor().circuit().shelf;
  std::vector<std::string> missing;
  for (const std::string& id : shelf.missing_sizes)
    if (const tables::Conductor* size = tables::conductor_by_id(id)) missing.push_back(size_text(*size));
  for (const double fuse : shelf.missing_fuses_a)
    missing.push_back(units::amperes_text(units::Amperes(fuse)) + " fuse");
  if (missing.empty()) return "everything";
  constexpr std::size_t kNamed = 3;
  std::string text = "no " + missing.front();
  for (std::size_t i = 1; i < missing.size() && i < kNamed; ++i) text += ", " + missing[i];
  return missing.size() > kNamed ? text + " and " + std::to_string(missing.size() - kNamed) + " more" : text;
}

void row(app::AppState& app, std::string_view label, const std::string& sub, app::Sheet sheet) {
  if (ui::list_row(label, {.sub = sub})) app.navigator().go(app::Route::at(app::Screen::size, sheet));
}

}  // namespace

void draw_settings_card(app::AppState& app) {
  ui::begin_card("settings", {.name = "Settings", .tone = ui::Tone::plain});
  row(app, "What the shop has", shelf_text(app), app::Sheet::what_if);
  row(app, "Wire already in hand", "how far and how much", app::Sheet::reach);
  row(app, "Where the wire lies", place_text(app), app::Sheet::place);
  row(app, "Supply", supply_text(app), app::Sheet::supply);
  row(app, "What is there", app::built_words(app.editor().placed().built), app::Sheet::built);
  row(app, "Wire, fuse and parts", parts_text(app), app::Sheet::parts);
  ui::end_card();
}

}  // namespace screens
