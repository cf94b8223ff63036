// What the circuit carries: how much at once and how far the volts may drop, and the outlets
// with their loads and lengths.
#include "screens/fields.h"
#include "screens/pages.h"
#include "screens/words.h"

namespace screens {
namespace {

constexpr std::size_t kInlineOutlets = 4;   // so many have their steppers right here

void draw_at_once(app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  units::Amperes all{0.0};
  for (const circuit::Outlet& outlet : circuit.outlets)
    all += circuit::rated_current(outlet, circuit.supply.nominal);
  const bool capped = circuit.at_most_at_once.has_value();
  if (capped) {
    const auto changed = number_stepper(app, {.label = "At most at once",
                                              .sub = "whole circuit",
                                              .field = circuit::Field::at_most_at_once_a,
                                              .value = circuit.at_most_at_once->number()});
    if (changed) return commit(app, circuit::SetAtMostAtOnce{units::Amperes(changed->value)}, "at-once", *changed);
  }
  if (circuit.outlets.size() < 2 && !capped) return;
  if (!ui::switch_row("Everything at once", !capped, {.sub = "all together: " + units::amperes_text(all), .disabled = false}))
    return;
  // Switched off, the cap starts at what everything together takes; 10 A where nothing is fitted.
  const units::Amperes start = all > units::Amperes{0.0} ? all : units::Amperes{10.0};
  app.editor().dispatch(circuit::SetAtMostAtOnce{capped ? std::nullopt : std::optional(start)});
}

void draw_outlet_row(app::AppState& app, std::size_t index) {
  const circuit::Circuit& circuit = app.editor().circuit();
  const circuit::Outlet& outlet = circuit.outlets[index];
  const sizing::Candidate* choice = app.results().answer().choice();
  const std::string letter = circuit::outlet_letter(index);
  std::string volts;
  if (choice != nullptr && index < choice->outlets.size()) volts = units::volts_text(choice->outlets[index].voltage);
  const std::string runs = what_runs_text(circuit, outlet);
  if (ui::list_row(outlet.name, {.sub = runs + " · " + run_text(app, outlet),
                                 .value = volts,
                                 .badge = letter,
                                 .said = "Outlet " + letter + ", " + outlet.name + ", " + runs + ", " + run_text(app, outlet) + (volts.empty() ? "" : ", " + volts)}))
    app.navigator().go(app::Route::at_outlet(outlet.id));
}

void draw_only_load(app::AppState& app, const circuit::Outlet& outlet, const std::string& letter, const std::string& key) {
  circuit::Load changed = outlet.devices.front().load;
  const auto load = load_stepper(app, "Load", "Load of " + letter, changed);
  if (!load) return;
  changed.rating = load->rating;
  changed.rating_in_watts = load->watts;
  commit(app, circuit::SetLoad{outlet.id, changed}, "load/" + key, {.value = load->rating, .joins = load->joins});
}

void draw_outlet_steppers(app::AppState& app, std::size_t index) {
  const circuit::Outlet outlet = app.editor().circuit().outlets[index];
  const std::string letter = circuit::outlet_letter(index);
  const std::string key = std::to_string(outlet.id.number);
  if (outlet.devices.size() == 1) draw_only_load(app, outlet, letter, key);
  const auto run = number_stepper(app, {.label = "Length",
                                        .sub = "one way, from " + feeder_text(app.editor().circuit(), outlet.fed_from),
                                        .said = "Length to " + letter,
                                        .field = circuit::Field::run_m,
                                        .value = outlet.run.length.number()});
  if (run) commit(app, circuit::SetRun{outlet.id, units::Metres(run->value)}, "run/" + key, *run);
}

void add_outlet(app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  const circuit::OutletId added = circuit::next_outlet(circuit);
  const circuit::OutletId after = circuit.outlets.empty() ? circuit::kBlock : circuit.outlets.back().id;
  if (app.editor().dispatch(circuit::AddOutlet{after})) app.navigator().go(app::Route::at_outlet(added));
}

}  // namespace

void draw_together_card(app::AppState& app) {
  ui::begin_card("together", {.name = "Whole circuit", .tone = ui::Tone::plain});
  draw_at_once(app);
  const auto drop = number_stepper(app, {.label = "Drop limit",
                                         .sub = "battery to outlet",
                                         .field = circuit::Field::drop_limit_fraction,
                                         .value = app.editor().circuit().drop_limit});
  if (drop) commit(app, circuit::SetDropLimit{drop->value}, "drop-limit", *drop);
  ui::end_card();
}

void draw_outlets_card(app::AppState& app) {
  const std::size_t count = app.editor().circuit().outlets.size();
  ui::begin_card("outlets", {.name = "Outlets", .tone = ui::Tone::plain});
  ui::card_title("Outlets", std::to_string(count));
  for (std::size_t i = 0; i < count && i < app.editor().circuit().outlets.size(); ++i) {
    const ui::Scope scope(app.editor().circuit().outlets[i].id.number);
    draw_outlet_row(app, i);
    if (count <= kInlineOutlets) draw_outlet_steppers(app, i);
  }
  if (ui::button("Add an outlet", {.icon = ui::Icon::plus})) add_outlet(app);
  ui::end_card();
}

}  // namespace screens
