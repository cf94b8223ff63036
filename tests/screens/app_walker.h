// The whole app without a browser, walked as a person walks it: things are found by role and
// name, pressed through the records, and looked at as pictures.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <imgui.h>

#include "app/memory_host.h"
#include "shell/shell.h"
#include "ui/raster.h"

class AppWalker {
 public:
  test_app::MemoryHost host;
  platform::Surroundings around;
  int frames = 0;

  AppWalker() : context_(make_context()) { host.on_route = [this](std::string_view text) { shell_->route_changed(text); }; }
  ~AppWalker() {
    shell_.reset();
    drop_textures();
    ImGui::DestroyContext(context_);
  }
  AppWalker(const AppWalker&) = delete;
  AppWalker& operator=(const AppWalker&) = delete;

  void start(std::vector<platform::StoredRecord> stored = {}, std::string route = "") {
    shell_.reset();
    for (const platform::StoredRecord& record : stored) host.records[record.key] = record.text;
    host.addresses = {route};
    shell_ = std::make_unique<shell::Shell>(host, std::move(stored), std::move(route), around);
    settle();
  }
  void restart() {
    std::vector<platform::StoredRecord> kept;
    for (const auto& [key, text] : host.records) kept.push_back({key, text});
    start(std::move(kept));
  }
  void resize(float width, float height, float ratio = 1.0F) {
    around.width = width;
    around.height = height;
    around.pixel_ratio = ratio;
    if (shell_) {
      shell_->surroundings_changed(around);
      settle();
    }
  }
  void dark(bool wanted) {
    around.prefers_dark = wanted;
    shell_->surroundings_changed(around);
    settle();
  }

  shell::Shell& shell() { return *shell_; }
  bool frame(double milliseconds = 16.0) {
    now_ms_ += milliseconds;
    const bool more = shell_->frame(now_ms_);
    take_textures();
    ++frames;
    return more;
  }
  // Frames until none is wanted; false when that never comes.
  bool settle(int at_most = 400) {
    while (at_most-- > 0)
      if (!frame()) return true;
    return false;
  }

  [[nodiscard]] const std::vector<ui::Record>& records() const { return shell_->records(); }
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
  [[nodiscard]] bool shows(std::string_view words) const {
    for (const ui::Record& r : records())
      if (r.name.find(words) != std::string::npos || r.value.find(words) != std::string::npos ||
          r.description.find(words) != std::string::npos)
        return true;
    return false;
  }
  // Every word of the screen, for a failed check to print.
  [[nodiscard]] std::string all() const {
    std::string text;
    for (const ui::Record& r : records())
      if (!r.name.empty() || !r.value.empty())
        text += std::to_string(static_cast<int>(r.role)) + " " + r.name + (r.value.empty() ? "" : " = " + r.value) +
                (r.description.empty() ? "" : " (" + r.description + ")") + "\n";
    return text;
  }

  // False: nothing of that role and name, or it is disabled.
  bool act(ui::Role role, std::string_view name, ui::Action::Kind kind, std::string text = {}) {
    const ui::Record* r = find(role, name);
    if (r == nullptr || (r->state & ui::kDisabled) != 0U) return false;
    shell_->act({.id = r->id, .kind = kind, .text = std::move(text)});
    return settle();
  }
  bool press(ui::Role role, std::string_view name) { return act(role, name, ui::Action::Kind::press); }
  bool press(std::string_view name) { return press(ui::Role::button, name); }
  bool set(ui::Role role, std::string_view name, std::string text) {
    return act(role, name, ui::Action::Kind::set_text, std::move(text));
  }
  bool go(std::string_view route) {
    host.addresses.emplace_back(route);
    shell_->route_changed(route);
    return settle();
  }
  [[nodiscard]] const std::string& address() const { return host.addresses.back(); }

  bool picture(const std::string& path) {
    const int width = static_cast<int>(around.width * around.pixel_ratio);
    const int height = static_cast<int>(around.height * around.pixel_ratio);
    return write_png(path, width, height, rasterise(*ImGui::GetDrawData(), width, height));
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
  std::unique_ptr<shell::Shell> shell_;
  double now_ms_ = 1000.0;
};
