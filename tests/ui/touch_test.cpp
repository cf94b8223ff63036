// A finger: taps press, drags never do, a fling coasts and stops, the first touch catches it.
#include <doctest/doctest.h>

#include <imgui_internal.h>

#include "headless.h"
#include "ui/ui.h"

namespace {

struct LongList {
  Headless h;
  int pressed = 0;
  LongList() {
    h.draw = [this] {
      ui::begin_page("list", {.title = "List"});
      for (std::uint32_t i = 0; i < 40; ++i) {
        const ui::Scope scope(i);
        if (ui::button("Row " + std::to_string(i))) ++pressed;
      }
      ui::end_page();
    };
    h.settle();
  }
  // How far the body is scrolled: where its first row stands.
  [[nodiscard]] float scrolled() const { return top - h.find(ui::Role::button, "Row 0")->y; }
  float top = 0;
};

}  // namespace

TEST_CASE("a tap presses, at once lifted or rested") {
  LongList t;
  REQUIRE(t.h.tap(ui::Role::button, "Row 2"));
  CHECK(t.pressed == 1);
  const ui::Record* r = t.h.find(ui::Role::button, "Row 3");
  REQUIRE(r != nullptr);
  const float x = r->x + 20, y = r->y + 20;
  t.h.touch(ui::Touch::start, x, y);
  for (int i = 0; i < 40; ++i) t.h.frame();
  t.h.touch(ui::Touch::end, x, y);
  t.h.settle();
  CHECK(t.pressed == 2);
}

TEST_CASE("down and up within one frame is a tap") {
  LongList t;
  const ui::Record* r = t.h.find(ui::Role::button, "Row 2");
  t.h.touch(ui::Touch::start, r->x + 5, r->y + 5);
  t.h.touch(ui::Touch::end, r->x + 5, r->y + 5);
  CHECK(t.h.settle());
  CHECK(t.pressed == 1);
}

TEST_CASE("a drag never presses, however its events come") {
  LongList t;
  t.top = t.h.find(ui::Role::button, "Row 0")->y;
  SUBCASE("slow") { t.h.drag(200, 600, 0, -200, 600); }
  SUBCASE("after a rest: the button is down already") {
    t.h.touch(ui::Touch::start, 200, 600);
    for (int i = 0; i < 20; ++i) t.h.frame();
    t.h.touch(ui::Touch::move, 200, 560);
    t.h.frame();
    t.h.touch(ui::Touch::end, 200, 560);
  }
  SUBCASE("all in one frame") {
    t.h.touch(ui::Touch::start, 200, 600);
    t.h.touch(ui::Touch::move, 200, 500);
    t.h.touch(ui::Touch::end, 200, 500);
  }
  SUBCASE("there and back again") {
    t.h.drag(200, 600, 0, -80, 200, false);
    t.h.touch(ui::Touch::move, 200, 600);
    t.h.frame();
    t.h.touch(ui::Touch::end, 200, 600);
  }
  SUBCASE("sideways") { t.h.drag(200, 600, 120, 4, 200); }
  SUBCASE("cancelled by the phone") {
    t.h.touch(ui::Touch::start, 200, 600);
    for (int i = 0; i < 20; ++i) t.h.frame();
    t.h.touch(ui::Touch::cancel, 200, 600);
  }
  CHECK(t.h.settle(2000));
  CHECK(t.pressed == 0);
}

TEST_CASE("content follows the finger but for the slop") {
  LongList t;
  t.top = t.h.find(ui::Role::button, "Row 0")->y;
  t.h.drag(200, 700, 0, -300, 1200, false);
  t.h.frame();
  t.h.frame();
  CHECK(t.scrolled() == doctest::Approx(291).epsilon(0.01));    // 300 px less 9 px of slop
}

TEST_CASE("a fling coasts, slows and stops; then no frame is wanted") {
  LongList t;
  t.top = t.h.find(ui::Role::button, "Row 0")->y;
  t.h.drag(200, 700, 0, -200, 100);
  t.h.frame();
  const float let_go = t.scrolled();
  t.h.frame();
  t.h.frame();
  const float later = t.scrolled();
  CHECK(later > let_go);
  CHECK(t.h.settle(1000));
  CHECK(t.scrolled() > later + 50);
  const float rest = t.scrolled();
  for (int i = 0; i < 20; ++i) CHECK_FALSE(t.h.frame());
  CHECK(t.scrolled() == rest);
}

TEST_CASE("a finger that rests before lifting flings nothing") {
  LongList t;
  t.top = t.h.find(ui::Role::button, "Row 0")->y;
  t.h.drag(200, 700, 0, -200, 100, false);
  for (int i = 0; i < 12; ++i) t.h.frame();
  const float before = t.scrolled();
  t.h.touch(ui::Touch::end, 200, 500);
  t.h.settle();
  CHECK(t.scrolled() == before);
}

TEST_CASE("the first touch stops a coast and presses nothing") {
  LongList t;
  t.h.drag(200, 700, 0, -250, 80);
  t.h.frame();
  t.h.frame();
  REQUIRE(t.h.state().wants_frame());
  t.h.touch(ui::Touch::start, 200, 500);
  t.h.frame();
  const float caught = t.h.find(ui::Role::button, "Row 0")->y;
  t.h.frame();
  t.h.touch(ui::Touch::end, 200, 500);
  CHECK(t.h.settle());
  CHECK(t.pressed == 0);
  CHECK(t.h.find(ui::Role::button, "Row 0")->y == caught);
}

TEST_CASE("speed is taken from the events, not from late frames") {
  // The same finger, seen by a quick and by a slow phone: both coast about as far.
  const auto coast = [](double frame_ms) {
    LongList t;
    t.top = t.h.find(ui::Role::button, "Row 0")->y;
    double time = t.h.window.now_ms;
    ui::State& s = t.h.state();
    s.touch(ui::Touch::start, 1, 200, 700, time);
    double drawn = time;
    for (int i = 1; i <= 10; ++i) {
      time += 8;
      s.touch(ui::Touch::move, 1, 200, 700 - 15.0F * static_cast<float>(i), time);
      if (time - drawn >= frame_ms) {
        drawn = time;
        t.h.frame(frame_ms);
      }
    }
    s.touch(ui::Touch::end, 1, 200, 550, time + 1);
    for (int i = 0; i < 600 && t.h.frame(frame_ms); ++i) {}
    return t.scrolled();
  };
  const float quick = coast(8), slow = coast(64);
  CHECK(quick > 300);
  CHECK(slow == doctest::Approx(quick).epsilon(0.15));
}

TEST_CASE("a second finger is ignored") {
  LongList t;
  const ui::Record* r = t.h.find(ui::Role::button, "Row 2");
  const float x = r->x + 9, y = r->y + 9;
  t.h.touch(ui::Touch::start, x, y, 1);
  t.h.touch(ui::Touch::start, x, y + 120, 2);
  t.h.frame();
  t.h.touch(ui::Touch::move, x, y + 300, 2);
  t.h.touch(ui::Touch::end, x, y + 300, 2);
  t.h.frame();
  t.h.touch(ui::Touch::end, x, y, 1);
  t.h.settle();
  CHECK(t.pressed == 1);
}

TEST_CASE("a mouse presses on lift and not when it left the button; the wheel scrolls") {
  LongList t;
  t.top = t.h.find(ui::Role::button, "Row 0")->y;
  const ui::Record r = *t.h.find(ui::Role::button, "Row 2");
  ui::State& s = t.h.state();
  const auto button = [&](bool down) {
    s.mouse_button(0, down);
    t.h.settle();
  };
  s.mouse_move(r.x + 9, r.y + 9);
  t.h.settle();
  button(true);
  CHECK(t.pressed == 0);
  button(false);
  CHECK(t.pressed == 1);
  button(true);
  s.mouse_move(r.x + 9, r.y + 200);
  t.h.settle();
  button(false);
  CHECK(t.pressed == 1);
  s.wheel(0, 3);
  CHECK(t.h.settle());
  CHECK(t.scrolled() == doctest::Approx(108).epsilon(0.02));   // 3 lines of 36 px
}

TEST_CASE("keys scroll the page") {
  LongList t;
  t.top = t.h.find(ui::Role::button, "Row 0")->y;
  t.h.type("PageDown");
  CHECK(t.scrolled() == doctest::Approx(480).epsilon(0.02));
  t.h.type("Home");
  CHECK(t.scrolled() == 0);
}
