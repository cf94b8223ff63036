// The host of the app in a browser: each request goes to the object `host` that web/boot.js
// gave to createApp.
#pragma once

#include "platform/platform.h"

namespace browser {

class Host final : public platform::Host {
 public:
  void store(std::string_view key, std::string_view text) override;
  void remove(std::string_view key) override;
  void save_file(std::string_view name, std::string_view media_type, std::string_view text) override;
  void ask_for_file() override;
  void push_route(std::string_view route) override;
  void replace_route(std::string_view route) override;
  void go_back() override;
  void set_title(std::string_view title) override;
  void set_dark(bool dark) override;
  void announce(std::string_view text) override;
  void keep_awake(bool awake) override;
  void wake() override;
  void wake_after(int milliseconds) override;
  [[nodiscard]] std::string today() const override;
  [[nodiscard]] double now_ms() const override;
};

// Puts Module.put, the way in for text and bytes (see web/app_door.js).
void open_door();
// For units::on_bug(): ends on the readable page. Circuits are stored by then, each as it was changed.
void stop_on_bug(const char* file, int line);
void tell_mirror_all(std::string_view full, std::string_view moves);
void tell_mirror_moves(std::string_view moves);

}  // namespace browser
