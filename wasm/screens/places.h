// Every place by its row, and the bar of places at the foot of the screens.
#pragma once

#include "app/places.h"
#include "screens/place.h"

namespace screens {

const app::Places& places();                       // what the app has to know of them
const Place& place_of(app::Screen screen);
const SheetRow& sheet_of(app::Sheet sheet);        // not of Sheet::none

// Ends the page with the bar and goes where it is pressed; the place we are in leads to its
// list, or back to the top.
void end_page_at(app::AppState& app, app::Screen here);

}  // namespace screens
