// Preferences: what is set once for every circuit, what the app is, and its sources.
#pragma once

#include "screens/place.h"

namespace screens {

void draw_preferences_screen(app::AppState& app, Memory& memory);
void draw_sources_sheet(app::AppState& app, Memory& memory);

namespace preferences_place {

inline bool is_there(const app::Contents&, const app::Route&) { return true; }
inline std::string title(const app::Contents&, const app::Route&) { return "Preferences"; }

}  // namespace preferences_place

inline constexpr SheetRow kPreferencesSheets[] = {
    {.id = app::Sheet::sources, .word = "sources", .argument = app::Argument::none, .title = "Sources",
     .subtitle = "Where every figure comes from", .tall = true, .head = nullptr, .draw = draw_sources_sheet},
};

inline constexpr Place kPreferencesPlace{.id = app::Screen::preferences,
                                         .label = "Preferences",
                                         .icon = ui::Icon::none,
                                         .in_bar = false,
                                         .word = "preferences",
                                         .also = "",
                                         .key = app::KeyForm::none,
                                         .above = app::Screen::size,
                                         .shows = app::Work::nothing,
                                         .is_there = preferences_place::is_there,
                                         .title = preferences_place::title,
                                         .draw = draw_preferences_screen,
                                         .sheets = kPreferencesSheets};

}  // namespace screens
