// What holds for every widget: targets, records, nothing cut, no frame when nothing changes.
#include <doctest/doctest.h>

#include <set>

#include "gallery.h"
#include "headless.h"
#include "ui/figure.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/recorder.h"

namespace {

struct Size {
  float width, height;
  double text;
};
const Size kSizes[] = {{320, 568, 1}, {320, 640, 2}, {412, 915, 1}, {412, 915, 1.5}, {740, 360, 1}, {820, 1180, 1}, {1280, 800, 2}};

struct Gallery {
  Headless h;
  gallery::Model model;
  explicit Gallery(const Size& size = {412, 915, 1}) {
    h.window.width = size.width;
    h.window.height = size.height;
    h.window.text_scale = size.text;
    h.draw = [this] { gallery::page(model); };
    h.settle();
  }
};

void check_records(const std::vector<ui::Record>& records, const ui::Frame& window) {
  int depth = 0;
  std::set<std::uint32_t> ids;
  for (const ui::Record& r : records) {
    CAPTURE(r.name);
    CAPTURE(static_cast<int>(r.role));
    if (r.role == ui::Role::end) {
      --depth;
      CHECK(depth >= 0);
      continue;
    }
    if (ui::opens(r.role)) ++depth;
    CHECK(r.id != 0);
    CHECK(ids.insert(r.id).second);
    CHECK_FALSE(r.name.empty());
    if (!ui::can_focus(r) && (r.state & ui::kDisabled) == 0U) continue;
    CHECK(r.width >= ui::kTarget - 0.01F);
    CHECK(r.height >= ui::kTarget - 0.01F);
    CHECK(r.x >= -0.5F);
    CHECK(r.x + r.width <= window.width + 0.5F);
  }
  CHECK(depth == 0);
}

}  // namespace

TEST_CASE("targets are 48 px, records nest, ids are single, at every size") {
  for (const Size& size : kSizes) {
    CAPTURE(size.width);
    CAPTURE(size.text);
    Gallery g(size);
    check_records(g.h.records(), g.h.window);
    for (const char* opener : {"Open the sheet", "Delete circuit"}) {
      REQUIRE(g.h.press(ui::Role::button, opener));
      CHECK(g.h.records().front().role == ui::Role::status);   // what is announced stays
      check_records(g.h.records(), g.h.window);
      g.h.type("Escape");
    }
    REQUIRE(g.h.press(ui::Role::spin, "At most at once"));
    CHECK(g.h.find(ui::Role::dialog, "At most at once") != nullptr);
    check_records(g.h.records(), g.h.window);
  }
}

TEST_CASE("no text runs out of what it stands in") {
  for (const Size& size : kSizes) {
    CAPTURE(size.width);
    CAPTURE(size.text);
    Gallery g(size);
    const auto nothing_cut = [&] {
      for (const std::string& words : g.h.state().parts().cut) FAIL_CHECK(words);
    };
    nothing_cut();
    g.h.press(ui::Role::button, "Open the sheet");
    nothing_cut();
    g.h.type("Escape");
    g.h.press(ui::Role::spin, "At most at once");
    nothing_cut();
    g.h.type("Escape");
    g.h.press(ui::Role::button, "Delete circuit");
    nothing_cut();
    g.h.press(ui::Role::button, "Delete");
    CHECK(g.h.shows("deleted"));
    nothing_cut();
  }
}

TEST_CASE("the check of cut text can fail") {
  Headless h;
  h.draw = [] {
    ui::begin_page("p", {.title = "P"});
    ui::line_of_text(std::string(90, 'W'), ui::column().left, 300, {});
    ui::end_page();
  };
  h.settle();
  CHECK(h.state().parts().cut.size() == 1);
}

TEST_CASE("nothing wants a frame when nothing changes") {
  Gallery g;
  for (int i = 0; i < 100; ++i) CHECK_FALSE(g.h.frame());
  g.h.press(ui::Role::button, "Open the sheet");
  for (int i = 0; i < 100; ++i) CHECK_FALSE(g.h.frame());
  CHECK_FALSE(g.h.state().wake_after_ms().has_value());
}

TEST_CASE("a sheet makes the page inert and gives way to Escape, Close and a press beside it") {
  Gallery g;
  REQUIRE(g.h.press(ui::Role::button, "Open the sheet"));
  CHECK(g.h.find(ui::Role::button, "Add outlet") == nullptr);
  CHECK(g.h.find(ui::Role::spin, "Drop limit") != nullptr);
  g.h.type("Escape");
  CHECK(g.h.find(ui::Role::button, "Add outlet") != nullptr);
  REQUIRE(g.h.press(ui::Role::button, "Open the sheet"));
  REQUIRE(g.h.tap(ui::Role::button, "Close"));
  CHECK(g.h.state().sheets_open() == 0);
  REQUIRE(g.h.press(ui::Role::button, "Open the sheet"));
  const int pressed = g.model.pressed;
  g.h.tap_at(200, 60);                     // on the dimmed page
  CHECK(g.h.state().sheets_open() == 0);
  CHECK(g.model.pressed == pressed);
  REQUIRE(g.h.press(ui::Role::button, "Open the sheet"));
  REQUIRE(g.h.press(ui::Role::spin, "Drop limit"));
  CHECK(g.h.state().sheets_open() == 2);
  CHECK(g.h.state().close_top_sheet());
  g.h.settle();
  CHECK(g.h.find(ui::Role::dialog, "Circuit settings") != nullptr);
  g.h.state().close_all_sheets();
  g.h.settle();
  CHECK_FALSE(g.h.state().close_top_sheet());
}

TEST_CASE("a toast offers its action for a while and no longer") {
  Gallery g;
  g.h.press(ui::Role::button, "Delete circuit");
  g.h.press(ui::Role::button, "Delete");
  REQUIRE(g.h.find(ui::Role::button, "Undo") != nullptr);
  REQUIRE(g.h.state().wake_after_ms().has_value());
  SUBCASE("pressed") {
    std::optional<std::uint32_t> token;
    g.h.draw = [&] {
      gallery::page(g.model);
      if (const auto t = ui::take_toast_action()) token = t;
    };
    REQUIRE(g.h.tap(ui::Role::button, "Undo"));
    CHECK(token == std::optional<std::uint32_t>(7));
  }
  SUBCASE("left alone") {
    g.h.frame(*g.h.state().wake_after_ms());
    g.h.settle();
  }
  CHECK(g.h.find(ui::Role::button, "Undo") == nullptr);
  CHECK_FALSE(g.h.state().wake_after_ms().has_value());
}

TEST_CASE("what lies far down is in the records, and pressing it brings it into view") {
  Gallery g;
  const ui::Record* before = g.h.find(ui::Role::switch_, "Dark");
  REQUIRE(before != nullptr);
  CHECK(before->y > g.h.window.height);
  CHECK(before->region != 0);
  REQUIRE(g.h.press(ui::Role::switch_, "Dark"));
  CHECK_FALSE(g.model.on);
  const ui::Record* after = g.h.find(ui::Role::switch_, "Dark");
  CHECK(after->y > 0);
  CHECK(after->y + after->height < g.h.window.height);
  CHECK((after->state & ui::kChecked) == 0U);
}

TEST_CASE("Tab goes through the records in their order, Enter presses, Escape closes") {
  Gallery g;
  std::vector<std::uint32_t> order;
  for (const ui::Record& r : g.h.records()) {
    if (ui::can_focus(r)) order.push_back(r.id);
  }
  for (const std::uint32_t id : order) {
    g.h.type("Tab");
    CHECK(g.h.state().focused() == id);
  }
  g.h.type("Tab");
  CHECK(g.h.state().focused() == order.front());
  g.h.state().act({.id = g.h.find(ui::Role::button, "Open the sheet")->id, .kind = ui::Action::Kind::focus, .text = {}});
  g.h.settle();
  g.h.type("Enter");
  CHECK(g.h.state().sheets_open() == 1);
  g.h.type("Escape");
  CHECK(g.h.state().focused() == g.h.find(ui::Role::button, "Open the sheet")->id);   // given back
}

TEST_CASE("choices, chips and places answer to finger and mirror") {
  Gallery g;
  CHECK(g.h.press(ui::Role::radio, "US"));
  CHECK(g.model.units == 1);
  CHECK(g.h.press(ui::Role::checkbox, "12 AWG"));
  CHECK_FALSE(g.model.shelf[2]);
  CHECK(g.h.tap(ui::Role::link, "Trace"));
  CHECK(g.model.place == 3);
  CHECK(g.h.set_text(ui::Role::textbox, "Name", ""));
  CHECK(g.model.name.empty());
  CHECK(g.h.shows("Give it a name"));
  CHECK((g.h.find(ui::Role::textbox, "Name")->state & ui::kInvalid) != 0U);
  CHECK(g.h.press(ui::Role::button, "Why this answer"));
  CHECK(g.h.shows("Voltage drop sets it"));
}

TEST_CASE("a tap on a text field asks for the page's own field at once") {
  Headless h;
  h.draw = [] {
    ui::begin_page("p", {.title = "P"});
    ui::text_field("Name", {.value = "x"});
    ui::button("Other");
    ui::end_page();
  };
  h.settle();
  const ui::Record r = *h.find(ui::Role::textbox, "Name");
  h.touch(ui::Touch::start, r.x + 9, r.y + 9);
  h.touch(ui::Touch::end, r.x + 9, r.y + 9);
  CHECK(h.state().focus_wanted() == r.id);    // before any frame: the phone wants it within the gesture
  h.settle();
  h.tap(ui::Role::button, "Other");
  CHECK(h.state().focus_wanted() == 0);
}

TEST_CASE("a picture wider than the page scrolls sideways and gives what was tapped") {
  Headless h;
  std::optional<drawing::Subject> hit;
  const drawing::Picture wide = gallery::chain(12);
  h.draw = [&] {
    ui::begin_page("p", {.title = "P"});
    ui::begin_card("c");
    if (const auto s = ui::picture("chain", wide)) hit = s;
    ui::end_card();
    ui::end_page();
  };
  h.settle();
  const ui::Record r = *h.find(ui::Role::image, "Battery");
  const auto tap_first = [&] { h.tap_at(r.x + 15 + 140, r.y + 50); };   // outlet A stands at 140, 50
  tap_first();
  REQUIRE(hit.has_value());
  CHECK(hit->number == 1);
  h.drag(r.x + 300, r.y + 50, -144 - 9, 0, 1500);   // two outlets further, and the slop
  h.settle();
  tap_first();
  CHECK(hit->number == 3);
}

TEST_CASE("nearest subject within reach of a finger") {
  const drawing::Picture p = gallery::chain(3);
  CHECK(ui::subject_at(p, {140, 50}, 24)->number == 1);
  CHECK(ui::subject_at(p, {212 + 20, 50}, 24)->number == 2);
  CHECK_FALSE(ui::subject_at(p, {20, 5}, 10).has_value());
}

TEST_CASE("type is as tall as asked: capitals are 0.727 of the size") {
  Headless h;
  float tall = 0;
  h.draw = [&] {
    ImFont* font = h.state().parts().semibold;
    const ImFontGlyph* glyph = font->GetFontBaked(ui::imgui_size(40))->FindGlyph('H');
    tall = glyph->Y1 - glyph->Y0;
  };
  h.frame();
  CHECK(tall == doctest::Approx(40 * 0.727).epsilon(0.05));
}

TEST_CASE("feet and inches are set as two figures alike, a unit with an area behind it is not") {
  Headless h;
  float alone = 0, both = 0, in_large = 0;
  bool area_goes_on = true, half_typed = false;
  h.draw = [&] {
    const ui::Figure feet("28", "ft 3 in", ui::Type::answer, ui::Type::title);
    CHECK(feet.goes_on());
    both = feet.width();
    alone = ui::Figure("28", "ft", ui::Type::answer, ui::Type::title).width();
    in_large = ui::text_width("3", ui::Type::answer, true) + ui::text_width("in", ui::Type::title, false);
    area_goes_on = ui::Figure("10", "AWG · 5.3 mm²", ui::Type::answer, ui::Type::title).goes_on();
    half_typed = ui::Figure("10", "ft 6", ui::Type::answer, ui::Type::title).goes_on();
  };
  h.frame();
  CHECK(both > alone + in_large);          // the 3 is as large as the 28
  CHECK_FALSE(area_goes_on);
  CHECK(half_typed);
}
