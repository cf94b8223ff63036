// What feeds the open circuit's fuse block, and whose rules bind there: of the whole vehicle.
#include "screens/pages.h"
#include "screens/places/size.h"
#include "screens/supply_cards.h"

namespace screens {

void draw_supply_sheet(app::AppState& app, Memory&) {
  const Feeding at{app, app.editor().current().circuit.vehicle, app.editor().placed().block};
  if (!draw_supply_cards(at)) draw_practice_card(app);
}

}  // namespace screens
