#include "screens/screens.h"

#include "screens/pages.h"
#include "screens/places.h"
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
  place_of(app.shown().screen).draw.get()(app, memory);
  draw_sheet(app, memory);
  draw_toast(app, memory);
}

}  // namespace screens
