#include <doctest/doctest.h>

#include "drawing/measure.h"

using namespace drawing;

TEST_CASE("bounds of each shape, worked by hand") {
  const Rectangle line = bounds({Line{{10, 20}, {4, 50}, 2.0, Ink::text}, {}}, 1.0);
  CHECK(line.left == 3);
  CHECK(line.top == 19);
  CHECK(line.right == 11);
  CHECK(line.bottom == 51);
  const Rectangle circle = bounds({Circle{{10, 10}, 5, 2.0, Ink::text, Ink::none}, {}}, 1.0);
  CHECK(circle.left == 4);
  CHECK(circle.bottom == 16);
  const Rectangle box = bounds({Box{{1, 2}, 30, 40, 4, 2.0, Ink::text, Ink::none}, {}}, 1.0);
  CHECK(box.left == 0);
  CHECK(box.right == 32);
  CHECK(box.bottom == 43);
}

TEST_CASE("a text's bounds follow its anchor, its scale and the given font") {
  const TextWidth ten = [](const std::string&, TextSize, bool) { return 10.0; };
  const auto at = [&](Anchor anchor, double scale) {
    return bounds({Text{{100, 50}, "x", anchor, TextSize::caption, false, Ink::text}, {}}, scale, ten);
  };
  CHECK(at(Anchor::left, 1.0).right == 110);
  CHECK(at(Anchor::right, 1.0).left == 90);
  CHECK(at(Anchor::centre, 2.0).left == 90);
  CHECK(at(Anchor::centre, 2.0).bottom - at(Anchor::centre, 2.0).top == doctest::Approx(2 * 13 * 1.25));
}

TEST_CASE("the estimate counts characters, not bytes") {
  CHECK(estimated_text_width("\xC2\xB2", TextSize::caption, false) < 13.0);
  CHECK(estimated_text_width("", TextSize::title, true) == 0.0);
  CHECK(estimated_text_width("12.5 V", TextSize::caption, true) > estimated_text_width("12.5 V", TextSize::caption, false));
}

TEST_CASE("rectangles that only touch do not overlap") {
  const Rectangle a{0, 0, 10, 10};
  CHECK_FALSE(a.overlaps({10, 0, 20, 10}));
  CHECK(a.overlaps({9, 9, 20, 20}));
  CHECK_FALSE(a.overlaps({0, 10, 10, 20}));
}
