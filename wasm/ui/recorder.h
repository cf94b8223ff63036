// Gathers the records of a frame, and hands actions that came back to the widget they are for.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ui/semantics.h"

namespace ui {

class Recorder {
 public:
  void begin_frame();
  std::size_t add(Record record);             // index, good for at() within the frame
  void end();                                  // closes the last opener
  // Moves what was added from `first` on to the place `to`, earlier in the reading order.
  void move_from(std::size_t first, std::size_t to);
  Record& at(std::size_t index) { return building_[index]; }
  [[nodiscard]] std::size_t size() const { return building_.size(); }
  // Publishes the frame. With a dialog on top (its range of indices), what lies under it is left
  // out, but for words that are announced and what was added from index `over` on (a toast).
  void end_frame(std::optional<std::pair<std::size_t, std::size_t>> dialog, std::size_t over);
  [[nodiscard]] const std::vector<Record>& finished() const { return finished_; }
  [[nodiscard]] const Record* find(std::uint32_t id) const;   // in the finished frame

  // An id that nothing else has this frame: the same one when it is free.
  std::uint32_t unique(std::uint32_t id);

  void queue(Action action);
  [[nodiscard]] bool has_actions() const { return !actions_.empty(); }
  bool take_press(std::uint32_t id);
  std::optional<std::string> take_text(std::uint32_t id);
  int take_steps(std::uint32_t id);            // net steps up

  // Focus by keyboard or mirror.
  std::uint32_t focused = 0;
  bool focus_visible = false;
  std::uint32_t scroll_to = 0;                 // bring into view when it is next recorded
  void take_focus_actions();
  void move_focus(int by);                     // Tab and Shift Tab

 private:
  struct Waiting {
    Action action;
    int frames = 0;                            // seen by so many; dropped when nobody wants it
  };
  std::vector<Record> building_;
  std::vector<Record> finished_;
  std::vector<std::uint32_t> ids_;
  std::vector<Waiting> actions_;
};

[[nodiscard]] bool opens(Role role);           // dialog, list, group, navigation
[[nodiscard]] bool can_focus(const Record& record);

}  // namespace ui
