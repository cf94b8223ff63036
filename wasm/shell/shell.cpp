#include "shell/shell.h"

#include <utility>

#include "app/app_state.h"
#include "fonts/fonts.h"
#include "screens/places.h"
#include "screens/screens.h"
#include "ui/state.h"

namespace shell {

struct Shell::Parts {
  platform::Host& host;
  ui::State ui;
  app::AppState app;
  screens::Memory memory;
  bool shift_left = false;
  bool shift_right = false;

  Parts(platform::Host& the_host, const std::vector<platform::StoredRecord>& stored, std::string_view route)
      : host(the_host), ui(fonts::text(), fonts::semibold()), app(the_host, screens::places(), stored, route) {}

  [[nodiscard]] ui::Frame ui_frame(double now_ms) const {
    const platform::Surroundings& s = app.settings().surroundings();
    ui::Frame frame;
    frame.width = s.width;
    frame.height = s.height;
    frame.pixel_ratio = s.pixel_ratio;
    frame.safe_top = s.safe_top;
    frame.safe_right = s.safe_right;
    frame.safe_bottom = s.safe_bottom;
    frame.safe_left = s.safe_left;
    frame.dark = app.settings().dark();
    frame.less_motion = s.prefers_less_motion;
    frame.text_scale = app.settings().preferences().text_size / 100.0;
    frame.now_ms = now_ms;
    return frame;
  }

  // Sheets that are no route's: the keypad, a question. Each back gesture closes one.
  [[nodiscard]] std::size_t layers() const {
    const bool routed = !memory.open_sheet.empty() && !memory.sheet_leaving;
    const std::size_t open = ui.sheets_open();
    return routed && open > 0 ? open - 1 : open;
  }
};

Shell::Shell(platform::Host& host, std::vector<platform::StoredRecord> stored, std::string route,
             platform::Surroundings surroundings)
    : parts_(std::make_unique<Parts>(host, stored, route)) {
  parts_->app.settings().surroundings_changed(surroundings);
}

Shell::~Shell() = default;

void Shell::surroundings_changed(const platform::Surroundings& surroundings) {
  parts_->app.settings().surroundings_changed(surroundings);
}

void Shell::route_changed(std::string_view route) {
  if (parts_->app.navigator().route_changed(route)) parts_->ui.close_top_sheet();
}

void Shell::file_opened(std::string_view name, std::string_view bytes) { parts_->app.desk().import_file(name, bytes); }
void Shell::store_failed(std::string_view key, std::string_view why) { parts_->app.messages().store_failed(key, why); }

void Shell::update_waiting() { parts_->app.messages().set_update_waiting(); }

void Shell::touch(TouchPhase phase, int finger, float x, float y, double time_ms) {
  parts_->ui.touch(static_cast<ui::Touch>(phase), finger, x, y, time_ms);
}
void Shell::mouse_move(float x, float y) { parts_->ui.mouse_move(x, y); }
void Shell::mouse_button(int button, bool down) { parts_->ui.mouse_button(button, down); }
void Shell::wheel(float dx, float dy) { parts_->ui.wheel(dx, dy); }

void Shell::key(std::string_view dom_code, bool down) {
  if (dom_code == "ShiftLeft") parts_->shift_left = down;
  if (dom_code == "ShiftRight") parts_->shift_right = down;
  parts_->ui.key(dom_code, down, parts_->shift_left || parts_->shift_right);
}

void Shell::act(const ui::Action& action) { parts_->ui.act(action); }

bool Shell::frame(double now_ms) {
  Parts& p = *parts_;
  p.app.settle();
  p.ui.begin_frame(p.ui_frame(now_ms));
  screens::draw(p.app, p.memory);
  p.ui.end_frame();
  p.app.navigator().layers_over(p.layers());
  // What stands above the widget that was used still shows the state before it.
  if (!p.app.settled()) p.ui.want_frame();
  if (const auto wait = p.ui.wake_after_ms()) p.host.wake_after(static_cast<int>(*wait) + 1);
  return p.ui.wants_frame();
}

const std::vector<ui::Record>& Shell::records() const { return parts_->ui.records(); }
std::uint32_t Shell::focus_wanted() const { return parts_->ui.focus_wanted(); }
ui::State& Shell::widgets() { return parts_->ui; }

}  // namespace shell
