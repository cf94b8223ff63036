// Where the next widget goes: columns within windows, filled from the top. Private to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "ui/theme.h"

namespace ui {

struct Rect {
  float x = 0, y = 0, w = 0, h = 0;
  [[nodiscard]] float right() const { return x + w; }
  [[nodiscard]] float bottom() const { return y + h; }
  [[nodiscard]] float mid_x() const { return x + w / 2; }
  [[nodiscard]] float mid_y() const { return y + h / 2; }
  [[nodiscard]] bool contains(float px, float py) const { return px >= x && px < right() && py >= y && py < bottom(); }
};

// What was placed last, for the space and the line between two things.
enum class Last : std::uint8_t { nothing, row, words, block };

struct Column {
  float left = 0, width = 0;
  float y = 0;                  // lower edge of what was placed last
  Last last = Last::nothing;
  bool card = false;
  float pad = 0;                // of the card, so that a row's tint reaches its edges
  bool flow = false;            // items side by side
  float flow_x = 0, flow_height = 0;
  std::uint32_t words = 0;      // counts unnamed texts, for their ids
};

Column& column();
void push_column(const Column& column);
void pop_column();

// The next rectangle of the column's width. `kind` settles the space before it.
Rect take(float height, Last kind, float space = -1.0F);
// Within a flow: the next rectangle of this size, wrapped.
Rect take_in_flow(float width, float height);
// A row: full width of the column; draws the line that parts it from a row before.
Rect take_row(float height);

float snap(float v);            // to device pixels

// An id for the widget of this label, unique in the frame.
std::uint32_t make_id(std::string_view label);
std::uint32_t words_id(std::string_view kind);   // for text without a name of its own

}  // namespace ui
