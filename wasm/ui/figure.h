// Numbers large with their units small, on one baseline: "10 AWG", "28 ft 3 in". Private to the room.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "ui/paint.h"

namespace ui {

class Figure {
 public:
  // A unit that goes on with a smaller number ("ft 3 in") is set as two figures, alike.
  Figure(std::string_view number, std::string_view unit, Type big, Type small);

  [[nodiscard]] float width() const;           // by ink at the left
  [[nodiscard]] bool goes_on() const { return runs_.size() > 2; }
  // The first number's ink begins at `left`.
  void paint(float left, float baseline, Ink number, Ink unit = Ink::muted) const;

 private:
  struct Run {
    std::string_view text;
    bool number = false;
    float before = 0.0F;       // space
  };
  [[nodiscard]] Type type_of(const Run& run) const { return run.number ? big_ : small_; }
  std::vector<Run> runs_;
  Type big_, small_;
};

// "10 ft 6 in" as "10" and "ft 6 in".
struct Split {
  std::string_view number, unit;
};
Split split_figure(std::string_view text);

}  // namespace ui
