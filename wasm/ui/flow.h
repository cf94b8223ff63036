// How chips share the width of a flow. Private to the room.
#pragma once

#include <span>
#include <vector>

namespace ui {

inline constexpr float kFlowGap = 8.0F;

// Widths for chips of these natural widths: all alike where that takes no more lines, else each
// line stretched to the edge, but for a last line that is all but empty. One alone stays as it is.
std::vector<float> chip_widths(std::span<const float> natural, float width);

// Lays out and draws the chips told so far in this flow.
void place_chips();

}  // namespace ui
