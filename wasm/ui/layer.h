// What lies over everything at the end of a frame, and what page and sheet share. Private to the room.
#pragma once

#include <string_view>

#include "ui/icon.h"
#include "ui/parts.h"

namespace ui {

// A window that shows nothing of its own: the room paints all of it.
inline constexpr ImGuiWindowFlags kBare = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                                          ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoBackground;

void draw_toast();
void draw_focus_ring();
// A tap on a real text field: the page must focus it now, within the person's gesture.
void field_tapped(State::Parts& parts, float x, float y);

// A round target with an icon and no words.
bool icon_button(std::string_view name, Icon icon, float mid_x, float mid_y, Ink ink);
// At the end of a page: a foot that is gone gives its room back.
void settle_foot();
// Closes a scrolling child window: tells ImGui how far its content reaches, marks the place.
void end_scrolling_part(const Rect& body, float air);

}  // namespace ui
