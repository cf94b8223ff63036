// What a finger means. On the glass it only hovers; the button goes down when it lifts (tap) or
// has rested a moment (held), so that a drag can never press. An upright drag scrolls, then coasts;
// a sideways drag scrolls what scrolls sideways. The first touch on a coasting list stops it and
// presses nothing. Speeds come from the events' own time stamps: frames may be late.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "ui/state.h"

namespace ui {

class TouchMachine {
 public:
  // True when this end was a tap (also after a rest), at x, y.
  bool touch(Touch phase, int finger, float x, float y, double time_ms);
  void wheel(float x, float y, float dx, float dy);   // px to scroll by
  void scroll_by(std::uint32_t window, float dy);     // keys
  // Before ImGui::NewFrame: a rest turns into a press.
  void before_frame(double now_ms);
  // After it: moves the scrolling window.
  void after_new_frame(double now_ms, bool smooth);
  [[nodiscard]] bool wants_frame() const;
  [[nodiscard]] bool by_touch() const { return by_touch_; }     // the last input was a finger
  void mouse_used() { by_touch_ = false; }
  [[nodiscard]] bool panning() const { return state_ == Is::pan || fling_; }
  void stop();                                 // a coast must not go on under a sheet

 private:
  enum class Is : std::uint8_t { idle, waiting, held, pan, nothing };
  struct Sample {
    double time_ms = 0.0;
    float at = 0.0F;
  };
  void begin_pan(float x, float y, double time_ms);
  void remember(double time_ms, float at);
  [[nodiscard]] float speed(double now_ms) const;      // px per s over the last 100 ms

  Is state_ = Is::idle;
  bool by_touch_ = true;
  int finger_ = 0;
  float start_x_ = 0, start_y_ = 0, last_x_ = 0, last_y_ = 0;
  double start_ms_ = 0;
  std::uint32_t window_ = 0;                   // ImGui id of what scrolls
  int axis_ = 1;                               // 0 sideways, 1 upright
  float pending_ = 0;                          // px to scroll, not yet applied
  float carry_ = 0;                            // part of a px not yet scrolled
  bool fling_ = false;
  float velocity_ = 0;                         // px per s of the scroll position
  double fling_ms_ = 0;
  std::uint32_t wheel_window_ = 0;
  int wheel_axis_ = 1;
  float wheel_left_ = 0;
  double wheel_ms_ = 0;
  std::array<Sample, 16> samples_{};
  std::size_t sample_count_ = 0;
};

}  // namespace ui
