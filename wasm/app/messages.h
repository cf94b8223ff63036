// What there is to say to the person: why the last thing was refused, what was just done, what is
// not stored, and that a newer app waits.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "app/records.h"
#include "platform/platform.h"

namespace app {

// One line at the foot of the screen, until the next change, the next screen, or dismissed.
struct Toast {
  enum class Offer : std::uint8_t { none, undo_edit, put_back, put_back_trace };
  std::string text;                 // "Outlet C removed."
  Offer offer = Offer::none;
  std::uint32_t number = 0;         // put_back: the deleted circuit
};

class Messages {
 public:
  Messages(platform::Host& host, Records& records) : host_(host), records_(records) {}
  Messages(const Messages&) = delete;
  Messages& operator=(const Messages&) = delete;

  [[nodiscard]] const std::optional<Toast>& toast() const { return toast_; }
  [[nodiscard]] std::uint64_t toast_serial() const { return toast_serial_; }   // another toast, another serial
  void say(std::string text, Toast::Offer offer = Toast::Offer::none, std::uint32_t number = 0);
  void dismiss_toast() { toast_.reset(); }

  // Why the last thing was not done, in one sentence; empty when nothing is wrong.
  [[nodiscard]] const std::string& problem() const { return problem_; }
  void say_problem(std::string sentence);             // takes the toast's place
  void clear_problem() { problem_.clear(); }
  void clear();                                      // toast and problem are of what was before

  // "Not saved: the device is full." Empty when all is.
  [[nodiscard]] std::string store_trouble() const { return records_.trouble(); }
  void store_failed(std::string_view key, std::string_view why);   // told by the host
  void retry_store();

  [[nodiscard]] bool update_waiting() const { return update_waiting_; }
  void set_update_waiting();                         // told by the host

 private:
  platform::Host& host_;
  Records& records_;
  std::optional<Toast> toast_;
  std::uint64_t toast_serial_ = 0;
  std::string problem_;
  bool update_waiting_ = false;
};

}  // namespace app
