#include <doctest/doctest.h>

#include <cmath>

#include "drawing/hit_test.h"

using namespace drawing;

TEST_CASE("the nearest shape under the finger answers, the later one when as near") {
  Picture picture{100, 100, 1.0, {}, ""};
  picture.shapes.push_back({Line{{0, 50}, {100, 50}, 2, Ink::positive}, {1, 7}});
  picture.shapes.push_back({Circle{{50, 50}, 10, 1, Ink::text, Ink::card}, {2, 8}});
  picture.shapes.push_back({Circle{{50, 50}, 20, 1, Ink::accent, Ink::none}, {}});  // no subject: passed over
  CHECK(hit_test(picture, {50, 52}, 5) == Subject{2, 8});
  CHECK(hit_test(picture, {10, 54}, 5) == Subject{1, 7});
  CHECK(hit_test(picture, {10, 56}, 5) == Subject{});
  CHECK(hit_test(picture, {10, 56}, 6) == Subject{1, 7});
  CHECK(hit_test(picture, {50, 50}, 0) == Subject{2, 8});
}

TEST_CASE("inside of boxes and texts counts, along polylines too") {
  Picture picture{100, 100, 1.0, {}, ""};
  picture.shapes.push_back({Box{{10, 10}, 20, 20, 2, 1, Ink::text, Ink::none}, {1, 1}});
  picture.shapes.push_back({Text{{60, 20}, "12.5 V", Anchor::centre, TextSize::caption, false, Ink::text}, {1, 2}});
  picture.shapes.push_back({Polyline{{{10, 90}, {90, 90}, {90, 60}}, 1, Ink::text, false, Ink::none}, {1, 3}});
  picture.shapes.push_back({Polyline{{}, 1, Ink::text, false, Ink::none}, {1, 4}});
  CHECK(hit_test(picture, {20, 20}, 1).number == 1);
  CHECK(hit_test(picture, {60, 20}, 1).number == 2);
  CHECK(hit_test(picture, {88, 70}, 3).number == 3);
  CHECK(hit_test(picture, {40, 60}, 3) == Subject{});
  picture.shapes.push_back({Polyline{{{10, 90}, {90, 90}, {90, 60}}, 1, Ink::text, true, Ink::none}, {1, 5}});
  CHECK(hit_test(picture, {50, 75}, 3).number == 5);   // closed: from its end back to its beginning
}

TEST_CASE("a point that is no number hits nothing") {
  Picture picture{100, 100, 1.0, {}, ""};
  picture.shapes.push_back({Box{{0, 0}, 100, 100, 0, 1, Ink::text, Ink::none}, {1, 1}});
  CHECK(hit_test(picture, {std::nan(""), 5}, 10).kind == 0);
}
