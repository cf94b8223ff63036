// What feeds the fuse block: volts, battery, the cable between them and its own fuse.
#include "screens/fields.h"
#include "screens/pages.h"
#include "screens/words.h"
#include "tables/supply.h"

namespace screens {
namespace {

bool draw_voltage(app::AppState& app, circuit::Supply supply) {
  const auto offered = tables::system_voltages_v();
  std::vector<std::string> names;
  std::size_t current = 0;
  for (std::size_t i = 0; i < offered.size(); ++i) {
    names.push_back(trimmed(offered[i]) + " V");
    if (offered[i] == supply.nominal.number()) current = i;
  }
  const auto chosen = ui::choice("System", names, current);
  if (!chosen) return false;
  supply.nominal = units::Volts(offered[*chosen]);
  app.editor().dispatch(circuit::SetSupply{supply});
  return true;
}

bool draw_battery(app::AppState& app, circuit::Supply supply) {
  const auto kinds = tables::battery_kinds();
  const int blocks = tables::blocks_in_series(supply.nominal);
  std::vector<std::string> names, subs;
  std::size_t current = 0;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    names.emplace_back(kinds[i].name);
    subs.push_back(units::volts_text(kinds[i].resting * blocks) + " rested, " + units::volts_text(kinds[i].low * blocks) + " low");
    if (kinds[i].key == supply.battery) current = i;
  }
  const auto chosen = ui::choice("Battery", names, current, {.sub = {}, .hide_label = false, .as_list = true, .subs = subs});
  if (!chosen) return false;
  supply.battery = std::string(kinds[*chosen].key);
  app.editor().dispatch(circuit::SetSupply{supply});
  return true;
}

bool draw_own_volts(app::AppState& app, circuit::Supply supply) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  if (kind == nullptr) return false;
  const int blocks = tables::blocks_in_series(supply.nominal);
  const bool own = supply.resting.has_value() || supply.low.has_value();
  if (ui::switch_row("Volts of my own battery", own, {.sub = own ? "" : "as that kind of battery", .disabled = false})) {
    supply.resting = own ? std::nullopt : std::optional(kind->resting * blocks);
    supply.low = own ? std::nullopt : std::optional(kind->low * blocks);
    app.editor().dispatch(circuit::SetSupply{supply});
    return true;
  }
  if (!own) return false;
  if (const auto volts = number_stepper(app, {.label = "Rested", .sub = "charged, an hour without load",
                                              .field = circuit::Field::resting_per_12v,
                                              .value = supply.resting.value_or(kind->resting * blocks).number(),
                                              .blocks = blocks})) {
    supply.resting = units::Volts(volts->value);
    commit(app, circuit::SetSupply{supply}, "resting", *volts);
    return true;
  }
  if (const auto volts = number_stepper(app, {.label = "Low", .sub = "where you stop using it",
                                              .field = circuit::Field::low_per_12v,
                                              .value = supply.low.value_or(kind->low * blocks).number(),
                                              .blocks = blocks})) {
    supply.low = units::Volts(volts->value);
    commit(app, circuit::SetSupply{supply}, "low", *volts);
    return true;
  }
  return false;
}

bool draw_feeder(app::AppState& app, circuit::Supply supply) {
  if (const auto run = number_stepper(app, {.label = "Battery to block", .sub = "one way, along the cable",
                                            .field = circuit::Field::feeder_run_m, .value = supply.feeder_run.number()})) {
    supply.feeder_run = units::Metres(run->value);
    commit(app, circuit::SetSupply{supply}, "feeder", *run);
    return true;
  }
  const auto fuse = number_stepper(app, {.label = "Main fuse", .sub = "protects that cable",
                                         .field = circuit::Field::main_fuse_a, .value = supply.main_fuse.number()});
  if (fuse) {
    supply.main_fuse = units::Amperes(fuse->value);
    commit(app, circuit::SetSupply{supply}, "main-fuse", *fuse);
    return true;
  }
  const tables::Conductor* now = tables::conductor_by_id(supply.feeder_size);
  if (!ui::disclosure("Cable: " + (now != nullptr ? size_text(*now) : std::string("not told")), false,
                      "battery to block, red and black"))
    return false;
  ui::begin_flow();
  bool edited = false;
  for (const tables::GaugeSystem system : {tables::GaugeSystem::awg, tables::GaugeSystem::metric}) {
    for (const tables::Conductor& size : tables::conductors(system)) {
      if (edited || !ui::chip(size_text(size), {.on = size.id == supply.feeder_size, .said = "Cable " + size_text(size)})) continue;
      supply.feeder_size = std::string(size.id);
      app.editor().dispatch(circuit::SetSupply{supply});
      edited = true;
    }
  }
  ui::end_flow();
  return edited;
}

}  // namespace

void draw_supply_sheet(app::AppState& app) {
  const circuit::Supply supply = app.editor().circuit().supply;
  ui::begin_card("battery", {.name = "Battery", .tone = ui::Tone::plain});
  bool edited = draw_voltage(app, supply);
  edited = edited || draw_battery(app, supply);
  edited = edited || draw_own_volts(app, supply);
  ui::end_card();
  ui::begin_card("feeder", {.name = "Cable to the fuse block", .tone = ui::Tone::plain});
  if (!edited) draw_feeder(app, supply);
  ui::end_card();
  ui::notice({.tone = ui::Tone::caution, .title = {},
              .text = "A battery can deliver thousands of amps. Large and lithium batteries need a main fuse of their "
                      "own, close to the positive post, that can break that current.",
              .action = {}});
}

}  // namespace screens
