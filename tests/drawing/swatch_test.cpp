// Colours of things: text upon them reads at 4.5 : 1 in every palette, and words find them.
#include <doctest/doctest.h>

#include <cmath>

#include "drawing/palette.h"

using namespace drawing;

namespace {
// WCAG 2.2 relative luminance (from memory).
double channel(double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); }
double luminance(Colour c) {
  return 0.2126 * channel(c.red / 255.0) + 0.7152 * channel(c.green / 255.0) + 0.0722 * channel(c.blue / 255.0);
}
double contrast(Colour a, Colour b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::fmax(la, lb) + 0.05) / (std::fmin(la, lb) + 0.05);
}
}  // namespace

TEST_CASE("text on a coloured body is readable") {
  for (const char* word : {"black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white", "clear",
                           "pink", "tan", "turquoise", "gold", "silver", "copper"}) {
    const Ink ink = swatch(word);
    REQUIRE_MESSAGE(ink != Ink::none, std::string(word));
    for (const Palette palette : {Palette::day, Palette::night, Palette::paper}) {
      const double ratio = contrast(*colour_of(ink, palette), *colour_of(on_swatch(ink), palette));
      CHECK_MESSAGE(ratio >= 4.5, std::string(word) << " " << ratio);
    }
  }
  CHECK(swatch("plaid") == Ink::none);
}
