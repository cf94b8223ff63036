// The notebook: every stored circuit, and files in and out.
#include "screens/pages.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string summary(const app::Stored& stored, bool demo) {
  const circuit::Circuit& circuit = *stored.circuit;
  const std::size_t count = circuit.outlets.size();
  std::string text = circuit.place.empty() ? "" : circuit.place + " · ";
  text += "fuse " + std::to_string(circuit.fuse_position) + " · " + std::to_string(count) + (count == 1 ? " outlet" : " outlets");
  return demo ? text + " · demo data" : text;
}

void draw_stored(app::AppState& app, const app::Stored& stored) {
  const ui::Scope scope(stored.number);
  const bool open = app.desk().notebook().open() == &stored;
  if (!stored.readable()) {
    if (ui::list_row("Circuit " + std::to_string(stored.number),
                     {.sub = "can't be read", .icon = ui::Icon::warning, .tone = ui::Tone::stop}))
      app.navigator().go(app::Route::at_stored(stored.number));
    return;
  }
  if (ui::list_row(stored.circuit->name, {.sub = summary(stored, app.desk().notebook().is_untouched_demo(stored)),
                                          .value = open ? "open" : ""}))
    app.navigator().go(app::Route::at_stored(stored.number));
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
    const app::Stored& stored = deleted[i].stored;
    const ui::Scope scope(stored.number);
    const std::string name = stored.readable() ? stored.circuit->name : "Circuit " + std::to_string(stored.number);
    if (ui::list_row(name, {.value = "Put back", .chevron = false})) {
      app.desk().put_back_circuit(stored.number);
      break;   // the list has changed
    }
  }
  ui::end_card();
}

void draw_list(app::AppState& app) {
  const auto& circuits = app.desk().notebook().circuits();
  if (circuits.empty()) {
    ui::begin_card("empty", {.name = "No circuits", .tone = ui::Tone::plain});
    ui::question("No circuits yet");
    ui::paragraph("Make a new one, or import a file.", ui::Ink::muted);
    ui::end_card();
    return;
  }
  ui::begin_card("circuits", {.name = "Circuits", .tone = ui::Tone::plain});
  for (std::size_t i = 0; i < circuits.size(); ++i) draw_stored(app, circuits[i]);
  ui::end_card();
}

void draw_files(app::AppState& app) {
  if (ui::button("New circuit", {.kind = ui::Kind::primary, .icon = ui::Icon::plus})) return app.desk().new_circuit();
  const ui::ButtonSpec files[] = {{.label = "Import a file", .icon = ui::Icon::folder},
                                  {.label = "Export all", .icon = ui::Icon::share, .disabled = app.desk().notebook().circuits().empty()}};
  if (const auto pressed = ui::buttons(files)) {
    if (*pressed == 0) app.desk().ask_for_import();
    else app.desk().export_all();
  }
  bool has_demo = false;
  for (const app::Stored& stored : app.desk().notebook().circuits()) has_demo = has_demo || app.desk().notebook().is_untouched_demo(stored);
  if (!has_demo && ui::button("Add the demo circuit", {.kind = ui::Kind::quiet})) app.desk().add_demo();
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
