#include "ui/press.h"

#include <algorithm>
#include <utility>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/parts.h"

namespace ui {

Press press(std::uint32_t id, const Rect& rect, bool disabled) {
  State::Parts& parts = now();
  Press result;
  const ImRect box(rect.x, rect.y, rect.right(), rect.bottom());
  const bool visible = ImGui::ItemAdd(box, id);
  const bool asked = parts.recorder.take_press(id);
  if (disabled) return result;
  if (visible) {
    bool hovered = false, held = false;
    result.pressed = ImGui::ButtonBehavior(box, id, &hovered, &held, ImGuiButtonFlags_NoNavFocus);
    result.held = held && hovered;
    result.hovered = hovered && !parts.touch.by_touch();
  }
  if (asked) result.pressed = true;
  if (result.pressed) {
    parts.want_frames(2);
    if (!asked) parts.recorder.focus_visible = false;
  }
  return result;
}

namespace {

// Brings the rectangle into the scrolling window, with some air.
void bring_into_view(const Rect& rect) {
  ImGuiWindow* window = ImGui::GetCurrentWindow();
  constexpr float kAir = 24.0F;
  const ImRect clip = window->InnerClipRect;
  float by = 0.0F;
  if (rect.bottom() > clip.Max.y - kAir) by = rect.bottom() - clip.Max.y + kAir;
  if (rect.y - by < clip.Min.y + kAir) by = rect.y - clip.Min.y - kAir;
  if (by == 0.0F || window->ScrollMax.y <= 0.0F) return;
  ImGui::SetScrollY(window, std::clamp(window->Scroll.y + by, 0.0F, window->ScrollMax.y));
  now().want_frames(2);
}

}  // namespace

std::size_t record(std::uint32_t id, const Rect& rect, const Said& said) {
  State::Parts& parts = now();
  ImGuiWindow* window = ImGui::GetCurrentWindow();
  Record r;
  r.id = id;
  r.role = said.role;
  r.level = said.level;
  r.state = said.state;
  r.x = rect.x;
  r.y = rect.y;
  r.width = rect.w;
  r.height = rect.h;
  r.region = parts.region;
  r.low = said.low;
  r.high = said.high;
  r.name = said.name;
  r.value = said.value;
  r.description = said.description;
  if (id == parts.recorder.scroll_to) {
    parts.recorder.scroll_to = 0;
    if (parts.region != 0) bring_into_view(rect);
  }
  if (id == parts.recorder.focused && parts.recorder.focus_visible && can_focus(r)) {
    const ImRect clip = window->InnerClipRect;
    parts.ring = {true, rect, {clip.Min.x, clip.Min.y, clip.GetWidth(), clip.GetHeight()}, said.radius};
  }
  return parts.recorder.add(std::move(r));
}

void record_end() { now().recorder.end(); }

std::string joined(std::string_view a, std::string_view b, std::string_view c) {
  std::string all(a);
  for (const std::string_view part : {b, c}) {
    if (part.empty()) continue;
    if (!all.empty()) all += ", ";
    all += part;
  }
  return all;
}

}  // namespace ui
