// Colours, type sizes and measures of the whole app. Colour is always asked for by meaning
// (Ink), never by value, so day and night follow by themselves.
#pragma once

#include <cstdint>

#include "drawing/shape.h"

namespace ui {

enum class Ink : std::uint8_t {
  ground, card, ink, muted, line, accent, tint,  // tint: pale copper under a chosen thing
  positive, negative, good, good_tint, caution, caution_tint, stop, stop_tint,
  on_accent, on_ink,        // words on a filled button or chip
  pressed,                  // a surface under a finger or pointer
  rim,                      // edge of a control (3:1 on the card)
  toast_action,             // accent on a toast, whose ground is the other theme's
  count_,
};

// 0xRRGGBB.
std::uint32_t rgb(Ink ink, bool dark);
// ImGui's packed colour in the current theme (day or night of the frame).
std::uint32_t colour(Ink ink);
Ink ink_of(drawing::Ink ink);                    // picture inks; drawing::Ink::none has none: ask first
// Contrast of two 0xRRGGBB colours, 1 to 21 (WCAG 2, relative luminance).
double contrast(std::uint32_t a, std::uint32_t b);

// What a state means; never told by colour alone: each tone brings its mark.
enum class Tone : std::uint8_t { plain, good, caution, stop };
Ink tone_ink(Tone tone);
Ink tone_tint(Tone tone);

// CSS px at text size 100 %; all grow together.
enum class Type : std::uint8_t { caption = 13, text = 15, title = 18, question = 22, answer = 40 };
float type_px(Type type);                        // with the text size of the frame

inline constexpr float kTarget = 48.0F;          // least height and width of anything pressed
inline constexpr float kPage = 16.0F;            // page margin at both sides
inline constexpr float kCardPad = 16.0F;         // inside a card
inline constexpr float kGap = 12.0F;             // between cards
inline constexpr float kRadius = 14.0F;          // of cards
inline constexpr float kControlRadius = 10.0F;   // of buttons and fields
inline constexpr float kColumn = 560.0F;         // widest single column
inline constexpr float kTwoColumns = 820.0F;     // from this window width on, columns() gives two

}  // namespace ui
