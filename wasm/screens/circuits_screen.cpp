// The notebook: every vehicle with its circuits, and files in and out.
#include "app/built.h"
#include "screens/pages.h"
#include "screens/places/circuits.h"
#include "screens/words.h"
#include "tables/supply.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string circuit_summary(const vehicle::Vehicle& of, const vehicle::PlacedCircuit& placed) {
  const std::size_t count = placed.plan.outlets.size();
  const vehicle::Block* block = vehicle::find_block(of, placed.block);
  std::string text = of.blocks.size() > 1 && block != nullptr ? block->name + ", " : "";
  text += "fuse " + std::to_string(placed.position) + " · " + std::to_string(count) + (count == 1 ? " outlet" : " outlets");
  return placed.built ? text + " · built: " + app::built_words(placed.built) : text;
}

std::string vehicle_summary(const vehicle::Vehicle& of, bool demo) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(of.battery.kind);
  std::string text(setting_words()[static_cast<std::size_t>(of.kind)].name);
  text += ", " + trimmed(of.battery.nominal.number()) + " V";
  if (kind != nullptr) text.append(" ").append(kind->name);
  return demo ? text + " · demo data" : text;
}

void draw_vehicle(app::AppState& app, const app::Stored& stored) {
  const ui::Scope scope(stored.number);
  const app::Notebook& notebook = app.desk().notebook();
  const vehicle::Vehicle& of = stored.vehicle;
  ui::begin_card("vehicle", {.name = of.name, .tone = ui::Tone::plain});
  const std::string summary = vehicle_summary(of, notebook.is_untouched_demo(stored));
  if (ui::list_row(of.name, {.sub = summary, .icon = ui::Icon::book, .said = "Vehicle " + of.name + ", " + summary}))
    app.navigator().go(app::Route::at_vehicle(stored.number));
  for (const vehicle::PlacedCircuit& placed : of.circuits) {
    const ui::Scope circuit(placed.id.number);
    const app::CircuitRef ref{stored.number, placed.id};
    if (ui::list_row(placed.plan.name, {.sub = circuit_summary(of, placed), .value = notebook.open() == ref ? "open" : "",
                                        .current = notebook.open() == ref}))
      app.navigator().go(app::Route::at_circuit(ref));
  }
  if (of.circuits.empty()) ui::caption("No circuit on its fuse block yet.");
  ui::end_card();
}

// "Vehicle 3": its key, in words.
std::string unread_name(const app::Unread& unread) {
  const std::size_t slash = unread.key.find('/');
  return (unread.key.starts_with("circuit") ? "Circuit " : "Vehicle ") + unread.key.substr(slash + 1);
}

void draw_unread(app::AppState& app) {
  const auto& all = app.desk().notebook().unread();
  if (all.empty()) return;
  ui::begin_card("unread", {.name = "Can't be read", .tone = ui::Tone::stop});
  for (const app::Unread& each : all) {
    const ui::Scope scope(each.number);
    if (ui::list_row(unread_name(each), {.sub = "can't be read; kept as it is", .icon = ui::Icon::warning, .tone = ui::Tone::stop}))
      app.navigator().go(app::Route::at_unread(each.number));
  }
  ui::end_card();
}

void draw_import_problems(app::AppState& app) {
  const circuit::Problems& problems = app.desk().import_problems();
  if (problems.empty()) return;
  constexpr std::size_t kShown = 5;
  std::string text;
  for (std::size_t i = 0; i < problems.size() && i < kShown; ++i) {
    if (i > 0) text += "\n";
    text += circuit::one_line(problems[i]);
  }
  if (problems.size() > kShown) text += "\nand " + std::to_string(problems.size() - kShown) + " more.";
  text += "\nYour circuits are as they were.";
  if (ui::notice({.tone = ui::Tone::stop, .title = "The file was not taken in", .text = text, .action = "OK", .alert = true}))
    app.desk().clear_import_problems();
}

void draw_deleted(app::AppState& app) {
  const auto& deleted = app.desk().notebook().deleted();
  if (deleted.empty()) return;
  ui::begin_card("deleted", {.name = "Deleted", .tone = ui::Tone::plain});
  ui::card_title("Deleted just now", "until you close the app");
  for (std::size_t i = deleted.size(); i-- > 0;) {
    const ui::Scope scope(deleted[i].number);
    if (ui::list_row(deleted[i].name, {.value = "Put back", .chevron = false})) {
      app.desk().put_back(deleted[i].number);
      break;   // the list has changed
    }
  }
  ui::end_card();
}

void draw_list(app::AppState& app) {
  const auto& vehicles = app.desk().notebook().vehicles();
  if (vehicles.empty()) {
    ui::begin_card("empty", {.name = "No circuits", .tone = ui::Tone::plain});
    ui::question("No circuits yet");
    ui::paragraph("Make a new one, or import a file.", ui::Ink::muted);
    ui::end_card();
  }
  for (const app::Stored& stored : vehicles) draw_vehicle(app, stored);
  draw_unread(app);
}

// What is made here: a circuit in the open vehicle, or another vehicle.
bool draw_new(app::AppState& app) {
  if (ui::button("New circuit", {.kind = ui::Kind::primary, .icon = ui::Icon::plus})) return app.desk().new_circuit(), true;
  if (!app.editor().has_vehicle()) return false;
  const bool demo = app.desk().notebook().is_untouched_demo(*app.desk().notebook().open_vehicle());
  if (!demo) ui::caption("It goes into '" + app.editor().vehicle().name + "'.");
  if (demo || !ui::disclosure("New vehicle", false, "with a battery and a fuse block of its own")) return false;
  const auto words = setting_words();
  std::vector<ui::ButtonSpec> kinds;
  for (const Words& each : words) kinds.push_back({.label = std::string(each.name), .icon = ui::Icon::plus, .said = "New vehicle: " + std::string(each.name)});
  const auto pressed = ui::buttons(kinds);
  if (pressed) app.desk().new_vehicle(static_cast<circuit::Setting>(*pressed));
  return pressed.has_value();
}

void draw_files(app::AppState& app) {
  if (draw_new(app)) return;
  const app::Notebook& notebook = app.desk().notebook();
  const ui::ButtonSpec files[] = {{.label = "Import a file", .icon = ui::Icon::folder},
                                  {.label = "Export all", .icon = ui::Icon::share, .disabled = notebook.vehicles().empty()}};
  if (const auto pressed = ui::buttons(files)) {
    if (*pressed == 0) return app.desk().ask_for_import();
    return app.desk().export_all();
  }
  if (!notebook.has_untouched_demo() && ui::button("Add the demo circuit", {.kind = ui::Kind::quiet})) app.desk().add_demo();
}

}  // namespace

void draw_circuits_screen(app::AppState& app, Memory&) {
  const ui::PageEvents events = ui::begin_page("circuits", {.title = "Circuits", .subtitle = "All kept on this device",
                                                            .back = true, .more = false});
  if (events.back) app.navigator().back();
  draw_messages(app);
  draw_import_problems(app);
  ui::begin_columns();
  draw_list(app);
  ui::next_column();
  draw_files(app);
  draw_deleted(app);
  ui::begin_card("preferences", {.name = "Preferences", .tone = ui::Tone::plain});
  if (ui::list_row("Preferences", {.sub = "day or night, units, text size"})) app.navigator().go(app::Route::at(app::Screen::preferences));
  ui::end_card();
  ui::end_columns();
  ui::end_page();
}

}  // namespace screens
