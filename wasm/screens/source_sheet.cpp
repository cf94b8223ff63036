// One source besides the battery: how high it brings the system, what it gives, and what guards its cable.
#include "screens/fields.h"
#include "screens/places/circuits.h"
#include "screens/words.h"
#include "tables/fuse.h"
#include "tables/supply.h"
#include "ui/ui.h"

namespace screens {
namespace {

struct SourceAt {
  app::AppState& app;
  std::uint32_t vehicle;
  vehicle::Source source;   // as it stood when the frame began

  bool tell(const vehicle::Source& told) const {
    app.editor().change(vehicle, vehicle::SetSource{told});
    return true;
  }
  bool tell(const vehicle::Source& told, std::string key, const ui::Changed& changed) const {
    change(app, vehicle, vehicle::SetSource{told}, std::move(key) + "/" + std::to_string(told.id.number), changed);
    return true;
  }
};

bool draw_output(const SourceAt& at) {
  vehicle::Source told = at.source;
  const int blocks = tables::blocks_in_series(at.app.desk().notebook().find(at.vehicle)->vehicle.battery.nominal);
  if (const auto volts = number_stepper(at.app, {.label = "Highest volts", .sub = "that it brings the system to while charging",
                                                 .field = circuit::Field::highest_per_12v, .value = told.highest.number(), .blocks = blocks})) {
    told.highest = units::Volts(volts->value);
    return at.tell(told, "source-highest", *volts);
  }
  const auto amperes = number_stepper(at.app, {.label = "Most current", .sub = "that it can give, as marked",
                                               .field = circuit::Field::source_a, .value = told.most.number()});
  if (!amperes) return false;
  told.most = units::Amperes(amperes->value);
  return at.tell(told, "source-most", *amperes);
}

bool draw_cable(const SourceAt& at) {
  vehicle::Source told = at.source;
  if (const auto run = number_stepper(at.app, {.label = "Cable to the battery", .sub = "one way, along the cable",
                                               .field = circuit::Field::source_run_m, .value = told.cable_run.number()})) {
    told.cable_run = units::Metres(run->value);
    return at.tell(told, "source-run", *run);
  }
  const tables::Conductor* now = tables::conductor_by_id(told.cable_size);
  if (ui::disclosure("Cable: " + (now != nullptr ? size_text(*now) : std::string("not told")), false, "as printed on it")) {
    for (const tables::GaugeSystem system : tables::gauge_systems()) {
      const auto pressed = size_chips(system, told.cable_size, "Cable");
      if (!pressed) continue;
      told.cable_size = *pressed;
      return at.tell(told);
    }
  }
  const auto fuse = number_stepper(at.app, {.label = "Fuse at the battery", .sub = "it feeds a short in this cable too",
                                            .field = circuit::Field::fuse_a, .value = told.fuse.number(),
                                            .shown = told.fuse.number() > 0.0 ? std::string() : std::string("none told")});
  if (!fuse) return false;
  told.fuse = units::Amperes(fuse->value);
  return at.tell(told, "source-fuse", *fuse);
}

}  // namespace

void draw_source_sheet(app::AppState& app, Memory& memory) {
  const app::Stored* stored = app.desk().notebook().find(app.shown().stored);
  if (stored == nullptr) return;
  const vehicle::Source* source = vehicle::find_source(stored->vehicle, vehicle::SourceId{app.shown().part});
  if (source == nullptr) return;
  const SourceAt at{app, stored->number, *source};
  ui::begin_card("what", {.name = "What it is", .tone = ui::Tone::plain});
  bool edited = false;
  if (const auto name = name_field(memory, "source", "Name", at.source.name)) {
    vehicle::Source told = at.source;
    told.name = *name;
    edited = at.tell(told);
  }
  edited = edited || draw_output(at);
  ui::end_card();
  ui::begin_card("cable", {.name = "Its cable", .tone = ui::Tone::plain});
  edited = edited || draw_cable(at);
  ui::end_card();
  if (at.source.fuse.number() <= 0.0)
    ui::notice({.tone = ui::Tone::caution, .title = "No fuse is told at the battery's end",
                .text = "The battery feeds a short in this cable with thousands of amps, whatever the source can give. "
                        "It needs a fuse close to the battery, no larger than the cable carries.",
                .action = {}});
  if (edited) return;
  if (!ui::button("Remove this source", {.said = "Remove " + at.source.name})) return;
  app.editor().change(at.vehicle, vehicle::RemoveSource{at.source.id});
  app.navigator().leave_what_is_gone();
}

}  // namespace screens
