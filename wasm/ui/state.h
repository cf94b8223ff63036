// What the widgets remember between frames, and the door for input: one ui::State lives in the
// shell. Between begin_frame and end_frame it is the current one, and the free functions of
// this room (button, stepper, ...) draw into it.
//
//   state.begin_frame(frame);   // ImGui::NewFrame is called inside; the renderer's own NewFrame before it
//   screens::draw(...);         // begin_page ... end_page, sheets
//   state.end_frame();          // ImGui::Render is called inside
//   another frame while state.wants_frame(), or after state.wake_after_ms()
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "ui/semantics.h"

namespace ui {

struct Frame {
  float width = 412.0F, height = 915.0F;      // window, CSS px
  float pixel_ratio = 1.0F;                   // device px per CSS px, any
  float safe_top = 0.0F, safe_right = 0.0F, safe_bottom = 0.0F, safe_left = 0.0F;
  bool dark = false;
  bool less_motion = false;
  double text_scale = 1.0;                    // 1 to 2; clamped
  double now_ms = 0.0;                        // monotonic, same clock as the events' time stamps
};

enum class Touch : std::uint8_t { start, move, end, cancel };

class State {
 public:
  // An ImGui context is current. Font bytes (TrueType) must outlive the State.
  State(std::span<const unsigned char> text_font, std::span<const unsigned char> semibold_font);
  ~State();
  State(const State&) = delete;
  State& operator=(const State&) = delete;

  void begin_frame(const Frame& frame);
  void end_frame();

  // Input, any time outside a frame. Positions in CSS px of the window, times in ms of the event.
  void touch(Touch phase, int finger, float x, float y, double time_ms);
  void mouse_move(float x, float y);
  void mouse_button(int button, bool down);
  void wheel(float dx, float dy);              // lines, positive: content moves up and left
  // DOM code: "Escape", "Digit1", "Numpad1", "Backspace", "Enter", "Tab", "ArrowDown", "PageDown"...
  // A host with a mirror forwards Tab, Enter and Space only while no mirrored element has its focus.
  void key(std::string_view dom_code, bool down, bool shift = false);
  void act(const Action& action);              // from the mirror or a test

  // Output.
  [[nodiscard]] const std::vector<Record>& records() const;   // of the last finished frame
  [[nodiscard]] bool wants_frame() const;      // fling, hold, queued events, something just changed
  [[nodiscard]] std::optional<double> wake_after_ms() const;  // a toast will leave: one frame then
  // The textbox whose real field must take the text cursor now; set at once by the tap, 0: none.
  [[nodiscard]] std::uint32_t focus_wanted() const;
  void clear_focus_wanted();
  [[nodiscard]] std::uint32_t focused() const; // last focused by keyboard or mirror, 0: none

  // Sheets. Back gesture and Escape close the top one first.
  [[nodiscard]] std::size_t sheets_open() const;
  bool close_top_sheet();                      // false: none was open
  void close_all_sheets();

  // Ask for one more frame (a screen changed something late).
  void want_frame();

  struct Parts;                                // private to this room: parts.h
  Parts& parts() { return *parts_; }

 private:
  std::unique_ptr<Parts> parts_;
};

}  // namespace ui
