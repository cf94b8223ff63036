// The bar of places at the foot of the screens. Wire, Prove and Trace join here.
#pragma once

#include "app/app_state.h"

namespace screens {

// Ends the page with the bar and goes where it is pressed; the place we are in leads to its
// list, or back to the top.
void end_page_at(app::AppState& app, app::Screen here);

}  // namespace screens
