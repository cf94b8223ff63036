// Sheets: from the bottom edge on a phone, in the middle of a wide window; modal.
#include <algorithm>
#include <cmath>
#include <string>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/button.h"
#include "ui/layer.h"
#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"
#include "ui/text.h"

namespace ui {
namespace {

constexpr float kSheetRadius = 20.0F;
constexpr float kWide = 600.0F;           // from here on a sheet stands in the middle
constexpr float kSheetWidth = 520.0F;
constexpr float kLow = 480.0F;            // a window this low gives the sheet all of it
constexpr float kAirBelow = 16.0F;

bool centred() { return now().frame.width >= kWide && now().frame.height >= kLow; }

float sheet_width() {
  const Frame& f = now().frame;
  return centred() ? std::min(kSheetWidth, f.width - 2 * kPage) : f.width;
}

float words_width() { return sheet_width() - 2 * kPage - kTarget; }

float header_height(const SheetOptions& options) {
  const float words = text_height(options.title, Type::title, true, words_width()) +
                      text_height(options.subtitle, Type::caption, false, words_width());
  return std::max(std::round(words), kTarget) + 20.0F;
}

Rect sheet_rect(const Sheet& sheet, const SheetOptions& options, float header) {
  const Frame& f = now().frame;
  const float below = centred() ? 0.0F : f.safe_bottom;
  const float want = header + sheet.content + kAirBelow + below;
  const float w = sheet_width();
  if (f.height < kLow) return {(f.width - w) / 2, 0, w, f.height};
  const float most = centred() ? f.height * 0.9F : f.height - f.safe_top - 24.0F;
  const float h = snap(options.tall ? most : std::min(want, most));
  if (centred()) return {std::round((f.width - w) / 2), std::round((f.height - h) / 2), w, h};
  return {0, f.height - h, w, h};
}

// A press beside the sheet closes it.
bool pressed_beside(const Rect& sheet) {
  const Frame& f = now().frame;
  const Rect sides[] = {{0, 0, f.width, sheet.y},
                        {0, sheet.bottom(), f.width, f.height - sheet.bottom()},
                        {0, sheet.y, sheet.x, sheet.h},
                        {sheet.right(), sheet.y, f.width - sheet.right(), sheet.h}};
  bool pressed = false;
  for (const Rect& side : sides) {
    if (side.w >= 1.0F && side.h >= 1.0F) pressed = press(make_id("beside"), side).pressed || pressed;
  }
  return pressed;
}

void paint_surface(const Rect& rect) {
  const Frame& f = now().frame;
  fill({0, 0, f.width, f.height}, f.dark ? 0xA8000000U : 0x73000000U);
  const bool touches_bottom = rect.bottom() >= f.height - 0.5F;
  ImDrawList* list = ImGui::GetWindowDrawList();
  const float radius = f.height < kLow ? 0.0F : kSheetRadius;
  list->AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, colour(Ink::ground), radius,
                      touches_bottom ? ImDrawFlags_RoundCornersTop : ImDrawFlags_RoundCornersAll);
  // At night the ground is nearly as dark as what lies under the sheet: an edge tells them apart.
  if (f.dark) outline({rect.x, rect.y, rect.w, touches_bottom ? rect.h + radius : rect.h}, colour(Ink::line), radius);
}

bool header(const SheetOptions& options, const Rect& rect, float height, const char* close_name) {
  const float title = text_height(options.title, Type::title, true, words_width());
  const float words = title + text_height(options.subtitle, Type::caption, false, words_width());
  const Rect at{rect.x + kPage, std::round(rect.y + (height - words) / 2 + 2), words_width(), words};
  record(words_id("h1"), at, {.role = Role::heading, .name = options.title, .level = 1});
  paint_text(options.title, at, {.type = Type::title, .semibold = true});
  if (!options.subtitle.empty()) {
    const Rect sub{at.x, at.y + title, at.w, at.h - title};
    record(words_id("sub"), sub, {.role = Role::text, .name = options.subtitle});
    paint_text(options.subtitle, sub, {.type = Type::caption, .ink = Ink::muted});
  }
  return icon_button(close_name, Icon::close, rect.right() - kPage - kTarget / 2 + 10, at.mid_y(), Ink::muted);
}

}  // namespace

void open_sheet(std::string_view name) {
  State::Parts& p = now();
  if (p.sheet(name) != nullptr) return;
  Sheet sheet;
  sheet.name = std::string(name);
  sheet.drawn = true;                      // not yet, but it may be begun only in the next frame
  sheet.focus_before = p.recorder.focused;
  p.sheets.push_back(std::move(sheet));
  p.recorder.focused = 0;
  p.touch.stop();
  p.typing = {};
  p.want_frames(3);
}

void close_sheet(std::string_view name) {
  State::Parts& p = now();
  const auto found = std::find_if(p.sheets.begin(), p.sheets.end(), [name](const Sheet& s) { return s.name == name; });
  if (found == p.sheets.end()) return;
  p.recorder.focused = found->focus_before;
  p.sheets.erase(found, p.sheets.end());
  p.touch.stop();
  p.want_frames(2);
}

bool sheet_is_open(std::string_view name) { return now().sheet(name) != nullptr; }

bool begin_sheet(std::string_view name, const SheetOptions& options) {
  State::Parts& p = now();
  Sheet* sheet = p.sheet(name);
  if (sheet == nullptr) return false;
  const Frame& f = p.frame;
  sheet->drawn = true;
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize({f.width, f.height});
  ImGui::Begin(("sheet/" + sheet->name).c_str(), nullptr, kBare);
  ImGuiWindow* window = ImGui::GetCurrentWindow();
  ImGui::BringWindowToDisplayFront(window);
  if (sheet->fresh) {                      // one unseen frame, to learn its height
    window->Hidden = true;
    p.want_frames(3);
  }
  const float head = header_height(options);
  const Rect rect = sheet_rect(*sheet, options, head);
  p.drawing_sheets.push_back({sheet->name, p.region, 0.0F});
  p.region = 0;
  sheet->range.first = p.recorder.size();
  push_column({.left = rect.x, .width = rect.w, .y = rect.y});
  const bool beside = pressed_beside(rect);
  paint_surface(rect);
  record(words_id("dialog"), rect, {.role = Role::dialog, .name = options.title, .radius = kSheetRadius});
  const bool closed = header(options, rect, head, "Close");
  const Rect body{rect.x, rect.y + head, rect.w, std::max(rect.h - head, 1.0F)};
  ImGui::SetCursorScreenPos({body.x, body.y});
  ImGui::BeginChild("body", {body.w, body.h}, ImGuiChildFlags_None, kBare);
  ImGuiWindow* child = ImGui::GetCurrentWindow();
  p.region = child->ID;
  p.top_body = child->ID;
  if (child->Scroll.y > 0.5F) fill({body.x, body.y, body.w, 1}, colour(Ink::line));
  const float top = ImGui::GetCursorScreenPos().y;
  p.drawing_sheets.back().top = top;
  push_column({.left = rect.x + kPage, .width = rect.w - 2 * kPage, .y = top});
  // Closed from the next frame on: its content is drawn once more, so that begin and end match.
  if (closed || beside) p.closing.push_back(sheet->name);
  return true;
}

void end_sheet() {
  State::Parts& p = now();
  const SheetDrawing drawing = p.drawing_sheets.back();
  p.drawing_sheets.pop_back();
  const float content = column().y - drawing.top;
  const ImGuiWindow* child = ImGui::GetCurrentWindow();
  const Rect body{child->Pos.x, child->Pos.y, child->Size.x, child->Size.y};
  end_scrolling_part(body, kAirBelow + p.frame.safe_bottom);
  pop_column();
  record_end();
  if (Sheet* sheet = p.sheet(drawing.name)) {
    if (sheet->fresh || std::fabs(sheet->content - content) > 0.5F) p.want_frames(2);
    sheet->fresh = false;
    sheet->content = content;
    sheet->range.second = p.recorder.size();
  }
  p.region = drawing.region;
  ImGui::End();
}

bool confirm(std::string_view name, const ConfirmOptions& options) {
  if (!begin_sheet(name, {.title = options.title})) return false;
  paragraph(options.text, Ink::muted);
  gap(4);
  const ButtonSpec specs[] = {{.label = options.no}, {.label = options.yes, .kind = options.danger ? Kind::danger : Kind::primary}};
  const auto chosen = buttons(specs);
  end_sheet();
  if (chosen) close_sheet(name);
  return chosen == std::optional<std::size_t>(1);
}

}  // namespace ui
