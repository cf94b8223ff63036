// The app's widgets without a browser: an ImGui context with no renderer, frames by hand, a
// finger, and things found by role and name as a person would. For every test that draws.
//
//   Headless h;                                         // 412 x 915, day, text 100 %
//   bool pressed = false;
//   h.draw = [&] { ui::begin_page("p", {.title = "T"}); pressed |= ui::button("Go"); ui::end_page(); };
//   h.settle();
//   h.press(ui::Role::button, "Go");                    // as the mirror does
//   h.tap(ui::Role::button, "Go");                      // with a finger, at its middle
//   CHECK(h.find(ui::Role::button, "Go") != nullptr);
//   write_png("look.png", h.width(), h.height(), h.picture());   // see raster.h
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include <imgui.h>

#include "fonts/fonts.h"
#include "ui/state.h"
#include "ui/raster.h"

class Headless {
 public:
  std::function<void()> draw = [] {};
  ui::Frame window;
  int frames = 0;                        // drawn so far

  Headless() : context_(make_context()), state_(std::make_unique<ui::State>(fonts::text(), fonts::semibold())) {
    window.now_ms = 1000.0;
  }
  ~Headless() {
    state_.reset();
    drop_textures();
    ImGui::DestroyContext(context_);
  }
  Headless(const Headless&) = delete;
  Headless& operator=(const Headless&) = delete;

  ui::State& state() { return *state_; }
  [[nodiscard]] int width() const { return static_cast<int>(window.width * window.pixel_ratio); }
  [[nodiscard]] int height() const { return static_cast<int>(window.height * window.pixel_ratio); }

  // One frame, `milliseconds` after the last. True while another is wanted.
  bool frame(double milliseconds = 16.0) {
    window.now_ms += milliseconds;
    state_->begin_frame(window);
    draw();
    state_->end_frame();
    take_textures();
    ++frames;
    return state_->wants_frame();
  }
  // Frames until none is wanted; false when that never comes.
  bool settle(int at_most = 400) {
    while (at_most-- > 0) {
      if (!frame()) return true;
    }
    return false;
  }
  // The last frame as device pixels, RGBA.
  [[nodiscard]] std::vector<std::uint32_t> picture() { return rasterise(*ImGui::GetDrawData(), width(), height()); }

  [[nodiscard]] const std::vector<ui::Record>& records() const { return state_->records(); }
  // Whole name, or its beginning when no name is equal.
  [[nodiscard]] const ui::Record* find(ui::Role role, std::string_view name) const {
    const ui::Record* begins = nullptr;
    for (const ui::Record& r : records()) {
      if (r.role != role) continue;
      if (r.name == name) return &r;
      if (begins == nullptr && std::string_view(r.name).starts_with(name)) begins = &r;
    }
    return begins;
  }
  [[nodiscard]] bool shows(std::string_view words) const {   // anywhere in a name or value
    for (const ui::Record& r : records()) {
      if (r.name.find(words) != std::string::npos || r.value.find(words) != std::string::npos) return true;
    }
    return false;
  }

  // As the mirror acts. False: nothing of that role and name, or it is disabled.
  bool act(ui::Role role, std::string_view name, ui::Action::Kind kind, std::string text = {}) {
    const ui::Record* r = find(role, name);
    if (r == nullptr || (r->state & ui::kDisabled) != 0U) return false;
    state_->act({.id = r->id, .kind = kind, .text = std::move(text)});
    return settle();
  }
  bool press(ui::Role role, std::string_view name) { return act(role, name, ui::Action::Kind::press); }
  bool set_text(ui::Role role, std::string_view name, std::string text) {
    return act(role, name, ui::Action::Kind::set_text, std::move(text));
  }

  // A finger. Time passes with the frames; event times are the window's clock.
  void touch(ui::Touch phase, float x, float y, int finger = 1) { state_->touch(phase, finger, x, y, window.now_ms); }
  void tap_at(float x, float y) {
    touch(ui::Touch::start, x, y);
    frame();
    frame();
    touch(ui::Touch::end, x, y);
    settle();
  }
  // Where it is now; false when it is not on the screen (scroll first).
  bool tap(ui::Role role, std::string_view name) {
    const ui::Record* r = find(role, name);
    if (r == nullptr || r->y < 0 || r->y + r->height > window.height) return false;
    tap_at(r->x + r->width / 2, r->y + r->height / 2);
    return true;
  }
  // Down, moves over `milliseconds`, up. A short one flings.
  void drag(float x, float y, float dx, float dy, double milliseconds = 200.0, bool let_go = true) {
    touch(ui::Touch::start, x, y);
    frame();
    const int steps = static_cast<int>(milliseconds / 16.0) + 1;
    for (int i = 1; i <= steps; ++i) {
      const float part = static_cast<float>(i) / static_cast<float>(steps);
      frame();
      touch(ui::Touch::move, x + dx * part, y + dy * part);
    }
    frame();
    if (let_go) touch(ui::Touch::end, x + dx, y + dy);
  }
  void type(std::string_view code) {
    state_->key(code, true);
    state_->key(code, false);
    settle();
  }

 private:
  static ImGuiContext* make_context() {
    ImGuiContext* context = ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    io.BackendRendererName = "headless";
    return context;
  }
  // What a renderer would do with the font atlas: nothing but say that it did.
  static void take_textures() {
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      if (texture->Status == ImTextureStatus_WantDestroy) {
        texture->SetTexID(ImTextureID_Invalid);
        texture->SetStatus(ImTextureStatus_Destroyed);
      } else if (texture->Status != ImTextureStatus_OK) {
        texture->SetTexID(static_cast<ImTextureID>(1 + texture->UniqueID));
        texture->SetStatus(ImTextureStatus_OK);
      }
    }
  }
  static void drop_textures() {
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      texture->SetTexID(ImTextureID_Invalid);
      texture->SetStatus(ImTextureStatus_Destroyed);
    }
    ImGui::GetIO().BackendFlags &= ~ImGuiBackendFlags_RendererHasTextures;
  }

  ImGuiContext* context_;
  std::unique_ptr<ui::State> state_;
};
