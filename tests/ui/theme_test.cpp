// Contrast of every pair of inks that meet on the screen, by the WCAG 2.1 formula.
#include <doctest/doctest.h>

#include <array>

#include "ui/theme.h"

using ui::Ink;

namespace {
struct Meets {
  Ink words, ground;
  double least;
};
// 4.5:1 text (WCAG 2.1, 1.4.3), 7:1 answers (1.4.6), 3:1 edges of controls and marks (1.4.11).
constexpr std::array kMeets{
    Meets{Ink::ink, Ink::ground, 7.0},         Meets{Ink::ink, Ink::card, 7.0},        Meets{Ink::ink, Ink::tint, 7.0},
    Meets{Ink::ink, Ink::pressed, 7.0},        Meets{Ink::muted, Ink::ground, 4.5},    Meets{Ink::muted, Ink::card, 4.5},
    Meets{Ink::muted, Ink::tint, 4.5},         Meets{Ink::muted, Ink::pressed, 4.5},   Meets{Ink::accent, Ink::ground, 4.5},
    Meets{Ink::accent, Ink::card, 4.5},        Meets{Ink::accent, Ink::tint, 4.5},     Meets{Ink::accent, Ink::pressed, 4.5},
    Meets{Ink::good, Ink::card, 4.5},          Meets{Ink::good, Ink::good_tint, 4.5},  Meets{Ink::good, Ink::tint, 4.5},
    Meets{Ink::caution, Ink::card, 4.5},       Meets{Ink::caution, Ink::caution_tint, 4.5},
    Meets{Ink::stop, Ink::card, 4.5},          Meets{Ink::stop, Ink::ground, 4.5},     Meets{Ink::stop, Ink::stop_tint, 4.5},
    Meets{Ink::stop, Ink::tint, 4.5},          Meets{Ink::on_accent, Ink::accent, 4.5}, Meets{Ink::on_accent, Ink::stop, 4.5},
    Meets{Ink::on_ink, Ink::ink, 7.0},         Meets{Ink::ground, Ink::ink, 7.0},      Meets{Ink::toast_action, Ink::ink, 4.5},
    Meets{Ink::rim, Ink::card, 3.0},           Meets{Ink::rim, Ink::ground, 3.0},      Meets{Ink::positive, Ink::card, 4.5},
    Meets{Ink::negative, Ink::card, 7.0},      Meets{Ink::card, Ink::good, 4.5},
};
}  // namespace

TEST_CASE("every pair of inks that meet can be read, day and night") {
  for (const Meets& m : kMeets) {
    for (const bool dark : {false, true}) {
      CAPTURE(dark);
      CAPTURE(static_cast<int>(m.words));
      CAPTURE(static_cast<int>(m.ground));
      CHECK(ui::contrast(ui::rgb(m.words, dark), ui::rgb(m.ground, dark)) >= m.least);
    }
  }
}

TEST_CASE("contrast by the formula's own ends") {
  CHECK(ui::contrast(0xFFFFFF, 0x000000) == doctest::Approx(21.0));
  CHECK(ui::contrast(0x777777, 0xFFFFFF) == doctest::Approx(4.478).epsilon(0.001));   // the well-known grey that just fails
  CHECK(ui::contrast(0x123456, 0x123456) == doctest::Approx(1.0));
}
