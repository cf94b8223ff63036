// The colour of each ink by day, by night and on paper. Text and lines reach a contrast of
// 4.5 : 1 on ground and card (a test computes it), by the formula of WCAG 2.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "drawing/shape.h"

namespace drawing {

enum class Palette { day, night, paper };

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  friend constexpr bool operator==(const Colour&, const Colour&) = default;
};
// nullopt for Ink::none: nothing is drawn. Paper has black and white only, since many
// printers do; what colour says there is also said by a mark or a word.
std::optional<Colour> colour_of(Ink ink, Palette palette);
// The swatch of a colour word ("red", "clear", "tan"); Ink::none for a word without one.
Ink swatch(std::string_view colour_word);
// Ink for text upon a swatch, at 4.5 : 1 or more in every palette.
Ink on_swatch(Ink swatch);

}  // namespace drawing
