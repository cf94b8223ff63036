// Ink on the window: surfaces, lines and lines of text. Private to the room.
#pragma once

#include <cstdint>
#include <string_view>

#include "ui/place.h"
#include "ui/text.h"
#include "ui/theme.h"
#include "ui/wrap.h"

namespace ui {

void fill(const Rect& rect, std::uint32_t colour, float radius = 0.0F);
void outline(const Rect& rect, std::uint32_t colour, float radius, float width = 1.0F);
void disc(float x, float y, float radius, std::uint32_t colour);
void ring(float x, float y, float radius, std::uint32_t colour, float width);
void stroke(float x0, float y0, float x1, float y1, std::uint32_t colour, float width);
std::uint32_t faded(std::uint32_t colour, float alpha);

// How words are set.
struct Style {
  Type type = Type::text;
  bool semibold = false;
  Ink ink = Ink::ink;
};
enum class Align : std::uint8_t { left, centre, right };

inline constexpr float kCapital = 0.727F;                // height of capitals over the em, of our fonts

// Icons grow with the text, but not all the way: their targets do not.
float icon_px(float at_100);

// One line, its capitals centred on `mid_y`.
void line_of_text(std::string_view text, float x, float mid_y, const Style& style, Align align = Align::left);
// With the baseline at `y`.
void on_baseline(std::string_view text, float x, float y, const Style& style, Align align = Align::left);
// How far the first character's ink stands from its left edge: large figures are aligned by ink.
float side_bearing(std::string_view text, Type type, bool semibold);
// Wrapped into the rectangle from its top; gives the height used.
float paint_text(std::string_view text, const Rect& rect, const Style& style, Align align = Align::left);
// Wrapped and centred in the rectangle.
void paint_label(std::string_view text, const Rect& rect, const Style& style, Align align = Align::centre);

}  // namespace ui
