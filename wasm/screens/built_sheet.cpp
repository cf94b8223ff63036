// What is there: read off the wires and the fuse, never taken from what Size worked out. What is not
// known is left open, and then no step of Trace names a fuse rating.
#include <algorithm>

#include "app/built.h"
#include "screens/fields.h"
#include "screens/places/size.h"
#include "screens/words.h"
#include "ui/group.h"
#include "ui/knowledge.h"
#include "ui/ui.h"

namespace screens {
namespace {

using vehicle::Knowledge;

ui::Knowledge shown(Knowledge how) {
  return how == Knowledge::known ? ui::Knowledge::known : how == Knowledge::guessed ? ui::Knowledge::guessed : ui::Knowledge::unknown;
}
Knowledge told(ui::Knowledge how) {
  return how == ui::Knowledge::known ? Knowledge::known : how == ui::Knowledge::guessed ? Knowledge::guessed : Knowledge::unknown;
}

// The system that the wires are marked in: that of the first size told, else the plan's.
tables::GaugeSystem system_of(const vehicle::Built& built) {
  for (const circuit::Outlet& outlet : built.circuit.outlets) {
    const tables::Conductor* size = outlet.run.size ? tables::conductor_by_id(*outlet.run.size) : nullptr;
    if (size != nullptr) return size->system;
  }
  return built.circuit.wiring.gauge;
}

// The answer for the plan as it is now; Trace does not work it out.
const sizing::Candidate* chosen(const app::AppState& app) {
  const bool now = app.results().has_answer() && app.results().of() == app.editor().current();
  const sizing::Candidate* choice = now ? app.results().answer().choice() : nullptr;
  return choice != nullptr && choice->fuse ? choice : nullptr;
}

bool draw_as_planned(app::AppState& app) {
  const sizing::Candidate* choice = chosen(app);
  if (choice == nullptr) return false;
  const std::string what = size_text(*choice->size) + ", " + units::amperes_text(*choice->fuse);
  if (!ui::button("Built as planned: " + what, {.icon = ui::Icon::check})) return false;
  app.editor().tell_built(app::as_chosen(app.editor().placed().plan, *choice));
  return true;
}

bool draw_fuse(app::AppState& app, vehicle::Built built) {
  ui::begin_card("fuse", {.name = "Fuse", .tone = ui::Tone::plain});
  ui::card_title("Fuse", "amps, as printed on it");
  const ui::Scope scope("fuse");
  const auto pressed = fuse_chips(app.editor().circuit().wiring.fuse_family, built.fuse, "Fuse");
  if (pressed) {
    app::tell_fuse(built, *pressed, Knowledge::known);
    app.editor().tell_built(built);
  }
  ui::end_card();
  return pressed.has_value();
}

bool draw_wire(app::AppState& app, Memory& memory, vehicle::Built built) {
  ui::begin_card("wire", {.name = "Wire", .tone = ui::Tone::plain});
  const tables::Conductor* one = app::one_size(built);
  ui::card_title("Wire", one == nullptr ? "of every run; where they differ, tell each below" : "as printed on it");
  const tables::GaugeSystem system = memory.built_system.value_or(system_of(built));
  if (const auto other = gauge_choice("Marked in", system)) memory.built_system = other;
  const auto pressed = size_chips(system, one != nullptr ? one->id : std::string_view(), "Wire", true);
  if (pressed) {
    app::tell_size_throughout(built, *pressed, Knowledge::known);
    app.editor().tell_built(built);
  }
  ui::end_card();
  return pressed.has_value();
}

struct RunAt {
  const circuit::Outlet& outlet;
  const vehicle::BuiltRun& known;
  std::string letter;
};

bool draw_run_size(app::AppState& app, tables::GaugeSystem system, const vehicle::Built& built, const RunAt& run) {
  vehicle::Built changed = built;
  const std::string size = run.outlet.run.size.value_or(std::string());
  if (const auto pressed = size_chips(system, size, "Wire to " + run.letter, true)) {
    app::tell_size(changed, run.outlet.id, *pressed, Knowledge::known);
    return app.editor().tell_built(changed);
  }
  const tables::Conductor* now = tables::conductor_by_id(size);
  if (now == nullptr) return false;
  const auto how = ui::knowledge_row("Its size is", shown(run.known.size), {.value = size_text(*now), .said = "Size of the wire to " + run.letter});
  if (!how) return false;
  app::tell_size(changed, run.outlet.id, told(*how) == Knowledge::unknown ? std::string() : size, told(*how));
  return app.editor().tell_built(changed);
}

bool draw_run_length(app::AppState& app, const vehicle::Built& built, const RunAt& run) {
  vehicle::Built changed = built;
  const std::string key = "built-run/" + std::to_string(run.outlet.id.number);
  if (const auto length = number_stepper(app, {.label = "Length", .sub = "one way, along the wire", .said = "Length of the wire to " + run.letter,
                                               .field = circuit::Field::run_m, .value = run.outlet.run.length.number()})) {
    if (!length->joins) app.editor().end_join();
    app::tell_length(changed, run.outlet.id, units::Metres(length->value), Knowledge::known);
    return app.editor().tell_built(changed, key);
  }
  const auto how = ui::knowledge_row("Its length is", shown(run.known.length), {.value = {}, .said = "Length of the wire to " + run.letter});
  if (!how) return false;
  app::tell_length(changed, run.outlet.id, run.outlet.run.length, told(*how));
  return app.editor().tell_built(changed);
}

// One group a run; closed it says what is told.
bool draw_runs(app::AppState& app, const Memory& memory, const vehicle::Built& built) {
  ui::begin_card("runs", {.name = "Each run", .tone = ui::Tone::plain});
  ui::card_title("Each run", "where one differs");
  const tables::GaugeSystem system = memory.built_system.value_or(system_of(built));
  bool changed = false;
  for (std::size_t i = 0; i < built.circuit.outlets.size() && !changed; ++i) {
    const RunAt run{built.circuit.outlets[i], built.runs[i], circuit::outlet_letter(i)};
    const tables::Conductor* size = tables::conductor_by_id(run.outlet.run.size.value_or(std::string()));
    const ui::Scope scope(run.outlet.id.number);
    if (!ui::begin_group("To " + run.letter, {.value = size != nullptr ? size_text(*size) : std::string("not known"),
                                              .sub = run_text(app, run.outlet) + (run.known.length == Knowledge::known ? "" : ", about")}))
      continue;
    changed = draw_run_size(app, system, built, run) || draw_run_length(app, built, run);
    ui::end_group();
  }
  ui::end_card();
  return changed;
}

// What follows: a rating is named in the steps of Trace, or why none is.
void draw_meaning(const app::AppState& app, const vehicle::Built& built) {
  if (!app::all_wire_known(built) || built.fuse_knowledge != Knowledge::known) {
    ui::notice({.tone = ui::Tone::caution, .title = "Trace will name no fuse rating",
                .text = "It takes the fuse and the wire of every run to say that one protects the other. Go by the label on the block.",
                .action = {}});
  } else if (!app::fuse_protects(vehicle::as_built(app.editor().vehicle(), app.editor().placed().id), built)) {
    ui::notice({.tone = ui::Tone::stop, .title = "This fuse is too large for this wire",
                .text = "No step will name it. Do not put one in again: Size says which fuse this wire takes.", .action = {}, .alert = true});
  } else {
    ui::notice({.tone = ui::Tone::good, .title = "This fuse protects this wire", .text = "The steps of Trace name its rating.", .action = {}});
  }
}

bool draw_outlets_differ(app::AppState& app, const vehicle::Built& built) {
  const circuit::Circuit& plan = app.editor().placed().plan;
  if (app::same_outlets(built, plan)) return false;
  if (!ui::notice({.tone = ui::Tone::caution, .title = "The plan has other outlets by now",
                   .text = "What is told here is of the outlets as they were. Trace goes by it.", .action = "Take the plan's outlets over"}))
    return false;
  app.editor().tell_built(app::with_outlets_of(built, plan));
  return true;
}

bool draw_what_next(app::AppState& app, const vehicle::Built& built) {
  const bool any_wire = std::any_of(built.runs.begin(), built.runs.end(),
                                    [](const vehicle::BuiltRun& each) { return each.size == Knowledge::known; });
  if (any_wire && ui::button("Plan with this wire", {.said = "Plan with this wire: it stays, and Size works out the rest"})) {
    app.editor().change(app.editor().current().circuit.vehicle,
                        vehicle::PutCircuit{app.editor().placed().id, app::with_known_wire(app.editor().circuit(), built)});
    return true;
  }
  if (!app.editor().placed().built || !ui::button("Forget all this", {.kind = ui::Kind::quiet})) return false;
  app.editor().tell_built(std::nullopt);
  return true;
}

}  // namespace

void draw_built_sheet(app::AppState& app, Memory& memory) {
  if (!app.editor().has_circuit()) {
    ui::paragraph("There is no circuit to tell it of. Make one on Size first.", ui::Ink::muted);
    return;
  }
  const vehicle::PlacedCircuit& placed = app.editor().placed();
  const vehicle::Built built = placed.built.value_or(app::nothing_told(placed.plan));
  if (draw_outlets_differ(app, built)) return;
  draw_meaning(app, built);
  if (draw_as_planned(app)) return;
  if (draw_fuse(app, built) || draw_wire(app, memory, built) || draw_runs(app, memory, built)) return;
  draw_what_next(app, built);
}

}  // namespace screens
