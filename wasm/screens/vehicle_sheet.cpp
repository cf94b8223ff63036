// One vehicle: what it is, what can feed it, its fuse blocks and who sits on them.
#include <algorithm>

#include "screens/fields.h"
#include "screens/places/circuits.h"
#include "screens/words.h"
#include "tables/supply.h"
#include "ui/ui.h"
#include "vehicle/validate.h"

namespace screens {
namespace {

constexpr std::string_view kDeleteVehicle = "delete-vehicle";

struct VehicleAt {
  app::AppState& app;
  std::uint32_t number;
  vehicle::Vehicle of;    // as it stood when the frame began

  bool change(const vehicle::Edit& edit, std::string join_key = {}) const {
    app.editor().change(number, edit, std::move(join_key));
    return true;
  }
};

bool draw_what(const VehicleAt& at, Memory& memory) {
  ui::begin_card("what", {.name = "What it is", .tone = ui::Tone::plain});
  bool edited = false;
  if (const auto name = name_field(memory, "vehicle", "Name", at.of.name)) edited = at.change(vehicle::SetName{*name}, "vehicle-name");
  const auto kind = ui::choice("Kind", names_of(setting_words()), static_cast<std::size_t>(at.of.kind));
  if (!edited && kind) edited = at.change(vehicle::SetKind{static_cast<circuit::Setting>(*kind)});
  ui::end_card();
  return edited;
}

std::string battery_text(const vehicle::Battery& battery) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(battery.kind);
  std::string text = trimmed(battery.nominal.number()) + " V";
  if (kind != nullptr) text.append(", ").append(kind->name);
  return text;
}

bool draw_battery(const VehicleAt& at) {
  ui::begin_card("battery", {.name = "Battery", .tone = ui::Tone::plain});
  ui::card_title("Battery", battery_text(at.of.battery) + "; told at a fuse block");
  const auto capacity = number_stepper(at.app, {.label = "Capacity", .sub = "printed on it; 0 where it is not known",
                                                .field = circuit::Field::capacity_ah, .value = at.of.battery.capacity_ah});
  if (capacity) {
    vehicle::Battery battery = at.of.battery;
    battery.capacity_ah = capacity->value;
    change(at.app, at.number, vehicle::SetBattery{battery}, "capacity", *capacity);
  }
  ui::end_card();
  return capacity.has_value();
}

std::string what_it_gives(const vehicle::Source& source) {
  return units::amperes_text(source.most) + " at " + units::volts_text(source.highest) +
         (source.fuse.number() > 0.0 ? ", fuse " + units::amperes_text(source.fuse) : std::string(", no fuse told"));
}

bool draw_add_source(const VehicleAt& at) {
  if (at.of.sources.size() >= vehicle::kMaxSources) {
    ui::caption("VehicleAt most " + std::to_string(vehicle::kMaxSources) + " sources in a vehicle.");
    return false;
  }
  if (!ui::disclosure("Add a source", false, "what else feeds it besides the battery")) return false;
  const auto words = source_words();
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (!ui::list_row(words[i].name, {.sub = std::string(words[i].help), .icon = ui::Icon::plus, .chevron = false, .said = "Add: " + std::string(words[i].name)})) continue;
    const vehicle::SourceId added{vehicle::next_id(at.of)};
    at.change(vehicle::AddSource{static_cast<vehicle::SourceKind>(i)});
    at.app.navigator().go(app::Route::at_source(at.number, added));
    return true;
  }
  return false;
}

bool draw_sources(const VehicleAt& at) {
  ui::begin_card("sources", {.name = "Sources", .tone = ui::Tone::plain});
  ui::card_title("Sources", "alternator, chargers, solar: they raise the volts, and each needs a fuse at the battery");
  for (const vehicle::Source& source : at.of.sources) {
    const ui::Scope scope(source.id.number);
    if (ui::list_row(source.name, {.sub = what_it_gives(source)})) at.app.navigator().go(app::Route::at_source(at.number, source.id));
  }
  const bool edited = draw_add_source(at);
  ui::end_card();
  return edited;
}

std::string block_text(const vehicle::Vehicle& of, const vehicle::Block& block) {
  const auto used = std::count_if(of.circuits.begin(), of.circuits.end(), [&block](const auto& each) { return each.block == block.id; });
  std::string text = std::to_string(used) + " of " + std::to_string(block.positions) + " positions";
  text += ", main fuse " + (block.main.rating.number() > 0.0 ? units::amperes_text(block.main.rating) : std::string("not told"));
  return text + ", " + units::amperes_text(vehicle::block_demand(of, block.id)) + " together";
}

bool draw_blocks(const VehicleAt& at) {
  ui::begin_card("blocks", {.name = "Fuse blocks", .tone = ui::Tone::plain});
  ui::card_title("Fuse blocks");
  for (const vehicle::Block& block : at.of.blocks) {
    const ui::Scope scope(block.id.number);
    if (ui::list_row(block.name, {.sub = block_text(at.of, block)})) at.app.navigator().go(app::Route::at_block(at.number, block.id));
  }
  const bool full = at.of.blocks.size() >= vehicle::kMaxBlocks;
  const bool added = ui::button("Add a fuse block", {.icon = ui::Icon::plus, .disabled = full});
  if (added) at.change(vehicle::AddBlock{});
  ui::end_card();
  return added;
}

bool draw_rest(const VehicleAt& at) {
  const ui::ButtonSpec order[] = {{.label = "Up in the list", .icon = ui::Icon::up}, {.label = "Down", .icon = ui::Icon::down, .said = "Down in the list"}};
  if (const auto pressed = ui::buttons(order)) return at.app.desk().move_vehicle(at.number, *pressed == 0 ? -1 : 1), true;
  if (ui::button("Duplicate", {.said = "Duplicate " + at.of.name})) return at.app.desk().duplicate_vehicle(at.number), true;
  if (ui::button("Export", {.icon = ui::Icon::share, .said = "Export " + at.of.name})) return at.app.desk().export_vehicle(at.number), true;
  if (ui::button("Delete", {.kind = ui::Kind::secondary, .said = "Delete " + at.of.name})) ui::open_sheet(kDeleteVehicle);
  if (ui::confirm(kDeleteVehicle, {.title = "Delete '" + at.of.name + "' and its circuits?",
                            .text = "You can put it back until you close the app.",
                            .yes = "Delete", .no = "Keep it", .danger = true}))
    return at.app.desk().delete_vehicle(at.number), true;
  return false;
}

}  // namespace

void draw_vehicle_sheet(app::AppState& app, Memory& memory) {
  const app::Stored* stored = app.desk().notebook().find(app.shown().stored);
  if (stored == nullptr) return;
  const VehicleAt at{app, stored->number, stored->vehicle};
  if (draw_what(at, memory)) return;
  if (draw_blocks(at) || draw_sources(at) || draw_battery(at)) return;
  draw_rest(at);
}

}  // namespace screens
