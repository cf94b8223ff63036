// Small signs drawn with lines, so that they are crisp at any size and take any ink.
#pragma once

#include <cstdint>

namespace ui {

enum class Icon : std::uint8_t {
  none, ruler, wire, check, pulse, table, sums,    // places: size, wire, prove, trace, tables, quick
  more, close, back, chevron, expand, collapse,
  plus, minus, warning, stop, up, down, backspace, undo, redo, share, book, folder,
  search, steps, tag, sliders,
  // Devices: what an outlet or a circuit is for.
  lamp, socket, usb, phone, laptop, cool_box, heater, pump, fan, motor, inverter, radio,
  // Sources and parts; as in circuit diagrams where these have a symbol.
  battery, sun, alternator, charger, fuse, switch_,
  count_,
};

// Centre and size in CSS px, packed ImGui colour; drawn into the current window's list.
void draw_icon(Icon icon, float x, float y, float size, std::uint32_t colour, float weight = 1.75F);

}  // namespace ui
