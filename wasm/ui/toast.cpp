#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/layer.h"
#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr double kStaysMs = 10000.0;        // long enough to read and to take back
constexpr double kStaysPlainMs = 5000.0;    // nothing to press: long enough to read

}  // namespace

void show_toast(std::string text, std::string action, std::uint32_t token) {
  State::Parts& p = now();
  const double stays = action.empty() ? kStaysPlainMs : kStaysMs;
  p.toast = Toast{std::move(text), std::move(action), token, p.frame.now_ms + stays, false};
  p.want_frames(2);
}

void hide_toast() { now().toast.reset(); }

std::optional<std::uint32_t> take_toast_action() {
  State::Parts& p = now();
  if (!p.toast || !p.toast->pressed) return std::nullopt;
  const std::uint32_t token = p.toast->token;
  p.toast.reset();
  return token;
}

void draw_toast() {
  State::Parts& p = now();
  if (p.toast && p.frame.now_ms >= p.toast->until_ms) p.toast.reset();
  if (!p.toast) return;
  const Frame& f = p.frame;
  Toast& toast = *p.toast;
  const float w = std::min(f.width - 2 * kPage, 480.0F);
  const float action = toast.action.empty() ? 0.0F : std::max(text_width(toast.action, Type::text, true) + 32, kTarget);
  const bool stacked = action > 0 && w - action - 16 < longest_word(toast.text, Type::text, false);
  const float room = stacked ? w - 32 : w - action - (action > 0 ? 16 : 32);
  const float words = text_height(toast.text, Type::text, false, room);
  const float h = stacked ? words + 16 + kTarget : std::max(words + 20, kTarget + 4);
  const float floor = p.sheets.empty() ? p.toast_floor : f.height - f.safe_bottom;
  const Rect rect{std::round((f.width - w) / 2), std::round(floor - h - 12), w, std::round(h)};
  ImGui::SetNextWindowPos({rect.x, rect.y});
  ImGui::SetNextWindowSize({rect.w, rect.h});
  // With nothing to press on it, a finger reaches what lies under it.
  ImGui::Begin("toast", nullptr, action > 0 ? kBare : kBare | ImGuiWindowFlags_NoMouseInputs);
  ImGui::BringWindowToDisplayFront(ImGui::GetCurrentWindow());
  push_column({.left = rect.x, .width = rect.w, .y = rect.y});
  fill(rect, colour(Ink::ink), kRadius);
  record(words_id("toast"), rect, {.role = Role::status, .name = toast.text});
  paint_text(toast.text, {rect.x + 16, std::round(stacked ? rect.y + 12 : rect.mid_y() - words / 2), room, words},
             {.type = Type::text, .ink = Ink::ground});
  if (action > 0) {
    const Rect target{rect.right() - action, stacked ? rect.bottom() - kTarget : rect.mid_y() - kTarget / 2, action, kTarget};
    const std::uint32_t id = make_id("action");
    const Press pressed = press(id, target);
    record(id, target, {.role = Role::button, .name = toast.action});
    if (pressed.held || pressed.hovered) fill(target, faded(colour(Ink::ground), 0.14F), kControlRadius);
    line_of_text(toast.action, target.mid_x(), target.mid_y(), {.type = Type::text, .semibold = true, .ink = Ink::toast_action},
                 Align::centre);
    if (pressed.pressed) toast.pressed = true;
  }
  pop_column();
  ImGui::End();
}

void draw_focus_ring() {
  const Ring& ring = now().ring;
  if (!ring.shown) return;
  ImDrawList* list = ImGui::GetForegroundDrawList();
  list->PushClipRect({ring.clip.x, ring.clip.y}, {ring.clip.right(), ring.clip.bottom()});
  const Rect& r = ring.rect;
  list->AddRect({r.x - 2, r.y - 2}, {r.right() + 2, r.bottom() + 2}, colour(Ink::accent), ring.radius + 2, 0, 3.0F);
  list->PopClipRect();
}

void field_tapped(State::Parts& parts, float x, float y) {
  parts.focus_wanted = 0;
  const auto& records = parts.recorder.finished();
  for (const Record& r : records) {
    const bool inside = x >= r.x && x < r.x + r.width && y >= r.y && y < r.y + r.height;
    const bool real = std::find(parts.fields.begin(), parts.fields.end(), r.id) != parts.fields.end();
    if (inside && real && (r.state & kDisabled) == 0U) parts.focus_wanted = r.id;
  }
}

}  // namespace ui
