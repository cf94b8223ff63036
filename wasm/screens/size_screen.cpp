// Size: the answer for the whole circuit, why it is so, and everything it follows from.
#include "screens/pages.h"
#include "screens/places.h"
#include "screens/places/size.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string subtitle(const circuit::Circuit& circuit) {
  const std::string fuse = "fuse position " + std::to_string(circuit.fuse_position);
  return circuit.place.empty() ? "Fuse" + fuse.substr(4) : circuit.place + " · " + fuse;
}

void draw_caution(app::AppState& app) {
  if (app.settings().preferences().caution_seen) return;
  const bool seen = ui::notice(
      {.tone = ui::Tone::caution,
       .title = "Before you start",
       .text = "For DC circuits up to 60 V. Leave mains, airbag and engine-management wiring alone.\n"
               "A battery can drive thousands of amps through a spanner. Rings and watches off, fuse out and "
               "proved dead before your hands go in.\n"
               "Results are planning figures. Local codes, the makers' instructions and licensed practice come first.",
       .action = "I understand"});
  if (!seen) return;
  app::Preferences preferences = app.settings().preferences();
  preferences.caution_seen = true;
  app.settings().set_preferences(preferences);
}

// The cautions that belong to this answer; without one, the one that always holds.
void draw_notes(app::AppState& app) {
  std::string text;
  for (const std::string& note : app.results().answer().notes) text += (text.empty() ? "" : "\n") + note;
  if (text.empty()) text = "Planning figures. Local codes, the makers' instructions and licensed practice come first.";
  ui::notice({.tone = ui::Tone::caution, .title = {}, .text = text, .action = {}});
}

void draw_undo(app::AppState& app) {
  if (!app.editor().can_undo() && !app.editor().can_redo()) return;
  const ui::ButtonSpec specs[] = {
      {.label = "Undo", .kind = ui::Kind::secondary, .icon = ui::Icon::undo, .disabled = !app.editor().can_undo(),
       .said = app.editor().can_undo() ? "Undo: " + app.editor().undo_what() : "Undo"},
      {.label = "Redo", .kind = ui::Kind::secondary, .icon = ui::Icon::none, .disabled = !app.editor().can_redo(),
       .said = app.editor().can_redo() ? "Redo: " + app.editor().redo_what() : "Redo"}};
  const auto pressed = ui::buttons(specs);
  if (!pressed) return;
  if (*pressed == 0) app.editor().undo();
  else app.editor().redo();
}

void draw_empty(app::AppState& app) {
  ui::begin_card("empty", {.name = "No circuit", .tone = ui::Tone::plain});
  ui::question("No circuit yet");
  ui::paragraph("Make one to size its wire and fuse.", ui::Ink::muted);
  if (ui::button("New circuit", {.kind = ui::Kind::primary, .icon = ui::Icon::plus})) app.desk().new_circuit();
  if (ui::button("Open the notebook", {.icon = ui::Icon::book})) app.navigator().go(app::Route::at(app::Screen::circuits));
  ui::end_card();
}

void draw_body(app::AppState& app, Memory& memory) {
  draw_caution(app);
  ui::begin_columns();
  draw_answer_card(app);
  draw_sketch_card(app, memory);
  draw_ladder_card(app);
  draw_volts_card(app);
  draw_together_card(app);
  if (ui::two_columns()) draw_notes(app);
  ui::next_column();
  draw_outlets_card(app);
  draw_undo(app);
  draw_settings_card(app);
  if (!ui::two_columns()) draw_notes(app);
  ui::end_columns();
}

}  // namespace

void draw_size_screen(app::AppState& app, Memory& memory) {
  const bool has = app.editor().has_circuit();
  const ui::PageEvents events =
      ui::begin_page("size", {.title = has ? app.editor().circuit().name : "Branchlight",
                              .subtitle = has ? subtitle(app.editor().circuit()) : "",
                              .title_opens = true,
                              .title_hint = "Open the circuits",
                              .back = false,
                              .more = true});
  if (events.title) app.navigator().go(app::Route::at(app::Screen::circuits));
  if (events.more) app.navigator().go(has ? app::Route::at(app::Screen::size, app::Sheet::more) : app::Route::at(app::Screen::preferences));
  draw_messages(app);
  if (app.results().has_answer()) draw_body(app, memory);
  else draw_empty(app);
  end_page_at(app, app::Screen::size);
}

}  // namespace screens
