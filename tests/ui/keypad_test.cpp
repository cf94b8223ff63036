// Steppers and the keypad: steps on the grid, holds that repeat, bad values that change nothing.
#include <doctest/doctest.h>

#include <cstdlib>

#include "headless.h"
#include "ui/ui.h"

namespace {

struct Number {
  Headless h;
  double value = 5.73, low = 0.1, high = 100;
  int changes = 0, joined = 0;
  std::string typed;
  Number() {
    h.draw = [this] {
      ui::begin_page("p", {.title = "P"});
      ui::begin_card("c");
      if (const auto c = ui::stepper("Run", {.sub = "one way", .shown = std::to_string(value).substr(0, 5) + " m", .value = value, .low = low,
                                             .high = high, .step = 0.1, .allowed = "0.1 m to 100 m", .unit = "m", .read = read, .unit_keys = {{"m"}, {"ft", false}, {"in", false}}})) {
        value = c->value;
        typed = c->typed;
        ++changes;
        if (c->joins) ++joined;
      }
      ui::end_card();
      ui::end_page();
    };
    h.settle();
  }
  static ui::Read read(std::string_view text) {
    const std::string words(text);
    char* end = nullptr;
    const double number = std::strtod(words.c_str(), &end);
    if (end == words.c_str()) return {std::nullopt, "That is not a number."};
    if (number < 0.1 || number > 100) return {std::nullopt, "A run of " + words + " is out of range."};
    return {number, {}};
  }
  void keys(std::initializer_list<const char*> names) {
    for (const char* name : names) REQUIRE(h.press(ui::Role::button, name));
  }
};

}  // namespace

TEST_CASE("a press goes to the next multiple of the step") {
  Number n;
  REQUIRE(n.h.tap(ui::Role::button, "More: Run"));
  CHECK(n.value == doctest::Approx(5.8));
  REQUIRE(n.h.tap(ui::Role::button, "More: Run"));
  CHECK(n.value == doctest::Approx(5.9));
  REQUIRE(n.h.press(ui::Role::button, "Less: Run"));
  CHECK(n.value == doctest::Approx(5.8));
  CHECK(n.changes == 3);
  CHECK(n.joined == 0);
}

TEST_CASE("steps stop at the ends, where the button is off") {
  Number n;
  n.value = 99.97;
  n.h.settle();
  n.h.frame();
  REQUIRE(n.h.press(ui::Role::button, "More: Run"));
  CHECK(n.value == 100);
  CHECK_FALSE(n.h.press(ui::Role::button, "More: Run"));
  n.h.act(ui::Role::spin, "Run", ui::Action::Kind::step_up);
  CHECK(n.value == 100);
  CHECK(n.changes == 1);
}

TEST_CASE("a hold repeats faster and faster, joins, and lifting adds nothing") {
  Number n;
  const ui::Record r = *n.h.find(ui::Role::button, "More: Run");
  n.h.touch(ui::Touch::start, r.x + 24, r.y + 24);
  const auto hold = [&](int milliseconds) {
    const int before = n.changes;
    for (int t = 0; t < milliseconds; t += 10) n.h.frame(10);
    return n.changes - before;
  };
  CHECK(hold(450) == 0);
  const int early = hold(600);
  CHECK(early >= 3);
  hold(800);
  CHECK(hold(600) > early);
  CHECK(n.joined == n.changes);
  const int at_lift = n.changes;
  n.h.touch(ui::Touch::end, r.x + 24, r.y + 24);
  CHECK(n.h.settle());
  CHECK(n.changes == at_lift);
  REQUIRE(n.h.tap(ui::Role::button, "More: Run"));   // and the next tap is one step again
  CHECK(n.changes == at_lift + 1);
}

TEST_CASE("a hold that slides away stops") {
  Number n;
  const ui::Record r = *n.h.find(ui::Role::button, "More: Run");
  n.h.touch(ui::Touch::start, r.x + 24, r.y + 24);
  for (int i = 0; i < 80; ++i) n.h.frame(10);
  REQUIRE(n.changes > 0);
  n.h.touch(ui::Touch::move, r.x + 24, r.y + 150);
  n.h.frame();
  n.h.frame();
  const int at_leave = n.changes;
  for (int i = 0; i < 80; ++i) n.h.frame(10);
  CHECK(n.changes == at_leave);
  n.h.touch(ui::Touch::end, r.x + 24, r.y + 150);
  CHECK(n.h.settle());
  CHECK(n.changes == at_leave);
}

TEST_CASE("the keypad takes a good value once") {
  Number n;
  REQUIRE(n.h.tap(ui::Role::spin, "Run"));
  CHECK(n.h.find(ui::Role::dialog, "Run") != nullptr);
  CHECK(n.h.shows("Allowed: 0.1 m to 100 m"));
  n.keys({"1", "2", "Decimal point", "5", "OK"});
  CHECK(n.value == 12.5);
  CHECK(n.typed == "12.5");
  CHECK(n.changes == 1);
  CHECK(n.h.state().sheets_open() == 0);
}

TEST_CASE("a bad value says why, stays, and the last good one is kept") {
  Number n;
  n.h.press(ui::Role::spin, "Run");
  SUBCASE("too much") { n.keys({"9", "9", "9", "OK"}); }
  SUBCASE("nothing") { n.keys({"Clear", "OK"}); }
  SUBCASE("only a point") { n.keys({"Decimal point", "OK"}); }
  SUBCASE("zero") { n.keys({"0", "OK"}); }
  CHECK(n.changes == 0);
  CHECK(n.value == 5.73);
  CHECK(n.h.state().sheets_open() == 1);
  bool said = false;
  for (const ui::Record& r : n.h.records()) said = said || (r.role == ui::Role::alert && r.name.find("Allowed: 0.1 m to 100 m") != std::string::npos);
  CHECK(said);
  n.keys({"Clear", "7", "OK"});
  CHECK(n.value == 7);
}

TEST_CASE("hardware digits work too") {
  Number n;
  n.h.press(ui::Role::spin, "Run");
  for (const char* code : {"Digit4", "Numpad2", "Backspace", "Period", "Digit5", "Enter"}) n.h.type(code);
  CHECK(n.value == 4.5);
  CHECK(n.h.state().sheets_open() == 0);
  n.h.press(ui::Role::spin, "Run");
  n.h.type("Digit9");
  n.h.type("Escape");
  CHECK(n.value == 4.5);
}

TEST_CASE("keys for units: feet and inches are written on, a whole unit is deleted at once") {
  Number n;
  n.h.press(ui::Role::spin, "Run");
  n.keys({"1", "0", "ft", "6", "in"});
  CHECK(n.h.shows("10 ft 6 in"));
  n.keys({"Delete last"});
  CHECK(n.h.find(ui::Role::status, "10 ft 6") != nullptr);
  n.keys({"OK"});
  CHECK(n.typed == "10 ft 6");
}

TEST_CASE("the unit of a bare number stands beside it from the first digit, and gives way to a typed one") {
  Number n;
  n.h.press(ui::Role::spin, "Run");
  n.keys({"5"});
  CHECK(n.h.find(ui::Role::status, "5 m") != nullptr);
  n.keys({"Decimal point", "2"});
  CHECK(n.h.find(ui::Role::status, "5.2 m") != nullptr);
  n.keys({"ft"});
  CHECK(n.h.find(ui::Role::status, "5.2 ft") != nullptr);
  CHECK_FALSE(n.h.shows("5.2 ft m"));
  n.keys({"Clear"});
  CHECK(n.h.find(ui::Role::status, "Nothing typed") != nullptr);
  n.keys({"7", "OK"});
  CHECK(n.typed == "7");                   // the field knows what a bare number is
}

TEST_CASE("a second point in a number, and far too many digits, are not taken") {
  Number n;
  n.h.press(ui::Role::spin, "Run");
  n.keys({"1", "Decimal point", "Decimal point", "5"});
  CHECK(n.h.find(ui::Role::status, "1.5") != nullptr);
  for (int i = 0; i < 60; ++i) n.keys({"1"});
  for (const ui::Record& r : n.h.records()) CHECK(r.name.size() < 120);
}

TEST_CASE("text from a screen reader is held to the same") {
  Number n;
  CHECK(n.h.set_text(ui::Role::spin, "Run", "8.25"));
  CHECK(n.value == 8.25);
  CHECK(n.h.set_text(ui::Role::spin, "Run", "a mile"));
  CHECK(n.value == 8.25);
  CHECK(n.h.shows("That is not a number."));
  CHECK(n.h.find(ui::Role::dialog, "Run") != nullptr);
}
