#include "screens/screens.h"

#include "screens/pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string offer_text(app::Toast::Offer offer) {
  switch (offer) {
    case app::Toast::Offer::undo_edit: return "Undo";
    case app::Toast::Offer::put_back:
    case app::Toast::Offer::put_back_trace: return "Put back";
    case app::Toast::Offer::none: break;
  }
  return {};
}

void draw_toast(app::AppState& app, Memory& memory) {
  if (const auto token = ui::take_toast_action(); token && app.messages().toast()) app.take_offer();
  if (!app.messages().toast()) {
    if (memory.toast_shown != 0) ui::hide_toast();
    memory.toast_shown = 0;
    return;
  }
  if (memory.toast_shown == app.messages().toast_serial()) return;
  memory.toast_shown = app.messages().toast_serial();
  ui::show_toast(app.messages().toast()->text, offer_text(app.messages().toast()->offer), 1);
}

}  // namespace

void draw(app::AppState& app, Memory& memory) {
  switch (app.shown().screen) {
    case app::Screen::size: draw_size_screen(app, memory); break;
    case app::Screen::circuits: draw_circuits_screen(app, memory); break;
    case app::Screen::preferences: draw_preferences_screen(app, memory); break;
    case app::Screen::quick: draw_quick_screen(app, memory); break;
    case app::Screen::tables: draw_tables_screen(app, memory); break;
    case app::Screen::cards: draw_card_screen(app); break;
    case app::Screen::trace: draw_trace_screen(app, memory); break;
  }
  draw_sheet(app, memory);
  draw_toast(app, memory);
}

}  // namespace screens
