// What runs at an outlet: one device as a rule, whose rare fields fold away, or several, each folded.
#include <algorithm>
#include <cmath>

#include "circuit/preset.h"
#include "screens/fields.h"
#include "screens/outlet_sheet.h"
#include "screens/words.h"
#include "tables/device_preset.h"
#include "tables/supply.h"
#include "ui/tiles.h"

namespace screens {
namespace {

// One device of an outlet, as it stood when the frame began.
struct Spot {
  app::AppState& app;
  const circuit::Outlet& outlet;
  std::size_t index = 0;

  [[nodiscard]] const circuit::Device& device() const { return outlet.devices[index]; }
  [[nodiscard]] bool alone() const { return outlet.devices.size() == 1; }
  [[nodiscard]] std::string title() const { return "Device " + std::to_string(index + 1); }
  // For a screen reader, which hears no heading over the number: "Load of device 2".
  [[nodiscard]] std::string said(std::string_view label) const {
    return alone() ? std::string() : std::string(label) + " of device " + std::to_string(index + 1);
  }
  [[nodiscard]] std::string key(std::string_view what) const {
    return std::string(what) + "/" + std::to_string(outlet.id.number) + "/" + std::to_string(index);
  }
  [[nodiscard]] circuit::Edit with(circuit::Device changed) const {
    circuit::SetDevices edit{outlet.id, outlet.devices, outlet.taps};
    edit.devices[index] = std::move(changed);
    return edit;
  }
  // The first one's load has an edit of its own, and a name of its own in undo.
  [[nodiscard]] circuit::Edit with(circuit::Load load) const {
    if (index == 0) return circuit::SetLoad{outlet.id, load};
    circuit::Device changed = device();
    changed.load = load;
    return with(std::move(changed));
  }
};

ui::Icon sign_of(tables::DeviceGroup group) {
  switch (group) {
    case tables::DeviceGroup::charging: return ui::Icon::usb;
    case tables::DeviceGroup::cooling: return ui::Icon::cool_box;
    case tables::DeviceGroup::heating: return ui::Icon::heater;
    case tables::DeviceGroup::water: return ui::Icon::pump;
    case tables::DeviceGroup::lighting: return ui::Icon::lamp;
    case tables::DeviceGroup::air: return ui::Icon::fan;
    case tables::DeviceGroup::mains: return ui::Icon::inverter;
    case tables::DeviceGroup::motors: return ui::Icon::motor;
    case tables::DeviceGroup::media: break;
  }
  return ui::Icon::radio;
}

// Nobody named it: "Outlet D" is what a new one is called.
bool has_no_name(const circuit::Outlet& outlet) { return outlet.name.empty() || outlet.name.starts_with("Outlet "); }

// One step of undo: what it draws, and the outlet's name where it has none.
void take_preset(const Spot& spot, const tables::DevicePreset& preset) {
  const units::Volts nominal = spot.app.editor().circuit().supply.nominal;
  std::vector<circuit::Edit> edits{spot.with(circuit::device_from(preset, nominal))};
  if (spot.alone() && has_no_name(spot.outlet)) edits.emplace_back(circuit::SetOutletName{spot.outlet.id, std::string(preset.name)});
  spot.app.editor().use_edits(edits, "take a " + std::string(preset.name) + " as usual");
}

bool draw_tiles(const Spot& spot, bool common) {
  std::vector<const tables::DevicePreset*> presets;
  std::vector<ui::Tile> tiles;
  for (const tables::DevicePreset& preset : tables::device_presets()) {
    if (preset.common != common) continue;
    presets.push_back(&preset);
    tiles.push_back({.label = std::string(preset.name), .figure = units::watts_text(preset.running), .icon = sign_of(preset.group),
                     .chosen = spot.device().preset == preset.key});
  }
  const auto pressed = ui::tile_grid(common ? "Kind of device" : "Other kinds of device", tiles);
  if (pressed) take_preset(spot, *presets[*pressed]);
  return pressed.has_value();
}

// Open while nothing is told; after that it folds away.
bool draw_presets(const Spot& spot) {
  const bool empty = spot.device().load.rating == 0.0;
  if (!empty && !ui::disclosure("Kind of device", false, "what such a device usually draws")) return false;
  if (draw_tiles(spot, true)) return true;
  if (ui::disclosure("Other kinds", false, "pumps, winches, inverters, screens") && draw_tiles(spot, false)) return true;
  ui::caption("Typical figures, from memory: the label on the device goes first.");
  return false;
}

bool draw_load(const Spot& spot) {
  circuit::Load load = spot.device().load;
  const auto changed = load_stepper(spot.app, "Load", spot.said("Load"), load);
  if (!changed) return false;
  load.rating = changed->rating;
  load.rating_in_watts = changed->watts;
  commit(spot.app, spot.with(load), spot.key("load"), {.value = load.rating, .joins = changed->joins});
  return true;
}

bool draw_kind(const Spot& spot) {
  circuit::Load load = spot.device().load;
  const auto kind = ui::choice("How it draws", names_of(load_kind_words()), static_cast<std::size_t>(load.kind),
                               {.sub = {}, .hide_label = false, .as_list = true, .subs = helps_of(load_kind_words())});
  if (!kind) return false;
  load.kind = static_cast<circuit::LoadKind>(*kind);
  spot.app.editor().dispatch(spot.with(load));
  return true;
}

bool draw_least_voltage(const Spot& spot) {
  circuit::Load load = spot.device().load;
  const int blocks = tables::blocks_in_series(spot.app.editor().circuit().supply.nominal);
  const bool told = load.minimum_voltage.has_value();
  if (ui::switch_row("The device needs a least voltage", told,
                     {.sub = "it is on the label or in the manual", .disabled = false})) {
    // 11 V per 12 V block is what many chargers ask for: only where the field starts.
    load.minimum_voltage = told ? std::nullopt : std::optional(units::Volts(11.0 * blocks));
    spot.app.editor().dispatch(spot.with(load));
    return true;
  }
  if (!told) return false;
  const auto volts = number_stepper(spot.app, {.label = "Least voltage",
                                               .sub = "checked with the battery low",
                                               .said = spot.said("Least voltage"),
                                               .field = circuit::Field::minimum_voltage_per_12v,
                                               .value = load.minimum_voltage->number(),
                                               .blocks = blocks});
  if (!volts) return false;
  load.minimum_voltage = units::Volts(volts->value);
  commit(spot.app, spot.with(load), spot.key("least"), *volts);
  return true;
}

bool draw_use(const Spot& spot) {
  circuit::Device device = spot.device();
  const auto use = ui::choice("How long it runs", names_of(use_words()), static_cast<std::size_t>(device.use),
                              {.sub = {}, .hide_label = false, .as_list = true, .subs = helps_of(use_words())});
  if (!use) return false;
  device.use = static_cast<circuit::Use>(*use);
  spot.app.editor().dispatch(spot.with(device));
  return true;
}

// Only where the fields start: three times the running current, half a second.
circuit::Inrush first_inrush(const Spot& spot) {
  const double running =
      circuit::rated_current(spot.device().load, spot.app.editor().circuit().supply.nominal).number();
  const double start = std::clamp(std::ceil(3.0 * running), 1.0, circuit::limit(circuit::Field::inrush_a).high);
  return {units::Amperes(start), units::Seconds(0.5)};
}

bool draw_inrush(const Spot& spot) {
  circuit::Device device = spot.device();
  const bool told = device.inrush.has_value();
  if (ui::switch_row("Takes more when it starts", told, {.sub = "a motor, a pump, a glow pin", .disabled = false})) {
    device.inrush = told ? std::nullopt : std::optional(first_inrush(spot));
    spot.app.editor().dispatch(spot.with(device));
    return true;
  }
  if (!told) return false;
  if (const auto amperes = number_stepper(spot.app, {.label = "Starting current", .sub = "in the manual, or by a clamp meter",
                                                     .said = spot.said("Starting current"),
                                                     .field = circuit::Field::inrush_a,
                                                     .value = device.inrush->current.number()})) {
    device.inrush->current = units::Amperes(amperes->value);
    commit(spot.app, spot.with(device), spot.key("inrush"), *amperes);
    return true;
  }
  const auto seconds = number_stepper(spot.app, {.label = "Starting time", .sub = "until it runs at its load",
                                                 .said = spot.said("Starting time"),
                                                 .field = circuit::Field::inrush_s,
                                                 .value = device.inrush->lasting.number()});
  if (!seconds) return false;
  device.inrush->lasting = units::Seconds(seconds->value);
  commit(spot.app, spot.with(device), spot.key("inrush-time"), *seconds);
  return true;
}

bool draw_own_fuse(const Spot& spot) {
  circuit::Device device = spot.device();
  const bool told = device.own_fuse.has_value();
  if (ui::switch_row("A fuse of its own", told, {.sub = "in its plug or lead", .disabled = false})) {
    device.own_fuse = told ? std::nullopt : std::optional(units::Amperes(10.0));   // only where the field starts
    spot.app.editor().dispatch(spot.with(device));
    return true;
  }
  if (!told) return false;
  const auto fuse = number_stepper(spot.app, {.label = "Its own fuse", .sub = "marked on it", .said = spot.said("Own fuse"),
                                              .field = circuit::Field::fuse_a, .value = device.own_fuse->number()});
  if (!fuse) return false;
  device.own_fuse = units::Amperes(fuse->value);
  commit(spot.app, spot.with(device), spot.key("own-fuse"), *fuse);
  return true;
}

bool draw_rare(const Spot& spot) { return draw_use(spot) || draw_inrush(spot) || draw_own_fuse(spot); }

bool draw_taps(app::AppState& app, const circuit::Outlet& outlet) {
  const auto taps = number_stepper(app, {.label = "Lights along the run",
                                         .sub = "spread evenly; the load is of all of them",
                                         .field = circuit::Field::taps,
                                         .value = static_cast<double>(outlet.taps)});
  if (!taps) return false;
  commit(app, circuit::SetDevices{outlet.id, outlet.devices, static_cast<int>(std::lround(taps->value))},
         "taps/" + std::to_string(outlet.id.number), *taps);
  return true;
}

bool draw_add(app::AppState& app, const circuit::Outlet& outlet) {
  const bool full = outlet.devices.size() >= circuit::kMaxDevices;
  const bool spread = outlet.taps > 1;
  if (full) ui::caption("At most " + std::to_string(circuit::kMaxDevices) + " devices at one outlet.");
  if (spread) ui::caption("Only one kind of load can be spread along a run. Give other devices an outlet of their own.");
  if (!ui::button("Add a device", {.icon = ui::Icon::plus, .disabled = full || spread})) return false;
  circuit::SetDevices edit{outlet.id, outlet.devices, outlet.taps};
  edit.devices.emplace_back();
  app.editor().dispatch(edit);
  return true;
}

std::string rare_text(const circuit::Device& device) {
  std::string text(use_words()[static_cast<std::size_t>(device.use)].name);
  if (device.inrush) text += ", starts with " + units::amperes_text(device.inrush->current);
  if (device.own_fuse) text += ", own fuse " + units::amperes_text(*device.own_fuse);
  return text;
}

bool draw_one(app::AppState& app, const circuit::Outlet& outlet) {
  const Spot spot{app, outlet};
  if (draw_load(spot) || draw_presets(spot) || draw_kind(spot) || draw_least_voltage(spot)) return true;
  std::string more = rare_text(spot.device());
  if (outlet.taps > 1) more += ", " + std::to_string(outlet.taps) + " lights along the run";
  if (!ui::disclosure("More about it", false, more)) return false;
  return draw_rare(spot) || draw_taps(app, outlet) || draw_add(app, outlet);
}

bool draw_device_name(const Spot& spot, Memory& memory) {
  const auto name = name_field(memory, spot.key("device"), "Name of device " + std::to_string(spot.index + 1),
                               spot.device().name, true);
  if (!name) return false;
  circuit::Device device = spot.device();
  device.name = *name;
  spot.app.editor().dispatch(spot.with(std::move(device)), spot.key("device-name"));
  return true;
}

bool draw_remove(const Spot& spot) {
  if (!ui::button("Remove device " + std::to_string(spot.index + 1))) return false;
  circuit::SetDevices edit{spot.outlet.id, spot.outlet.devices, spot.outlet.taps};
  edit.devices.erase(edit.devices.begin() + static_cast<std::ptrdiff_t>(spot.index));
  spot.app.editor().dispatch(edit);
  return true;
}

bool draw_folded(const Spot& spot, Memory& memory) {
  const circuit::Device& device = spot.device();
  const std::string kind(load_kind_words()[static_cast<std::size_t>(device.load.kind)].name);
  if (!ui::begin_group(spot.title(), {.value = load_text(device.load),
                                      .sub = (device.name.empty() ? kind : device.name) + " · " + rare_text(device),
                                      .open_at_first = device.load.rating == 0.0}))
    return false;
  const bool edited = draw_device_name(spot, memory) || draw_load(spot) || draw_presets(spot) || draw_kind(spot) || draw_rare(spot) ||
                      draw_least_voltage(spot) || draw_remove(spot);
  ui::end_group();
  return edited;
}

}  // namespace

bool draw_devices(app::AppState& app, Memory& memory, const circuit::Outlet& outlet) {
  if (outlet.devices.size() == 1) return draw_one(app, outlet);
  for (std::size_t i = 0; i < outlet.devices.size(); ++i) {
    if (draw_folded({app, outlet, i}, memory)) return true;
  }
  ui::fact_row("Together",
               units::amperes_text(circuit::rated_current(outlet, app.editor().circuit().supply.nominal)),
               "all that may run here at once");
  return draw_add(app, outlet);
}

}  // namespace screens
