#include "ui/state.h"

#include <algorithm>
#include <cfloat>
#include <utility>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/layer.h"
#include "ui/layout.h"
#include "ui/parts.h"
#include "units/expect.h"

namespace ui {
namespace {

// The State between its begin_frame and end_frame; widgets are free functions and find it here.
State::Parts* drawn_now = nullptr;

ImFont* load(std::span<const unsigned char> bytes) {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  // ImGui asks for a pointer to change but does not change what it does not own.
  void* data = const_cast<unsigned char*>(bytes.data());
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(data, static_cast<int>(bytes.size()), 0.0F, &config);
}

void set_style() {
  ImGuiStyle& style = ImGui::GetStyle();
  style.WindowPadding = {0, 0};
  style.WindowBorderSize = 0;
  style.ChildBorderSize = 0;
  style.WindowMinSize = {1, 1};
  style.ItemSpacing = {0, 0};
  style.CircleTessellationMaxError = 0.08F;
  style.CurveTessellationTol = 0.4F;
}

}  // namespace

State::Parts& now() {
  BRANCHLIGHT_EXPECT(drawn_now != nullptr);   // else a widget outside begin_frame and end_frame
  return *drawn_now;
}

State::State(std::span<const unsigned char> text_font, std::span<const unsigned char> semibold_font)
    : parts_(std::make_unique<Parts>()) {
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigWindowsMoveFromTitleBarOnly = true;
  parts_->text = load(text_font);
  parts_->semibold = load(semibold_font);
  set_style();
}

State::~State() {
  if (drawn_now == parts_.get()) drawn_now = nullptr;
}

void State::begin_frame(const Frame& frame) {
  Parts& p = *parts_;
  const double before_ms = p.frame.now_ms;
  const bool resized = frame.width != p.frame.width || frame.height != p.frame.height;
  p.frame = frame;
  p.frame.text_scale = std::clamp(frame.text_scale, 1.0, 2.0);
  p.frame.pixel_ratio = std::max(frame.pixel_ratio, 0.5F);
  if (resized) p.want_frames(2);
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = {std::max(frame.width, 1.0F), std::max(frame.height, 1.0F)};
  io.DisplayFramebufferScale = {p.frame.pixel_ratio, p.frame.pixel_ratio};
  io.DeltaTime = static_cast<float>(std::clamp((frame.now_ms - before_ms) / 1000.0, 0.001, 0.1));
  p.touch.before_frame(frame.now_ms);
  drawn_now = parts_.get();
  ImGui::NewFrame();
  // ImGui sets this for its one current font only; we draw with two.
  for (ImFont* font : {p.text, p.semibold}) font->CurrentRasterizerDensity = p.frame.pixel_ratio;
  p.touch.after_new_frame(frame.now_ms, !frame.less_motion);
  p.recorder.begin_frame();
  p.recorder.take_focus_actions();
  for (Sheet& sheet : p.sheets) {
    sheet.drawn = false;
    sheet.range = {};
  }
  p.fields.clear();
  p.chip_places_before = std::exchange(p.chip_places, {});
  p.cut.clear();
  p.ring.shown = false;
  p.toast_floor = frame.height - frame.safe_bottom;
  p.top_body = 0;
}

void State::end_frame() {
  Parts& p = *parts_;
  BRANCHLIGHT_EXPECT(p.columns.empty() && p.cards.empty() && p.groups.empty() && p.drawing_sheets.empty());   // else something begun was not ended
  const auto gone = std::find_if(p.sheets.begin(), p.sheets.end(), [](const Sheet& s) { return !s.drawn; });
  if (gone != p.sheets.end()) {
    p.sheets.erase(gone, p.sheets.end());
    p.want_frames(2);
  }
  for (const std::string& name : p.closing) close_sheet(name);
  p.closing.clear();
  const std::size_t over = p.recorder.size();
  draw_toast();
  draw_focus_ring();
  std::optional<std::pair<std::size_t, std::size_t>> dialog;
  for (const Sheet& sheet : p.sheets) {        // the last that was drawn is on top
    if (sheet.range.second > sheet.range.first) dialog = sheet.range;
  }
  p.recorder.end_frame(dialog, over);
  p.typing.keys.clear();
  if (!ImGui::GetIO().MouseDown[0] && p.hold.id != 0) p.hold = {};
  ImGui::Render();
  if (p.frames_wanted > 0) --p.frames_wanted;
  drawn_now = nullptr;
}

void State::touch(Touch phase, int finger, float x, float y, double time_ms) {
  Parts& p = *parts_;
  p.want_frames(2);
  if (phase == Touch::start) p.recorder.focus_visible = false;
  if (!p.touch.touch(phase, finger, x, y, time_ms)) return;
  field_tapped(p, x, y);
}

void State::mouse_move(float x, float y) {
  parts_->touch.mouse_used();
  parts_->want_frames(1);
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
  io.AddMousePosEvent(x, y);
}

void State::mouse_button(int button, bool down) {
  parts_->touch.mouse_used();
  parts_->want_frames(2);
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
  if (button >= 0 && button < 3) io.AddMouseButtonEvent(button, down);
  if (button == 0 && down) parts_->recorder.focus_visible = false;
  if (button == 0 && !down) field_tapped(*parts_, io.MousePos.x, io.MousePos.y);
}

void State::wheel(float dx, float dy) {
  constexpr float kLine = 36.0F;         // px per line of a wheel
  const ImVec2 at = ImGui::GetIO().MousePos;
  parts_->touch.mouse_used();
  parts_->touch.wheel(at.x, at.y, dx * kLine, dy * kLine);
  parts_->want_frames(1);
}

void State::act(const Action& action) {
  Parts& p = *parts_;
  p.recorder.queue(action);
  p.want_frames(3);
}

const std::vector<Record>& State::records() const { return parts_->recorder.finished(); }

bool State::wants_frame() const {
  const Parts& p = *parts_;
  return p.frames_wanted > 0 || p.touch.wants_frame() || p.hold.id != 0 || p.recorder.has_actions() ||
         ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
}

std::optional<double> State::wake_after_ms() const {
  const Parts& p = *parts_;
  if (!p.toast || p.toast->until_ms <= 0.0) return std::nullopt;
  return std::max(p.toast->until_ms - p.frame.now_ms, 0.0) + 1.0;
}

std::uint32_t State::focus_wanted() const { return parts_->focus_wanted; }
void State::clear_focus_wanted() { parts_->focus_wanted = 0; }
std::uint32_t State::focused() const { return parts_->recorder.focused; }
std::size_t State::sheets_open() const { return parts_->sheets.size(); }

bool State::close_top_sheet() {
  Parts& p = *parts_;
  if (p.sheets.empty()) return false;
  p.recorder.focused = p.sheets.back().focus_before;
  p.sheets.pop_back();
  p.touch.stop();
  p.want_frames(2);
  return true;
}

void State::close_all_sheets() {
  while (close_top_sheet()) {}
}

void State::want_frame() { parts_->want_frames(1); }

void State::Parts::text_drawn(std::string_view words, float x, float width) {
  const float left = columns.empty() ? 0.0F : columns.back().left - columns.back().pad;
  const float right = columns.empty() ? frame.width : columns.back().left + columns.back().width + columns.back().pad;
  if (x < left - 1.0F || x + width > right + 1.0F) cut.emplace_back(words);
}

Sheet* State::Parts::sheet(std::string_view name) {
  const auto found = std::find_if(sheets.begin(), sheets.end(), [name](const Sheet& s) { return s.name == name; });
  return found == sheets.end() ? nullptr : &*found;
}

}  // namespace ui
