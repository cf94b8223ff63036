// Colours of things: text upon them reads at 4.5 : 1 in every palette, and words find them.
#include <doctest/doctest.h>

#include <cmath>

#include "drawing/contrast.h"
#include "drawing/palette.h"

using namespace drawing;

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
