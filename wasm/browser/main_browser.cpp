// The app in the browser: a WebGL2 canvas, the shell, and the functions that web/*.js call.
// When to draw is decided by web/frames.js; nothing here asks for a frame by itself.
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <emscripten.h>
#include <emscripten/html5.h>

#include "backends/imgui_impl_opengl3.h"
#include "browser/platform_browser.h"
#include "fonts/fonts.h"
#include "imgui.h"
#include "mirror/feed.h"
#include "shell/shell.h"
#include "units/expect.h"

namespace {

struct App {
  browser::Host host;
  std::vector<platform::StoredRecord> stored;   // gathered before the start
  std::unique_ptr<shell::Shell> shell;
  mirror::Feed feed;
};

App& app() {
  static App one;
  return one;
}

std::string_view text_at(const char* at, int size) { return {at, static_cast<std::size_t>(size)}; }

bool open_canvas() {
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  wanted.alpha = EM_FALSE;
  wanted.depth = EM_FALSE;
  wanted.stencil = EM_FALSE;
  wanted.antialias = EM_FALSE;   // ImGui smooths its own edges
  wanted.powerPreference = EM_WEBGL_POWER_PREFERENCE_LOW_POWER;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context("#canvas", &wanted);
  return context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS;
}

void tell_mirror() {
  const mirror::News news = app().feed.after_frame(app().shell->records());
  if (news.kind == mirror::News::Kind::full) {
    browser::tell_mirror_all(news.full, news.moves);
  } else if (news.kind == mirror::News::Kind::moves) {
    browser::tell_mirror_moves(news.moves);
  }
}

}  // namespace

extern "C" {

EMSCRIPTEN_KEEPALIVE void app_stored(const char* key, int key_size, const char* text, int size) {
  app().stored.push_back({std::string(text_at(key, key_size)), std::string(text_at(text, size))});
}

// 0: running, 1: no WebGL2.
EMSCRIPTEN_KEEPALIVE int app_start(const char* route, int route_size, float width, float height, float pixel_ratio,
                                   float top, float right, float bottom, float left, int dark, int less_motion,
                                   int us_units) {
  if (!open_canvas()) {
    return 1;
  }
  ImGui::CreateContext();
  ImGui_ImplOpenGL3_Init("#version 300 es");
  const platform::Surroundings around{width, height, pixel_ratio, top, right, bottom, left,
                                      dark != 0, less_motion != 0, us_units != 0};
  app().shell = std::make_unique<shell::Shell>(app().host, std::move(app().stored),
                                               std::string(text_at(route, route_size)), around);
  return 0;
}

EMSCRIPTEN_KEEPALIVE void app_surroundings(float width, float height, float pixel_ratio, float top, float right,
                                           float bottom, float left, int dark, int less_motion, int us_units) {
  app().shell->surroundings_changed({width, height, pixel_ratio, top, right, bottom, left, dark != 0,
                                     less_motion != 0, us_units != 0});
}

// One frame onto the canvas. 1: another one is wanted.
EMSCRIPTEN_KEEPALIVE int app_frame(double now_ms) {
  ImGui_ImplOpenGL3_NewFrame();
  const bool more = app().shell->frame(now_ms);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  tell_mirror();
  return more ? 1 : 0;
}

// The GPU took the canvas away and gave it back empty: everything on it is made again.
EMSCRIPTEN_KEEPALIVE void app_canvas_restored() {
  ImGui_ImplOpenGL3_Shutdown();
  ImGui_ImplOpenGL3_Init("#version 300 es");
}

// phase: 0 start, 1 move, 2 end, 3 cancel.
EMSCRIPTEN_KEEPALIVE void app_touch(int phase, int finger, float x, float y, double time_ms) {
  app().shell->touch(static_cast<shell::TouchPhase>(phase), finger, x, y, time_ms);
}
EMSCRIPTEN_KEEPALIVE void app_mouse_move(float x, float y) { app().shell->mouse_move(x, y); }
EMSCRIPTEN_KEEPALIVE void app_mouse_button(int button, int down) { app().shell->mouse_button(button, down != 0); }
EMSCRIPTEN_KEEPALIVE void app_wheel(float dx, float dy) { app().shell->wheel(dx, dy); }
EMSCRIPTEN_KEEPALIVE void app_key(const char* code, int size, int down) {
  app().shell->key(text_at(code, size), down != 0);
}

// kind: as ui::Action::Kind.
EMSCRIPTEN_KEEPALIVE void app_act(std::uint32_t id, int kind, const char* text, int size) {
  app().shell->act({id, static_cast<ui::Action::Kind>(kind), std::string(text_at(text, size))});
}
EMSCRIPTEN_KEEPALIVE std::uint32_t app_focus_wanted() { return app().shell->focus_wanted(); }

EMSCRIPTEN_KEEPALIVE void app_route(const char* route, int size) { app().shell->route_changed(text_at(route, size)); }
EMSCRIPTEN_KEEPALIVE void app_file(const char* name, int name_size, const char* bytes, int size) {
  app().shell->file_opened(text_at(name, name_size), text_at(bytes, size));
}
EMSCRIPTEN_KEEPALIVE void app_store_failed(const char* key, int key_size, const char* why, int size) {
  app().shell->store_failed(text_at(key, key_size), text_at(why, size));
}
EMSCRIPTEN_KEEPALIVE void app_update_waiting() { app().shell->update_waiting(); }

// The app's own type for the real text fields of the page.
EMSCRIPTEN_KEEPALIVE const unsigned char* app_font() { return fonts::text().data(); }
EMSCRIPTEN_KEEPALIVE int app_font_size() { return static_cast<int>(fonts::text().size()); }

}  // extern "C"

int main() {
  units::on_bug(browser::stop_on_bug);
  browser::open_door();
  return 0;
}
