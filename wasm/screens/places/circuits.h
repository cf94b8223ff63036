// Circuits: the notebook, and one stored circuit.
#pragma once

#include "app/notebook.h"
#include "screens/place.h"

namespace screens {

void draw_circuits_screen(app::AppState& app, Memory& memory);
void draw_stored_sheet(app::AppState& app, Memory& memory);

namespace circuits_place {

inline bool is_there(const app::Contents& contents, const app::Route& route) {
  return route.sheet != app::Sheet::stored || contents.notebook.find(route.stored) != nullptr;
}

inline std::string title(const app::Contents&, const app::Route&) { return "Circuits"; }

}  // namespace circuits_place

inline constexpr SheetRow kCircuitsSheets[] = {
    {.id = app::Sheet::stored, .word = "", .argument = app::Argument::number, .title = "Circuit", .subtitle = "",
     .tall = false, .head = nullptr, .draw = draw_stored_sheet},
};

inline constexpr Place kCircuitsPlace{.id = app::Screen::circuits,
                                      .label = "Circuits",
                                      .icon = ui::Icon::book,
                                      .in_bar = false,
                                      .word = "circuits",
                                      .also = "",
                                      .key = app::KeyForm::none,
                                      .above = app::Screen::size,
                                      .shows = app::Work::nothing,
                                      .is_there = circuits_place::is_there,
                                      .title = circuits_place::title,
                                      .draw = draw_circuits_screen,
                                      .sheets = kCircuitsSheets};

}  // namespace screens
