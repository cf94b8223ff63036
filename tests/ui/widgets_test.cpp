// What holds for every widget: targets, records, nothing cut, no frame when nothing changes.
#include <doctest/doctest.h>

#include <array>
#include <numeric>
#include <set>

#include "gallery.h"
#include "headless.h"
#include "ui/figure.h"
#include "ui/flow.h"
#include "ui/hyphen.h"
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

TEST_CASE("a drag that ends on a text field asks for no field") {
  Headless h;
  h.draw = [] {
    ui::begin_page("p", {.title = "P"});
    ui::text_field("Name", {.value = "x"});
    ui::end_page();
  };
  h.settle();
  const ui::Record r = *h.find(ui::Role::textbox, "Name");
  h.drag(r.x + 9, r.y + 209, 0, -200, 400);
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

namespace {

// A text as it stands on lines of `width`, each line's hyphen with it.
std::vector<std::string> lines_at(std::string_view text, float width) {
  Headless h;
  std::vector<std::string> lines;
  h.draw = [&] {
    for (const ui::Line& line : ui::wrap(text, ui::Type::text, false, width)) {
      lines.push_back(std::string(line.words) + (line.hyphen ? "-" : ""));
      CHECK(ui::line_width(lines.back(), ui::Type::text, false) <= width);
    }
  };
  h.frame();
  return lines;
}
using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a word is parted only when it alone is wider than the line") {
  const std::string warning = "Leave mains, airbag and engine-management wiring alone.";
  for (float width = 150; width <= 420; width += 1) {      // engine-management is 148 px wide
    for (const std::string& line : lines_at(warning, width)) {
      CAPTURE(width);
      CAPTURE(line);
      CHECK((line.ends_with("-") || line.ends_with("engine") || line.ends_with("manage")) == false);
    }
  }
  CHECK(lines_at("engine-management wiring", 120) == Lines{"engine-", "management", "wiring"});
  CHECK(lines_at("engine-management", 70) == Lines{"engine-", "manage-", "ment"});
  CHECK(lines_at("the management of", 70) == Lines{"the", "manage-", "ment of"});
  CHECK(lines_at("connection", 60).front() == "connec-");
  CHECK(lines_at("WWWWWWWWWWWWWWWWWWWW", 100).size() >= 3);   // no place to part: where the line is full
  CHECK(lines_at("  two blanks", 60).back() == "blanks");
}

TEST_CASE("a figure keeps its unit, whichever unit of the table it is") {
  for (const char* unit : {"mm²", "Ah", "kWh", "°F", "mΩ/ft", "AWG", "min"}) {
    const std::string text = "takes about 5 " + std::string(unit);
    CAPTURE(text);
    Headless h;
    float width = 0;
    h.draw = [&] { width = ui::text_width("takes about 5", ui::Type::text, false); };
    h.frame();
    CHECK(lines_at(text, width + 6) == Lines{"takes about", "5 " + std::string(unit)});
  }
  Headless h;
  float width = 0;
  h.draw = [&] { width = ui::text_width("from 5", ui::Type::text, false); };
  h.frame();
  CHECK(lines_at("from 5 to", width + 3) == Lines{"from 5", "to"});
}

TEST_CASE("English words are parted where a reader would") {
  const auto first = [](std::string_view word, std::size_t longest) {
    std::string part;
    for (const ui::Parting& p : ui::syllable_partings(word)) {
      if (p.at <= longest) part = std::string(word.substr(0, p.at));
    }
    return part;
  };
  // As an English dictionary divides them (from memory): manage-ment, insula-tion, con-nec-tor, ter-mi-nal.
  CHECK(first("management", 7) == "manage");
  CHECK(first("insulation", 7) == "insula");
  CHECK(first("connector", 6) == "connec");
  CHECK(first("connector", 5) == "con");
  CHECK(first("terminal", 4) == "ter");
  CHECK(first("mm", 2).empty());
  CHECK(ui::own_partings("engine-management").front().at == 7);
  CHECK_FALSE(ui::own_partings("engine-management").front().hyphen);
  CHECK(ui::own_partings("-40").empty());
}

TEST_CASE("chips fill the width of their flow, alike where they can be") {
  const auto sum = [](const std::vector<float>& widths, std::size_t count) {
    return std::accumulate(widths.begin(), widths.begin() + static_cast<std::ptrdiff_t>(count), ui::kFlowGap * static_cast<float>(count - 1));
  };
  const std::array<float, 5> five{52, 52, 52, 52, 60};
  CHECK(sum(ui::chip_widths(five, 348), 5) == doctest::Approx(348));
  const std::array<float, 7> seven{52, 52, 52, 52, 52, 52, 52};
  const std::vector<float> columns = ui::chip_widths(seven, 348);     // six would fit: four and three are evener
  CHECK(sum(columns, 4) == doctest::Approx(348));
  CHECK(columns.front() == columns.back());
  const std::array<float, 5> mixed{60, 150, 52, 150, 80};             // alike, they would take five lines
  const std::vector<float> lines = ui::chip_widths(mixed, 300);
  CHECK(sum(lines, 3) == doctest::Approx(300));
  CHECK(lines.back() == doctest::Approx(300 - ui::kFlowGap - lines[3]));
  const std::array<float, 4> short_last{100, 100, 200, 80};
  CHECK(ui::chip_widths(short_last, 280).back() == 80);               // all but an empty line: left as it is
  const std::array<float, 1> one{80};
  CHECK(ui::chip_widths(one, 348).front() == 80);
}

TEST_CASE("chips drawn at the end of their flow are pressed where they stand") {
  Headless h;
  int pressed = -1;
  bool more = false;
  h.draw = [&] {
    ui::begin_page("p", {.title = "P"});
    ui::begin_card("c");
    ui::begin_flow();
    for (int i = 0; i < (more ? 12 : 5); ++i) {
      if (ui::chip(std::to_string(10 + i), {.said = "Size " + std::to_string(10 + i)})) pressed = i;
    }
    ui::end_flow();
    ui::button("Under them");
    ui::end_card();
    ui::end_page();
  };
  h.settle();
  for (int i = 0; i < 5; ++i) {
    REQUIRE(h.tap(ui::Role::checkbox, "Size " + std::to_string(10 + i)));
    CHECK(pressed == i);
  }
  const ui::Record first = *h.find(ui::Role::checkbox, "Size 10"), last = *h.find(ui::Role::checkbox, "Size 14");
  CHECK(first.x == doctest::Approx(h.find(ui::Role::button, "Under them")->x));
  CHECK(last.x + last.width == doctest::Approx(first.x + h.find(ui::Role::button, "Under them")->width).epsilon(0.005));
  more = true;
  h.settle();
  REQUIRE(h.tap(ui::Role::checkbox, "Size 21"));
  CHECK(pressed == 11);
  CHECK(h.find(ui::Role::checkbox, "Size 21")->y + 48 < h.find(ui::Role::button, "Under them")->y);
}

TEST_CASE("every icon draws something, within its square") {
  Headless h;
  h.draw = [] {
    ui::begin_page("p", {.title = "P"});
    ImDrawList* list = ImGui::GetWindowDrawList();
    for (int i = 1; i < static_cast<int>(ui::Icon::count_); ++i) {
      CAPTURE(i);
      const int before = list->VtxBuffer.Size;
      ui::draw_icon(static_cast<ui::Icon>(i), 200, 200, 24, 0xFF000000U);
      CHECK(list->VtxBuffer.Size > before);
      for (int v = before; v < list->VtxBuffer.Size; ++v) {
        CHECK(std::abs(list->VtxBuffer[v].pos.x - 199.5F) <= 13.0F);
        CHECK(std::abs(list->VtxBuffer[v].pos.y - 199.5F) <= 13.0F);
      }
    }
    ui::end_page();
  };
  h.frame();
}

TEST_CASE("how well something is known: one of three, in a group of its name") {
  Gallery g;
  const ui::Record* group = g.h.find(ui::Role::group, "Wire, block to A");
  REQUIRE(group != nullptr);
  CHECK(group->name == "Wire, block to A, 10 AWG");
  CHECK(g.h.find(ui::Role::group, "Tails")->name == "Tails");      // what is not known has no value
  const auto radio = [&](std::string_view of, std::string_view word) {
    bool within = false;
    for (const ui::Record& r : g.h.records()) {
      if (r.role == ui::Role::group) within = r.name.starts_with(of);
      if (within && r.role == ui::Role::radio && r.name == word) return r;
    }
    FAIL("no such radio");
    return ui::Record{};
  };
  CHECK((radio("Wire, block", "Guessed").state & ui::kChecked) != 0U);
  g.h.state().act({.id = radio("Wire, block", "Unknown").id, .kind = ui::Action::Kind::press, .text = {}});
  g.h.settle();
  CHECK(g.model.wire == ui::Knowledge::unknown);
  CHECK(g.model.fuse == ui::Knowledge::known);                     // the others stay
  g.h.state().act({.id = radio("Wire, block", "Unknown").id, .kind = ui::Action::Kind::press, .text = {}});
  g.h.settle();
  CHECK(g.model.wire == ui::Knowledge::unknown);
}

TEST_CASE("no word of a choice runs out of its segment, at any size") {
  for (const Size& size : kSizes) {
    CAPTURE(size.width);
    CAPTURE(size.text);
    Gallery g(size);
    std::vector<ui::Record> radios;
    for (const ui::Record& r : g.h.records()) {
      if (r.role == ui::Role::radio) radios.push_back(r);
    }
    REQUIRE(radios.size() > 9);
    const auto original = g.h.draw;
    std::vector<float> needed;
    g.h.draw = [&] {
      original();
      for (const ui::Record& r : radios) needed.push_back(ui::text_width(r.name, ui::Type::caption, true));
    };
    g.h.frame();
    for (std::size_t i = 0; i < radios.size(); ++i) CHECK_MESSAGE(radios[i].width >= needed[i] + 8, radios[i].name);
  }
}

TEST_CASE("tiles stand three, two or one to a line, by their words, and tell the chosen one") {
  for (const Size& size : kSizes) {
    CAPTURE(size.width);
    CAPTURE(size.text);
    Gallery g(size);
    const ui::Record lights = *g.h.find(ui::Role::button, "Lights, 10 W"), phone = *g.h.find(ui::Role::button, "Phone charger, 15 W");
    const bool side_by_side = lights.y == phone.y;
    if (size.width >= 412 && size.text == 1) CHECK(side_by_side);
    if (size.width == 320 && size.text == 2) CHECK_FALSE(side_by_side);
    if (side_by_side) CHECK(lights.height == phone.height);
    CHECK((g.h.find(ui::Role::button, "Cool box, 45 W")->state & ui::kCurrent) != 0U);
    CHECK_FALSE(g.h.press(ui::Role::button, "Inverter"));          // disabled
    REQUIRE(g.h.press(ui::Role::button, "Socket for anything"));
    CHECK(g.model.tile == 7);
    CHECK((g.h.find(ui::Role::button, "Socket for anything")->state & ui::kCurrent) != 0U);
  }
}

TEST_CASE("bars are read as a list: each part with its value, and what they come to") {
  Gallery g;
  REQUIRE(g.h.find(ui::Role::list, "Where the volts go") != nullptr);
  CHECK(g.h.find(ui::Role::text, "Wire, block to C: 0.31 V, red and black") != nullptr);
  CHECK(g.h.find(ui::Role::text, "Together: 0.53 V") != nullptr);
  std::size_t within = 0;
  bool inside = false;
  for (const ui::Record& r : g.h.records()) {
    if (inside && r.role == ui::Role::end) break;
    if (inside) ++within;
    if (r.role == ui::Role::list && r.name == "Where the volts go") inside = true;
  }
  CHECK(within == 6);
}

TEST_CASE("a group opens in place, says what it holds, and keeps how it was left") {
  Gallery g;
  const auto header = [&](std::string_view name) { return *g.h.find(ui::Role::button, name); };
  CHECK(header("Lights, 3 circuits").name == "Lights, 3 circuits, 6.2 A");
  CHECK((header("Lights, 3 circuits").state & ui::kExpanded) != 0U);
  CHECK((header("Water").state & ui::kCollapsed) != 0U);
  CHECK(header("Water").name == "Water, 2 circuits, pump and heater, 9 A");
  CHECK(g.h.shows("Reading lamps"));
  CHECK_FALSE(g.h.shows("Awning"));
  CHECK_FALSE(g.h.shows("The pump starts"));
  REQUIRE(g.h.press(ui::Role::button, "Outside"));
  CHECK(g.h.shows("Awning"));
  REQUIRE(g.h.press(ui::Role::button, "Water"));
  CHECK(g.h.shows("The pump starts"));
  const ui::Record group = *g.h.find(ui::Role::group, "Water");
  CHECK(group.y >= header("Water").y + header("Water").height - 1);
  CHECK(group.height > 20);
  REQUIRE(g.h.press(ui::Role::button, "Lights, 3 circuits"));
  CHECK_FALSE(g.h.shows("Awning"));
  REQUIRE(g.h.press(ui::Role::button, "Lights, 3 circuits"));
  CHECK(g.h.shows("Awning"));                                      // the one within was left open
}
