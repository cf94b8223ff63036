// Plates: golden files, everything inside the picture, words for a screen reader.
#include <doctest/doctest.h>

#include <string>

#include "drawing/measure.h"
#include "drawing/svg.h"
#include "golden/golden.h"
#include "pictures/plates.h"

using pictures::PlateOptions;

namespace {

std::string svg(const drawing::Picture& picture, drawing::Palette palette) {
  return drawing::to_svg(picture, {.palette = palette, .filled_ground = true, .title = "plate"});
}

void check_sound(const drawing::Picture& picture, const std::string& where) {
  CHECK_MESSAGE(!picture.description.empty(), where);
  CHECK_MESSAGE(!picture.shapes.empty(), where);
  for (const drawing::Shape& shape : picture.shapes) {
    const drawing::Rectangle box = drawing::bounds(shape, picture.text_scale);
    const double wide = box.right - box.left;
    CHECK_MESSAGE(wide == wide, where);
    if (wide > picture.width) continue;   // a text longer than the narrowest view
    CHECK_MESSAGE(box.left >= -3.0, where << " left " << box.left);
    CHECK_MESSAGE(box.right <= picture.width + 3.0, where << " right " << box.right);
    CHECK_MESSAGE(box.top >= -3.0, where << " top " << box.top);
    CHECK_MESSAGE(box.bottom <= picture.height + 3.0, where << " bottom " << box.bottom);
  }
}

}  // namespace

TEST_CASE("Every row, page and card that depicts something has a sound picture at any size") {
  const reference::Book book = reference::make_book(units::Preference::metric);
  for (const double scale : {1.0, 2.0}) {
    PlateOptions options;
    options.text_scale = scale;
    options.view_width = 320.0;
    const auto check = [&](const reference::Depicted& depicted, const std::string& where) {
      if (depicted.what == reference::Depicts::nothing) return;
      const auto picture = pictures::plate(depicted, options);
      REQUIRE_MESSAGE(picture.has_value(), where);
      CHECK(picture->width == 320.0);
      if (scale == 1.0) check_sound(*picture, where);
    };
    for (const auto& page : book.pages) {
      check(page.picture, std::string(page.key));
      for (const auto& row : page.rows) check(row.picture, std::string(page.key) + "/" + row.key);
    }
    for (const auto& card : book.cards) check(card.picture, std::string(card.key));
  }
  CHECK_FALSE(pictures::plate({}, {}).has_value());
  CHECK_FALSE(pictures::plate({reference::Depicts::fuse, "none:5"}, {}).has_value());
  CHECK_FALSE(pictures::plate({reference::Depicts::conductor, "11awg"}, {}).has_value());
}

TEST_CASE("Every calculator that promises a plot draws one") {
  for (const auto& calculator : calculators::calculators()) {
    const auto picture = pictures::plot(calculator, calculators::normal_values(calculator), {});
    CHECK_MESSAGE(picture.has_value() == (calculator.plot != calculators::Plot::none), std::string(calculator.key));
    if (picture) check_sound(*picture, std::string(calculator.key));
  }
}

TEST_CASE("Golden plates") {
  using reference::Depicts;
  const auto keep = [](const char* file, const reference::Depicted& depicted, drawing::Palette palette) {
    golden::check(file, svg(pictures::plate(depicted, {}).value(), palette));
  };
  keep("plate-conductor-10awg.svg", {Depicts::conductor, "10awg"}, drawing::Palette::day);
  keep("plate-fuse-blade-15.svg", {Depicts::fuse, "blade:15"}, drawing::Palette::day);
  keep("plate-fuse-bolt-100.svg", {Depicts::fuse, "bolt-on:100"}, drawing::Palette::night);
  keep("plate-tab.svg", {Depicts::push_on_tab, "6.3"}, drawing::Palette::day);
  keep("plate-ferrule.svg", {Depicts::ferrule, "2.5"}, drawing::Palette::night);
  keep("plate-outlet.svg", {Depicts::outlet, "lighter"}, drawing::Palette::day);
  keep("plate-probes-drop.svg", {Depicts::probes_drop, ""}, drawing::Palette::night);
  keep("plate-battery-agm.svg", {Depicts::battery_curve, "lead-agm"}, drawing::Palette::day);
  keep("plate-fuse-gates.svg", {Depicts::fuse_gates, "blade"}, drawing::Palette::night);
  keep("plate-how-splice.svg", {Depicts::how_to, "splice"}, drawing::Palette::day);
  keep("plate-how-crimp.svg", {Depicts::how_to, "crimp"}, drawing::Palette::paper);
  const auto& drop = *calculators::calculator_by_key("drop-of-a-run");
  golden::check("plate-drop.svg", svg(*pictures::plot(drop, calculators::normal_values(drop), {}), drawing::Palette::day));
}
