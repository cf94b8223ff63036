// Begins a trace: tools are remembered, so the symptom is one tap and the outlet another.
#include <algorithm>
#include <array>

#include "app/built.h"
#include "circuit/validate.h"
#include "screens/pages.h"
#include "screens/trace_pages.h"
#include "screens/words.h"
#include "tables/conductor.h"
#include "ui/ui.h"
#include "units/format.h"

namespace screens {
namespace {

struct ToolChip {
  std::string_view words;
  bool diagnosis::Tools::*held;
};
constexpr std::array<ToolChip, 4> kTools{{{"Meter", &diagnosis::Tools::meter},
                                          {"Filament test lamp", &diagnosis::Tools::lamp},
                                          {"Charger with a light", &diagnosis::Tools::device},
                                          {"Spare fuse", &diagnosis::Tools::spare_fuse}}};

void draw_tools(app::TraceDesk& desk) {
  ui::begin_card("tools", {.name = "In your hands", .tone = ui::Tone::plain});
  ui::card_title("In your hands", "none is fine");
  ui::begin_flow();
  for (const ToolChip& tool : kTools) {
    const bool on = desk.setup().tools().*tool.held;
    if (!ui::chip(tool.words, {.on = on, .struck = false, .disabled = false, .said = {}})) continue;
    diagnosis::Tools tools = desk.setup().tools();
    tools.*tool.held = !on;
    desk.set_tools(tools);
  }
  ui::end_flow();
  ui::caption("An LED lamp is no test lamp: it glows on almost nothing.");
  ui::end_card();
}

// What is there, as far as it is told: nothing that Size would choose is named in its place.
void draw_built(app::AppState& app) {
  if (!app.editor().has_circuit()) return;
  const diagnosis::Case& frame = app.trace_desk().frame();
  std::string sub = diagnosis::names_fuse(frame) ? "as you read it" : "no step names a fuse rating";
  if (!diagnosis::knows_wires(frame)) sub += "; volts are reckoned with a wire that is guessed";
  ui::begin_card("built", {.name = "What is there", .tone = ui::Tone::plain});
  if (ui::list_row("Wire and fuse there", {.sub = sub, .value = app::built_words(app.editor().placed().built)}))
    app.navigator().go(app::Route::at(app::Screen::trace, app::Sheet::trace_fitted));
  ui::end_card();
}

void begin(app::AppState& app, diagnosis::Symptom symptom, std::vector<circuit::OutletId> outlets) {
  const std::string why_not = app.trace_desk().start(symptom, std::move(outlets));
  say_if_refused(app, why_not);
  if (why_not.empty() && !app.shown().key.empty()) app.navigator().go(app::Route::at(app::Screen::trace));
}

void draw_symptoms(app::AppState& app) {
  const app::TraceDesk& desk = app.trace_desk();
  const circuit::Circuit& circuit = desk.frame().circuit;
  ui::begin_card("symptoms", {.name = "What is wrong?", .tone = ui::Tone::plain});
  ui::card_title("What is wrong?");
  for (const diagnosis::SymptomRow& row : diagnosis::symptoms()) {
    const ui::Scope scope(row.key);
    const bool no_meter = row.needs_meter && !desk.setup().tools().meter;
    const bool one_outlet = circuit.outlets.size() == 1;
    if (one_outlet && row.symptom == diagnosis::Symptom::several_dead) continue;
    if (!ui::list_row(row.words, {.sub = no_meter ? "with a meter in hand" : "", .disabled = no_meter})) continue;
    if (!row.names_outlets) return ui::end_card(), begin(app, row.symptom, {});
    if (one_outlet) return ui::end_card(), begin(app, row.symptom, {circuit.outlets.front().id});
    app.navigator().go(app::Route::trace_start(row.key));
  }
  ui::end_card();
}

void draw_kept(app::AppState& app) {
  const auto& kept = app.trace_desk().shelf().kept();
  if (kept.empty()) return;
  ui::begin_card("kept", {.name = "Traces of this circuit", .tone = ui::Tone::plain});
  ui::card_title("Traces of this circuit");
  for (const app::KeptTrace& each : kept) {
    const ui::Scope scope(each.number);
    if (ui::list_row(each.date, {.sub = each.complaint + ". " + each.outcome}))
      app.navigator().go(app::Route::trace_numbered(app::Sheet::trace_kept, each.number));
  }
  ui::end_card();
}

bool draw_problems(app::AppState& app) {
  const circuit::Problems& problems = app.trace_desk().problems();
  if (problems.empty()) return false;
  if (ui::notice({.tone = ui::Tone::stop, .title = "This circuit can't be traced yet", .text = circuit::one_line(problems.front()),
                  .action = "Open it on Size"}))
    app.navigator().go(app::Route::at(app::Screen::size));
  return true;
}

void draw_safety() {
  ui::notice({.tone = ui::Tone::caution, .title = {},
              .text = "12 to 48 V DC only. Smoke, a hot smell or a warm cable: fuse out first, and no new fuse until it is found. "
                      "Never put in a bigger fuse. In doubt, leave it to somebody who does this for a living.",
              .action = {}});
}

}  // namespace

void draw_trace_start(app::AppState& app) {
  if (app.trace_desk().unreadable())
    ui::notice({.tone = ui::Tone::caution, .title = "A trace was left off here that can't be read",
                .text = "It stays stored as it is. A new one starts beside it and does not write over it.", .action = {}});
  if (draw_problems(app)) return draw_kept(app);
  ui::begin_columns();
  draw_tools(app.trace_desk());
  draw_symptoms(app);
  ui::next_column();
  draw_built(app);
  draw_kept(app);
  draw_safety();
  ui::end_columns();
}

// One outlet: a tap on it begins. Several: tick them, then begin; what is ticked is kept.
void draw_trace_where(app::AppState& app, Memory&) {
  const diagnosis::SymptomRow* row = diagnosis::symptom_by_key(app.shown().key);
  if (row == nullptr) return;
  if (draw_problems(app)) return;
  const circuit::Circuit& circuit = app.trace_desk().frame().circuit;
  const bool one = row->symptom == diagnosis::Symptom::one_dead;
  ui::begin_card("where", {.name = "Where?", .tone = ui::Tone::plain});
  ui::card_title(one ? "Which outlet?" : "Which outlets?");
  std::vector<circuit::OutletId> dead = app.trace_desk().setup().picked();
  std::erase_if(dead, [&](circuit::OutletId id) { return circuit::find_outlet(circuit, id) == nullptr; });
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    const circuit::OutletId id = circuit.outlets[i].id;
    const ui::Scope scope(id.number);
    if (one) {
      if (!ui::list_row(circuit::outlet_title(circuit, i), {.badge = circuit::outlet_letter(i)})) continue;
      ui::end_card();
      return begin(app, row->symptom, {id});
    }
    const bool on = std::find(dead.begin(), dead.end(), id) != dead.end();
    if (!ui::checkbox_row(circuit::outlet_title(circuit, i), on)) continue;
    std::erase(dead, id);
    if (!on) dead.push_back(id);
    app.trace_desk().pick(dead);
  }
  ui::end_card();
  const std::size_t least = row->symptom == diagnosis::Symptom::several_dead ? 2 : 1;
  if (one) return;
  const bool in_foot = ui::foot_stands("start");
  if (in_foot) ui::begin_foot("start");
  const ui::ButtonSpec start[] = {{.label = "Start", .kind = ui::Kind::primary, .disabled = dead.size() < least}};
  const bool pressed = ui::button_grid(start, true).has_value();
  if (in_foot) ui::end_foot();
  if (!pressed) return;
  begin(app, row->symptom, dead);
}

}  // namespace screens
