// What else can be done from the Size screen.
#include "screens/pages.h"
#include "ui/ui.h"

namespace screens {

void draw_more_sheet(app::AppState& app) {
  ui::begin_card("more", {.name = "More", .tone = ui::Tone::plain});
  if (app.can_undo() && ui::list_row("Undo", {.sub = app.undo_what(), .icon = ui::Icon::undo, .chevron = false})) app.undo();
  if (app.can_redo() && ui::list_row("Redo", {.sub = app.redo_what(), .chevron = false})) app.redo();
  if (ui::list_row("Name, place, fuse position", {.icon = ui::Icon::none}))
    app.replace_route(app::Route::at(app::Screen::size, app::Sheet::label));
  if (ui::list_row("New circuit", {.icon = ui::Icon::plus, .chevron = false})) app.new_circuit();
  else if (ui::list_row("Export this circuit", {.sub = "as a file, to keep or to hand on", .icon = ui::Icon::share, .chevron = false}))
    app.export_circuit(app.notebook().open()->number);
  if (ui::list_row("Circuits", {.sub = "open, duplicate, delete, import", .icon = ui::Icon::book}))
    app.replace_route(app::Route::at(app::Screen::circuits));
  if (ui::list_row("Quick sums", {.sub = "calculators that need no circuit", .icon = ui::Icon::sums}))
    app.replace_route(app::Route::at(app::Screen::quick));
  if (ui::list_row("Preferences", {.sub = "day or night, units, text size"}))
    app.replace_route(app::Route::at(app::Screen::preferences));
  ui::end_card();
}

}  // namespace screens
