#include "drawing/palette.h"

#include <array>
#include <cstddef>

namespace drawing {
namespace {

struct Row { Ink ink; Colour day; Colour night; Colour paper; };

constexpr Colour kBlack{0, 0, 0};
constexpr Colour kWhite{255, 255, 255};

// Colours of things look the same by night. The paper greys keep text upon them readable.
constexpr Row thing(Ink ink, Colour colour, std::uint8_t grey) { return {ink, colour, colour, {grey, grey, grey}}; }

constexpr std::array<Row, 28> kRows{{
    {Ink::text,     {0x15, 0x18, 0x1B}, {0xF3, 0xF0, 0xE8}, kBlack},
    {Ink::muted,    {0x57, 0x5D, 0x64}, {0xA9, 0xB0, 0xB7}, {0x44, 0x44, 0x44}},
    {Ink::line,     {0xD8, 0xD2, 0xC4}, {0x33, 0x3A, 0x40}, {0x88, 0x88, 0x88}},
    {Ink::positive, {0xC2, 0x28, 0x1C}, {0xFF, 0x6A, 0x5C}, kBlack},
    {Ink::negative, {0x15, 0x18, 0x1B}, {0xC9, 0xCE, 0xD3}, kBlack},
    {Ink::accent,   {0x9C, 0x4A, 0x1A}, {0xF2, 0xA0, 0x6B}, kBlack},
    {Ink::good,     {0x1B, 0x6A, 0x3A}, {0x7F, 0xD6, 0x9B}, kBlack},
    {Ink::caution,  {0x7A, 0x52, 0x00}, {0xFF, 0xCF, 0x66}, kBlack},
    {Ink::stop,     {0xA6, 0x1B, 0x12}, {0xFF, 0x8D, 0x80}, kBlack},
    {Ink::card,     {0xFF, 0xFF, 0xFF}, {0x1A, 0x1E, 0x21}, kWhite},
    {Ink::ground,   {0xF3, 0xF0, 0xE8}, {0x0F, 0x11, 0x13}, kWhite},
    thing(Ink::swatch_black,     {0x23, 0x26, 0x2A}, 0x22),
    thing(Ink::swatch_brown,     {0x73, 0x48, 0x2A}, 0x55),
    thing(Ink::swatch_red,       {0xC4, 0x2B, 0x22}, 0x66),
    thing(Ink::swatch_orange,    {0xEE, 0x8A, 0x2E}, 0xBB),
    thing(Ink::swatch_yellow,    {0xF3, 0xCB, 0x3C}, 0xDD),
    thing(Ink::swatch_green,     {0x1F, 0x78, 0x45}, 0x66),
    thing(Ink::swatch_blue,      {0x21, 0x66, 0xB5}, 0x66),
    thing(Ink::swatch_violet,    {0x7A, 0x4A, 0xA8}, 0x66),
    thing(Ink::swatch_grey,      {0xA3, 0xA9, 0xAF}, 0xAA),
    thing(Ink::swatch_white,     {0xF4, 0xF3, 0xEE}, 0xF6),
    thing(Ink::swatch_pink,      {0xEF, 0xA3, 0xB8}, 0xCC),
    thing(Ink::swatch_tan,       {0xD2, 0xB0, 0x84}, 0xCC),
    thing(Ink::swatch_turquoise, {0x3F, 0xB8, 0xAE}, 0xBB),
    thing(Ink::swatch_copper,    {0xD0, 0x84, 0x4E}, 0xAA),
    thing(Ink::swatch_metal,     {0xBC, 0xC2, 0xC7}, 0xCC),
    thing(Ink::on_light,         {0x15, 0x18, 0x1B}, 0x00),
    thing(Ink::on_dark,          {0xFF, 0xFF, 0xFF}, 0xFF),
}};

struct Word { std::string_view word; Ink ink; };
constexpr std::array<Word, 18> kWords{{
    {"black", Ink::swatch_black}, {"brown", Ink::swatch_brown}, {"red", Ink::swatch_red}, {"orange", Ink::swatch_orange},
    {"yellow", Ink::swatch_yellow}, {"green", Ink::swatch_green}, {"blue", Ink::swatch_blue}, {"violet", Ink::swatch_violet},
    {"grey", Ink::swatch_grey}, {"white", Ink::swatch_white}, {"clear", Ink::swatch_white}, {"pink", Ink::swatch_pink},
    {"tan", Ink::swatch_tan}, {"turquoise", Ink::swatch_turquoise}, {"gold", Ink::swatch_yellow},
    {"silver", Ink::swatch_metal}, {"copper", Ink::swatch_copper}, {"green with yellow", Ink::swatch_green},
}};

}  // namespace

std::optional<Colour> colour_of(Ink ink, Palette palette) {
  for (const Row& row : kRows) {
    if (row.ink != ink) continue;
    return palette == Palette::day ? row.day : palette == Palette::night ? row.night : row.paper;
  }
  return std::nullopt;
}

Ink swatch(std::string_view colour_word) {
  for (const Word& each : kWords) {
    if (each.word == colour_word) return each.ink;
  }
  return Ink::none;
}

Ink on_swatch(Ink swatch) {
  switch (swatch) {
    case Ink::swatch_black:
    case Ink::swatch_brown:
    case Ink::swatch_red:
    case Ink::swatch_green:
    case Ink::swatch_blue:
    case Ink::swatch_violet: return Ink::on_dark;
    default: return Ink::on_light;
  }
}

}  // namespace drawing
