// The whole app behind one door: a host feeds it events and asks it for frames. The browser
// main and the headless tests both hold one of these and nothing else of the app.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "platform/platform.h"
#include "ui/semantics.h"

namespace ui {
class State;
}

namespace shell {

enum class TouchPhase { start, move, end, cancel };

class Shell {
 public:
  // An ImGui context exists and its renderer is set up by the host before the first frame.
  // `stored` is everything the host keeps; `route` the address after '#', maybe empty.
  Shell(platform::Host& host, std::vector<platform::StoredRecord> stored, std::string route,
        platform::Surroundings surroundings);
  ~Shell();

  void surroundings_changed(const platform::Surroundings& surroundings);
  void route_changed(std::string_view route);               // back gesture, shortcut, typed address
  void file_opened(std::string_view name, std::string_view bytes);
  void store_failed(std::string_view key, std::string_view why);
  void update_waiting();                                     // a newer app is ready for the next start

  // Input, window coordinates in CSS px, time stamps in ms from the event itself.
  void touch(TouchPhase phase, int finger, float x, float y, double time_ms);
  void mouse_move(float x, float y);
  void mouse_button(int button, bool down);                  // 0 left, 1 right, 2 middle
  void wheel(float dx, float dy);                            // in lines
  void key(std::string_view dom_code, bool down);            // "Escape", "Enter", "Digit1", ...
  void act(const ui::Action& action);                        // from the accessibility mirror

  // One frame: builds ImGui's draw data (the host renders it). Returns true while another
  // frame is wanted.
  bool frame(double now_ms);
  [[nodiscard]] const std::vector<ui::Record>& records() const;
  // Set when the page must put its text cursor in a mirrored textbox (inside the user's gesture).
  [[nodiscard]] std::uint32_t focus_wanted() const;
  // For tests that look whether a layout holds; a host has no use for it.
  [[nodiscard]] ui::State& widgets();

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace shell
