// What else can be done from the Size screen.
#include "screens/places/size.h"
#include "ui/ui.h"

namespace screens {

void draw_more_sheet(app::AppState& app, Memory&) {
  ui::begin_card("more", {.name = "More", .tone = ui::Tone::plain});
  if (app.editor().can_undo() && ui::list_row("Undo", {.sub = app.editor().undo_what(), .icon = ui::Icon::undo, .chevron = false})) app.editor().undo();
  if (app.editor().can_redo() && ui::list_row("Redo", {.sub = app.editor().redo_what(), .chevron = false})) app.editor().redo();
  if (ui::list_row("Name, vehicle, fuse position", {.icon = ui::Icon::none}))
    app.navigator().replace(app::Route::at(app::Screen::size, app::Sheet::label));
  if (ui::list_row("New circuit", {.icon = ui::Icon::plus, .chevron = false})) app.desk().new_circuit();
  else if (ui::list_row("Export this circuit", {.sub = "as a file, to keep or to hand on", .icon = ui::Icon::share, .chevron = false}))
    app.desk().export_circuit(app.editor().current().circuit);
  if (ui::list_row("Circuits", {.sub = "vehicles; open, duplicate, delete, import", .icon = ui::Icon::book}))
    app.navigator().replace(app::Route::at(app::Screen::circuits));
  if (ui::list_row("Quick sums", {.sub = "calculators that need no circuit", .icon = ui::Icon::sums}))
    app.navigator().replace(app::Route::at(app::Screen::quick));
  if (ui::list_row("Preferences", {.sub = "day or night, units, text size"}))
    app.navigator().replace(app::Route::at(app::Screen::preferences));
  ui::end_card();
}

}  // namespace screens
