#include <doctest/doctest.h>

#include <cmath>

#include "drawing/contrast.h"
#include "drawing/palette.h"

using namespace drawing;

TEST_CASE("the contrast formula itself: black on white is 21 to 1") {
  CHECK(contrast({0, 0, 0}, {255, 255, 255}) == doctest::Approx(21.0));
}

TEST_CASE("every ink that carries meaning reads at 4.5 to 1 on card and ground") {
  for (const Palette palette : {Palette::day, Palette::night, Palette::paper}) {
    for (const Ink ink : {Ink::text, Ink::muted, Ink::positive, Ink::negative, Ink::accent, Ink::good,
                          Ink::caution, Ink::stop}) {
      for (const Ink behind : {Ink::card, Ink::ground}) {
        CAPTURE(static_cast<int>(palette));
        CAPTURE(static_cast<int>(ink));
        CHECK(contrast(colour_of(ink, palette).value(), colour_of(behind, palette).value()) >= 4.5);
      }
    }
  }
}

TEST_CASE("no ink, no colour") { CHECK_FALSE(colour_of(Ink::none, Palette::day).has_value()); }
