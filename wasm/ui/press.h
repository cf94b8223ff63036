// Size, space, interact, record, paint: the interact and record moves. Private to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "ui/place.h"
#include "ui/semantics.h"

namespace ui {

struct Press {
  bool pressed = false;
  bool held = false;          // down and still over it
  bool hovered = false;       // by a mouse; a finger does not hover
};
Press press(std::uint32_t id, const Rect& rect, bool disabled = false);

// Makes a record at the rectangle, with its scroll region; scrolls to it when asked, rings it
// when it has the focus.
struct Said {
  Role role = Role::text;
  std::string name{};
  std::string value{};
  std::string description{};
  std::uint32_t state = 0;
  std::uint8_t level = 0;
  double low = 0, high = 0;
  float radius = kControlRadius;   // of the focus ring
};
std::size_t record(std::uint32_t id, const Rect& rect, const Said& said);
void record_end();

std::string joined(std::string_view a, std::string_view b, std::string_view c = {});   // "a, b, c"

}  // namespace ui
