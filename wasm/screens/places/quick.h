// Quick: the calculators that need no circuit, as a list and one by one.
#pragma once

#include "calculators/calculator.h"
#include "screens/place.h"

namespace screens {

void draw_quick_screen(app::AppState& app, Memory& memory);     // the list, or one calculator
void draw_how_sheet(app::AppState& app, Memory& memory);

namespace quick_place {

inline std::string title(const app::Contents&, const app::Route& route) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(route.key);
  return calculator != nullptr ? std::string(calculator->title) : "Quick";
}

inline bool is_there(const app::Contents&, const app::Route& route) {
  return route.key.empty() || calculators::calculator_by_key(route.key) != nullptr;
}

inline ui::SheetOptions how_head(const app::AppState& app) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(app.shown().key);
  return {.title = "How it is worked out",
          .subtitle = calculator != nullptr ? std::string(calculator->title) : std::string(), .tall = true};
}

}  // namespace quick_place

inline constexpr SheetRow kQuickSheets[] = {
    {.id = app::Sheet::how, .word = "how", .argument = app::Argument::none, .title = "How it is worked out",
     .subtitle = "", .tall = true, .head = quick_place::how_head, .draw = draw_how_sheet},
};

inline constexpr Place kQuickPlace{.id = app::Screen::quick,
                                   .label = "Quick",
                                   .icon = ui::Icon::sums,
                                   .in_bar = true,
                                   .word = "quick",
                                   .also = "",
                                   .key = app::KeyForm::listed,   // a calculator
                                   .above = app::Screen::size,
                                   .shows = app::Work::book,      // under its search
                                   .is_there = quick_place::is_there,
                                   .title = quick_place::title,
                                   .draw = draw_quick_screen,
                                   .sheets = kQuickSheets};

}  // namespace screens
