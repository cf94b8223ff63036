// How dead is proved: on the bare metal that hands will touch, after it came in sight, each side against a minus
// that is known, and across. Across alone proves nothing: where black is open, red stands at battery volts and
// the two show no difference. Common practice, no source. Private to this room.
#pragma once

#include <string>
#include <string_view>

#include "diagnosis/case.h"

namespace diagnosis {

// How the whole block goes off. A switch, or a main fuse drawn by hand, opens plus with no tool near it; else
// minus first: a spanner that slips from plus to the vehicle's metal shorts the battery, one on minus does not.
inline constexpr std::string_view kBlockOff =
    "Open the main switch, or draw a main fuse that needs no tool. Neither there: the battery's minus lead comes off, "
    "insulated spanner, rings off.";

// A meter or a filament lamp. A device that stays off shows nothing of red alone.
inline bool can_prove_dead(const Tools& tools) { return tools.meter || tools.lamp; }

// "Prove outlet C dead on its bare metal: ...". `where`: the part, as after "Prove".
std::string prove_dead_words(const Case& the_case, std::string_view where);
// Whoever has no tester: what to borrow before any hand goes on metal. Empty where there is one.
std::string borrow_words(const Case& the_case);

}  // namespace diagnosis
