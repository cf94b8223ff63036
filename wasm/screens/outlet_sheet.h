// The cards of the outlet sheet that have a file of their own. Each gives true when it changed the
// circuit: what was drawn from the outlet as it stood before is stale then.
#pragma once

#include "screens/screens.h"

namespace screens {

bool draw_devices(app::AppState& app, Memory& memory, const circuit::Outlet& outlet);
bool draw_wire(app::AppState& app, const circuit::Outlet& outlet);

}  // namespace screens
