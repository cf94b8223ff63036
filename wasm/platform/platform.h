// What the app asks of its host, and what the host tells the app. Three hosts answer it:
// the browser (web/*.js behind platform_browser.cpp), a headless one in memory for tests and
// pictures, and nothing else. The app never includes Emscripten.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace platform {

struct StoredRecord {
  std::string key;
  std::string text;
};

// What the device prefers and how large the window is; all lengths in CSS px.
struct Surroundings {
  float width = 412.0F;
  float height = 915.0F;
  float pixel_ratio = 1.0F;
  float safe_top = 0.0F, safe_right = 0.0F, safe_bottom = 0.0F, safe_left = 0.0F;  // notch, home bar
  bool prefers_dark = false;
  bool prefers_less_motion = false;
  bool prefers_us_units = false;      // from the language region
};

class Host {
 public:
  virtual ~Host() = default;

  // Storage. Every write is durable or failed() is told; order is kept.
  virtual void store(std::string_view key, std::string_view text) = 0;
  virtual void remove(std::string_view key) = 0;

  // Files and sharing.
  virtual void save_file(std::string_view name, std::string_view media_type, std::string_view text) = 0;
  virtual void ask_for_file() = 0;    // answered later by App::file_opened, or never

  // The address after '#'. push adds a step for the back gesture, replace does not.
  virtual void push_route(std::string_view route) = 0;
  virtual void replace_route(std::string_view route) = 0;
  virtual void go_back() = 0;         // answered by App::route_changed

  virtual void set_title(std::string_view title) = 0;
  virtual void set_dark(bool dark) = 0;          // page colours behind the canvas
  virtual void announce(std::string_view text) = 0;   // said once by a screen reader
  virtual void keep_awake(bool awake) = 0;
  virtual void wake() = 0;            // draw at least one more frame
  virtual void wake_after(int milliseconds) = 0;
  [[nodiscard]] virtual std::string today() const = 0;   // "2026-11-25", local
  [[nodiscard]] virtual double now_ms() const = 0;       // monotonic
};

}  // namespace platform
